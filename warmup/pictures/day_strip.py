"""The seven days of the week as a strip."""

from typing import NamedTuple

from warmup.pictures._board import blank_words, lift, paper, rows_for, square, tallest
from warmup.pictures._told import finger_told, in_a_row
from warmup.pictures.canvas import Canvas, Drawing

_DAYS = ("Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday")
_LONGEST = max(map(len, _DAYS))


class DayStrip(NamedTuple):
    """The seven days in a row, beginning on ``first``; Sunday, as on wall calendars in the United States.

    Days in ``hidden`` are holes; days in ``pointed`` are set off, for a finger to rest on.
    """

    first: str = "Sunday"
    hidden: tuple[str, ...] = ()
    pointed: tuple[str, ...] = ()
    kind: str = "day-strip"

    def _order(self) -> tuple[str, ...]:
        start = _DAYS.index(self.first)
        return _DAYS[start:] + _DAYS[:start]

    def least(self) -> tuple[int, int]:
        """Seven squares side by side, five cells each, the names cut to three letters."""
        return 35, 3

    def draw(self, columns: int, rows: int) -> Drawing:
        """Side by side in whole names, else one below the other, else side by side in three letters."""
        canvas = Canvas(columns, rows)
        across = columns // 7
        if across < _LONGEST + 2 and rows >= rows_for(7, 2):
            self._stack(canvas)
            return canvas.drawing()
        wide = min(across, _LONGEST + 4)
        high = tallest(1, rows, wide // 2)
        left, top = (columns - 7 * wide) // 2, float((rows - high) // 2 * 2)
        for place, day in enumerate(self._order()):
            name = day if wide >= _LONGEST + 2 else day[:3]
            self._day(canvas, place, name, (left + place * wide, top + lift(high), wide, high))
        return canvas.drawing()

    def _stack(self, canvas: Canvas) -> None:
        """One below the other."""
        high = tallest(7, canvas.rows, 4)
        wide = min(canvas.columns, _LONGEST + 11)
        left, top = (canvas.columns - wide) // 2, float((canvas.rows - rows_for(7, high)) // 2 * 2)
        for place, day in enumerate(self._order()):
            self._day(canvas, place, day, (left, top + lift(high) + 2 * place * high, wide, high))

    def _day(self, canvas: Canvas, place: int, name: str, at: tuple[int, float, int, int]) -> None:
        """One square: column, top in cell widths, columns and rows."""
        day = self._order()[place]
        hidden = day in self.hidden
        ground = paper(place, hidden=hidden, pointed=day in self.pointed)
        column, top, wide, high = at
        square(canvas, column, top, wide, high, ground, "" if hidden else name)

    def words(self) -> str:
        """What it is, how many are blank, and where the finger is."""
        blank = blank_words(len(self.hidden))
        finger = f", a finger on {' and '.join(self.pointed)}" if self.pointed else ""
        return f"the days of the week in a strip{blank}{finger}"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        names = [day if day not in self.hidden else "?" for day in self._order()]
        return f"the days in a strip, left to right: {in_a_row(names)}{finger_told(self.pointed)}"

    def shows(self) -> tuple[str, ...]:
        """Every name that is not hidden."""
        return tuple(day for day in self._order() if day not in self.hidden)

    def marked(self) -> tuple[str, ...]:
        """The names under the finger."""
        return self.pointed


PICTURE = DayStrip
