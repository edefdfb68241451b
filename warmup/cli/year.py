"""``warmup year``: the year in lines, week by week, or as JSON.

``warmup year --json`` holds ``format`` ("warmup-year"), ``version`` (1), ``child``, ``today``, ``first_day``,
``last_day`` and ``weeks``. A week has ``week`` (of the lessons, 1 to 36), ``quarter``, ``state`` (before,
past, now, to come or skipped), ``again`` (0 for the first school week of the lessons, 1 for the next where
they are held), ``review``, ``mornings``, ``off`` (its school weekdays without school) and ``levels``: each
its ``level``, ``name`` and ``state``. A date is ISO 8601, null where there is none.
"""

import datetime as dt
from collections.abc import Iterator
from typing import Any

from warmup.english import date_words, listed
from warmup.schoolyear import WEEKS_A_QUARTER
from warmup.session.context import Context
from warmup.session.words import SMALL_THINGS, has_small_things
from warmup.session.yearview import (
    PlannedLevel,
    WeekRow,
    WeekState,
    day_view,
    levels_in,
    objects,
    year_view,
)

FORMAT = "warmup-year"
VERSION = 1
_STATES = {WeekState.BEFORE: "before"}


def year_lines(context: Context) -> Iterator[str]:
    """What today is, then a week a line by quarter, its levels below it."""
    view, today = year_view(context), day_view(context, context.today)
    yield f"Today is {date_words(context.today, year=True)}. {today.what()}"
    if view.last:
        yield f"The last day is {date_words(view.last, year=True)}."
    quarter, small = 0, False
    for row in view.rows:
        if _quarter(row) != quarter:
            quarter = _quarter(row)
            yield f"Quarter {quarter}"
        now = " (now)" if row.state is WeekState.NOW else ""
        yield f"  {row.told()}{now}"
        levels = _levels(context, row)
        for level in levels:
            yield f"    {level.named} ({level.state.value})"
        if named := objects(levels):
            yield f"    To have ready: {named}"
            small = small or has_small_things(named)
    if small:
        yield SMALL_THINGS
    names = [f"{rule.name} ({_when(rule.date, rule.yearly)})" for rule in context.family.countdowns]
    if names:
        yield f"To look forward to: {listed(names)}."


def _when(date: dt.date | None, yearly: str) -> str:
    return yearly if date is None else date_words(date, weekday=False, year=True)


def year_data(context: Context) -> dict[str, Any]:
    """The same as JSON values."""
    view = year_view(context)
    first = context.year.mornings[0] if context.year.mornings else None
    return {
        "format": FORMAT,
        "version": VERSION,
        "child": context.child.nickname,
        "today": context.today.isoformat(),
        "first_day": first and first.isoformat(),
        "last_day": view.last and view.last.isoformat(),
        "weeks": [_week_data(context, row) for row in view.rows],
    }


def _week_data(context: Context, row: WeekRow) -> dict[str, Any]:
    return {
        "week": row.week,
        "quarter": _quarter(row),
        "state": _STATES.get(row.state, row.state.value),
        "again": row.again,
        "review": row.review,
        "mornings": [date.isoformat() for date in row.mornings],
        "off": [day.date.isoformat() for day in row.days if day.off],
        "levels": [
            {"level": level.level, "name": level.named, "state": level.state.value}
            for level in _levels(context, row)
        ],
    }


def _levels(context: Context, row: WeekRow) -> tuple[PlannedLevel, ...]:
    """Those that open in it: none where the week comes again."""
    return () if row.again else levels_in(context, row.week)


def _quarter(row: WeekRow) -> int:
    return (row.week - 1) // WEEKS_A_QUARTER + 1
