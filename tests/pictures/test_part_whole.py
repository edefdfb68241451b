import pytest

from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures import from_data, to_data
from warmup.pictures.canvas import Ink
from warmup.pictures.part_whole import PartWhole

PANES = ((40, 18), (56, 9), (60, 30), (80, 38))


def joined(found: set[tuple[int, int]]) -> list[set[tuple[int, int]]]:
    """The pixels that touch along an edge or at a corner, as a thin ring's do."""
    left, groups = set(found), []
    while left:
        edge = [left.pop()]
        group = set(edge)
        while edge:
            x, y = edge.pop()
            near = {(x + dx, y + dy) for dx in (-1, 0, 1) for dy in (-1, 0, 1)} & left
            left -= near
            group |= near
            edge += near
        groups.append(group)
    return groups


def size(piece: set[tuple[int, int]]) -> tuple[float, float]:
    """Width and height in cell widths: a pixel is half a cell wide and one cell width high."""
    left, top, right, bottom = span(piece)
    return (right - left + 1) / 2, float(bottom - top + 1)


@pytest.mark.parametrize("pane", PANES)
def test_an_empty_circle_is_a_round_hole_and_the_others_hold_their_numerals(pane: tuple[int, int]) -> None:
    drawing = PartWhole("7", "4", "?").draw(*pane)
    (hole,) = pieces(pixels(drawing, Ink.HOLE))
    wide, high = size(hole)
    assert abs(wide - high) <= 1
    inked = joined(pixels(drawing, Ink.INK))
    assert len(inked) == 3, "two rings joined by a line, and a numeral in each"
    numerals = sorted(map(size, inked))[:2]
    assert all(high / wide == pytest.approx(5 / 3) for wide, high in numerals)


@pytest.mark.parametrize("pane", PANES)
def test_the_whole_stands_above_and_its_parts_level_either_side(pane: tuple[int, int]) -> None:
    drawing = PartWhole("?", "?", "?").draw(*pane)
    whole, *parts = pieces(pixels(drawing, Ink.HOLE))
    assert len(parts) == 2
    (left, top, right, bottom), one, other = span(whole), *sorted(map(span, parts))
    assert one[1] == other[1] > top
    assert bottom - top == one[3] - one[1] == other[3] - other[1]
    assert left - one[0] == other[2] - right, "the parts hang even"
    assert one[2] < other[0], "and apart"
    every = {point for ink in (Ink.HOLE, Ink.INK) for point in pixels(drawing, ink)}
    last = one[0] + other[2]
    assert all((last - x, y) in every for x, y in pixels(drawing, Ink.HOLE))


@pytest.mark.parametrize(
    "circles", [PartWhole("9", "5", "?"), PartWhole("10", "?", "8"), PartWhole("10", "10", "0")]
)
def test_all_of_it_fits_the_smallest_pane(circles: PartWhole) -> None:
    columns, rows = circles.least()
    assert columns <= 40 and rows <= 18
    at_least = joined(
        pixels(circles.draw(columns, rows), Ink.INK) | pixels(circles.draw(columns, rows), Ink.HOLE)
    )
    roomy = joined(pixels(circles.draw(80, 38), Ink.INK) | pixels(circles.draw(80, 38), Ink.HOLE))
    assert len(at_least) == len(roomy)
    whole = {point for piece in at_least for point in piece}
    left, top, right, bottom = span(whole)
    assert left >= 0 and top >= 0 and right < 2 * columns and bottom < 2 * rows


def test_its_words_and_marks_give_no_numeral_away() -> None:
    circles = PartWhole("7", "4", "?")
    assert (
        circles.words()
        == PartWhole("9", "1", "?").words()
        == "a whole and its two parts in circles, the whole above, a circle left empty"
    )
    assert circles.shows() == ("7", "4") and circles.marked() == ()
    assert from_data(to_data(circles)) == circles
