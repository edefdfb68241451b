"""count-on: go on counting from a given number, some steps.

K.CC.A.2: count forward from a number other than 1 inside the known range, to 100 at the year's end
(Common Core State Standards for Mathematics, 2010).
"""

from warmup import pictures
from warmup.english import count_words, number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._counting import from_there, steps, tens_change
from warmup.skills._home import upper
from warmup.skills._number import chart_rows
from warmup.skills._rising import grown
from warmup.skills.base import Draft, Level, Skill

# Where a count starts and how many steps it takes: (lowest start, highest start, fewest, most steps), and
# the week of the year from which the start rises. Starts inside the teens have a record of their own, so the
# plain item goes into them and out of them.
_RANGES = {
    "within-10": (2, 6, 3, 4, 7),
    "into-the-teens": (7, 10, 3, 4, 13),
    "out-of-the-teens": (17, 19, 3, 4, 13),
    "teens": (11, 14, 4, 5, 13),
    "anywhere": (31, 95, 4, 5, 26),
}
_ACROSS = {"across-30": 30, "across-40": 40, "across-50": 50}
_WATCH = {
    "within-10": "Starting again at one. Say the start together, then let the child keep going.",
    "within-20": "Saying the start twice, so that the count ends one short. Past nineteen: “ten-teen”.",
    "teens": "Starting again at one, or fifteen left out.",
    "anywhere": "Another ten than the next after a nine, or a fresh start at one.",
    "across-30": "“Twenty-ten” after twenty-nine.",
    "across-40": "“Thirty-ten” after thirty-nine, or thirty once more.",
    "across-50": "“Forty-ten” after forty-nine, or “fifteen” for fifty.",
}
# Before the numerals of a level are taught, the start is only heard.
_SPOKEN_ONLY = ("within-10", "within-20", "teens")


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Count on from a start to an end; the answer is what the child says, after what the adult said."""
    start, end = _stretch(item, morning.week, rng)
    numbers, word = steps(start, end), number_word(start)
    # From below the start where there is room, so that the cue leaves the next word to the child.
    begin = steps(start - 2, start) if start > 6 else numbers[:2]
    cup = item in _SPOKEN_ONLY
    say = _way(start, end, rng, cup=cup)
    heard = say.key == "b" or (say.key == "d" and start > 2)
    answer, accept = from_there(numbers, 1 if heard else 0)
    return Draft(
        say=say,
        do="Drop one more into the cup for each number the child says." if cup and say.key == "c" else "",
        answer=answer,
        accept=accept,
        working=f"{start}, {start + 1}, {start + 2} … {end}{tens_change(numbers)}",
        cues=(
            Cue(
                f"Pretend {word} are in a cup. Drop in one more. How many now?"
                if cup
                else f"I said {word}. What number comes next?"
            ),
            Cue(
                f"Put a finger on {word} in the chart. The child’s finger walks on.",
                chart_rows(start, end, pointed=(start,)),
            ),
            Cue(f"Begin together: “{count_words(begin)}…” The child keeps going."),
        ),
        watch_for=_WATCH[item],
        given={"start": start, "end": end, "heard": int(heard)},
        picture=None if cup else pictures.Numeral(str(start)),
    )


def _way(start: int, end: int, rng: SeededRandom, *, cup: bool) -> Phrasing:
    here, stop = number_word(start), number_word(end)
    return rng.phrasing(
        f"Start at {here}. Count on to {stop}.",
        f"I say {here}. You keep going to {stop}.",
        f"Pretend {here} are in the cup. Count on to {stop}."
        if cup
        else f"Keep counting from {here} to {stop}.",
        # Not "one, two": a count from one is another skill's.
        f"{upper(count_words((start - 1, start)))}. Keep going to {stop}."
        if start > 2
        else f"Keep counting from {here} to {stop}.",
        f"Count from {here} to {stop}.",
    )


def _stretch(item: str, week: int, rng: SeededRandom) -> tuple[int, int]:
    """The first and the last number to say."""
    if item in _ACROSS:
        ten = _ACROSS[item]
        return ten - rng.between(1, 4), ten + rng.between(1, 2)
    where = item if item != "within-20" else rng.pick(("into-the-teens", "out-of-the-teens"))
    low, high, fewest, most, opens = _RANGES[where]
    start = rng.between(low, grown(low, high, week, opens))
    return start, min(100, start + rng.between(fewest, most))


SKILL = Skill(
    id="count-on",
    title="Count on",
    asks="count on from a given number, some steps",
    strand=Strand.COUNTING,
    ladder=("within-10", "within-20", "to-50", "to-95"),
    levels=(
        Level(
            "within-10",
            "within ten",
            ("within-10",),
            codes=("K.CC.A.2",),
            stands_on=("neighbors:after-to-10",),
            seconds=20,
            table="cereal in a cup",
        ),
        Level(
            "within-20",
            "within twenty, and out of the teens",
            ("within-20",),
            misconceptions=("teens",),
            codes=("K.CC.A.2",),
            stands_on=("count-on:within-10", "count:to-39"),
            seconds=20,
            table="cereal in a cup",
        ),
        Level(
            "to-50",
            "to fifty, across a ten",
            ("across-40", "across-50"),
            misconceptions=("across-30",),
            codes=("K.CC.A.2",),
            stands_on=("count-on:within-20", "count:to-69"),
            waits_on=("count/across-30", "count-on/teens"),
        ),
        Level(
            "to-95",
            "anywhere to 95",
            ("anywhere",),
            codes=("K.CC.A.2",),
            stands_on=("count-on:to-50", "count:to-100"),
            waits_on=("count-on/across-30",),
        ),
    ),
    ask=ask,
)
