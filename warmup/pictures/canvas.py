"""The one canvas that pictures are drawn on, and what a drawing is made of.

A cell of a terminal holds four pixels (two by two, the quadrant glyphs) in at most two inks. Lengths
are in cell widths: x runs from 0 to ``columns``, y from 0 to twice ``rows``, since a cell is about
twice as high as it is wide (common practice, no source). So a disc drawn with equal radii is round
on the screen, and a box with equal sides is square.
"""

from collections import Counter
from collections.abc import Callable, Iterable
from enum import IntEnum
from functools import cache
from math import floor, hypot
from typing import NamedTuple

CELL_HEIGHT = 2.0
"""How high a cell is, in cell widths."""

_QUADRANTS = " ▘▝▀▖▌▞▛▗▚▐▜▄▙▟█"


class Ink(IntEnum):
    """What a pixel means; the screen's theme gives each its color."""

    GROUND = 0
    """The stage itself."""
    INK = 1
    """Words, numerals, outlines."""
    FIRST = 2
    """What we count: always solid."""
    SECOND = 3
    """A second kind, told apart by its form as well."""
    SOFT = 4
    """Grid lines, empty places, things that only help."""
    TILE = 5
    """A chart's lighter squares."""
    TILE_ALT = 6
    """A chart's darker squares: the checkerboard."""
    HOLE = 7
    """The square whose number or name is asked for."""
    COPPER = 8
    """A penny."""
    SILVER = 9
    """A nickel, a dime, a quarter."""


class Cell(NamedTuple):
    """One cell of a drawing: its glyph, the glyph's ink and the ink behind it."""

    glyph: str
    ink: Ink
    paper: Ink
    bold: bool = False


class Drawing(NamedTuple):
    """A finished picture: ``rows`` rows of ``columns`` cells each."""

    columns: int
    rows: int
    cells: tuple[tuple[Cell, ...], ...]

    def text(self) -> str:
        """The glyphs alone, a line a row, blanks at the ends cut off."""
        return "\n".join("".join(cell.glyph for cell in row).rstrip() for row in self.cells)


class Shape(NamedTuple):
    """A region: ``distance(x, y)`` is below 0 inside, and nothing of it lies outside ``box``.

    ``box`` is left, top, right, bottom in cell widths.
    """

    distance: Callable[[float, float], float]
    box: tuple[float, float, float, float]


def on_pixels(x: float, y: float, radius: float) -> tuple[float, float, float]:
    """The circle nearest to this one whose outermost rows and columns are whole pixels.

    A circle that only grazes a row of pixels grows a nub there. So the radius becomes a multiple of
    half a cell, the middle moves by at most a quarter of a cell sideways and half a cell up or down,
    and equal circles stay equal wherever they stand.
    """
    radius = max(0.5, floor(2 * radius + 0.5) / 2)
    return floor(2 * x + 0.5) / 2, floor(y - radius + 0.5) + radius, radius


def disc(x: float, y: float, radius: float) -> Shape:
    """A filled circle about (x, y), fitted to the pixels."""
    x, y, radius = on_pixels(x, y, radius)
    return Shape(lambda u, v: hypot(u - x, v - y) - radius, (x - radius, y - radius, x + radius, y + radius))


def ring(x: float, y: float, radius: float, width: float) -> Shape:
    """A circle's outline, ``width`` wide, its outer edge at ``radius``, fitted to the pixels."""
    x, y, radius = on_pixels(x, y, radius)
    middle, half = radius - width / 2, width / 2
    return Shape(
        lambda u, v: abs(hypot(u - x, v - y) - middle) - half,
        (x - radius, y - radius, x + radius, y + radius),
    )


def box(left: float, top: float, width: float, height: float) -> Shape:
    """A filled rectangle, its upper left corner at (left, top)."""
    x, y, half_width, half_height = left + width / 2, top + height / 2, width / 2, height / 2
    return Shape(
        lambda u, v: max(abs(u - x) - half_width, abs(v - y) - half_height),
        (left, top, left + width, top + height),
    )


def frame(left: float, top: float, width: float, height: float, line: float) -> Shape:
    """A rectangle's outline, ``line`` wide, drawn inside the rectangle."""
    outer = box(left, top, width, height).distance
    inner = box(left + line, top + line, width - 2 * line, height - 2 * line).distance
    return Shape(lambda u, v: max(outer(u, v), -inner(u, v)), (left, top, left + width, top + height))


def bow(x0: float, x1: float, base: float, height: float, width: float) -> Shape:
    """A hop: the upper half of an ellipse's outline from (x0, base) over to (x1, base)."""
    x, reach, half = (x0 + x1) / 2, abs(x1 - x0) / 2, width / 2

    def distance(u: float, v: float) -> float:
        if v > base:
            return 1.0
        # Nearest point by scaling: the gradient's length turns the ellipse's value into a distance.
        across, up = (u - x) / reach, (v - base) / height
        level = hypot(across, up) or 1e-9
        slope = hypot(across / reach, up / height) / level
        return abs(level - 1) / (slope or 1e-9) - half

    return Shape(distance, (x - reach - half, base - height - half, x + reach + half, base))


def stroke(x0: float, y0: float, x1: float, y1: float, width: float) -> Shape:
    """A straight line with round ends."""
    dx, dy, half = x1 - x0, y1 - y0, width / 2
    square = dx * dx + dy * dy or 1.0

    def distance(u: float, v: float) -> float:
        along = max(0.0, min(1.0, ((u - x0) * dx + (v - y0) * dy) / square))
        return hypot(u - x0 - along * dx, v - y0 - along * dy) - half

    edges = (min(x0, x1) - half, min(y0, y1) - half, max(x0, x1) + half, max(y0, y1) + half)
    return Shape(distance, edges)


def polygon(points: Iterable[tuple[float, float]]) -> Shape:
    """A filled polygon; the points go round it either way and it need not be convex."""
    corners = tuple(points)
    sides = tuple(zip(corners, corners[1:] + corners[:1], strict=True))

    def distance(u: float, v: float) -> float:
        inside = False
        for (x0, y0), (x1, y1) in sides:
            if (y0 > v) != (y1 > v) and u < x0 + (v - y0) * (x1 - x0) / (y1 - y0):
                inside = not inside
        return -1.0 if inside else 1.0

    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    return Shape(distance, (min(xs), min(ys), max(xs), max(ys)))


class Canvas:
    """Pixels and labels, painted in order and finished with :meth:`drawing`."""

    def __init__(self, columns: int, rows: int) -> None:
        self.columns, self.rows = max(1, columns), max(1, rows)
        self.width, self.height = float(self.columns), self.rows * CELL_HEIGHT
        self._pixels = [[Ink.GROUND] * (2 * self.columns) for _ in range(2 * self.rows)]
        self._labels: dict[tuple[int, int], Cell] = {}

    def paint(self, shape: Shape, ink: Ink) -> None:
        """Fill a shape; what lies outside the canvas is left out."""
        left, top, right, bottom = shape.box
        distance = shape.distance
        span = range(max(0, int(2 * left)), min(2 * self.columns, int(2 * right) + 1))
        middles = [(column, column / 2 + 0.25) for column in span]
        for row in range(max(0, int(top)), min(2 * self.rows, int(bottom) + 1)):
            line, y = self._pixels[row], row + 0.5
            for column, x in middles:
                if distance(x, y) < 0:
                    line[column] = ink

    def tile(self, column: int, row: int, columns: int, rows: int, ink: Ink) -> None:
        """Fill whole cells: the squares of charts, whose edges must lie on cell edges."""
        for y in range(max(0, 2 * row), min(2 * self.rows, 2 * (row + rows))):
            for x in range(max(0, 2 * column), min(2 * self.columns, 2 * (column + columns))):
                self._pixels[y][x] = ink

    def label(
        self,
        column: int,
        row: int,
        text: str,
        ink: Ink = Ink.INK,
        paper: Ink | None = None,
        bold: bool = True,
    ) -> None:
        """Write text into cells, over whatever is painted there; ``paper`` None keeps the ink behind."""
        if not 0 <= row < self.rows:
            return
        for at, glyph in enumerate(text, start=column):
            if 0 <= at < self.columns:
                behind = paper if paper is not None else self._behind(at, row)
                self._labels[at, row] = Cell(glyph, ink, behind, bold)

    def drawing(self) -> Drawing:
        """The finished picture."""
        rows = tuple(
            tuple(
                self._labels.get((column, row)) or _cell(*self._four(column, row))
                for column in range(self.columns)
            )
            for row in range(self.rows)
        )
        return Drawing(self.columns, self.rows, rows)

    def _four(self, column: int, row: int) -> tuple[Ink, Ink, Ink, Ink]:
        upper, lower = self._pixels[2 * row], self._pixels[2 * row + 1]
        return upper[2 * column], upper[2 * column + 1], lower[2 * column], lower[2 * column + 1]

    def _behind(self, column: int, row: int) -> Ink:
        return Counter(self._four(column, row)).most_common(1)[0][0]


@cache
def _cell(*four: Ink) -> Cell:
    """The cell of four pixels, those of the upper row first; a picture has few different ones."""
    if four[0] == four[1] == four[2] == four[3]:
        only = four[0]
        # A full block in one ink: no seam shows between neighbors, as it may between blanks.
        return Cell(" " if only is Ink.GROUND else "█", only, only)
    kinds = Counter(four).most_common(2)
    paper, ink = sorted((kinds[0][0], kinds[1][0]))
    return Cell(_QUADRANTS[sum(1 << bit for bit, pixel in enumerate(four) if pixel == ink)], ink, paper)
