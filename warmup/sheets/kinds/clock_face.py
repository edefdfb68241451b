"""A clock face, and hands to cut and pin on."""

from collections.abc import Iterator

from warmup.pictures.shapes import Point
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Dot, Drawn, Line, Ring, Words, away, closed, segment
from warmup.sheets.paper import ROOM

RADIUS = 86.0
HOUR_HAND, MINUTE_HAND = (44.0, 12.0), (70.0, 7.0)
"""How long and how broad the hands are: the hour hand is the short, broad one."""
_PIN = "You pin both hands on the middle; a pin pricks, and small children choke on it."


def _pages(_day: Day) -> Iterator[Page]:
    below = 2 * RADIUS + 16
    hands = [part for n, each in enumerate((HOUR_HAND, MINUTE_HAND)) for part in hand(below + n * 20, *each)]
    said = Words((ROOM.wide / 2, below + 38), _PIN, 4.0)
    yield Page("", (*face((ROOM.wide / 2, RADIUS + 1)), *hands, said))


def face(middle: Point) -> Iterator[Drawn]:
    """Twelve numbers, sixty marks, a dot to pin the hands on."""
    yield Ring(middle, RADIUS, Line.CUT)
    yield Ring(middle, RADIUS - 3)
    for minute in range(60):
        long = 7.0 if minute % 5 == 0 else 3.0
        yield segment(*away(middle, RADIUS - 3, minute / 60), *away(middle, RADIUS - 3 - long, minute / 60))
    for hour in range(1, 13):
        yield Words(away(middle, RADIUS - 20, hour / 12), str(hour), 13.0)
    yield Dot(middle, 1.2)


def hand(top: float, long: float, broad: float) -> Iterator[Drawn]:
    """A hand that lies on its side: a dot where it is pinned, a tip at the other end."""
    left = (ROOM.wide - MINUTE_HAND[0] - 10) / 2
    half, tip = broad / 2, left + 10 + long
    outline = ((left, top - half), (tip - broad, top - half), (tip, top), (tip - broad, top + half))
    yield closed((*outline, (left, top + half)), Line.CUT)
    yield Dot((left + 10 - broad / 4, top), 1.2)


SHEET = Sheet(
    "Clock face", "To turn the hands and say the time.", _pages, Use(("clock with hands",), ("clock",))
)
