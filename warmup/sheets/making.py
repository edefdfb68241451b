"""From the names of kinds to the sides of paper of one day."""

import datetime as dt
from collections.abc import Iterable, Iterator

from warmup.model import DayKind
from warmup.session.context import Context
from warmup.sheets.base import Day
from warmup.sheets.html import Side
from warmup.sheets.kinds import kinds

TITLE = "Sheets for the table"


def file_name(today: dt.date) -> str:
    """What a file of sheets is called where nobody says."""
    return f"warmup-sheets-{today.isoformat()}.html"


def sides_of(names: Iterable[str], day: Day) -> Iterator[Side]:
    """Every page of these kinds."""
    for name in names:
        sheet = kinds()[name]
        for page in sheet.pages(day):
            yield Side(sheet, page)


def day_of(context: Context, date: dt.date) -> Day:
    """A date, with the school days of its month."""
    first = date.replace(day=1)
    dates = [first + dt.timedelta(n) for n in range(31) if (first + dt.timedelta(n)).month == date.month]
    mornings = [morning for morning in map(context.morning, dates) if morning.kind is DayKind.SCHOOL]
    return Day(date, {morning.date: morning.school_day for morning in mornings})
