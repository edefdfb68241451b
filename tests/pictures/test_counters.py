from itertools import combinations
from math import dist

import pytest

from tests.pictures.blobs import boxes, measures, pieces, pixels, span
from warmup.pictures.counters import Counters
from warmup.pictures.dots import PATTERNS, Dots
from warmup.pictures.ink import Ink
from warmup.pictures.scatter import patterned, scattered

PANES = ((40, 18), (56, 9), (60, 30), (80, 38))
LAYOUTS = ("line", "rows", "ring", "scatter")


@pytest.mark.parametrize("layout", LAYOUTS)
@pytest.mark.parametrize("pane", PANES)
def test_every_counter_stands_alone_and_all_are_alike(layout: str, pane: tuple[int, int]) -> None:
    for count in (1, 2, 3, 5, 7, 10, 11, 16, 20):
        if layout == "scatter" and count > 10:
            continue  # K.CC.B.5: a scatter has ten things at most
        picture = Counters(count, layout, seed=count)
        least = picture.least()
        if least[0] > pane[0] or least[1] > pane[1]:
            continue
        for size in (pane, least):
            found = pieces(pixels(picture.draw(*size), Ink.FIRST))
            assert len(found) == count, (count, size)
            discs = boxes(picture, size, Ink.FIRST)
            ((wide, high),) = measures(discs)
            assert wide == pytest.approx(high), "round, and all alike"
            assert min(min(box[:2]) for box in discs) >= 0, "nothing is cut off at an edge"
            assert all(box[2] <= size[0] and box[3] <= 2 * size[1] for box in discs)


@pytest.mark.parametrize("layout", LAYOUTS)
def test_up_to_twenty_fit_the_stage_at_breakfast(layout: str) -> None:
    """K.CC.B.5: twenty in a line, an array or a ring, ten in a scatter (standards.toml)."""
    columns, rows = Counters(10 if layout == "scatter" else 20, layout).least()
    assert columns <= 40 and rows <= 9


@pytest.mark.parametrize("layout", LAYOUTS)
@pytest.mark.parametrize("pane", PANES)
def test_the_second_kind_is_hollow(layout: str, pane: tuple[int, int]) -> None:
    drawing = Counters(4, layout, second=3, seed=2).draw(*pane)
    assert len(pieces(pixels(drawing, Ink.FIRST))) == 4
    rings = pixels(drawing, Ink.SECOND)
    ground = {(x, y) for x in range(2 * pane[0]) for y in range(2 * pane[1])} - rings
    assert len(pieces(ground)) == 4, "the outside, and the inside of each of three"


def test_rows_hold_five() -> None:
    tops = [span(p)[1] for p in pieces(pixels(Counters(13, "rows").draw(40, 18), Ink.FIRST))]
    assert [tops.count(top) for top in sorted(set(tops))] == [5, 5, 3]


def test_a_ring_is_evenly_spaced() -> None:
    for count in (5, 8, 12):
        spots = [span(p) for p in pieces(pixels(Counters(count, "ring").draw(60, 30), Ink.FIRST))]
        middles = [((x0 + x1) / 4, (y0 + y1) / 2) for x0, y0, x1, y1 in spots]
        near = [min(dist(a, b) for b in middles if b is not a) for a in middles]
        assert max(near) - min(near) < 0.35 * max(near)


@pytest.mark.parametrize("count", range(3, 11))
def test_a_scatter_is_never_a_known_pattern(count: int) -> None:
    for seed in range(40):
        points = scattered(count, seed)
        assert len(points) == count and not patterned(list(points))
        assert min(dist(a, b) for a, b in combinations(points, 2)) > 0.2


def test_a_scatter_follows_from_its_seed_alone() -> None:
    assert scattered.__wrapped__(6, 3) == scattered(6, 3) != scattered(6, 4)


@pytest.mark.parametrize(
    "points",
    [
        [(0.1, 0.1), (0.6, 0.5), (1.1, 0.9)],  # the three of a die
        [(0.2, 0.2), (1.2, 0.2), (0.2, 0.8), (1.2, 0.8)],  # the four
        [(0.2, 0.2), (1.2, 0.2), (0.2, 0.8), (1.2, 0.8), (0.7, 0.5)],  # the five
        [(0.7, 0), (1.2, 0.4), (1.0, 0.9), (0.4, 0.9), (0.2, 0.4)],  # a ring of five
        [(0.1 * n, 0.5) for n in range(8)],  # a line of eight
    ],
)
def test_known_patterns_are_known(points: list[tuple[float, float]]) -> None:
    assert patterned(points)


@pytest.mark.slow
@pytest.mark.parametrize("pattern", PATTERNS)
@pytest.mark.parametrize("pane", PANES)
def test_every_dot_is_seen(pattern: str, pane: tuple[int, int]) -> None:
    for count in range(1, 11):
        picture = Dots(count, pattern, seed=count)
        for size in (pane, picture.least()):
            found = pieces(pixels(picture.draw(*size), Ink.FIRST))
            assert len(found) == count, (count, size)
            ((wide, high),) = measures(boxes(picture, size, Ink.FIRST))
            assert wide == pytest.approx(high)


def test_a_line_keeps_two_groups_apart() -> None:
    for left, right in ((1, 5), (4, 4), (5, 2)):
        for seed in range(4):
            drawing = Dots(left + right, "two-groups", seed, left).draw(40, 18)
            line = span(pixels(drawing, Ink.SOFT))
            found = [span(p) for p in pieces(pixels(drawing, Ink.FIRST))]
            assert sum(r < line[0] - 1 for *_, r, _ in found) == left
            assert sum(x > line[2] + 1 for x, *_ in found) == right


def test_five_is_the_upper_row() -> None:
    tops = [span(p)[1] for p in pieces(pixels(Dots(8, "five-and-some").draw(40, 18), Ink.FIRST))]
    assert [tops.count(top) for top in sorted(set(tops))] == [5, 3]


def test_what_has_no_form_is_refused() -> None:
    wrong = (Dots(13), Dots(11, "five-and-some"), Dots(3, "cloud"), Dots(9, "two-groups", left=8))
    for picture in (*wrong, Counters(3, "heap")):
        with pytest.raises(ValueError, match="no "):
            picture.least()


def test_words_never_count() -> None:
    for layout in LAYOUTS:
        assert Counters(7, layout, 2).words() == Counters(9, layout, 1).words()
    for pattern in PATTERNS:
        assert Dots(7, pattern).words() == Dots(8, pattern).words()
