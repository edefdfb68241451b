"""A whole cut into parts, equal or not: toast, a sheet of paper, a pancake."""

from dataclasses import dataclass
from itertools import accumulate
from math import cos, radians, sin

from warmup.pictures._told import turn_told
from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import Shape, box, disc, stroke
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class Shares(Picture):
    """A ``whole`` ("circle", "square" or "rectangle") cut by bare lines.

    ``cut`` is "slices" (from the middle of a circle out), "strips" (side by side, across the width) or
    "corners" (along the lines between opposite corners; then ``parts`` are all alike). ``parts`` are
    the widths of the strips or the angles of the slices, in any unit. ``turn`` turns slices clockwise,
    in degrees. ``lying`` lays strips one above the other. "cross" cuts once each way, at
    ``parts[0] : parts[1]`` both ways.
    """

    whole: str
    cut: str
    parts: tuple[int, ...]
    turn: int = 0
    lying: bool = False
    kind: str = "shares"

    def least(self) -> tuple[int, int]:
        """Room for four parts."""
        return 16, 7

    def sketch(self, columns: int, rows: int) -> Sketch:
        """As large as the pane allows; cuts are bare lines."""
        sketch = Sketch(columns, rows)
        high = float((2 * rows - 2) // 4 * 4)
        wide = high if self.whole != "rectangle" else high * 1.5
        if wide > columns - 2:
            wide = float((columns - 2) // 4 * 4)
            high = wide if self.whole != "rectangle" else wide / 1.5 // 2 * 2
        if self.whole != "circle" and self.cut in ("strips", "cross"):
            self._tiles(sketch, wide, high)
            return sketch
        left, top = round(columns - wide) / 2, float(round(rows - high / 2))
        body = (
            disc(left + wide / 2, top + high / 2, wide / 2)
            if self.whole == "circle"
            else box(left, top, wide, high)
        )
        sketch.paint(body, Ink.FIRST)
        for cut in self._cuts(left, top, wide, high):
            sketch.paint(cut, Ink.GROUND)
        return sketch

    def _tiles(self, sketch: Sketch, wide: float, high: float) -> None:
        """Straight parts of a rectangle: whole units each, so that equal parts are painted equal."""
        across = self.parts if self.cut == "cross" or not self.lying else (1,)
        down = self.parts if self.cut == "cross" or self.lying else (1,)
        sizes = [
            [part * ((room - len(parts) + 1) // sum(parts)) for part in parts]
            for parts, room in ((across, wide), (down, high))
        ]
        left = round(sketch.width - sum(sizes[0]) - len(across) + 1) / 2
        for width in sizes[0]:
            top = float(round((sketch.height - sum(sizes[1]) - len(down) + 1) / 2))
            for height in sizes[1]:
                sketch.paint(box(left, top, width, height), Ink.FIRST)
                top += height + 1
            left += width + 1

    def _cuts(self, left: float, top: float, wide: float, high: float) -> list[Shape]:
        """The bare lines of a circle, and of cuts from corner to corner."""
        x, y = left + wide / 2, top + high / 2
        total = sum(self.parts)
        marks = [mark / total for mark in accumulate(self.parts)][:-1]
        match self.cut:
            case "slices":
                angles = [radians(self.turn + 360 * mark) for mark in (0.0, *marks)]
                return [stroke(x, y, x + wide / 2 * sin(a), y - wide / 2 * cos(a), 1.2) for a in angles]
            case "corners":
                down = stroke(left, top, left + wide, top + high, 1.4)
                up = stroke(left, top + high, left + wide, top, 1.4)
                return [down, up] if len(self.parts) == 4 else [down]
            case _ if self.lying:
                # Two rows of pixels, one either side of the cut.
                return [box(left, round(top + high * mark) - 1.0, wide, 2.0) for mark in marks]
            case _:
                return [box(round(2 * (left + wide * mark)) / 2 - 0.5, top, 1.0, high) for mark in marks]

    def words(self) -> str:
        """Into how many parts it is cut, not whether they are equal."""
        return f"a {self.whole} with cuts in it"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        sizes = " to ".join(map(str, self.parts))
        match self.cut:
            case "slices":
                how = f"from the middle into slices {sizes}{turn_told(self.turn)}"
            case "strips":
                how = f"into strips {'one above the other' if self.lying else 'side by side'}, {sizes}"
            case "corners":
                how = "from corner to corner" + ("" if len(self.parts) == 2 else ", both ways")
            case _:
                how = f"once each way, {sizes}"
        return f"a {self.whole} cut {how}"


PICTURE = Shares
