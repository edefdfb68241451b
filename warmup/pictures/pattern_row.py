"""A row of pieces that repeats, with an empty place in it or at its end."""

from dataclasses import dataclass

from warmup.pictures._told import in_a_row
from warmup.pictures.base import Picture
from warmup.pictures.pieces import piece
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class PatternRow(Picture):
    """Pieces from left to right, each "circle", "square" or "triangle"; "?" is an empty place, a hole."""

    pieces: tuple[str, ...]
    kind: str = "pattern-row"

    def least(self) -> tuple[int, int]:
        """Pieces three cells wide, a cell between them."""
        return 4 * len(self.pieces) - 1, 2

    def sketch(self, columns: int, rows: int) -> Sketch:
        """One row in the middle, pieces as large as fit."""
        sketch = Sketch(columns, rows)
        count = max(1, len(self.pieces))
        pitch = max(4, min((columns + 1) // count, 2 * rows - 1))
        size = pitch - max(1, pitch // 5)
        left = (columns - count * pitch + pitch - size) // 2
        top = (2 * rows - size) // 2
        for at, form in enumerate(self.pieces):
            piece(sketch, form, left + at * pitch, top, size)
        return sketch

    def words(self) -> str:
        """That it is a row, and where nothing lies; no piece by name."""
        if "?" not in self.pieces:
            return "a row of shapes"
        place = "at its end" if self.pieces[-1] == "?" else "in it"
        return f"a row of shapes with an empty place {place}"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        return f"shapes, left to right: {in_a_row(self.pieces)}"


PICTURE = PatternRow
