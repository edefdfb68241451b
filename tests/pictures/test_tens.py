import pytest

from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures.base_ten import BaseTen
from warmup.pictures.bundles import Bundles
from warmup.pictures.cells import Drawing
from warmup.pictures.hundred_chart import HundredChart
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import Polygon, Rect
from warmup.pictures.ten_frame import TenFrame

Pixels = set[tuple[int, int]]
PANES = ((40, 18), (56, 9), (60, 30), (80, 38))


@pytest.mark.slow
@pytest.mark.parametrize("pane", PANES)
def test_each_bundle_has_a_band_and_ten_straws_and_loose_ones_stand_alone(pane: tuple[int, int]) -> None:
    for tens in range(10):
        for ones in (0, 1, 5, 9):
            picture = Bundles(tens, ones)
            for size in (pane, picture.least()) if picture.least()[1] <= pane[1] else ():
                drawing = picture.draw(*size)
                bands = pieces(pixels(drawing, Ink.INK))
                assert len(bands) == tens, (tens, ones, size)
                first, silver = pixels(drawing, Ink.FIRST), pixels(drawing, Ink.COPPER)
                above = sum(_straws_above(first, silver, band) for band in bands)
                assert above == 10 * tens, (tens, ones, size)
                low = max((span(band)[3] for band in bands), default=-2)
                loose = [p for p in pieces(first | silver) if span(p)[1] > low + 1]
                loose = [p for p in loose if not any(_touches(p, band) for band in bands)]
                assert len(loose) == ones, (tens, ones, size)


def _straws_above(first: Pixels, silver: Pixels, band: Pixels) -> int:
    """Runs of one ink in the pixel row just above a band."""
    left, top, right, _ = span(band)
    inks = [
        1 if (x, top - 1) in first else 2 if (x, top - 1) in silver else 0 for x in range(left, right + 1)
    ]
    return sum(ink != 0 and ink != before for before, ink in zip([0, *inks], inks, strict=False))


def _touches(piece: Pixels, band: Pixels) -> bool:
    return any((x, y - 1) in band for x, y in piece)


@pytest.mark.parametrize("pane", PANES)
def test_rods_have_ten_parts_and_flats_a_hundred(pane: tuple[int, int]) -> None:
    for hundreds, tens, ones in ((0, 3, 4), (1, 0, 0), (1, 9, 9), (0, 9, 9)):
        picture = BaseTen(hundreds, tens, ones)
        assert picture.least()[0] <= 40 and picture.least()[1] <= 9
        for size in (pane, picture.least()):
            shapes = picture.sketch(*size).shapes
            told = [cube for shape, _ in shapes if isinstance(shape, Polygon) for cube in shape.contours]
            first = [shape.box for shape, ink in shapes if ink is Ink.FIRST and isinstance(shape, Rect)]
            if first:
                # Small cubes: every other one of a rod or a flat is told apart by its tone.
                assert len(told) == 50 * hundreds + 5 * tens
                whole = sum((right - left) * (bottom - top) for left, top, right, bottom in first)
                assert whole / (told[0][1][0] - told[0][0][0]) ** 2 == 100 * hundreds + 10 * tens + ones
            else:
                cubes = pieces(pixels(picture.draw(*size), Ink.FIRST))
                assert len(cubes) == len(told) == 100 * hundreds + 10 * tens + ones
                assert len({len(piece) for piece in cubes}) == 1


@pytest.mark.slow
@pytest.mark.parametrize("pane", PANES)
def test_the_frame_has_ten_square_places_and_counters_in_their_middle(pane: tuple[int, int]) -> None:
    for filled, beside in ((0, 0), (3, 0), (6, 2), (10, 0)):
        drawing = TenFrame(filled, beside).draw(*pane)
        everything = {(x, y) for x in range(2 * pane[0]) for y in range(2 * pane[1])}
        lines = pixels(drawing, Ink.SOFT)
        left, top, right, bottom = span(lines)
        inside = [p for p in pieces(everything - lines) if span(p)[0] > left and span(p)[2] < right]
        assert len(inside) == 10
        for place in inside:
            x0, y0, x1, y1 = span(place)
            assert x1 - x0 + 1 == 2 * (y1 - y0 + 1), "a pixel is twice as high as wide"
        counters = pieces(pixels(drawing, Ink.FIRST))
        assert len(counters) == filled
        places = [span(p) for p in sorted(inside, key=lambda p: (span(p)[1], span(p)[0]))]
        for counter in counters:
            a0, b0, a1, b1 = span(counter)
            home = [p for p in places if p[0] <= a0 and a1 <= p[2] and p[1] <= b0 and b1 <= p[3]]
            assert [(a0 + a1, b0 + b1)] == [(p[0] + p[2], p[1] + p[3]) for p in home]
        assert len(places[:filled]) == filled and bottom - top > 0


BARE = str.maketrans("█▀▄", "   ")


def written(drawing: Drawing) -> list[list[str]]:
    """What stands on it, a line of words for every row that has some."""
    lines = (line.split() for line in drawing.text().translate(BARE).splitlines())
    return [line for line in lines if line]


@pytest.mark.parametrize("pane", PANES)
def test_the_chart_writes_every_number_once_and_blanks_what_is_hidden(pane: tuple[int, int]) -> None:
    for chart in (
        HundredChart(),
        HundredChart(1, 20),
        HundredChart(21, 50, (47,), (37,)),
        HundredChart(1, 120),
    ):
        if chart.least()[0] > pane[0] or chart.least()[1] > pane[1]:
            continue
        drawing = chart.draw(*pane)
        lines = written(drawing)
        said = [text for line in lines for text in line]
        assert said == [str(n) for n in range(chart.first, chart.last + 1) if n not in chart.hidden]
        assert bool(pixels(drawing, Ink.HOLE)) == bool(chart.hidden)
        assert len(lines) == (chart.last - chart.first + 10) // 10


def test_numbers_stand_apart_and_in_the_middle_of_their_squares() -> None:
    for columns in (30, 40, 56, 80):
        text = HundredChart().draw(columns, 30).text().translate(BARE)
        rows = [line for line in text.splitlines() if line.strip()]
        assert len(rows) == 10 and len(rows[-1].split()) == 10, "99 and 100 do not run together"
        wide = min(columns // 10, 8)
        left = (columns - 10 * wide) // 2
        for at, number in enumerate(rows[4].split()):
            place = rows[4].index(number) - left - at * wide
            assert abs(place - (wide - len(number)) / 2) <= 1


@pytest.mark.parametrize("chart", [HundredChart(51, 60, pointed=(52,)), HundredChart(pointed=(52,))])
def test_a_number_stands_half_way_up_its_square_beside_the_script(chart: HundredChart) -> None:
    drawing = chart.draw(40, 22)
    left, top, right, bottom = span(pixels(drawing, Ink.INK))
    (row,) = (at for at, line in enumerate(drawing.text().splitlines()) if " 52 " in line)
    assert top + bottom == 2 * (2 * row) + 1 and (right - left + 1, bottom - top + 1) == (8, 4)


def test_a_big_pane_is_used() -> None:
    hidden = HundredChart(hidden=(1,)).draw(80, 38)
    left, top, right, bottom = span(pixels(hidden, Ink.HOLE))
    assert (right - left + 1) // 2 >= 7 and (bottom - top + 1) // 2 >= 3
