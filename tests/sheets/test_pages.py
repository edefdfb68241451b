"""Every kind of sheet: inside the paper, true to size, the same bytes, and a page that a parser takes."""

import datetime as dt
import re
from collections.abc import Iterator

import html5lib
import pytest

from warmup.sheets.base import Day, Sheet
from warmup.sheets.html import Side, document
from warmup.sheets.kinds import kinds
from warmup.sheets.lines import Dot, Drawn, Ring, Stroke, Words
from warmup.sheets.paper import EDGE, ROOM, Paper

DAY = Day(dt.date(2027, 3, 3), {dt.date(2027, 3, n): 89 + n for n in (1, 2, 3, 4)})
KINDS = [pytest.param(sheet, id=name) for name, sheet in kinds().items()]


def ends(part: Drawn) -> Iterator[tuple[float, float]]:
    """The corners of the least box round a part; of words what letters take at most, six tenths wide."""
    match part:
        case Stroke(points):
            yield from points
        case Ring((x, y), radius) | Dot((x, y), radius):
            yield from ((x - radius, y - radius), (x + radius, y + radius))
        case Words((x, y), text, size):
            half = 0.3 * size * len(text)
            yield from ((x - half, y - size / 2), (x + half, y + size / 2))


@pytest.mark.parametrize("sheet", KINDS)
def test_all_of_it_lies_in_the_room_there_is_on_either_paper(sheet: Sheet) -> None:
    pages = [*sheet.pages(DAY)]
    assert pages
    for page in pages:
        assert page.drawn
        for part in page.drawn:
            for x, y in ends(part):
                assert -0.01 <= x <= ROOM.wide + 0.01 and -0.01 <= y <= ROOM.high + 0.01, part


def test_the_papers_are_those_of_the_standards() -> None:
    """ANSI/ASME Y14.1, size A: 8.5 by 11 inches; ISO 216, A4: 210 by 297 mm."""
    assert Paper.LETTER.value == pytest.approx((8.5 * 25.4, 11 * 25.4)) and Paper.A4.value == (210, 297)


@pytest.mark.parametrize("paper", Paper)
def test_a_page_is_html_without_errors_and_asks_for_nothing(paper: Paper) -> None:
    sides = [Side(sheet, page) for sheet in kinds().values() for page in sheet.pages(DAY)]
    text = document(sides, paper, "Sheets <for> the table")
    parser = html5lib.HTMLParser(strict=True)
    parser.parse(text)
    assert parser.errors == [] and text == document(sides, paper, "Sheets <for> the table")
    outside = r"(src|href)=|url\((?!#)|https?:(?!//www\.w3\.org/2000/svg)"
    assert "<script" not in text and not re.search(outside, text)
    wide = paper.value.wide - 2 * EDGE
    assert text.count(f'width="{wide:g}mm"') == len(sides) and f"size: {paper.css};" in text
    names = re.findall(r' id="([^"]*)"', text)
    assert len(names) == len({*names})


@pytest.mark.parametrize("sheet", KINDS)
def test_a_sheet_that_wants_small_things_says_that_they_choke(sheet: Sheet) -> None:
    """Pins, clips and coins; a note on the sheet itself does where its own pieces are large."""
    for page in sheet.pages(DAY):
        words = " ".join(part.text for part in page.drawn if isinstance(part, Words))
        if re.search(r"\b(?:pin|clips?|beans?|buttons?|beads?|coins?)\b", f"{sheet.about} {words}", re.I):
            assert sheet.small or "choke" in words, words


def test_the_whole_year_of_sheets_is_small() -> None:
    """Every kind for each of twelve months in under 5 MB."""
    days = [DAY._replace(date=dt.date(2027, month, 3)) for month in range(1, 13)]
    sides = [Side(sheet, page) for day in days for sheet in kinds().values() for page in sheet.pages(day)]
    assert len(document(sides, Paper.LETTER, "A year").encode()) < 5_000_000
