"""The days of the week and the months of the year, each a strip to point along or to cut."""

from collections.abc import Iterator, Sequence

from warmup.english import MONTHS, WALL_WEEK
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Line, Words, frame, segment
from warmup.sheets.paper import ROOM

WIDE, HIGH = 80.0, 20.0


def _pages(_day: Day) -> Iterator[Page]:
    apart = (ROOM.wide - 2 * WIDE) / 3
    days, months = strip(WALL_WEEK, apart), strip(MONTHS, 2 * apart + WIDE)
    yield Page("", (*days, *months))


def strip(names: Sequence[str], left: float) -> Iterator[Drawn]:
    """The names one below the other, in the order they come in."""
    yield frame(left, 0.0, WIDE, len(names) * HIGH, Line.CUT)
    for n in range(1, len(names)):
        yield segment(left, n * HIGH, left + WIDE, n * HIGH, Line.FAINT)
    for n, name in enumerate(names):
        yield Words((left + WIDE / 2, (n + 0.5) * HIGH), name, 9.0)


SHEET = Sheet(
    "Days and months",
    "To point along: what comes next, what came before.",
    _pages,
    Use(("day strip",), ("day-strip", "month-strip")),
)
