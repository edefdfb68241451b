"""Toys in line at a door: which end is first is seen, and no number is shown."""

from dataclasses import dataclass
from typing import Literal

from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import box, disc, frame, joined, polygon
from warmup.pictures.sketch import Sketch

# Heights in paces, a pace being the room of one figure: body and head, then the hat; then the least pace.
_BODY, _TALL, _LEAST = 1.5, 2.8, 3.3


@dataclass(frozen=True, eq=False, repr=False)
class ToyLine(Picture):
    """``number`` figures in line (1 to 10) at a door on the ``front`` side, the first of them at the door.

    Figures at the places ``hats``, counted from the door, wear a tall hat and have a second ink, so that
    they differ by form as well as color.
    """

    number: int
    front: Literal["left", "right"] = "left"
    hats: tuple[int, ...] = ()
    kind: str = "toy-line"

    def least(self) -> tuple[int, int]:
        """Over three cells a figure, four for the door, and the height that goes with it."""
        return int(_LEAST * self.number) + 5, 7

    def sketch(self, columns: int, rows: int) -> Sketch:
        """The door at the front, the figures in even paces behind it, all on one floor."""
        sketch = Sketch(columns, rows)
        across = min((columns - 1) / (self.number + 1), (columns - 5) / self.number)
        pace = max(_LEAST, min(across, (2 * rows - 3) / _TALL))
        door = max(4.0, pace)
        # The floor begins a row of cells: a cell that held it and two figures would lose one of them.
        floor = min(2 * rows - 2, (2 * rows + int(_TALL * pace)) // 2 // 2 * 2)
        length = pace * self.number + door
        left = int(columns - length) / 2
        sketch.paint(box(left, floor, length, 1), Ink.SOFT)
        line = left + door if self.front == "left" else left
        self._door(sketch, left if self.front == "left" else left + length - door, floor, door)
        for place in range(1, self.number + 1):
            back = place - 1 if self.front == "left" else self.number - place
            self._figure(sketch, line + back * pace, floor, pace, place in self.hats)
        return sketch

    def _door(self, sketch: Sketch, left: float, floor: int, wide: float) -> None:
        high = int(2 * wide)
        # Half a cell stays free between the door and the first figure.
        at = left if self.front == "left" else left + 0.5
        sketch.paint(frame(at, floor - high, wide - 0.5, high, max(1.0, wide / 10)), Ink.INK)
        knob = at + wide - 2.5 if self.front == "left" else at + 1.5
        sketch.paint(box(knob, floor - high // 2, 0.5, 1), Ink.INK)

    def _figure(self, sketch: Sketch, left: float, floor: int, pace: float, hat: bool) -> None:
        """A peg of a figure: a body broad at its foot, a head, and perhaps a tall hat."""
        ink = Ink.SECOND if hat else Ink.FIRST
        half, x, body = 0.4 * pace, left + pace / 2, _BODY * pace
        head, slim = 0.32 * pace, 0.2 * pace
        neck = floor - body - head * 0.7
        parts = [
            polygon(
                ((x - slim, floor - body), (x + slim, floor - body), (x + half, floor), (x - half, floor))
            ),
            disc(x, neck, head),
        ]
        if hat:
            brim = neck - head * 0.6
            crown = max(1.0, 0.55 * pace)
            parts.append(box(x - half, brim - max(1.0, 0.12 * pace), 2 * half, max(1.0, 0.12 * pace)))
            parts.append(box(x - half * 0.6, brim - crown, 1.2 * half, crown))
        sketch.paint(joined(*parts), ink)

    def words(self) -> str:
        """The line and the door's side, not how many stand there."""
        hat = ", one of them in a hat" if len(self.hats) == 1 else ", some in hats" if self.hats else ""
        return f"a line of figures{hat}, with a door at the {self.front} end"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        hats = f"; a hat on toy {', '.join(map(str, self.hats))} from the door" if self.hats else ""
        return f"toys in line: {self.number}, the door at the {self.front}{hats}"


PICTURE = ToyLine
