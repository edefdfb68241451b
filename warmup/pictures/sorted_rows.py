"""Rows of pieces: mixed, to be sorted and counted, or a kind a row, to be compared."""

from dataclasses import dataclass

from warmup.pictures._told import in_runs
from warmup.pictures.base import Picture
from warmup.pictures.pieces import piece
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class SortedRows(Picture):
    """Rows from the top down, each of pieces from left to right: "circle", "square" or "triangle".

    Pieces of the kind ``big`` are twice as large as the rest, so that a row of few may be the longest.
    """

    rows: tuple[tuple[str, ...], ...]
    big: str = ""
    kind: str = "sorted-rows"

    def _across(self) -> int:
        """The longest row, in places of the small pieces."""
        return max((sum(2 if form == self.big else 1 for form in row) for row in self.rows), default=1)

    def _down(self) -> int:
        """The height of all rows, in the same places."""
        return sum(2 if self.big in row else 1 for row in self.rows)

    def least(self) -> tuple[int, int]:
        """Pieces three cells wide, a cell between them."""
        return 4 * self._across() - 1, 2 * self._down()

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Rows that begin one under another, pieces as large as fit."""
        sketch = Sketch(columns, rows)
        pitch = max(4, min((columns + 1) // self._across(), (2 * rows - 1) // max(1, self._down())))
        gap = max(1, pitch // 5)
        left = max(0, (columns - self._across() * pitch + gap) // 2)
        top = max(0, (2 * rows - self._down() * pitch + gap) // 2)
        for row in self.rows:
            x = left
            for form in row:
                wide = 2 * pitch if form == self.big else pitch
                piece(sketch, form, x, top, wide - gap)
                x += wide
            top += 2 * pitch if self.big in row else pitch
        return sketch

    def words(self) -> str:
        """That there are rows, and whether one kind is larger; no kind by name, no number."""
        return "rows of shapes, some big and some small" if self.big else "rows of shapes"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        big = f"; each {self.big} twice as big" if self.big else ""
        return f"rows of shapes, from the top: {'; '.join(map(in_runs, self.rows))}{big}"


PICTURE = SortedRows
