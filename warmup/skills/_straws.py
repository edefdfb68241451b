"""Straws and bands: what the skill `school-day` asks of the count as bundles of ten and loose ones."""

from warmup import pictures
from warmup.english import number_word, plural
from warmup.model import Cue, Morning
from warmup.randomness import SeededRandom
from warmup.skills._conditions import fills_a_bundle
from warmup.skills._home import upper
from warmup.skills._number import tens_and_ones as in_tens_and_ones
from warmup.skills.base import Draft

# The most bundles laid out: with eight, "nine" would be the loose ones and the answer as well.
_MOST = 7


def _since(morning: Morning) -> tuple[int, str]:
    """How many school days since the last whole hundred, and the words for it."""
    hundreds, number = divmod(morning.school_day, 100)
    return number, f" since day {number_word(100 * hundreds)}" if hundreds else ""


def _bundled(number: int) -> str:
    """ "four bundles and seven loose ones"."""
    tens, ones = divmod(number, 10)
    loose = f"{number_word(ones) if ones else 'no'} loose {plural(ones, 'one')}"
    return f"{number_word(tens)} {plural(tens, 'bundle')} and {loose}"


def _bundles_said(number: int) -> tuple[str, ...]:
    """Other right ways to say the bundles and the loose ones; the bundles alone where none are loose."""
    tens, ones = divmod(number, 10)
    bundles, many = f"{number_word(tens)} {plural(tens, 'bundle')}", number_word(ones)
    alone = (
        (bundles,) if not ones else (f"{bundles} and {many}", f"{bundles} and {many} {plural(ones, 'one')}")
    )
    return (in_tens_and_ones(number), f"{number_word(tens)} and {many}", *alone)


def tens_and_ones(morning: Morning, rng: SeededRandom, watch_for: str) -> Draft:
    """The count of days as bundles and loose ones."""
    number, since = _since(morning)
    tens, ones = divmod(number, 10)
    word = number_word(number)
    count = f"That’s {word} straws{since}." if since else f"Look at our {word} straws."
    return Draft(
        say=rng.phrasing(
            f"We’ve had {word} school days{since}. How many tens and ones?",
            f"We’ve added {word} straws{since}. How many bundles and loose ones?",
            f"{count} How many tens and ones?",
        ),
        answer=_bundled(number),
        accept=_bundles_said(number),
        working=f"{number} = {10 * tens} + {ones}",
        cues=(
            Cue("How many straws does a band hold?"),
            Cue("Look at the straws. Which are banded, which are loose?", pictures.Bundles(tens, ones)),
            Cue("Touch the bundles together: “ten…” The child keeps going, then counts the loose ones."),
        ),
        watch_for=watch_for,
        given={"number": number},
        picture=pictures.Bundles(tens, ones),
    )


def new_bundle(morning: Morning, rng: SeededRandom, watch_for: str) -> Draft:
    """Nine loose straws and one more: today's, or on another day some laid out for it."""
    return _todays(morning, rng, watch_for) if fills_a_bundle(morning) else _laid_out(morning, rng, watch_for)


def _todays(morning: Morning, rng: SeededRandom, watch_for: str) -> Draft:
    """A day on which the loose straws become ten."""
    number, since = _since(morning)
    tens = number // 10
    before = number_word(number - 1)
    old = f"{number_word(tens - 1)} {plural(tens - 1, 'bundle')}" if tens > 1 else "no bundle"
    # The ten bundles of the hundred are not meant.
    have, new = ("We’ve added", " new") if since else ("We have", "")
    return Draft(
        say=rng.phrasing(
            f"{have} {before} straws{since}. Add one for today. How many{new} bundles now?",
            f"That’s {before} straws{since}. Today’s is one more. How many new bundles?"
            if since
            else f"Nine loose straws and {old}. Add one. How many bundles now?",
            f"{upper(before)} straws{since}. Add today’s straw. How many{new or ' full'} bundles?",
        ),
        answer=number_word(tens),
        accept=(
            f"{number_word(tens)} {plural(tens, 'bundle')}",
            f"{number_word(tens)} {plural(tens, 'ten')}",
            _bundled(number),
        ),
        working=f"{number - 1} + 1 = {number} = {tens} × 10",
        cues=(
            Cue("Put today’s straw with the loose ones. How many are loose?"),
            Cue(
                "Point at the loose ones and add today’s. Are there enough for a bundle?",
                pictures.Bundles(tens - 1, 9),
            ),
            Cue("Put the band around the loose ones together. The child counts all the bundles."),
        ),
        watch_for=watch_for,
        given={"before": number - 1},
        picture=pictures.Bundles(tens - 1, 9),
    )


def _laid_out(morning: Morning, rng: SeededRandom, watch_for: str) -> Draft:
    """The same on any other day, with straws laid out for it: a shaky record need not wait for a tenth day.

    As many bundles as the count of days has by now, or at most one more.
    """
    before = 10 * rng.between(1, min(_MOST, max(2, morning.school_day // 10))) + 9
    tens = before // 10
    word, bundles = number_word(before), f"{number_word(tens)} {plural(tens, 'bundle')}"
    here = "Here is" if tens == 1 else "Here are"
    return Draft(
        say=rng.phrasing(
            f"{here} {bundles} and nine loose straws. Add one. How many bundles now?",
            f"Here are {word} straws. Add one more. How many bundles can you make?",
            f"Put one more straw with these {word}. How many full bundles are there?",
        ),
        do=f"Lay out {bundles} and nine loose straws, with one straw and a band beside them.",
        answer=number_word(tens + 1),
        accept=(
            f"{number_word(tens + 1)} bundles",
            f"{number_word(tens + 1)} tens",
            _bundled(before + 1),
        ),
        working=f"{before} + 1 = {before + 1} = {tens + 1} × 10",
        cues=(
            Cue("Put the one straw with the loose ones. How many are loose?"),
            Cue(
                "Point at the loose ones and add the one. Are there enough for a bundle?",
                pictures.Bundles(tens, 9),
            ),
            Cue("Put the band around the loose ones together. The child counts all the bundles."),
        ),
        watch_for=watch_for,
        given={"before": before},
        picture=pictures.Bundles(tens, 9),
    )
