"""This month's calendar, as it hangs on the wall, with the number of each school day."""

import calendar
from collections.abc import Iterator

from warmup.english import MONTHS, WALL_WEEK
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Words, frame, segment
from warmup.sheets.paper import ROOM

CELL, HIGH, HEAD = 27.0, 34.0, 10.0


def _pages(day: Day) -> Iterator[Page]:
    yield Page(f"{MONTHS[day.date.month - 1]} {day.date.year}", tuple(_month(day)))


def _month(day: Day) -> Iterator[Drawn]:
    weeks = calendar.Calendar(calendar.SUNDAY).monthdatescalendar(day.date.year, day.date.month)
    left = (ROOM.wide - 7 * CELL) / 2
    for n, name in enumerate(WALL_WEEK):
        yield Words((left + (n + 0.5) * CELL, HEAD / 2), name, 4.5)
    for row, week in enumerate(weeks):
        for column, date in enumerate(week):
            if date.month != day.date.month:
                continue
            x, y = left + column * CELL, HEAD + row * HIGH
            yield frame(x, y, CELL, HIGH)
            yield Words((x + CELL / 2, y + 12), str(date.day), 12.0)
            if number := day.numbers.get(date):
                yield segment(x + 4, y + 22, x + CELL - 4, y + 22)
                yield Words((x + CELL / 2, y + 28), f"day {number}", 4.5)


SHEET = Sheet(
    "This month",
    "To cross off; under the line the number of the school day.",
    _pages,
    Use(("wall calendar",), ("month-calendar",)),
    monthly=True,
)
