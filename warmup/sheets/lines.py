"""What a page is drawn of: lines to cut, to fold and to look at, and words. Lengths are in millimeters."""

from collections.abc import Iterable, Sequence
from enum import Enum
from math import cos, pi, sin
from typing import NamedTuple

from warmup.pictures.shapes import Point, Points


class Line(Enum):
    """What a line is for, and so how it looks."""

    CUT = "cut"
    """Dashed."""
    FOLD = "fold"
    """Dotted."""
    DRAWN = "drawn"
    """Solid, to be looked at."""
    FAINT = "faint"
    """Thin and gray: a grid."""


class Stroke(NamedTuple):
    """A line through points."""

    points: Points
    line: Line = Line.DRAWN


class Words(NamedTuple):
    """Words about a place; capitals are about seven tenths of ``size`` high.

    With ``anchor`` 0 they begin there, instead of having their middle there; ``turned`` are upside down.
    """

    at: Point
    text: str
    size: float = 4.0
    anchor: float = 0.5
    turned: bool = False


class Shade(Enum):
    """How dark a surface is."""

    BLACK = "black"
    GRAY = "gray"


class Ring(NamedTuple):
    """A line all round at the same distance from the middle."""

    at: Point
    radius: float
    line: Line = Line.DRAWN


class Dot(NamedTuple):
    """A filled circle; it takes ink, so it is small."""

    at: Point
    radius: float
    shade: Shade = Shade.BLACK


Drawn = Stroke | Ring | Words | Dot


def closed(points: Sequence[Point], line: Line = Line.DRAWN) -> Stroke:
    """A line all round."""
    return Stroke((*points, points[0]), line)


def segment(x0: float, y0: float, x1: float, y1: float, line: Line = Line.DRAWN) -> Stroke:
    """A straight line."""
    return Stroke(((x0, y0), (x1, y1)), line)


def frame(left: float, top: float, wide: float, high: float, line: Line = Line.DRAWN) -> Stroke:
    """A rectangle."""
    right, bottom = left + wide, top + high
    return closed(((left, top), (right, top), (right, bottom), (left, bottom)), line)


def away(middle: Point, radius: float, turn: float) -> Point:
    """The point so far from the middle, in full turns clockwise from the top."""
    return middle[0] + radius * sin(2 * pi * turn), middle[1] - radius * cos(2 * pi * turn)


def arc(middle: Point, radius: float, begin: float, end: float) -> Points:
    """A part of a circle, in full turns clockwise from the top; it strays by 0.003 mm at most."""
    steps = max(1, round(abs(end - begin) * 360))
    return tuple(away(middle, radius, begin + (end - begin) * n / steps) for n in range(steps + 1))


def moved(drawn: Iterable[Drawn], right: float, down: float) -> tuple[Drawn, ...]:
    """The same, elsewhere."""

    def place(point: Point) -> Point:
        return point[0] + right, point[1] + down

    return tuple(
        part._replace(points=tuple(map(place, part.points)))
        if isinstance(part, Stroke)
        else part._replace(at=place(part.at))
        for part in drawn
    )
