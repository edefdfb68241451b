"""count-on: go on counting from a given number, some steps.

K.CC.A.2: count forward from a number other than 1 inside the known range, to 100 at the year's end
(Common Core State Standards for Mathematics, 2010).
"""

from warmup.draw import Draw
from warmup.morning import Cue, Morning, Strand
from warmup.pictures.hundred_chart import HundredChart
from warmup.skills.base import Draft, Level, Skill
from warmup.words import count_words, number_word

# Where a count starts and how many steps it takes: (lowest start, highest start, fewest, most steps).
_RANGES = {
    "within-10": (2, 6, 3, 4),
    "within-20": (11, 16, 3, 4),
    "teens": (8, 10, 4, 6),
    "anywhere": (31, 95, 4, 5),
}
_ACROSS = {"across-30": 30, "across-40": 40, "across-50": 50}
_WATCH = {
    "within-10": "Starting again at one. Say the start together, then leave the child to go on.",
    "within-20": "Saying the start twice, so that the count ends one short.",
    "teens": "Skipping fifteen, or thirteen said as thirty.",
    "anywhere": "A new run of tens started with the wrong word.",
    "across-30": "“Twenty-ten” after twenty-nine.",
    "across-40": "“Thirty-ten” after thirty-nine.",
    "across-50": "“Forty-ten” after forty-nine.",
}


def ask(item: str, _morning: Morning, draw: Draw) -> Draft:
    """Count on from a start to an end; the answer is every number said."""
    start, end = _stretch(item, draw)
    numbers = range(start, end + 1)
    said = count_words(numbers)
    row = (start - 1) // 10 * 10
    chart = HundredChart(row + 1, max(row + 10, -(-end // 10) * 10), pointed=(start,))
    tens = f"{start}, {start + 1}, {start + 2} … {end}"
    crossed = [n for n in numbers if n % 10 == 0 and n > start]
    return Draft(
        say=draw.way(
            f"Start at {number_word(start)}. Count on to {number_word(end)}.",
            f"I have counted to {number_word(start)}. Say it and go on to {number_word(end)}.",
            f"The stairs start at {number_word(start)}. Count up. Stop at {number_word(end)}.",
        ),
        answer=said,
        accept=(count_words(numbers[1:]),),
        working=f"{tens}: past the {crossed[0] - 1} the tens change" if crossed else tens,
        cues=(
            Cue(f"Wait. Then: we are on {number_word(start)} already. One step more."),
            Cue(f"Put a finger on {number_word(start)} in the chart. The child’s finger walks on.", chart),
            Cue(f"Begin together: “{count_words(numbers[:2])}…” and fall silent."),
        ),
        watch_for=_WATCH[item],
        given={"start": start, "end": end},
    )


def _stretch(item: str, draw: Draw) -> tuple[int, int]:
    """The first and the last number to say."""
    if item in _ACROSS:
        ten = _ACROSS[item]
        return ten - draw.between(2, 4), ten + draw.between(1, 3)
    low, high, fewest, most = _RANGES[item]
    start = draw.between(low, high)
    return start, min(100, start + draw.between(fewest, most))


SKILL = Skill(
    id="count-on",
    title="Count on",
    asks="count on from a given number, some steps",
    strand=Strand.COUNTING,
    ladder=True,
    levels=(
        Level(
            "within-10",
            "within ten",
            ("within-10",),
            codes=("K.CC.A.2",),
            seconds=20,
            table="cereal in a cup",
        ),
        Level(
            "within-20", "within twenty", ("within-20", "teens"), codes=("K.CC.A.2",), table="cereal in a cup"
        ),
        Level(
            "across-tens",
            "across a ten, from 25 to 49",
            ("across-30", "across-40", "across-50"),
            codes=("K.CC.A.2",),
            stands_on=("count:to-69",),
        ),
        Level("anywhere", "anywhere to 95", ("anywhere",), codes=("K.CC.A.2",)),
    ),
    ask=ask,
)
