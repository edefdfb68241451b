"""Ten frames, and two of them for the teens."""

from collections.abc import Iterator

from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Line, frame, segment
from warmup.sheets.paper import ROOM

CELL = 38.0
"""A cell takes a few beans or one block: about an inch and a half."""
_WIDE, _HIGH = 5 * CELL, 2 * CELL


def _pages(_day: Day) -> Iterator[Page]:
    left = (ROOM.wide - _WIDE) / 2
    yield Page(
        "three to cut", tuple(part for n in range(3) for part in ten_frame(left, n * (_HIGH + 4), Line.CUT))
    )
    yield Page("two together", (*ten_frame(left, 0.0), *ten_frame(left, _HIGH + 12)))


def ten_frame(left: float, top: float, line: Line = Line.DRAWN) -> tuple[Drawn, ...]:
    """Two rows of five cells."""
    cells = [segment(left + n * CELL, top, left + n * CELL, top + _HIGH) for n in range(1, 5)]
    return (frame(left, top, _WIDE, _HIGH, line), segment(left, top + CELL, left + _WIDE, top + CELL), *cells)


SHEET = Sheet(
    "Ten frames",
    "To fill with things, and to see ten and some more.",
    _pages,
    Use(("ten frame",), ("ten-frame", "two-frames")),
)
