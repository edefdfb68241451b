"""Squares with a word in the middle: what the wall calendar and the two strips are laid out of."""

from warmup.pictures.glyphs import extent, write
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import CELL_HEIGHT, box
from warmup.pictures.sketch import Sketch


def lift(high: int) -> float:
    """How far down squares ``high`` rows high begin, so that a row of cells runs through their middle.

    An odd number of rows has a middle row; an even one has it only when moved by half a cell.
    """
    return 0.0 if high % 2 else CELL_HEIGHT / 2


def rows_for(lines: int, high: int) -> int:
    """How many rows ``lines`` lines of squares take, each ``high`` rows high."""
    return lines * high + (0 if high % 2 else 1)


def tallest(lines: int, rows: int, most: int) -> int:
    """The greatest height in rows, up to ``most``, at which ``lines`` lines of squares fit (at least 1)."""
    return max(high for high in range(1, max(1, most) + 1) if high == 1 or rows_for(lines, high) <= rows)


def block_for(blocks: int, wide: int, high: float, tall: int = 5) -> int:
    """How large blocks can be on a square so that so many lie side by side and ``tall`` high; 0: none.

    A block of ground is left to the left and the right: else numerals side by side read as one.
    """
    return int(min(wide / (blocks + 2), high * CELL_HEIGHT / (tall + 0.5)))


def square(
    sketch: Sketch,
    column: int,
    top: float,
    wide: int,
    high: float,
    paper: Ink,
    text: str = "",
    block: int = 0,
) -> None:
    """A square ``wide`` by ``high`` cells, ``text`` in its middle; ``top`` is in cell widths.

    The text is printed in cells, or in blocks of so many cell widths.
    """
    if paper is not Ink.GROUND:
        sketch.paint(box(column, top, wide, high * CELL_HEIGHT), paper)
    ink = Ink.GROUND if paper is Ink.INK else Ink.INK
    if block and text:
        broad, above, below = extent(text)
        left = column + (wide - broad * block) / 2
        down = (high * CELL_HEIGHT - (5 + above + below) * block) / 2
        write(sketch, left, top + round(down) + above * block, text, block, ink)
        return
    sketch.label(column, int((top + high - 1) // CELL_HEIGHT), text[:wide].center(wide) if text else "", ink)


def paper(place: int, *, hidden: bool, pointed: bool) -> Ink:
    """The ground of a square: a hole, a finger's, or one of the checkerboard's two."""
    if hidden:
        return Ink.HOLE
    if pointed:
        return Ink.INK
    return Ink.TILE if place % 2 else Ink.TILE_ALT
