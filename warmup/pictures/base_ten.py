"""Base-ten blocks: cubes, rods of ten, flats of a hundred."""

from dataclasses import dataclass
from math import floor

from warmup.pictures._told import counted
from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import CELL_HEIGHT, Points, Polygon, box
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class BaseTen(Picture):
    """``hundreds`` flats, ``tens`` rods and ``ones`` cubes, from left to right.

    Cubes stand in columns of five. Every rod and flat shows the cubes it is made of. In a low, wide
    pane rods lie down, five to a stack.
    """

    hundreds: int
    tens: int
    ones: int
    kind: str = "base-ten"

    def _cubes(self) -> int:
        """How many cubes wide it all is, the gaps between pieces counted as cubes too."""
        parts = (11 * self.hundreds, 2 * self.tens, 2 * -(-self.ones // 5))
        return max(1, sum(parts) - 1 + sum(part > 0 for part in parts) - 1)

    def least(self) -> tuple[int, int]:
        """Cubes one cell wide and half a row high."""
        return self._cubes(), 5

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Rods upright, all in one line; lying in stacks of five where that leaves larger cubes."""
        sketch = Sketch(columns, rows)
        largest = min(columns / self._cubes(), rows * CELL_HEIGHT / 10)
        # Lines fall on pixels where cubes are whole; a tone needs no lines.
        cube = float(floor(largest)) if largest >= 2 else floor(2 * largest) / 2
        standing, lying = max(1.0, cube), self._lying_cube(columns, rows)
        if lying > standing:
            self._draw_lying(sketch, lying)
        else:
            self._draw_standing(sketch, standing)
        return sketch

    def _draw_standing(self, sketch: Sketch, cube: float) -> None:
        left = floor(sketch.width - self._cubes() * cube) / 2
        top = float(floor((sketch.height - 10 * cube) / 2))
        for _ in range(self.hundreds):
            _block(sketch, left, top, cube, 10, 10)
            left += 11 * cube
        left += cube * (self.hundreds > 0)
        for _ in range(self.tens):
            _block(sketch, left, top, cube, 1, 10)
            left += 2 * cube
        left += cube * (self.tens > 0)
        for number in range(self.ones):
            x, y = left + number // 5 * 2 * cube, top + (9 - number % 5 * 2) * cube
            _block(sketch, x, y, cube, 1, 1)

    def _lying_size(self, cube: int) -> tuple[int, int]:
        """Width and height, in cell widths, with rods and cubes stacked up to five high."""
        gap = _stack_gap(cube)
        rods, ones = -(-self.tens // 5) * 11 * cube, -(-self.ones // 5) * (cube + gap)
        high = min(5, max(self.tens, self.ones, 1))
        return max(
            1, rods + ones - (gap if ones else cube) + cube * (self.tens > 0 and self.ones > 0)
        ), high * (cube + gap) - gap

    def _lying_cube(self, columns: int, rows: int) -> int:
        """The largest cube with rods lying down; 0 where there is a flat, which wants to stand by rods."""
        cube = 0
        while not self.hundreds and cube < 8:
            wide, high = self._lying_size(cube + 1)
            if wide > columns or high > 2 * rows:
                break
            cube += 1
        return cube

    def _draw_lying(self, sketch: Sketch, cube: int) -> None:
        wide, high = self._lying_size(cube)
        pitch = cube + _stack_gap(cube)
        left, top = (sketch.columns - wide) // 2, (2 * sketch.rows - high) // 2
        for number in range(self.tens):
            _block(sketch, left + number // 5 * 11 * cube, top + number % 5 * pitch, cube, 10, 1)
        left += -(-self.tens // 5) * 11 * cube + cube * (self.tens > 0)
        for number in range(self.ones):
            _block(sketch, left + number // 5 * pitch, top + number % 5 * pitch, cube, 1, 1)

    def words(self) -> str:
        """Which kinds of block there are, not how many."""
        kinds = [
            name
            for name, count in (("flats", self.hundreds), ("rods", self.tens), ("cubes", self.ones))
            if count
        ]
        return "base-ten blocks: " + ", ".join(kinds) if kinds else "an empty table"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        pieces = (("flat", self.hundreds), ("rod", self.tens), ("cube", self.ones))
        told = ", ".join(counted(number, name) for name, number in pieces if number)
        return f"base-ten blocks, left to right: {told or 'none'}"


def _stack_gap(cube: int) -> int:
    """What lies between pieces stacked one above the other: half a cube, and something at least."""
    return max(1, cube // 2)


def _block(sketch: Sketch, left: float, top: float, cube: float, wide: int, high: int) -> None:
    """A piece of ``wide`` by ``high`` cubes, told apart by tone where small, by lines where there is room."""
    sketch.paint(box(left, top, wide * cube, high * cube), Ink.FIRST if cube < 2 else Ink.SOFT)
    gap = 0.5 if cube <= 3 else 1.0
    cubes: list[Points] = []
    for across in range(wide):
        for down in range(high):
            x, y = left + across * cube, top + down * cube
            if cube >= 2:
                cubes.append(_square(x, y, cube - gap, cube - max(1.0, gap)))
            elif (across + down) % 2:
                cubes.append(_square(x, y, cube, cube))
    if cubes:
        sketch.paint(Polygon(tuple(cubes)), Ink.SOFT if cube < 2 else Ink.FIRST)


def _square(x: float, y: float, wide: float, high: float) -> Points:
    return (x, y), (x + wide, y), (x + wide, y + high), (x, y + high)


PICTURE = BaseTen
