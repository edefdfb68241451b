"""Part and whole: a whole, and the two parts it is made of."""

from math import ceil, floor, hypot
from typing import NamedTuple

from warmup.pictures._told import in_a_row
from warmup.pictures.canvas import Canvas, Drawing, Ink, disc, on_pixels, ring, stroke
from warmup.pictures.glyphs import extent, write

_HIGH = 5
_THIN = 1.0
_GAP = 3.0


class PartWhole(NamedTuple):
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

    def _needs(self) -> float:
        """The smallest radius whose circle has room for the widest numeral in blocks of one cell."""
        # With an odd number of half cells, a numeral five blocks high stands in the very middle.
        return ceil(hypot(self._wide(), _HIGH) / 2 + _THIN) + 0.5

    def _block(self, radius: float) -> int:
        return max(1, int(2 * (radius - _line(radius) - 0.5) / hypot(self._wide(), _HIGH)))

    def _radius(self, columns: int, rows: int) -> float:
        """The largest that fits, so that numerals of this block stand in the very middle."""
        best = radius = self._needs()
        while _reach(radius, columns, rows):
            if 2 * radius % 2 == self._block(radius) % 2:
                best = radius
            radius += 0.5
        return best

    def least(self) -> tuple[int, int]:
        """Circles with room for their numerals, the parts spread wide."""
        radius = self._needs()
        drop = ceil(((2 * radius + _GAP) ** 2 - (2 * radius) ** 2) ** 0.5)
        return ceil(6 * radius), ceil((2 * radius + drop) / 2)

    def draw(self, columns: int, rows: int) -> Drawing:
        """Circles as large as the pane allows, none nearer to another than a short line."""
        canvas = Canvas(columns, rows)
        radius = self._radius(columns, rows)
        apart, drop = _reach(radius, columns, rows) or (2 * radius, radius)
        middle, top = columns / 2, (2 * rows - drop - 2 * radius) // 2 + radius
        whole, *parts = (middle, top), (middle - apart, top + drop), (middle + apart, top + drop)
        for x, y in parts:
            # From edge to edge, so that no third ink comes into a circle's cells.
            share = (radius - 0.5) / hypot(x - middle, y - top)
            run, fall = (x - middle) * share, (y - top) * share
            canvas.paint(stroke(middle + run, top + fall, x - run, y - fall, _line(radius)), Ink.INK)
        for (x, y), text in zip((whole, *parts), (self.whole, self.left, self.right), strict=True):
            _circle(canvas, x, y, radius, text, self._block(radius))
        return canvas.drawing()

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

    def marked(self) -> tuple[str, ...]:
        """Only an empty circle stands out."""
        return ()


def _reach(radius: float, columns: int, rows: int) -> tuple[float, float] | None:
    """How far the parts lie to the side of the whole and below it; None when such circles do not fit."""
    apart = floor(2 * min(columns / 2 - radius, 2 * radius)) / 2
    drop = float(floor(min(2 * rows - 2 * radius, 2.2 * radius)))
    fits = apart >= radius + _GAP / 2 and hypot(apart, drop) >= 2 * radius + _GAP
    return (apart, drop) if fits else None


def _line(radius: float) -> float:
    """How wide lines are: a sixth of a circle's radius, in whole half cells."""
    return max(_THIN, floor(radius / 3) / 2)


def _circle(canvas: Canvas, x: float, y: float, radius: float, text: str, block: int) -> None:
    x, y, radius = on_pixels(x, y, radius)
    if text == "?":
        canvas.paint(disc(x, y, radius), Ink.HOLE)
        return
    canvas.paint(disc(x, y, radius), Ink.GROUND)
    canvas.paint(ring(x, y, radius, _line(radius)), Ink.INK)
    wide = extent(text)[0]
    write(canvas, floor(2 * x - wide * block) / 2, floor(y - _HIGH * block / 2), text, block)


PICTURE = PartWhole
