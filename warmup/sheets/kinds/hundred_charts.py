"""Number charts in rows of ten: to a hundred, empty, with some numbers hidden, and to a hundred twenty."""

from collections.abc import Collection, Iterator

from warmup.randomness import SeededRandom
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Words, frame, segment
from warmup.sheets.paper import ROOM

CELL = 19.0
_HIDDEN = 12
"""How many numbers are hidden; which ones changes with the date."""


def _pages(day: Day) -> Iterator[Page]:
    yield Page("to one hundred", tuple(chart(range(1, 101))))
    hidden = SeededRandom("hundred-charts", day.date).sample(range(2, 100), _HIDDEN)
    yield Page("some numbers hide", tuple(chart(range(1, 101), hidden)))
    yield Page("empty", tuple(chart(range(1, 101), range(1, 101))))
    yield Page("to one hundred twenty", tuple(chart(range(1, 121))))


def chart(numbers: range, hidden: Collection[int] = ()) -> Iterator[Drawn]:
    """A square a number, ten in a row; those hidden are empty."""
    left, rows = (ROOM.wide - 10 * CELL) / 2, len(numbers) // 10
    wide, high = 10 * CELL, rows * CELL
    yield frame(left, 0.0, wide, high)
    for n in range(1, 10):
        yield segment(left + n * CELL, 0.0, left + n * CELL, high)
    for n in range(1, rows):
        yield segment(left, n * CELL, left + wide, n * CELL)
    for at, number in enumerate(numbers):
        if number not in hidden:
            yield Words((left + (at % 10 + 0.5) * CELL, (at // 10 + 0.5) * CELL), str(number), 8.0)


SHEET = Sheet(
    "Hundred charts",
    "To point, to count by tens, and to find what hides.",
    _pages,
    Use(("hundred chart",), ("hundred-chart",)),
)
