import pytest

from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures.ink import Ink
from warmup.pictures.number_line import NumberLine

PANES = ((40, 18), (56, 9), (60, 30), (80, 38))


def numbers(line: NumberLine, pane: tuple[int, int]) -> list[int]:
    text = line.draw(*pane).text()
    return [int(word) for word in "".join(c if c.isdigit() else " " for c in text).split()]


def test_every_number_is_written_in_its_order() -> None:
    for line in (NumberLine(0, 10), NumberLine(5, 15), NumberLine(0, 25)):
        for pane in ((40, 18), (56, 9)):
            want = list(range(line.first, line.last + 1))
            assert numbers(line, pane) in (want, []), "in cells, or in large blocks"
    assert numbers(NumberLine(0, 10), (56, 9)) == list(range(11))
    assert numbers(NumberLine(0, 10, hidden=(4,)), (56, 9)) == [0, 1, 2, 3, 5, 6, 7, 8, 9, 10]


@pytest.mark.parametrize("pane", PANES)
def test_a_hidden_number_is_a_hole(pane: tuple[int, int]) -> None:
    drawing = NumberLine(0, 10, hidden=(4,)).draw(*pane)
    hole = pixels(drawing, Ink.HOLE)
    left, top, right, bottom = span(hole)
    assert len(hole) == (right - left + 1) * (bottom - top + 1)


def test_hops_are_unbroken_arcs_above_the_line() -> None:
    for hops, start in (((1, 1, 1), 2), ((-1, -1), 7), ((3,), 4)):
        drawing = NumberLine(0, 10, hops, start).draw(56, 9)
        arcs, line = pixels(drawing, Ink.FIRST), pixels(drawing, Ink.SOFT)
        assert span(arcs)[3] < span(line)[3]
        low, high = sorted((start, start + sum(hops)))
        step = (span(line)[2] - span(line)[0] - 1) / 10
        assert (span(arcs)[2] - span(arcs)[0]) == pytest.approx((high - low) * step, abs=3)
        # The dot covers one foot of the arcs, which may part a sliver of it from the rest.
        assert len([p for p in pieces(arcs) if len(p) > 2]) == 1


def test_a_hop_over_the_end_of_a_line_goes_on_in_the_next() -> None:
    drawing = NumberLine(0, 10, (1, 1, 1), 4).draw(40, 18)
    arcs = pixels(drawing, Ink.FIRST)
    first, *_, last = sorted(span(p)[1] for p in pieces(pixels(drawing, Ink.SOFT)))
    assert any(y < first for _, y in arcs) and any(first + 4 < y < last for _, y in arcs)


def test_a_step_has_at_least_five_cells_where_there_is_room() -> None:
    for pane in PANES:
        one = span(pixels(NumberLine(0, 10, (1,), 2).draw(*pane), Ink.FIRST))
        assert (one[2] - one[0]) / 2 >= 5


def test_the_landing_place_is_not_marked() -> None:
    line = NumberLine(0, 10, (3,), 4)
    assert line.marked() == ("4",) and "7" not in line.words()
    with_hops, without = line.draw(56, 9), NumberLine(0, 10, start=4).draw(56, 9)
    assert pixels(with_hops, Ink.INK) == pixels(without, Ink.INK)
    assert with_hops.text().splitlines()[-1] == without.text().splitlines()[-1]


@pytest.mark.parametrize("pane", PANES)
def test_the_start_is_one_solid_dot(pane: tuple[int, int]) -> None:
    for start in (0, 3, 10):
        dots = pieces(pixels(NumberLine(0, 10, (1, 1), start).draw(*pane), Ink.SECOND))
        assert len(dots) == 1


def test_the_long_line_goes_on_below_and_fits_the_small_stages() -> None:
    assert NumberLine(0, 25, (3,), 8).least() <= (40, 9)
    drawing = NumberLine(0, 25).draw(40, 18)
    assert len({span(p)[3] for p in pieces(pixels(drawing, Ink.SOFT))}) > 1
