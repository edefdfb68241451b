"""Shares of circles and strips are equal, and have their names."""

from itertools import pairwise
from math import atan2, hypot, isclose, tau

import pytest

from tests.sheets.test_pages import DAY
from warmup.sheets.kinds.equal_shares import SHEET
from warmup.sheets.lines import Line, Stroke
from warmup.sheets.shares import NAMES, SHARES, cuts_out


@pytest.mark.parametrize("shares", SHARES[1:])
def test_cuts_reach_the_edge_of_the_circle_at_equal_turns(shares: int) -> None:
    cuts = cuts_out((50.0, 60.0), 42.0, shares)
    assert len(cuts) == shares and all(start == (50.0, 60.0) for start, _ in cuts)
    assert all(isclose(hypot(x - 50, y - 60), 42.0) for _, (x, y) in cuts)
    turns = sorted(atan2(y - 60, x - 50) % tau for _, (x, y) in cuts)
    assert all(isclose((b - a) % tau, tau / shares) for a, b in pairwise([*turns, turns[0]]))


def test_a_whole_has_no_cut() -> None:
    assert cuts_out((0.0, 0.0), 9.0, 1) == ()


def test_cuts_of_the_strips_are_evenly_apart() -> None:
    _, strips = SHEET.pages(DAY)
    rows: dict[float, list[float]] = {}
    for part in strips.drawn:
        if isinstance(part, Stroke) and part.line is Line.CUT and len(part.points) == 2:
            (x, top), _ = part.points
            rows.setdefault(top, []).append(x)
    assert [len(cuts) for _, cuts in sorted(rows.items())] == [1, 2, 3]
    for cuts in rows.values():
        apart = 180.0 / (len(cuts) + 1)
        assert all(isclose(x - cuts[0], n * apart) for n, x in enumerate(cuts))


def test_halves_thirds_and_fourths_have_their_names() -> None:
    # Names of equal shares: 1.G.A.3 and 2.G.A.3 of the Common Core State Standards for Mathematics, 2010.
    assert [NAMES[shares].split()[-1] for shares in (2, 3, 4)] == ["half", "third", "fourth"]
