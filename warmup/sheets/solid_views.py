"""What a net becomes: a line drawing of the solid, in millimeters, its hidden edges left out."""

from math import asin, cos, pi, sin

from warmup.pictures.shapes import Point, Points
from warmup.sheets.nets import FLAT_FACED, Point3, Solid
from warmup.sheets.round_nets import ROLLED

_ASLANT = 0.36
"""How far a unit of depth goes to the right and up on the page: a cabinet drawing, as on the stage."""
_FLAT = 0.32
"""How high a round end is drawn, seen from a little above, for each unit that it is wide."""


def solid_lines(name: str) -> tuple[Points, ...]:
    """The lines of a solid by its name, in any unit. KeyError for an unknown one."""
    can, hat = ROLLED
    match name:
        case "sphere":
            return _rim(1.0, 0.0, 0.0, 1.0, flat=1.0), _rim(1.0, 0.0, 0.0, 0.5)
        case "cylinder":
            return cylinder_view(can.radius, can.high)
        case "cone":
            return cone_view(hat.radius, hat.high)
        case _:
            return view({solid.name: solid for solid in FLAT_FACED}[name])


def view(solid: Solid) -> tuple[Points, ...]:
    """The faces that are seen, each as a closed line."""
    middle = _mean(solid.corners)
    seen = []
    for face in solid.faces:
        corners = [solid.corners[number] for number in face]
        if _faces_us(corners, middle):
            seen.append(tuple(_placed(corner) for corner in (*corners, corners[0])))
    return tuple(seen)


def _faces_us(corners: list[Point3], middle: Point3) -> bool:
    """Whether a face is seen: some way along the line of sight, the solid's middle lies behind it."""
    a, b, c = corners[:3]
    u, v = _less(b, a), _less(c, a)
    normal = (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0])
    # All points on a line of sight are drawn at one place.
    sight = (-_ASLANT, _ASLANT, 1.0)
    return _dot(normal, sight) * _dot(normal, _less(middle, a)) > 1e-9


def cylinder_view(radius: float, high: float) -> tuple[Points, ...]:
    """A can that stands: the end on top, the walls, and the front of the rim below."""
    walls = tuple(((x, -high), (x, 0.0)) for x in (-radius, radius))
    return (_rim(radius, -high, 0.0, 1.0), *walls, _rim(radius, 0.0, 0.0, 0.5))


def cone_view(radius: float, high: float) -> tuple[Points, ...]:
    """A cone that stands: its walls run from the tip to where they touch the rim."""
    # A line from the tip touches the rim where its turn has this sine.
    touch = asin(-_FLAT * radius / high) / (2 * pi)
    rim = _rim(radius, 0.0, touch, 0.5 - touch)
    return ((rim[0], (0.0, -high), rim[-1]), rim)


def _rim(radius: float, y: float, begin: float, end: float, flat: float = _FLAT) -> Points:
    """A part of a round end as it is seen, in full turns clockwise from its right."""
    turns = [2 * pi * (begin + (end - begin) * n / 60) for n in range(61)]
    return tuple((radius * cos(turn), y + flat * radius * sin(turn)) for turn in turns)


def _placed(point: Point3) -> Point:
    x, y, z = point
    return x + _ASLANT * z, y - _ASLANT * z


def _mean(points: tuple[Point3, ...]) -> Point3:
    x, y, z = (sum(values) / len(points) for values in zip(*points, strict=True))
    return x, y, z


def _less(one: Point3, other: Point3) -> Point3:
    x, y, z = (a - b for a, b in zip(one, other, strict=True))
    return x, y, z


def _dot(one: Point3, other: Point3) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))
