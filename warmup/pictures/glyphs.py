"""Numerals and letters of blocks, three wide: large enough to be read from a meter.

Numerals are five blocks tall. Small letters stand on the same line, five tall, with two more above
for those that reach up and two below for those that hang down. The forms are our own.
"""

from warmup.pictures.canvas import Canvas, Ink, box

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


def write(canvas: Canvas, left: float, top: float, text: str, block: int = 1, ink: Ink = Ink.INK) -> None:
    """Write a line of text, its line of five from ``top`` on; a block is ``block`` cell widths each way.

    ``left`` is to be a multiple of a half and ``top`` whole, so that blocks fill whole pixels.
    """
    for glyph in text:
        if glyph == " ":
            left += 2 * block
            continue
        above, rows = _rows(glyph)
        for down, row in enumerate(rows, start=-above):
            for across, mark in enumerate(row):
                if mark == "#":
                    canvas.paint(box(left + across * block, top + down * block, block, block), ink)
        left += (len(rows[0]) + 1) * block
