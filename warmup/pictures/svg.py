"""Paints a sketch as SVG, in millimeters: for paper, and for whatever shows curves as they are."""

from collections.abc import Callable, Iterator
from html import escape

from warmup.pictures.ink import Ink, Mix, Shade
from warmup.pictures.shapes import CELL_HEIGHT, Joined, Points, Polygon, Rect, Round, Shape
from warmup.pictures.sketch import Label, Sketch

Colors = Callable[[Mix], str]
"""The color of a mix of inks, as SVG writes it."""

_FONT = "DejaVu Sans Mono, Liberation Mono, Menlo, Consolas, monospace"
_LETTER = 1.6
"""How large letters are in cell widths; in a fixed-width font a letter is then a cell wide."""


def svg(sketch: Sketch, colors: Colors, millimeters: float) -> str:
    """The sketch as a document of its own, so many millimeters wide; a cell width is its unit."""
    high = millimeters * sketch.height / sketch.width
    size = f'width="{figure(millimeters)}mm" height="{figure(high)}mm"'
    view = f'viewBox="0 0 {figure(sketch.width)} {figure(sketch.height)}"'
    body = "".join(_elements(sketch, colors))
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size} {view}>{body}</svg>'


def fitted(sketch: Sketch, colors: Colors, wide: int, high: int) -> str:
    """The sketch as a document of so many pixels: as large as it fits, in the middle, on its own ground."""
    scale = min(wide / sketch.width, high / sketch.height)
    left, top = (wide - scale * sketch.width) / 2, (high - scale * sketch.height) / 2
    # Whole pixels where the cells are: edges that lie on them stay sharp.
    moved = f"translate({round(left)} {round(top)}) scale({scale:.6g})"
    ground = "".join(_filled(Rect((0.0, 0.0, wide, high)), colors(Ink.GROUND)))
    body = "".join(_elements(sketch, colors))
    size = f'width="{wide}" height="{high}"'
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size}>{ground}<g transform="{moved}">{body}</g></svg>'


def _elements(sketch: Sketch, colors: Colors) -> Iterator[str]:
    """The sketch's elements in its own units, the first one its ground."""
    yield from _filled(Rect((0.0, 0.0, sketch.width, sketch.height)), colors(Ink.GROUND))
    for number, (shape, ink) in enumerate(sketch.shapes):
        if isinstance(ink, Shade):
            yield f"<defs>{_gradient(ink, f'shade{number}', colors)}</defs>"
            yield from _filled(shape, f"url(#shade{number})")
        else:
            yield from _filled(shape, colors(ink))
    for label in sketch.labels:
        yield _text(label, colors(label.ink))


def _filled(shape: Shape, fill: str) -> Iterator[str]:
    """A shape's elements, in its own units."""
    match shape:
        case Rect((left, top, right, bottom)):
            place = f'x="{figure(left)}" y="{figure(top)}"'
            size = f'width="{figure(max(0.0, right - left))}" height="{figure(max(0.0, bottom - top))}"'
            yield f'<rect {place} {size} fill="{fill}"/>'
        case Round(x, y, across, down, (0.0, 0.0)):
            place = f'cx="{figure(x)}" cy="{figure(y)}" rx="{figure(across)}" ry="{figure(down)}"'
            yield f'<ellipse {place} fill="{fill}"/>'
        case Round(x, y, across, down, hole):
            around = _oval(x, y, across, down) + _oval(x, y, *hole)
            yield f'<path d="{around}" fill="{fill}" fill-rule="evenodd"/>'
        case Polygon(contours):
            around = "".join(f"{path(contour)}Z" for contour in contours)
            yield f'<path d="{around}" fill="{fill}" fill-rule="evenodd"/>'
        case Joined(shapes):
            for part in shapes:
                yield from _filled(part, fill)


def _oval(x: float, y: float, across: float, down: float) -> str:
    """A closed path round an ellipse, in two halves."""
    radii = f"{figure(across)} {figure(down)} 0 1 0"
    left, right, middle = figure(x - across), figure(x + across), figure(y)
    return f"M{left} {middle}A{radii} {right} {middle}A{radii} {left} {middle}Z"


def path(points: Points) -> str:
    """Straight lines from point to point, left open."""
    return "M" + "L".join(f"{figure(x)} {figure(y)}" for x, y in points)


def _gradient(shade: Shade, name: str, colors: Colors) -> str:
    (x0, y0), (x1, y1) = shade.start, shade.end
    stops = "".join(f'<stop offset="{figure(at)}" stop-color="{colors(mix)}"/>' for at, mix in shade.stops)
    units = f'id="{name}" gradientUnits="userSpaceOnUse"'
    if shade.circle:
        radius = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
        place = f'cx="{figure(x0)}" cy="{figure(y0)}" r="{figure(radius)}"'
        return f"<radialGradient {units} {place}>{stops}</radialGradient>"
    place = f'x1="{figure(x0)}" y1="{figure(y0)}" x2="{figure(x1)}" y2="{figure(y1)}"'
    return f"<linearGradient {units} {place}>{stops}</linearGradient>"


def _text(label: Label, fill: str) -> str:
    """The label with its blanks cut off, each letter as wide as a cell."""
    text = label.text.strip()
    left = label.column + label.text.index(text[0])
    place = f'x="{left}" y="{figure((label.row + 0.72) * CELL_HEIGHT)}" textLength="{len(text)}"'
    font = f'font-family="{_FONT}" font-size="{_LETTER}" font-weight="bold"'
    return f'<text {place} lengthAdjust="spacingAndGlyphs" {font} fill="{fill}">{escape(text)}</text>'


def figure(value: float) -> str:
    """A number as short as it can be said in thousandths."""
    return f"{value:.3f}".rstrip("0").rstrip(".") or "0"
