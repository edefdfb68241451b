"""What pictures are made of: plane regions, each told by where level lines cross its edge.

Lengths are in cell widths: x runs from 0 to ``columns``, y from 0 to twice ``rows``, since a cell is
about twice as high as it is wide (common practice, no source). So a disc is round on the screen and on
paper, and a box with equal sides is square. A painter needs only a shape's ``box``, outside of which
nothing of it lies (left, top, right, bottom), and its ``crossings``: for each of ``count`` level lines,
the first at ``first`` and ``step`` apart, the places where it goes into the shape and out of it by turns.
"""

from collections.abc import Iterable, Iterator, Sequence
from math import ceil, cos, hypot, inf, pi, sin, sqrt
from typing import NamedTuple

CELL_HEIGHT = 2.0
"""How high a cell is, in cell widths."""

Point = tuple[float, float]
Points = tuple[Point, ...]
Edges = tuple[float, float, float, float]
Lines = list[list[float]]


class Rect(NamedTuple):
    """A filled rectangle with level and upright sides."""

    box: Edges

    def crossings(self, first: float, step: float, count: int) -> Lines:
        """See the module."""
        left, top, right, bottom = self.box
        return [
            [left, right] if top <= first + n * step < bottom and left < right else [] for n in range(count)
        ]


class Round(NamedTuple):
    """A filled ellipse about (x, y), less a like one of ``hole`` half widths (none where they are 0)."""

    x: float
    y: float
    across: float
    down: float
    hole: tuple[float, float] = (0.0, 0.0)

    @property
    def box(self) -> Edges:
        """Left, top, right, bottom."""
        return self.x - self.across, self.y - self.down, self.x + self.across, self.y + self.down

    def crossings(self, first: float, step: float, count: int) -> Lines:
        """See the module."""
        x, y, across, down, (inner, deep) = self
        lines: Lines = []
        for n in range(count):
            away = first + n * step - y
            off = 1 - (away / down) ** 2
            if off <= 0:
                lines.append([])
                continue
            half = across * sqrt(off)
            bare = 1 - (away / deep) ** 2 if deep else 0.0
            if bare > 0:
                gap = inner * sqrt(bare)
                lines.append([x - half, x - gap, x + gap, x + half])
            else:
                lines.append([x - half, x + half])
        return lines


class Polygon(NamedTuple):
    """A filled polygon of one contour or several: what an odd number of them goes round is inside."""

    contours: tuple[Points, ...]

    @property
    def box(self) -> Edges:
        """Left, top, right, bottom."""
        return extent([point for contour in self.contours for point in contour])

    def crossings(self, first: float, step: float, count: int) -> Lines:
        """See the module."""
        lines: Lines = [[] for _ in range(count)]
        for contour in self.contours:
            x0, y0 = contour[-1]
            for x1, y1 in contour:
                low, high = (y0, y1) if y0 < y1 else (y1, y0)
                begin = max(0, ceil((low - first) / step))
                end = min(count, ceil((high - first) / step))
                if begin < end:
                    slope = (x1 - x0) / (y1 - y0)
                    at = x0 + (first - y0) * slope
                    for n in range(begin, end):
                        lines[n].append(at + n * step * slope)
                x0, y0 = x1, y1
        for line in lines:
            line.sort()
        return lines


class Joined(NamedTuple):
    """All that lies in any of several shapes: they are painted as one, without a seam."""

    shapes: tuple["Shape", ...]

    @property
    def box(self) -> Edges:
        """Left, top, right, bottom."""
        lefts, tops, rights, bottoms = zip(*(shape.box for shape in self.shapes), strict=True)
        return min(lefts), min(tops), max(rights), max(bottoms)

    def crossings(self, first: float, step: float, count: int) -> Lines:
        """See the module."""
        found = [shape.crossings(first, step, count) for shape in self.shapes]
        return [_united([line[n] for line in found]) for n in range(count)]


Shape = Rect | Round | Polygon | Joined
"""Any of them."""


def _united(lines: Sequence[list[float]]) -> list[float]:
    """Where a line crosses the edge of all shapes together, from where it crosses each."""
    spans = sorted((line[at], line[at + 1]) for line in lines for at in range(0, len(line) - 1, 2))
    joined: list[float] = []
    for begin, end in spans:
        if joined and begin <= joined[-1] + 1e-9:
            joined[-1] = max(joined[-1], end)
        else:
            joined += [begin, end]
    return joined


def extent(points: Sequence[Point]) -> Edges:
    """Left, top, right, bottom of the points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def sides(points: Sequence[Point]) -> Iterator[tuple[Point, Point]]:
    """Each side of a polygon: the corner where it begins, and the next one round."""
    return zip(points, (*points[1:], *points[:1]), strict=True)


def joined(*shapes: Shape) -> Shape:
    """Several shapes as one."""
    return Joined(shapes)


def disc(x: float, y: float, radius: float) -> Shape:
    """A filled circle about (x, y)."""
    return Round(x, y, radius, radius)


def ring(x: float, y: float, radius: float, width: float) -> Shape:
    """A circle's outline, ``width`` wide, its outer edge at ``radius``."""
    inner = max(0.0, radius - width)
    return Round(x, y, radius, radius, (inner, inner))


def ellipse(x: float, y: float, across: float, down: float) -> Shape:
    """A filled ellipse about (x, y) with half widths ``across`` and ``down``."""
    return Round(x, y, across, down)


def box(left: float, top: float, width: float, height: float) -> Shape:
    """A filled rectangle, its upper left corner at (left, top)."""
    return Rect((left, top, left + width, top + height))


def frame(left: float, top: float, width: float, height: float, line: float) -> Shape:
    """A rectangle's outline, ``line`` wide, drawn inside the rectangle."""
    outer, inner = (
        (
            (left + off, top + off),
            (left + width - off, top + off),
            (left + width - off, top + height - off),
            (left + off, top + height - off),
        )
        for off in (0.0, line)
    )
    return Polygon((outer, inner) if 2 * line < min(width, height) else (outer,))


def polygon(points: Iterable[Point]) -> Shape:
    """A filled polygon; the points go round it either way and it need not be convex."""
    return Polygon((tuple(points),))


def bow(x0: float, x1: float, base: float, height: float, width: float, within: Point = (-inf, inf)) -> Shape:
    """A hop: the upper half of an ellipse's outline from (x0, base) over to (x1, base).

    Only the part of it between the two places ``within`` is there.
    """
    x, reach, half = (x0 + x1) / 2, abs(x1 - x0) / 2, width / 2
    turns = [pi * n / 32 for n in range(33)]

    def arc(off: float) -> list[Point]:
        # Off along the normal, so that the band is as wide at its feet as at its top.
        points = []
        for turn in turns:
            across, up = cos(turn) * height, sin(turn) * reach
            long = hypot(across, up)
            points.append(
                (
                    x - reach * cos(turn) - off * across / long,
                    base - height * sin(turn) - off * up / long,
                )
            )
        return points

    least, most = within
    return Polygon((tuple((min(max(u, least), most), v) for u, v in arc(half) + arc(-half)[::-1]),))


def stroke(x0: float, y0: float, x1: float, y1: float, width: float, *, round_ends: bool = True) -> Shape:
    """A straight line, its ends round or cut off square."""
    half, long = width / 2, hypot(x1 - x0, y1 - y0)
    if long < 1e-9:
        return disc(x0, y0, half)
    dx, dy = (x1 - x0) / long * half, (y1 - y0) / long * half
    turns = [pi * n / 12 for n in range(13)] if round_ends else [0.0, pi]
    # From the right of the line's end round to its left, and back round its beginning.
    there = [(x1 + dx * sin(a) - dy * cos(a), y1 + dy * sin(a) + dx * cos(a)) for a in turns]
    back = [(x0 - dx * sin(a) + dy * cos(a), y0 - dy * sin(a) - dx * cos(a)) for a in turns]
    return Polygon((tuple(there + back),))
