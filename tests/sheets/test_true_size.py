"""What is cut out of the sheets of shapes, blocks and strips has the size that it is said to have."""

import datetime as dt
import re
from itertools import pairwise

from tests.sheets.geometry import area, length
from warmup.sheets.base import Day, Page
from warmup.sheets.html import Side, document
from warmup.sheets.kinds import (
    base_ten_blocks,
    cut_square,
    equal_shares,
    matching_halves,
    measuring_strips,
    solid_nets,
)
from warmup.sheets.lines import Line, Stroke, Words
from warmup.sheets.paper import Paper

_DAY = Day(dt.date(2027, 3, 3), {})
_STRIPS = ((10.0, 15), (10.0, 15), (25.4, 6), (25.4, 6))
"""The strips on their page: how long a unit is in millimeters, and how many there are."""


def _strokes(page: Page, line: Line) -> list[Stroke]:
    return [part for part in page.drawn if isinstance(part, Stroke) and part.line is line]


def _said(page: Page) -> str:
    return " ".join(part.text for part in page.drawn if isinstance(part, Words))


def test_units_rods_and_flats_are_of_whole_centimeters() -> None:
    rods, flats = base_ten_blocks.pages(_DAY)
    cuts = _strokes(rods, Line.CUT)
    # Base-ten blocks: a unit 1 cm wide, a rod 10 by 1, a flat 10 by 10 (common practice, no source).
    upright = sorted({x for stroke in cuts for x, _ in stroke.points})
    assert {round(b - a, 9) for a, b in pairwise(upright)} == {10.0} and len(upright) == 11
    frames = [
        stroke for page in (rods, flats) for stroke in _strokes(page, Line.CUT) if len(stroke.points) == 5
    ]
    assert sorted(round(area(frame.points[:-1]), 6) for frame in frames) == [2000, 10000, 10000, 10000]
    assert len(_strokes(flats, Line.CUT)) == 2


def test_cube_on_paper_is_folded_along_sides_of_five_centimeters() -> None:
    cube = solid_nets.pages(_DAY)[0]
    assert {round(length(stroke.points), 9) for stroke in _strokes(cube, Line.FOLD)} == {50.0}


def test_each_solid_has_its_page_with_what_it_becomes() -> None:
    pages = solid_nets.pages(_DAY)
    assert len({page.title for page in pages}) == len(pages) == 6
    for page in pages:
        assert _strokes(page, Line.CUT) and _strokes(page, Line.FOLD) and _strokes(page, Line.DRAWN)


def test_outlines_are_as_large_as_the_pieces_that_fill_them() -> None:
    square, house, *_ = cut_square.pages(_DAY)
    whole = _strokes(square, Line.CUT)[-1]
    # Four units of 24 mm a side; the house takes twelve of the sixteen square units.
    assert round(area(whole.points[:-1])) == 96 * 96
    assert round(area(_strokes(house, Line.DRAWN)[0].points[:-1])) == 12 * 24 * 24


def test_outlines_come_with_the_pieces_drawn_in_and_then_without() -> None:
    pages = cut_square.pages(_DAY)[1:]
    half = len(pages) // 2
    assert [bool(_strokes(page, Line.FAINT)) for page in pages] == [True] * half + [False] * half
    assert [page.title for page in pages[:half]] == [page.title for page in pages[half:]]


def test_shares_are_cut_where_they_are_equal_and_each_has_its_name() -> None:
    circles, strips = equal_shares.pages(_DAY)
    for page in (circles, strips):
        assert [_said(page).count(name) for name in ("whole", "half", "third", "fourth")] == [1, 2, 3, 4]
    # Lines of 180 mm less the frames: 1 cut at 90, 2 at 60 and 120, 3 at 45, 90 and 135.
    cuts = [stroke.points[0][0] for stroke in _strokes(strips, Line.CUT) if len(stroke.points) == 2]
    assert sorted(round(x - 9.0, 9) for x in cuts) == [45, 60, 90, 90, 120, 135]


def test_answer_to_the_folding_names_those_that_match() -> None:
    _, mixed, _ = matching_halves.pages(_DAY)
    assert "Here these match: square, rhombus and hexagon." in _said(mixed)


def test_marks_in_the_page_stand_true_to_a_hundredth_of_a_millimeter() -> None:
    # The drawing's own unit is a millimeter; 1 in = 25.4 mm exactly (Federal Register, July 1, 1959).
    strips, ribbons = measuring_strips.pages(_DAY)
    said = document([Side(measuring_strips.SHEET, strips)], Paper.LETTER, "Strips")
    drawn = re.findall(r'd="M([\d.]+) ([\d.]+)L\1 ([\d.]+)" class="d"', said)
    tall = [float(x) for x, top, bottom in drawn if abs(float(bottom) - float(top) - 12.0) < 0.001]
    # Four strips, each from its left edge on.
    starts = [0, *(n for n in range(1, len(tall)) if tall[n] < tall[n - 1]), len(tall)]
    for (begin, end), (unit, many) in zip(pairwise(starts), _STRIPS, strict=True):
        assert end - begin == many + 1
        assert all(abs(tall[begin + n] - tall[begin] - n * unit) < 0.01 for n in range(many + 1))
    clips = [stroke.points for stroke in _strokes(ribbons, Line.CUT)][: len(measuring_strips.RIBBONS)]
    found = [round((points[1][0] - points[0][0]) / measuring_strips.CLIP[0], 9) for points in clips]
    assert tuple(found) == measuring_strips.RIBBONS
