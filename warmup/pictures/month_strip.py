"""The twelve months of the year in a grid, read row by row."""

from dataclasses import dataclass

from warmup.pictures._board import block_for, lift, paper, rows_for, square, tallest
from warmup.pictures._told import blank_words, finger_told, finger_words, in_a_row
from warmup.pictures.base import Picture
from warmup.pictures.facts import MONTHS
from warmup.pictures.glyphs import extent
from warmup.pictures.sketch import Sketch

_LONGEST = max(map(len, MONTHS))
_BLOCKS = max(extent(name)[0] for name in MONTHS)


@dataclass(frozen=True, eq=False, repr=False)
class MonthStrip(Picture):
    """The twelve months in order, beginning with ``first``.

    Months in ``hidden`` are holes; months in ``pointed`` are set off, for a finger to rest on.
    """

    first: str = "January"
    hidden: tuple[str, ...] = ()
    pointed: tuple[str, ...] = ()
    kind: str = "month-strip"

    def _order(self) -> tuple[str, ...]:
        start = MONTHS.index(self.first)
        return MONTHS[start:] + MONTHS[:start]

    def least(self) -> tuple[int, int]:
        """Three months a row, each the longest name and a blank either side."""
        return 3 * (_LONGEST + 2), 4

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Three or four months a row, whichever gives the higher squares that still hold a name."""
        sketch = Sketch(columns, rows)
        fits = [across for across in (3, 4) if columns // across >= _LONGEST + 2]
        across = max(fits, key=lambda n: (tallest(12 // n, rows, 9), -n)) if fits else 3
        lines = 12 // across
        high = tallest(lines, rows, 9)
        wide = columns // across
        block = block_for(_BLOCKS, wide, high, 9)
        wide = wide if block else min(wide, _LONGEST + 2 + 4 * high)
        left, top = (columns - across * wide) // 2, (rows - rows_for(lines, high)) // 2 * 2 + lift(high)
        for place, month in enumerate(self._order()):
            line, at = divmod(place, across)
            hidden = month in self.hidden
            ground = paper(line + at, hidden=hidden, pointed=month in self.pointed)
            name = "" if hidden else month
            square(sketch, left + at * wide, top + 2 * line * high, wide, high, ground, name, block)
        return sketch

    def words(self) -> str:
        """What it is, how many are blank, and where the finger is."""
        blank = blank_words(len(self.hidden))
        return f"the months of the year in order{blank}{finger_words(self.pointed)}"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        names = [month if month not in self.hidden else "?" for month in self._order()]
        return f"the months in order: {in_a_row(names)}{finger_told(self.pointed)}"

    def shows(self) -> tuple[str, ...]:
        """Every name that is not hidden."""
        return tuple(month for month in self._order() if month not in self.hidden)

    def marked(self) -> tuple[str, ...]:
        """The names under the finger."""
        return self.pointed


PICTURE = MonthStrip
