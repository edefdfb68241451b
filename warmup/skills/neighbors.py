"""neighbors: the number just after, just before, between; one more, one less.

K.CC.B.4.C: each next number word means one more (Common Core State Standards for Mathematics, 2010); of one
less it says nothing, so the level that asks only for it has no code. Virginia's Standards of Learning (2023)
set a smaller bound for before (1 to 20, K.NS.1.h) than for after (0 to 30, K.NS.1.g), so before comes in
later here too; the levels to twenty stay within both.
"""

from warmup import pictures
from warmup.english import count_words, number_word
from warmup.model import Cue, Morning, Strand
from warmup.pictures import Picture
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._counting import steps
from warmup.skills._home import TO_HOLD, Noun, upper
from warmup.skills._number import chart_rows
from warmup.skills._rising import grown
from warmup.skills.base import Draft, Level, Skill

FINGER = Noun("finger", "fingers")
Said = tuple[Phrasing, Noun | None]
"""How a prompt is said, and the thing whose number it asks for, if any."""

# The numbers asked about: (lowest, highest), and the week of the year from which they rise. "Before" at
# twenty has a record of its own, so the plain item leaves that number out.
_AFTER = {
    "after-to-9": (1, 9, 4),
    "one-more": (1, 9, 4),
    "both-to-19": (10, 19, 17),
    "both-to-50": (20, 49, 29),
    "after-39": (39, 39, 29),
}
_BEFORE = {
    "before-to-10": (2, 10, 11),
    "one-less": (1, 10, 11),
    "both-to-19": (10, 19, 17),
    "before-20": (20, 20, 17),
    "both-to-50": (21, 50, 29),
    "before-30": (30, 30, 29),
}
_BETWEEN = (11, 98, 29)
_WATCH_AFTER = {
    "after-to-9": "Counting up from one to find it. A good start: in time the answer comes alone.",
    "one-more": "Counting them all over again. In time one more is just the next word.",
    "both-to-19": "Nineteen heard as ninety gives “ninety-one”. Say the end of the word with care.",
    "both-to-50": "“Twenty-ten” and the like after a nine.",
    "after-39": "“Thirty-ten”, or “fifty”: a ten skipped over.",
}
_WATCH_BEFORE = {
    "before-to-10": "The number after instead. Say “before” again, slowly.",
    "one-less": "One more instead. Show it with fingers: one goes down.",
    "both-to-19": "The number after instead. Say “before” again, slowly.",
    "before-20": "“Twenty-one”, or “ten”: the teens end here.",
    "both-to-50": "The number after instead. Say “before” again, slowly.",
    "before-30": "“Thirty-nine”, or “twenty”: the ten changes on the way down.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """The neighbor of a number on one side, or the number between two."""
    if item == "between-to-99":
        return _between(_number(_BETWEEN, morning, rng), rng)
    after = item in _AFTER and (item not in _BEFORE or rng.coin())
    number = _number((_AFTER if after else _BEFORE)[item], morning, rng)
    return _after(item, number, rng) if after else _before(item, number, rng)


def _number(numbers: tuple[int, int, int], morning: Morning, rng: SeededRandom) -> int:
    low, high, opens = numbers
    return rng.between(low, grown(low, high, morning.week, opens))


def _after(item: str, number: int, rng: SeededRandom) -> Draft:
    word = number_word(number)
    begin = steps(max(0, number - 1), number)
    # Where a new ten comes, the tens list is the way in; it is broken off before it gets there.
    tens = count_words(range(10, min(20, number) + 1, 10)) if number % 10 == 9 and number > 10 else ""
    say, noun = _one_more_said(number, rng) if item == "one-more" else _after_said(number, rng)
    things = {"things": noun.named(number + 1)} if noun else {}
    return Draft(
        say=say,
        answer=number_word(number + 1),
        accept=tuple(f"{number_word(number + 1)} {thing}" for thing in things.values()),
        working=f"{number}, {number + 1}: one step on",
        cues=(
            Cue(
                f"Say it again. Hold up {word} {FINGER.named(number)}. Put up one more."
                if item == "one-more" and not noun
                else f"Say it again. Start at {number_word(max(1, number - 3))} and keep going."
            ),
            Cue(f"Put a finger on {word}. Move it a step on.", _model(number)),
            Cue(
                f"Say the tens together first: “{tens}…” Then go back to {word}."
                if tens
                else f"Say it together: “{count_words(begin)}…” The child keeps going."
            ),
        ),
        watch_for=_WATCH_AFTER[item],
        given={"number": number, "step": 1, **things},
        # Before the numerals to ten are sure, the number is only heard.
        picture=None if item in ("after-to-9", "one-more") else pictures.NumberRow((str(number), "?")),
    )


def _after_said(number: int, rng: SeededRandom) -> Said:
    word, noun = number_word(number), rng.pick(TO_HOLD)
    say = rng.phrasing(
        f"What number comes just after {word}?",
        f"{upper(count_words((number - 1, number)))}. What number comes next?",
        f"I say {word}. You say the next number.",
        f"Say the number that comes right after {word}.",
        *(() if number < 10 else _one_more_ways(number, noun)),
    )
    return say, noun if say.key == "f" else None


def _one_more_ways(number: int, noun: Noun) -> tuple[str, str]:
    return (
        f"What is one more than {number_word(number)}?",
        f"Think of {noun.of(number)}. Add one more. How many now?",
    )


def _one_more_said(number: int, rng: SeededRandom) -> Said:
    """By the number alone, with things thought of, or on the child's own fingers."""
    noun = rng.pick(TO_HOLD)
    say = rng.phrasing(
        *_one_more_ways(number, noun),
        f"Hold up {FINGER.of(number)}. Put up one more. How many now?",
        f"Pretend you have {noun.of(number)}. You get one more. How many?",
    )
    return say, {"b": noun, "c": FINGER, "d": noun}.get(say.key)


def _before(item: str, number: int, rng: SeededRandom) -> Draft:
    word, less = number_word(number), number - 1
    begin = count_words(range(max(0, number - 3), less))
    first = number_word(max(0, number - 4))
    say, noun = _one_less_said(number, rng) if item == "one-less" else _before_said(number, rng)
    things = {"things": noun.named(less)} if noun else {}
    return Draft(
        say=say,
        answer=number_word(less),
        accept=(
            *(("none", "nothing") if less == 0 else ()),
            *(f"{number_word(less) if less else 'no'} {thing}" for thing in things.values()),
        ),
        working=f"{less}, {number}: one step back",
        cues=(
            Cue(
                f"Say it again. Count up from {first}. Stop at {word}. What came just before it?"
                if less
                else "Say it again. Hold up one finger. Now fold it."
            ),
            Cue(f"Put a finger on {word}. Slide it a step back.", _model(number)),
            Cue(
                f"Count up together: “{begin}…” on to {word}. Then ask again."
                if less
                else "Hop back together: “three, two, one…” The child keeps going."
            ),
        ),
        watch_for=_WATCH_BEFORE[item] if less else "A blank look: counting starts at one. “Nothing” will do.",
        given={"number": number, "step": -1, **things},
        picture=pictures.NumberRow(("?", str(number))),
    )


def _before_said(number: int, rng: SeededRandom) -> Said:
    word, noun = number_word(number), rng.pick(TO_HOLD)
    say = rng.phrasing(
        f"What number comes just before {word}?",
        f"I say {word}. You say the number before.",
        f"Say the number that comes right before {word}.",
        *(() if number <= 10 else _one_less_ways(number, noun)),
    )
    return say, noun if say.key == "e" else None


def _one_less_ways(number: int, noun: Noun) -> tuple[str, str]:
    return (
        f"What is one less than {number_word(number)}?",
        f"Think of {noun.of(number)}. Take one away. How many are left?",
    )


def _one_less_said(number: int, rng: SeededRandom) -> Said:
    noun = rng.pick(TO_HOLD)
    say = rng.phrasing(
        *_one_less_ways(number, noun),
        f"Hold up {FINGER.of(number)}. Fold one down. How many now?",
        f"Pretend you have {noun.of(number)}. You give one away. How many are left?",
    )
    return say, {"b": noun, "c": FINGER, "d": noun}.get(say.key)


def _between(middle: int, rng: SeededRandom) -> Draft:
    low, high = middle - 1, middle + 1
    below, above = number_word(low), number_word(high)
    chart = chart_rows(low, high, pointed=(low, high), hidden=(middle,))
    return Draft(
        say=rng.phrasing(
            f"What number comes between {below} and {above}?",
            f"Say the number between {below} and {above}.",
            f"{upper(below)}, {above}. What number did I skip?",
        ),
        answer=number_word(middle),
        working=f"{low}, {middle}, {high}",
        cues=(
            Cue(f"Say it again. Start at {number_word(low - 2)} and count up to {above}."),
            Cue(f"Put a finger on {below} and one on {above}. Look at the gap.", chart),
            Cue(f"Say it together: “{count_words(steps(low - 1, low))}…” The child keeps going."),
        ),
        watch_for="The number after both: the last one heard pulls the count on.",
        given={"low": low, "high": high},
        picture=pictures.NumberRow((str(low), "?", str(high))),
    )


def _model(number: int) -> Picture:
    """What a finger can rest on: a line for small numbers, rows of the chart for others."""
    if number < 10:
        return pictures.NumberLine(0, 10, start=number)
    return chart_rows(number - 1, number + 1, pointed=(number,))


SKILL = Skill(
    id="neighbors",
    title="Neighbors",
    asks="the number just after, just before or between; one more, one less",
    strand=Strand.COUNTING,
    levels=(
        Level(
            "after-to-10",
            "after, one more, to ten",
            ("after-to-9", "one-more"),
            codes=("K.CC.B.4.C",),
            stands_on=("count:to-20",),
            seconds=20,
            ends=("after-to-9", "one-more"),
        ),
        Level(
            "before-to-10",
            "before, one less, to ten",
            ("before-to-10", "one-less"),
            stands_on=("neighbors:after-to-10", "count-back:from-10"),
            seconds=20,
            table="number cards",
            ends=("before-to-10", "one-less"),
        ),
        Level(
            "both-to-20",
            "before and after, to twenty",
            ("both-to-19",),
            misconceptions=("before-20",),
            codes=("K.CC.B.4.C",),
            stands_on=("neighbors:before-to-10", "count-on:within-20"),
            waits_on=("count-on/teens",),
            seconds=20,
            table="number cards",
        ),
        Level(
            "to-99",
            "before, after and between, to 99",
            ("both-to-50", "before-30", "after-39", "between-to-99"),
            codes=("K.CC.B.4.C",),
            stands_on=("neighbors:both-to-20", "count-on:to-95"),
            table="number cards",
        ),
    ),
    ask=ask,
)
