"""Patterns to go on with: the last places of each strip are empty."""

from collections.abc import Iterator

from warmup.pictures.shapes import Point
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Line, Ring, closed, frame, segment
from warmup.sheets.paper import ROOM

CELL, CELLS, SHOWN = 24.0, 8, 6
PATTERNS = ("ab", "aab", "abb", "ba", "abc", "aabb", "abac")
"""Units of patterns, a letter a figure; a strip shows one and a half of the longest."""
_SIZE = 8.0


def _pages(_day: Day) -> Iterator[Page]:
    drawn = [part for row, unit in enumerate(PATTERNS) for part in strip(unit, row * (CELL + 8))]
    yield Page("", tuple(drawn))


def strip(unit: str, top: float) -> Iterator[Drawn]:
    """Six figures of a pattern, and two empty places."""
    left = (ROOM.wide - CELLS * CELL) / 2
    yield frame(left, top, CELLS * CELL, CELL, Line.CUT)
    for n in range(1, CELLS):
        yield segment(left + n * CELL, top, left + n * CELL, top + CELL, Line.FAINT)
    for n in range(SHOWN):
        yield _figure(unit[n % len(unit)], (left + (n + 0.5) * CELL, top + CELL / 2))


def _figure(letter: str, middle: Point) -> Drawn:
    x, y = middle
    match letter:
        case "a":
            return Ring(middle, _SIZE)
        case "b":
            return frame(x - _SIZE, y - _SIZE, 2 * _SIZE, 2 * _SIZE)
        case _:
            return closed(((x, y - _SIZE), (x + _SIZE, y + _SIZE), (x - _SIZE, y + _SIZE)))


SHEET = Sheet(
    "Pattern strips",
    "Say it along, then draw or lay what comes next.",
    _pages,
    Use(pictures=("pattern-row",)),
)
