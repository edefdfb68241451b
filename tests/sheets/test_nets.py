"""Nets are folded in space here: they must close, and the tabs must have room."""

from collections import Counter
from itertools import pairwise
from math import acos, atan, degrees, dist, isclose, pi, radians, sqrt, tan

import pytest

from tests.sheets.geometry import Point3, area, around, deepest, length, turned
from warmup.sheets.nets import FLAT_FACED, Meeting, Net, Side, box, unfold
from warmup.sheets.round_nets import ROLLED, TEETH, TOOTH, RoundNet, cone, cylinder

SOLIDS = {solid.name: solid for solid in FLAT_FACED}

# How large they are; what is known of such solids in general is worked out from these.
_CUBE, _BOX, _PYRAMID, _PRISM = 50.0, (70.0, 30.0, 45.0), (60.0, 40.0), (50.0, 70.0)


def _dihedral(net: Net, meeting: Meeting) -> float:
    """The angle between two faces, inside, in degrees.

    Of a regular pyramid on a square with side a and height h: atan(2h / a) at the base and
    acos(-a² / (a² + 4h²)) between two sides; of an upright prism 90 degrees at its ends and the angle of
    its triangle between its sides. From memory, as in a handbook of mathematical tables.
    """
    corners = [len(net.faces[side.face]) for side in meeting]
    match net.name:
        case "square pyramid":
            side, high = _PYRAMID
            if 4 in corners:
                return degrees(atan(2 * high / side))
            return degrees(acos(-(side**2) / (side**2 + 4 * high**2)))
        case "triangular prism" if corners == [4, 4]:
            return 60.0
        case _:
            return 90.0


def _folded(net: Net) -> list[list[Point3]]:
    """The faces in space, each hinge folded away from the reader as far as the solid's angle wants."""
    faces: list[list[Point3]] = [[(x, y, 0.0) for x, y in face] for face in net.faces]
    hung: dict[int, list[int]] = {number: [number] for number in range(len(faces))}
    # The outermost first: what hangs on a face turns with it.
    for hinge in reversed(net.hinges):
        one, other = hinge
        start, end = ((x, y, 0.0) for x, y in net.ends(one))
        angle = radians(180 - _dihedral(net, hinge))
        for number in hung[other.face]:
            faces[number] = [turned(point, start, end, angle) for point in faces[number]]
        hung[one.face] += hung[other.face]
    return faces


def _edge(faces: list[list[Point3]], side: Side) -> tuple[Point3, Point3]:
    points = faces[side.face]
    return points[side.at], points[(side.at + 1) % len(points)]


def _volume(faces: list[list[Point3]]) -> float:
    """By the divergence theorem, over a fan of triangles a face (from memory)."""
    six = 0.0
    for face in faces:
        a = face[0]
        for b, c in pairwise(face[1:]):
            six += a[0] * (b[1] * c[2] - b[2] * c[1])
            six += a[1] * (b[2] * c[0] - b[0] * c[2])
            six += a[2] * (b[0] * c[1] - b[1] * c[0])
    return abs(six) / 6


@pytest.mark.parametrize("name", SOLIDS)
def test_net_folded_at_its_angles_closes(name: str) -> None:
    net = unfold(SOLIDS[name])
    faces = _folded(net)
    for seam in net.seams:
        start, end = _edge(faces, seam.one)
        other_end, other_start = _edge(faces, seam.other)
        assert dist(start, other_start) < 1e-9 and dist(end, other_end) < 1e-9, (name, seam)


@pytest.mark.parametrize("name", SOLIDS)
def test_each_side_is_used_once_and_each_seam_has_one_tab(name: str) -> None:
    net = unfold(SOLIDS[name])
    sides = Counter(side for meeting in net.hinges + net.seams for side in meeting)
    assert set(sides.values()) == {1}
    assert len(sides) == sum(map(len, net.faces))
    assert len(net.hinges) == len(net.faces) - 1
    for seam, tab in zip(net.seams, net.tabs, strict=True):
        assert (tab[0], tab[-1]) == net.ends(seam.one)


@pytest.mark.parametrize(
    ("name", "corners", "edges", "faces"),
    # Counts of corners, edges and faces: from memory, as in a handbook of solids.
    [
        ("cube", 8, 12, 6),
        ("box", 8, 12, 6),
        ("square pyramid", 5, 8, 5),
        ("triangular prism", 6, 9, 5),
    ],
)
def test_folded_net_has_the_solids_counts(name: str, corners: int, edges: int, faces: int) -> None:
    net = unfold(SOLIDS[name])
    found = {tuple(round(x, 6) + 0.0 for x in point) for face in _folded(net) for point in face}
    assert (len(found), len(net.hinges) + len(net.seams), len(net.faces)) == (corners, edges, faces)
    # Euler's polyhedron formula (from memory).
    assert corners - edges + faces == 2


def test_volumes_and_areas_are_those_of_the_formulas() -> None:
    # Formulas from memory, as in a handbook of mathematical tables: a box, a pyramid (base times height / 3),
    # a prism (base times length; a triangle with equal sides has √3 / 4 a²), and their areas.
    wide, high, deep = _BOX
    side, tall = _PYRAMID
    edge, long = _PRISM
    slant = sqrt((side / 2) ** 2 + tall**2)
    known = {
        "cube": (_CUBE**3, 6 * _CUBE**2),
        "box": (wide * high * deep, 2 * (wide * high + wide * deep + high * deep)),
        "square pyramid": (side**2 * tall / 3, side**2 + 2 * side * slant),
        "triangular prism": (sqrt(3) / 4 * edge**2 * long, sqrt(3) / 2 * edge**2 + 3 * edge * long),
    }
    assert set(known) == set(SOLIDS)
    for name, (volume, surface) in known.items():
        net = unfold(SOLIDS[name])
        assert isclose(_volume(_folded(net)), volume, rel_tol=1e-9), name
        assert isclose(sum(map(area, net.faces)), surface, rel_tol=1e-9), name


@pytest.mark.parametrize("net", [*map(unfold, FLAT_FACED), *ROLLED], ids=lambda net: net.name)
def test_faces_and_tabs_lie_side_by_side(net: Net | RoundNet) -> None:
    if isinstance(net, RoundNet) and net.name == "cone":
        # The wall's arc bulges beyond the straight foot of each tooth by less than a line is wide.
        bulge = length(net.rims[0]) / TEETH
        assert deepest(net.tabs) < 1e-6
        assert deepest((net.wall, *net.tabs)) < bulge**2 / (8 * 65.0) + 1e-6 < 0.3
    else:
        assert deepest(net.faces + net.tabs) < 1e-6


@pytest.mark.parametrize("name", SOLIDS)
def test_tab_has_room_behind_the_face_it_is_glued_to(name: str) -> None:
    net = unfold(SOLIDS[name])
    for seam, tab in zip(net.seams, net.tabs, strict=True):
        long = dist(tab[0], tab[-1])
        (start, end), face = net.ends(seam.other), net.faces[seam.other.face]
        # Laid on the other face, the tab's two outer corners must fall into it.
        (x0, y0), (x1, y1) = start, end
        u, v = (x1 - x0) / long, (y1 - y0) / long
        deep = area(tab) * 2 / (long + dist(tab[1], tab[2]))
        inward = (long - dist(tab[1], tab[2])) / 2
        for far in (inward, long - inward):
            x, y = x0 + far * u - deep * v, y0 + far * v + deep * u
            assert all(
                (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0 for (ax, ay), (bx, by) in around(face)
            )


def test_wall_is_as_long_as_its_end_is_round() -> None:
    can, hat = cylinder(25.0, 60.0), cone(25.0, 60.0)
    around_end = 2 * pi * 25.0
    assert [isclose(length(rim), around_end, rel_tol=1e-12) for rim in can.rims] == [True, True]
    # A chord of a 240th of the slice is shorter than its arc by a share of 4.2e-6, its area by 4 times that.
    assert isclose(length(hat.rims[0]), around_end, rel_tol=5e-6)
    # Areas: 2πrh of a can's wall, πrs of a cone's with the slant s (from memory, as in a handbook).
    assert isclose(area(can.wall), around_end * 60.0)
    assert isclose(area(hat.wall), pi * 25.0 * sqrt(25.0**2 + 60.0**2), rel_tol=2e-5)
    for net in (can, hat):
        lengths = [dist(*side) for side in net.seam]
        assert isclose(lengths[0], lengths[1])


@pytest.mark.parametrize("net", ROLLED, ids=lambda net: net.name)
def test_teeth_folded_in_lie_side_by_side(net: RoundNet) -> None:
    # Side by side about a circle, each has the room of a slice of it: 2 (r - depth) tan(180° / how many).
    room = 2 * (net.radius - TOOTH) * tan(pi / TEETH)
    assert len(net.teeth) == TEETH * len(net.rims)
    assert all(dist(tooth[1], tooth[2]) < room for tooth in net.teeth)


def test_fold_the_wrong_way_or_a_wrong_size_would_be_seen() -> None:
    # The folding above is no use if it closes anything: a box folded as if its front were another one.
    net = unfold(box(70.0, 30.0, 45.0))
    other = unfold(box(70.0, 31.0, 45.0))
    mixed = net._replace(faces=(*net.faces[:5], other.faces[5]))
    faces = _folded(mixed)
    gaps = [dist(_edge(faces, one)[0], _edge(faces, other_side)[1]) for one, other_side in mixed.seams]
    assert max(gaps) > 0.5
