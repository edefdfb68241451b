"""What each ink and tone looks like, on a dark and on a light ground.

Chosen by contrast (at least 7 to 1 for words, 3 to 1 for shapes; Web Content Accessibility Guidelines
2.1, 1.4.6 and 1.4.11), never red and green, and told apart in grays as well.
"""

from collections.abc import Mapping
from functools import cache
from typing import NamedTuple

from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip

from warmup.pictures import Drawing, Ink
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


@cache
def _ink_style(ink: Ink, paper: Ink, bold: bool, dark: bool) -> Style:
    inks = palette(dark).inks
    return Style(color=inks[ink], bgcolor=inks[paper], bold=bold)


@cache
def _tone_style(tone: Tone, dark: bool) -> Style:
    colors = palette(dark)
    return Style(bgcolor=colors.panel) + Style.parse(colors.tones[tone])


def stage_strips(drawing: Drawing, dark: bool) -> list[Strip]:
    """A drawing as strips for the screen, cells of one look joined."""
    strips = []
    for row in drawing.cells:
        segments: list[Segment] = []
        run, look = "", None
        for cell in row:
            style = _ink_style(cell.ink, cell.paper, cell.bold, dark)
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
