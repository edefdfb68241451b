"""A figure of paper, with or without a line to fold it on."""

from dataclasses import dataclass
from math import cos, hypot, radians, sin

from warmup.pictures._told import turn_told
from warmup.pictures.base import Picture
from warmup.pictures.figures import centroid, placed, points_of, turned
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import Point, Points, extent, polygon, stroke
from warmup.pictures.sketch import Sketch


def line_through(points: Points, degrees: float, aside: int) -> Point:
    """A point of the fold line: the middle of the area, moved off the line by ``aside``.

    ``aside`` is in hundredths of half the figure's smaller measure; ``degrees`` are up from flat.
    """
    left, top, right, bottom = extent(points)
    x, y = centroid(points)
    shift = aside / 100 * min(right - left, bottom - top) / 2
    return x - shift * sin(radians(degrees)), y - shift * cos(radians(degrees))


@dataclass(frozen=True, eq=False, repr=False)
class Fold(Picture):
    """A figure by its name in ``figures``, turned clockwise by ``turn`` degrees.

    ``line`` is the angle of a broken line through the middle of its area, in degrees up from flat:
    90 stands upright on the page, whatever the turn. ``aside`` moves that line off the middle, in
    hundredths of half the figure's size. None draws no line.
    """

    figure: str
    turn: int = 0
    line: float | None = None
    aside: int = 0
    kind: str = "fold"

    def least(self) -> tuple[int, int]:
        """Room for the figure and the ends of the line."""
        return 16, 7

    def sketch(self, columns: int, rows: int) -> Sketch:
        """The figure as large as the pane allows, the line running a little past it."""
        sketch = Sketch(columns, rows)
        points = turned(points_of(self.figure), self.turn)
        rim = 4 if self.line is not None else 2
        fitted = placed(points, (columns / 2, float(rows)), columns - rim, 2 * rows - rim)
        sketch.paint(polygon(fitted), Ink.FIRST)
        if self.line is not None:
            self._fold_line(sketch, fitted)
        return sketch

    def _fold_line(self, sketch: Sketch, points: Points) -> None:
        left, top, right, bottom = extent(points)
        angle = self.line or 0.0
        x, y = line_through(points, angle, self.aside)
        dx, dy = cos(radians(angle)), -sin(radians(angle))
        long = hypot(right - left, bottom - top)
        step, dash = 5.0, 2.8
        count = int(long / 2 / step) + 1
        for k in range(-count, count + 1):
            start, end = k * step - dash / 2, k * step + dash / 2
            ends = (x + start * dx, y + start * dy, x + end * dx, y + end * dy)
            if all(
                left - 1.5 < u < right + 1.5 and top - 1.5 < v < bottom + 1.5 for u, v in (ends[:2], ends[2:])
            ):
                sketch.paint(stroke(*ends, 1.1), Ink.INK)

    def words(self) -> str:
        """Whether there is a line: where it ought to lie may be the question."""
        return "a paper shape" if self.line is None else "a paper shape with a line to fold on"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        aside = f", {self.aside} hundredths of half its size off the middle" if self.aside else ""
        line = f"; a fold line {self.line:g} degrees up from flat{aside}" if self.line is not None else ""
        return f"a paper shape: {self.figure}{turn_told(self.turn)}{line}"


PICTURE = Fold
