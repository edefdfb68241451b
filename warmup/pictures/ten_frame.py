"""A ten frame: two rows of five places."""

from dataclasses import dataclass

from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import box, disc, ring
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class TenFrame(Picture):
    """A ten frame with ``filled`` solid counters (0 to 10), the upper row of five filled first.

    Empty places are bare squares. ``beside`` counters of a second kind (rings, so they differ by form
    as well as color) fill the places after them.
    """

    filled: int
    beside: int = 0
    kind: str = "ten-frame"

    def least(self) -> tuple[int, int]:
        """Five places of 4 cells by 2 rows, and the lines between."""
        return 21, 5

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Square places, as large as the pane allows."""
        sketch = Sketch(columns, rows)
        # From line to line; a line is one cell wide and half a row high, so places are square.
        side = max(4, min((columns - 1) // 5, (rows * 2 - 1) // 2))
        left, top = (columns - 5 * side - 1) // 2, (2 * rows - 2 * side - 1) // 2
        lay(sketch, left, top, side, self.filled, self.beside)
        return sketch

    def words(self) -> str:
        """How it is filled, not how many places are: that would tell how many are empty."""
        more = ", those of a second kind with a ring" if self.beside else ""
        return f"a ten frame, filled from its upper row on{more}"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        more = f", then {self.beside} of another kind" if self.beside else ""
        return f"a ten frame, filled from its upper row on: {self.filled}{more}"


def lay(sketch: Sketch, left: int, top: int, side: int, filled: int, beside: int = 0) -> None:
    """Paint a ten frame with lines ``side`` cell widths apart, its upper left corner at (left, top)."""
    for line in range(6):
        sketch.paint(box(left + line * side, top, 1, 2 * side + 1), Ink.SOFT)
    for line in range(3):
        sketch.paint(box(left, top + line * side, 5 * side + 1, 1), Ink.SOFT)
    # A whole pixel's row is left bare: line, ground and counter in one cell would be a color too many.
    radius = (side - 1) / 2 - (max(1.0, round(0.24 * side) / 2) if side > 5 else 0.25)
    for place in range(10):
        x, y = left + place % 5 * side + (side + 1) / 2, top + place // 5 * side + (side + 1) / 2
        if place < filled:
            sketch.paint(disc(x, y, radius), Ink.FIRST)
        elif place < filled + beside:
            sketch.paint(ring(x, y, radius, max(0.5, side * 0.11)), Ink.SECOND)


PICTURE = TenFrame
