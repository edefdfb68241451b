"""by-fives: count by fives.

2.NBT.A.2: skip-count by fives within a thousand (Common Core State Standards for Mathematics, 2010).
"""

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._counting import skip_count, steps
from warmup.skills._number import chart_rows
from warmup.skills.base import Draft, Level, Skill

_WATCH = {
    "to-25": "A slide into tens after ten: “five, ten, twenty”.",
    "15-to-20": "“Fifteen, sixteen”: back to ones. Or fifteen said as fifty. Hold up one more hand.",
    "to-50": "A slide into tens: “twenty, thirty, forty”. Clap each five.",
    "45-to-50": "“Forty-five, fifty-five”: a ten gets skipped.",
}


def ask(item: str, _morning: Morning, rng: SeededRandom) -> Draft:
    """Count by fives from a start to an end; the answer is every number said."""
    start, end = _stretch(item, rng)
    numbers, word = steps(start, end, 5), number_word(start)
    cues = (
        Cue(f"Say it again. Hold up one hand for each word, from {word}."),
        Cue(
            f"Find {word} in the chart. The fives stand in two columns.",
            chart_rows(1, end, pointed=(start,)),
        ),
    )
    return skip_count(
        numbers,
        "fives",
        "Hold up a hand each time.",
        cues,
        rng,
        watch_for=_WATCH[item],
        picture=pictures.Hands(end // 5),
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
        case _:
            return 5 * rng.between(6, 8), 50


SKILL = Skill(
    id="by-fives",
    title="Count by fives",
    asks="count by fives",
    strand=Strand.COUNTING,
    levels=(
        Level(
            "to-25",
            "to twenty-five",
            ("to-25",),
            misconceptions=("15-to-20",),
            codes=("2.NBT.A.2",),
            stands_on=("count:to-39",),
            seconds=20,
            table="handprints",
        ),
        Level(
            "to-50",
            "to fifty",
            ("to-50", "45-to-50"),
            codes=("2.NBT.A.2",),
            stands_on=("by-fives:to-25",),
            waits_on=("by-fives/15-to-20",),
            table="handprints",
        ),
    ),
    ask=ask,
)
