"""A picture before it is painted: shapes and labels in their order, in cell widths. Painters stand apart.

``cells`` paints a sketch for a terminal, ``svg`` for paper; a picture's own code is the same for both.
"""

from typing import NamedTuple

from warmup.pictures.ink import Ink, Shade
from warmup.pictures.shapes import CELL_HEIGHT, Shape, box


class Label(NamedTuple):
    """Text at a place: a letter to a cell from ``column`` on, over whatever is painted there."""

    column: int
    row: int
    text: str
    ink: Ink


class Sketch:
    """Shapes and labels of a picture ``columns`` cells wide and ``rows`` high."""

    def __init__(self, columns: int, rows: int) -> None:
        self.columns, self.rows = max(1, columns), max(1, rows)
        self.width, self.height = float(self.columns), self.rows * CELL_HEIGHT
        self.shapes: list[tuple[Shape, Ink | Shade]] = []
        self.labels: list[Label] = []

    def paint(self, shape: Shape, ink: Ink | Shade) -> None:
        """Fill a shape, over what was painted before; what lies outside the sketch is left out."""
        self.shapes.append((shape, ink))

    def tile(self, column: int, row: int, columns: int, rows: int, ink: Ink) -> None:
        """Fill whole cells: the squares of charts, whose edges lie on cell edges."""
        self.paint(box(column, row * CELL_HEIGHT, columns, rows * CELL_HEIGHT), ink)

    def label(self, column: int, row: int, text: str, ink: Ink = Ink.INK) -> None:
        """Write text into cells; labels lie over all shapes."""
        if text.strip():
            self.labels.append(Label(column, row, text, ink))
