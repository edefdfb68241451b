"""The days off a family may take in one go: the federal holidays, and the two breaks most schools have.

The federal list is that of 5 U.S.C. 6103(a): a holiday on a Saturday is observed on the Friday before
it (6103(b)), one on a Sunday on the Monday after it (Executive Order 11582). Thanksgiving as two days
and winter as the ten weekdays around Christmas and New Year are common practice, no source.
"""

import datetime as dt
from collections.abc import Collection, Iterator
from functools import lru_cache
from typing import Any, NamedTuple

from dateutil.rrule import FR, MO, TH, YEARLY, rrule

_FEDERAL: tuple[tuple[str, dict[str, Any]], ...] = (
    ("New Year’s Day", {"bymonth": 1, "bymonthday": 1}),
    ("Birthday of Martin Luther King, Jr.", {"bymonth": 1, "byweekday": MO(3)}),
    ("Washington’s Birthday", {"bymonth": 2, "byweekday": MO(3)}),
    ("Memorial Day", {"bymonth": 5, "byweekday": MO(-1)}),
    ("Juneteenth National Independence Day", {"bymonth": 6, "bymonthday": 19}),
    ("Independence Day", {"bymonth": 7, "bymonthday": 4}),
    ("Labor Day", {"bymonth": 9, "byweekday": MO(1)}),
    ("Columbus Day", {"bymonth": 10, "byweekday": MO(2)}),
    ("Veterans Day", {"bymonth": 11, "bymonthday": 11}),
    ("Thanksgiving Day", {"bymonth": 11, "byweekday": TH(4)}),
    ("Christmas Day", {"bymonth": 12, "bymonthday": 25}),
)
_SHIFT = {5: -1, 6: 1}
"""How many days from a holiday on a Saturday or a Sunday to the day it is observed."""


class Holiday(NamedTuple):
    """Days off with a name, from ``first`` to ``last``, both included."""

    name: str
    first: dt.date
    last: dt.date

    def touches(self, weekdays: Collection[int]) -> bool:
        """Whether one of these weekdays (0 is Monday) is among its days."""
        length = (self.last - self.first).days + 1
        return any((self.first + dt.timedelta(n)).weekday() in weekdays for n in range(length))


@lru_cache(maxsize=16)
def federal(year: int) -> tuple[Holiday, ...]:
    """The eleven federal holidays of a year, in its order, each on the day it is observed.

    New Year's Day on a Saturday is observed in the year before.
    """
    found = []
    for name, rule in _FEDERAL:
        (moment,) = rrule(YEARLY, dtstart=dt.datetime(year, 1, 1), count=1, **rule)
        day = moment.date()
        observed = day + dt.timedelta(_SHIFT.get(day.weekday(), 0))
        found.append(Holiday(name, observed, observed))
    return tuple(found)


@lru_cache(maxsize=16)
def breaks(year: int) -> tuple[Holiday, ...]:
    """Thanksgiving (Thursday and Friday) and the winter break that begins in this year.

    The break runs from the Monday of the week in which Christmas Day is observed to Friday of the next.
    """
    thursday, christmas = (_observed(year, name) for name in ("Thanksgiving Day", "Christmas Day"))
    monday = christmas - dt.timedelta(christmas.weekday())
    friday = rrule(YEARLY, dtstart=dt.datetime.combine(monday, dt.time()), count=2, byweekday=FR)[1].date()
    return (
        Holiday("Thanksgiving (2 days)", thursday, thursday + dt.timedelta(1)),
        Holiday("Winter break (10 days)", monday, friday),
    )


def _observed(year: int, name: str) -> dt.date:
    return next(holiday.first for holiday in federal(year) if holiday.name == name)


def offered(first: dt.date, last: dt.date, weekdays: Collection[int]) -> tuple[Holiday, ...]:
    """What falls on a school weekday from ``first`` to ``last``, in order of its first day.

    Thanksgiving Day is part of its two days and not offered again.
    """
    inside = (each for each in _all(first.year, last.year + 1) if each.last >= first and each.first <= last)
    return tuple(sorted((each for each in inside if each.touches(weekdays)), key=lambda each: each[1:]))


def _all(first: int, last: int) -> Iterator[Holiday]:
    for year in range(max(1, first - 1), last + 1):
        yield from (each for each in federal(year) if each.name != "Thanksgiving Day")
        yield from breaks(year)
