"""A sock goes to and fro, and each toss is one number more."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
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
_SETUP = "Roll a pair of socks into a ball, and sit across from each other."
_ONCE = "Say one number at each toss."


def made(level: LevelId, morning: Morning, rng: SeededRandom) -> Play:
    """A count of a dozen numbers at most: on from a start, or by steps from the first."""
    if level in _SKIPS:
        step, end, name = _SKIPS[level]
        said = number_word(end)
        return Play(
            _SETUP,
            (f"Count by {name}.", _ONCE, f"Stop at {said}."),
            f"when you have said {said} together",
            "Does the count keep its step to the end?",
            {"start": step, "end": end, "step": step},
            end // step,
        )
    start, end = _stretch(level, morning, rng)
    said = number_word(end)
    return Play(
        _SETUP,
        (f"Count on from {number_word(start)}.", _ONCE, f"Stop at {said}."),
        f"when you have said {said} together",
        "Where a ten changes: which number comes after the nine?" if end > 20 else "Is a number left out?",
        {"start": start, "end": end},
        end - start + 1,
    )


def _stretch(level: LevelId, morning: Morning, rng: SeededRandom) -> tuple[int, int]:
    """The first and the last number."""
    if level == _SCHOOL_DAY:
        end = max(2, morning.school_day)
        return max(1, end - 9), end
    low, high, steps = _STARTS[level]
    start = rng.between(low, high)
    return (start, 100) if level in _TO_THE_END else (start, start + rng.between(steps - 2, steps))


GAME = Game(
    id="sock-by-sock",
    name="Sock by sock",
    needs=("socks",),
    levels=levels(*_STARTS, *_SKIPS, _SCHOOL_DAY),
    made=made,
    two="Sit in a triangle: the sock goes around.",
)
