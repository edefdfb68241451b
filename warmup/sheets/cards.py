"""Equal cards side by side and one below the other, with the lines to cut between them."""

from collections.abc import Sequence

from warmup.pictures.shapes import Point
from warmup.sheets.base import Page
from warmup.sheets.lines import Drawn, Line, moved, segment
from warmup.sheets.paper import ROOM

Card = Sequence[Drawn]
"""What is drawn on a card, measured from its top left corner."""


def grid(wide: float, high: float) -> tuple[int, int]:
    """How many cards of this size go side by side and one below the other; ValueError where none does."""
    across, down = int(ROOM.wide // wide), int(ROOM.high // high)
    if not across or not down:
        raise ValueError(f"a card of {wide} by {high} mm is larger than a page")
    return across, down


def place(number: int, wide: float, high: float) -> Point:
    """Where on its page the top left corner of the n-th card lies, from 0."""
    across, down = grid(wide, high)
    left = (ROOM.wide - across * wide) / 2
    return left + number % across * wide, number // across % down * high


def pages(title: str, cards: Sequence[Card], wide: float, high: float) -> tuple[Page, ...]:
    """The cards on as many pages as they need; each line between two is cut once."""
    across, down = grid(wide, high)
    a_page = across * down
    made = []
    for first in range(0, len(cards), a_page):
        some = cards[first : first + a_page]
        drawn = [part for n, card in enumerate(some) for part in moved(card, *place(n, wide, high))]
        made.append(Page(title, (*_cuts(len(some), wide, high), *drawn)))
    return tuple(made)


def _cuts(count: int, wide: float, high: float) -> list[Drawn]:
    across, _ = grid(wide, high)
    left = (ROOM.wide - across * wide) / 2
    cuts: list[Drawn] = []
    rows = -(-count // across)
    for row in range(rows):
        here, above = min(across, count - row * across), across if row else 0
        long = max(here, above)
        cuts.append(segment(left, row * high, left + long * wide, row * high, Line.CUT))
        cuts += [
            segment(left + n * wide, row * high, left + n * wide, (row + 1) * high, Line.CUT)
            for n in range(here + 1)
        ]
    last = count - (rows - 1) * across
    cuts.append(segment(left, rows * high, left + last * wide, rows * high, Line.CUT))
    return cuts
