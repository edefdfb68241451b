"""One flat shape, turned any way."""

from dataclasses import dataclass

from warmup.pictures._told import turn_told
from warmup.pictures.base import Picture
from warmup.pictures.figures import paint_figure
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class FlatShape(Picture):
    """A flat shape by its name in ``figures``, turned clockwise by ``turn`` degrees.

    It is solid; ``gap`` leaves only its outline, with a piece cut out of it.
    """

    name: str
    turn: int = 0
    gap: bool = False
    kind: str = "flat-shape"

    def least(self) -> tuple[int, int]:
        """Ten units a side are enough to see corners."""
        return 12, 6

    def sketch(self, columns: int, rows: int) -> Sketch:
        """As large as the pane allows, with a rim left bare."""
        sketch = Sketch(columns, rows)
        rim = 1.0 if rows < 12 else 2.0
        room = (rim, rim, columns - 2 * rim, 2 * rows - 2 * rim)
        paint_figure(sketch, self.name, self.turn, room, gap=self.gap)
        return sketch

    def words(self) -> str:
        """That there is a shape: its name may be the question."""
        return "one flat shape"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        form = "the outline of a shape, a piece cut out of it" if self.gap else "a solid shape"
        return f"{form}: {self.name}{turn_told(self.turn)}"


PICTURE = FlatShape
