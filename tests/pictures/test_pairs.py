from itertools import groupby, pairwise

import pytest

from tests.pictures.blobs import form_of, pieces, pixels, span
from warmup.pictures.ink import Ink
from warmup.pictures.pairs import Pairs

PANES = ((40, 18), (56, 9), (60, 30), (80, 38))


def things(picture: Pairs, columns: int, rows: int) -> list[set[tuple[int, int]]]:
    return pieces(pixels(picture.draw(columns, rows), Ink.FIRST))


@pytest.mark.slow
@pytest.mark.parametrize("what", ["socks", "shoes", "buttons"])
@pytest.mark.parametrize("paired", [True, False])
@pytest.mark.parametrize("pane", PANES)
def test_every_thing_stands_alone_and_can_be_counted(what: str, paired: bool, pane: tuple[int, int]) -> None:
    for pairs in range(1, 11):
        for left_over in (0, 1):
            picture = Pairs(pairs, left_over, what, paired)
            assert len(things(picture, *pane)) == 2 * pairs + left_over
            assert len(things(picture, *picture.least())) == 2 * pairs + left_over


@pytest.mark.parametrize("what", ["socks", "shoes", "buttons"])
def test_the_gap_between_pairs_is_wider_than_the_gap_in_a_pair(what: str) -> None:
    for pane in PANES:
        for row in rows_of(things(Pairs(4, 0, what), *pane)):
            gaps = [after[0] - before[2] - 1 for before, after in pairwise(row)]
            assert len(row) % 2 == 0 and max(gaps[::2]) < min(gaps[1::2], default=99)


def rows_of(found: list[set[tuple[int, int]]]) -> list[list[tuple[int, int, int, int]]]:
    """Where the things of each row lie, from the top and from the left."""
    spans = sorted((span(thing) for thing in found), key=lambda s: (s[3], s[0]))
    return [list(row) for _, row in groupby(spans, key=lambda s: s[3])]


@pytest.mark.parametrize("pane", PANES)
def test_before_they_are_paired_the_gaps_are_even(pane: tuple[int, int]) -> None:
    for row in rows_of(things(Pairs(7, 1, "shoes", paired=False), *pane)):
        assert len({after[0] - before[2] for before, after in pairwise(row)}) == 1


def test_before_they_are_paired_they_stand_five_a_row_where_that_leaves_them_larger() -> None:
    high, low = (rows_of(things(Pairs(7, 1, "socks", paired=False), *pane)) for pane in ((40, 22), (56, 9)))
    assert [len(row) for row in high] == [5, 5, 5] and [len(row) for row in low] == [10, 5]
    left, _, right, _ = high[0][0]
    assert right - left + 1 == 12, "with ten a row it would be four pixels wide"


def test_a_full_row_holds_ten_and_fifteen_pairs_fit_the_small_stage() -> None:
    picture = Pairs(15)
    tops = [span(thing)[1] for thing in things(picture, 40, 18)]
    assert [tops.count(top) for top in sorted(set(tops))] == [10, 10, 10]
    columns, rows = picture.least()
    assert columns <= 40 and rows <= 9


@pytest.mark.parametrize("pane", PANES)
def test_counters_are_round_and_all_things_of_a_kind_are_alike(pane: tuple[int, int]) -> None:
    for what in ("socks", "shoes", "buttons"):
        forms = set()
        for thing in things(Pairs(5, 1, what), *pane):
            left, top, right, bottom = span(thing)
            forms.add(form_of(thing))
            if what == "buttons":  # a pixel is twice as high as it is wide
                assert right - left + 1 == 2 * (bottom - top + 1)
                assert all((left + right - x, y) in thing for x, y in thing)
        assert len(forms) == 1


def test_it_tells_nothing() -> None:
    for picture in (Pairs(3), Pairs(3, 1), Pairs(3, 1, "socks", paired=False)):
        assert picture.shows() == picture.marked() == ()
    assert Pairs(3).words() == Pairs(4, 1).words() == "socks laid out in pairs"
