"""Plane figures as corner points: turned, fitted to a pane, painted. No picture of its own.

Points are (x, y) with y downward, in any unit; only their proportions matter. Angles are in degrees;
a turn goes clockwise on the screen. Corner counts follow the definition of each polygon.
"""

from collections.abc import Mapping, Sequence
from math import atan2, cos, degrees, hypot, pi, radians, sin, tan
from types import MappingProxyType

from warmup.pictures.ink import Ink
from warmup.pictures.shapes import Point, Points, Polygon, Shape, disc, extent, polygon, ring, sides
from warmup.pictures.sketch import Sketch

_TAN_30 = tan(radians(30))  # Slants of 30 and 60 degrees lie level or upright after such a turn.

_LEAST_SLANT = 20.0


def _regular(corners: int, first: float) -> Points:
    """A regular polygon, its first corner at ``first`` degrees from straight up."""
    angles = [radians(first + 360 * k / corners) for k in range(corners)]
    return tuple((sin(a), -cos(a)) for a in angles)


def _rectangle(width: float, height: float) -> Points:
    return (
        (-width / 2, -height / 2),
        (width / 2, -height / 2),
        (width / 2, height / 2),
        (-width / 2, height / 2),
    )


def _slanted(width: float, height: float) -> Points:
    """A parallelogram whose short sides lean over by 30 degrees."""
    over = height / 2 * _TAN_30
    lower = (-width / 2 - over, height / 2), (width / 2 - over, height / 2)
    return (*lower, *((-x, -y) for x, y in lower))


def _heart() -> Points:
    """Two half discs on a point; sampled, the left half mirrored so that both halves agree exactly."""
    # A side leaves its arc where it touches it: the arc's beginning, mirrored in the line to the point.
    touch = 2 * (pi - atan2(1.2, 0.5))
    right = [(0.5 - 0.5 * cos(t), -0.5 * sin(t)) for t in (touch * k / 16 for k in range(17))]
    half = [*right, (0.0, 1.2)]
    return tuple(half + [(-x, y) for x, y in reversed(half[1:-1])])


def _star() -> Points:
    out, inner = _regular(5, 0), _regular(5, 36)
    return tuple(point for a, (x, y) in zip(out, inner, strict=True) for point in (a, (0.45 * x, 0.45 * y)))


POLYGONS: Mapping[str, Points] = MappingProxyType(
    {
        "triangle": _regular(3, 0),
        "thin triangle": ((0, -1), (0.35, 1), (-0.35, 1)),
        "right triangle": ((-1, 0.6), (1, 0.6), (-1, -0.6)),
        "slanted triangle": ((-1, 0.6), (1, 0.6), (0.55, -0.6)),
        "tall triangle": ((0, -1), (0.7, 1), (-0.7, 1)),
        "square": _rectangle(2, 2),
        "rectangle": _rectangle(2, 1.2),
        "thin rectangle": _rectangle(2, 0.5),
        "hexagon": _regular(6, 30),
        "pentagon": _regular(5, 0),
        "rhombus": ((0, -_TAN_30), (1, 0), (0, _TAN_30), (-1, 0)),
        "slanted figure": _slanted(2, 1.4),
        "trapezoid": ((-0.55, -0.6), (0.55, -0.6), (1, 0.6), (-1, 0.6)),
        "kite": ((0, -0.7), (0.7, 0), (0, 1.3), (-0.7, 0)),
        "arrow": ((0, -1), (0.8, -0.1), (0.35, -0.1), (0.35, 1), (-0.35, 1), (-0.35, -0.1), (-0.8, -0.1)),
        "bent figure": ((-0.8, -1), (-0.1, -1), (-0.1, 0.4), (0.8, 0.4), (0.8, 1), (-0.8, 1)),
        "star": _star(),
        "heart": _heart(),
    }
)
"""Every polygon by its name, its points going round it once."""


def points_of(name: str) -> Points:
    """The points of a figure; a curved one is sampled. KeyError for an unknown name."""
    match name:
        case "circle":
            return _regular(72, 0)
        case "oval":
            return tuple((x, 0.6 * y) for x, y in _regular(48, 0))
        case "half circle":
            return tuple((cos(pi * k / 24), -sin(pi * k / 24)) for k in range(25))
        case _:
            return POLYGONS[name]


def turned(points: Sequence[Point], degrees: float) -> Points:
    """The points turned clockwise about (0, 0)."""
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return tuple((x * c - y * s, x * s + y * c) for x, y in points)


def reads_clean(name: str, degrees_round: float) -> bool:
    """Whether a figure turned so far has no side that is nearly level: plain inks make stairs of it.

    A side may be level, upright, or slanted by 20 degrees at least: its steps are then no more than
    three cells long. Curved figures always read clean.
    """
    if name not in POLYGONS:
        return True
    points = turned(POLYGONS[name], degrees_round)
    slants = [degrees(atan2(by - ay, bx - ax)) % 180 for (ax, ay), (bx, by) in sides(points)]
    off_level = [min(slant, 180 - slant) for slant in slants]
    return all(slant < 0.01 or slant > _LEAST_SLANT - 0.01 for slant in off_level)


def placed(points: Sequence[Point], middle: Point, width: float, height: float) -> Points:
    """The points scaled (the same both ways) to fit a room of this width and height about ``middle``."""
    left, top, right, bottom = extent(points)
    scale = min(width / (right - left), height / (bottom - top))
    across, down = (left + right) / 2, (top + bottom) / 2
    return tuple((middle[0] + (x - across) * scale, middle[1] + (y - down) * scale) for x, y in points)


def centroid(points: Sequence[Point]) -> Point:
    """The middle of a polygon's area."""
    twice = x = y = 0.0
    for (ax, ay), (bx, by) in sides(points):
        cross = ax * by - bx * ay
        twice, x, y = twice + cross, x + (ax + bx) * cross, y + (ay + by) * cross
    return x / (3 * twice), y / (3 * twice)


def inset(points: Points, by: float) -> Points:
    """The polygon with every side moved inward by so much; it must be larger than that."""
    twice = sum(ax * by - bx * ay for (ax, ay), (bx, by) in sides(points))
    off = by if twice > 0 else -by
    lines = []
    for (ax, ay), (bx, by_) in sides(points):
        long = hypot(bx - ax, by_ - ay)
        # The side's normal points inward where the points go round clockwise on the screen.
        nx, ny = -(by_ - ay) / long, (bx - ax) / long
        lines.append((nx, ny, nx * ax + ny * ay + off))
    return tuple(_meet(one, other) for one, other in zip(lines[-1:] + lines[:-1], lines, strict=True))


def _meet(one: tuple[float, float, float], other: tuple[float, float, float]) -> Point:
    """Where two lines cross, each given by its normal and how far along it the line lies."""
    (a, b, c), (d, e, f) = one, other
    whole = a * e - b * d
    return (c * e - b * f) / whole, (a * f - c * d) / whole


def paint_figure(
    sketch: Sketch,
    name: str,
    turn: float,
    room: tuple[float, float, float, float],
    ink: Ink = Ink.FIRST,
    *,
    hollow: bool = False,
    gap: bool = False,
) -> None:
    """Paint a figure as large as ``room`` (left, top, width, height) lets it be, in its middle.

    ``hollow`` leaves only its outline; ``gap`` cuts a piece out of the outline, so that the figure is
    not closed.
    """
    left, top, wide, high = room
    middle = (left + wide / 2, top + high / 2)
    line = max(1.2, min(wide, high) / 9)
    if name == "circle":
        radius = min(wide, high) / 2
        sketch.paint(ring(*middle, radius, line) if hollow or gap else disc(*middle, radius), ink)
        points = placed(turned(_regular(12, 0), turn), middle, 2 * radius - line, 2 * radius - line)
    else:
        points = placed(turned(points_of(name), turn), middle, wide, high)
        sketch.paint(Polygon((points, inset(points, line))) if hollow or gap else polygon(points), ink)
    if gap:
        sketch.paint(_gap(points, line), Ink.GROUND)


def _gap(points: Points, line: float) -> Shape:
    """A straight bite out of the middle of the longest side: as deep as the line, with clean ends."""
    (ax, ay), (bx, by) = max(
        sides(points), key=lambda side: round(hypot(side[0][0] - side[1][0], side[0][1] - side[1][1]), 6)
    )
    length = hypot(bx - ax, by - ay)
    (u, v), wide = ((bx - ax) / length, (by - ay) / length), max(2.2 * line, 0.3 * length) / 2
    x, y, deep = (ax + bx) / 2, (ay + by) / 2, 1.3 * line
    return polygon(
        [
            (x + i * wide * u - j * deep * v, y + i * wide * v + j * deep * u)
            for i, j in ((-1, -1), (1, -1), (1, 1), (-1, 1))
        ]
    )
