from itertools import combinations
from math import hypot

import pytest

from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures import from_data, to_data
from warmup.pictures.ink import Ink
from warmup.pictures.part_whole import PartWhole
from warmup.pictures.shapes import Polygon, Round

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
    assert all(high / wide == pytest.approx(5 / 3, rel=0.15) for wide, high in numerals)


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
def test_all_of_it_fits_small_panes_and_no_circle_touches_an_edge_or_its_numeral(circles: PartWhole) -> None:
    columns, rows = circles.least()
    assert columns <= 40 and rows <= 18
    for size in (circles.least(), (39, 9), (38, 22), (60, 9)):
        assert circles.fits(*size), size
        inked = [shape for shape, ink in circles.sketch(*size).shapes if ink in (Ink.INK, Ink.HOLE)]
        rounds = [shape for shape in inked if isinstance(shape, Round)]
        numerals = [shape for shape in inked[2:] if isinstance(shape, Polygon)]
        assert len(rounds) == 3 and len(numerals) == 3 - (circles.right, circles.left).count("?")
        for round_ in rounds:
            left, top, right, bottom = round_.box
            assert min(left, top, size[0] - right, 2 * size[1] - bottom) >= 0.49, "nothing touches the edge"
        for one, two in combinations(rounds, 2):
            assert hypot(one.x - two.x, one.y - two.y) > 2 * one.across + 1
        for left, top, right, bottom in (numeral.box for numeral in numerals):
            home = min(rounds, key=lambda r: hypot(r.x - (left + right) / 2, r.y - (top + bottom) / 2))
            assert bottom - top >= 5
            corners = [hypot(x - home.x, y - home.y) for x in (left, right) for y in (top, bottom)]
            assert max(corners) < home.hole[0]


def test_its_words_and_marks_give_no_numeral_away() -> None:
    circles = PartWhole("7", "4", "?")
    assert (
        circles.words()
        == PartWhole("9", "1", "?").words()
        == "a whole and its two parts in circles, the whole above, a circle left empty"
    )
    assert circles.shows() == ("7", "4") and circles.marked() == ()
    assert from_data(to_data(circles)) == circles
