"""Where a count begins and where it stops, for every game in which a row of numbers is said."""

from typing import NamedTuple

from warmup.english import number_word
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

# The lowest and the highest start, and how many steps there are at most.
_STARTS = {
    "count:to-20": (8, 11, 9),
    "count:to-39": (22, 29, 10),
    "count:to-69": (36, 58, 10),
    "count:to-100": (66, 89, 11),
    "count:one-to-100": (86, 90, 14),
    "count:to-120": (94, 109, 11),
    "count-on:within-10": (2, 4, 6),
    "count-on:within-20": (8, 12, 8),
    "count-on:to-50": (26, 39, 10),
    "count-on:to-95": (44, 84, 11),
    "school-day:to-the-hundredth": (88, 91, 12),
}
# The step, and where the count ends.
_SKIPS = {
    "by-tens:to-50": (10, 50, "tens"),
    "by-tens:to-100": (10, 100, "tens"),
    "by-fives:to-25": (5, 25, "fives"),
    "by-fives:to-50": (5, 50, "fives"),
    "by-twos:to-20": (2, 20, "twos"),
}
_TO_THE_END = ("count:one-to-100", "school-day:to-the-hundredth")
_SCHOOL_DAY = "school-day:count"
LEVELS = (*_STARTS, *_SKIPS, _SCHOOL_DAY)
"""The levels that have such a count."""


class Count(NamedTuple):
    """A count from a first to a last number in steps, how a child is told of it, and what to listen for."""

    first: int
    last: int
    step: int
    told: str
    listen: str

    @property
    def numbers(self) -> int:
        """How many numbers are said."""
        return (self.last - self.first) // self.step + 1

    @property
    def given(self) -> dict[str, int]:
        """What it was made from."""
        return {"start": self.first, "end": self.last, "step": self.step}


def count(level: LevelId, morning: Morning, rng: SeededRandom) -> Count:
    """A dozen numbers or so: on from a start, or by steps from the first."""
    if level in _SKIPS:
        step, last, name = _SKIPS[level]
        return Count(step, last, step, f"Count by {name}.", "Does the count keep its step to the end?")
    first, last = _stretch(level, morning, rng)
    ten = "Where a ten changes: which number comes after the nine?"
    return Count(
        first, last, 1, f"Count on from {number_word(first)}.", ten if last > 20 else "Is a number left out?"
    )


def _stretch(level: LevelId, morning: Morning, rng: SeededRandom) -> tuple[int, int]:
    """The first and the last number."""
    if level == _SCHOOL_DAY:
        end = max(2, morning.school_day)
        return max(1, end - 9), end
    low, high, steps = _STARTS[level]
    start = rng.between(low, high)
    return (start, 100) if level in _TO_THE_END else (start, start + rng.between(steps - 2, steps))
