"""Cards to add: the numbers in front, folded behind them the dots to count."""

from collections.abc import Iterator

from warmup.sheets import cards
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Dot, Drawn, Line, Shade, Words, segment

WIDE, FRONT = 39.0, 24.0
"""A card is folded in the middle: as high again behind."""
_APART = 3.3


def _pages(_day: Day) -> Iterator[Page]:
    for title, sums in (("to five", range(6)), ("to ten", range(6, 11))):
        made = [card(a, total - a) for total in sums for a in range(total + 1)]
        yield from cards.pages(title, made, WIDE, 2 * FRONT)


def card(one: int, other: int) -> cards.Card:
    """What is added, and below the fold the dots of each, upside down so that the back stands upright."""
    fold = segment(0.0, FRONT, WIDE, FRONT, Line.FOLD)
    drawn: list[Drawn] = [Words((WIDE / 2, FRONT / 2), f"{one} + {other}", 11.0), fold]
    for count, side, shade in ((one, 1, Shade.BLACK), (other, -1, Shade.GRAY)):
        middle = WIDE / 2 + side * WIDE / 4
        drawn += [
            Dot((middle - (n % 5 - 2) * _APART, 1.5 * FRONT - (n // 5 - 0.5) * 2 * _APART), 1.4, shade)
            for n in range(count)
        ]
    return drawn


SHEET = Sheet(
    "Adding cards",
    "How many together? Turn it over and count.",
    _pages,
    Use(skills=("add-subtract",)),
    small=True,
)
