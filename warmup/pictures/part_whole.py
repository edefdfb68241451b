"""Part and whole: a whole, and the two parts it is made of."""

from dataclasses import dataclass
from math import ceil, floor, hypot, sqrt

from warmup.pictures._told import in_a_row
from warmup.pictures.base import Picture
from warmup.pictures.glyphs import extent, write
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import CELL_HEIGHT, disc, ring, stroke
from warmup.pictures.sketch import Sketch

_HIGH = 5
_RIM = 0.5
_GAP = 1.2
"""What is left bare round all of it, and the least between two circles, in cell widths."""


@dataclass(frozen=True, eq=False, repr=False)
class PartWhole(Picture):
    """Three circles: the whole above, joined by lines to its two parts below.

    Each holds the numeral it is given; "?" leaves it empty, and the circle shows as a hole.
    """

    whole: str
    left: str
    right: str
    kind: str = "part-whole"

    def _wide(self) -> int:
        """The widest numeral, in blocks."""
        return max(extent(text)[0] for text in (self.whole, self.left, self.right))

    def _block(self, radius: float) -> float:
        """The side of a numeral's blocks in a circle of this radius, in half cells."""
        room = 2 * (radius - _line(radius) - 1) / hypot(self._wide(), _HIGH)
        return max(1.0, floor(2 * room) / 2)

    def _needs(self) -> float:
        """The smallest radius whose circle has room for the widest numeral in blocks of one cell."""
        return hypot(self._wide(), _HIGH) / 2 + 1.8

    def least(self) -> tuple[int, int]:
        """Circles with room for their numerals, the parts as far below the whole as to its sides."""
        radius = self._needs()
        apart = (2 * radius + _GAP) / sqrt(2)
        return ceil(2 * (radius + apart + _RIM)), ceil((2 * radius + apart + 2 * _RIM) / CELL_HEIGHT)

    def fits(self, columns: int, rows: int) -> bool:
        """In a low pane the parts stand further to the sides, in a narrow one further down."""
        return _reach(self._needs(), Sketch(columns, rows)) is not None

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Circles as large as the pane allows, none nearer to another than a short line."""
        sketch = Sketch(columns, rows)
        low, high = 0.0, sketch.height / 2
        for _ in range(12):
            radius = (low + high) / 2
            low, high = (radius, high) if _reach(radius, sketch) else (low, radius)
        radius = low
        apart, drop = _reach(radius, sketch) or (2 * radius, radius)
        middle, top = sketch.width / 2, (sketch.height - drop) / 2
        whole, *parts = (middle, top), (middle - apart, top + drop), (middle + apart, top + drop)
        for x, y in parts:
            sketch.paint(stroke(*whole, x, y, _line(radius)), Ink.INK)
        block = self._block(radius)
        for (x, y), text in zip((whole, *parts), (self.whole, self.left, self.right), strict=True):
            _circle(sketch, x, y, radius, text, block)
        return sketch

    def words(self) -> str:
        """How the circles hang together and how many of them are empty; no numeral."""
        empty = (self.whole, self.left, self.right).count("?")
        blank = {0: "", 1: ", a circle left empty"}.get(empty, f", {empty} circles left empty")
        return f"a whole and its two parts in circles, the whole above{blank}"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        above, left, right = (in_a_row((text,)) for text in (self.whole, self.left, self.right))
        return f"three circles joined by lines: {above} on top; below, {left} and {right}"

    def shows(self) -> tuple[str, ...]:
        """The numerals in the circles."""
        return tuple(text for text in (self.whole, self.left, self.right) if text != "?")


def _reach(radius: float, sketch: Sketch) -> tuple[float, float] | None:
    """How far the parts lie to the side of the whole and below it; None when such circles do not fit."""
    apart = min(sketch.width / 2 - radius - _RIM, 2.2 * radius)
    drop = min(sketch.height - 2 * radius - 2 * _RIM, 2.2 * radius)
    fits = apart >= radius + _GAP / 2 and drop >= 0.7 * radius and hypot(apart, drop) >= 2 * radius + _GAP
    return (apart, drop) if fits else None


def _line(radius: float) -> float:
    """How wide lines are."""
    return max(1.0, radius / 8)


def _circle(sketch: Sketch, x: float, y: float, radius: float, text: str, block: float) -> None:
    if text == "?":
        sketch.paint(disc(x, y, radius), Ink.HOLE)
        return
    sketch.paint(disc(x, y, radius), Ink.GROUND)
    sketch.paint(ring(x, y, radius, _line(radius)), Ink.INK)
    wide = extent(text)[0]
    # On the edges of pixels numerals are the sharpest, and a quarter of a cell aside is not seen.
    write(sketch, round(2 * x - wide * block) / 2, round(2 * y - _HIGH * block) / 2, text, block)


PICTURE = PartWhole
