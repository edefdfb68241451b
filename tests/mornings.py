"""Mornings for tests, made without the school year's own arithmetic."""

import datetime as dt

from warmup.model import Countdown, DayKind, Morning


def morning(
    day: dt.date = dt.date(2026, 11, 25), school_day: int = 47, *, school: bool = True, pennies: bool = True
) -> Morning:
    """A morning on this date that is school day ``school_day`` of a four-morning week.

    The countdowns lie 3, 10 and 24 days ahead: inside a week, inside two, and across a month end.
    """
    week = (school_day - 1) // 4 + 1
    return Morning(
        date=day,
        kind=DayKind.SCHOOL if school else DayKind.WEEKEND,
        school_day=school_day,
        week=week,
        quarter=(week - 1) // 9 + 1,
        review=week % 5 == 0,
        index=school_day - 1,
        previous=day - dt.timedelta(1),
        next=day + dt.timedelta(1),
        countdowns=(
            Countdown("the lake", day + dt.timedelta(3)),
            Countdown("the kite day", day + dt.timedelta(10)),
            Countdown("Grandma's visit", day + dt.timedelta(24)),
        ),
        pennies=pennies,
    )


def many(count: int, start: dt.date = dt.date(2026, 8, 31)) -> list[Morning]:
    """Mornings on dates that walk through two years, with every school day number from 1 to 144."""
    return [morning(start + dt.timedelta(n * 730 // count), 1 + n % 144) for n in range(count)]
