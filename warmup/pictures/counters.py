"""Counters to be counted, matched or handed out: in a line, in rows of five, in a ring, scattered."""

from dataclasses import dataclass
from itertools import combinations, pairwise
from math import cos, dist, floor, pi, sin

from warmup.pictures._grid import grid
from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.scatter import laid, scattered
from warmup.pictures.shapes import Point, disc, ring
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class Counters(Picture):
    """``number`` solid counters and after them ``second`` of another kind, which are hollow.

    ``layout`` is "line", "rows" (of five), "ring" or "scatter"; ``seed`` varies the scatter. ``what``
    names the things for people, in the plural. More than ten in a line go on in a further line of ten.
    ``least`` gives a ValueError for an unknown layout.
    """

    number: int
    layout: str = "line"
    second: int = 0
    what: str = "buttons"
    seed: int = 0
    kind: str = "counters"

    def _total(self) -> int:
        return max(1, self.number + self.second)

    def _across(self) -> int:
        return min(self._total(), 5 if self.layout == "rows" else 10)

    def least(self) -> tuple[int, int]:
        """Counters three cells wide, half a cell between them."""
        lines = -(-self._total() // self._across())
        match self.layout:
            case "ring":
                return (36, 8) if self._total() > 12 else (20, 8)
            case "scatter":
                return (36, 12) if self._total() > 10 else (27, 8)
            case "line" | "rows":
                return (7 * self._across()) // 2, 2 * lines
            case unknown:
                raise ValueError(f"no layout of counters is called {unknown!r}")

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Counters as large as the pane allows, all alike."""
        sketch = Sketch(columns, rows)
        places, radius = self._places(columns, 2 * rows)
        line = max(1.0, radius / 3)
        for number, (x, y) in enumerate(places[: self.number + self.second]):
            if number < self.number:
                sketch.paint(disc(x, y, radius), Ink.FIRST)
            else:
                sketch.paint(ring(x, y, radius, line), Ink.SECOND)
        return sketch

    def _places(self, width: int, height: int) -> tuple[list[Point], float]:
        match self.layout:
            case "ring":
                return _ring(self._total(), width, height)
            case "scatter":
                return laid(scattered(self._total(), self.seed), width, height)
            case _:
                across = self._across()
                return grid(self._total(), across, -(-self._total() // across), width, height)

    def words(self) -> str:
        """What lies there and how, not how many."""
        kinds = f"{self.what}, solid and hollow," if self.second else self.what
        match self.layout:
            case "line":
                return f"a line of {kinds}".rstrip(",")
            case "rows":
                return f"{kinds} in rows of five"
            case "ring":
                return f"a ring of {kinds}".rstrip(",")
            case _:
                return f"{kinds} scattered about"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        lie = {"line": "in a line", "rows": "in rows of five", "ring": "in a ring"}
        more = f", then {self.second} of another kind" if self.second else ""
        return f"{self.what} {lie.get(self.layout, 'scattered')}: {self.number}{more}"


def _ring(count: int, width: int, height: int) -> tuple[list[Point], float]:
    """Evenly spaced round an oval at most half as wide again as high, from the top on."""
    wide, high = min(width, 1.8 * height), float(min(height, width))
    radius = floor(high / 5 * 2) / 2
    margin = 1 if high >= 24 else 0
    while True:
        across, up = wide / 2 - radius - margin, high / 2 - radius - margin
        places = _round_an_oval(count, across, up)
        places = [(width / 2 + x, height / 2 + y) for x, y in places]
        if radius <= 1 or count == 1 or _nearest(places) >= 2 * radius + 1.5:
            return places, max(1.0, radius)
        radius -= 0.5


def _round_an_oval(count: int, across: float, up: float) -> list[Point]:
    """``count`` points an equal way apart along an ellipse's edge, the first at the top."""
    steps = 360
    edge = [(across * sin(2 * pi * n / steps), -up * cos(2 * pi * n / steps)) for n in range(steps + 1)]
    far = [0.0]
    for one, two in pairwise(edge):
        far.append(far[-1] + dist(one, two))
    places, at = [], 0
    for number in range(count):
        while far[at] < number * far[-1] / count - 1e-9:
            at += 1
        places.append(edge[at])
    return places


def _nearest(points: list[Point]) -> float:
    return min(dist(one, two) for one, two in combinations(points, 2))


PICTURE = Counters
