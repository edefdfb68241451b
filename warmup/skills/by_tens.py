"""by-tens: count by tens.

K.CC.A.1: to one hundred by tens; 2.NBT.A.2: skip-count by tens within a thousand (Common Core State
Standards for Mathematics, 2010).
"""

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._counting import skip_count, steps
from warmup.skills.base import Draft, Level, Skill

_WATCH = {
    "to-50": "“Twenty-ten” after twenty, or a slide into ones: “ten, eleven”.",
    "to-100": "“Thirteen, fourteen” for thirty, forty. Say the ends with care.",
    "past-90": "“Ninety-ten”, or a stop at ninety. One more bundle comes after it.",
}


def ask(item: str, _morning: Morning, rng: SeededRandom) -> Draft:
    """Count by tens from a start to an end; the answer is every number said."""
    start, end = _stretch(item, rng)
    numbers, word = steps(start, end, 10), number_word(start)
    bundles = pictures.Bundles(end // 10, 0, "straws") if item == "to-50" else None
    cues = (
        Cue(f"Say it again. Hold up all ten fingers for each word, from {word}."),
        Cue(
            "Touch one bundle for each word. Each is a whole ten."
            if start == 10
            else f"The first two bundles are {word}. Touch one more for each word.",
            bundles,
        )
        if bundles
        else Cue(
            f"Find {word} in the chart. Slide down the last column.",
            pictures.HundredChart(1, 100, pointed=(start,)),
        ),
    )
    draft = skip_count(
        numbers, "tens", "Hold up ten fingers each time.", cues, rng, watch_for=_WATCH[item], picture=bundles
    )
    # Fingers and the chart do for what goes past fifty.
    return draft if bundles else draft._replace(table="")


def _stretch(item: str, rng: SeededRandom) -> tuple[int, int]:
    """The first and the last number to say."""
    match item:
        case "to-50":
            start = rng.between(1, 2)
            return 10 * start, 10 * rng.between(start + 2, 5)
        case "to-100":
            start = rng.pick((10, 20, 30, 40))
            return start, 10 * rng.between(max(6, start // 10 + 3), 10)
        case _:
            return 10 * rng.between(5, 7), 100


SKILL = Skill(
    id="by-tens",
    title="Count by tens",
    asks="count by tens",
    strand=Strand.COUNTING,
    levels=(
        Level(
            "to-50",
            "to fifty",
            ("to-50",),
            codes=("K.CC.A.1", "2.NBT.A.2"),
            stands_on=("count:to-39",),
            seconds=20,
            table="straws in bundles",
        ),
        Level(
            "to-100",
            "to one hundred",
            ("to-100", "past-90"),
            codes=("K.CC.A.1", "2.NBT.A.2"),
            stands_on=("by-tens:to-50",),
            table="straws in bundles",
        ),
    ),
    ask=ask,
)
