"""A few flat shapes side by side, to point at."""

from dataclasses import dataclass

from warmup.pictures._told import turn_told
from warmup.pictures.base import Picture
from warmup.pictures.figures import paint_figure
from warmup.pictures.ink import Ink
from warmup.pictures.sketch import Sketch

Room = tuple[float, float, float, float]
"""Left, top, width and height of a shape's place, in cell widths."""

_LARGEST = 30


@dataclass(frozen=True, eq=False, repr=False)
class ShapeRow(Picture):
    """Shapes from left to right by their names in ``figures``, each turned by its own ``turns``.

    ``gaps`` are the places, from 0, whose shape has a piece cut out of its outline; with any gap all
    shapes are outlines, so that only the gap tells them apart.
    """

    names: tuple[str, ...]
    turns: tuple[int, ...]
    gaps: tuple[int, ...] = ()
    kind: str = "shape-row"

    def least(self) -> tuple[int, int]:
        """Ten cells by five for each shape."""
        return 11 * len(self.names), 6

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Each as large as its place allows; in a high pane every other one stands lower, and larger."""
        sketch = Sketch(columns, rows)
        level, stepped = self._level(columns, rows), self._stepped(columns, rows)
        rooms = stepped if stepped[0][2] > level[0][2] else level
        for place, (name, turn, room) in enumerate(zip(self.names, self.turns, rooms, strict=True)):
            paint_figure(sketch, name, turn, room, Ink.FIRST, hollow=bool(self.gaps), gap=place in self.gaps)
        return sketch

    def _level(self, columns: int, rows: int) -> list[Room]:
        """Places side by side."""
        wide = columns // len(self.names)
        side = min(wide - 2, 2 * rows - 2, _LARGEST)
        # A thin upright shape may be twice as high as its place is wide: thin ones need the pixels.
        high = min(2 * side, 2 * rows - 2)
        pitch = min(wide, side + 6)
        left = (columns - pitch * len(self.names)) / 2
        middles = [round(2 * (left + (place + 0.5) * pitch)) / 2 for place in range(len(self.names))]
        return [(middle - side / 2, rows - high / 2, float(side), float(high)) for middle in middles]

    def _stepped(self, columns: int, rows: int) -> list[Room]:
        """Places from left to right, by turns in the upper and in the lower half."""
        pitch = min(columns / (len(self.names) + 1), rows - 1.0)
        side = float(min(2 * int(pitch) - 2, rows - 2, _LARGEST) // 2 * 2)
        left = columns / 2 - pitch * (len(self.names) - 1) / 2
        return [
            (
                round(2 * (left + place * pitch)) / 2 - side / 2,
                rows - side - 1 if place % 2 == 0 else rows + 1,
                side,
                side,
            )
            for place in range(len(self.names))
        ]

    def words(self) -> str:
        """Only that there are shapes: which is which may be the question."""
        return "a few flat shapes side by side"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        shapes = (
            f"{name}{turn_told(turn)}{', a piece cut out' if place in self.gaps else ''}"
            for place, (name, turn) in enumerate(zip(self.names, self.turns, strict=True))
        )
        form = "outlines of shapes" if self.gaps else "shapes"
        return f"{form}, left to right: {'; '.join(shapes)}"


PICTURE = ShapeRow
