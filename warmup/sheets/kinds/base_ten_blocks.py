"""Base-ten blocks, a centimeter to the unit."""

from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Line, frame, segment
from warmup.sheets.paper import ROOM

UNIT = 10.0
"""A unit is a square centimeter, a rod ten of them, a flat ten rods."""


def pages(_day: Day) -> tuple[Page, ...]:
    """Ten rods and twenty units, then two flats."""
    rods, units = _grid(0.0, 10, Line.CUT, Line.FAINT), _grid(11 * UNIT, 2, Line.CUT, Line.CUT)
    flats = _grid(0.0, 10, Line.FAINT, Line.FAINT), _grid(11 * UNIT, 10, Line.FAINT, Line.FAINT)
    return Page("ten rods and twenty units", rods + units), Page("two flats", flats[0] + flats[1])


def _grid(top: float, rows: int, down: Line, across: Line) -> tuple[Drawn, ...]:
    """Ten units a row, with one kind of lines between columns and one between rows, cut out all round."""
    wide, high = 10 * UNIT, rows * UNIT
    left = (ROOM.wide - wide) / 2
    columns = [segment(left + n * UNIT, top, left + n * UNIT, top + high, down) for n in range(1, 10)]
    lines = [segment(left, top + n * UNIT, left + wide, top + n * UNIT, across) for n in range(1, rows)]
    return (*columns, *lines, frame(left, top, wide, high, Line.CUT))


SHEET = Sheet(
    "Base-ten blocks",
    "Ones, tens and hundreds to lay out: a unit is a centimeter wide.",
    pages,
    Use(pictures=("base-ten",)),
    small=True,
)
