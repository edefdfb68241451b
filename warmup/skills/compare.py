"""compare: more, fewer, the same; which number is greater.

K.CC.C.6 compares groups of up to ten things, K.CC.C.7 two written numerals from 1 to 10 (Common Core State
Standards for Mathematics, 2010); two-digit numbers are compared by their tens, in place-value. That a longer
row looks like more, and that "fewer" is met late, is common practice, no source.
"""

from typing import Literal

from warmup import pictures
from warmup.english import number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._rising import risen
from warmup.skills._which_number import in_order, two_numerals
from warmup.skills.base import Draft, Level, Skill

_WATCH = {
    "match-to-5": "Putting down a handful without looking. Match them up, each with a partner.",
    "equal-to-5": "Adding a few for luck. Just as many means each has a partner and no more.",
    "sets-to-10": "Judging by the space a row takes up. Let each find its partner.",
    "fewer": "Showing the one with more: “fewer” is a new word, and more is easier to see.",
    "spread": "Going by how wide a row is. Ask for partners; do not say whether it is so.",
    "numerals-to-10": "Choosing the number said last, or the one that is nicer to write.",
}
_THINGS = ("spoon", "cup", "block", "crayon", "sock")


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Sets to lay out or to look at, or numerals to set against each other."""
    match item:
        case "match-to-5":
            return _lay_out(item, rng.between(2, 4), rng.pick((1, 0)), rng)
        case "equal-to-5":
            return _lay_out(item, rng.between(2, 5), 0, rng)
        case "fewer":
            most = _most(morning)
            return _lay_out(item, rng.between(3, most), -1, rng) if rng.coin() else _look(item, most, rng)
        case "sets-to-10" | "spread":
            return _look(item, _most(morning), rng)
        case _:
            numbers = range(1, 11 if risen(morning, 12) else 6)
            if rng.coin():
                return in_order(rng.sample(numbers, 3), _WATCH[item], rng)
            return two_numerals(rng.sample(numbers, 2), _WATCH[item], rng)


def _most(morning: Morning) -> int:
    """The most there is in a set: six while sets to ten are new."""
    return 10 if risen(morning, 7) else 6


def _lay_out(item: str, mine: int, step: int, rng: SeededRandom) -> Draft:
    """The adult's set is seen; the child lays out as many, one more or one fewer, and says how many.

    "One more" alone could mean a single thing: the words say than what. Sets begin at two, for of one
    there is nothing to count. The picture shows the adult's as rings, so the words call them rings.
    """
    thing = rng.pick(_THINGS)
    things, theirs = plural(2, thing), mine + step
    wish = {0: "just as many", 1: "one more", -1: "one fewer"}[step]
    than = f"{wish} than that" if step else wish
    noun = f"{wish.partition(' ')[2]} {thing}" if step else things
    return Draft(
        say=rng.phrasing(
            f"Look at my rings. Put out {than}. How many are yours?",
            f"Here is my row. Make yours with {wish}. How many?",
            f"Take one {noun} than I have rings. How many {things}?"
            if step
            else f"Take just as many {things} as I have rings. How many?",
        ),
        answer=number_word(theirs),
        working=f"{mine} {plural(mine, 'ring')}, {wish}: {theirs}",
        cues=(
            Cue(f"How can you be sure that it is {wish}?"),
            Cue("Point along the row. Each gets a partner, put down right under it."),
            _finish(step),
        ),
        watch_for=_WATCH[item],
        given={"mine": mine, "step": step, "thing": thing},
        picture=pictures.TwoSets(mine, 0),
        do=f"Give the child a big handful of {things}.",
        table=things,
        guess=0.0,
    )


def _finish(step: int) -> Cue:
    match step:
        case 1:
            return Cue("Lay the partners together, one under each. The child puts down the last and counts.")
        case -1:
            return Cue("Cover the end of the row with a hand. The child matches the rest and counts.")
        case _:
            return Cue("Lay the first one under its partner together. The child goes on, then counts.")


def _look(item: str, most: int, rng: SeededRandom) -> Draft:
    """Two trays: which has more, which has fewer, or are they the same?"""
    top, bottom, spread = _two_sets(item, most, rng)
    ask_for = "fewer" if item == "fewer" or (item == "sets-to-10" and rng.coin()) else "more"
    wins = top if (top > bottom) is (ask_for == "more") else bottom
    answer = "the same" if top == bottom else "the top tray" if wins == top else "the bottom tray"
    mates = pictures.TwoSets(top, bottom)
    return Draft(
        say=rng.phrasing(
            f"Which tray has {ask_for} rings? Say “same” if they match.",
            f"Point to the tray with {ask_for} rings, or say “same”.",
            f"Top or bottom: which has {ask_for} rings? Or say “same”.",
        ),
        answer=answer,
        accept=("same", "both") if top == bottom else (),
        working=f"top {top}, bottom {bottom}",
        cues=(
            Cue("How could you find out without a guess?"),
            Cue("Here each has its partner under it. Does every one have a partner?", mates),
            Cue("Touch the first of each row together, then the next two. The child goes on."),
        ),
        watch_for=_WATCH[item],
        given={"top": top, "bottom": bottom, "spread": spread, "ask": ask_for},
        picture=pictures.TwoSets(top, bottom, spread),
        guess=0.33,
    )


def _two_sets(item: str, most: int, rng: SeededRandom) -> tuple[int, int, Literal["", "top", "bottom"]]:
    """Two counts up to ``most``, alike a third of the time, and which of them is spread out."""
    if item == "spread":
        # The wide row never holds more: it only looks so.
        wide = rng.between(3, most - 3)
        close = wide + rng.pick((0, 1, 2))
        return (wide, close, "top") if rng.coin() else (close, wide, "bottom")
    low = rng.between(2, most - 1)
    high = low if rng.below(3) == 0 else min(most, low + rng.between(1, 2))
    return (low, high, "") if rng.coin() else (high, low, "")


SKILL = Skill(
    id="compare",
    title="Compare",
    asks="more, fewer, the same; which number is greater",
    strand=Strand.NUMBER,
    ladder=("match-to-5", "sets-to-10", "numerals-to-10"),
    levels=(
        Level(
            "match-to-5",
            "match sets to five",
            ("match-to-5", "equal-to-5"),
            codes=("K.CC.C.6",),
            stands_on=("how-many:line-to-5",),
            table="spoons, bowls",
        ),
        Level(
            "sets-to-10",
            "sets to ten",
            ("sets-to-10",),
            ("spread", "fewer"),
            codes=("K.CC.C.6",),
            stands_on=("compare:match-to-5", "how-many:count-out-to-10"),
            waits_on=("how-many/so-how-many",),
            guess=0.33,
            guesses=(("fewer", 0.17),),
            table="spoons, bowls",
        ),
        Level(
            "numerals-to-10",
            "numerals to ten",
            ("numerals-to-10",),
            codes=("K.CC.C.7",),
            stands_on=("compare:sets-to-10", "numerals:to-10"),
            waits_on=("compare/spread",),
            guess=0.33,
        ),
    ),
    ask=ask,
)
