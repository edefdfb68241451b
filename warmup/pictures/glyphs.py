"""Numerals and letters of blocks, most of them three wide: large enough to be read from a meter.

Numerals are five blocks tall. Small letters stand on the same line, five tall, with two more above
for those that reach up, capitals (those of days and months) among them, and two below for those that
hang down. The forms are our own.
"""

from warmup.pictures.ink import Ink
from warmup.pictures.shapes import Points, Polygon
from warmup.pictures.sketch import Sketch

_NUMERALS = {
    "0": "### #.# #.# #.# ###",
    "1": ".#. ##. .#. .#. ###",
    "2": "### ..# ### #.. ###",
    "3": "### ..# .## ..# ###",
    "4": "#.# #.# ### ..# ..#",
    "5": "### #.. ### ..# ###",
    "6": "### #.. ### #.# ###",
    "7": "### ..# ..# ..# ..#",
    "8": "### #.# ### #.# ###",
    "9": "### #.# ### ..# ###",
    "?": "### ..# .## ... .#.",
    "+": "... .#. ### .#. ...",
    "-": "... ... ### ... ...",
    "=": "... ### ... ### ...",
    "/": "..# ..# .#. #.. #..",
    ":": ". # . # .",
    "¢": ".#. ### #.. ### .#.",
    "a": "##. ..# ### #.# ###",
    "c": "### #.. #.. #.. ###",
    "e": "### #.# ### #.. ###",
    "m": "####. #.#.# #.#.# #.#.# #.#.#",
    "n": "##. #.# #.# #.# #.#",
    "o": "### #.# #.# #.# ###",
    "r": "#.# ##. #.. #.. #..",
    "s": "### #.. ### ..# ###",
    "u": "#.# #.# #.# #.# ###",
    "v": "#.# #.# #.# #.# .#.",
    "w": "#.#.# #.#.# #.#.# #.#.# .#.#.",
    "x": "#.# #.# .#. #.# #.#",
    "z": "### ..# .#. #.. ###",
}
_REACH_UP = {
    "b": "#.. #.. ### #.# #.# #.# ###",
    "d": "..# ..# ### #.# #.# #.# ###",
    "f": ".## #.. ### #.. #.. #.. #..",
    "h": "#.. #.. ### #.# #.# #.# #.#",
    "i": "# . # # # # #",
    "k": "#.. #.. #.# #.# ##. #.# #.#",
    "l": "# # # # # # #",
    "t": "#.. #.. ### #.. #.. #.. .##",
    "A": "### #.# #.# ### #.# #.# #.#",
    "D": "##. #.# #.# #.# #.# #.# ##.",
    "F": "### #.. #.. ### #.. #.. #..",
    "J": "..# ..# ..# ..# ..# #.# ###",
    "M": "#...# ##.## #.#.# #.#.# #...# #...# #...#",
    "N": "#..# ##.# ##.# #.## #.## #..# #..#",
    "O": "### #.# #.# #.# #.# #.# ###",
    "S": "### #.. #.. ### ..# ..# ###",
    "T": "### .#. .#. .#. .#. .#. .#.",
    "W": "#...# #...# #...# #.#.# #.#.# ##.## #...#",
}
_HANG_DOWN = {
    "g": "### #.# #.# #.# ### ..# ###",
    "j": "..# ..# ..# ..# ..# ..# ###",
    "p": "### #.# #.# #.# ### #.. #..",
    "q": "### #.# #.# #.# ### ..# ..#",
    "y": "#.# #.# #.# #.# ### ..# ###",
}


def _rows(glyph: str) -> tuple[int, tuple[str, ...]]:
    """How many blocks above the line of five a glyph begins, and its rows. KeyError for an unknown glyph."""
    if glyph in _REACH_UP:
        return 2, tuple(_REACH_UP[glyph].split())
    return 0, tuple((_HANG_DOWN.get(glyph) or _NUMERALS[glyph]).split())


def extent(text: str) -> tuple[int, int, int]:
    """How many blocks wide a line of text is, and how many it reaches above and below the line of five."""
    wide = sum(len(_rows(glyph)[1][0]) + 1 for glyph in text if glyph != " ") + 2 * text.count(" ") - 1
    above = max((_rows(glyph)[0] for glyph in text if glyph != " "), default=0)
    below = 2 if any(glyph in _HANG_DOWN for glyph in text) else 0
    return max(0, wide), above, below


def write(sketch: Sketch, left: float, top: float, text: str, block: float = 1, ink: Ink = Ink.INK) -> None:
    """Write a line of text, its line of five from ``top`` on; a block is ``block`` cell widths each way.

    With ``left`` a multiple of a half, ``top`` and ``block`` whole, its edges are the sharpest.
    """
    runs: list[Points] = []
    for glyph in text:
        if glyph == " ":
            left += 2 * block
            continue
        above, rows = _rows(glyph)
        for down, row in enumerate(rows, start=-above):
            y0, y1 = top + down * block, top + (down + 1) * block
            for at, end in _runs(row):
                x0, x1 = left + at * block, left + end * block
                runs.append(((x0, y0), (x1, y0), (x1, y1), (x0, y1)))
        left += (len(rows[0]) + 1) * block
    if runs:
        # As one shape: no seam shows where blocks meet.
        sketch.paint(Polygon(tuple(runs)), ink)


def _runs(marks: str) -> list[tuple[int, int]]:
    """Where blocks side by side begin and end in a row of a glyph."""
    found: list[tuple[int, int]] = []
    for at, mark in enumerate(marks):
        if mark == "#":
            begin = found.pop()[0] if found and found[-1][1] == at else at
            found.append((begin, at + 1))
    return found
