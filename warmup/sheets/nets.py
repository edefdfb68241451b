"""Nets of solids with flat faces: the faces laid out flat, with tabs, so that folded and glued they close.

Lengths are in millimeters. On the paper x runs right and y down; what is printed comes to lie outside, so
every fold goes away from the one who folds. A face's corners go round clockwise as seen from outside, which
is also how they go round on the paper.
"""

from math import dist, radians, sqrt, tan
from typing import NamedTuple

from warmup.pictures.shapes import Point, Points

Point3 = tuple[float, float, float]

TAB = 9.0
"""How deep a tab is: enough to glue, and for small fingers to press."""
_SLANT = 45.0
"""How far a tab's ends lean in, in degrees: no more than the corners of the faces it is glued behind."""


class Solid(NamedTuple):
    """A convex solid with flat faces: its corners in space, and each face by the numbers of its corners.

    As it stands x runs right, y down and z away from the reader.

    ``folds`` says how it lies flat: (a face that lies already, the face that hangs on it), from face 0 on.
    Where two faces are glued, the tab is on the one that is named first in ``faces``.
    """

    name: str
    corners: tuple[Point3, ...]
    faces: tuple[tuple[int, ...], ...]
    folds: tuple[tuple[int, int], ...]


class Side(NamedTuple):
    """A side of a face: from its corner ``at`` to the next one round."""

    face: int
    at: int


class Meeting(NamedTuple):
    """Two sides that are one edge of the solid."""

    one: Side
    other: Side


class Net(NamedTuple):
    """Faces as they lie on the paper; hinges are folded, and seams glued by the tab on their first side."""

    name: str
    faces: tuple[Points, ...]
    hinges: tuple[Meeting, ...]
    seams: tuple[Meeting, ...]
    tabs: tuple[Points, ...]

    def ends(self, side: Side) -> tuple[Point, Point]:
        """Where a side begins and ends on the paper."""
        points = self.faces[side.face]
        return points[side.at], points[(side.at + 1) % len(points)]

    def cuts(self) -> tuple[Points, ...]:
        """The lines to cut along: round the tabs, and sides that are glued behind."""
        bare = tuple(self.ends(seam.other) for seam in self.seams)
        return bare + self.tabs

    def folds(self) -> tuple[Points, ...]:
        """The lines to fold along: hinges, and where tabs hang on."""
        return tuple(self.ends(one) for one, _ in self.hinges + self.seams)


def unfold(solid: Solid) -> Net:
    """The solid's faces laid flat about its first one, which lies with its first side level."""
    first = solid.faces[0]
    a, b = (solid.corners[corner] for corner in first[:2])
    laid = {0: _lay(solid, 0, (first[0], first[1]), ((0.0, 0.0), (dist(a, b), 0.0)))}
    hinges = []
    for there, hung in solid.folds:
        hinge = _meeting(solid, there, hung)
        hinges.append(hinge)
        # The side runs the other way round the face that hangs on it.
        numbers, points = solid.faces[there], laid[there]
        at, after = hinge.one.at, (hinge.one.at + 1) % len(points)
        laid[hung] = _lay(solid, hung, (numbers[after], numbers[at]), (points[after], points[at]))
    faces = tuple(laid[number] for number in range(len(solid.faces)))
    pairs = [
        (one, other)
        for one in range(len(faces))
        for other in range(one + 1, len(faces))
        if not {(one, other), (other, one)} & set(solid.folds) and len(_shared(solid, one, other)) == 2
    ]
    seams = tuple(_meeting(solid, one, other) for one, other in pairs)
    net = Net(solid.name, faces, tuple(hinges), seams, ())
    return net._replace(tabs=tuple(tab(*net.ends(one)) for one, _ in seams))


def _shared(solid: Solid, one: int, other: int) -> set[int]:
    return set(solid.faces[one]) & set(solid.faces[other])


def _meeting(solid: Solid, one: int, other: int) -> Meeting:
    """The edge of two faces as a side of each."""
    edge = _shared(solid, one, other)

    def side(face: int) -> Side:
        numbers = solid.faces[face]
        after = numbers[1:] + numbers[:1]
        return Side(
            face, next(at for at, ends in enumerate(zip(numbers, after, strict=True)) if set(ends) == edge)
        )

    return Meeting(side(one), side(other))


def _lay(solid: Solid, face: int, edge: tuple[int, int], on: tuple[Point, Point]) -> Points:
    """A face on the paper, the two ends of one of its sides at the two places ``on``.

    It is convex, so all of it lies to the right of that side, as one goes round.
    """
    start, end = (solid.corners[corner] for corner in edge)
    long = dist(start, end)
    along = [(e - s) / long for s, e in zip(start, end, strict=True)]
    (x, y), (x1, y1) = on
    u, v = (x1 - x) / long, (y1 - y) / long
    points = []
    for corner in solid.faces[face]:
        off = [c - s for s, c in zip(start, solid.corners[corner], strict=True)]
        far = sum(o * a for o, a in zip(off, along, strict=True))
        deep = sqrt(sum((o - far * a) ** 2 for o, a in zip(off, along, strict=True)))
        points.append((x + far * u - deep * v, y + far * v + deep * u))
    return tuple(points)


def tab(start: Point, end: Point, deep: float = TAB, lean: float = _SLANT) -> Points:
    """A tab on a side, left of it as one goes round: four points, from the side's start to its end.

    On a short side it is less deep, so that a third of the side is left to its outer edge.
    """
    long = dist(start, end)
    u, v = (end[0] - start[0]) / long, (end[1] - start[1]) / long
    slope = tan(radians(lean))
    deep = min(deep, long / 3 / slope) if lean else deep
    inward = deep * slope
    (x0, y0), (x1, y1) = start, end
    return (
        start,
        (x0 + inward * u + deep * v, y0 + inward * v - deep * u),
        (x1 - inward * u + deep * v, y1 - inward * v - deep * u),
        end,
    )


# ---- solids ----------------------------------------------------------------------------------------


def box(wide: float, high: float, deep: float, name: str = "box") -> Solid:
    """A box: its faces the front, the left, the right, the top, the bottom and the back."""
    corners = tuple((x, y, z) for z in (0.0, deep) for y in (0.0, high) for x in (0.0, wide))
    faces = (
        (0, 1, 3, 2),
        (4, 0, 2, 6),
        (1, 5, 7, 3),
        (4, 5, 1, 0),
        (2, 3, 7, 6),
        (6, 7, 5, 4),
    )
    return Solid(name, corners, faces, ((0, 1), (0, 2), (0, 3), (0, 4), (4, 5)))


def cube(side: float) -> Solid:
    """A cube."""
    return box(side, side, side, "cube")


def square_pyramid(side: float, high: float) -> Solid:
    """A pyramid on a square, its tip over the middle."""
    half = side / 2
    square = ((-half, -half), (half, -half), (half, half), (-half, half))
    corners = (*((x, 0.0, z) for x, z in square), (0.0, -high, 0.0))
    return Solid(
        "square pyramid",
        corners,
        ((0, 1, 2, 3), (1, 0, 4), (2, 1, 4), (3, 2, 4), (0, 3, 4)),
        ((0, 1), (0, 2), (0, 3), (0, 4)),
    )


def triangular_prism(side: float, long: float) -> Solid:
    """A prism between two triangles with equal sides."""
    tall = side * sqrt(3) / 2
    ends = ((0.0, 0.0), (side / 2, tall), (side, 0.0))
    corners = tuple((x, -up, z) for z in (0.0, long) for x, up in ends)
    return Solid(
        "triangular prism",
        corners,
        ((0, 2, 5, 3), (2, 0, 1), (3, 5, 4), (1, 0, 3, 4), (2, 1, 4, 5)),
        ((0, 1), (0, 2), (0, 3), (0, 4)),
    )


FLAT_FACED = (cube(50.0), box(70.0, 30.0, 45.0), square_pyramid(60.0, 40.0), triangular_prism(50.0, 70.0))
"""Those to fold: five to seven centimeters, for a child's hands."""
