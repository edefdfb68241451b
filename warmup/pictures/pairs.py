"""Things laid two and two, or the same things in plain rows before they are paired."""

from typing import NamedTuple

from warmup.pictures._told import counted
from warmup.pictures.canvas import Canvas, Drawing, Ink, Shape, box, disc

_A_ROW = 10
_LEAST_THICK = 4


class _Lay(NamedTuple):
    """How things lie, in pixels, two to a cell's width and two to its height."""

    thick: int
    high: int
    between: int
    beside: int


class Pairs(NamedTuple):
    """``pairs`` pairs of ``what``, a wide gap between pairs, and ``left_over`` single ones after them.

    Five pairs a row, so that a full row holds ten. With ``paired`` False the same things stand evenly
    spaced, ten a row or, where that leaves them larger, five. ``what`` may be "socks" or "shoes";
    anything else is drawn as round counters. All are solid, since they are there to be counted. At
    least one thing, at most thirty.
    """

    pairs: int
    left_over: int = 0
    what: str = "socks"
    paired: bool = True
    kind: str = "pairs"

    def _places(self, across: int = _A_ROW) -> list[tuple[int, int]]:
        """The row of each thing and its place there; a single one has the place of a pair's first."""
        whole = 2 * self.pairs
        singles = range(self.pairs, self.pairs + self.left_over)
        count = [*range(whole), *(2 * n for n in singles)] if self.paired else range(whole + self.left_over)
        return [divmod(n, across) for n in count]

    def _lay(self, thick: int) -> _Lay:
        high = max(3, round(thick * 0.8)) if self.what == "socks" else thick
        if self.what not in ("socks", "shoes"):
            high = max(2, round(thick / 2))
        even = max(1, thick // 3)
        return _Lay(thick, high, *((max(3, thick // 2), max(1, thick // 8)) if self.paired else (even, even)))

    def _size(self, lay: _Lay, across: int = _A_ROW) -> tuple[int, int]:
        """Pixels wide and high of the whole block."""
        places = self._places(across)
        return max(_left(place, lay) for _, place in places) + lay.thick, _top(places[-1][0], lay) + lay.high

    def least(self) -> tuple[int, int]:
        """Things four pixels wide."""
        wide, high = self._size(self._lay(_LEAST_THICK))
        return -(-wide // 2), -(-high // 2)

    def draw(self, columns: int, rows: int) -> Drawing:
        """The things as large as the pane allows, the block of them centered."""
        canvas = Canvas(columns, rows)
        thick, across = max(
            (self._thickest(across, columns, rows), across)
            for across in ((_A_ROW,) if self.paired else (_A_ROW, _A_ROW // 2))
        )
        lay = self._lay(thick)
        wide, high = self._size(lay, across)
        left, top = (2 * columns - wide) // 2, (2 * rows - high) // 2
        for row, place in self._places(across):
            for shape in _shapes(self.what, (left + _left(place, lay)) / 2, top + _top(row, lay), lay):
                canvas.paint(shape, Ink.FIRST)
        return canvas.drawing()

    def _thickest(self, across: int, columns: int, rows: int) -> int:
        """How thick things can be with so many a row, from the least up; 0 where not even that fits."""
        fits = 0
        # Rounds need an even number of pixels; steps of two keep every thing's edges alike.
        for thick in range(_LEAST_THICK, 29, 2):
            wide, high = self._size(self._lay(thick), across)
            if wide <= 2 * columns and high <= 2 * rows:
                fits = thick
        return fits

    def words(self) -> str:
        """What they are and how they lie, not how many."""
        return f"{self.what} laid out in pairs" if self.paired else f"{self.what} laid out in a row"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        if self.paired:
            pairs = counted(self.pairs, "pair")
            return f"{self.what}: {pairs}, then {self.left_over} single, a gap after each pair"
        return f"{self.what} evenly apart: {2 * self.pairs + self.left_over}"

    def shows(self) -> tuple[str, ...]:
        """No numeral stands on it."""
        return ()

    def marked(self) -> tuple[str, ...]:
        """Nothing is marked out."""
        return ()


def _left(place: int, lay: _Lay) -> int:
    return place * lay.thick + (place + 1) // 2 * lay.beside + place // 2 * lay.between


def _top(row: int, lay: _Lay) -> int:
    return row * (lay.high + max(1, lay.high // 3))


def _shapes(what: str, left: float, top: float, lay: _Lay) -> tuple[Shape, ...]:
    """One thing in its box; ``left`` and ``top`` in cell widths."""
    wide, high = lay.thick / 2, lay.high
    match what:
        case "socks":
            leg, foot = (lay.thick + 1) // 2 / 2, max(1, round(high * 0.38))
            toe = foot / 2 if foot > 2 else 0.0
            sole = box(left, top + high - foot, wide - toe, foot)
            # Round above, flat below, as a sock lies; a tip round both ways looks like a nub when small.
            tip = disc(left + wide - toe, top + high - toe, toe), box(left, top + high - toe, wide, toe)
            return box(left, top, leg, high), sole, *(tip if toe else ())
        case "shoes":
            # A print from above: a broad front, a narrower waist, a heel.
            front, heel = wide / 2, max(0.5, lay.thick * 5 // 12 / 2)
            middle = left + front
            waist = max(2, lay.thick * 2 // 3 // 2 * 2) / 2
            return (
                disc(middle, top + front, front),
                box(middle - waist / 2, top + front, waist, high - front - heel),
                disc(middle, top + high - heel, heel),
            )
        case _:
            return (disc(left + wide / 2, top + high / 2, wide / 2),)


PICTURE = Pairs
