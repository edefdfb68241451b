"""Coins of the United States in their true relative sizes, and what each is worth.

Diameters and edges: United States Mint, "Coin Specifications" (tests/references/coins.toml). The copper
and silver looks are everyday knowledge. Nothing stands on a coin: no head, no motto, no numeral.
"""

from collections.abc import Iterator, Sequence
from math import atan2, cos, floor, hypot, radians, sin, sqrt
from typing import NamedTuple

from warmup.pictures._told import in_a_row
from warmup.pictures.canvas import CELL_HEIGHT, Canvas, Drawing, Ink, Shape, box
from warmup.pictures.facts import CENTS, MILLIMETERS, REEDED

_LOOKS = {
    "penny": "copper with a smooth edge",
    "nickel": "silver with a smooth edge",
    "dime": "small and silver with a ridged edge",
    "quarter": "large and silver with a ridged edge",
}
_SMALLEST, _LARGEST, _STEP = 0.26, 1.2, 0.02
"""Scales tried, in cell widths a millimeter: below the smallest a dime's ridges close up."""

_GAP = 1.5

_DOTS_FROM, _MORE_FROM, _TEETH_FROM = 4, 6.5, 8.5
"""The radius, in cell widths, from which a rim has twelve dots, sixteen, and ridges all round."""


class Coins(NamedTuple):
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

    def draw(self, columns: int, rows: int) -> Drawing:
        """The coins as large as the pane allows, all at one scale."""
        if self.worth and self._fill(_SMALLEST, columns)[1] > rows * CELL_HEIGHT:
            return self._bare().draw(columns, rows)
        canvas = Canvas(columns, rows)
        scale = _SMALLEST
        # No scale at which the coins' squares cover more than the pane can do.
        room = sqrt(canvas.width * canvas.height / sum(MILLIMETERS[name] ** 2 for name in self.names))
        for step in range(round((min(room, _LARGEST) - _SMALLEST) / _STEP), -1, -1):
            scale = _SMALLEST + step * _STEP
            if self._fill(scale, columns)[1] <= canvas.height:
                break
        lines = self._balanced(scale, columns)
        high = sum(self._tall(line, scale) for line in lines)
        top = float(max(0, floor((canvas.height - high + 1) / 2)))
        for line in lines:
            self._line(canvas, line, scale, top)
            top += self._tall(line, scale)
        return canvas.drawing()

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

    def shows(self) -> tuple[str, ...]:
        """Nothing is written on them."""
        return ()

    def marked(self) -> tuple[str, ...]:
        """The coin under the finger."""
        return () if self.pointed is None else (self.names[self.pointed],)

    def _bare(self) -> "Coins":
        return Coins(self.names, pointed=self.pointed)

    # ---- where things go ---------------------------------------------------------------------------

    def _wide(self, name: str, scale: float) -> float:
        dots = _strip_size(name, scale)[0] if self.worth else 0.0
        return max(_across(name, scale), dots)

    def _tall(self, line: Sequence[int], scale: float) -> float:
        """How high a row of coins is: coins, dots, finger and the space below."""
        names = [self.names[place] for place in line]
        dots = max(_strip_size(name, scale)[1] for name in names) + 1 if self.worth else 0.0
        finger = 4.0 if self.pointed is not None else 0.0
        return max(_down(name, scale) for name in names) + dots + finger + 1

    def _fill(self, scale: float, columns: int) -> tuple[list[list[int]], float]:
        """Places of the coins row by row, and the height all rows take; infinite where a coin is too wide."""
        lines: list[list[int]] = []
        used = float(columns)
        for place, name in enumerate(self.names):
            wide = self._wide(name, scale)
            if wide > columns:
                return [], float("inf")
            used += _GAP + wide
            if used > columns:
                lines.append([])
                used = wide
            lines[-1].append(place)
        return lines, sum(self._tall(line, scale) for line in lines) - 1

    def _balanced(self, scale: float, columns: int) -> list[list[int]]:
        """The same number of rows and no more height, but rows about equally long."""
        lines, tall = self._fill(scale, columns)
        while columns > 1:
            tighter, height = self._fill(scale, columns - 1)
            if not tighter or len(tighter) > len(lines) or height > tall:
                break
            lines, columns = tighter, columns - 1
        return lines

    def _line(self, canvas: Canvas, line: Sequence[int], scale: float, top: float) -> None:
        wides = [self._wide(self.names[place], scale) for place in line]
        left = (canvas.width - sum(wides) - _GAP * (len(wides) - 1)) / 2
        deep = max(_down(self.names[place], scale) for place in line)
        for place, wide in zip(line, wides, strict=True):
            name = self.names[place]
            across, down = _across(name, scale), _down(name, scale)
            x0 = _snap(left + (wide - across) / 2)
            middle = x0 + across / 2
            _coin(canvas, name, middle, top + floor((deep - down) / 2) + down / 2, across / 2, down / 2)
            if self.worth:
                _strip(canvas, name, scale, middle, top + deep + 1)
            if place == self.pointed:
                _arrow(canvas, middle, top + floor((deep - down) / 2) + down + 1)
            left += wide + _GAP


def _snap(x: float) -> float:
    """The nearest pixel edge across."""
    return floor(2 * x + 0.5) / 2


def _across(name: str, scale: float) -> float:
    """A coin's width, in whole pixels of half a cell width."""
    return floor(MILLIMETERS[name] * scale * 2 + 0.5) / 2


def _down(name: str, scale: float) -> float:
    """A coin's height, in whole pixels of half a cell height."""
    return float(floor(MILLIMETERS[name] * scale * 2 / CELL_HEIGHT + 0.5))


# ---- one coin --------------------------------------------------------------------------------------


def _oval(x: float, y: float, across: float, down: float, inner: float = 0.0) -> Shape:
    """A round shape fitted to whole pixels, less what lies within ``inner`` of its radius (0 to 1)."""

    def distance(u: float, v: float) -> float:
        out = hypot((u - x) / across, (v - y) / down)
        return max(out - 1, inner - out) if inner else out - 1

    return Shape(distance, (x - across, y - down, x + across, y + down))


def _arrow(canvas: Canvas, middle: float, top: float) -> None:
    """An arrow head under a coin: three rows, each a cell broader, alike on both sides.

    Its tip is a pixel wide where the coin's middle is a pixel's, else two.
    """
    tip = 0.25 if (2 * middle) % 1 else 0.5
    for row in range(3):
        half = tip + row
        canvas.paint(box(middle - half, top + row, 2 * half, 1), Ink.INK)


def _coin(canvas: Canvas, name: str, x: float, y: float, across: float, down: float) -> None:
    """A disc: plain for a penny, with a groove inside the edge for a nickel, ridges for dime and quarter."""
    ink = Ink.COPPER if name == "penny" else Ink.SILVER
    canvas.paint(_oval(x, y, across, down), ink)
    if name == "penny":
        return
    if name in REEDED and down < _TEETH_FROM:
        _dotted(canvas, x, y, across, down)
        return
    groove = _oval(x, y, across - 1, down - 1, 1 - 1.2 / (down - 1))
    if name in REEDED:
        # A ridge at each end of both axes, so that the teeth lie alike on all sides.
        whole, teeth = groove.distance, max(2, round(across * 0.45)) * 4

        def between(u: float, v: float) -> float:
            return whole(u, v) if cos(teeth * atan2((v - y) / down, (u - x) / across)) < 0 else 1.0

        groove = Shape(between, groove.box)
    canvas.paint(groove, Ink.GROUND)


def _dotted(canvas: Canvas, x: float, y: float, across: float, down: float) -> None:
    """Single dots inside the edge: a coin too small for ridges keeps a dotted rim all the same.

    Sixteen, twelve, or six where even they would run together; each a cell square, or a pixel. Worked
    out for one quarter of the coin and mirrored, so that the rim is alike on all sides.
    """
    few = down < _DOTS_FROM
    wide = 0.5 if few else 1.0
    for angle in (0, 60) if few else (15, 45, 75) if down < _MORE_FROM else (11, 34, 56, 79):
        out = cos(radians(angle)) * (across - 1), sin(radians(angle)) * (down - 1.5)
        right = floor(2 * (x + out[0] - wide / 2) + 0.5) / 2
        low = floor(y + out[1] + 0.01) if angle else floor(y)
        for left in {right, 2 * x - right - wide}:
            for top in {float(low), 2 * y - low - 1}:
                canvas.paint(box(left, top, wide, 1), Ink.GROUND)


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


def _strip(canvas: Canvas, name: str, scale: float, middle: float, top: float) -> None:
    wide, side = _strip_size(name, scale)[0], _dot(scale)
    left = _snap(middle - wide / 2)
    for x, y in _dots(name, scale):
        canvas.paint(box(left + x, top + y, side, side), Ink.FIRST)


PICTURE = Coins
