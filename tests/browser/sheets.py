"""Prints every kind of sheet with a real browser, Debian's Chromium, and holds a ruler to the paper.

    python -m tests.browser.sheets FOLDER

writes a PDF of each kind on Letter and on A4, and measures what is drawn there: the size and the number of
pages, both rulers, everything within 6 mm of the edges, coins and cards to 0.2 mm. It says what is wrong and
gives 1; without the browser nothing is checked, and it gives 2. It needs pypdf beside what the tests need.
"""

import datetime as dt
import tomllib
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import NamedTuple

from tests.browser.paper import LIGHT, browser
from tests.browser.run import run
from warmup.sheets.base import Day, Sheet
from warmup.sheets.html import Side, document
from warmup.sheets.kinds import kinds
from warmup.sheets.kinds.coins import COUNTS
from warmup.sheets.kinds.number_cards import HIGH, WIDE
from warmup.sheets.paper import Paper

DAY = Day(dt.date(2027, 3, 3), {dt.date(2027, 3, n): 89 + n for n in (1, 2, 3, 4)})
SIZES = {Paper.LETTER: (215.9, 279.4), Paper.A4: (210.0, 297.0)}
"""Letter: size A of ANSI/ASME Y14.1; A4: ISO 216. Millimeters."""
EDGE, CLOSE = 6.0, 0.2
POINT = 25.4 / 72
"""A point of a PDF in millimeters (ISO 32000, the default user space)."""
COINS = Path(__file__).parents[1] / "references" / "coins.toml"
CUT = 0.3
"""How wide a line to cut is: the browser fills its dashes, so a box goes half of that beyond."""
RULERS = (100.0, 101.6)
"""10 centimeters, and 4 inches of 25.4 mm."""


class Box(NamedTuple):
    """What a path covers, in millimeters from the upper left corner of the paper."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def wide(self) -> float:
        """From left to right."""
        return self.right - self.left

    @property
    def high(self) -> float:
        """From top to bottom."""
        return self.bottom - self.top


def printed(page: str, pdf: Path) -> None:
    """Print a page on the paper that it asks for."""
    copy = pdf.with_suffix(".html")
    copy.write_text(page, "utf-8")
    browser(LIGHT, "--no-pdf-header-footer", f"--print-to-pdf={pdf}", copy.as_uri())


def boxes(page: object, high: float) -> list[Box]:
    """The box of each path that is drawn, and of each place where letters begin."""
    found: list[Box] = []
    points: list[tuple[float, float]] = []

    def place(cm: list[float], x: float, y: float) -> tuple[float, float]:
        down = cm[1] * x + cm[3] * y + cm[5]
        return (cm[0] * x + cm[2] * y + cm[4]) * POINT, high - down * POINT

    def look(operator: bytes, operands: list[object], cm: list[float], tm: list[float]) -> None:
        match operator:
            case b"m" | b"l":
                x, y = (float(str(each)) for each in operands)
                points.append(place(cm, x, y))
            case b"c":
                numbers = [float(str(each)) for each in operands]
                points.append(place(cm, *numbers[-2:]))
            case b"re":
                x, y, wide, tall = (float(str(each)) for each in operands)
                points.extend((place(cm, x, y), place(cm, x + wide, y + tall)))
            case b"S" | b"s" | b"f" | b"f*" | b"B":
                if points:
                    found.append(around(points))
                points.clear()
            case b"n":
                points.clear()
            case b"Tj" | b"TJ":
                found.append(around([place(cm, tm[4], tm[5])]))

    page.extract_text(visitor_operand_before=look)  # type: ignore[attr-defined]
    return found


def around(points: list[tuple[float, float]]) -> Box:
    """The box around points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs), max(ys))


def faults_of_print(name: str, sheet: Sheet, pdf: Path, paper: Paper) -> Iterator[str]:
    """What is wrong with the print of a kind."""
    from pypdf import PdfReader

    (wide, high), pages = SIZES[paper], PdfReader(pdf).pages
    said = f"{pdf.name}: page"
    expected = len([*sheet.pages(DAY)])
    if len(pages) != expected:
        yield f"{pdf.name}: {len(pages)} pages, not {expected}"
    for number, page in enumerate(pages, start=1):
        size = float(page.mediabox.width) * POINT, float(page.mediabox.height) * POINT
        # A browser makes pages of whole points, or of whole pixels.
        if abs(size[0] - wide) > 0.4 or abs(size[1] - high) > 0.4:
            yield f"{said} {number} is {size[0]:.1f} by {size[1]:.1f} mm"
        drawn = boxes(page, size[1])
        for length in RULERS:
            if not any(abs(box.wide - length) < CLOSE and box.high < CLOSE for box in drawn):
                yield f"{said} {number} has no ruler of {length} mm"
        out = [
            box
            for box in drawn
            if box.left < EDGE - CLOSE
            or box.top < EDGE - CLOSE
            or box.right > wide - EDGE + CLOSE
            or box.bottom > high - EDGE + CLOSE
        ]
        if out:
            yield f"{said} {number}: outside the margins: {out[:3]}"
        if number == 1 and name in SPECIAL:
            yield from (f"{said} 1: {fault}" for fault in SPECIAL[name](drawn))


def coins(drawn: list[Box]) -> Iterator[str]:
    """So many circles of each diameter of the Mint's table."""
    table = tomllib.loads(COINS.read_text("utf-8"))["coin"]
    for name, count in COUNTS.items():
        across = table[name]["diameter_mm"]
        there = sum(max(abs(each - CUT - across) for each in (box.wide, box.high)) < CLOSE for box in drawn)
        if there != count:
            yield f"{there} circles of {across} mm, not {count} ({name})"


def number_cards(drawn: list[Box]) -> Iterator[str]:
    """Lines to cut as far apart as a card is high, and columns as far apart as it is wide."""
    thin = CUT / 2, CUT * 1.5
    rows = sorted(
        {round(box.top, 2) for box in drawn if thin[0] < box.high < thin[1] and box.wide > WIDE - 1}
    )
    sides = (box for box in drawn if thin[0] < box.wide < thin[1] and abs(box.high - HIGH) < 1)
    columns = sorted({round(box.left, 2) for box in sides})
    for what, places, step in (("rows", rows, HIGH), ("columns", columns, WIDE)):
        apart = [after - before for before, after in pairwise(places)]
        if len(apart) < 4 or any(abs(each - step) > CLOSE for each in apart):
            yield f"{what} of cards {apart}, not {step} mm apart"


SPECIAL = {"coins": coins, "number-cards": number_cards}


def faults(folder: Path) -> Iterator[str]:
    """Print and measure everything."""
    for name, sheet in kinds().items():
        for paper in Paper:
            pdf = folder / f"{name}-{paper.name.lower()}.pdf"
            printed(document([Side(sheet, page) for page in sheet.pages(DAY)], paper, name), pdf)
            yield from faults_of_print(name, sheet, pdf, paper)


if __name__ == "__main__":
    raise SystemExit(run("sheets", __doc__, faults))
