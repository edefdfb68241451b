"""A seesaw with a thing on either end: the heavier end is down."""

from dataclasses import dataclass

from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.scene import paint_thing
from warmup.pictures.shapes import box, disc, frame, polygon, stroke
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class Scale(Picture):
    """A seesaw. ``left`` and ``right`` are two of ``facts.THINGS``, ``big`` the one drawn larger (or "").

    ``down`` is the end that is down, "left" or "right": the heavier thing sits there, be it big or not.
    """

    left: str
    right: str
    down: str
    big: str = ""
    kind: str = "scale"

    def least(self) -> tuple[int, int]:
        """Room for both things, the plank and what it rests on."""
        return 30, 8

    def sketch(self, columns: int, rows: int) -> Sketch:
        """The plank, its rest in the middle, and the things standing on the plank's ends."""
        sketch = Sketch(columns, rows)
        unit = min(columns / 30, rows * 2 / 16)
        x, ground = columns // 2, rows * 2 - (rows * 2 - 16 * unit) // 2
        tilt = 1.5 * unit if self.down == "left" else -1.5 * unit
        middle = ground - 3.8 * unit
        reach = min(columns / 2 - 1 - unit, 22 * unit)
        sketch.paint(
            polygon(((x, middle), (x - 3 * unit, ground), (x + 3 * unit, ground))),
            Ink.SOFT,
        )
        sketch.paint(stroke(x - reach, middle + tilt, x + reach, middle - tilt, 1.6 * unit), Ink.INK)
        for thing, side in ((self.left, -1), (self.right, 1)):
            size = unit * (9 if thing == self.big else 4.5 if self.big else 6.5)
            off = reach - 0.62 * size
            # The plank's upper edge under the middle of the thing; the thing rests on it.
            rest = middle - side * tilt * off / reach - 0.8 * unit
            _thing(sketch, thing, x + side * off, float(round(rest)), size)
        return sketch

    def words(self) -> str:
        """Which end is down, without saying which is the heavier."""
        sizes = f", the bigger of the two a {self.big}" if self.big else ""
        ends = f"a {self.left} on the left, a {self.right} on the right"
        return f"a seesaw, {ends}, the {self.down} end down{sizes}"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        bigger = f"; the {self.big} the bigger" if self.big else ""
        return f"a seesaw: {self.left} on the left, {self.right} on the right; {self.down} end down{bigger}"


def _thing(sketch: Sketch, name: str, x: float, base: float, size: float) -> None:
    """A thing as high as it is wide, standing on ``base``: a solid ball, a hollow box, a toy of a scene."""
    size = max(3.0, float(round(size)))
    left = round(2 * (x - size / 2)) / 2
    match name:
        case "ball":
            sketch.paint(disc(x, base - size / 2, size / 2), Ink.FIRST)
        case "box":
            sketch.paint(box(left, base - size, size, size), Ink.GROUND)
            sketch.paint(frame(left, base - size, size, size, max(1.0, size / 9)), Ink.SECOND)
        case _:
            paint_thing(sketch, name, left + size / 2, base, size)


PICTURE = Scale
