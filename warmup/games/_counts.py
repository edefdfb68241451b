"""What games have in common in which a row of numbers is said: where the count begins, and where it stops."""

from warmup.english import number_word
from warmup.games.base import Play
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


def count(level: LevelId, morning: Morning, rng: SeededRandom, setup: str, turn: str) -> Play:
    """A play of a dozen numbers or so: on from a start, or by steps from the first.

    ``setup`` and ``turn``, what is done at each number, are the game's own.
    """
    first, last, step = _stretch(level, morning, rng)
    told, listen = f"Count on from {number_word(first)}.", "Is a number left out?"
    if level in _SKIPS:
        told, listen = f"Count by {_SKIPS[level][2]}.", "Does the count keep its step to the end?"
    elif last > 20:
        listen = "Where a ten changes: which number comes after the nine?"
    end = number_word(last)
    return Play(
        setup,
        (told, turn, f"Stop at {end}."),
        f"when you have said {end} together",
        listen,
        {"start": first, "end": last, "step": step},
        (last - first) // step + 1,
    )


def _stretch(level: LevelId, morning: Morning, rng: SeededRandom) -> tuple[int, int, int]:
    """The first and the last number, and the step."""
    if level in _SKIPS:
        step, end, _ = _SKIPS[level]
        return step, end, step
    if level == _SCHOOL_DAY:
        end = max(2, morning.school_day)
        return max(1, end - 9), end, 1
    low, high, steps = _STARTS[level]
    start = rng.between(low, high)
    end = 100 if level in _TO_THE_END else start + rng.between(steps - 2, steps)
    return start, end, 1
