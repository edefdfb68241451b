"""A clock with hands: twelve numerals, a long hand for minutes and a short one for hours.

The hour hand moves on with the minutes: at half past it stands halfway between two numerals.
"""

from math import cos, floor, pi, sin
from typing import NamedTuple

from warmup.pictures.canvas import Canvas, Drawing, Ink, box, disc, ring, stroke
from warmup.pictures.glyphs import write

_BLOCKS_FROM = 16
"""The radius, in cell widths, from which numerals are drawn in blocks; smaller faces print them."""

_RING_FROM = 24
"""The radius, in cell widths, from which there is room for a rim."""


def hour_angle(hour: int, minute: int) -> float:
    """Degrees from twelve, clockwise: 30 an hour and half a degree a minute."""
    return hour % 12 * 30 + minute / 2


def minute_angle(minute: int) -> float:
    """Degrees from twelve, clockwise: 6 a minute."""
    return minute * 6.0


class Clock(NamedTuple):
    """A clock face at ``hour`` (1 to 12) and ``minute`` (0 to 59), or a bare face without ``hands``.

    The hands differ in length, width and ink: the hour hand is short and broad. Both have plain ends,
    since a point of a few pixels comes out ragged and leans to one side.
    """

    hour: int
    minute: int
    hands: bool = True
    kind: str = "clock"

    def least(self) -> tuple[int, int]:
        """Room for twelve printed numerals with hands between them."""
        return 20, 9

    def draw(self, columns: int, rows: int) -> Drawing:
        """A round face as large as the pane allows, its middle where numerals and hands can mirror.

        Numerals and the minute hand are a whole number of blocks wide: an odd number has its middle in
        the middle of a cell, an even one on its edge. So a minute hand straight up or down fills whole
        cells, and no cell needs a third ink.
        """
        canvas = Canvas(columns, rows)
        # Printed numerals stand in cells, so there the middle must be a row's.
        x, y = columns // 2 + 0.5, float(rows - 1 + rows % 2)
        radius, block = min((columns - 1) // 2, y), 0
        if radius >= _BLOCKS_FROM:
            block = int(radius / _BLOCKS_FROM)
            half = block % 2 / 2
            x, y = columns // 2 + half, rows - half
            radius = min((columns - 1) // 2 - half, y)
        canvas.paint(disc(x, y, radius), Ink.TILE)
        if radius >= _RING_FROM:
            canvas.paint(ring(x, y, radius, 1.5), Ink.SOFT)
        inner = _blocks(canvas, x, y, radius, block) if block else _print(canvas, x, y, radius)
        if self.hands:
            self._hands(canvas, x, y, inner, float(block or 1))
        return canvas.drawing()

    def _hands(self, canvas: Canvas, x: float, y: float, inner: float, thin: float) -> None:
        """The hour hand first, so that the thin minute hand can be seen on it where they overlap.

        Their inks are far apart in grays as well.
        """
        # Edges of both hands lie on pixels when they stand upright or level.
        half = y % 1
        broad = max(3.0, 2 * (round(inner / 7 - half) + half))
        # A hair less than whole, so that a slanted hand does not end in one lone pixel.
        long = round(inner * 0.7 - half) + half - 0.1
        end = _at(x, y, hour_angle(self.hour, self.minute), long - broad / 2)
        canvas.paint(stroke(x, y, *end, broad), Ink.FIRST)
        end = _at(x, y, minute_angle(self.minute), inner - thin / 2)
        canvas.paint(stroke(x, y, *end, thin), Ink.INK)

    def words(self) -> str:
        """Where the hands point, which is not yet the time; or that there are none."""
        if not self.hands:
            return "a clock face with its numerals and no hands"
        after = self.hour % 12 + 1
        short = f"on the {self.hour}" if self.minute == 0 else f"between the {self.hour} and the {after}"
        return f"a clock, its short hand {short}, its long hand on the {(self.minute + 2) // 5 or 12}"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        if not self.hands:
            return "a clock face with its numerals and no hands"
        return f"a clock face with its hands set to {self.hour}:{self.minute:02}"

    def shows(self) -> tuple[str, ...]:
        """The twelve numerals."""
        return tuple(str(number) for number in range(1, 13))

    def marked(self) -> tuple[str, ...]:
        """No numeral is set off."""
        return ()


def _at(x: float, y: float, angle: float, out: float) -> tuple[float, float]:
    """The point so far out from the middle, at an angle clockwise from twelve."""
    turn = angle * pi / 180
    return x + out * sin(turn), y - out * cos(turn)


def _blocks(canvas: Canvas, x: float, y: float, radius: float, side: int) -> float:
    """The twelve numerals in blocks of this side, five high; how far out the hands may reach."""
    out = floor(radius - 3.6 * side - (2 if radius >= _RING_FROM else 0))
    for number in range(1, 13):
        middle, height = _at(x, y, number * 30, out)
        # A one is a single bar here: three wide, it would make eleven and twelve touch.
        wides = [1 if digit == "1" else 3 for digit in str(number)]
        left = floor(2 * (middle - (sum(wides) + len(wides) - 1) * side / 2) + 0.5) / 2
        top = floor(height - 2.5 * side + 0.5)
        for digit, wide in zip(str(number), wides, strict=True):
            if digit == "1":
                canvas.paint(box(left, top, side, 5 * side), Ink.INK)
            else:
                write(canvas, left, top, digit, side)
            left += (wide + 1) * side
    return out - 2.5 * side - 1


def _print(canvas: Canvas, x: float, y: float, radius: float) -> float:
    """The twelve numerals as text in cells; how far out the hands may reach."""
    out = radius - 1
    for number in range(1, 13):
        middle, height = _at(x, y, number * 30, out)
        text = str(number)
        canvas.label(floor(middle - len(text) / 2 + 0.5), floor(height / 2), text)
    return out - 1


PICTURE = Clock
