"""Inks in terminals of 256 colors, loaded only there.

Textual hands every color to Rich, which finds one of the 256 by hue and lightness taken apart and so
makes lavender of gray. Here each ink has its color in a table, the nearest of the 256 by distance in
OKLab (Björn Ottosson 2020, "A perceptual color space for image processing"), and a mix of inks gets its
own in the same way. What is handed on is a color that Rich turns into just that one.
"""

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from warmup.pictures.ink import PARTS, Ink, Mix
from warmup.tui.paint import Look

Color = tuple[int, int, int]

_DARK: Mapping[Ink, int] = MappingProxyType(
    {
        Ink.GROUND: 234,
        Ink.INK: 255,
        Ink.FIRST: 81,
        Ink.SECOND: 172,
        Ink.SOFT: 242,
        Ink.TILE: 236,
        Ink.TILE_ALT: 235,
        Ink.HOLE: 187,
        Ink.COPPER: 173,
        Ink.SILVER: 250,
        Ink.LIGHT: 254,
        Ink.SHADOW: 25,
    }
)
_LIGHT: Mapping[Ink, int] = MappingProxyType(
    {
        Ink.GROUND: 255,
        Ink.INK: 235,
        Ink.FIRST: 25,
        Ink.SECOND: 130,
        Ink.SOFT: 101,
        Ink.TILE: 254,
        Ink.TILE_ALT: 187,
        Ink.HOLE: 67,
        Ink.COPPER: 130,
        Ink.SILVER: 244,
        Ink.LIGHT: 110,
        Ink.SHADOW: 236,
    }
)
_CONTRAST: Mapping[Ink, int] = MappingProxyType(
    {
        Ink.GROUND: 16,
        Ink.INK: 231,
        Ink.FIRST: 117,
        Ink.SECOND: 215,
        Ink.SOFT: 251,
        Ink.TILE: 16,
        Ink.TILE_ALT: 236,
        Ink.HOLE: 229,
        Ink.COPPER: 216,
        Ink.SILVER: 254,
        Ink.LIGHT: 255,
        Ink.SHADOW: 74,
    }
)
NUMBERS = MappingProxyType({Look.DARK: _DARK, Look.LIGHT: _LIGHT, Look.CONTRAST: _CONTRAST})
"""The number of each ink's color among the 256, by look."""

_CUBE = (0, 95, 135, 175, 215, 255)
_FIRST_GRAY = 232
CHOICE = tuple(n for n in range(16, 256) if n >= _FIRST_GRAY or n not in (59, 102, 145, 188))
"""All that can be chosen: the first 16 are the user's own, and Rich takes the cube's grays for others."""


def color_at(number: int) -> Color:
    """One of the 256 colors from 16 on: a cube of six levels each way, then 24 grays (xterm's palette)."""
    if number >= _FIRST_GRAY:
        gray = 8 + 10 * (number - _FIRST_GRAY)
        return gray, gray, gray
    red, rest = divmod(number - 16, 36)
    return _CUBE[red], _CUBE[rest // 6], _CUBE[rest % 6]


def sent_for(number: int) -> Color:
    """What Rich turns into the color of this number: itself, but for grays, which it counts in 25 steps."""
    if number >= _FIRST_GRAY:
        gray = round(255 * (number - _FIRST_GRAY + 1) / 25)
        return gray, gray, gray
    return color_at(number)


def oklab(color: Color) -> tuple[float, float, float]:
    """Lightness (0 to 1), green to red and blue to yellow of a color of sRGB."""
    red, green, blue = (
        value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4
        for value in (part / 255 for part in color)
    )
    long = (0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue) ** (1 / 3)
    medium = (0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue) ** (1 / 3)
    short = (0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue) ** (1 / 3)
    return (
        0.2104542553 * long + 0.7936177850 * medium - 0.0040720468 * short,
        1.9779984951 * long - 2.4285922050 * medium + 0.4505937099 * short,
        0.0259040371 * long + 0.7827717662 * medium - 0.8086757660 * short,
    )


@cache
def nearest(color: Color) -> int:
    """The number of the color nearest to this one."""
    light, red, yellow = oklab(color)
    return min(
        _choice(), key=lambda lab: (light - lab[0]) ** 2 + (red - lab[1]) ** 2 + (yellow - lab[2]) ** 2
    )[3]


@cache
def _choice() -> tuple[tuple[float, float, float, int], ...]:
    return tuple((*oklab(color_at(number)), number) for number in CHOICE)


def number_of(mix: Mix, look: Look) -> int:
    """The number of the color of a mix of inks."""
    table = NUMBERS[look]
    if isinstance(mix, Ink):
        return table[mix]
    colors = [(color_at(table[ink]), count) for ink, count in mix]
    red, green, blue = (round(sum(color[at] * count for color, count in colors) / PARTS) for at in range(3))
    return nearest((red, green, blue))


def color_of(mix: Mix, look: Look) -> str:
    """What is handed on for a mix of inks, as six hexadecimal digits after a #."""
    return hexadecimal(sent_for(number_of(mix, look)))


def hexadecimal(color: Color) -> str:
    """The color as six hexadecimal digits after a #."""
    return "#" + "".join(f"{part:02x}" for part in color)
