"""One sketch, two painters: what SVG shows is what the terminal shows, cell by cell."""

import re
from xml.etree import ElementTree

import pytest

from tests.pictures.blobs import filled
from tests.pictures.examples import EXAMPLES
from tests.pictures.raster import Pixels, rendered
from warmup.pictures import Cell, Picture
from warmup.pictures.cells import drawn
from warmup.pictures.ink import Ink, Mix
from warmup.pictures.shapes import disc, ring
from warmup.pictures.sketch import Sketch
from warmup.pictures.svg import fitted, svg
from warmup.tui.paint import Look, color_of

PANE = (38, 22)
WIDE, HIGH = 2, 4
"""Dots of a cell, which is one inch in so many dots an inch."""

ALL = [
    pytest.param(picture, id=f"{kind}-{n}")
    for kind, some in EXAMPLES.items()
    for n, picture in enumerate(some)
    if picture.fits(*PANE)
]
Color = tuple[float, float, float]


def colors(mix: Mix) -> str:
    return color_of(mix, Look.DARK)


def rgb(color: str) -> Color:
    return int(color[1:3], 16), int(color[3:5], 16), int(color[5:7], 16)


def shown(cell: Cell) -> Color:
    """The mean color of a cell of blocks."""
    blocks = filled(cell.glyph)
    assert blocks is not None
    share = sum(wide * high for _, _, wide, high in blocks)
    ink, paper = rgb(colors(cell.ink)), rgb(colors(cell.paper))
    red, green, blue = (share * one + (1 - share) * two for one, two in zip(ink, paper, strict=True))
    return red, green, blue


def seen(pixels: Pixels, column: int, row: int) -> Color:
    """The mean color of the same place in a raster."""
    some = [pixels[row * HIGH + y][column * WIDE + x] for y in range(HIGH) for x in range(WIDE)]
    red, green, blue = (sum(part) / len(some) for part in zip(*some, strict=True))
    return red, green, blue


def raster(sketch: Sketch) -> Pixels:
    """The sketch in SVG, a cell width an inch wide."""
    found = rendered(svg(sketch, colors, 25.4 * sketch.columns), WIDE)
    assert (len(found[0]), len(found)) == (sketch.columns * WIDE, sketch.rows * HIGH)
    return found


@pytest.mark.slow
@pytest.mark.parametrize("picture", ALL)
def test_paper_and_terminal_show_the_same(picture: Picture) -> None:
    """A cell's mean color differs by as much as an edge put on the nearest eighth makes, and few by that."""
    sketch = picture.sketch(*PANE)
    drawing, pixels = drawn(sketch, smooth=True), raster(sketch)
    off = []
    for row, cells in enumerate(drawing.cells):
        for column, cell in enumerate(cells):
            if filled(cell.glyph) is not None:
                pair = zip(shown(cell), seen(pixels, column, row), strict=True)
                off.append(max(abs(one - two) for one, two in pair))
    assert max(off) < 56, "of 255"
    assert sum(off) / len(off) < 3


def test_the_comparison_sees_a_shape_that_is_a_cell_aside() -> None:
    one, two = (Sketch(12, 6) for _ in range(2))
    one.paint(ring(6, 6, 5, 1.5), Ink.FIRST)
    two.paint(ring(7, 6, 5, 1.5), Ink.FIRST)
    pixels = raster(two)
    off = [
        max(abs(a - b) for a, b in zip(shown(cell), seen(pixels, column, row), strict=True))
        for row, cells in enumerate(drawn(one, smooth=True).cells)
        for column, cell in enumerate(cells)
    ]
    assert max(off) > 56


@pytest.mark.parametrize("kind", ["hundred-chart", "month-calendar", "day-strip", "month-strip", "clock"])
def test_labels_are_text_at_the_same_place(kind: str) -> None:
    picture = EXAMPLES[kind][0]
    pane = (28, 9) if kind == "clock" else PANE
    root = ElementTree.fromstring(svg(picture.sketch(*pane), colors, 100))
    texts = [element for element in root if element.tag.endswith("text")]
    drawing = picture.draw(*pane, smooth=True)
    letters = {
        (column, row): cell.glyph
        for row, cells in enumerate(drawing.cells)
        for column, cell in enumerate(cells)
        if filled(cell.glyph) is None
    }
    placed: dict[tuple[int, int], str] = {}
    for element in texts:
        text, x, y = element.text or "", int(element.attrib["x"]), float(element.attrib["y"])
        assert element.attrib["textLength"] == str(len(text))
        placed |= {(x + n, int(y / 2)): letter for n, letter in enumerate(text) if letter != " "}
    assert placed == letters and letters


def test_fitted_into_pixels_it_is_what_paper_gets() -> None:
    sketch = EXAMPLES["counters"][0].sketch(*PANE)
    document = fitted(sketch, colors, PANE[0] * WIDE, PANE[1] * HIGH)
    assert rendered(document, 96) == raster(sketch)


@pytest.mark.parametrize("pixels", [(120, 60), (50, 60)])
def test_a_disc_is_round_in_the_middle_of_whatever_it_is_fitted_into(pixels: tuple[int, int]) -> None:
    """Cells of many fonts are not twice as high as wide."""
    sketch = Sketch(20, 10)
    sketch.paint(disc(10, 10, 10), Ink.FIRST)
    rows = rendered(fitted(sketch, colors, *pixels), 96)
    ground, wide, least = rows[0][0], pixels[0], min(pixels)
    across = [x for x in range(wide) if rows[len(rows) // 2][x] != ground]
    down = [y for y in range(len(rows)) if rows[y][wide // 2] != ground]
    assert (len(across), len(down), len(rows)) == (least, least, pixels[1])
    assert across[0] + across[-1] == wide - 1 and down[0] + down[-1] == pixels[1] - 1


def test_the_size_is_in_millimeters_and_markup_is_escaped() -> None:
    sketch = Sketch(20, 5)
    sketch.label(2, 1, "  <&> ")
    document = svg(sketch, colors, 80)
    assert re.match(r'<svg [^>]*width="80mm" height="40mm" viewBox="0 0 20 10">', document)
    (text,) = [element for element in ElementTree.fromstring(document) if element.tag.endswith("text")]
    assert text.text == "<&>" and text.attrib["x"] == "4"
