from math import hypot

import pytest

from tests.pictures.blobs import form_of, pieces, pixels, span
from warmup.pictures.canvas import Canvas, Ink, Shape, bow, box, disc, polygon, ring, stroke

RADII = [0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6.5, 8, 11, 16.5]


def painted(*shapes: Shape, columns: int = 40, rows: int = 20) -> set[tuple[int, int]]:
    canvas = Canvas(columns, rows)
    for shape in shapes:
        canvas.paint(shape, Ink.FIRST)
    return pixels(canvas.drawing(), Ink.FIRST)


@pytest.mark.parametrize("radius", RADII)
@pytest.mark.parametrize("middle", [(20, 20), (20.3, 19.6), (19.75, 20.5)])
def test_a_disc_is_round_symmetric_and_has_no_nubs(radius: float, middle: tuple[float, float]) -> None:
    """A pixel is twice as high as it is wide, so what is round is twice as many pixels wide as high."""
    found = painted(disc(*middle, radius))
    left, top, right, bottom = span(found)
    assert right - left + 1 == 2 * (bottom - top + 1) == 4 * radius
    assert {(left + right - x, y) for x, y in found} == {(x, top + bottom - y) for x, y in found} == found
    rows = [sum(y == row for _, y in found) for row in range(top, bottom + 1)]
    columns = [sum(x == column for x, _ in found) for column in range(left, right + 1)]
    # A nub is an outermost run much shorter than a circle's own: that of a row one pixel deep is about
    # twice the root of its depth times the diameter, so over half as long as the run after it.
    assert rows[0] >= 0.5 * rows[min(1, len(rows) - 1)]
    assert radius < 2 or columns[0] >= 2


def test_equal_discs_are_alike_wherever_they_stand() -> None:
    forms = set()
    for x in (10, 10.25, 10.6, 11.1):
        for y in (10, 10.4, 10.5, 11.3):
            found = painted(disc(x, y, 3.5))
            forms.add(form_of(found))
    assert len(forms) == 1


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


def test_a_hop_goes_over_from_end_to_end_and_stays_above() -> None:
    found = painted(bow(5, 15, 20, 8, 1.3))
    left, top, right, bottom = span(found)
    assert bottom == 19 and top == pytest.approx(11, abs=1)
    assert left == pytest.approx(10, abs=1) and right == pytest.approx(30, abs=2)
    assert len(pieces(found)) == 1


def test_strokes_and_polygons_hold_their_middle_and_nothing_beyond_their_box() -> None:
    for shape in (stroke(5, 5, 20, 12, 2), polygon([(5, 5), (20, 5), (12, 15)])):
        left, top, right, bottom = shape.box
        for x, y in painted(shape):
            assert left - 0.5 <= x / 2 <= right and top - 1 <= y <= bottom
    assert hypot(*span(painted(stroke(5, 5, 20, 12, 2)))[:2]) > 0


def test_what_lies_outside_is_left_out_and_a_cell_has_two_inks() -> None:
    canvas = Canvas(4, 2)
    canvas.paint(disc(0, 0, 3), Ink.FIRST)
    canvas.paint(disc(4, 4, 3), Ink.SECOND)
    canvas.tile(-3, -3, 4, 4, Ink.SOFT)
    canvas.label(2, 1, "far too long")
    canvas.label(0, 9, "below")
    drawing = canvas.drawing()
    assert [len(row) for row in drawing.cells] == [4, 4]
    assert drawing.text().endswith("fa")
