"""Mats with a place for the whole and two for its parts."""

from collections.abc import Iterator

from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Words, frame, segment
from warmup.sheets.paper import ROOM

WIDE, HIGH = 88.0, 84.0


def _pages(_day: Day) -> Iterator[Page]:
    yield Page("", tuple(mat()))
    yield Page("bars", (*bar(0.0), *bar(120.0)))


def mat() -> Iterator[Drawn]:
    """The whole above, joined with its two parts below."""
    middle, below = ROOM.wide / 2, HIGH + 50
    yield frame(middle - WIDE / 2, 0.0, WIDE, HIGH)
    yield Words((middle, 5.0), "the whole", 5.0)
    for side in (-1, 1):
        at = middle + side * (ROOM.wide - WIDE) / 2
        yield segment(middle + side * WIDE / 4, HIGH, at, below)
        yield frame(at - WIDE / 2, below, WIDE, HIGH)
        yield Words((at, below + 5.0), "a part", 5.0)


def bar(top: float) -> Iterator[Drawn]:
    """A long bar for the whole, and right below it, as long together, its parts."""
    yield frame(0.5, top, ROOM.wide - 1, 48.0)
    yield Words((ROOM.wide / 2, top + 5.0), "the whole", 5.0)
    yield frame(0.5, top + 52, ROOM.wide - 1, 48.0)
    for share in (0.25, 0.75):
        yield Words((ROOM.wide * share, top + 57.0), "a part", 5.0)


SHEET = Sheet(
    "Part and whole",
    "To split so many things into two parts, and to put them together.",
    _pages,
    Use(pictures=("part-whole", "two-sets"), skills=("parts",)),
)
