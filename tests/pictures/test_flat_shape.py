"""Flat shapes as they are painted: square squares, round circles, six equal sides, whatever the turn.

Measured on the pixels, which are half a cell wide and half a cell high: (x / 2, y) in cell widths.
"""

from itertools import groupby
from math import cos, hypot, pi, radians, sin, sqrt

import pytest

from tests.pictures.blobs import pieces, pixels, span
from tests.pictures.full_sets import ASKED
from warmup.pictures.cells import Drawing
from warmup.pictures.figures import POLYGONS, centroid, points_of, reads_clean, turned
from warmup.pictures.flat_shape import FlatShape
from warmup.pictures.ink import Ink
from warmup.pictures.joined_shapes import PIECES, JoinedShapes, two_pieces
from warmup.pictures.shape_row import ShapeRow

SIZES = ((40, 18), (56, 9), (60, 30))
# Farthest corner from the middle, squared, over the area: by the formulas of the regular polygons.
SPREAD = {"square": 1 / 2, "circle": 1 / pi, "hexagon": 2 / (3 * sqrt(3)), "triangle": 4 / (3 * sqrt(3))}
FOLD = {"square": 90, "hexagon": 60, "triangle": 120, "circle": 17}


def spots(drawing: Drawing, ink: Ink = Ink.FIRST) -> list[tuple[float, float]]:
    return [(x / 2 + 0.25, y + 0.5) for x, y in pixels(drawing, ink)]


def middle(found: list[tuple[float, float]]) -> tuple[float, float]:
    return sum(x for x, _ in found) / len(found), sum(y for _, y in found) / len(found)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("turn", [0, 20, 45])
@pytest.mark.parametrize("name", SPREAD)
def test_a_regular_shape_stays_regular_however_it_is_turned(
    name: str, turn: int, size: tuple[int, int]
) -> None:
    found = spots(FlatShape(name, turn).draw(*size))
    x0, y0 = middle(found)
    area, far = len(found) / 2, max(hypot(x - x0, y - y0) for x, y in found)
    # A pixel's own size blurs the far corner by up to one unit either way.
    assert abs(far - sqrt(SPREAD[name] * area)) < 1.3
    assert covered(FlatShape(name, turn).draw(*size), FOLD[name]) > 0.93


def covered(drawing: Drawing, degrees: float) -> float:
    """The share of the shape that it covers when turned about its own middle."""
    found, here = spots(drawing), pixels(drawing, Ink.FIRST)
    (x0, y0), c, s = middle(found), cos(radians(degrees)), sin(radians(degrees))
    moved = [
        (int(2 * (x0 + (x - x0) * c - (y - y0) * s)), int(y0 + (x - x0) * s + (y - y0) * c)) for x, y in found
    ]
    return sum(spot in here for spot in moved) / len(moved)


def test_a_rectangle_is_no_square_by_the_same_measure() -> None:
    assert covered(FlatShape("rectangle", 20).draw(60, 30), 90) < 0.8 < 0.93
    assert covered(FlatShape("rectangle", 20).draw(60, 30), 180) > 0.93


@pytest.mark.parametrize("size", SIZES)
def test_an_upright_square_is_exactly_square_and_a_circle_is_alike_on_all_sides(
    size: tuple[int, int],
) -> None:
    (square,) = pieces(pixels(FlatShape("square").draw(*size), Ink.FIRST))
    left, top, right, bottom = span(square)
    assert right - left + 1 == 2 * (bottom - top + 1)
    circle = pixels(FlatShape("circle").draw(*size), Ink.FIRST)
    left, top, right, bottom = span(circle)
    assert right - left + 1 == 2 * (bottom - top + 1)
    assert circle == {(left + right - x, y) for x, y in circle} == {(x, top + bottom - y) for x, y in circle}


@pytest.mark.parametrize("name", ["square", "triangle", "hexagon", "circle", "rectangle"])
@pytest.mark.parametrize("turn", [0, 20, 45, 60, 90, 180])
@pytest.mark.parametrize("size", SIZES[:2])
def test_a_gap_opens_the_outline_and_only_a_gap_does(name: str, turn: int, size: tuple[int, int]) -> None:
    """A plane figure is closed (shapes.toml, words): its inside can't be reached from outside."""
    for gap in (False, True):
        row = ShapeRow((name, "circle", "circle"), (turn, 0, 0), (0,) if gap else (1,)).draw(*size)
        walls = pixels(row, Ink.FIRST)
        wide, high = 2 * row.columns, 2 * row.rows
        ground = {(x, y) for x in range(wide) for y in range(high)} - walls
        # The inside of an outline is a piece of ground of its own, away from the edge of the pane.
        first = [
            p
            for p in pieces(ground)
            if span(p)[2] < wide // 2 and span(p)[0] > 0 and span(p)[1] > 0 and len(p) > 2
        ]
        assert bool(first) != gap


@pytest.mark.parametrize("name", ["triangle", "square", "circle", "rectangle"])
@pytest.mark.parametrize("size", SIZES[:2])
def test_a_gap_leaves_most_of_its_outline(name: str, size: tuple[int, int]) -> None:
    """What has a gap can still be told for what it is: four fifths of the line are there, in one piece."""
    for turn in (0, 60, 180):
        whole = pixels(ShapeRow((name,) * 3, (turn,) * 3, (1,)).draw(*size), Ink.FIRST)
        bitten = pixels(ShapeRow((name,) * 3, (turn,) * 3, (0, 1)).draw(*size), Ink.FIRST)
        lost = len(whole - bitten)
        one = len(next(p for p in pieces(whole) if span(p)[2] < size[0]))
        assert 0.05 * one < lost < 0.22 * one, (turn, lost, one)
        assert bitten <= whole and len(pieces(bitten)) == len(pieces(whole))


def longest_step(name: str, turn: int, columns: int, rows: int) -> int:
    """The longest level run of the shape's upper and lower edge, in pixels, but for its level sides."""
    points = turned(points_of(name), turn)
    sides = zip(points, points[1:] + points[:1], strict=True)
    level = sum(abs(ay - by) < 1e-6 for (_, ay), (_, by) in sides)
    found = pixels(FlatShape(name, turn).draw(columns, rows), Ink.FIRST)
    left, _, right, _ = span(found)
    runs = []
    for edge in (min, max):
        ends = [edge(y for x, y in found if x == column) for column in range(left, right + 1)]
        runs += [len(list(run)) for _, run in groupby(ends)]
    return max(sorted(runs, reverse=True)[level:], default=0)


@pytest.mark.slow
@pytest.mark.parametrize("name", ASKED)
def test_no_turning_that_is_asked_comes_out_as_stairs(name: str) -> None:
    """A level side is one long run; else no step of an edge is longer than three cells and a pixel."""
    for turn in ASKED[name]:
        assert longest_step(name, turn, 40, 18) <= 7, turn


@pytest.mark.parametrize(
    ("name", "turn", "clean"),
    [
        ("thin triangle", 90, False),
        ("thin triangle", 0, True),
        ("square", 10, False),
        ("square", 45, True),
        ("right triangle", 150, False),
        ("rhombus", 30, True),
        ("slanted figure", 60, True),
        ("circle", 7, True),
    ],
)
def test_stairs_are_foretold_from_the_slant_of_the_sides(name: str, turn: int, clean: bool) -> None:
    assert reads_clean(name, turn) == clean
    if name != "circle":
        assert (longest_step(name, turn, 60, 30) <= 8) == clean


@pytest.mark.parametrize("size", [(40, 18), (60, 30), (80, 38)])
def test_shapes_in_a_high_pane_are_larger_than_a_third_of_it_and_read_from_the_left(
    size: tuple[int, int],
) -> None:
    row = ShapeRow(("square", "circle", "hexagon"), (0, 0, 0)).draw(*size)
    found = sorted((span(p) for p in pieces(pixels(row, Ink.FIRST))), key=lambda box: box[0])
    assert len(found) == 3
    middles = [(left + right + 1) / 2 for left, _, right, _ in found]
    assert middles[1] == size[0] and middles[0] + middles[2] == 2 * size[0]
    assert found[0][2] < middles[1] < found[2][0], "the outer two leave the middle free"
    assert all(right - left + 1 > 2 * (size[0] // 3 - 2) for left, _, right, _ in found[:2])


def test_shapes_in_a_row_stand_apart_and_have_as_many_pieces_as_names() -> None:
    for size in SIZES:
        row = ShapeRow(("square", "rhombus", "thin triangle"), (45, 30, 180)).draw(*size)
        assert len([p for p in pieces(pixels(row, Ink.FIRST)) if len(p) > 3]) == 3


@pytest.mark.parametrize("name", POLYGONS)
def test_the_middle_stays_the_middle_when_turned(name: str) -> None:
    x, y = centroid(turned(points_of(name), 90))
    u, v = centroid(points_of(name))
    assert (x, y) == pytest.approx((-v, u), abs=1e-9)


@pytest.mark.parametrize(("whole", "part"), PIECES)
def test_two_pieces_make_the_whole_and_nothing_more(whole: str, part: str) -> None:
    """Areas add up to the convex hull's: no gap, no overlap; and the hull has the whole's corners."""
    first, second = two_pieces(whole, part)
    hull = _hull([*first, *second])
    assert _area(list(first)) + _area(list(second)) == pytest.approx(_area(hull))
    assert _area(list(first)) == pytest.approx(_area(list(second)))
    if whole != "circle":
        assert len(hull) == {"square": 4, "rectangle": 4, "triangle": 3, "hexagon": 6}[whole]
        sides = [
            hypot(bx - ax, by - ay) for (ax, ay), (bx, by) in zip(hull, hull[1:] + hull[:1], strict=True)
        ]
        assert (max(sides) - min(sides) < 1e-9) == (whole in ("square", "hexagon"))


@pytest.mark.slow
@pytest.mark.parametrize(("whole", "part"), PIECES)
@pytest.mark.parametrize("size", SIZES[:2])
def test_pieces_apart_leave_room_between(whole: str, part: str, size: tuple[int, int]) -> None:
    between = {}
    for apart in (True, False):
        drawing = JoinedShapes(whole, part, apart, 30).draw(*size)
        one, two = pixels(drawing, Ink.FIRST), pixels(drawing, Ink.SECOND)
        assert len(one) == pytest.approx(len(two), rel=0.15)
        between[apart] = min(hypot((a - x) / 2, b - y) for a, b in rim(one) for x, y in rim(two))
    assert between[True] > between[False] + 1.5


def rim(found: set[tuple[int, int]]) -> set[tuple[int, int]]:
    """The pixels that have bare ground beside them."""
    return {(x, y) for x, y in found if not {(x - 1, y), (x + 1, y), (x, y - 1), (x, y + 1)} <= found}


def _area(points: list[tuple[float, float]]) -> float:
    return (
        abs(
            sum(ax * by - bx * ay for (ax, ay), (bx, by) in zip(points, points[1:] + points[:1], strict=True))
        )
        / 2
    )


def _hull(points: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """Convex hull by the monotone chain; points on a side are left out."""
    ordered = sorted({(round(x, 9), round(y, 9)) for x, y in points})
    half: list[list[tuple[float, float]]] = []
    for run in (ordered, ordered[::-1]):
        chain: list[tuple[float, float]] = []
        for p in run:
            while (
                len(chain) > 1
                and (
                    (chain[-1][0] - chain[-2][0]) * (p[1] - chain[-2][1])
                    - (chain[-1][1] - chain[-2][1]) * (p[0] - chain[-2][0])
                )
                <= 1e-9
            ):
                chain.pop()
            chain.append(p)
        half.append(chain[:-1])
    return half[0] + half[1]
