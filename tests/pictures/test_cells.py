"""The painter for terminals: pixels by cover, straight edges in eighths, plain inks by middles."""

from importlib.util import find_spec, module_from_spec
from math import cos, hypot, pi, sin
from typing import Any

import pytest

from tests.pictures.blobs import filled, form_of, pieces, pixels, span
from warmup.pictures.cells import Cell, Drawing, drawn
from warmup.pictures.glyphs import write
from warmup.pictures.ink import PARTS, Ink, Shade, parts_of
from warmup.pictures.shapes import Shape, bow, box, disc, frame, joined, polygon, ring, stroke
from warmup.pictures.sketch import Sketch

RADII = [0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6.5, 8, 11, 16.5]
PLACES = [(20, 20), (20.3, 19.6), (19.77, 20.51)]


def sketched(*shapes: Shape, columns: int = 40, rows: int = 20) -> Sketch:
    sketch = Sketch(columns, rows)
    for shape in shapes:
        sketch.paint(shape, Ink.FIRST)
    return sketch


def painted(*shapes: Shape) -> set[tuple[int, int]]:
    return pixels(drawn(sketched(*shapes), smooth=False), Ink.FIRST)


def share(cell: Cell) -> float:
    """How much of a cell is of the first ink."""
    blocks = filled(cell.glyph)
    assert blocks is not None
    covered = sum(wide * high for _, _, wide, high in blocks)
    here, behind = (dict(parts_of(mix)).get(Ink.FIRST, 0) / PARTS for mix in (cell.ink, cell.paper))
    return covered * here + (1 - covered) * behind


def area(drawing: Drawing) -> float:
    """How much of the drawing is of the first ink, in square cell widths: a cell is one by two."""
    return 2 * sum(share(cell) for row in drawing.cells for cell in row)


# ---- smooth ------------------------------------------------------------------------------------------


@pytest.mark.parametrize("radius", RADII)
@pytest.mark.parametrize("place", PLACES)
def test_a_disc_covers_its_area_wherever_it_stands(radius: float, place: tuple[float, float]) -> None:
    """Pi r squared. An edge is put on the nearest eighth of a cell, so off by a 16th at most, all round."""
    drawing = drawn(sketched(disc(*place, radius)), smooth=True)
    assert area(drawing) == pytest.approx(pi * radius**2, abs=2 * pi * radius / 16)


@pytest.mark.parametrize("turn", [0, 7, 20, 45, 61, 88])
def test_a_turned_square_covers_as_much_as_an_upright_one(turn: int) -> None:
    a = turn * pi / 180
    points = [(20 + 9 * cos(a + k * pi / 2), 20 + 9 * sin(a + k * pi / 2)) for k in range(4)]
    assert area(drawn(sketched(polygon(points)), smooth=True)) == pytest.approx(162, abs=72 / 16)


@pytest.mark.parametrize("eighth", range(9))
def test_a_level_edge_lies_on_the_eighth_of_a_cell_it_is_nearest_to(eighth: int) -> None:
    down = 4 + eighth / 4
    (cell,) = {row[5] for row in drawn(sketched(box(2, down, 10, 10)), smooth=True).cells[2:3]}
    blocks = filled(cell.glyph)
    assert isinstance(cell.ink, Ink) and isinstance(cell.paper, Ink), "two plain inks"
    assert share(cell) == 1 - eighth / 8 and blocks is not None


@pytest.mark.parametrize("eighth", range(9))
def test_an_upright_edge_too(eighth: int) -> None:
    drawing = drawn(sketched(box(2, 4, 6 + eighth / 8, 10)), smooth=True)
    cell = drawing.cells[4][8]
    assert isinstance(cell.ink, Ink) and isinstance(cell.paper, Ink)
    assert share(cell) == eighth / 8


def test_a_thin_line_and_a_corner_are_mixed_not_moved() -> None:
    line = drawn(sketched(box(2, 4.5, 10, 0.5)), smooth=True)
    assert area(line) == pytest.approx(5, abs=0.1)
    corner = drawn(sketched(box(2.25, 4.5, 10, 10)), smooth=True)
    assert area(corner) == pytest.approx(100, abs=0.5)


def test_what_is_painted_as_one_has_no_seam() -> None:
    """Blocks that meet within a pixel: each covers half of it, both cover all of it."""
    halves = box(2, 4, 3.3, 8), box(5.3, 4, 3.7, 8)
    one = drawn(sketched(joined(*halves)), smooth=True)
    assert {cell.ink for row in one.cells[2:6] for cell in row[2:9]} == {Ink.FIRST}
    numeral = Sketch(20, 10)
    write(numeral, 2.3, 3.4, "1", 3, Ink.FIRST)
    assert drawn(numeral, smooth=True).cells[3][8].ink is Ink.FIRST


def test_a_cell_shows_the_two_mixes_nearest_to_its_four() -> None:
    sketch = Sketch(1, 1)
    for x, y, ink in ((0, 0, Ink.FIRST), (0.5, 0, Ink.SECOND), (0, 1, Ink.FIRST)):
        sketch.paint(box(x, y, 0.5, 1), ink)
    sketch.paint(box(0.5, 1, 0.5, 0.75), Ink.SECOND)
    cell = drawn(sketch, smooth=True).cells[0][0]
    assert cell.glyph in "▌▐" and {Ink.FIRST} == {mix for mix in (cell.ink, cell.paper) if mix is Ink.FIRST}
    other = dict(parts_of(cell.ink if cell.paper is Ink.FIRST else cell.paper))
    assert other == {Ink.GROUND: PARTS // 8, Ink.SECOND: PARTS - PARTS // 8}


def test_a_shade_passes_from_its_first_mix_to_its_last() -> None:
    for circle in (False, True):
        sketch = Sketch(20, 2)
        shade = Shade(((0.0, Ink.FIRST), (1.0, Ink.SECOND)), (0, 2), (20, 2), circle)
        sketch.paint(box(0, 0, 20, 4), shade)
        cells = drawn(sketch, smooth=True).cells[0]
        shares = [(share(cell)) for cell in cells]
        assert shares == sorted(shares, reverse=True) and shares[0] > 0.9 and shares[-1] < 0.1
        plain = drawn(sketch, smooth=False).cells[0]
        assert {cell.ink for cell in plain} == {Ink.FIRST, Ink.SECOND}
        assert [cell.ink for cell in plain] == sorted(cell.ink for cell in plain)
        assert abs(sum(cell.ink is Ink.FIRST for cell in plain) - 10) <= 1


def fresh() -> Any:
    """The painter as it is when nothing has been drawn yet."""
    spec = find_spec("warmup.pictures.cells")
    assert spec is not None and spec.loader is not None
    module = module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_what_was_drawn_before_makes_no_difference() -> None:
    quarter, half = box(0, 0.75, 0.5, 0.5), box(0.5, 0.5, 0.5, 1)
    sketches = [sketched(quarter, half, columns=1, rows=1), sketched(half, quarter, columns=1, rows=1)]
    one, other = fresh(), fresh()
    drawings = [one.drawn(sketch, smooth=True) for sketch in sketches]
    again = [other.drawn(sketch, smooth=True) for sketch in reversed(sketches)]
    assert {tuple(drawing) for drawing in drawings} == {tuple(drawing) for drawing in again}
    assert len({tuple(drawing) for drawing in drawings}) == 1


# ---- plain -------------------------------------------------------------------------------------------


@pytest.mark.parametrize("radius", RADII[1:])
def test_a_disc_in_the_middle_of_pixels_is_the_same_on_all_sides(radius: float) -> None:
    found = painted(disc(20, 20, radius))
    left, top, right, bottom = span(found)
    assert {(left + right - x, y) for x, y in found} == {(x, top + bottom - y) for x, y in found} == found
    assert abs((right - left + 1) / 2 - (bottom - top + 1)) <= 1


@pytest.mark.parametrize("radius", [2, 2.5, 4, 7])
def test_a_ring_is_hollow_and_closed(radius: float) -> None:
    found = painted(ring(20, 20, radius, 1))
    everything = {(x, y) for x in range(80) for y in range(40)}
    outside_in = pieces(everything - found)
    assert len(outside_in) == 2, "one outside and one inside, not joined"


def test_the_size_of_a_disc_is_that_of_a_circle() -> None:
    """Area pi r squared in cell widths; a pixel covers half of a square cell width."""
    for radius in (3, 5, 9):
        assert len(painted(disc(20, 20, radius))) / 2 == pytest.approx(3.14159 * radius**2, rel=0.06)


def test_a_box_with_equal_sides_is_square_on_the_screen() -> None:
    left, top, right, bottom = span(painted(box(5, 4, 6, 6)))
    assert (right - left + 1, bottom - top + 1) == (12, 6)
    assert form_of(painted(frame(5, 4, 6, 6, 1))) < form_of(painted(box(5, 4, 6, 6)))


def test_a_hop_goes_over_from_end_to_end_and_stays_above() -> None:
    found = painted(bow(5, 15, 20, 8, 1.3))
    left, top, right, bottom = span(found)
    assert bottom == 19 and top == pytest.approx(11, abs=1)
    assert left == pytest.approx(10, abs=1) and right == pytest.approx(30, abs=2)
    assert len(pieces(found)) == 1
    half = span(painted(bow(5, 15, 20, 8, 1.3, (0, 10))))
    assert half[0] == left and half[2] == 19


def test_strokes_and_polygons_hold_their_middle_and_nothing_beyond_their_box() -> None:
    for shape in (stroke(5, 5, 20, 12, 2), polygon([(5, 5), (20, 5), (12, 15)])):
        left, top, right, bottom = shape.box
        for x, y in painted(shape):
            assert left - 0.5 <= x / 2 <= right and top - 1 <= y <= bottom
    assert hypot(*span(painted(stroke(5, 5, 20, 12, 2)))[:2]) > 0


@pytest.mark.parametrize("smooth", [False, True])
def test_what_lies_outside_is_left_out(smooth: bool) -> None:
    sketch = Sketch(4, 2)
    sketch.paint(disc(0, 0, 3), Ink.FIRST)
    sketch.paint(disc(4, 4, 3), Ink.SECOND)
    sketch.paint(polygon([(-9, -9), (30, -9), (9, 40)]), Ink.SOFT)
    sketch.tile(-3, -3, 4, 4, Ink.SOFT)
    sketch.label(2, 1, "far too long")
    sketch.label(0, 9, "below")
    drawing = drawn(sketch, smooth=smooth)
    assert [len(row) for row in drawing.cells] == [4, 4]
    assert drawing.text().endswith("fa")
