"""Sheets as one page of HTML that needs nothing else: no script, no network; a side of paper each.

Every length is in millimeters, and so is the unit of each drawing: printed at 100 % all is true to size.
"""

from collections.abc import Iterable, Iterator
from html import escape
from typing import NamedTuple

from warmup.pictures.svg import figure, path
from warmup.sheets.base import SMALL_PIECES, Page, Sheet
from warmup.sheets.lines import Dot, Drawn, Line, Ring, Shade, Stroke, Words, moved, segment
from warmup.sheets.paper import EDGE, FOOT, HEAD, ROOM, Paper
from warmup.sheets.strips import Tick, centimeters, inches

_CLASSES = {Line.CUT: "c", Line.FOLD: "f", Line.DRAWN: "d", Line.FAINT: "t"}
"""The lines by what the style sheet calls them: a page has thousands."""
_SHADES = {Shade.BLACK: "#000", Shade.GRAY: "#888"}
_FONT = "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif"
_STYLE = """
@page { size: %s; margin: %smm; }
* { margin: 0; padding: 0; }
body { background: #fff; color: #000; }
svg { display: block; break-after: page; break-inside: avoid; }
svg:last-of-type { break-after: auto; }
.c, .f, .d, .t { fill: none; stroke: #000; }
.c { stroke-width: 0.3; stroke-dasharray: 3 1.6; }
.f { stroke-width: 0.4; stroke-dasharray: 0.01 1.6; stroke-linecap: round; }
.d { stroke-width: 0.5; }
.t { stroke: #888; stroke-width: 0.2; }
.w { font-family: %s; }
.m { text-anchor: middle; }
@media screen { body { background: #ddd; } svg { background: #fff; margin: 6mm auto; } }
""".strip()
_CUT, _FOLD = "Cut along dashes. Scissors are for you, or with you.", "Fold along dots."
_TRUE = "Print at 100 %, not “fit to page”. These lines are 10 centimeters and 4 inches long:"


class Side(NamedTuple):
    """A side of paper: a page of a sheet."""

    sheet: Sheet
    page: Page


def document(sides: Iterable[Side], paper: Paper, title: str) -> str:
    """The whole page."""
    return "\n".join(_lines(tuple(sides), paper, title)) + "\n"


def _lines(sides: tuple[Side, ...], paper: Paper, title: str) -> Iterator[str]:
    yield "<!DOCTYPE html>"
    yield '<html lang="en-US">'
    yield "<head>"
    yield '<meta charset="utf-8">'
    # Nothing may be fetched, whatever a later change puts into the page.
    policy = "default-src 'none'; style-src 'unsafe-inline'"
    yield f'<meta http-equiv="Content-Security-Policy" content="{policy}">'
    yield f"<title>{escape(title)}</title>"
    yield f"<style>\n{_STYLE % (paper.css, figure(EDGE), _FONT)}\n</style>"
    yield "</head>"
    yield "<body>"
    for side in sides:
        yield from _side(side, paper)
    yield "</body>"
    yield "</html>"


def _side(side: Side, paper: Paper) -> Iterator[str]:
    """One side of paper: the title, what is drawn in the middle of the room, the rulers at the foot."""
    wide, high = paper.value.wide - 2 * EDGE, paper.value.high - 2 * EDGE
    # A hair less than there is, so that no rounding makes a browser begin another page.
    size = f'width="{figure(wide)}mm" height="{figure(high - 0.2)}mm"'
    title = f"{side.sheet.title}: {side.page.title}" if side.page.title else side.sheet.title
    view = f'viewBox="0 0 {figure(wide)} {figure(high - 0.2)}"'
    yield f'<svg xmlns="http://www.w3.org/2000/svg" {size} {view} role="img" aria-label="{escape(title)}">'
    parts = (
        Words((wide / 2, 4.0), title, 4.5),
        *moved(side.page.drawn, (wide - ROOM.wide) / 2, HEAD),
        *_foot(side, wide, high),
    )
    yield from map(_part, parts)
    yield "</svg>"


def _foot(side: Side, wide: float, high: float) -> Iterator[Drawn]:
    """How it is cut and printed, the two rulers, and where it matters what small pieces do."""
    top = high - FOOT
    lines = {part.line for part in side.page.drawn if isinstance(part, Stroke | Ring)}
    told = ((SMALL_PIECES, side.sheet.small), (_CUT, Line.CUT in lines), (_FOLD, Line.FOLD in lines))
    if said := " ".join(sentence for sentence, holds in told if holds):
        yield Words((wide / 2, top + 2.5), said, 2.8)
    yield Words((wide / 2, top + 6.0), _TRUE, 2.8)
    left = (wide - 100.0) / 2
    yield from _ruler(left, top + 9.0, centimeters(0, 10), 100.0)
    yield from _ruler(left, top + 13.0, inches(0, 4), 101.6)


def _ruler(left: float, top: float, ticks: Iterable[Tick], long: float) -> Iterator[Drawn]:
    yield segment(left, top, left + long, top)
    for tick in ticks:
        yield segment(left + tick.at, top, left + tick.at, top + 4 * tick.share)


def _part(part: Drawn) -> str:
    match part:
        case Stroke(points, line):
            return f'<path d="{path(points)}" class="{_CLASSES[line]}"/>'
        case Ring((x, y), radius, line):
            return f'<circle {_round(x, y, radius)} class="{_CLASSES[line]}"/>'
        case Dot((x, y), radius, shade):
            return f'<circle {_round(x, y, radius)} fill="{_SHADES[shade]}"/>'
        case Words((x, y), text, size, anchor, turned):
            place = f'x="{figure(x)}" y="{figure(y + 0.35 * size)}" class="{"w m" if anchor else "w"}"'
            place += f' transform="rotate(180 {figure(x)} {figure(y)})"' if turned else ""
            return f'<text {place} font-size="{figure(size)}">{escape(text)}</text>'


def _round(x: float, y: float, radius: float) -> str:
    return f'cx="{figure(x)}" cy="{figure(y)}" r="{figure(radius)}"'
