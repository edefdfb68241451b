"""One solid shape: a simple drawing with its hidden edges left out and its faces told apart by shade."""

from dataclasses import dataclass
from math import sqrt

from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink, Shade, between
from warmup.pictures.shapes import Point, Points, box, disc, ellipse, extent, joined, polygon, stroke
from warmup.pictures.sketch import Sketch

SOLIDS = ("sphere", "cube", "box", "cylinder", "cone")
"""What can be drawn here."""

_DEPTH = (0.36, -0.36)
"""Where a unit of depth goes on the page: to the right and up (a cabinet drawing)."""

_FACES = {
    "front": ((0.0, between(Ink.FIRST, Ink.LIGHT, 0.15)), (1.0, between(Ink.FIRST, Ink.SHADOW, 0.25))),
    "top": ((0.0, Ink.LIGHT), (1.0, between(Ink.LIGHT, Ink.FIRST, 0.4))),
    "side": ((0.0, between(Ink.SHADOW, Ink.FIRST, 0.2)), (1.0, Ink.SHADOW)),
}
_BALL = (
    (0.0, Ink.LIGHT),
    (0.16, between(Ink.LIGHT, Ink.FIRST, 0.45)),
    (0.45, Ink.FIRST),
    (0.72, between(Ink.FIRST, Ink.SHADOW, 0.35)),
    (1.0, Ink.SHADOW),
)
_WALL = (
    (0.0, between(Ink.FIRST, Ink.SHADOW, 0.3)),
    (0.28, between(Ink.FIRST, Ink.LIGHT, 0.45)),
    (0.55, Ink.FIRST),
    (1.0, Ink.SHADOW),
)
_LID = ((0.0, Ink.LIGHT), (1.0, between(Ink.LIGHT, Ink.FIRST, 0.35)))
"""How light from the upper left falls on flat faces, on a ball, across a round wall, on a round end."""

_SIZES = {
    ("cube", True): (1.0, 1.0, 1.0),
    ("cube", False): (1.0, 1.0, 1.0),
    ("box", True): (0.75, 1.5, 0.8),
    ("box", False): (1.8, 0.8, 0.9),
}


def sizes(name: str, upright: bool = True) -> tuple[float, float, float]:
    """How wide, high and deep the cube or the box is, in one unit."""
    return _SIZES[name, upright]


def corners(name: str, upright: bool = True) -> dict[tuple[int, int, int], Point]:
    """The eight corners of the cube or the box on the page: (right, down, back), each 0 or 1, to (x, y)."""
    wide, high, deep = _SIZES[name, upright]
    return {
        (i, j, k): (i * wide + k * deep * _DEPTH[0], j * high + k * deep * _DEPTH[1])
        for i in (0, 1)
        for j in (0, 1)
        for k in (0, 1)
    }


def visible_faces(name: str, upright: bool = True) -> dict[str, Points]:
    """The three faces of the cube or the box that are seen: the front, the top and the right side."""
    at = corners(name, upright)
    return {
        "front": (at[0, 0, 0], at[1, 0, 0], at[1, 1, 0], at[0, 1, 0]),
        "top": (at[0, 0, 0], at[0, 0, 1], at[1, 0, 1], at[1, 0, 0]),
        "side": (at[1, 0, 0], at[1, 0, 1], at[1, 1, 1], at[1, 1, 0]),
    }


@dataclass(frozen=True, eq=False, repr=False)
class SolidShape(Picture):
    """A solid by its name. ``upright`` stands a box, a cylinder or a cone up; otherwise it lies or hangs.

    A cone that is not upright points down. A cube and a sphere look the same both ways.
    """

    name: str
    upright: bool = True
    kind: str = "solid-shape"

    def least(self) -> tuple[int, int]:
        """Faces need a few cells each to be told apart."""
        return 16, 7

    def sketch(self, columns: int, rows: int) -> Sketch:
        """As large as the pane allows."""
        sketch = Sketch(columns, rows)
        side = float(min(columns, 2 * rows) - 2)
        middle = (columns / 2, float(rows))
        match self.name:
            case "sphere":
                _sphere(sketch, middle, side)
            case "cylinder":
                _cylinder(sketch, middle, side, self.upright)
            case "cone":
                _cone(sketch, middle, side, self.upright)
            case _:
                _boxed(sketch, middle, side, self.name, self.upright)
        return sketch

    def words(self) -> str:
        """That there is a solid: its name may be the question."""
        return "one solid shape"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        if self.name in ("sphere", "cube") or self.upright:
            return f"a solid: {self.name}"
        return f"a solid: {self.name}, {'point down' if self.name == 'cone' else 'lying'}"


def _boxed(sketch: Sketch, middle: Point, side: float, name: str, upright: bool) -> None:
    """Cube or box: three faces in three shades, the top lightest, and a bare line where two meet."""
    at = tuple(corners(name, upright).values())
    left, top, right, bottom = extent(at)
    room = (min(side * 1.4, sketch.width - 2), min(side, sketch.height - 2))
    scale = min(room[0] / (right - left), room[1] / (bottom - top))

    def fit(points: Points) -> Points:
        return tuple(
            (middle[0] + (x - (left + right) / 2) * scale, middle[1] + (y - (top + bottom) / 2) * scale)
            for x, y in points
        )

    faces = {face: fit(points) for face, points in visible_faces(name, upright).items()}
    for face, points in faces.items():
        (x0, y0), (x1, y1) = points[0], points[2]
        sketch.paint(polygon(points), Shade(_FACES[face], (x0, y0), (x1, y1)))
    near = faces["front"][1]
    for far in (faces["front"][0], faces["front"][2], faces["side"][1]):
        sketch.paint(stroke(*near, *far, max(0.5, side / 40)), Ink.GROUND)


def _sphere(sketch: Sketch, middle: Point, side: float) -> None:
    """A ball, lit from the upper left."""
    (x, y), r = middle, side / 2
    sketch.paint(disc(x, y, r), Shade(_BALL, (x - 0.36 * r, y - 0.4 * r), (x + 1.18 * r, y - 0.4 * r), True))


def _cylinder(sketch: Sketch, middle: Point, side: float, upright: bool) -> None:
    """A can: its round wall, and the one end that is seen."""
    (x, y), wide, end = middle, side * 0.36, side * 0.13
    if upright:
        half = side / 2 - end
        wall = joined(
            box(x - wide, y - half, 2 * wide, 2 * half),
            ellipse(x, y + half, wide, end),
            ellipse(x, y - half, wide, end),
        )
        sketch.paint(wall, Shade(_WALL, (x - wide, y), (x + wide, y)))
        _lid(sketch, x, y - half, wide, end)
        return
    half = min(side * 1.3, sketch.width - 2) / 2 - end
    wall = joined(
        box(x - half, y - wide, 2 * half, 2 * wide),
        ellipse(x - half, y, end, wide),
        ellipse(x + half, y, end, wide),
    )
    sketch.paint(wall, Shade(_WALL, (x, y - wide), (x, y + wide)))
    _lid(sketch, x + half, y, end, wide)


def _cone(sketch: Sketch, middle: Point, side: float, upright: bool) -> None:
    """A cone on its base, or hanging point down so that its flat face is seen from above.

    Its base is well rounded, and light runs down its wall in a streak, as no flat face has it.
    """
    (x, y), half, wide, end = middle, side / 2, side * 0.4, side * 0.14
    if upright:
        base, tip = y + half - end, y - half
    else:
        base, tip = y - half + end, y + half
    # The wall touches the rim where a line from the tip does, a little toward the tip from its ends.
    high = abs(base - tip)
    toward = end * end / high
    reach = wide * sqrt(1 - (end / high) ** 2)
    rim = base - toward if upright else base + toward
    wall = joined(polygon(((x, tip), (x + reach, rim), (x - reach, rim))), ellipse(x, base, wide, end))
    sketch.paint(wall, Shade(_WALL, (x - wide, base), (x + wide, base)))
    if not upright:
        _lid(sketch, x, base, wide, end)


def _lid(sketch: Sketch, x: float, y: float, across: float, down: float) -> None:
    """A round flat end, set off by a bare line from the wall that lies below it, or to its left."""
    line = max(0.6, min(across, down) / 5)
    aside, below = (0.0, line) if across > down else (-line, 0.0)
    # A little broader than the end, so that nothing of the wall is left beside it.
    sketch.paint(ellipse(x + aside, y + below, across + 0.4, down + 0.4), Ink.GROUND)
    lid = ellipse(x, y, across, down)
    sketch.paint(lid, Shade(_LID, (x - across, y - down), (x + across, y + down)))


PICTURE = SolidShape
