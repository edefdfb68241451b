"""Shares of circles and strips are equal, and fill the whole."""

from math import isclose, pi

import pytest

from tests.sheets.geometry import area, deepest
from warmup.sheets.shares import NAMES, SHARES, slices, strip


@pytest.mark.parametrize("shares", SHARES)
def test_slices_are_equal_and_fill_the_circle(shares: int) -> None:
    parts = slices((50.0, 50.0), 42.0, shares)
    areas = [area(part) for part in parts]
    assert len(parts) == shares
    assert all(isclose(one, areas[0], rel_tol=1e-9) for one in areas)
    # The area of a circle (from memory: πr²), less what straight steps of a degree cut off: 5e-5 of it.
    assert isclose(sum(areas), pi * 42.0**2, rel_tol=6e-5)
    assert deepest(parts) < 1e-9


@pytest.mark.parametrize("shares", SHARES)
def test_shares_of_a_strip_are_equal_and_fill_it(shares: int) -> None:
    parts = strip(3.0, 4.0, 168.0, 30.0, shares)
    assert [round(area(part), 9) for part in parts] == [round(168.0 * 30.0 / shares, 9)] * shares
    assert deepest(parts) < 1e-9
    xs = [x for part in parts for x, _ in part]
    assert (min(xs), max(xs)) == (3.0, 171.0)


def test_halves_thirds_and_fourths_have_their_names() -> None:
    # Names of equal shares: 1.G.A.3 and 2.G.A.3 of the Common Core State Standards for Mathematics, 2010.
    assert [NAMES[shares].split()[-1] for shares in (2, 3, 4)] == ["half", "third", "fourth"]
