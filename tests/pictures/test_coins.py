"""Coins true to size: United States Mint, "Coin Specifications" (references/coins.toml)."""

from itertools import pairwise

import pytest

from tests.bank import reference
from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures.canvas import Canvas, Drawing, Ink
from warmup.pictures.coins import Coins, _across, _coin, _down
from warmup.pictures.facts import CENTS, MILLIMETERS, REEDED
from warmup.skills._money import laid
from warmup.skills.coin_totals import _HANDFULS

MINT = reference("coins")["coin"]
FOUR = ("penny", "nickel", "dime", "quarter")
PANES = ((40, 18), (56, 9), (60, 30), (80, 38))
MOST = Coins(("dime",) * 4 + ("penny",) * 9, worth=True)


def outlines(coins: Coins, columns: int, rows: int) -> list[tuple[int, int, int, int]]:
    """The box of each coin, largest first: metal that touches, at corners too, or lies inside."""
    return boxes_on(coins.draw(columns, rows))


def boxes_on(drawing: Drawing) -> list[tuple[int, int, int, int]]:
    """The same of a finished drawing."""
    found: list[tuple[int, int, int, int]] = []
    for piece in pieces(pixels(drawing, Ink.COPPER) | pixels(drawing, Ink.SILVER)):
        box = span(piece)
        while near := next((other for other in found if _touch(box, other)), None):
            found.remove(near)
            (left, top), (right, bottom) = map(min, box[:2], near[:2]), map(max, box[2:], near[2:])
            box = (left, top, right, bottom)
        found.append(box)
    return sorted(found, key=lambda box: box[0] - box[2])


def _touch(one: tuple[int, int, int, int], two: tuple[int, int, int, int]) -> bool:
    across = one[0] <= two[2] + 1 and two[0] <= one[2] + 1
    return across and one[1] <= two[3] + 1 and two[1] <= one[3] + 1


def test_sizes_edges_and_worth_are_the_mints() -> None:
    for name in FOUR:
        assert MILLIMETERS[name] == MINT[name]["diameter_mm"]
        assert CENTS[name] == MINT[name]["cents"]
        assert (name in REEDED) == (MINT[name]["edge"] == "reeded")
    assert set(MILLIMETERS) == set(FOUR), "no half dollar, no dollar coin"


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("worth", [False, True])
def test_drawn_diameters_keep_the_mints_ratios_within_a_pixel(pane: tuple[int, int], worth: bool) -> None:
    boxes = outlines(Coins(FOUR, worth), *pane)
    by_size = sorted(FOUR, key=lambda name: -MINT[name]["diameter_mm"])
    assert len(boxes) == 4
    across = dict(zip(by_size, (right - left + 1 for left, _, right, _ in boxes), strict=True))
    # The scale that fits all four best, in half cell widths a millimeter.
    scale = sum(across.values()) / sum(MINT[name]["diameter_mm"] for name in FOUR)
    for name in FOUR:
        assert abs(across[name] - scale * MINT[name]["diameter_mm"]) <= 1, (name, across)
    assert across["dime"] < across["nickel"] < across["quarter"]
    assert across["dime"] < across["penny"] < across["nickel"]


@pytest.mark.parametrize("pane", PANES)
def test_coins_are_round_on_the_screen(pane: tuple[int, int]) -> None:
    for left, top, right, bottom in outlines(Coins(FOUR), *pane):
        # A pixel is half a cell width wide and a whole one high.
        assert abs((right - left + 1) / 2 - (bottom - top + 1)) <= 1


@pytest.mark.parametrize("pane", PANES)
def test_every_coin_is_the_same_left_to_right_and_top_to_bottom(pane: tuple[int, int]) -> None:
    for name in FOUR:
        drawing = Coins((name,)).draw(*pane)
        metal = pixels(drawing, Ink.COPPER) | pixels(drawing, Ink.SILVER)
        left, top, right, bottom = span(metal)
        assert {(left + right - x, y) for x, y in metal} == metal
        assert {(x, top + bottom - y) for x, y in metal} == metal


@pytest.mark.parametrize("pane", PANES)
def test_form_alone_tells_edges_apart(pane: tuple[int, int]) -> None:
    """Without color: nothing cut out of a penny, one whole ring of a nickel, teeth of dime and quarter."""
    holes = {}
    for name in FOUR:
        drawing = Coins((name,)).draw(*pane)
        metal = pixels(drawing, Ink.COPPER) | pixels(drawing, Ink.SILVER)
        left, top, right, bottom = span(metal)
        rows = range(top, bottom + 1)
        inner = {
            (x, y)
            for y in rows
            for x in range(left, right + 1)
            if (x, y) not in metal
            and any((u, y) in metal for u in range(left, x))
            and any((u, y) in metal for u in range(x, right + 1))
            and any((x, v) in metal for v in range(top, y))
            and any((x, v) in metal for v in range(y, bottom + 1))
        }
        holes[name] = len(pieces(inner))
    assert holes["penny"] == 0
    assert holes["nickel"] == 1
    assert holes["dime"] >= 4 and holes["quarter"] >= 4


@pytest.mark.parametrize("pane", PANES)
def test_each_dot_is_a_cent(pane: tuple[int, int]) -> None:
    for names in [*((name,) for name in FOUR), FOUR, ("dime", "dime", "penny", "penny", "penny"), MOST.names]:
        dots = pieces(pixels(Coins(names, worth=True).draw(*pane), Ink.FIRST))
        assert len(dots) == sum(MINT[name]["cents"] for name in names)
        assert len({len(dot) for dot in dots}) == 1
        # Square: as many half cell widths across as twice the half cell heights.
        assert all(
            (right - left + 1) == 2 * (bottom - top + 1) for left, top, right, bottom in map(span, dots)
        )


def test_ten_dots_fall_into_two_fives() -> None:
    lines: dict[int, list[int]] = {}
    for x, y, _, _ in map(span, pieces(pixels(Coins(("dime",), worth=True).draw(40, 18), Ink.FIRST))):
        lines.setdefault(y, []).append(x)
    assert [len(line) for line in lines.values()] == [5, 5]
    assert all(len({b - a for a, b in pairwise(sorted(line))}) == 1 for line in lines.values())


def test_all_coins_are_there_in_the_smallest_stages() -> None:
    for coins in (MOST, Coins(FOUR, True), Coins(FOUR, pointed=2), Coins(("penny",) * 9), Coins(("dime",))):
        columns, rows = coins.least()
        assert columns <= 40 and rows <= 9
        assert len(outlines(coins, columns, rows)) == len(coins.names)


@pytest.mark.slow
@pytest.mark.parametrize("pane", [(40, 18), (56, 9)])
def test_nothing_is_cut_off_at_an_edge(pane: tuple[int, int]) -> None:
    """Every handful that is asked about: each coin whole and round, and all dots of each or none at all."""
    for names in {laid(h) for held in _HANDFULS.values() for h in held}:
        coins = Coins(names, worth=True)
        drawing = coins.draw(*pane)
        boxes = boxes_on(drawing)
        assert len(boxes) == len(names), names
        for left, top, right, bottom in boxes:
            assert abs((right - left + 1) / 2 - (bottom - top + 1)) <= 1, names
        dots = pieces(pixels(drawing, Ink.FIRST))
        assert len(dots) in (0, sum(CENTS[name] for name in names)), names
        assert dots or pane == (56, 9), "only the low stage has no room for them"


def test_dots_give_way_before_coins() -> None:
    columns, rows = MOST.least()
    assert not pixels(MOST.draw(columns, rows), Ink.FIRST)


def test_the_finger_lies_under_its_coin() -> None:
    for place in range(4):
        drawing = Coins(FOUR, pointed=place).draw(56, 9)
        tip_left, tip_top, tip_right, _ = span(pixels(drawing, Ink.INK))
        boxes = sorted(outlines(Coins(FOUR, pointed=place), 56, 9))
        left, _, right, bottom = boxes[place]
        assert abs((left + right) - (tip_left + tip_right)) <= 1 and tip_top > bottom


@pytest.mark.slow
@pytest.mark.parametrize("name", sorted(REEDED))
def test_a_ridged_rim_is_alike_on_all_sides_at_every_size(name: str) -> None:
    """Apart, not run together into bars, and mirrored both ways, from the smallest scale to the largest."""
    for step in range(95):
        scale = 0.26 + step * 0.01
        across, down = _across(name, scale), _down(name, scale)
        canvas = Canvas(40, 20)
        _coin(canvas, name, 20.0 if (2 * across) % 2 == 0 else 20.25, 4 + down / 2, across / 2, down / 2)
        metal = pixels(canvas.drawing(), Ink.SILVER)
        left, top, right, bottom = span(metal)
        assert {(left + right - x, y) for x, y in metal} == metal
        assert {(x, top + bottom - y) for x, y in metal} == metal
        box = {(x, y) for y in range(top, bottom + 1) for x in range(left, right + 1)}
        ridges = pieces({spot for spot in box - metal if _walled(*spot, metal)})
        assert len(ridges) >= (6 if down < 8 else 10), (scale, down, ridges)
        assert max(map(len, ridges)) <= 8, (scale, down, ridges)


def _walled(x: int, y: int, metal: set[tuple[int, int]]) -> bool:
    """Whether a bare pixel has metal to its left, its right, above and below."""
    row, column = {u for u, v in metal if v == y}, {v for u, v in metal if u == x}
    return bool(row and column) and min(row) < x < max(row) and min(column) < y < max(column)


@pytest.mark.parametrize("pane", [(40, 18), (56, 9)])
def test_the_arrow_is_alike_on_both_sides_and_close_below_its_coin(pane: tuple[int, int]) -> None:
    for place in range(4):
        drawing = Coins(FOUR, pointed=place).draw(*pane)
        arrow = pixels(drawing, Ink.INK)
        left, top, right, bottom = span(arrow)
        assert {(left + right - x, y) for x, y in arrow} == arrow
        widths = [sum(v == y for _, v in arrow) for y in range(top, bottom + 1)]
        assert widths == sorted(widths) and widths[0] <= 2 and len(widths) == 3
        above = [box for box in boxes_on(drawing) if box[0] <= left and right <= box[2] and box[3] < top]
        assert any(box[3] == top - 2 and abs(box[0] + box[2] - left - right) <= 1 for box in above)


def test_words_name_no_coin_and_no_number() -> None:
    for coins in (Coins(FOUR, True), MOST, Coins(FOUR, pointed=1)):
        assert not set(coins.words().replace(",", "").replace(";", "").split()) & {*FOUR, "four", "nine"}
    assert (
        Coins(FOUR, pointed=1).marked() == ("nickel",) and Coins(FOUR).marked() == Coins(FOUR).shows() == ()
    )
