"""The seven days of the week as a strip."""

from dataclasses import dataclass
from math import floor

from warmup.pictures._board import block_for, lift, paper, rows_for, square, tallest
from warmup.pictures._told import blank_words, finger_told, finger_words, in_a_row
from warmup.pictures.base import Picture
from warmup.pictures.facts import DAYS
from warmup.pictures.glyphs import extent
from warmup.pictures.sketch import Sketch

_LONGEST = max(map(len, DAYS))
_BLOCKS = max(extent(name)[0] for name in DAYS)


@dataclass(frozen=True, eq=False, repr=False)
class DayStrip(Picture):
    """The seven days in a row, beginning on ``first``; Sunday, as on wall calendars in the United States.

    Days in ``hidden`` are holes; days in ``pointed`` are set off, for a finger to rest on.
    """

    first: str = "Sunday"
    hidden: tuple[str, ...] = ()
    pointed: tuple[str, ...] = ()
    kind: str = "day-strip"

    def _order(self) -> tuple[str, ...]:
        start = DAYS.index(self.first)
        return DAYS[start:] + DAYS[:start]

    def least(self) -> tuple[int, int]:
        """Seven squares side by side, five cells each, the names cut to three letters."""
        return 35, 3

    def sketch(self, columns: int, rows: int) -> Sketch:
        """One below the other in blocks; else in print side by side, below each other, or three letters."""
        sketch = Sketch(columns, rows)
        across = columns // 7
        block = block_for(_BLOCKS, columns, rows / 7, 9)
        if block or (across < _LONGEST + 2 and rows >= rows_for(7, 2)):
            tall = floor(2 * rows / 7) / 2 if block else float(tallest(7, rows, 4))
            wide = min(columns, (_BLOCKS + 6) * block if block else _LONGEST + 15)
            left, top = (columns - wide) // 2, float((rows - rows_for(7, 1) * tall) // 2 * 2)
            if not block:
                top = (rows - rows_for(7, int(tall))) // 2 * 2 + lift(int(tall))
            for place, day in enumerate(self._order()):
                self._day(sketch, place, day, (left, top + 2 * place * tall, wide, tall), block)
            return sketch
        wide = min(across, _LONGEST + 8)
        high = tallest(1, rows, wide // 2)
        left, top = (columns - 7 * wide) // 2, float((rows - high) // 2 * 2)
        for place, day in enumerate(self._order()):
            name = day if wide >= _LONGEST + 2 else day[:3]
            self._day(sketch, place, name, (left + place * wide, top + lift(high), wide, high))
        return sketch

    def _day(
        self, sketch: Sketch, place: int, name: str, at: tuple[int, float, int, float], block: int = 0
    ) -> None:
        """One square: column, top in cell widths, columns and rows."""
        day = self._order()[place]
        hidden = day in self.hidden
        ground = paper(place, hidden=hidden, pointed=day in self.pointed)
        square(sketch, *at, ground, "" if hidden else name, block)

    def words(self) -> str:
        """What it is, how many are blank, and where the finger is."""
        blank = blank_words(len(self.hidden))
        return f"the days of the week in a strip{blank}{finger_words(self.pointed)}"

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
