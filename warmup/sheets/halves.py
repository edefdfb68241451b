"""Figures to cut out and fold: whether one half lands on the other is found out by mirroring corners."""

from math import atan2, cos, degrees, hypot, radians, sin
from typing import NamedTuple

from warmup.pictures.figures import centroid, placed, points_of, turned
from warmup.pictures.shapes import Point, Points, sides
from warmup.skills._geometry import folds_onto_itself

_HAIR = 1e-6


class Folded(NamedTuple):
    """A figure by its name, turned clockwise, and a fold line through its middle, in degrees up from flat."""

    figure: str
    line: float = 90.0
    turn: float = 0.0

    def points(self, middle: Point, wide: float, high: float) -> Points:
        """Its corners, as large as this room about ``middle`` lets it be."""
        return placed(turned(points_of(self.figure), self.turn), middle, wide, high)

    def matches(self) -> bool:
        """Whether one half lands on the other."""
        return folds_onto_itself(turned(points_of(self.figure), self.turn), self.line)


MATCHING = (
    Folded("heart"),
    Folded("arrow"),
    Folded("kite"),
    Folded("star"),
    Folded("trapezoid"),
    Folded("tall triangle", 0.0, 90.0),
)
"""Those whose halves match."""

MIXED = (
    Folded("square", 45.0),
    Folded("slanted figure"),
    Folded("rectangle", degrees(atan2(1.2, 2.0))),
    Folded("rhombus"),
    Folded("bent figure"),
    Folded("hexagon", 0.0),
)
"""Some match and some do not."""


def fold_across(points: Points, line: float) -> tuple[Point, Point]:
    """Where a line at this angle through the middle enters a figure and leaves it."""
    x, y = centroid(points)
    u, v = cos(radians(line)), -sin(radians(line))
    hits = []
    for (ax, ay), (bx, by) in sides(points):
        side, after = (ax - x) * v - (ay - y) * u, (bx - x) * v - (by - y) * u
        if (side > 0) != (after > 0):
            share = side / (side - after)
            hits.append((ax + share * (bx - ax), ay + share * (by - ay)))
    return max(
        ((one, other) for one in hits for other in hits),
        key=lambda ends: hypot(ends[0][0] - ends[1][0], ends[0][1] - ends[1][1]),
    )


def upright_half(points: Points, *, right: bool) -> Points:
    """The half of a figure left of the upright line through its middle, or right of it.

    That line must cross it in one piece.
    """
    x, _ = centroid(points)
    sign = 1.0 if right else -1.0
    kept: list[Point] = []
    for (ax, ay), (bx, by) in sides(points):
        here, after = sign * (ax - x), sign * (bx - x)
        if here >= -_HAIR:
            kept.append((ax, ay))
        if min(here, after) < -_HAIR and max(here, after) > _HAIR:
            kept.append((x, ay + here / (here - after) * (by - ay)))
    return tuple(kept)
