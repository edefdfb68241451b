"""Dots to be seen at a glance and covered again."""

from dataclasses import dataclass
from math import cos, floor, pi, sin

from warmup.pictures._grid import grid
from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.scatter import laid, scattered
from warmup.pictures.shapes import Point, box, disc
from warmup.pictures.sketch import Sketch

PATTERNS = ("dice", "ring", "scatter", "array", "five-and-some", "two-groups")

_FORMS = {
    0: ("... ... ...", "... ... ..."),
    1: ("... .o. ...", "... .o. ..."),
    2: ("o.. ... ..o", "... o.o ..."),
    3: ("o.. .o. ..o", ".o. ... o.o"),
    4: ("o.o ... o.o", ".o. o.o .o."),
    5: ("o.o .o. o.o", ".o. ooo .o."),
    6: ("o.o o.o o.o", "ooo ... ooo"),
}
"""For each number of dots the face of a die, and another easy form."""


@dataclass(frozen=True, eq=False, repr=False)
class Dots(Picture):
    """``number`` solid dots in a pattern.

    "dice" is the face of a die up to 6, and two faces side by side up to 12; "ring" a circle; "scatter"
    never a known pattern, another one for each ``seed``; "array" two even rows, an odd one at the end of
    the upper; "five-and-some" a row of five over a row of the rest, up to 10; "two-groups" two easy forms
    of up to 6 either side of a line, the left one of ``left`` dots (of half, the smaller, where it is 0),
    ``seed`` choosing which forms. ``least`` gives a ValueError for an unknown pattern or
    a number it has no form for.
    """

    number: int
    pattern: str = "dice"
    seed: int = 0
    left: int = 0
    kind: str = "dots"

    def _groups(self) -> tuple[int, int]:
        """How many dots lie left and right: all on the left where one face holds them."""
        if self.pattern == "dice":
            left = self.number if self.number <= 6 else -(-self.number // 2)
        else:
            left = self.left or self.number // 2
        return left, self.number - left

    def least(self) -> tuple[int, int]:
        """Dots two or three cells wide, a cell or more between them."""
        self._refuse_what_has_no_form()
        match self.pattern:
            case "dice" | "two-groups":
                return (28 if self._groups()[1] else 14), 6
            case "five-and-some" | "array":
                return 4 * max(5, -(-self.number // 2)) - 1, 4
            case _:
                return (20, 8) if self.number <= 10 else (36, 12)

    def _refuse_what_has_no_form(self) -> None:
        if self.pattern not in PATTERNS:
            raise ValueError(f"no pattern of dots is called {self.pattern!r}")
        most = {"dice": 12, "two-groups": 12, "five-and-some": 10}.get(self.pattern, 20)
        fits = self.pattern != "two-groups" or max(self._groups()) <= 6
        if not 0 <= self.number <= most or not 0 <= self.left <= self.number or not fits:
            raise ValueError(f"no {self.pattern} of {self.number} dots, {self.left} of them on the left")

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Dots as large as the pane allows, all alike."""
        sketch = Sketch(columns, rows)
        places, radius = self._places(columns, 2 * rows)
        if self.pattern in ("dice", "two-groups") and self._groups()[1]:
            sketch.paint(box(columns // 2 - 0.5, 1, 1, 2 * rows - 2), Ink.SOFT)
        for x, y in places:
            sketch.paint(disc(x, y, radius), Ink.FIRST)
        return sketch

    def _places(self, width: int, height: int) -> tuple[list[Point], float]:
        match self.pattern:
            case "dice" | "two-groups":
                return self._on_faces(width // 2 * 2, height)
            case "array":
                return grid(self.number, max(1, -(-self.number // 2)), 2, width - 1, height)
            case "five-and-some":
                return grid(self.number, 5, 2, width - 1, height)
            case "ring":
                return _on_circle(self.number, width, height)
            case _:
                return laid(scattered(self.number, self.seed), width, height)

    def _on_faces(self, width: int, height: int) -> tuple[list[Point], float]:
        """One face in the middle of the pane, or two side by side with room for a line between."""
        groups = [count for count in self._groups() if count or self.pattern == "two-groups"]
        part = width // len(groups)
        pitch = min((part - 2) // 3, (height + 1) // 3)
        gap = max(1, pitch // 4)
        radius = (pitch - gap) / 2
        top = floor((height - 3 * pitch + gap) / 2) + radius
        places = []
        for number, count in enumerate(groups):
            # Two groups move toward the middle, though never nearer to it than two cells.
            free = part - 3 * pitch + gap
            inward = max(2, free // 3)
            left = free / 2 if len(groups) == 1 else (free - inward, inward)[number]
            turned = self.pattern == "two-groups" and self.seed >> number & 1
            for y, row in enumerate(_FORMS[count][turned].split()):
                spots = [x for x, mark in enumerate(row) if mark == "o"]
                places += [(number * part + left + radius + x * pitch, top + y * pitch) for x in spots]
        return places, radius

    def words(self) -> str:
        """How the dots lie, not how many."""
        match self.pattern:
            case "dice":
                return "dots as on dice"
            case "array" | "five-and-some":
                return "dots in two rows"
            case "ring":
                return "dots in a ring"
            case "two-groups":
                return "dots in groups either side of a line"
            case _:
                return "dots scattered about"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        left, right = self._groups()
        match self.pattern:
            case "dice":
                faces = f"{left}" if not right else f"{left} and {right}"
                return f"dots as on dice: {faces}"
            case "array":
                return f"dots in two even rows: {self.number - self.number // 2} over {self.number // 2}"
            case "five-and-some":
                return f"dots in two rows: {min(5, self.number)} over {max(0, self.number - 5)}"
            case "ring":
                return f"dots in a ring: {self.number}"
            case "two-groups":
                return f"dots either side of a line: {left} left, {right} right"
            case _:
                return f"dots scattered: {self.number}"


def _on_circle(count: int, width: int, height: int) -> tuple[list[Point], float]:
    """Evenly spaced round a circle, the first at the top."""
    size = min(width, height)
    radius = max(1.0, floor(min(size / 3, size * 1.5 / max(4, count))) / 2)
    reach = size / 2 - radius if count > 1 else 0.0
    turns = [2 * pi * n / count for n in range(count)]
    return [(width / 2 + reach * sin(turn), height / 2 - reach * cos(turn)) for turn in turns], radius


PICTURE = Dots
