"""Straws in banded bundles of ten, and loose ones."""

from dataclasses import dataclass

from warmup.pictures._told import counted
from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import box
from warmup.pictures.sketch import Sketch

_PITCHES = (8.0, 6.0, 5.0, 4.0, 3.0, 2.5, 2.0, 1.5, 1.0, 0.5)
"""From one straw of a bundle to the next, in cell widths; at the last no gap is left between them."""


@dataclass(frozen=True, eq=False, repr=False)
class Bundles(Picture):
    """``tens`` bundles of ten, each held by a band, and ``ones`` loose; ``what`` names them for people.

    Five bundles, or five loose ones, are set a little apart from those after them.
    """

    tens: int
    ones: int
    what: str = "straws"
    kind: str = "bundles"

    def _lines(self, across: int) -> int:
        return max(1, -(-self.tens // across) + (self.ones > 0))

    def least(self) -> tuple[int, int]:
        """Straws a pixel broad and two rows high, five bundles a line, the loose ones below."""
        lines = self._lines(5)
        return max(29, round(_loose_width(self.ones, 0.5))), 3 * lines - 1

    def _size(self, across: int, columns: int, rows: int) -> tuple[float, int]:
        """The widest pitch and the height, in whole rows, with so many bundles a line; (0, 0): none fits."""
        lines = self._lines(across)
        for pitch in _PITCHES:
            high = min((rows - lines + 1) // lines, 5 + round(5 * pitch))
            wide = max(_bundles_width(min(self.tens, across), pitch), _loose_width(self.ones, pitch))
            if wide <= columns and high >= 2:
                return pitch, high
        return 0.0, 0

    def _merit(self, across: int, columns: int, rows: int) -> tuple[bool, float, int]:
        """What makes so many bundles a line the better choice: straws above and below the band, then size."""
        pitch, high = self._size(across, columns, rows)
        return high >= 3, pitch, high

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Bundles five or ten to a line, the loose ones in a line of their own, straws as broad as fit."""
        sketch = Sketch(columns, rows)
        across = max((10, 5), key=lambda each: self._merit(each, columns, rows))
        pitch, high = self._size(across, columns, rows)
        lines = self._lines(across)
        row = (rows - lines * (high + 1) + 1) // 2
        for first in range(0, self.tens, across):
            here = min(across, self.tens - first)
            # Every line begins where the fullest does, so that bundles stand under bundles.
            left = round(columns - _bundles_width(min(self.tens, across), pitch)) / 2
            for number in range(here):
                _bundle(sketch, left + _bundles_width(number, pitch) + _gap(number, pitch), row, pitch, high)
            row += high + 1
        left = round(columns - _loose_width(self.ones, pitch)) / 2
        for number in range(self.ones):
            x = left + number * _loose_pitch(pitch) + (number > 4) * _loose_pitch(pitch)
            sketch.paint(box(x, 2 * row, _breadth(pitch), 2 * high), Ink.FIRST)
        return sketch

    def words(self) -> str:
        """What lies there, not how many."""
        if not self.tens:
            return f"loose {self.what}"
        return f"{self.what} in banded bundles of ten" + (" and loose ones" if self.ones else "")

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        return f"{self.what}: {counted(self.tens, 'banded bundle')} of ten, {self.ones} loose"


def _breadth(pitch: float) -> float:
    """A straw's own width: a quarter of the pitch or more is bare, except where there is no room."""
    return max(0.5, round(1.5 * pitch) / 2 if pitch > 1 else pitch - 0.5)


def _gap(number: int, pitch: float) -> float:
    """What lies between bundle ``number``, counted from 0, and the one before it."""
    return 0.0 if number == 0 else max(1.0, 2 * pitch) * (2 if number == 5 else 1)


def _bundles_width(count: int, pitch: float) -> float:
    """A line of bundles, whole: their straws and what lies between."""
    return sum(10 * pitch + _gap(number, pitch) for number in range(count))


def _loose_pitch(pitch: float) -> float:
    return max(2.0, 3 * pitch)


def _loose_width(count: int, pitch: float) -> float:
    if not count:
        return 0.0
    return (count - 1 + (count > 5)) * _loose_pitch(pitch) + _breadth(pitch)


def _bundle(sketch: Sketch, left: float, row: int, pitch: float, high: int) -> None:
    """Ten straws and the band round them; two tones take turns where no gap keeps straws apart."""
    for number in range(10):
        ink = Ink.COPPER if number % 2 and pitch == _PITCHES[-1] else Ink.FIRST
        sketch.paint(box(left + number * pitch, 2 * row, _breadth(pitch), 2 * high), ink)
    # The band fills a whole row of cells: a cell has no room for a third ink.
    sketch.paint(box(left, 2 * (row + high // 2), 9 * pitch + _breadth(pitch), 2), Ink.INK)


PICTURE = Bundles
