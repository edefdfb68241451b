"""Toys in line at a door: which end is first is seen, and no number is shown."""

from typing import Literal, NamedTuple

from warmup.pictures.canvas import Canvas, Drawing, Ink, box, disc, frame

# Heights in paces, a pace being the room of one figure: body and head, then the hat; then the least pace.
_BODY, _TALL, _LEAST = 1.8, 3.4, 3.5


class ToyLine(NamedTuple):
    """``number`` figures in line (1 to 10) at a door on the ``front`` side, the first of them at the door.

    Figures at the places ``hats``, counted from the door, wear a tall hat and have a second ink, so that
    they differ by form as well as color.
    """

    number: int
    front: Literal["left", "right"] = "left"
    hats: tuple[int, ...] = ()
    kind: str = "toy-line"

    def least(self) -> tuple[int, int]:
        """Three and a half cells a figure, four for the door, and the height that goes with it."""
        return int(_LEAST * self.number) + 5, 7

    def draw(self, columns: int, rows: int) -> Drawing:
        """The door at the front, the figures in even paces behind it, all on one floor."""
        canvas = Canvas(columns, rows)
        across = min((columns - 1) / (self.number + 1), (columns - 5) / self.number)
        pace = max(_LEAST, int(2 * min(across, (2 * rows - 3) / _TALL)) / 2)
        door = max(4.0, pace)
        # The floor begins a row of cells: a cell that held it and two figures would lose one of them.
        floor = min(2 * rows - 2, (2 * rows + int(_TALL * pace)) // 2 // 2 * 2)
        length = pace * self.number + door
        left = int(columns - length) / 2
        canvas.paint(box(left, floor, length, 1), Ink.SOFT)
        line = left + door if self.front == "left" else left
        self._door(canvas, left if self.front == "left" else left + length - door, floor, door)
        for place in range(1, self.number + 1):
            back = place - 1 if self.front == "left" else self.number - place
            self._figure(canvas, line + back * pace, floor, pace, place in self.hats)
        return canvas.drawing()

    def _door(self, canvas: Canvas, left: float, floor: int, wide: float) -> None:
        high = int(2 * wide)
        # Half a cell stays free between the door and the first figure.
        at = left if self.front == "left" else left + 0.5
        canvas.paint(frame(at, floor - high, wide - 0.5, high, 1), Ink.INK)
        knob = at + wide - 2.5 if self.front == "left" else at + 1.5
        canvas.paint(box(knob, floor - high // 2, 0.5, 1), Ink.INK)

    def _figure(self, canvas: Canvas, left: float, floor: int, pace: float, hat: bool) -> None:
        ink = Ink.SECOND if hat else Ink.FIRST
        half = max(1.5, int(0.8 * pace) / 2)
        # The middle lies on a pixel's edge, so that left and right halves are alike.
        x, body = left + int(pace) / 2, round(_BODY * pace)
        head = max(1.0, int(2 * 0.3 * pace) / 2)
        canvas.paint(box(x - half, floor - body, 2 * half, body), ink)
        canvas.paint(disc(x, floor - body - head, head), ink)
        if hat:
            brim = int(floor - body - 2 * head)
            crown = max(1, round(0.35 * pace))
            canvas.paint(box(x - half, brim - 1, 2 * half, 1), ink)
            canvas.paint(box(x - max(0.5, half / 2), brim - 1 - crown, max(1.0, half), crown), ink)

    def words(self) -> str:
        """The line and the door's side, not how many stand there."""
        hat = ", one of them in a hat" if len(self.hats) == 1 else ", some in hats" if self.hats else ""
        return f"a line of figures{hat}, with a door at the {self.front} end"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        hats = f"; a hat on toy {', '.join(map(str, self.hats))} from the door" if self.hats else ""
        return f"toys in line: {self.number}, the door at the {self.front}{hats}"

    def shows(self) -> tuple[str, ...]:
        """No numeral and no name stands on it."""
        return ()

    def marked(self) -> tuple[str, ...]:
        """The hats stand out; nothing that can be said does."""
        return ()


PICTURE = ToyLine
