"""The pieces of the cut square fill it, and every figure, leaving nothing bare and lying nowhere twice."""

from collections import Counter
from itertools import pairwise
from math import gcd

import pytest

from tests.sheets.geometry import area
from warmup.pictures.shapes import Points
from warmup.sheets.cut_square import CUTS, FIGURES, SQUARE, Figure

_EVERYTHING = {"the square": SQUARE, **FIGURES}

Step = tuple[tuple[int, int], tuple[int, int]]


def _border(points: Points, *, there_only: bool = False) -> Counter[Step]:
    """The steps round a polygon, in half units: what it goes there counts, what it comes back takes away.

    Of a line only the way there is wanted.
    """
    corners = [(round(2 * x), round(2 * y)) for x, y in points]
    assert [(x / 2, y / 2) for x, y in corners] == [tuple(map(float, point)) for point in points]
    steps: Counter[Step] = Counter()
    for (x0, y0), (x1, y1) in pairwise(corners if there_only else [*corners, corners[0]]):
        many = gcd(x1 - x0, y1 - y0)
        u, v = (x1 - x0) // many, (y1 - y0) // many
        for n in range(many):
            start, end = (x0 + n * u, y0 + n * v), (x0 + (n + 1) * u, y0 + (n + 1) * v)
            steps[min((start, end), (end, start))] += 1 if start < end else -1
    return steps


def _fills(figure: Figure) -> bool:
    """Whether the borders of the pieces add up to that of the outline."""
    total: Counter[Step] = Counter()
    for piece in figure.pieces:
        total.update(_border(piece.points()))
    total.subtract(_border(figure.outline))
    return not any(total.values())


@pytest.mark.parametrize("name", _EVERYTHING)
def test_pieces_fill_the_outline_exactly(name: str) -> None:
    # A step between two pieces is gone there and back, so that the border of the whole is left. Regions with
    # one border cover each place equally often (from memory: a cycle in the plane bounds one chain only).
    assert _fills(_EVERYTHING[name])


@pytest.mark.parametrize("name", FIGURES)
def test_figure_takes_no_piece_that_the_square_lacks(name: str) -> None:
    there, used = (Counter(placed.piece for placed in figure.pieces) for figure in (SQUARE, FIGURES[name]))
    assert used <= there


def test_square_is_cut_into_nine_pieces_of_three_sizes() -> None:
    areas = Counter(area(placed.points()) for placed in SQUARE.pieces)
    assert areas == {4.0: 1, 2.0: 4, 1.0: 4}


def test_five_straight_cuts_take_the_square_apart() -> None:
    # Every side of a piece lies on a cut or on the square's own edge, and no cut runs through a piece.
    sides = {step for piece in SQUARE.pieces for step in _border(piece.points())}
    cut = {step for line in CUTS for step in _border(line, there_only=True)}
    assert len(CUTS) == 5
    assert cut | set(_border(SQUARE.outline)) == sides


def test_a_piece_laid_wrong_is_seen() -> None:
    house = FIGURES["house"]
    first = house.pieces[0]
    moved = Figure(house.outline, (first._replace(corner="nw"), *house.pieces[1:]))
    assert not _fills(moved)
