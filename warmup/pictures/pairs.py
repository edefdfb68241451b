"""Things laid two and two, or the same things in plain rows before they are paired."""

from dataclasses import dataclass
from typing import NamedTuple

from warmup.pictures._told import counted
from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import Shape, box, disc, joined, polygon, stroke
from warmup.pictures.sketch import Sketch

_A_ROW = 10
_LEAST_THICK = 4


class _Lay(NamedTuple):
    """How things lie, in pixels, two to a cell's width and two to its height."""

    thick: int
    high: int
    between: int
    beside: int


@dataclass(frozen=True, eq=False, repr=False)
class Pairs(Picture):
    """``pairs`` pairs of ``what``, a wide gap between pairs, and ``left_over`` single ones after them.

    Five pairs a row, so that a full row holds ten; up to five may lie in shorter rows, where that leaves
    them larger. With ``paired`` False the same things stand evenly
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

    def _rows(self) -> tuple[int, ...]:
        """How many things may lie in a row, from the most: where they are under ten, also fewer pairs."""
        if not self.paired:
            return _A_ROW, _A_ROW // 2
        return (_A_ROW, 6, 4) if self.pairs + self.left_over < _A_ROW // 2 + 1 else (_A_ROW,)

    def _lay(self, thick: int) -> _Lay:
        match self.what:
            case "socks":
                high = max(3, round(thick * 0.8))
            case "shoes":
                high = max(2, round(thick * 0.36))
            case _:
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

    def sketch(self, columns: int, rows: int) -> Sketch:
        """The things as large as the pane allows, the block of them centered."""
        sketch = Sketch(columns, rows)
        thick, across = max((self._thickest(across, columns, rows), across) for across in self._rows())
        lay = self._lay(thick)
        wide, high = self._size(lay, across)
        left, top = (2 * columns - wide) // 2, (2 * rows - high) // 2
        for row, place in self._places(across):
            shape = _shape(self.what, (left + _left(place, lay)) / 2, top + _top(row, lay), lay)
            sketch.paint(shape, Ink.FIRST)
        return sketch

    def _thickest(self, across: int, columns: int, rows: int) -> int:
        """How thick things can be with so many a row, from the least up; 0 where not even that fits."""
        fits = 0
        # Rounds need an even number of pixels; steps of two keep every thing's edges alike.
        for thick in range(_LEAST_THICK, 61, 2):
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


def _left(place: int, lay: _Lay) -> int:
    return place * lay.thick + (place + 1) // 2 * lay.beside + place // 2 * lay.between


def _top(row: int, lay: _Lay) -> int:
    return row * (lay.high + max(1, lay.high // 3))


def _shape(what: str, left: float, top: float, lay: _Lay) -> Shape:
    """One thing in its box; ``left`` and ``top`` in cell widths."""
    wide, high = lay.thick / 2, float(lay.high)
    match what:
        case "socks":
            leg, foot = (lay.thick + 1) // 2 / 2, max(1, round(high * 0.38))
            toe = foot / 2 if foot > 1 else 0.0
            # Round at the toe and the heel, as a sock lies.
            sole = box(left + toe, top + high - foot, wide - 2 * toe, foot)
            if not toe:
                return joined(box(left, top, leg, high), sole)
            round_ends = stroke(left + toe, top + high - toe, left + wide - toe, top + high - toe, foot)
            return joined(box(left, top, leg, high - toe), sole, round_ends)
        case "shoes":
            return polygon((left + x * wide, top + y * high) for x, y in _SHOE)
        case _:
            return disc(left + wide / 2, top + high / 2, wide / 2)


_SHOE = (
    (0.0, 0.0), (0.1, 0.12), (0.3, 0.12), (0.42, 0.0), (0.58, 0.28), (0.8, 0.42), (0.94, 0.55), (1.0, 0.72),
    (1.0, 1.0), (0.48, 1.0), (0.42, 0.86), (0.3, 0.86), (0.3, 1.0), (0.0, 1.0),
)  # fmt: skip
"""A shoe seen from its side, its toe to the right: collar, tongue, toe, sole and heel, in its box."""

PICTURE = Pairs
