"""What can be told of a flat shape, worked out from its points.

A side is where two corners are joined, a corner where two sides meet, and a flat shape is closed
(the polygon's definition, as in the Virginia Mathematics Curriculum Framework 2016, 2.13).
"""

from collections.abc import Sequence
from math import cos, hypot, isclose, radians, sin

from warmup.pictures.figures import Point, Points, points_of
from warmup.words import number_word

PLACES = ("the left one", "the middle one", "the right one")
"""Where in a row of three, as the child sees it."""


def count_sides(name: str) -> int:
    """Straight sides of a figure by its name; 0 for a circle."""
    return 0 if name == "circle" else len(points_of(name))


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


def folds_onto_itself(points: Sequence[Point], degrees: float) -> bool:
    """Whether the figure matches when folded on the line through its middle at this angle.

    0 degrees lies flat, 90 stands upright. The corners, mirrored in the line, must fall on the corners.
    """
    middle = centroid(points)
    c, s = cos(radians(2 * degrees)), sin(radians(2 * degrees))
    # The picture's y runs downward, so a line at +d on the screen has slope -d here.
    corners = [(x - middle[0], y - middle[1]) for x, y in points]
    size = max(hypot(x, y) for x, y in corners)
    return all(
        any(hypot(x * c - y * s - u, -x * s - y * c - v) < 1e-6 * size for u, v in corners)
        for x, y in corners
    )


def centroid(points: Sequence[Point]) -> Point:
    """The middle of a polygon's area."""
    twice = x = y = 0.0
    for (ax, ay), (bx, by) in zip(points, [*points[1:], points[0]], strict=True):
        cross = ax * by - bx * ay
        twice, x, y = twice + cross, x + (ax + bx) * cross, y + (ay + by) * cross
    return x / (3 * twice), y / (3 * twice)
