"""Two trays, one above the other, to see which holds more."""

from dataclasses import dataclass
from typing import Literal

from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import frame, ring
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class TwoSets(Picture):
    """``top`` and ``bottom`` rings (0 to 10) in two trays; what is compared is hollow.

    The rows keep the same pace and start together, so that a ring stands under its match. With
    ``spread`` that tray's rings stand far apart and the other's close together, which looks like more.
    """

    top: int
    bottom: int
    spread: Literal["", "top", "bottom"] = ""
    kind: str = "two-sets"

    def least(self) -> tuple[int, int]:
        """Rings three cells wide, half a cell between, in trays of four rows."""
        return (7 * max(self.top, self.bottom, 4) + 1) // 2 + 3, 8

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Trays as wide as the pane, rings as large as fit."""
        sketch = Sketch(columns, rows)
        room = columns - 3
        wide = self._ring(room, rows)
        # A ring's middle lies where its form is the same above and below it.
        high = int(wide) + (7 if wide + 7 <= rows else 5)
        first = rows - high
        for at, count, name in ((first, self.top, "top"), (first + high, self.bottom, "bottom")):
            pace = self._pace(name, count, wide, room)
            sketch.paint(frame(0, at, columns, high - 1, 1), Ink.SOFT)
            for place in range(count):
                x, y = 1.5 + wide / 2 + place * pace, at + (high - 1) / 2
                sketch.paint(ring(x, y, wide / 2, max(1.0, wide * 0.18)), Ink.FIRST)
        return sketch

    def _ring(self, room: int, rows: int) -> float:
        """A ring's width: whole, to stand on pixels across and down; small where the paces differ."""
        most = max(self.top, self.bottom, 4)
        share = 0.7 if self.spread else 1.0
        return max(3.0, float(min(int(room * share / most - 0.5), rows - 5)))

    def _pace(self, name: str, count: int, wide: float, room: int) -> float:
        """From one ring of this tray to the next, in half cells."""
        if not self.spread:
            return int(2 * min(room / max(self.top, self.bottom, 4), 1.5 * wide)) / 2
        if name != self.spread or count < 2:
            return wide + 0.5
        return int(2 * (room - wide) / (count - 1)) / 2

    def words(self) -> str:
        """Trays with rings, not how many."""
        if not self.bottom:
            return "a tray of rings, and an empty tray below it"
        return "a tray of rings, and another below it"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        spread = f"; the {self.spread} one spread far apart" if self.spread else ""
        return f"rings in two rows: {self.top} on top, {self.bottom} below{spread}"


PICTURE = TwoSets
