"""Base-ten blocks: cubes, rods of ten, flats of a hundred."""

from dataclasses import dataclass
from typing import ClassVar

from warmup.pictures.canvas import Canvas, Drawing, Ink, box


@dataclass(frozen=True, slots=True)
class BaseTen:
    """``hundreds`` flats, ``tens`` rods and ``ones`` cubes, from left to right.

    Cubes stand in columns of five. Every rod and flat shows the cubes it is made of.
    """

    hundreds: int
    tens: int
    ones: int

    kind: ClassVar[str] = "base-ten"

    def _cubes(self) -> int:
        """How many cubes wide it all is, the gaps between pieces counted as cubes too."""
        parts = (11 * self.hundreds, 2 * self.tens, 2 * -(-self.ones // 5))
        return max(1, sum(parts) - 1 + sum(part > 0 for part in parts) - 1)

    def least(self) -> tuple[int, int]:
        """Cubes one cell wide and half a row high."""
        return self._cubes(), 5

    def draw(self, columns: int, rows: int) -> Drawing:
        """All in one line, the cubes as large as fit."""
        canvas = Canvas(columns, rows)
        cube = max(1, min(columns // self._cubes(), 2 * rows // 10))
        left, top = (columns - self._cubes() * cube) // 2, (2 * rows - 10 * cube) // 2
        for _ in range(self.hundreds):
            _block(canvas, left, top, cube, 10, 10)
            left += 11 * cube
        left += cube * (self.hundreds > 0)
        for _ in range(self.tens):
            _block(canvas, left, top, cube, 1, 10)
            left += 2 * cube
        left += cube * (self.tens > 0)
        for number in range(self.ones):
            x, y = left + number // 5 * 2 * cube, top + (8 - number % 5 * 2) * cube + cube
            _block(canvas, x, y, cube, 1, 1)
        return canvas.drawing()

    def words(self) -> str:
        """Which kinds of block there are, not how many."""
        kinds = [
            name
            for name, count in (("flats", self.hundreds), ("rods", self.tens), ("cubes", self.ones))
            if count
        ]
        return "base-ten blocks: " + ", ".join(kinds) if kinds else "an empty table"

    def shows(self) -> tuple[str, ...]:
        """No numeral stands on it."""
        return ()

    def marked(self) -> tuple[str, ...]:
        """Nothing is marked out."""
        return ()


def _block(canvas: Canvas, left: int, top: int, cube: int, wide: int, high: int) -> None:
    """A piece of ``wide`` by ``high`` cubes, told apart by tone where small, by lines where there is room."""
    for across in range(wide):
        for down in range(high):
            x, y = left + across * cube, top + down * cube
            if cube == 1:
                canvas.paint(
                    box(x, y, 1, 1), Ink.SOFT if (across + down) % 2 and wide * high > 1 else Ink.FIRST
                )
            else:
                canvas.paint(box(x, y, cube, cube), Ink.SOFT)
                canvas.paint(box(x, y, cube - 0.5 * (1 + (cube > 3)), cube - 1), Ink.FIRST)


PICTURE = BaseTen
