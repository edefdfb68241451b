"""by-twos: count by twos.

2.OA.C.3: pairing and counting by twos in groups of at most twenty (Common Core State Standards for
Mathematics, 2010). It is as far as the skill goes: 2.NBT.A.2 names fives, tens and hundreds only.
"""

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._counting import skip_count, steps
from warmup.skills._number import chart_rows
from warmup.skills.base import Draft, Level, Skill

_WATCH = {
    "to-10": "A slide into ones: “two, four, five”.",
    "8-to-10": "“Eight, nine”, as the count by ones is so well known just there.",
    "to-20": "The odd teens creep in: “ten, eleven”. Whisper the number between.",
    "12-to-14": "“Twelve, thirteen”: the first teens pull the child back to ones.",
    "18-to-20": "“Eighteen, nineteen”, or “eighteen, twenty-eight”.",
}


def ask(item: str, _morning: Morning, rng: SeededRandom) -> Draft:
    """Count by twos from a start to an end; the answer is every number said."""
    start, end = _stretch(item, rng)
    numbers, word = steps(start, end, 2), number_word(start)
    cues = (
        Cue("Say it again. Whisper the number between, and say the next one loud."),
        Cue(
            f"Put a finger on {word} in the chart. Skip a square, land on the next.",
            chart_rows(1, end, pointed=(start,)),
        ),
    )
    return skip_count(
        numbers,
        "twos",
        "Hop each time.",
        cues,
        rng,
        watch_for=_WATCH[item],
        picture=pictures.Pairs(end // 2, 0, "socks"),
    )


def _stretch(item: str, rng: SeededRandom) -> tuple[int, int]:
    """The first and the last number to say."""
    match item:
        case "to-10":
            start = 2 * rng.between(1, 2)
            return start, 2 * rng.between(start // 2 + 2, 5)
        case "8-to-10":
            return 2 * rng.between(1, 3), 10
        case "to-20":
            start = 2 * rng.between(1, 5)
            return start, 2 * rng.between(max(6, start // 2 + 3), 10)
        case "12-to-14":
            return 2 * rng.between(3, 5), 2 * rng.between(7, 9)
        case _:
            return 2 * rng.between(5, 7), 20


SKILL = Skill(
    id="by-twos",
    title="Count by twos",
    asks="count by twos",
    strand=Strand.COUNTING,
    levels=(
        Level(
            "to-20",
            "to twenty",
            ("to-10", "to-20", "8-to-10", "12-to-14", "18-to-20"),
            codes=("2.OA.C.3",),
            stands_on=("count:to-39",),
            table="pairs of socks",
        ),
    ),
    ask=ask,
)
