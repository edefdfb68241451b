"""A ten frame: two rows of five places."""

from dataclasses import dataclass
from typing import ClassVar

from warmup.pictures.canvas import Canvas, Drawing, Ink, box, disc, ring


@dataclass(frozen=True, slots=True)
class TenFrame:
    """A ten frame with ``filled`` solid counters (0 to 10), the upper row of five filled first.

    Empty places are bare squares. ``beside`` counters of a second kind (rings, so they differ by form
    as well as colour) fill the places after them.
    """

    filled: int
    beside: int = 0

    kind: ClassVar[str] = "ten-frame"

    def least(self) -> tuple[int, int]:
        """Five places of 4 by 2 cells, and the lines between."""
        return 21, 5

    def draw(self, columns: int, rows: int) -> Drawing:
        """Square places, as large as the pane allows."""
        canvas = Canvas(columns, rows)
        # A place is `side` cells wide and side/2 high, so it is square; an even side keeps lines on cells.
        side = max(4, min((columns - 1) // 5, (rows * 2 - 1) // 2) // 2 * 2)
        left, top = (columns - 5 * side) // 2, (rows - side) // 2 * 2
        for line in range(6):
            canvas.paint(box(left + line * side, top, 0.5, 2 * side + 1), Ink.SOFT)
        for line in range(3):
            canvas.paint(box(left, top + line * side, 5 * side + 0.5, 1), Ink.SOFT)
        for place in range(10):
            # The middle of a place lies half a line past the middle of its corner points.
            x, y = left + (place % 5 + 0.5) * side + 0.25, top + (place // 5 + 0.5) * side + 0.5
            if place < self.filled:
                canvas.paint(disc(x, y, side * 0.34), Ink.FIRST)
            elif place < self.filled + self.beside:
                canvas.paint(ring(x, y, side * 0.34, max(1.0, side * 0.12)), Ink.SECOND)
        return canvas.drawing()

    def words(self) -> str:
        """How many places are full."""
        more = f", {self.beside} with a ring" if self.beside else ""
        return f"a ten frame with {self.filled} filled{more}"

    def shows(self) -> tuple[str, ...]:
        """No numeral stands on it."""
        return ()

    def marked(self) -> tuple[str, ...]:
        """Nothing is marked out."""
        return ()


PICTURE = TenFrame
