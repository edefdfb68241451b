"""Coins true to size, and strips that show what each is worth in dots.

Diameters: United States Mint, "Coin Specifications" (:mod:`warmup.pictures.facts`). Nothing of a real coin's
face is drawn, so that nobody takes them for money.
"""

from collections.abc import Iterator

from warmup.pictures.facts import CENTS, MILLIMETERS, REEDED
from warmup.pictures.shapes import Point
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Dot, Drawn, Line, Ring, Shade, Words, away, frame, segment
from warmup.sheets.paper import ROOM

COUNTS = {"penny": 20, "nickel": 10, "dime": 10, "quarter": 4}
"""How many of each are on the page."""
_APART = 3.0
_DOT = 4.0
"""From one dot of a strip to the next."""


def _pages(_day: Day) -> Iterator[Page]:
    yield Page("true to size", tuple(_coins()))
    yield Page("what each is worth", tuple(_strips()))


def _coins() -> Iterator[Drawn]:
    top = 0.0
    for name, count in COUNTS.items():
        across = MILLIMETERS[name]
        a_row = int((ROOM.wide + _APART) // (across + _APART))
        for first in range(0, count, a_row):
            row = min(a_row, count - first)
            left = (ROOM.wide - row * (across + _APART) + _APART) / 2
            for n in range(row):
                middle = left + n * (across + _APART) + across / 2, top + across / 2
                yield from coin(name, middle)
            top += across + _APART


def coin(name: str, middle: Point) -> Iterator[Drawn]:
    """A coin to cut out: the name, what it is worth, and the ridges of a reeded edge."""
    radius = MILLIMETERS[name] / 2
    yield Ring(middle, radius, Line.CUT)
    if name in REEDED:
        for n in range(60):
            inner, outer = (away(middle, radius - inside, n / 60) for inside in (1.6, 0.4))
            yield segment(*inner, *outer, Line.FAINT)
    else:
        yield Ring(middle, radius - 1.2, Line.FAINT)
    yield Words((middle[0], middle[1] - 1.8), name, 3.2)
    yield Words((middle[0], middle[1] + 2.4), f"{CENTS[name]}¢", 3.6)


def _strips() -> Iterator[Drawn]:
    """Under a coin's place its cents as dots, in fives and tens."""
    top = 0.0
    for name, cents in CENTS.items():
        for _ in range(2):
            rows = -(-cents // 10)
            high = rows * _DOT * 1.5 + 6
            wide = 60.0 + MILLIMETERS["quarter"]
            left = (ROOM.wide - wide) / 2
            yield frame(left, top, wide, high + 4, Line.CUT)
            yield Words((left + 14, top + high / 2 + 2), f"{name} {cents}¢", 4.2)
            for n in range(cents):
                gap = 2.0 if n % 10 >= 5 else 0.0
                at = left + 34 + n % 10 * _DOT + gap, top + 5 + n // 10 * _DOT * 1.5
                yield Dot(at, 1.4, Shade.BLACK if n // 10 % 2 == 0 else Shade.GRAY)
            top += high + 8


SHEET = Sheet(
    "Coins",
    "To pay and to count with; paper coins are no money.",
    _pages,
    Use(("coins",), ("coins",)),
    small=True,
)
