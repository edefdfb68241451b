"""Coins true to size: United States Mint, "Coin Specifications" (references/coins.toml)."""

from itertools import combinations, pairwise
from math import dist, hypot

import pytest

from tests.bank import reference
from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures.coins import Coins, _coin
from warmup.pictures.facts import CENTS, MILLIMETERS, REEDED
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import Edges, Polygon, Round
from warmup.pictures.sketch import Sketch
from warmup.skills._money import laid
from warmup.skills.coin_totals import _HANDFULS

MINT = reference("coins")["coin"]
FOUR = ("penny", "nickel", "dime", "quarter")
METAL = (Ink.COPPER, Ink.SILVER)
PANES = ((40, 18), (56, 9), (60, 30), (80, 38))
MOST = Coins(("dime",) * 4 + ("penny",) * 9, worth=True)


def coins_on(coins: Coins, columns: int, rows: int) -> list[Round]:
    """The discs of metal in their order."""
    shapes = coins.sketch(columns, rows).shapes
    return [shape for shape, ink in shapes if ink in METAL and isinstance(shape, Round)]


def dots_on(coins: Coins, columns: int, rows: int) -> list[Edges]:
    """Where the dots lie."""
    return [shape.box for shape, ink in coins.sketch(columns, rows).shapes if ink is Ink.FIRST]


def rows_of(coins: Coins, pane: tuple[int, int]) -> list[list[str]]:
    """The coins' names, a list a row, from the top and from the left."""
    lines: dict[float, list[tuple[float, str]]] = {}
    for disc, name in zip(coins_on(coins, *pane), coins.names, strict=True):
        lines.setdefault(round(disc.y, 6), []).append((disc.x, name))
    assert all(line == sorted(line, key=lambda place: place[0]) for line in lines.values())
    return [[name for _, name in lines[y]] for y in sorted(lines)]


def test_sizes_edges_and_worth_are_the_mints() -> None:
    for name in FOUR:
        assert MILLIMETERS[name] == MINT[name]["diameter_mm"]
        assert CENTS[name] == MINT[name]["cents"]
        assert (name in REEDED) == (MINT[name]["edge"] == "reeded")
    assert set(MILLIMETERS) == set(FOUR), "no half dollar, no dollar coin"


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("worth", [False, True])
def test_drawn_diameters_keep_the_mints_ratios(pane: tuple[int, int], worth: bool) -> None:
    drawn = coins_on(Coins(FOUR, worth), *pane)
    scales = {disc.across / MINT[name]["diameter_mm"] for disc, name in zip(drawn, FOUR, strict=True)}
    assert max(scales) - min(scales) < 1e-9
    assert all(disc.across == disc.down for disc in drawn)


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize(
    "names",
    [
        ("dime",) * 4 + ("penny",) * 9,
        ("quarter", "dime", "nickel", "nickel", "penny", "penny"),
        ("dime",) * 2 + ("nickel",) * 3 + ("penny",) * 4,
        ("penny",) * 9,
    ],
)
@pytest.mark.parametrize("worth", [False, True])
def test_coins_break_into_even_rows_by_kind(
    names: tuple[str, ...], worth: bool, pane: tuple[int, int]
) -> None:
    """A kind lies in one row, or in rows of its own that differ by one at most."""
    rows = rows_of(Coins(names, worth), pane)
    assert [name for row in rows for name in row] == list(names)
    for name in set(names):
        holding = [row for row in rows if name in row]
        if len(holding) > 1:
            assert all(set(row) == {name} for row in holding)
            assert max(map(len, holding)) - min(map(len, holding)) <= 1


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
        assert len(coins_on(coins, columns, rows)) == len(coins.names)


@pytest.mark.slow
@pytest.mark.parametrize("pane", [(40, 18), (56, 9), (38, 22), (60, 9)])
def test_nothing_is_cut_off_at_an_edge_and_nothing_lies_on_another(pane: tuple[int, int]) -> None:
    """Every handful that is asked about: each coin whole, and all dots of each or none at all."""
    for names in {laid(h) for held in _HANDFULS.values() for h in held}:
        coins = Coins(names, worth=True)
        discs, dots = coins_on(coins, *pane), dots_on(coins, *pane)
        assert len(dots) in (0, sum(CENTS[name] for name in names)), names
        assert dots or pane[1] == 9, "only the low stage has no room for them"
        for left, top, right, bottom in [*(disc.box for disc in discs), *dots]:
            assert left >= 0 and top >= -0.01 and right <= pane[0] and bottom <= 2 * pane[1] + 0.01, names
        for one, two in combinations(discs, 2):
            assert hypot(one.x - two.x, one.y - two.y) > one.across + two.across + 1, names


def test_dots_give_way_before_coins() -> None:
    columns, rows = MOST.least()
    assert not dots_on(MOST, columns, rows)


@pytest.mark.parametrize("pane", [(40, 18), (56, 9), (60, 30)])
def test_the_finger_lies_close_under_its_coin(pane: tuple[int, int]) -> None:
    for place in range(4):
        coins = Coins(FOUR, pointed=place)
        (finger,) = [shape for shape, ink in coins.sketch(*pane).shapes if ink is Ink.INK]
        disc = coins_on(coins, *pane)[place]
        left, top, right, _ = finger.box
        assert left + right == pytest.approx(2 * disc.x) and 0.5 < top - disc.box[3] <= 1.5


@pytest.mark.parametrize("name", sorted(REEDED))
def test_ridges_stand_apart_at_every_size(name: str) -> None:
    """As far apart as they are broad, inside the edge, and more of them on a larger coin."""
    counts = []
    for radius in (2.3, 3, 4.5, 6, 8, 12, 20):
        sketch = Sketch(60, 40)
        _coin(sketch, name, 30, 30, radius)
        cuts = sketch.shapes[1][0]
        assert isinstance(cuts, Polygon)
        for cut in cuts.contours:
            out = [hypot(x - 30, y - 30) for x, y in cut]
            assert max(out) < radius - 0.3 and max(out) - min(out) > 0.99
        broad = dist(*cuts.contours[0][:2])
        assert broad == pytest.approx(dist(cuts.contours[0][1], cuts.contours[1][0]), rel=0.02)
        counts.append(len(cuts.contours))
    assert counts == sorted(counts) and counts[0] >= 4


def test_words_name_no_coin_and_no_number() -> None:
    for coins in (Coins(FOUR, True), MOST, Coins(FOUR, pointed=1)):
        assert not set(coins.words().replace(",", "").replace(";", "").split()) & {*FOUR, "four", "nine"}
    assert (
        Coins(FOUR, pointed=1).marked() == ("nickel",) and Coins(FOUR).marked() == Coins(FOUR).shows() == ()
    )
