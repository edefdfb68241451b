"""A few toys on shelves: what stands above, below, beside, between, behind."""

from typing import NamedTuple

from warmup.pictures._told import in_a_row
from warmup.pictures.canvas import Canvas, Drawing, Ink, box, disc, ring
from warmup.pictures.figures import convex, ellipse


class Scene(NamedTuple):
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

    def draw(self, columns: int, rows: int) -> Drawing:
        """Toys as large as the pane allows, standing on shelves."""
        canvas = Canvas(columns, rows)
        shelf = rows * 2 // len(self.rows)
        across = columns / self._across()
        size = int(min(across - 1.5, shelf - 1.5, 30))
        wide = min(across, size * 1.5)
        for line, row in enumerate(self.rows):
            # A shelf begins on the edge of a cell, so that no cell needs a third ink.
            floor = (line + 1) * shelf - 1 if len(self.rows) > 1 else (rows * 2 + size) // 2
            floor = floor // 2 * 2
            start = columns / 2 - wide * len(row) / 2
            canvas.paint(box(max(0, start - 1), floor, min(columns, wide * len(row) + 2), 1), Ink.SOFT)
            for place, thing in enumerate(row):
                middle = round(2 * (start + (place + 0.5) * wide)) / 2
                if self.behind and thing == row[-1] and line == len(self.rows) - 1:
                    self._pair(canvas, thing, middle, floor, size)
                elif thing:
                    paint_thing(canvas, thing, middle, floor, size)
        return canvas.drawing()

    def _pair(self, canvas: Canvas, thing: str, middle: float, floor: float, size: float) -> None:
        """One toy half hidden by another, smaller and set off by a bare rim."""
        small = round(size * 0.62)
        paint_thing(canvas, self.behind, middle + round(size * 0.2), floor, size)
        x = middle - round(size * 0.2)
        wide, high = small * 1.12 + 2, floor - round(floor - small * 0.94) + 1
        canvas.paint(box(x - wide / 2, floor - high, wide, high), Ink.GROUND)
        paint_thing(canvas, thing, x, floor, small)

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

    def shows(self) -> tuple[str, ...]:
        """No word stands on it."""
        return ()

    def marked(self) -> tuple[str, ...]:
        """Nothing is marked out."""
        return ()


def paint_thing(canvas: Canvas, name: str, x: float, floor: float, size: float) -> None:
    """Paint a toy ``size`` units wide and high, its middle at ``x``, standing on ``floor``.

    KeyError for a toy that is not one of :data:`THINGS`.
    """
    _PAINTERS[name](canvas, x, floor - size, size)


def _ball(canvas: Canvas, x: float, top: float, s: float) -> None:
    y, r = top + s / 2, s / 2
    canvas.paint(disc(x, y, r), Ink.FIRST)
    canvas.paint(box(x - r, y - s * 0.09, s, max(1.0, s * 0.18)), Ink.GROUND)


def _box(canvas: Canvas, x: float, top: float, s: float) -> None:
    lid = round(top + s * 0.25)
    canvas.paint(box(x - s / 2, lid, s, top + s - lid), Ink.SECOND)
    canvas.paint(box(x - s / 2, lid, s, max(1.0, s * 0.09)), Ink.GROUND)
    canvas.paint(box(x - s * 0.56, round(top + s * 0.06), s * 1.12, lid - round(top + s * 0.06)), Ink.SECOND)
    canvas.paint(box(x - s * 0.15, round(top + s * 0.5), s * 0.3, max(1.0, round(s * 0.2))), Ink.INK)


def _cup(canvas: Canvas, x: float, top: float, s: float) -> None:
    left, wide, rim = x - round(s * 0.45), round(s * 0.66), round(top + s * 0.1)
    canvas.paint(ring(left + wide, round(top + s * 0.5), round(s * 0.28), max(1.0, s * 0.1)), Ink.INK)
    canvas.paint(box(left, rim, wide, top + s - rim), Ink.INK)


def _bear(canvas: Canvas, x: float, top: float, s: float) -> None:
    y = top + s * 0.56
    for side in (-1, 1):
        canvas.paint(disc(x + side * s * 0.33, top + s * 0.2, s * 0.19), Ink.SECOND)
    canvas.paint(disc(x, y, s * 0.44), Ink.SECOND)
    for side in (-1, 1):
        canvas.paint(disc(x + side * s * 0.17, y - s * 0.1, max(0.6, s * 0.06)), Ink.GROUND)
    canvas.paint(ellipse(x, y + s * 0.16, s * 0.17, max(0.8, s * 0.12)), Ink.INK)


def _hat(canvas: Canvas, x: float, top: float, s: float) -> None:
    brim = top + s * 0.82
    canvas.paint(box(x - s * 0.29, top + s * 0.3, s * 0.58, brim - top - s * 0.3), Ink.FIRST)
    canvas.paint(box(x - s * 0.29, brim - max(1.0, s * 0.16), s * 0.58, max(1.0, s * 0.16)), Ink.INK)
    canvas.paint(box(x - s / 2, brim, s, top + s - brim), Ink.FIRST)


def _boat(canvas: Canvas, x: float, top: float, s: float) -> None:
    deck = top + s * 0.68
    canvas.paint(
        convex(((x - s / 2, deck), (x + s / 2, deck), (x + s * 0.3, top + s), (x - s * 0.3, top + s))),
        Ink.FIRST,
    )
    canvas.paint(
        convex(((x + s * 0.04, top), (x + s * 0.42, top + s * 0.58), (x + s * 0.04, top + s * 0.58))), Ink.INK
    )
    canvas.paint(
        convex(
            ((x - s * 0.06, top + s * 0.15), (x - s * 0.06, top + s * 0.58), (x - s * 0.34, top + s * 0.58))
        ),
        Ink.INK,
    )


def _fish(canvas: Canvas, x: float, top: float, s: float) -> None:
    y, deep = round(top + s * 0.65), round(s * 0.3)
    canvas.paint(ellipse(x - s * 0.12, y, s * 0.38, deep), Ink.FIRST)
    canvas.paint(convex(((x + s * 0.1, y), (x + s / 2, y - s * 0.3), (x + s / 2, y + s * 0.3))), Ink.FIRST)
    canvas.paint(disc(x - s * 0.28, y - s * 0.06, max(0.6, s * 0.06)), Ink.GROUND)


def _tree(canvas: Canvas, x: float, top: float, s: float) -> None:
    canvas.paint(box(x - s * 0.08, top + s * 0.6, s * 0.16, s * 0.4), Ink.FIRST)
    for level in range(3):
        high, half = top + s * 0.22 * level, s * (0.26 + 0.1 * level)
        canvas.paint(convex(((x, high), (x + half, high + s * 0.34), (x - half, high + s * 0.34))), Ink.FIRST)


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
