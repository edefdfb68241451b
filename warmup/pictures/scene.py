"""A few toys on shelves: what stands above, below, beside, between, behind."""

from dataclasses import dataclass
from math import cos, pi, sin

from warmup.pictures._told import in_a_row
from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import box, disc, ellipse, joined, polygon, ring, stroke
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class Scene(Picture):
    """Toys in one or two rows, the upper one on a shelf; "" leaves a place empty.

    Rows are from the top, toys from the left as the viewer sees them. ``behind`` is one more toy that
    peeps out from behind the last one.
    """

    rows: tuple[tuple[str, ...], ...]
    behind: str = ""
    kind: str = "scene"

    def least(self) -> tuple[int, int]:
        """Eight cells by four for each toy."""
        return 9 * self._across(), 4 * len(self.rows)

    def _across(self) -> int:
        return max(map(len, self.rows)) + bool(self.behind)

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Toys as large as the pane allows, standing on shelves."""
        sketch = Sketch(columns, rows)
        shelf = rows * 2 // len(self.rows)
        across = columns / self._across()
        # Lids and brims reach out a little.
        size = int(min(across / 1.12 - 1, shelf - 1.5))
        wide = min(across, size * 1.5)
        for line, row in enumerate(self.rows):
            # A shelf begins on the edge of a cell, so that no cell needs a third ink.
            floor = (line + 1) * shelf - 1 if len(self.rows) > 1 else (rows * 2 + size) // 2
            floor = floor // 2 * 2
            start = columns / 2 - wide * len(row) / 2
            long = min(columns, wide * max(len(row), self._across()) + 2)
            sketch.paint(box((columns - long) / 2, floor, long, 1), Ink.SOFT)
            for place, thing in enumerate(row):
                middle = round(2 * (start + (place + 0.5) * wide)) / 2
                if self.behind and thing == row[-1] and line == len(self.rows) - 1:
                    self._pair(sketch, thing, middle, floor, size)
                elif thing:
                    paint_thing(sketch, thing, middle, floor, size)
        return sketch

    def _pair(self, sketch: Sketch, thing: str, middle: float, floor: float, size: float) -> None:
        """One toy half hidden by another, smaller and set off by a bare rim."""
        small = round(size * 0.62)
        paint_thing(sketch, self.behind, middle + round(size * 0.2), floor, size)
        x = middle - round(size * 0.2)
        wide, high = small * 1.12 + 2, floor - round(floor - small * 0.94) + 1
        sketch.paint(box(x - wide / 2, floor - high, wide, high), Ink.GROUND)
        paint_thing(sketch, thing, x, floor, small)

    def words(self) -> str:
        """Only that there are toys: where each is may be the question."""
        return "a few toys" if len(self.rows) == 1 else "a few toys on two shelves"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        behind = f"; behind the last, looking out: {self.behind}" if self.behind else ""
        if len(self.rows) == 1:
            return f"toys, left to right: {in_a_row(self.rows[0])}{behind}"
        upper, lower = map(in_a_row, self.rows)
        return f"toys, left to right, on the shelf: {upper}; below it: {lower}{behind}"


def paint_thing(sketch: Sketch, name: str, x: float, floor: float, size: float) -> None:
    """Paint a toy ``size`` units wide and high, its middle at ``x``, standing on ``floor``.

    KeyError for a toy that is not one of :data:`THINGS`.
    """
    _PAINTERS[name](sketch, x, floor - size, size)


def _ball(sketch: Sketch, x: float, top: float, s: float) -> None:
    y, r = top + s / 2, s / 2
    sketch.paint(disc(x, y, r), Ink.FIRST)
    # Two seams that curve away from each other, as on a ball of cloth.
    for side in (-1, 1):
        far = x + side * r * 1.25
        seam = [(far - side * r * 0.9 * cos(a), y + r * 0.9 * sin(a)) for a in _SEAM]
        inner = [(far - side * r * 0.74 * cos(a), y + r * 0.74 * sin(a)) for a in _SEAM]
        sketch.paint(polygon([*seam, *inner[::-1]]), Ink.INK)


_SEAM = tuple(pi * n / 24 for n in range(-6, 7))


def _box(sketch: Sketch, x: float, top: float, s: float) -> None:
    lid = round(top + s * 0.25)
    sketch.paint(box(x - s / 2, lid, s, top + s - lid), Ink.SECOND)
    sketch.paint(box(x - s / 2, lid, s, max(1.0, s * 0.09)), Ink.GROUND)
    sketch.paint(box(x - s * 0.56, round(top + s * 0.06), s * 1.12, lid - round(top + s * 0.06)), Ink.SECOND)
    sketch.paint(box(x - s * 0.15, round(top + s * 0.5), s * 0.3, max(1.0, round(s * 0.2))), Ink.INK)


def _cup(sketch: Sketch, x: float, top: float, s: float) -> None:
    left, wide, rim = x - s * 0.45, s * 0.66, top + s * 0.1
    corner = s * 0.12
    sketch.paint(ring(left + wide, top + s * 0.5, s * 0.26, max(0.8, s * 0.1)), Ink.INK)
    body = joined(
        box(left, rim, wide, top + s - rim - corner),
        stroke(left + corner, top + s - corner, left + wide - corner, top + s - corner, 2 * corner),
    )
    sketch.paint(body, Ink.INK)


def _bear(sketch: Sketch, x: float, top: float, s: float) -> None:
    y = top + s * 0.56
    ears = [disc(x + side * s * 0.32, top + s * 0.2, s * 0.18) for side in (-1, 1)]
    sketch.paint(joined(*ears, disc(x, y, s * 0.44)), Ink.SECOND)
    for side in (-1, 1):
        sketch.paint(disc(x + side * s * 0.17, y - s * 0.1, max(0.5, s * 0.055)), Ink.GROUND)
    sketch.paint(ellipse(x, y + s * 0.17, s * 0.19, max(0.8, s * 0.14)), Ink.INK)
    if s >= 10:
        sketch.paint(ellipse(x, y + s * 0.11, s * 0.07, s * 0.05), Ink.GROUND)


def _hat(sketch: Sketch, x: float, top: float, s: float) -> None:
    brim = top + s * 0.82
    sketch.paint(box(x - s * 0.29, top + s * 0.3, s * 0.58, brim - top - s * 0.3), Ink.FIRST)
    sketch.paint(box(x - s * 0.29, brim - max(1.0, s * 0.16), s * 0.58, max(1.0, s * 0.16)), Ink.INK)
    sketch.paint(box(x - s / 2, brim, s, top + s - brim), Ink.FIRST)


def _boat(sketch: Sketch, x: float, top: float, s: float) -> None:
    deck = top + s * 0.68
    sketch.paint(
        polygon(((x - s / 2, deck), (x + s / 2, deck), (x + s * 0.3, top + s), (x - s * 0.3, top + s))),
        Ink.FIRST,
    )
    sketch.paint(
        polygon(((x + s * 0.04, top), (x + s * 0.42, top + s * 0.58), (x + s * 0.04, top + s * 0.58))),
        Ink.INK,
    )
    sketch.paint(
        polygon(
            ((x - s * 0.06, top + s * 0.15), (x - s * 0.06, top + s * 0.58), (x - s * 0.34, top + s * 0.58))
        ),
        Ink.INK,
    )


def _fish(sketch: Sketch, x: float, top: float, s: float) -> None:
    y, deep = top + s * 0.66, s * 0.32
    sketch.paint(ellipse(x - s * 0.12, y, s * 0.38, deep), Ink.FIRST)
    sketch.paint(polygon(((x + s * 0.1, y), (x + s / 2, y - s * 0.3), (x + s / 2, y + s * 0.3))), Ink.FIRST)
    sketch.paint(disc(x - s * 0.28, y - s * 0.06, max(0.6, s * 0.06)), Ink.GROUND)


def _tree(sketch: Sketch, x: float, top: float, s: float) -> None:
    sketch.paint(box(x - s * 0.08, top + s * 0.6, s * 0.16, s * 0.4), Ink.FIRST)
    for level in range(3):
        high, half = top + s * 0.22 * level, s * (0.26 + 0.1 * level)
        sketch.paint(
            polygon(((x, high), (x + half, high + s * 0.34), (x - half, high + s * 0.34))), Ink.FIRST
        )


_PAINTERS = {
    "ball": _ball,
    "box": _box,
    "cup": _cup,
    "bear": _bear,
    "hat": _hat,
    "boat": _boat,
    "fish": _fish,
    "tree": _tree,
}

PICTURE = Scene
