"""What the counting skills share: stretches of numbers, their short form for the adult, and the chart."""

from collections.abc import Collection, Sequence

from warmup import pictures
from warmup.words import count_words

_WHOLE = 12
"""A stretch of at most so many numbers is written out; of a longer one only the places that matter."""


def steps(start: int, end: int, by: int = 1) -> range:
    """The numbers said from ``start`` to ``end``, both included; ``by`` is negative to go back."""
    return range(start, end + (1 if by > 0 else -1), by)


def in_words(numbers: Sequence[int], keep: Collection[int] = ()) -> str:
    """The stretch in words. A long one is shortened: "one, two … twenty-nine, thirty … thirty-three".

    What stays: the first two, the last, the places past ten where the tens change, those in ``keep``.
    """
    return " … ".join(map(count_words, _runs(numbers, keep)))


def in_figures(numbers: Sequence[int], keep: Collection[int] = ()) -> str:
    """The same in figures: "1, 2 … 29, 30 … 33"."""
    return " … ".join(", ".join(map(str, run)) for run in _runs(numbers, keep))


def _runs(numbers: Sequence[int], keep: Collection[int]) -> list[list[int]]:
    """The numbers that stay, in runs without a gap."""
    last = len(numbers) - 1
    runs: list[list[int]] = [[]]
    for at, number in enumerate(numbers):
        changes = any(n > 10 and n in numbers and n % 10 == 0 for n in (number, number + 1))
        if last < _WHOLE or at < 2 or at == last or changes or number in keep:
            runs[-1].append(number)
        elif runs[-1]:
            runs.append([])
    return [run for run in runs if run]


def tens_change(numbers: Sequence[int]) -> str:
    """A remark for the working on the first place where the tens change; empty where there is none."""
    crossed = [n for n in numbers[1:] if n % 10 == 0]
    return f": past the {crossed[0] - 1} the tens change" if crossed else ""


def opening(numbers: Sequence[int]) -> str:
    """How adult and child begin together: the first two, or of a short stretch only the first."""
    return f"“{count_words(numbers[: 2 if len(numbers) > 3 else 1])}…”"


def rows_around(
    low: int, high: int, pointed: tuple[int, ...] = (), hidden: tuple[int, ...] = ()
) -> "pictures.HundredChart":
    """The whole rows of the chart that hold the numbers from ``low`` to ``high``."""
    first = max(0, low - 1) // 10 * 10 + 1
    return pictures.HundredChart(first, -(-high // 10) * 10, hidden, pointed)
