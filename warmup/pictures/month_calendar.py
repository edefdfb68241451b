"""A wall calendar of one month, as it hangs in kitchens in the United States: the week begins on Sunday."""

import calendar
from dataclasses import dataclass

from warmup.pictures._board import block_for, lift, paper, rows_for, square, tallest
from warmup.pictures._told import blank_told, blank_words, finger_told, finger_words
from warmup.pictures.base import Picture
from warmup.pictures.facts import DAYS, MONTHS
from warmup.pictures.glyphs import extent
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import CELL_HEIGHT
from warmup.pictures.sketch import Sketch

_HEAD_BLOCKS = max(extent(head[:3])[0] for head in DAYS)


@dataclass(frozen=True, eq=False, repr=False)
class MonthCalendar(Picture):
    """The month ``month`` (1 to 12) of ``year``, a square a day, seven to a row.

    Days in ``hidden`` are holes; days in ``pointed`` are set off, for a finger to rest on. Days past
    ``upto`` are bare squares, as on a calendar whose numbers are put up day by day.
    """

    year: int
    month: int
    hidden: tuple[int, ...] = ()
    pointed: tuple[int, ...] = ()
    upto: int = 31
    kind: str = "month-calendar"

    def _blanks(self) -> int:
        """How many squares of the first week belong to the month before."""
        return (calendar.weekday(self.year, self.month, 1) + 1) % 7

    def _days(self) -> int:
        return calendar.monthrange(self.year, self.month)[1]

    def least(self) -> tuple[int, int]:
        """Four cells a day, and a row for the name, the heads and each of as many as six weeks."""
        return 28, 8

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Squares on a checkerboard under the name of the month and the heads of the days."""
        sketch = Sketch(columns, rows)
        lines = 2 - (-(self._blanks() + self._days()) // 7)
        high = tallest(lines, rows, 8)
        wide = max(4, min(columns // 7, 2 * high + 5))
        block = block_for(7, wide, high)
        left = (columns - 7 * wide) // 2
        top = (rows - rows_for(lines, high)) // 2 * CELL_HEIGHT + lift(high)
        letters = min(block, block_for(_HEAD_BLOCKS, wide, high, 9))
        title = f"{MONTHS[self.month - 1]} {self.year}"
        square(sketch, left, top, 7 * wide, high, Ink.GROUND, title, letters)
        for place, head in enumerate(DAYS):
            row = top + high * CELL_HEIGHT
            square(sketch, left + place * wide, row, wide, high, Ink.GROUND, head[:3], letters)
        for day in range(1, self._days() + 1):
            line, place = divmod(self._blanks() + day - 1, 7)
            ground = paper(line + place, hidden=day in self.hidden, pointed=day in self.pointed)
            text = str(day) if day not in self.hidden and day <= self.upto else ""
            row = top + (line + 2) * high * CELL_HEIGHT
            square(sketch, left + place * wide, row, wide, high, ground, text, block)
        return sketch

    def words(self) -> str:
        """Which month, how many squares are blank, and where the finger is."""
        blank = blank_words(len(self.hidden))
        bare = ", its numbers put up day by day" if self.upto < self._days() else ""
        finger = finger_words(self.pointed)
        return f"a wall calendar of {MONTHS[self.month - 1]} {self.year}{bare}{blank}{finger}"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        upto = f"; numbers only to {self.upto}" if self.upto < self._days() else ""
        month = f"{MONTHS[self.month - 1]} {self.year}"
        return f"a wall calendar of {month}{upto}{blank_told(self.hidden)}{finger_told(self.pointed)}"

    def shows(self) -> tuple[str, ...]:
        """The month, the year, the heads and every number that is up."""
        days = range(1, min(self.upto, self._days()) + 1)
        numbers = tuple(str(day) for day in days if day not in self.hidden)
        return (MONTHS[self.month - 1], str(self.year), *DAYS, *numbers)

    def marked(self) -> tuple[str, ...]:
        """The numbers under the finger."""
        return tuple(map(str, self.pointed))


PICTURE = MonthCalendar
