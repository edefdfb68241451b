"""Plane and space geometry for the tests of paper, written apart from the program's."""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import cos, dist, hypot, sin

Point = tuple[float, float]
Point3 = tuple[float, float, float]


def area(points: Sequence[Point]) -> float:
    """The area of a polygon (the shoelace formula, from memory)."""
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in around(points))) / 2


def around(points: Sequence[Point]) -> list[tuple[Point, Point]]:
    return list(zip(points, [*points[1:], points[0]], strict=True))


def length(line: Sequence[Point]) -> float:
    return sum(hypot(x1 - x0, y1 - y0) for (x0, y0), (x1, y1) in pairwise(line))


def convex_parts(points: Sequence[Point]) -> list[tuple[Point, ...]]:
    """A polygon as it is where it is convex, else cut into triangles by clipping its ears."""
    left = list(points)
    twice = sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in around(left))
    if twice < 0:
        left.reverse()
    if all(
        (x1 - x0) * (y2 - y1) - (y1 - y0) * (x2 - x1) >= -1e-9
        for (x0, y0), (x1, y1), (x2, y2) in zip(
            [left[-1], *left[:-1]], left, [*left[1:], left[0]], strict=True
        )
    ):
        return [tuple(left)]
    found: list[tuple[Point, ...]] = []
    while len(left) > 3:
        for at in range(len(left)):
            a, b, c = left[at - 1], left[at], left[(at + 1) % len(left)]
            turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
            if abs(turn) < 1e-9:
                del left[at]
                break
            if turn > 0 and not any(inside(p, (a, b, c)) for p in left if p not in (a, b, c)):
                found.append((a, b, c))
                del left[at]
                break
        else:
            raise AssertionError("a line that crosses itself")
    return [*found, tuple(left)]


def inside(point: Point, polygon: Sequence[Point]) -> bool:
    """Whether a point lies in a convex polygon that goes round clockwise on the paper, or on its edge."""
    x, y = point
    return all((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0) >= -1e-9 for (x0, y0), (x1, y1) in around(polygon))


def overlap(one: Sequence[Point], other: Sequence[Point]) -> float:
    """How deep two convex polygons lie in each other: 0 where they only touch.

    Two that are apart, or touch, have an axis along a side's normal that keeps them apart (the separating
    axis theorem, from memory).
    """
    for axis in (0, 1):
        low, high = (
            [bound(point[axis] for point in shape) for shape in (one, other)] for bound in (min, max)
        )
        if min(high) <= max(low):
            return 0.0
    depths = []
    for (x0, y0), (x1, y1) in around(one) + around(other):
        long = hypot(x1 - x0, y1 - y0)
        way = (-(y1 - y0) / long, (x1 - x0) / long)
        spans = [[x * way[0] + y * way[1] for x, y in shape] for shape in (one, other)]
        depths.append(min(max(spans[0]), max(spans[1])) - max(min(spans[0]), min(spans[1])))
    return max(0.0, min(depths))


def deepest(shapes: Iterable[Sequence[Point]]) -> float:
    """The deepest overlap of any two of these shapes, which need not be convex."""
    cut = [convex_parts(shape) for shape in shapes]
    return max(
        (
            overlap(one, other)
            for at, shape in enumerate(cut)
            for second in cut[at + 1 :]
            for one in shape
            for other in second
        ),
        default=0.0,
    )


def turned(point: Point3, start: Point3, end: Point3, angle: float) -> Point3:
    """A point turned about a line in space. Rodrigues' formula, from memory."""
    long = dist(start, end)
    k = tuple((e - s) / long for s, e in zip(start, end, strict=True))
    v = tuple(p - s for s, p in zip(start, point, strict=True))
    along = sum(a * b for a, b in zip(k, v, strict=True))
    across = (k[1] * v[2] - k[2] * v[1], k[2] * v[0] - k[0] * v[2], k[0] * v[1] - k[1] * v[0])
    x, y, z = (
        s + a * cos(angle) + b * sin(angle) + c * along * (1 - cos(angle))
        for s, a, b, c in zip(start, v, across, k, strict=True)
    )
    return x, y, z
