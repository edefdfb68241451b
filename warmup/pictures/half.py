"""Half of a figure on graph paper, up to the line it is to be flipped over."""

from dataclasses import dataclass

from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import box
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class Half(Picture):
    """Squares filled on one side of a fold line; the other side is bare graph paper.

    ``filled`` are (along, away) places: along the line from its top (or its left end), away from it
    from 1, the square that touches it. There are ``along`` by ``away`` squares on each side. The line
    stands upright and the filled side is the left, or, if ``lying``, it lies flat with the filled
    side above; ``other`` fills the right side, or the one below.
    """

    filled: tuple[tuple[int, int], ...]
    along: int = 4
    away: int = 3
    lying: bool = False
    other: bool = False
    kind: str = "half"

    def _grid(self) -> tuple[int, int]:
        wide, high = 2 * self.away, self.along
        return (high, wide) if self.lying else (wide, high)

    def least(self) -> tuple[int, int]:
        """Two cells by one for each square, and the lines."""
        wide, high = self._grid()
        return 2 * wide + 3, high + 1

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Square places in two shades, the fold line between the halves."""
        sketch = Sketch(columns, rows)
        wide, high = self._grid()
        # A square is `size` rows high and twice as many cells wide; the fold has a strip of its own.
        size = max(1, min((columns - 2) // (2 * wide), (rows - 1) // high))
        left, top = (columns - 2 * size * wide - 2) // 2, (rows - size * high - 1) // 2
        for row in range(high):
            for column in range(wide):
                x, y = left + 2 * size * column, top + size * row
                if self.lying:
                    y += row >= self.away
                else:
                    x += 2 * (column >= self.away)
                ink = Ink.TILE if (row + column) % 2 else Ink.TILE_ALT
                sketch.tile(x, y, 2 * size, size, ink)
                if self._is_filled(row, column):
                    sketch.tile(x, y, 2 * size, size, Ink.FIRST)
        if self.lying:
            middle = top + size * self.away
            sketch.tile(left, middle, 2 * size * wide, 1, Ink.INK)
        else:
            middle = left + 2 * size * self.away
            sketch.paint(box(middle + 0.5, 2 * top, 1, 2 * size * high), Ink.INK)
        return sketch

    def _is_filled(self, row: int, column: int) -> bool:
        along, across = (column, row) if self.lying else (row, column)
        away = across - self.away + 1 if self.other else self.away - across
        return (along, away) in self.filled

    def words(self) -> str:
        """What lies where is for the eye: only that half is done."""
        return "graph paper with a fold line and one half filled in"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        side = (("above", "below") if self.lying else ("left of", "right of"))[self.other]
        line = "a fold line across" if self.lying else "a fold line down the middle"
        rows = (
            f"{'column' if self.lying else 'row'} {n + 1} squares {', '.join(map(str, away)) or 'none'}"
            for n in range(self.along)
            for away in [sorted(away for along, away in self.filled if along == n)]
        )
        paper = f"graph paper, {self.along} by {self.away} squares each side of {line}"
        return f"{paper}; filled {side} it, counted from it: {'; '.join(rows)}"


PICTURE = Half
