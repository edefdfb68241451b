from itertools import pairwise

import pytest

from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures.ink import Ink
from warmup.pictures.jars import Jars, holds
from warmup.skills.capacity import _BIG_HALF, _SMALL_FULL, _TALL_MORE, _WIDE_MORE

PANES = ((40, 18), (56, 9), (60, 30), (80, 38))
PAIRS = [*_WIDE_MORE, *_TALL_MORE, *((small, big) for small in _SMALL_FULL for big in _BIG_HALF)]


def inside(jars: Jars, pane: tuple[int, int]) -> list[tuple[float, float]]:
    """Inner width and height of each jar as drawn, in cell widths, from the left."""
    walls = sorted(map(span, pieces(pixels(jars.draw(*pane), Ink.INK))))
    return [((right - left + 1) / 2 - 2, bottom - top) for left, top, right, bottom in walls]


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("pair", PAIRS)
def test_what_holds_more_is_drawn_to_hold_more(
    pair: tuple[tuple[int, int], tuple[int, int]], pane: tuple[int, int]
) -> None:
    """A round jar holds its base, a circle, times its height; the flat drawing agrees."""
    first, second = inside(Jars(pair, (0, 0), parts=1), pane)
    more = holds(pair[0]) > holds(pair[1])
    assert (first[0] ** 2 * first[1] > second[0] ** 2 * second[1]) == more
    assert (first[0] * first[1] > second[0] * second[1]) == more


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("pair", [*_WIDE_MORE, *_TALL_MORE])
def test_tall_is_taller_and_wide_is_wider(
    pair: tuple[tuple[int, int], tuple[int, int]], pane: tuple[int, int]
) -> None:
    tall, wide = inside(Jars(pair, (0, 0), parts=1), pane)
    assert tall[1] > wide[1] and wide[0] > tall[0]


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("size", [(3, 7), (4, 6), (5, 5), (6, 5), (4, 8), (4, 7)])
def test_half_full_is_half(size: tuple[int, int], pane: tuple[int, int]) -> None:
    _, top, _, bottom = span(pixels(Jars((size,), (1,)).draw(*pane), Ink.FIRST))
    _, rim, _, floor = span(pixels(Jars((size,), (1,)).draw(*pane), Ink.INK))
    assert (bottom - top + 1) * 2 == floor - rim, "the water stands at half of the inner height"
    full = pixels(Jars((size,), (2,)).draw(*pane), Ink.FIRST)
    assert span(full)[1] == rim and not pixels(Jars((size,), (0,)).draw(*pane), Ink.FIRST)


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("parts", range(5, 9))
def test_one_line_a_cup_evenly_spaced(parts: int, pane: tuple[int, int]) -> None:
    for cups in (2, parts):
        drawing = Jars(((8, 10),), (cups,), parts=parts, lined=True).draw(*pane)
        ink, water = pixels(drawing, Ink.INK), pixels(drawing, Ink.FIRST)
        left, _, right, bottom = span(ink)
        column = {y for x, y in ink if x == left + 4}
        lines = sorted(column - {bottom})
        assert len(lines) == parts
        assert len({b - a for a, b in pairwise([*lines, bottom])}) == 1
        assert sum(y >= span(water)[1] for y in lines) == cups
        assert {y for x, y in water if x == right - 2} == set(range(lines[-cups], bottom))


def test_all_fit_the_smallest_stages() -> None:
    for jars in (
        Jars(((4, 7),) * 3, (0, 1, 2)),
        Jars(((3, 9), (8, 4)), (0, 0), parts=1),
        Jars(((8, 10),), (8,), parts=8, lined=True),
    ):
        columns, rows = jars.least()
        assert columns <= 40 and rows <= 9
        left, top, right, bottom = span(pixels(jars.draw(columns, rows), Ink.INK))
        assert left >= 0 and right < 2 * columns and top >= 0 and bottom < 2 * rows


def test_words_tell_no_level() -> None:
    assert Jars(((4, 7),), (0,)).words() == Jars(((4, 7),), (2,)).words()
    assert Jars(((8, 10),), (3,), 5, True).words() == Jars(((8, 10),), (5,), 8, True).words()
