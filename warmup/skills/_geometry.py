"""What can be told of a flat shape, worked out from its points.

A side is where two corners are joined, a corner where two sides meet, and a flat shape is closed
(the polygon's definition, as in the Virginia Mathematics Curriculum Framework 2016, 2.13).
"""

from collections.abc import Iterable
from math import atan2, cos, degrees, hypot, isclose, radians, sin

from warmup.english import number_word
from warmup.pictures.figures import centroid, points_of, reads_clean
from warmup.pictures.shapes import Point, Points

PLACES = ("the left one", "the middle one", "the right one")
"""Where in a row of three, as the child sees it."""


def count_sides(name: str) -> int:
    """Straight sides of a figure by its name; 0 for a circle."""
    return 0 if name == "circle" else len(points_of(name))


def clean_turns(name: str, turns: Iterable[int] = range(0, 360, 5)) -> tuple[int, ...]:
    """Those of the turnings, in degrees, at which no side of the figure comes out as stairs."""
    return tuple(turn for turn in turns if reads_clean(name, turn))


def lengths(points: Points) -> list[float]:
    """The length of each side, in the unit of the points."""
    return [
        hypot(bx - ax, by - ay) for (ax, ay), (bx, by) in zip(points, points[1:] + points[:1], strict=True)
    ]


def equal_sides(name: str) -> bool:
    """Whether all sides of a polygon are as long as each other."""
    sides = lengths(points_of(name))
    return all(isclose(side, sides[0], rel_tol=1e-6) for side in sides)


def square_corners(name: str) -> bool:
    """Whether every corner of a polygon is a square one."""
    points = points_of(name)
    around = zip(points[-1:] + points[:-1], points, points[1:] + points[:1], strict=True)
    return all(
        isclose((bx - ax) * (cx - bx) + (by - ay) * (cy - by), 0, abs_tol=1e-9)
        for (ax, ay), (bx, by), (cx, cy) in around
    )


def rule(name: str) -> str:
    """What makes a shape a circle, a triangle, a square, a rectangle or a hexagon.

    Only what its name asks for: a triangle's sides need not be alike.
    """
    if name == "circle":
        return "round all the way, closed, no corners"
    sides = number_word(count_sides(name))
    alike = " as long as each other" if name == "square" and equal_sides(name) else ""
    corners = "square corners" if square_corners(name) else "corners"
    return f"closed, {sides} straight sides{alike}, {sides} {corners}"


def folds_onto_itself(points: Points, angle: float, through: Point | None = None) -> bool:
    """Whether the figure matches when folded on the line at this angle, up from flat.

    The line runs through its middle, or through the point given. Each corner, mirrored in the line,
    must fall on a corner.
    """
    x0, y0 = through or centroid(points)
    # y runs downward, so the line's own direction is (cos, -sin).
    c, s = cos(radians(2 * angle)), -sin(radians(2 * angle))
    around = [(x - x0, y - y0) for x, y in points]
    size = max(hypot(x, y) for x, y in around)
    return all(
        any(hypot(x * c + y * s - u, x * s - y * c - v) < 1e-6 * size for u, v in around) for x, y in around
    )


def fold_lines(points: Points) -> tuple[float, ...]:
    """The angles, from 0 up to but not 180, of all lines that fold a polygon onto itself.

    Such a line runs through the middle and through a corner or the middle of a side.
    """
    x0, y0 = centroid(points)
    middles = [
        ((ax + bx) / 2, (ay + by) / 2)
        for (ax, ay), (bx, by) in zip(points, points[1:] + points[:1], strict=True)
    ]
    ends = [(x - x0, y0 - y) for x, y in (*points, *middles)]
    angles = {round(degrees(atan2(y, x)), 6) % 180 for x, y in ends if hypot(x, y) > 1e-9}
    exact = sorted(angle for angle in angles if folds_onto_itself(points, angle))
    return tuple(a for k, a in enumerate(exact) if k == 0 or a - exact[k - 1] > 1e-3)
