"""What each ink and tone looks like, on a dark and on a light ground.

Chosen by contrast (at least 7 to 1 for words, 3 to 1 for shapes; Web Content Accessibility Guidelines
2.1, 1.4.6 and 1.4.11), never red and green, and told apart in grays as well.
"""

from collections.abc import Mapping
from enum import Enum
from functools import cache, lru_cache
from typing import NamedTuple

from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip

from warmup.pictures import Drawing, Ink
from warmup.pictures.ink import PARTS, Mix
from warmup.tui.script import Line, Tone


class Palette(NamedTuple):
    """The colors of one theme."""

    inks: Mapping[Ink, str]
    panel: str
    tones: Mapping[Tone, str]


DARK = Palette(
    inks={
        Ink.GROUND: "#14181f",
        Ink.INK: "#f2efe6",
        Ink.FIRST: "#7cc4ff",
        Ink.SECOND: "#e08a2e",
        Ink.SOFT: "#5c6b7d",
        Ink.TILE: "#2a333f",
        Ink.TILE_ALT: "#1e252e",
        Ink.HOLE: "#d8cfae",
        Ink.COPPER: "#c98752",
        Ink.SILVER: "#b9c2cc",
        Ink.LIGHT: "#d6ecff",
        Ink.SHADOW: "#2f6fb0",
    },
    panel="#1b212b",
    tones={
        Tone.PLAIN: "#e6e3da",
        Tone.SAY: "bold #ffffff",
        Tone.ANSWER: "bold #ffd479",
        Tone.LABEL: "#a1aebf",
        Tone.QUIET: "#aab4c0",
        Tone.CUE: "#9fd8ff",
        Tone.KEY: "bold #ffd479",
        Tone.NOTICE: "bold #14181f on #ffd479",
        Tone.HERE: "bold #9fd8ff",
    },
)

LIGHT = Palette(
    inks={
        Ink.GROUND: "#faf6ec",
        Ink.INK: "#1c2230",
        Ink.FIRST: "#1f5fa8",
        Ink.SECOND: "#a24b00",
        Ink.SOFT: "#8f8873",
        Ink.TILE: "#ece5d3",
        Ink.TILE_ALT: "#ddd4bd",
        Ink.HOLE: "#63739a",
        Ink.COPPER: "#a8622c",
        Ink.SILVER: "#75808a",
        Ink.LIGHT: "#8fb9e6",
        Ink.SHADOW: "#0c2c55",
    },
    panel="#f1ebdc",
    tones={
        Tone.PLAIN: "#2a2f3a",
        Tone.SAY: "bold #0d111a",
        Tone.ANSWER: "bold #7a3600",
        Tone.LABEL: "#4f4c43",
        Tone.QUIET: "#4a4d55",
        Tone.CUE: "#0f4a86",
        Tone.KEY: "bold #7a3600",
        Tone.NOTICE: "bold #faf6ec on #7a3600",
        Tone.HERE: "bold #0f4a86",
    },
)


def palette(dark: bool) -> Palette:
    """The palette of the theme."""
    return DARK if dark else LIGHT


class Depth(Enum):
    """How many colors a terminal shows."""

    FEW = 16
    """Or none at all: pictures come in plain inks, which are far apart in grays as well."""
    SOME = 256
    ALL = 16_777_216


def depth_of(no_color: bool, system: str | None) -> Depth:
    """The depth where no color is wanted, or of one of Rich's color systems."""
    match system:
        case _ if no_color:
            return Depth.FEW
        case "truecolor":
            return Depth.ALL
        case "256":
            return Depth.SOME
        case _:
            return Depth.FEW


@cache
def color_of(mix: Mix, dark: bool) -> str:
    """The color of a mix of inks, as six hexadecimal digits after a #.

    Mixed in the values of sRGB themselves, as terminals blend letters into their ground and browsers
    the edges of shapes.
    """
    inks = palette(dark).inks
    if isinstance(mix, Ink):
        return inks[mix]
    sums = [0, 0, 0]
    for ink, count in mix:
        color = inks[ink]
        for at in range(3):
            sums[at] += count * int(color[1 + 2 * at : 3 + 2 * at], 16)
    return "#" + "".join(f"{round(value / PARTS):02x}" for value in sums)


@lru_cache(maxsize=4096)
def _ink_style(ink: Mix, paper: Mix, bold: bool, dark: bool, depth: Depth) -> Style:
    if depth is Depth.SOME:
        from warmup.tui import few_colors

        colors = few_colors.color_of(ink, dark=dark), few_colors.color_of(paper, dark=dark)
    else:
        colors = color_of(ink, dark), color_of(paper, dark)
    return Style(color=colors[0], bgcolor=colors[1], bold=bold)


def ground_style(dark: bool, depth: Depth) -> Style:
    """The stage where nothing is painted on it."""
    return _ink_style(Ink.GROUND, Ink.GROUND, False, dark, depth)


@cache
def _tone_style(tone: Tone, dark: bool) -> Style:
    colors = palette(dark)
    return Style(bgcolor=colors.panel) + Style.parse(colors.tones[tone])


def stage_strips(drawing: Drawing, dark: bool, depth: Depth = Depth.ALL) -> list[Strip]:
    """A drawing as strips for the screen, cells of one look joined."""
    strips = []
    looks: dict[int, Style] = {}
    for row in drawing.cells:
        segments: list[Segment] = []
        run, look = "", None
        for cell in row:
            # A drawing's cells are few and used again: one look-up by identity for each place.
            style = looks.get(id(cell))
            if style is None:
                style = looks[id(cell)] = _ink_style(cell.ink, cell.paper, cell.bold, dark, depth)
            if style is not look and run:
                segments.append(Segment(run, look))
                run = ""
            run, look = run + cell.glyph, style
        segments.append(Segment(run, look))
        strips.append(Strip(segments, drawing.columns))
    return strips


def script_strip(line: Line, width: int, margin: int, dark: bool) -> Strip:
    """One line of the script as a strip of ``width`` cells, ``margin`` blank cells on the left."""
    plain = _tone_style(Tone.PLAIN, dark)
    segments = [Segment(" " * margin, plain)] if margin else []
    for span in line:
        style = _tone_style(span.tone, dark)
        if span.action:
            style += Style(meta={"@click": f"app.do({span.action!r})"})
        segments.append(Segment(span.text, style))
    return Strip(segments).adjust_cell_length(width, plain)
