"""Plane figures as corner points: turned, fitted to a pane, painted. No picture of its own.

Points are (x, y) with y downward, in any unit; only their proportions matter. Angles are in degrees;
a turn goes clockwise on the screen. Corner counts follow the definition of each polygon.
"""

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from math import atan2, cos, degrees, hypot, pi, radians, sin, tan
from types import MappingProxyType

from warmup.pictures.canvas import Canvas, Ink, Shape, disc, ring

Point = tuple[float, float]
Points = tuple[Point, ...]

_NUDGE = 0.013  # Keeps edges off pixel middles, so that a tie never makes a figure lopsided.


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
    right = [(0.5 - 0.5 * cos(t), -0.5 * sin(t)) for t in (pi * k / 12 for k in range(13))]
    half = [*right, (0.9, 0.35), (0.0, 1.2)]
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
    """Whether a figure turned so far has no side that is nearly level: such a side comes out as stairs.

    A side may be level, upright, or slanted by 20 degrees at least: its steps are then no more than
    three cells long. Curved figures always read clean.
    """
    if name not in POLYGONS:
        return True
    points = turned(POLYGONS[name], degrees_round)
    slants = [
        degrees(atan2(by - ay, bx - ax)) % 180
        for (ax, ay), (bx, by) in zip(points, points[1:] + points[:1], strict=True)
    ]
    off_level = [min(slant, 180 - slant) for slant in slants]
    return all(slant < 0.01 or slant > _LEAST_SLANT - 0.01 for slant in off_level)


def extent(points: Sequence[Point]) -> tuple[float, float, float, float]:
    """Left, top, right, bottom of the points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def placed(points: Sequence[Point], middle: Point, width: float, height: float) -> Points:
    """The points scaled (the same both ways) to fit a room of this width and height about ``middle``.

    The height is rounded down to an even number of units where that keeps it large, so that an
    upright square comes out exactly square on the pixel grid.
    """
    left, top, right, bottom = extent(points)
    scale = min(width / (right - left), height / (bottom - top))
    high = (bottom - top) * scale
    if high >= 4:
        scale *= high // 2 * 2 / high
    across, down = (left + right) / 2, (top + bottom) / 2
    return tuple((middle[0] + (x - across) * scale, middle[1] + (y - down) * scale) for x, y in points)


def centroid(points: Sequence[Point]) -> Point:
    """The middle of a polygon's area."""
    twice = x = y = 0.0
    for (ax, ay), (bx, by) in zip(points, [*points[1:], points[0]], strict=True):
        cross = ax * by - bx * ay
        twice, x, y = twice + cross, x + (ax + bx) * cross, y + (ay + by) * cross
    return x / (3 * twice), y / (3 * twice)


def is_convex(points: Points) -> bool:
    """Whether the corners all turn the same way."""
    twice = points + points[:2]
    turns = {
        (bx - ax) * (cy - by) > (by - ay) * (cx - bx)
        for (ax, ay), (bx, by), (cx, cy) in zip(points, twice[1:], twice[2:], strict=False)
    }
    return len(turns) == 1


def convex(points: Sequence[Point], inset: float = 0.0) -> Shape:
    """A filled convex polygon, every side moved inward by ``inset``."""
    middle = (sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points))
    lines = []
    for (ax, ay), (bx, by) in zip(points, [*points[1:], points[0]], strict=True):
        length = hypot(bx - ax, by - ay)
        nx, ny = (by - ay) / length, (ax - bx) / length
        if (middle[0] - ax) * nx + (middle[1] - ay) * ny > 0:
            nx, ny = -nx, -ny
        lines.append((nx, ny, nx * ax + ny * ay - inset + _NUDGE))
    sides = tuple(lines)
    return Shape(lambda u, v: max([nx * u + ny * v - far for nx, ny, far in sides]), extent(points))


def region(points: Sequence[Point]) -> Shape:
    """A filled polygon that need not be convex; the crossings of each row are worked out once."""
    sides = tuple(zip(points, [*points[1:], points[0]], strict=True))
    rows: dict[float, list[float]] = {}

    def distance(u: float, v: float) -> float:
        if v not in rows:
            at = v + _NUDGE / 10
            rows[v] = sorted(
                x0 + (at - y0) * (x1 - x0) / (y1 - y0)
                for (x0, y0), (x1, y1) in sides
                if (y0 > at) != (y1 > at)
            )
        return -1.0 if bisect_left(rows[v], u) % 2 else 1.0

    return Shape(distance, extent(points))


def filled(points: Points) -> Shape:
    """A filled polygon of any kind, by whichever way is quicker to paint."""
    return convex(points) if len(points) <= 8 and is_convex(points) else region(points)


def ellipse(x: float, y: float, across: float, down: float) -> Shape:
    """A filled ellipse about (x, y) with half widths ``across`` and ``down``."""
    return Shape(
        lambda u, v: hypot((u - x) / across, (v - y) / down) - 1,
        (x - across, y - down, x + across, y + down),
    )


def both(first: Shape, second: Shape) -> Shape:
    """What lies in both shapes."""
    a, b = first.distance, second.distance
    box = (*map(max, first.box[:2], second.box[:2]), *map(min, first.box[2:], second.box[2:]))
    return Shape(lambda u, v: max(a(u, v), b(u, v)), (box[0], box[1], box[2], box[3]))


def without(first: Shape, second: Shape) -> Shape:
    """What lies in the first shape and not in the second."""
    a, b = first.distance, second.distance
    return Shape(lambda u, v: max(a(u, v), -b(u, v)), first.box)


def paint_figure(
    canvas: Canvas,
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
    left, top, width, height = room
    # The middle of a pane lies on the edge of pixels, so both halves of a figure come out alike.
    middle = (round(2 * (left + width / 2)) / 2, float(round(top + height / 2)))
    wide, high = 2 * min(middle[0] - left, left + width - middle[0]), height // 2 * 2
    line = max(1.2, min(wide, high) / 9)
    if name == "circle":
        radius = min(wide, high) // 2
        canvas.paint(ring(*middle, radius, line) if hollow or gap else disc(*middle, radius), ink)
        points = placed(turned(_regular(12, 0), turn), middle, 2 * radius - line, 2 * radius - line)
    else:
        points = placed(turned(points_of(name), turn), middle, wide, high)
        whole = filled(points)
        canvas.paint(without(whole, convex(points, line)) if hollow or gap else whole, ink)
    if gap:
        canvas.paint(_gap(points, line), Ink.GROUND)


def _gap(points: Points, line: float) -> Shape:
    """A straight bite out of the middle of the longest side: as deep as the line, with clean ends."""
    sides = list(zip(points, points[1:] + points[:1], strict=True))
    (ax, ay), (bx, by) = max(
        sides, key=lambda side: round(hypot(side[0][0] - side[1][0], side[0][1] - side[1][1]), 6)
    )
    length = hypot(bx - ax, by - ay)
    (u, v), wide = ((bx - ax) / length, (by - ay) / length), max(2.2 * line, 0.3 * length) / 2
    x, y, deep = (ax + bx) / 2, (ay + by) / 2, 1.3 * line
    return convex(
        [
            (x + i * wide * u - j * deep * v, y + i * wide * v + j * deep * u)
            for i, j in ((-1, -1), (1, -1), (1, 1), (-1, 1))
        ]
    )
