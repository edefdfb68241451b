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


class Look(Enum):
    """The three looks there are, by the names they have in family.toml."""

    DARK = "dark"
    LIGHT = "light"
    CONTRAST = "contrast"

    @property
    def next(self) -> "Look":
        """The one after it, in turn."""
        looks = list(Look)
        return looks[(looks.index(self) + 1) % len(looks)]

    @property
    def theme(self) -> str:
        """The name of its theme in Textual."""
        return f"{_THEMES}{self.value}"


_THEMES = "warmup-"


def look_of(theme: str) -> Look:
    """The look of a theme of Textual; dark for one that is not ours."""
    names = {look.theme: look for look in Look}
    return names.get(theme, Look.DARK)


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
        Tone.SAY: "bold #ffffff on #333a42",
        Tone.NAME: "bold reverse #e6e3da",
        Tone.ANSWER: "bold #ffd479",
        Tone.LABEL: "#a1aebf",
        Tone.QUIET: "#aab4c0",
        Tone.CUE: "#9fd8ff",
        Tone.KEY: "bold #c9d1db",
        Tone.NOTICE: "bold #14181f on #9fd8ff",
        Tone.HERE: "bold #9fd8ff",
        Tone.STRONG: "bold #e6e3da",
        Tone.RULE: "#75869a",
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
        Tone.SAY: "bold #0d111a on #fffdf7",
        Tone.NAME: "bold reverse #2a2f3a",
        Tone.ANSWER: "bold #7a3600",
        Tone.LABEL: "#4f4c43",
        Tone.QUIET: "#4a4d55",
        Tone.CUE: "#0f4a86",
        Tone.KEY: "bold #33373f",
        Tone.NOTICE: "bold #faf6ec on #0f4a86",
        Tone.HERE: "bold #0f4a86",
        Tone.STRONG: "bold #2a2f3a",
        Tone.RULE: "#7d7663",
    },
)


CONTRAST = Palette(
    inks={
        Ink.GROUND: "#000000",
        Ink.INK: "#ffffff",
        Ink.FIRST: "#8fd3ff",
        Ink.SECOND: "#ffb454",
        Ink.SOFT: "#c4ccd6",
        Ink.TILE: "#000000",
        Ink.TILE_ALT: "#303030",
        Ink.HOLE: "#fff0b8",
        Ink.COPPER: "#ffab73",
        Ink.SILVER: "#dbe2ea",
        Ink.LIGHT: "#e6f6ff",
        Ink.SHADOW: "#4ea3d8",
    },
    panel="#000000",
    tones={
        Tone.PLAIN: "#ffffff",
        Tone.SAY: "bold #000000 on #ffffff",
        Tone.NAME: "bold reverse #8fd3ff",
        Tone.ANSWER: "bold underline #ffd479",
        Tone.LABEL: "italic #ffffff",
        Tone.QUIET: "#dde3ea",
        Tone.CUE: "underline #ffffff",
        Tone.KEY: "bold reverse #ffffff",
        Tone.NOTICE: "bold #000000 on #9fd8ff",
        Tone.HERE: "bold reverse #ffffff",
        Tone.STRONG: "bold #ffffff",
        Tone.RULE: "#ffffff",
    },
)
"""The most contrast there is; what the others tell by shades, it tells by lines, frames and turned colors."""
_PALETTES = {Look.DARK: DARK, Look.LIGHT: LIGHT, Look.CONTRAST: CONTRAST}


def palette(look: Look) -> Palette:
    """The palette of a look."""
    return _PALETTES[look]


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
def color_of(mix: Mix, look: Look) -> str:
    """The color of a mix of inks, as six hexadecimal digits after a #.

    Mixed in the values of sRGB themselves, as terminals blend letters into their ground and browsers
    the edges of shapes.
    """
    inks = palette(look).inks
    if isinstance(mix, Ink):
        return inks[mix]
    sums = [0, 0, 0]
    for ink, count in mix:
        color = inks[ink]
        for at in range(3):
            sums[at] += count * int(color[1 + 2 * at : 3 + 2 * at], 16)
    return "#" + "".join(f"{round(value / PARTS):02x}" for value in sums)


@lru_cache(maxsize=4096)
def _ink_style(ink: Mix, paper: Mix, bold: bool, look: Look, depth: Depth) -> Style:
    if depth is Depth.SOME:
        from warmup.tui import few_colors

        colors = few_colors.color_of(ink, look), few_colors.color_of(paper, look)
    else:
        colors = color_of(ink, look), color_of(paper, look)
    return Style(color=colors[0], bgcolor=colors[1], bold=bold)


def ground_style(look: Look, depth: Depth) -> Style:
    """The stage where nothing is painted on it."""
    return _ink_style(Ink.GROUND, Ink.GROUND, False, look, depth)


@cache
def _tone_style(tone: Tone, look: Look) -> Style:
    colors = palette(look)
    return Style(bgcolor=colors.panel) + Style.parse(colors.tones[tone])


def stage_strips(drawing: Drawing, look: Look, depth: Depth = Depth.ALL) -> list[Strip]:
    """A drawing as strips for the screen, cells of one look joined."""
    strips = []
    styles: dict[int, Style] = {}
    for row in drawing.cells:
        segments: list[Segment] = []
        run, worn = "", None
        for cell in row:
            # A drawing's cells are few and used again: one look-up by identity for each place.
            style = styles.get(id(cell))
            if style is None:
                style = styles[id(cell)] = _ink_style(cell.ink, cell.paper, cell.bold, look, depth)
            if style is not worn and run:
                segments.append(Segment(run, worn))
                run = ""
            run, worn = run + cell.glyph, style
        segments.append(Segment(run, worn))
        strips.append(Strip(segments, drawing.columns))
    return strips


def script_strip(line: Line, width: int, margin: int, look: Look) -> Strip:
    """One line of the script as a strip of ``width`` cells, ``margin`` blank cells on the left."""
    plain = _tone_style(Tone.PLAIN, look)
    segments = [Segment(" " * margin, plain)] if margin else []
    for span in line:
        style = _tone_style(span.tone, look)
        if span.action:
            style += Style(meta={"@click": f"app.do({span.action!r})", "action": span.action})
        elif span.bead is not None:
            style += Style(meta={"@click": f"screen.bead({span.bead})", "bead": span.bead})
        segments.append(Segment(span.text, style))
    return Strip(segments).adjust_cell_length(width, plain)
