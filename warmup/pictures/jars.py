"""Jars standing in a row, drawn to one scale, with water in them."""

from dataclasses import dataclass
from math import floor

from warmup.pictures._told import counted
from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import CELL_HEIGHT, box
from warmup.pictures.sketch import Sketch

_WALL = 1.0
_GAP = 2.0


def holds(size: tuple[int, int]) -> int:
    """What a round jar of this width and height holds, in like units: width times width times height."""
    wide, high = size
    return wide * wide * high


@dataclass(frozen=True, eq=False, repr=False)
class Jars(Picture):
    """Jars of ``sizes`` (inner width and height in steps), each filled to ``fills`` of ``parts`` equal parts.

    With ``lined`` a mark stands on the wall at every part: a cupful each.
    """

    sizes: tuple[tuple[int, int], ...]
    fills: tuple[int, ...]
    parts: int = 2
    lined: bool = False
    kind: str = "jars"

    def least(self) -> tuple[int, int]:
        """A cell width a step; and where there are marks, a row for each mark's line and space."""
        wide = sum(size[0] for size in self.sizes) + len(self.sizes) * 2 + _GAP * (len(self.sizes) - 1)
        high = max(size[1] for size in self.sizes)
        return max(12, int(wide)), self.parts + 1 if self.lined else max(5, high // 2 + 1)

    def sketch(self, columns: int, rows: int) -> Sketch:
        """All jars on one ground line, as large as the pane allows."""
        sketch = Sketch(columns, rows)
        count, high = len(self.sizes), max(size[1] for size in self.sizes)
        across = columns - _GAP * (count - 1) - 2 * _WALL * count
        step = min(across / sum(size[0] for size in self.sizes), (rows * CELL_HEIGHT - 1) / high)
        # Walls on whole cells: a cell can show water and glass, or air and glass, but not all three.
        wides = [floor(size[0] * step) for size in self.sizes]
        left = float(floor((columns - sum(wides) - 2 * _WALL * count - _GAP * (count - 1)) / 2))
        deep = max(self._deep(size, step) for size in self.sizes)
        ground = float(floor((rows * CELL_HEIGHT + deep + 1) / 2))
        for size, fill, wide in zip(self.sizes, self.fills, wides, strict=True):
            self._jar(sketch, left, ground, float(wide), self._deep(size, step), fill)
            left += wide + 2 * _WALL + _GAP
        return sketch

    def _deep(self, size: tuple[int, int], step: float) -> float:
        """Inner height in whole pixels, the same number to each part."""
        return float(max(1, floor(size[1] * step / self.parts + 0.01)) * self.parts)

    def _jar(self, sketch: Sketch, left: float, ground: float, wide: float, deep: float, fill: int) -> None:
        inner, top = left + _WALL, ground - 1 - deep
        part = deep / self.parts
        sketch.paint(box(inner, ground - 1 - fill * part, wide, fill * part), Ink.FIRST)
        for wall in (left, inner + wide):
            sketch.paint(box(wall, top, _WALL, deep + 1), Ink.INK)
        sketch.paint(box(left, ground - 1, wide + 2 * _WALL, 1), Ink.INK)
        if self.lined:
            for line in range(1, self.parts + 1):
                sketch.paint(box(inner, ground - 1 - line * part, max(2.0, wide // 3), 1), Ink.INK)

    def words(self) -> str:
        """How many jars and whether they are marked, without how full they are or which holds more."""
        if self.lined:
            return "a jar of water with a line on it for each cup"
        return "a jar" if len(self.sizes) == 1 else "jars side by side"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        parts = f"filled in {counted(self.parts, 'part')}" + (", a line at every part" if self.lined else "")
        jars = (
            f"{wide} wide and {high} high, {fill} full"
            for (wide, high), fill in zip(self.sizes, self.fills, strict=True)
        )
        return f"jars, left to right, {parts}: {'; '.join(jars)}"


PICTURE = Jars
