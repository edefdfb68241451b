"""A few flat shapes side by side, to point at."""

from dataclasses import dataclass
from typing import ClassVar

from warmup.pictures.canvas import Canvas, Drawing, Ink
from warmup.pictures.figures import paint_figure


@dataclass(frozen=True, slots=True)
class ShapeRow:
    """Shapes from left to right by their names in ``figures``, each turned by its own ``turns``.

    ``gaps`` are the places, from 0, whose shape has a piece cut out of its outline; with any gap all
    shapes are outlines, so that only the gap tells them apart.
    """

    names: tuple[str, ...]
    turns: tuple[int, ...]
    gaps: tuple[int, ...] = ()

    kind: ClassVar[str] = "shape-row"

    def least(self) -> tuple[int, int]:
        """Ten cells by five for each shape."""
        return 11 * len(self.names), 6

    def draw(self, columns: int, rows: int) -> Drawing:
        """Each as large as its place allows."""
        canvas = Canvas(columns, rows)
        wide = columns // len(self.names)
        side = min(wide - 2, 2 * rows - 2, 30)
        # A thin upright shape may be twice as high as its place is wide: thin ones need the pixels.
        high = min(2 * side, 2 * rows - 2)
        pitch = min(wide, side + 6)
        left = (columns - pitch * len(self.names)) / 2
        for place, (name, turn) in enumerate(zip(self.names, self.turns, strict=True)):
            middle = round(2 * (left + (place + 0.5) * pitch)) / 2
            room = (middle - side / 2, rows - high / 2, float(side), float(high))
            paint_figure(canvas, name, turn, room, Ink.FIRST, hollow=bool(self.gaps), gap=place in self.gaps)
        return canvas.drawing()

    def words(self) -> str:
        """Only that there are shapes: which is which may be the question."""
        return "a few flat shapes in a row"

    def shows(self) -> tuple[str, ...]:
        """No word stands on it."""
        return ()

    def marked(self) -> tuple[str, ...]:
        """Nothing is marked out."""
        return ()


PICTURE = ShapeRow
