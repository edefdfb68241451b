"""Paper to fold, squares to finish, wholes cut in parts: measured on the pixels."""

import pytest

from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures.fold import Fold
from warmup.pictures.half import Half
from warmup.pictures.ink import Ink
from warmup.pictures.shares import Shares

PANES = ((40, 18), (56, 9), (60, 30))


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("figure", ["heart", "arrow", "kite", "tall triangle", "trapezoid", "star"])
def test_a_figure_with_an_upright_line_is_alike_on_both_sides(figure: str, pane: tuple[int, int]) -> None:
    paper = pixels(Fold(figure).draw(*pane), Ink.FIRST)
    left, _, right, _ = span(paper)
    assert paper == {(left + right - x, y) for x, y in paper}


@pytest.mark.parametrize("pane", PANES)
def test_the_line_runs_past_the_paper_and_a_line_set_aside_is_off_the_middle(pane: tuple[int, int]) -> None:
    drawing = Fold("square", 0, 90).draw(*pane)
    line = span(pixels(drawing, Ink.INK))
    left, _, right, _ = span(pixels(drawing, Ink.FIRST))
    assert abs(line[0] + line[2] - left - right) <= 1
    off = span(pixels(Fold("square", 0, 90, 45).draw(*pane), Ink.INK))
    assert abs(off[0] + off[2] - left - right) > (right - left) / 4
    assert not pixels(Fold("square").draw(*pane), Ink.INK)


@pytest.mark.parametrize("lying", [False, True])
@pytest.mark.parametrize("pane", PANES)
def test_the_other_half_is_the_first_one_flipped(lying: bool, pane: tuple[int, int]) -> None:
    """The half on one side and the half on the other are mirror images in the line between."""
    along, away = (6, 2) if lying else (4, 3)
    filled = ((0, 1), (1, 1), (1, 2), (2, 1), (3, 1), (3, 2))
    here = Half(filled, along, away, lying).draw(*pane)
    there = Half(filled, along, away, lying, other=True).draw(*pane)
    one, two = pixels(here, Ink.FIRST), pixels(there, Ink.FIRST)
    left, top, right, bottom = span(pixels(here, Ink.INK))
    flipped = {(x, top + bottom - y) if lying else (left + right - x, y) for x, y in one}
    assert flipped == two and not one & two
    squares = span({min(one)} | {max(one)})
    assert squares and len(one) % len(filled) == 0, "every square is as large as the next"


def test_half_squares_are_square() -> None:
    for pane in PANES:
        left, top, right, bottom = span(pixels(Half(((1, 2),), 4, 4).draw(*pane), Ink.FIRST))
        assert right - left + 1 == 2 * (bottom - top + 1)


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize(
    ("shares", "parts"),
    [
        (Shares("circle", "slices", (1, 1)), 2),
        (Shares("circle", "slices", (1, 1, 1, 1)), 4),
        (Shares("circle", "slices", (1, 1, 1, 1), 45), 4),
        (Shares("circle", "strips", (1, 1), lying=True), 2),
        (Shares("rectangle", "strips", (1, 1)), 2),
        (Shares("rectangle", "strips", (1, 1, 1, 1), lying=True), 4),
        (Shares("rectangle", "cross", (1, 1)), 4),
        (Shares("square", "cross", (1, 1)), 4),
        (Shares("square", "corners", (1, 1)), 2),
        (Shares("square", "corners", (1, 1, 1, 1)), 4),
        (Shares("rectangle", "corners", (1, 1)), 2),
    ],
)
def test_equal_parts_are_painted_equal(shares: Shares, parts: int, pane: tuple[int, int]) -> None:
    sizes = sorted(len(p) for p in pieces(pixels(shares.draw(*pane), Ink.FIRST)) if len(p) > 4)
    assert len(sizes) == parts
    assert sizes[-1] - sizes[0] <= 0.12 * sizes[-1] + 4


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize(
    "shares",
    [
        Shares("circle", "slices", (1, 2)),
        Shares("circle", "strips", (1, 1, 1, 1)),
        Shares("circle", "strips", (2, 1), lying=True),
        Shares("rectangle", "cross", (1, 2)),
        Shares("rectangle", "strips", (2, 1, 1, 2)),
        Shares("square", "strips", (2, 1)),
    ],
)
def test_unequal_parts_look_unequal(shares: Shares, pane: tuple[int, int]) -> None:
    sizes = sorted(len(p) for p in pieces(pixels(shares.draw(*pane), Ink.FIRST)) if len(p) > 4)
    assert sizes[-1] > 1.35 * sizes[0]
    assert "equal" not in shares.words()
