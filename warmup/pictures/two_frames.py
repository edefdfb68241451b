"""Two ten frames: a full one, and some more."""

from dataclasses import dataclass

from warmup.pictures.base import Picture
from warmup.pictures.sketch import Sketch
from warmup.pictures.ten_frame import lay


@dataclass(frozen=True, eq=False, repr=False)
class TwoFrames(Picture):
    """Two ten frames of ``first`` and ``second`` solid counters (0 to 10 each), upper rows of five first."""

    first: int
    second: int
    kind: str = "two-frames"

    def least(self) -> tuple[int, int]:
        """Places of 4 by 2 cells, one frame under the other."""
        return 21, 9

    def fits(self, columns: int, rows: int) -> bool:
        """In a low pane side by side."""
        return super().fits(columns, rows) or (columns >= 44 and rows >= 5)

    def sketch(self, columns: int, rows: int) -> Sketch:
        """One under the other or side by side, whichever gives the larger places."""
        sketch = Sketch(columns, rows)
        stacked = min((columns - 1) // 5, (2 * rows - 2) // 4)
        beside = min((columns - 4) // 10, (2 * rows - 1) // 2)
        side = max(4, stacked, beside)
        wide, high = 5 * side + 1, 2 * side + 1
        if beside >= max(4, stacked):
            left, top = (columns - 2 * wide - 2) // 2, (2 * rows - high) // 2
            lay(sketch, left, top, side, self.first)
            lay(sketch, left + wide + 2, top, side, self.second)
        else:
            gap = max(0, min(3, 2 * rows - 2 * high))
            left, top = (columns - wide) // 2, (2 * rows - 2 * high - gap) // 2
            lay(sketch, left, top, side, self.first)
            lay(sketch, left, top + high + gap, side, self.second)
        return sketch

    def words(self) -> str:
        """What they are, not how many counters lie in them."""
        return "ten frames with counters in them"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        return f"two ten frames, filled from their upper rows on: {self.first}, {self.second}"


PICTURE = TwoFrames
