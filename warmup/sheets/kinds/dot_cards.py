"""Cards with dots: as on a die, in fives and some more, scattered; and pieces with two halves."""

from collections.abc import Iterator, Sequence
from itertools import combinations_with_replacement

from warmup.pictures.scatter import HEIGHT, WIDTH, scattered
from warmup.pictures.shapes import Point
from warmup.randomness import digest
from warmup.sheets import cards
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Dot, Drawn, segment

WIDE, HIGH = 49.0, 48.0
_HALF = 24.0
"""A half of a piece is a square of so many millimeters."""
_CORNERS: Sequence[Point] = ((-1, -1), (1, 1), (1, -1), (-1, 1), (-1, 0), (1, 0))
"""Where dots stand on the face of a die, in the order they come in; an odd number has one in the middle."""


def _pages(day: Day) -> Iterator[Page]:
    made = [_card(die(n), 3.4) for n in range(1, 7)]
    made += [_card(fives(n), 3.4) for n in range(5, 11)]
    yield from cards.pages("to see at a glance", made, WIDE, HIGH)
    seed = digest("dot-cards", day.date)
    yield from cards.pages("to count", [_card(spread(n, seed), 2.6) for n in range(1, 13)], WIDE, HIGH)
    pairs = combinations_with_replacement(range(7), 2)
    yield from cards.pages("two halves", [_piece(*pair) for pair in pairs], 2 * _HALF, _HALF)


def die(count: int, away: float = 11.0) -> tuple[Point, ...]:
    """Up to six dots about (0, 0) as on a die."""
    even = count - count % 2
    return tuple((x * away, y * away) for x, y in _CORNERS[:even]) + ((0.0, 0.0),) * (count % 2)


def fives(count: int) -> tuple[Point, ...]:
    """Up to ten dots in two rows of five."""
    return tuple(((n % 5 - 2) * 8.5, (n // 5 - 0.5) * 11) for n in range(count))


def spread(count: int, seed: int) -> tuple[Point, ...]:
    """Dots all over the card, in no pattern: another one each day."""
    across, down = (WIDE - 14) / WIDTH, (HIGH - 14) / HEIGHT
    return tuple(((x - WIDTH / 2) * across, (y - HEIGHT / 2) * down) for x, y in scattered(count, seed))


def _card(dots: Sequence[Point], radius: float) -> cards.Card:
    return [Dot((WIDE / 2 + x, HIGH / 2 + y), radius) for x, y in dots]


def _piece(one: int, other: int) -> cards.Card:
    drawn: list[Drawn] = [segment(_HALF, 3, _HALF, _HALF - 3)]
    for n, middle in ((one, _HALF / 2), (other, 1.5 * _HALF)):
        drawn += [Dot((middle + x, _HALF / 2 + y), 1.9) for x, y in die(n, 6.0)]
    return drawn


SHEET = Sheet(
    "Dot cards",
    "How many? Seen at a glance, or counted once each.",
    _pages,
    Use(pictures=("dots", "pairs")),
    small=True,
)
