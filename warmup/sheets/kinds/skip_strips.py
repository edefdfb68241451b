"""Counting by tens, fives and twos: strips with gaps to fill."""

from collections.abc import Iterator

from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Line, Words, frame, segment
from warmup.sheets.paper import ROOM

CELL, HIGH, CELLS = 19.0, 20.0, 10
STEPS = (10, 5, 2)
GAPS = ((), (2, 5, 8), (1, 3, 6, 7))
"""The places that are empty on a strip, from 0: none, some, more."""


def _pages(_day: Day) -> Iterator[Page]:
    rows = [(step, gaps) for step in STEPS for gaps in GAPS]
    drawn = [part for row, (step, gaps) in enumerate(rows) for part in strip(step, gaps, row * (HIGH + 6))]
    yield Page("", tuple(drawn))


def strip(step: int, gaps: tuple[int, ...], top: float) -> Iterator[Drawn]:
    """Ten numbers, each so much more than the one before."""
    left = (ROOM.wide - CELLS * CELL) / 2
    yield frame(left, top, CELLS * CELL, HIGH, Line.CUT)
    for n in range(1, CELLS):
        yield segment(left + n * CELL, top, left + n * CELL, top + HIGH, Line.FAINT)
    for n in range(CELLS):
        if n not in gaps:
            yield Words((left + (n + 0.5) * CELL, top + HIGH / 2), str(step * (n + 1)), 8.0)


SHEET = Sheet(
    "Counting by tens, fives, twos",
    "Say the whole strip, then fill the gaps.",
    _pages,
    Use(skills=("by-fives", "by-tens", "by-twos")),
)
