"""neighbors: the number just after, just before, between; one more, one less.

K.CC.B.4.C: each next number word means one more (Common Core State Standards for Mathematics, 2010).
Virginia's Standards of Learning (2023) set a smaller bound for before (1 to 20, K.NS.1.h) than for after
(0 to 30, K.NS.1.g), so before comes in later here too; the levels to nineteen stay within both.
"""

from warmup import pictures
from warmup.english import count_words, number_word
from warmup.model import Cue, Morning, Strand
from warmup.pictures import Picture
from warmup.randomness import SeededRandom
from warmup.skills._counting import rows_around, steps
from warmup.skills._home import TO_HOLD, upper
from warmup.skills.base import Draft, Level, Skill

# The numbers asked about: (lowest, highest).
_AFTER = {"after-to-9": (1, 9), "both-to-19": (10, 19), "both-to-50": (20, 49), "after-39": (39, 39)}
_BEFORE = {
    "before-to-10": (2, 10),
    "both-to-19": (1, 20),
    "before-20": (20, 20),
    "both-to-50": (21, 50),
    "before-30": (30, 30),
}
_WATCH_AFTER = {
    "after-to-9": "Counting up from one to find it. A good start: in time the answer comes alone.",
    "both-to-19": "Nineteen heard as ninety gives “ninety-one”. Say the end of the word with care.",
    "both-to-50": "“Twenty-ten” and the like after a nine.",
    "after-39": "“Thirty-ten”, or “fifty”: a ten skipped over.",
}
_WATCH_BEFORE = {
    "before-to-10": "The number after instead. Say “before” again, slowly.",
    "both-to-19": "The number after instead. Say “before” again, slowly.",
    "before-20": "“Twenty-one”, or “ten”: the teens end here.",
    "both-to-50": "The number after instead. Say “before” again, slowly.",
    "before-30": "“Thirty-nine”, or “twenty”: the ten changes on the way down.",
}


def ask(item: str, _morning: Morning, rng: SeededRandom) -> Draft:
    """The neighbor of a number on one side, or the number between two."""
    if item == "between-to-99":
        return _between(rng.between(11, 98), rng)
    after = item in _AFTER and (item not in _BEFORE or rng.coin())
    number = rng.between(*(_AFTER if after else _BEFORE)[item])
    return _after(item, number, rng) if after else _before(item, number, rng)


def _after(item: str, number: int, rng: SeededRandom) -> Draft:
    word, noun = number_word(number), rng.pick(TO_HOLD)
    begin = steps(max(0, number - 1), number)
    # Where a new ten comes, the tens list is the way in; it is broken off before it gets there.
    tens = count_words(range(10, min(20, number) + 1, 10)) if number % 10 == 9 and number > 10 else ""
    say = rng.phrasing(
        f"What number comes just after {word}?",
        f"What is one more than {word}?",
        f"{upper(count_words((number - 1, number)))}. What number comes next?",
        f"Think of {noun.of(number)}. Add one more. How many now?",
        f"I say {word}. You say the next number.",
    )
    things = {"things": noun.named(number + 1)} if say.key == "d" else {}
    return Draft(
        say=say,
        answer=number_word(number + 1),
        accept=tuple(f"{number_word(number + 1)} {noun}" for noun in things.values()),
        working=f"{number}, {number + 1}: one step on",
        cues=(
            Cue(f"Say it again. Start at {number_word(max(1, number - 3))} and keep going."),
            Cue(f"Put a finger on {word}. Move it a step on.", _model(number)),
            Cue(
                f"Say the tens together first: “{tens}…” Then go back to {word}."
                if tens
                else f"Say it together: “{count_words(begin)}…” The child keeps going."
            ),
        ),
        watch_for=_WATCH_AFTER[item],
        given={"number": number, "step": 1, **things},
        picture=None if item == "after-to-9" else pictures.NumberRow((str(number), "?")),
    )


def _before(item: str, number: int, rng: SeededRandom) -> Draft:
    word, noun, less = number_word(number), rng.pick(TO_HOLD), number - 1
    begin = count_words(range(max(0, number - 3), less))
    first = number_word(max(0, number - 4))
    say = rng.phrasing(
        f"What number comes just before {word}?",
        f"What is one less than {word}?",
        f"Think of {noun.of(number)}. Take one away. How many are left?",
        f"I say {word}. You say the number before.",
    )
    things = {"things": noun.named(less)} if say.key == "c" else {}
    return Draft(
        say=say,
        answer=number_word(less),
        accept=(
            *(("none", "nothing") if less == 0 else ()),
            *(f"{number_word(less) if less else 'no'} {noun}" for noun in things.values()),
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


def _between(middle: int, rng: SeededRandom) -> Draft:
    low, high = middle - 1, middle + 1
    below, above = number_word(low), number_word(high)
    chart = rows_around(low, high, pointed=(low, high), hidden=(middle,))
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
    return rows_around(number - 1, number + 1, pointed=(number,))


SKILL = Skill(
    id="neighbors",
    title="Neighbors",
    asks="the number just after, just before or between; one more, one less",
    strand=Strand.COUNTING,
    levels=(
        Level("after-to-9", "after, 1 to 9", ("after-to-9",), codes=("K.CC.B.4.C",), seconds=20),
        Level(
            "before-to-10",
            "before, 2 to 10",
            ("before-to-10",),
            codes=("K.CC.B.4.C",),
            seconds=20,
            table="number cards",
        ),
        Level(
            "both-to-19",
            "before and after, to 19",
            ("both-to-19", "before-20"),
            codes=("K.CC.B.4.C",),
            seconds=20,
            table="number cards",
        ),
        Level(
            "both-to-50",
            "before and after, to 50",
            ("both-to-50", "before-30", "after-39"),
            codes=("K.CC.B.4.C",),
            table="number cards",
        ),
        Level(
            "between-to-99",
            "between, to 99",
            ("between-to-99",),
            codes=("K.CC.B.4.C",),
            table="number cards",
        ),
    ),
    ask=ask,
)
