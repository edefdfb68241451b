"""Two equal pieces: apart, ready to be pushed together, or joined into one shape with a cut in it."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import sqrt
from types import MappingProxyType

from warmup.pictures._told import turn_told
from warmup.pictures.base import Picture
from warmup.pictures.figures import placed, points_of, turned
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import Points, polygon
from warmup.pictures.sketch import Sketch

_HALF_HEXAGON: Points = ((-1, 0), (-0.5, -sqrt(3) / 2), (0.5, -sqrt(3) / 2), (1, 0))

PIECES: Mapping[tuple[str, str], Points] = MappingProxyType(
    {
        ("square", "triangle"): ((-1, 0), (0, -1), (1, 0)),
        ("square", "rectangle"): ((-1, 0), (-1, -1), (1, -1), (1, 0)),
        ("rectangle", "square"): ((-0.5, 0), (-0.5, -1), (0.5, -1), (0.5, 0)),
        ("rectangle", "triangle"): ((-1, 0), (0.6, -0.8), (1, 0)),
        ("rectangle", "rectangle"): ((-0.8, 0), (-0.8, -0.5), (0.8, -0.5), (0.8, 0)),
        ("triangle", "triangle"): ((0, 0), (0, -1), (1.6, 0)),
        ("hexagon", "half hexagon"): _HALF_HEXAGON,
        ("circle", "half circle"): points_of("half circle"),
    }
)
"""One piece of each whole, the side that will meet the other through (0, 0)."""


def two_pieces(whole: str, part: str) -> tuple[Points, Points]:
    """The two pieces that make ``whole``, touching. KeyError for a pair not in PIECES.

    A big triangle is two right triangles, one the other's mirror image; elsewhere a half turn brings
    one piece onto the other.
    """
    upper = PIECES[whole, part]
    if whole == "triangle":
        return upper, tuple((-x, y) for x, y in upper)
    return upper, tuple((-x, -y) for x, y in upper)


@dataclass(frozen=True, eq=False, repr=False)
class JoinedShapes(Picture):
    """``whole`` made of two ``part`` pieces, turned clockwise by ``turn`` degrees.

    ``apart`` draws the pieces with a gap between the sides that will meet; otherwise they touch and a
    bare line shows the cut.
    """

    whole: str
    part: str
    apart: bool = False
    turn: int = 0
    kind: str = "joined-shapes"

    def least(self) -> tuple[int, int]:
        """Room for both pieces and the gap."""
        return 18, 7

    def sketch(self, columns: int, rows: int) -> Sketch:
        """As large as the pane allows; the second piece in its own ink."""
        sketch = Sketch(columns, rows)
        first, second = two_pieces(self.whole, self.part)
        way = (1.0, 0.0) if self.whole == "triangle" else (0.0, -1.0)
        wide = min(columns, 2 * rows)
        gap = 0.3 if self.apart else 0.7 / (wide / 3)
        shifted = (
            tuple((x + gap * way[0], y + gap * way[1]) for x, y in first),
            tuple((x - gap * way[0], y - gap * way[1]) for x, y in second),
        )
        pieces = turned(shifted[0] + shifted[1], self.turn)
        fitted = placed(pieces, (columns / 2, float(rows)), columns - 2, 2 * rows - 2)
        cut = len(first)
        sketch.paint(polygon(fitted[:cut]), Ink.FIRST)
        sketch.paint(polygon(fitted[cut:]), Ink.SECOND)
        return sketch

    def words(self) -> str:
        """Only that there are two pieces: what they are or make may be the question."""
        return "two pieces with a gap between them" if self.apart else "one shape, cut in two"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        how = "side by side, ready to make" if self.apart else "joined into"
        return f"two pieces, {self.part} and {self.part}, {how} one {self.whole}{turn_told(self.turn)}"


PICTURE = JoinedShapes
