"""by-fives: count by fives.

2.NBT.A.2: skip-count by fives within a thousand (Common Core State Standards for Mathematics, 2010).
"""

from warmup import pictures
from warmup.english import count_words, number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._counting import by_way, from_there, opening, rows_around, steps
from warmup.skills.base import Draft, Level, Skill

_WATCH = {
    "to-25": "A slide into tens after ten: “five, ten, twenty”.",
    "15-to-20": "“Fifteen, sixteen”: back to ones. Or fifteen said as fifty. Hold up one more hand.",
    "to-50": "A slide into tens: “twenty, thirty, forty”. Clap each five.",
    "45-to-50": "“Forty-five, fifty-five”: a ten gets skipped.",
    "to-100": "A slide into tens, or a five left off: “seventy, eighty”.",
}


def ask(item: str, _morning: Morning, rng: SeededRandom) -> Draft:
    """Count by fives from a start to an end; the answer is every number said."""
    start, end = _stretch(item, rng)
    numbers, word = steps(start, end, 5), number_word(start)
    say, heard = by_way(numbers, "fives", "Hold up a hand each time." if end <= 50 else "Tap each time.", rng)
    hands = pictures.Hands(end // 5) if end <= 50 else None
    return Draft(
        say=say,
        answer=count_words(numbers),
        accept=from_there(numbers, heard),
        working=", ".join(map(str, numbers)),
        cues=(
            Cue(f"Say it again. Hold up one hand for each word, from {word}."),
            Cue(
                f"Find {word} in the chart. The fives stand in two columns.",
                rows_around(1, end, pointed=(start,)),
            ),
            Cue(f"Begin together: {opening(numbers)} The child keeps going."),
        ),
        watch_for=_WATCH[item],
        given={"start": start, "end": end, "by": 5, "heard": heard},
        picture=hands,
        # Half of the whole way takes less than the minute the level allows.
        seconds=40 if end > 50 and len(numbers) <= 12 else None,
    )


def _stretch(item: str, rng: SeededRandom) -> tuple[int, int]:
    """The first and the last number to say."""
    match item:
        case "to-25":
            start = 5 * rng.between(1, 2)
            return start, 5 * rng.between(start // 5 + 2, 5)
        case "15-to-20":
            return 5 * rng.between(1, 2), 5 * rng.between(4, 5)
        case "to-50":
            start = 5 * rng.between(1, 5)
            return start, 5 * rng.between(max(6, start // 5 + 3), 10)
        case "45-to-50":
            return 5 * rng.between(6, 8), 50
        case _:
            # Now and then the whole way, twenty numbers; else a stretch past fifty.
            start = 5 * rng.pick((1, 10, 11, 12, 13, 14, 15, 16))
            return start, 100 if start == 5 else 5 * rng.between(start // 5 + 4, 20)


SKILL = Skill(
    id="by-fives",
    title="Count by fives",
    asks="count by fives",
    strand=Strand.COUNTING,
    levels=(
        Level(
            "to-25",
            "to twenty-five",
            ("to-25", "15-to-20"),
            codes=("2.NBT.A.2",),
            seconds=20,
            table="handprints",
        ),
        Level("to-50", "to fifty", ("to-50", "45-to-50"), codes=("2.NBT.A.2",), table="handprints"),
        Level("to-100", "to one hundred", ("to-100",), codes=("2.NBT.A.2",), slower=("to-100",)),
    ),
    ask=ask,
)
