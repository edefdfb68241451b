"""A hundred chart, or the first rows of one."""

from dataclasses import dataclass

from warmup.pictures._board import block_for, lift, paper, rows_for, square
from warmup.pictures._told import blank_told, blank_words, finger_told, finger_words
from warmup.pictures.base import Picture
from warmup.pictures.shapes import CELL_HEIGHT
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class HundredChart(Picture):
    """Numbers from ``first`` to ``last`` in rows of ten, each row beginning one past a whole ten.

    Numbers in ``hidden`` are left out: their squares are bare, and the one asked for is a hole.
    ``pointed`` numbers are set off, for a finger to rest on.
    """

    first: int = 1
    last: int = 100
    hidden: tuple[int, ...] = ()
    pointed: tuple[int, ...] = ()
    kind: str = "hundred-chart"

    def _rows(self) -> range:
        return range((self.first - 1) // 10, (self.last - 1) // 10 + 1)

    def least(self) -> tuple[int, int]:
        """Three cells a number, one row a ten; four once numbers past 100 are to be read."""
        return 40 if self.last > 100 else 30, len(self._rows())

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Squares on a checkerboard as wide as the pane has room for, with block numerals on wide ones."""
        sketch = Sketch(columns, rows)
        lines = self._rows()
        wide = min(columns // 10, 16)
        high = max(1, min(rows // len(lines), (wide + 1) // 2))
        # A hundred alone has no number to its right that it could run into.
        block = block_for(7 if self.last < 100 else 9 if self.last == 100 else 11, wide, high)
        taken = min(rows, rows_for(len(lines), high))
        left, top = (columns - 10 * wide) // 2, (rows - taken) // 2 * CELL_HEIGHT
        if taken > high * len(lines):
            top += lift(high)
        for number in range(self.first, self.last + 1):
            line, place = divmod(number - 1, 10)
            hidden = number in self.hidden
            ground = paper(line + place, hidden=hidden, pointed=number in self.pointed)
            # Two digits as near the middle as cells allow; the ones stand under one another in every column.
            text = str(number) if block else f"{number:>{wide // 2 + 1}}".ljust(wide)
            row = top + (line - lines.start) * high * CELL_HEIGHT
            square(sketch, left + place * wide, row, wide, high, ground, "" if hidden else text, block)
        return sketch

    def words(self) -> str:
        """Its range, whether squares are bare ("1 left blank" would read as the number), and the fingers."""
        bare = blank_words(len(self.hidden))
        return f"a chart of the numbers {self.first} to {self.last} in rows{bare}{finger_words(self.pointed)}"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        range_ = f"a number chart in rows of ten from {self.first} to {self.last}"
        return f"{range_}{blank_told(self.hidden)}{finger_told(self.pointed)}"

    def shows(self) -> tuple[str, ...]:
        """Every numeral that is not hidden."""
        return tuple(str(n) for n in range(self.first, self.last + 1) if n not in self.hidden)

    def marked(self) -> tuple[str, ...]:
        """The numbers under the finger."""
        return tuple(map(str, self.pointed))


PICTURE = HundredChart
