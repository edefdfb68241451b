"""Dots to be seen at a glance and covered again."""

from dataclasses import dataclass
from math import cos, floor, pi, sin
from typing import ClassVar

from warmup.pictures.canvas import Canvas, Drawing, Ink, disc
from warmup.pictures.scatter import Point, laid, scattered

PATTERNS = ("dice", "ring", "scatter", "array", "five-and-some", "two-groups")

_DIE = {
    0: "... ... ...",
    1: "... .o. ...",
    2: "o.. ... ..o",
    3: "o.. .o. ..o",
    4: "o.o ... o.o",
    5: "o.o .o. o.o",
    6: "o.o o.o o.o",
}


@dataclass(frozen=True, slots=True)
class Dots:
    """``count`` solid dots in a pattern.

    "dice" is the face of a die up to 6, and two faces side by side up to 12; "ring" a circle; "scatter"
    never a known pattern, another one for each ``seed``; "array" two even rows, an odd one at the end of
    the upper; "five-and-some" a row of five over a row of the rest, up to 10; "two-groups" two scatters
    apart, the left one of ``left`` dots (of half, the smaller, where it is 0). ValueError for an unknown
    pattern or a count it has no form for.
    """

    count: int
    pattern: str = "dice"
    seed: int = 0
    left: int = 0

    kind: ClassVar[str] = "dots"

    def __post_init__(self) -> None:
        if self.pattern not in PATTERNS:
            raise ValueError(f"no pattern of dots is called {self.pattern!r}")
        most = {"dice": 12, "five-and-some": 10}.get(self.pattern, 20)
        if not 0 <= self.count <= most or not 0 <= self.left <= self.count:
            raise ValueError(f"no {self.pattern} of {self.count} dots, {self.left} of them on the left")

    def least(self) -> tuple[int, int]:
        """Dots three cells wide and as far apart."""
        match self.pattern:
            case "dice":
                return (27 if self.count > 6 else 13), 6
            case "five-and-some" | "array":
                return 4 * max(5, -(-self.count // 2)) - 1, 4
            case "two-groups":
                return 36, 9
            case _:
                return 20, 9

    def draw(self, columns: int, rows: int) -> Drawing:
        """Dots as large as the pane allows, all alike."""
        canvas = Canvas(columns, rows)
        places, radius = self._places(columns, 2 * rows)
        for x, y in places:
            canvas.paint(disc(x, y, radius), Ink.FIRST)
        return canvas.drawing()

    def _places(self, width: int, height: int) -> tuple[list[Point], float]:
        match self.pattern:
            case "dice":
                return _on_grid(_faces(self.count), width, height)
            case "array":
                upper = -(-self.count // 2)
                return _on_grid([(n % upper, n // upper) for n in range(self.count)], width, height)
            case "five-and-some":
                return _on_grid([(n % 5, n // 5) for n in range(self.count)], width, height)
            case "ring":
                return _on_circle(self.count, width, height)
            case "two-groups":
                return self._two_groups(width, height)
            case _:
                return laid(scattered(self.count, self.seed), width, height)

    def _two_groups(self, width: int, height: int) -> tuple[list[Point], float]:
        """Each group in its own part of the pane, a fifth of the width left free between them."""
        left = self.left or self.count // 2
        part = round(0.4 * width)
        one, small = laid(scattered(left, self.seed), part, height)
        two, other = laid(scattered(self.count - left, self.seed + 1), part, height)
        return one + [(x + width - part, y) for x, y in two], min(small, other, 4.0)

    def words(self) -> str:
        """How the dots lie, not how many."""
        match self.pattern:
            case "dice":
                return "dots as on dice" if self.count > 6 else "dots as on a die"
            case "array":
                return "dots in two rows"
            case "five-and-some":
                return "dots in rows, the upper one filled first"
            case "ring":
                return "dots in a ring"
            case "two-groups":
                return "two groups of dots"
            case _:
                return "dots scattered about"

    def shows(self) -> tuple[str, ...]:
        """No numeral stands on it."""
        return ()

    def marked(self) -> tuple[str, ...]:
        """Nothing is marked out."""
        return ()


def _faces(count: int) -> list[tuple[int, int]]:
    """The spots of one die or two: column and row; the second die begins four columns on."""
    upper = count if count <= 6 else -(-count // 2)
    spots = [(x, y) for y, row in enumerate(_DIE[upper].split()) for x, mark in enumerate(row) if mark == "o"]
    if count > 6:
        spots += [(x + 4, y) for x, y in _faces(count - upper)]
    return spots


def _on_grid(spots: list[tuple[int, int]], width: int, height: int) -> tuple[list[Point], float]:
    """Spots of a square grid, in the middle of the pane, as large as fit; a die's size does not depend on its spots."""
    across, down = max((x for x, _ in spots), default=0) + 1, max((y for _, y in spots), default=0) + 1
    pitch = min((width + 1) // max(across, 3), (height + 1) // max(down, 2), 16)
    gap = max(1, round(0.25 * pitch))
    radius = (pitch - gap) / 2
    left = floor(width - across * pitch + gap) / 2 + radius
    top = floor((height - down * pitch + gap) / 2) + radius
    return [(left + x * pitch, top + y * pitch) for x, y in spots], radius


def _on_circle(count: int, width: int, height: int) -> tuple[list[Point], float]:
    """Evenly spaced round a circle, the first at the top."""
    size = min(width, height)
    radius = max(1.0, floor(min(size / 3, size * 1.5 / max(4, count))) / 2)
    reach = size / 2 - radius if count > 1 else 0.0
    turns = [2 * pi * n / count for n in range(count)]
    return [(width / 2 + reach * sin(turn), height / 2 - reach * cos(turn)) for turn in turns], radius


PICTURE = Dots
