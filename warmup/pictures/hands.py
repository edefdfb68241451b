"""Handprints, five fingers each."""

from typing import NamedTuple

from warmup.pictures.canvas import Canvas, Drawing, Ink, box, disc

_MOST_A_ROW = 5
# How long each finger is, thumb left out, from the thumb's side, as a share of the hand's height.
_REACH = (0.92, 1.0, 0.94, 0.76)


class Hands(NamedTuple):
    """``number`` solid handprints, from 1 to 10, at most five a row: left hand, right hand, and so on.

    Every hand has four fingers and a thumb with bare ground between them, so that the fingers can be
    counted one by one.
    """

    number: int
    kind: str = "hands"

    def least(self) -> tuple[int, int]:
        """A finger one pixel wide, with as many hands a row as there can be."""
        across = min(self.number, _MOST_A_ROW)
        wide, high = _block(1, across, -(-self.number // across))
        return wide, -(-high // 2)

    def draw(self, columns: int, rows: int) -> Drawing:
        """The hands as large as the pane allows."""
        canvas = Canvas(columns, rows)
        finger, across = max(
            (finger, across)
            for across in range(1, min(self.number, _MOST_A_ROW) + 1)
            for finger in (1, 2, 4, 6, 8)  # rounded tips need an even number of pixels
            if finger == 1 or _fits(finger, across, -(-self.number // across), canvas)
        )
        down = -(-self.number // across)
        wide, high, apart = _size(finger)
        all_wide, all_high = _block(finger, across, down)
        left, top = (columns - all_wide) // 2, (2 * rows - all_high) // 2
        for hand in range(self.number):
            row, column = divmod(hand, across)
            x, y = left + column * (wide + apart), top + row * (high + 1)
            _paint(canvas, x, y, finger, thumb_left=bool(hand % 2))
        return canvas.drawing()

    def words(self) -> str:
        """What they are, not how many."""
        return "a handprint" if self.number == 1 else "handprints in rows"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        return f"handprints: {self.number}"

    def shows(self) -> tuple[str, ...]:
        """No numeral stands on it."""
        return ()

    def marked(self) -> tuple[str, ...]:
        """Nothing is marked out."""
        return ()


def _size(finger: int) -> tuple[int, int, int]:
    """A hand's box, whole cells wide and pixels high, and the cells between two hands.

    ``finger`` is a finger's width in pixels, two pixels to a cell.
    """
    pixels = 5 * finger + 4 * _gap(finger)
    wide = -(-pixels // 2)
    return wide, max(6, round(wide * 1.25)), max(1, finger // 2)


def _gap(finger: int) -> int:
    return max(1, round(finger / 3))


def _block(finger: int, across: int, down: int) -> tuple[int, int]:
    """All the hands: cells wide, pixels high."""
    wide, high, apart = _size(finger)
    return across * (wide + apart) - apart, down * (high + 1) - 1


def _fits(finger: int, across: int, down: int, canvas: Canvas) -> bool:
    wide, high = _block(finger, across, down)
    return wide <= canvas.columns and high <= 2 * canvas.rows


def _paint(canvas: Canvas, x: float, y: float, finger: int, *, thumb_left: bool) -> None:
    """One hand in its box at (x, y): a palm, four fingers standing up, a thumb at the side."""
    high = _size(finger)[1]
    thick, gap = finger / 2, _gap(finger) / 2
    span = 5 * thick + 4 * gap

    def bar(at: float, top: float, bottom: float) -> None:
        start = x + (at if thumb_left else span - at - thick)
        cap = thick / 2 if finger > 2 else 0.0
        if cap:
            canvas.paint(disc(start + cap, top + cap, cap), Ink.FIRST)
        canvas.paint(box(start, top + cap, thick, bottom - top - cap), Ink.FIRST)

    tip, root = y + round(high * 0.4), y + round(high * 0.82)
    palm = max(y + round(high * 0.55), tip + 1)
    for n, reach in enumerate(_REACH, start=1):
        bar(n * (thick + gap), y + round(high * (1 - reach)), palm)
    at = thick + gap
    start = x + (at if thumb_left else 0.0)
    canvas.paint(box(start, palm, span - at, y + high - palm), Ink.FIRST)
    bar(0.0, tip, root)
    bridge = x + (0.0 if thumb_left else span - at - thick / 2)
    canvas.paint(box(bridge, root - max(1, finger // 2), at + thick / 2, max(1, finger // 2)), Ink.FIRST)


PICTURE = Hands
