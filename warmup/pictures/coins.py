"""Coins of the United States in their true relative sizes, and what each is worth.

Diameters and edges: United States Mint, "Coin Specifications" (tests/references/coins.toml). The copper
and silver looks are everyday knowledge. Nothing stands on a coin: no head, no motto, no numeral.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from math import ceil, cos, pi, sin, sqrt

from warmup.pictures._told import in_a_row
from warmup.pictures.base import Picture
from warmup.pictures.facts import CENTS, MILLIMETERS, REEDED
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import CELL_HEIGHT, Polygon, Shape, box, disc, polygon, ring
from warmup.pictures.sketch import Sketch

_LOOKS = {
    "penny": "copper with a smooth edge",
    "nickel": "silver with a smooth edge",
    "dime": "small and silver with a ridged edge",
    "quarter": "large and silver with a ridged edge",
}
_SMALLEST, _LARGEST = 0.26, 2.4
"""The scales tried, in cell widths a millimeter: below the smallest a dime's ridges close up."""

_GAP = 1.25
_FINGER = 3.0


@dataclass(frozen=True, eq=False, repr=False)
class Coins(Picture):
    """Coins side by side, in rows where they need them: "penny", "nickel", "dime" or "quarter" each.

    With ``worth`` a strip under each coin shows its worth as dots, a cent each, in groups of five and
    ten: loose nickels and dimes are too abstract at this age without (National Research Council 2009,
    Mathematics Learning in Early Childhood, p. 147). ``pointed`` is the place of the coin that a finger
    points at, counted from 0.
    """

    names: tuple[str, ...]
    worth: bool = False
    pointed: int | None = None
    kind: str = "coins"

    def least(self) -> tuple[int, int]:
        """Four or five bare coins a row: where there is no room for the dots, the coins come without."""
        columns = 30 if len(self.names) <= 4 else 36
        return columns, max(5, -(-round(self._bare()._fill(_SMALLEST, columns)[1]) // 2))

    def sketch(self, columns: int, rows: int) -> Sketch:
        """The coins as large as the pane allows, all at one scale."""
        if self.worth and self._fill(_SMALLEST, columns)[1] > rows * CELL_HEIGHT:
            return self._bare().sketch(columns, rows)
        sketch = Sketch(columns, rows)
        scale = self._scale(columns, sketch.height)
        lines = self._balanced(scale, columns)
        high = sum(self._tall(line, scale) for line in lines) - _GAP
        top = (sketch.height - high) / 2
        for line in lines:
            self._line(sketch, line, scale, top)
            top += self._tall(line, scale)
        return sketch

    def _scale(self, columns: int, height: float) -> float:
        """The largest scale at which all fit, found by halving."""
        low = _SMALLEST
        # No scale at which the coins' squares cover more than the pane can do.
        high = min(_LARGEST, sqrt(columns * height / sum(MILLIMETERS[name] ** 2 for name in self.names)))
        for _ in range(9):
            middle = (low + high) / 2
            if self._fill(middle, columns)[1] <= height:
                low = middle
            else:
                high = middle
        return low

    def words(self) -> str:
        """How the kinds of coin look, without their names or how many there are."""
        looks = list(dict.fromkeys(_LOOKS[name] for name in self.names))
        dots = ", a dot a cent below" if self.worth else ""
        finger = ", a finger at one of them" if self.pointed is not None else ""
        return f"coins, true to size: {'; '.join(looks)}{dots}{finger}"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        dots = "; under each its worth in dots, a dot a cent" if self.worth else ""
        finger = f"; a finger at coin {self.pointed + 1}" if self.pointed is not None else ""
        return f"coins, left to right: {in_a_row(self.names)}{dots}{finger}"

    def marked(self) -> tuple[str, ...]:
        """The coin under the finger."""
        return () if self.pointed is None else (self.names[self.pointed],)

    def _bare(self) -> "Coins":
        return Coins(self.names, pointed=self.pointed)

    # ---- where things go ---------------------------------------------------------------------------

    def _wide(self, name: str, scale: float) -> float:
        dots = _strip_size(name, scale)[0] if self.worth else 0.0
        return max(MILLIMETERS[name] * scale, dots)

    def _tall(self, line: Sequence[int], scale: float) -> float:
        """How high a row of coins is: coins, dots, finger and the space below."""
        names = [self.names[place] for place in line]
        dots = max(_strip_size(name, scale)[1] for name in names) + 1.5 if self.worth else 0.0
        finger = _FINGER + 1 if self.pointed is not None else 0.0
        return max(MILLIMETERS[name] * scale for name in names) + dots + finger + _GAP

    def _fill(self, scale: float, columns: float) -> tuple[list[list[int]], float]:
        """Places of the coins row by row, and the height all rows take; infinite where a coin is too wide.

        A kind is not parted where it fits into a row; else it takes rows of its own, about equally long.
        """
        lines: list[list[int]] = []
        used, place = float(columns), 0
        for name, run in groupby(self.names):
            count, wide = len(list(run)), self._wide(name, scale) + _GAP
            most = int((columns + _GAP) / wide)
            if not most:
                return [], float("inf")
            if used + count * wide > columns:
                rows = -(-count // most)
                for row in range(rows):
                    here = range(place + count * row // rows, place + count * (row + 1) // rows)
                    lines.append(list(here))
                    used = len(here) * wide
            else:
                lines[-1] += range(place, place + count)
                used += count * wide
            place += count
        return lines, sum(self._tall(line, scale) for line in lines) - _GAP

    def _balanced(self, scale: float, columns: int) -> list[list[int]]:
        """The same number of rows and no more height, but rows about equally long."""
        lines, tall = self._fill(scale, columns)
        while columns > 1:
            tighter, height = self._fill(scale, columns - 1)
            if not tighter or len(tighter) > len(lines) or height > tall:
                break
            lines, columns = tighter, columns - 1
        return lines

    def _line(self, sketch: Sketch, line: Sequence[int], scale: float, top: float) -> None:
        wides = [self._wide(self.names[place], scale) for place in line]
        left = (sketch.width - sum(wides) - _GAP * (len(wides) - 1)) / 2
        deep = max(MILLIMETERS[self.names[place]] * scale for place in line)
        for place, wide in zip(line, wides, strict=True):
            name, middle = self.names[place], left + wide / 2
            radius = MILLIMETERS[name] * scale / 2
            _coin(sketch, name, middle, top + deep / 2, radius)
            if self.worth:
                _strip(sketch, name, scale, middle, top + deep + 0.5)
            if place == self.pointed:
                _arrow(sketch, middle, top + deep / 2 + radius + 1)
            left += wide + _GAP


# ---- one coin --------------------------------------------------------------------------------------


def _arrow(sketch: Sketch, middle: float, top: float) -> None:
    """An arrow head under a coin, its tip up."""
    low = top + _FINGER
    sketch.paint(polygon(((middle, top), (middle + _FINGER, low), (middle - _FINGER, low))), Ink.INK)


def _coin(sketch: Sketch, name: str, x: float, y: float, radius: float) -> None:
    """A disc with one rim: smooth for a penny, set off by a groove for a nickel, else by ridges."""
    sketch.paint(disc(x, y, radius), Ink.COPPER if name == "penny" else Ink.SILVER)
    line = max(0.5, radius / 12)
    if name == "nickel":
        sketch.paint(ring(x, y, radius - 1.4 * line, max(1.2, 0.8 * line)), Ink.GROUND)
    elif name in REEDED:
        sketch.paint(_ridges(x, y, radius - 0.8 * line, max(1.0, 1.3 * line)), Ink.GROUND)


def _ridges(x: float, y: float, radius: float, deep: float) -> Shape:
    """Cuts all round inside a circle, as broad as what is left between them, alike in all four quarters."""
    cuts = 4 * max(2, round(pi * radius / 2 / max(2.2, radius / 4)))
    inner, half = radius - deep, pi / cuts / 2
    return Polygon(
        tuple(
            tuple(
                (x + out * sin(middle + turn), y - out * cos(middle + turn))
                for out, turn in ((radius, -half), (radius, half), (inner, half), (inner, -half))
            )
            for middle in (2 * pi * (n + 0.5) / cuts for n in range(cuts))
        )
    )


# ---- its worth -------------------------------------------------------------------------------------


def _dot(scale: float) -> int:
    """The side of a dot: five of them and their gaps are about as wide as a dime."""
    return max(1, int(MILLIMETERS["dime"] * scale / 7 + 0.25))


def _strip_size(name: str, scale: float) -> tuple[float, float]:
    """Width and height of the dots under a coin."""
    places = list(_dots(name, scale))
    side = _dot(scale)
    return max(x for x, _ in places) + side, max(y for _, y in places) + side


def _dots(name: str, scale: float) -> Iterator[tuple[float, float]]:
    """Where each cent's dot goes: five a line, ten in two lines, a second ten beside the first."""
    side = _dot(scale)
    for cent in range(CENTS[name]):
        ten, rest = divmod(cent, 10)
        line, place = divmod(rest, 5)
        right, lower = (ten, 0) if ten < 2 else (0, 2)
        yield right * 8.5 * side + place * 1.5 * side, (line + lower) * (side + 1.0)


def _strip(sketch: Sketch, name: str, scale: float, middle: float, top: float) -> None:
    wide, side = _strip_size(name, scale)[0], _dot(scale)
    # Dots are a pixel or two large: on whole pixels they are all alike.
    left, top = round(2 * (middle - wide / 2)) / 2, ceil(top)
    for x, y in _dots(name, scale):
        sketch.paint(box(left + x, top + y, side, side), Ink.FIRST)


PICTURE = Coins
