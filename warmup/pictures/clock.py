"""A clock with hands: twelve numerals, a long hand for minutes and a short one for hours.

The hour hand moves on with the minutes: at half past it stands halfway between two numerals.
"""

from dataclasses import dataclass
from math import cos, floor, pi, sin

from warmup.pictures.base import Picture
from warmup.pictures.glyphs import write
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import box, disc, ring, stroke
from warmup.pictures.sketch import Sketch

_BLOCKS_FROM = 16
"""The radius, in cell widths, from which numerals are drawn in blocks; smaller faces print them."""


def hour_angle(hour: int, minute: int) -> float:
    """Degrees from twelve, clockwise: 30 an hour and half a degree a minute."""
    return hour % 12 * 30 + minute / 2


def minute_angle(minute: int) -> float:
    """Degrees from twelve, clockwise: 6 a minute."""
    return minute * 6.0


@dataclass(frozen=True, eq=False, repr=False)
class Clock(Picture):
    """A clock face at ``hour`` (1 to 12) and ``minute`` (0 to 59), or a bare face without ``hands``.

    The hands differ in length, width and ink: the hour hand is short and broad.
    """

    hour: int
    minute: int
    hands: bool = True
    kind: str = "clock"

    def least(self) -> tuple[int, int]:
        """Room for twelve printed numerals with hands between them."""
        return 20, 9

    def sketch(self, columns: int, rows: int) -> Sketch:
        """A round face as large as the pane allows.

        Printed numerals stand in cells, so there the middle must be a row's; blocks are the sharpest
        where they fill whole pixels, so their middle lies where an odd number of them, or an even one,
        has its own.
        """
        sketch = Sketch(columns, rows)
        x, y = columns // 2 + 0.5, float(rows - 1 + rows % 2)
        radius, block = min((columns - 1) / 2, y, 2 * rows - y), 0
        if radius >= _BLOCKS_FROM:
            block = int(radius / _BLOCKS_FROM)
            half = block % 2 / 2
            x, y = columns // 2 + half, rows - half
            radius = min(x, columns - x, y, 2 * rows - y) - 0.25
        sketch.paint(disc(x, y, radius), Ink.TILE)
        if block:
            sketch.paint(ring(x, y, radius, max(0.6, radius / 26)), Ink.SOFT)
        inner = _blocks(sketch, x, y, radius, block) if block else _print(sketch, x, y, radius)
        if self.hands:
            self._hands(sketch, x, y, inner, radius)
        return sketch

    def _hands(self, sketch: Sketch, x: float, y: float, inner: float, radius: float) -> None:
        """The hour hand first, so that the thin minute hand can be seen on it where they overlap.

        Their inks are far apart in grays as well.
        """
        thin = max(1.0, radius / 16)
        broad = max(2.4, 2.4 * thin)
        end = _at(x, y, hour_angle(self.hour, self.minute), inner * 0.72 - broad / 2)
        sketch.paint(stroke(x, y, *end, broad), Ink.FIRST)
        end = _at(x, y, minute_angle(self.minute), inner - thin / 2)
        sketch.paint(stroke(x, y, *end, thin), Ink.INK)
        sketch.paint(disc(x, y, thin * 0.9), Ink.INK)

    def words(self) -> str:
        """Whether there are hands: where they point is the time."""
        if not self.hands:
            return "a clock face with its numerals and no hands"
        return "a clock face with a short hand and a long hand"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        if not self.hands:
            return "a clock face with its numerals and no hands"
        return f"a clock face with its hands set to {self.hour}:{self.minute:02}"

    def shows(self) -> tuple[str, ...]:
        """The twelve numerals."""
        return tuple(str(number) for number in range(1, 13))


def _at(x: float, y: float, angle: float, out: float) -> tuple[float, float]:
    """The point so far out from the middle, at an angle clockwise from twelve."""
    turn = angle * pi / 180
    return x + out * sin(turn), y - out * cos(turn)


def _blocks(sketch: Sketch, x: float, y: float, radius: float, side: int) -> float:
    """The twelve numerals in blocks of this side, five high; how far out the hands may reach."""
    out = floor(radius - 3.5 * side - radius / 26)
    for number in range(1, 13):
        middle, height = _at(x, y, number * 30, out)
        # A one is a single bar here: three wide, it would make eleven and twelve touch.
        wides = [1 if digit == "1" else 3 for digit in str(number)]
        left = floor(2 * (middle - (sum(wides) + len(wides) - 1) * side / 2) + 0.5) / 2
        top = floor(height - 2.5 * side + 0.5)
        for digit, wide in zip(str(number), wides, strict=True):
            if digit == "1":
                sketch.paint(box(left, top, side, 5 * side), Ink.INK)
            else:
                write(sketch, left, top, digit, side)
            left += (wide + 1) * side
    return out - 3.5 * side


def _print(sketch: Sketch, x: float, y: float, radius: float) -> float:
    """The twelve numerals as text in cells; how far out the hands may reach."""
    out = radius - 1
    for number in range(1, 13):
        middle, height = _at(x, y, number * 30, out)
        text = str(number)
        sketch.label(floor(middle - len(text) / 2 + 0.5), floor(height / 2), text)
    return out - 1


PICTURE = Clock
