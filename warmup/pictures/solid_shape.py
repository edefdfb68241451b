"""One solid shape: a simple drawing with its hidden edges left out and its faces told apart by shade."""

from math import floor
from typing import NamedTuple

from warmup.pictures.canvas import Canvas, Drawing, Ink, Shape, box, disc, stroke
from warmup.pictures.figures import Point, Points, both, convex, ellipse, region

SOLIDS = ("sphere", "cube", "box", "cylinder", "cone")
"""What can be drawn here."""

_DEPTH = (0.36, -0.36)
"""Where a unit of depth goes on the page: to the right and up (a cabinet drawing)."""

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


class SolidShape(NamedTuple):
    """A solid by its name. ``upright`` stands a box, a cylinder or a cone up; otherwise it lies or hangs.

    A cone that is not upright points down. A cube and a sphere look the same both ways.
    """

    name: str
    upright: bool = True
    kind: str = "solid-shape"

    def least(self) -> tuple[int, int]:
        """Faces need a few cells each to be told apart."""
        return 16, 7

    def draw(self, columns: int, rows: int) -> Drawing:
        """As large as the pane allows."""
        canvas = Canvas(columns, rows)
        side = float(min(columns, 2 * rows) - 2) // 2 * 2
        middle = (columns / 2, float(rows))
        match self.name:
            case "sphere":
                _sphere(canvas, middle, side)
            case "cylinder":
                _cylinder(canvas, middle, side, self.upright)
            case "cone":
                _cone(canvas, middle, side, self.upright)
            case _:
                _boxed(canvas, middle, side, self.name, self.upright)
        return canvas.drawing()

    def words(self) -> str:
        """That there is a solid: its name may be the question."""
        return "one solid shape"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        if self.name in ("sphere", "cube") or self.upright:
            return f"a solid: {self.name}"
        return f"a solid: {self.name}, {'point down' if self.name == 'cone' else 'lying'}"

    def shows(self) -> tuple[str, ...]:
        """No word stands on it."""
        return ()

    def marked(self) -> tuple[str, ...]:
        """Nothing is marked out."""
        return ()


def _boxed(canvas: Canvas, middle: Point, side: float, name: str, upright: bool) -> None:
    """Cube or box: three faces in three shades, a bare line along every edge between two of them."""
    at = list(corners(name, upright).values())
    left, right = min(x for x, _ in at), max(x for x, _ in at)
    top, bottom = min(y for _, y in at), max(y for _, y in at)
    room = (min(side * 1.4, canvas.width - 2), min(side, canvas.height - 2))
    scale = min(room[0] / (right - left), room[1] / (bottom - top))
    high = _SIZES[name, upright][1]
    scale = max(2.0, scale * high // 2 * 2) / high

    def fit(points: Points) -> Points:
        return tuple(
            (
                round(2 * (middle[0] + (x - (left + right) / 2) * scale)) / 2,
                float(round(middle[1] + (y - (top + bottom) / 2) * scale)),
            )
            for x, y in points
        )

    shades = {"front": Ink.FIRST, "top": Ink.INK, "side": Ink.SOFT}
    faces = {face: fit(points) for face, points in visible_faces(name, upright).items()}
    for face, points in faces.items():
        canvas.paint(convex(points), shades[face])
    near = faces["front"][1]
    for far in (faces["front"][0], faces["front"][2], faces["side"][1]):
        canvas.paint(stroke(*near, *far, 0.9), Ink.GROUND)


def _by_cells(part: Shape, whole: Shape) -> Shape:
    """A part of a shape that, along the shape's rim, begins and ends on the edges of cells.

    There the ground takes one of a cell's two inks, and light and shadow would be one too many.
    """

    def distance(u: float, v: float) -> float:
        x, y = floor(u) + 0.5, 2 * floor(v / 2) + 1.0
        rim = any(whole.distance(x + i, y + j) >= 0 for i in (-0.25, 0.25) for j in (-0.5, 0.5))
        return part.distance(x, y) if rim else part.distance(u, v)

    return Shape(distance, part.box)


def _sphere(canvas: Canvas, middle: Point, side: float) -> None:
    """A disc with a shadow at its lower right that thins out to both sides, and a light spot.

    A shadow as wide as the disc would make it a thick coin seen from aslant.
    """
    x, y, r = *middle, side / 2
    ball = disc(x, y, r)
    canvas.paint(ball, Ink.SOFT)
    canvas.paint(both(ball, _by_cells(disc(x - r * 0.3, y - r * 0.3, r * 1.17), ball)), Ink.FIRST)
    spot = ellipse(round(x - r * 0.4), round(y - r * 0.4), r * 0.24, r * 0.2)
    # A small round spot would come out as a cross.
    small = box(round(x - r * 0.4) - 1.5, round(y - r * 0.4) - 1, 3, 2)
    canvas.paint(spot if r >= 10 else small, Ink.SILVER)


def _cylinder(canvas: Canvas, middle: Point, side: float, upright: bool) -> None:
    """A can: its round wall, and the one end that is seen.

    Its shadow begins on the edge of a cell: shadow, wall and ground in one cell are an ink too many.
    """
    x, y = middle
    half, wide = side / 2, side * 0.33
    end = side * 0.13
    if upright:
        top, bottom = y - half + end, y + half - end
        for shape in (box(x - wide, top, 2 * wide, bottom - top), ellipse(x, bottom, wide, end)):
            canvas.paint(shape, Ink.FIRST)
            canvas.paint(both(shape, box(round(x + wide * 0.45), 0, wide, canvas.height)), Ink.SOFT)
        canvas.paint(ellipse(x, top, wide, end), Ink.GROUND)
        canvas.paint(ellipse(x, top - 0.5, wide - 0.5, end - 0.5), Ink.INK)
        return
    long = min(side * 1.3, canvas.width - 2) / 2
    left, right = x - long + end, x + long - end
    for shape in (box(left, y - wide, right - left, 2 * wide), ellipse(left, y, end, wide)):
        canvas.paint(shape, Ink.FIRST)
        canvas.paint(both(shape, box(0, 2 * round((y + wide * 0.45) / 2), canvas.width, wide)), Ink.SOFT)
    canvas.paint(ellipse(right, y, end, wide), Ink.GROUND)
    canvas.paint(ellipse(right + 0.5, y, end - 0.5, wide - 0.5), Ink.INK)


def _cone(canvas: Canvas, middle: Point, side: float, upright: bool) -> None:
    """A cone on its base, or hanging point down so that its flat face is seen from above.

    Its base is well rounded and its shadow a narrow streak: a straight edge down the middle would make
    two flat faces of it.
    """
    x, y = round(2 * middle[0]) / 2, float(round(middle[1]))
    half, wide, end = side / 2, round(side * 0.8) / 2, float(max(2, round(side * 0.16)))
    if upright:
        base, tip = y + half - end, y - half
        wall = region(((x, tip), (x + wide, base), (x - wide, base)))
        foot = both(ellipse(x, base, wide, end), box(0, base, canvas.width, canvas.height))
        whole = Shape(lambda u, v: min(wall.distance(u, v), foot.distance(u, v)), (0, 0, 0, 0))
        edge = ((x + 0.5, tip), (x + wide * 0.62, base), (x + wide * 0.5, canvas.height))
        lit = _by_cells(region(((-1, tip), *edge, (-1, canvas.height))), whole)
        for shape in (wall, foot):
            canvas.paint(shape, Ink.SOFT)
            canvas.paint(both(shape, lit), Ink.FIRST)
        return
    base, tip = y - half + end, y + half
    wall = region(((x, tip), (x + wide, base), (x - wide, base)))
    lit = region(((-1, tip), (x + 0.5, tip), (x + wide * 0.62, base), (-1, base)))
    canvas.paint(wall, Ink.SOFT)
    canvas.paint(both(wall, _by_cells(lit, wall)), Ink.FIRST)
    # Two rows of bare ground where there is room: with one, face, line and wall meet in a cell.
    line = 1.0 if side < 20 else 2.0
    canvas.paint(ellipse(x, base, wide, end), Ink.GROUND)
    # Beside the face the ends of the wall would be lone pixels.
    canvas.paint(box(0, base, canvas.width, max(line, round(end * 0.45))), Ink.GROUND)
    canvas.paint(ellipse(x, base - line / 2, wide - 0.5, end - line / 2), Ink.INK)


PICTURE = SolidShape
