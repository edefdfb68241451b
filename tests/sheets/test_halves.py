"""Figures to fold: cut in two along the fold, the halves match where it is said that they do."""

from math import cos, dist, isclose, radians, sin

import pytest

from tests.sheets.geometry import area
from warmup.pictures.shapes import Point
from warmup.sheets.halves import MATCHING, MIXED, Folded, fold_across, upright_half
from warmup.sheets.kinds import matching_halves

_ROOM = ((42.0, 33.0), 84.0, 66.0)


def _mirrored(point: Point, start: Point, end: Point) -> Point:
    """A point mirrored in a line (from memory: less twice its part across the line)."""
    long = dist(start, end)
    u, v = (end[0] - start[0]) / long, (end[1] - start[1]) / long
    x, y = point[0] - start[0], point[1] - start[1]
    across = x * -v + y * u
    return point[0] + 2 * across * v, point[1] - 2 * across * u


def _lands(folded: Folded) -> bool:
    """Whether each corner, folded over the line drawn, comes to lie on a corner."""
    points = folded.points(*_ROOM)
    ends = fold_across(points, folded.line)
    return all(min(dist(_mirrored(point, *ends), other) for other in points) < 1e-6 for point in points)


@pytest.mark.parametrize("folded", MATCHING + MIXED, ids=lambda one: one.figure)
def test_halves_land_on_each_other_where_it_is_said(folded: Folded) -> None:
    assert folded.matches() == _lands(folded)


def test_first_page_matches_and_half_of_the_second_does() -> None:
    assert all(map(_lands, MATCHING))
    assert sum(map(_lands, MIXED)) == len(MIXED) / 2


@pytest.mark.parametrize("folded", MATCHING + MIXED, ids=lambda one: one.figure)
def test_fold_runs_across_the_figure_at_its_angle(folded: Folded) -> None:
    points = folded.points(*_ROOM)
    start, end = fold_across(points, folded.line)
    u, v = cos(radians(folded.line)), -sin(radians(folded.line))
    assert abs((end[0] - start[0]) * v - (end[1] - start[1]) * u) < 1e-6
    sides = list(zip(points, points[1:] + points[:1], strict=True))
    for place in (start, end):
        assert min(dist(a, place) + dist(place, b) - dist(a, b) for a, b in sides) < 1e-9
    assert dist(start, end) > 20


@pytest.mark.parametrize("folded", [one for one in MATCHING if one.line == 90.0], ids=lambda one: one.figure)
def test_halves_apart_are_as_large_and_mirror_each_other(folded: Folded) -> None:
    points = folded.points(*_ROOM)
    left, right = (upright_half(points, right=right) for right in (False, True))
    whole = area(points)
    assert isclose(area(left), whole / 2, rel_tol=1e-6) and isclose(area(right), whole / 2, rel_tol=1e-6)
    start, end = fold_across(points, 90.0)
    for point in left:
        assert min(dist(_mirrored(point, start, end), other) for other in right) < 1e-5


def test_no_left_half_stands_beside_its_own_right_one() -> None:
    assert all(row != other for row, other in enumerate(matching_halves._ORDER))
    assert sorted(matching_halves._ORDER) == list(range(sum(one.line == 90.0 for one in MATCHING)))


def test_slanted_side_is_cut_where_the_line_crosses_it() -> None:
    # The middle of this triangle’s area lies a third of the way along; left of it there are 10 of 18.
    corner = ((0.0, 0.0), (6.0, 0.0), (0.0, 6.0))
    left, right = (upright_half(corner, right=right) for right in (False, True))
    assert (round(area(left), 9), round(area(right), 9)) == (10.0, 8.0)
