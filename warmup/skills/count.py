"""count: say the numbers forward from one.

K.CC.A.1: count to one hundred by ones; 1.NBT.A.1: to one hundred twenty (Common Core State Standards
for Mathematics, 2010).

To twenty and to thirty-nine the child says it all. A whole count to sixty-nine or beyond takes a
five-year-old over a minute, which is long at breakfast and lets the one hard place go by in a drone. So
the adult says the last number or two of the easy part ("Thirty-four, thirty-five. Keep going to
forty-five."), and the child says the long stretch where the tens change: longer by far than the few
steps that ``count-on`` asks for. The whole count from one to a hundred, the standard itself, is a level of
its own: two minutes, now and then.
"""

from warmup.english import count_words, number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._counting import in_figures, in_words, steps, tens_change
from warmup.skills._home import upper
from warmup.skills._number import chart_rows
from warmup.skills._rising import grown
from warmup.skills.base import Draft, Level, Skill

# Where the count stops: (lowest, highest), and the week of the year from which it rises.
_WHOLE = {
    "to-20": (10, 20, 1),
    "past-15": (16, 20, 1),
    "to-39": (21, 29, 6),
    "across-30": (31, 39, 6),
    "one-to-100": (100, 100, 22),
}
# The last number the adult says, how many the child says: (lowest, highest, fewest, most), and the week from
# which the first rises. From a stretch to one hundred on, the adult stops at a whole ten.
_GOING_ON = {"to-69": (41, 56, 11, 13, 11), "across-40": (32, 36, 9, 13, 11)}
_FROM_A_TEN = {
    "to-100": (5, 8, 11, 20, 16),
    "past-99": (9, 9, 10, 10, 16),
    "to-120": (10, 10, 11, 20, 33),
    "across-100": (9, 9, 12, 19, 33),
}
_FLIGHT = 13
"""The stairs of a common flight in a house: common practice, no source."""

_WATCH = {
    "to-20": "A teen left out, or a count that runs on past the stop. Say the stop once more.",
    "past-15": "“Fourteen, sixteen”: fifteen is left out, as it does not sound like five.",
    "to-39": "“Twenty-ten”, or a rush at the end: slow down together after twenty.",
    "across-30": "“Twenty-nine, twenty-ten”. Say the tens list once, then come back.",
    "to-69": "A jump of ten: “forty-nine, sixty”. Or starting again at one.",
    "across-40": "“Thirty-nine, thirty-ten”, or back to thirty once more.",
    "to-100": "Another ten than the next after a nine. Your last word said again is fine.",
    "one-to-100": "A stop at a nine, or a ten left out. Note how far it goes with no help.",
    "past-99": "“Ninety-ten”, or a stop at ninety-nine to wait for you.",
    "to-120": "“One hundred ten, one hundred twenty”: tens instead of ones.",
    "across-100": "“One hundred, two hundred”. After one hundred the small count starts over behind it.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Count to an end: all of it, or a stretch that the adult begins."""
    if item in _WHOLE:
        low, high, opens = _WHOLE[item]
        end = rng.between(low, grown(low, high, morning.week, opens))
        return _to_100(end, rng) if item == "one-to-100" else _whole(item, end, morning.animal, rng)
    low, high, fewest, most, opens = _GOING_ON.get(item) or _FROM_A_TEN[item]
    over = rng.between(low, grown(low, high, morning.week, opens)) * (10 if item in _FROM_A_TEN else 1)
    return _stretch(item, over, over + rng.between(fewest, most), rng)


def _whole(item: str, end: int, animal: str, rng: SeededRandom) -> Draft:
    numbers = steps(1, end)
    stop, keep = number_word(end), (14, 15, 16) if item == "past-15" else ()
    across = item == "across-30"
    begin = steps(10, 12) if item == "past-15" else steps(26, 27) if across else steps(1, 3)
    # Few homes have more stairs in a flight; from there on it is steps in place.
    stairs = end <= _FLIGHT
    say = rng.phrasing(
        f"Count from one to {stop}.",
        f"Start at one. Count to {stop}.",
        f"Count to {stop} and stop there.",
        f"Close your eyes. Count from one to {stop}.",
        f"Pretend we play hide and seek. Count to {stop}.",
        f"Walk up the stairs and count to {stop}." if stairs else f"March in place and count to {stop}.",
        f"{upper(animal)} is asleep. Count to {stop} to wake {animal} up.",
        f"Tap the table as you count to {stop}.",
    )
    return Draft(
        say=say,
        table="stairs" if stairs and say.key == "f" else "",
        answer=in_words(numbers, keep),
        working=in_figures(numbers, keep) + tens_change(numbers[20:]),
        cues=(
            Cue(
                "Which tens do you know? “Ten, twenty…”" if across else "Nod once for each number, from one."
            ),
            Cue("One finger on the chart, a square for each number.", chart_rows(1, end)),
            Cue(f"Begin together: “{count_words(begin)}…” The child keeps going."),
        ),
        watch_for=_WATCH[item],
        given={"start": 1, "end": end},
    )


def _to_100(end: int, rng: SeededRandom) -> Draft:
    numbers, stop = steps(1, end), number_word(end)
    return Draft(
        say=rng.phrasing(
            f"Count from one to {stop}.",
            f"Start at one. Count all the way to {stop}.",
            f"Count to {stop}. Clap at each new ten.",
            f"Count to {stop}. I keep the tens on my fingers.",
            f"We go the whole way today. Count from one to {stop}.",
        ),
        answer=in_words(numbers),
        working=in_figures(numbers),
        cues=(
            Cue("Go back a few numbers and take a run at it."),
            Cue("One finger on the chart, a square for each number.", chart_rows(1, end)),
            Cue("Tens together: “ten, twenty…” The child counts on from there."),
        ),
        watch_for=_WATCH["one-to-100"],
        given={"start": 1, "end": end},
    )


def _stretch(item: str, over: int, end: int, rng: SeededRandom) -> Draft:
    """The adult stops at ``over``, or names it as the start; right with or without that number."""
    numbers, last, stop = steps(over + 1, end), number_word(over), number_word(end)
    say = rng.phrasing(
        f"{upper(count_words((over - 1, over)))}. Keep going to {stop}.",
        f"I say {last}. You keep going to {stop}.",
        f"Start at {last}. Keep counting to {stop}.",
        f"Count from {last} to {stop}.",
    )
    forms = [in_words(numbers), in_words(steps(over, end))]
    answer = forms.pop(0 if say.key in ("a", "b") else 1)
    return Draft(
        say=say,
        answer=answer,
        accept=tuple(forms),
        working=f"{over - 1}, {over}; then {in_figures(numbers)}",
        cues=(
            Cue(f"Say a few before it: “{count_words(steps(over - 2, over))}…” What comes next?"),
            Cue(
                f"Put a finger on {last} in the chart. The child’s finger walks on.",
                chart_rows(over, end, pointed=(over,)),
            ),
            Cue(f"Begin together: “{count_words(numbers[:2])}…” The child keeps going."),
        ),
        watch_for=_WATCH[item],
        given={"over": over, "end": end, "heard": int(say.key in ("a", "b"))},
    )


SKILL = Skill(
    id="count",
    title="Count",
    asks="say the numbers forward from one",
    strand=Strand.COUNTING,
    ladder=("to-20", "to-39", "to-69", "to-100", "one-to-100", "to-120"),
    levels=(
        Level("to-20", "to twenty", ("to-20",), misconceptions=("past-15",), codes=("K.CC.A.1",)),
        Level(
            "to-39",
            "to thirty-nine",
            ("to-39",),
            misconceptions=("across-30",),
            codes=("K.CC.A.1",),
            stands_on=("count:to-20",),
            waits_on=("count/past-15",),
            seconds=60,
        ),
        Level(
            "to-69",
            "to sixty-nine",
            ("to-69",),
            misconceptions=("across-40",),
            codes=("K.CC.A.1",),
            stands_on=("count:to-39", "by-tens:to-50"),
            waits_on=("count/across-30",),
            seconds=60,
        ),
        Level(
            "to-100",
            "a stretch to one hundred",
            ("to-100", "past-99"),
            codes=("K.CC.A.1",),
            stands_on=("count:to-69", "by-tens:to-100"),
            waits_on=("count/across-40",),
            seconds=60,
        ),
        Level(
            "one-to-100",
            "from one to one hundred, the whole count",
            ("one-to-100",),
            codes=("K.CC.A.1",),
            stands_on=("count:to-100",),
            seconds=120,
        ),
        Level(
            "to-120",
            "a stretch to one hundred twenty",
            ("to-120", "across-100"),
            codes=("1.NBT.A.1",),
            stands_on=("count:one-to-100",),
            seconds=60,
        ),
    ),
    ask=ask,
)
