"""Handprints, five fingers each."""

from dataclasses import dataclass
from math import ceil, floor

from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import CELL_HEIGHT, Shape, box, joined, stroke
from warmup.pictures.sketch import Sketch

_MOST_A_ROW = 5
# How long each finger is, thumb left out, from the thumb's side, as a share of the hand's height.
_REACH = (0.92, 1.0, 0.94, 0.76)


@dataclass(frozen=True, eq=False, repr=False)
class Hands(Picture):
    """``number`` solid handprints, from 1 to 10, at most five a row: left hand, right hand, and so on.

    Every hand has four fingers and a thumb with bare ground between them, so that the fingers can be
    counted one by one.
    """

    number: int
    kind: str = "hands"

    def least(self) -> tuple[int, int]:
        """A finger one pixel wide, with as many hands a row as there can be."""
        across = min(self.number, _MOST_A_ROW)
        wide, high = _block(0.5, across, -(-self.number // across))
        return ceil(wide), ceil(high / CELL_HEIGHT)

    def sketch(self, columns: int, rows: int) -> Sketch:
        """The hands as large as the pane allows."""
        sketch = Sketch(columns, rows)
        finger, across = max(
            (self._finger(across, columns, rows), across)
            for across in range(1, min(self.number, _MOST_A_ROW) + 1)
        )
        wide, high = _size(finger)
        all_wide, all_high = _block(finger, across, -(-self.number // across))
        left, top = floor(columns - all_wide) / 2, floor((2 * rows - all_high) / 2)
        for hand in range(self.number):
            row, column = divmod(hand, across)
            x, y = left + column * (wide + _apart(finger)), top + row * (high + 1)
            _paint(sketch, x, y, finger, thumb_left=bool(hand % 2))
        return sketch

    def _finger(self, across: int, columns: int, rows: int) -> float:
        """How wide fingers can be with so many hands a row, in half cells; half a cell is the least."""
        finger = 0.5
        while True:
            wide, high = _block(finger + 0.5, across, -(-self.number // across))
            if wide > columns - 1 or high > rows * CELL_HEIGHT - 1:
                return finger
            finger += 0.5

    def words(self) -> str:
        """What they are, not how many."""
        return "a handprint" if self.number == 1 else "handprints in rows"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        return f"handprints: {self.number}"


def _size(finger: float) -> tuple[float, float]:
    """A hand's width and height with fingers so wide."""
    wide = 5 * finger + 4 * _gap(finger)
    return wide, max(6.0, round(wide * 1.25))


def _gap(finger: float) -> float:
    return max(0.5, round(2 * finger / 3) / 2)


def _apart(finger: float) -> float:
    """The ground between two hands side by side."""
    return max(1.0, round(finger))


def _block(finger: float, across: int, down: int) -> tuple[float, float]:
    """Width and height of all the hands."""
    wide, high = _size(finger)
    return across * (wide + _apart(finger)) - _apart(finger), down * (high + 1) - 1


def _paint(sketch: Sketch, x: float, y: float, finger: float, *, thumb_left: bool) -> None:
    """One hand in its box at (x, y): a palm, four fingers standing up, a thumb at the side."""
    wide, high = _size(finger)
    pitch, half = finger + _gap(finger), finger / 2
    round_ends = finger > 1

    def bar(at: float, top: float, to: float, bottom: float) -> Shape:
        # From its tip down to its root, mirrored for the other hand.
        x0, x1 = (x + u if thumb_left else x + wide - u for u in (at, to))
        cap = half if round_ends else 0.0
        return stroke(x0, y + top + cap, x1, y + bottom, finger, round_ends=round_ends)

    palm = round(high * 0.55)
    fingers = [
        bar(n * pitch + half, round(high * (1 - reach)), n * pitch + half, palm + 1)
        for n, reach in enumerate(_REACH, start=1)
    ]
    edge = x + (pitch if thumb_left else 0.0)
    root = round(high * 0.8)
    thumb = bar(half, round(high * 0.4), half if finger < 1.5 else pitch * 0.9, root)
    parts = [*fingers, thumb, _palm(edge, y + palm, wide - pitch, high - palm, half if round_ends else 0.0)]
    if finger < 1.5:
        # A thumb that stands upright hangs on the palm by a bridge.
        parts.append(box(x + (0 if thumb_left else wide - pitch - half), y + root - 1, pitch + half, 1))
    sketch.paint(joined(*parts), Ink.FIRST)


def _palm(left: float, top: float, wide: float, high: float, corner: float) -> Shape:
    """A palm: a box, its two lower corners rounded."""
    if not corner:
        return box(left, top, wide, high)
    heel = top + high - corner
    return joined(
        box(left, top, wide, high - corner),
        stroke(left + corner, heel, left + wide - corner, heel, 2 * corner),
    )


PICTURE = Hands
