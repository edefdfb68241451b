"""A school year by ``calendar`` and ``datetime`` alone, to see whether the program counts right.

Four mornings a week from Monday on, 144 in all, without the holidays of the first form and the days off.
"""

import calendar
import datetime as dt
import tomllib
from collections.abc import Collection
from pathlib import Path

FIRST = dt.date(2026, 8, 31)
A_WEEK, MORNINGS, A_QUARTER, CHECKS = 4, 144, 9, 2
DAY = dt.timedelta(1)
PLAN = Path(__file__).parents[2] / "routines" / "year.toml"


def nth(year: int, month: int, weekday: int, number: int) -> dt.date:
    """The so-manyth such weekday of a month; -1 is the last."""
    days = [week[weekday] for week in calendar.monthcalendar(year, month) if week[weekday]]
    return dt.date(year, month, days[number if number < 0 else number - 1])


def holidays() -> set[dt.date]:
    """The days off that the first form has ticked: federal holidays, and two stretches of its own."""
    thanks = nth(2026, 11, calendar.THURSDAY, 4)
    winter = nth(2026, 12, calendar.MONDAY, 3)
    return {
        nth(2026, 9, calendar.MONDAY, 1),
        nth(2026, 10, calendar.MONDAY, 2),
        dt.date(2026, 11, 11),
        *(thanks + n * DAY for n in range(2)),
        *(winter + n * DAY for n in range(12)),
        nth(2027, 1, calendar.MONDAY, 3),
        nth(2027, 2, calendar.MONDAY, 3),
        nth(2027, 5, calendar.MONDAY, -1),
    }


class Calendar:
    """One family's school days, as far as days off are known; ``off`` grows through the year."""

    def __init__(self) -> None:
        self.off = holidays()
        self._days: tuple[int, list[dt.date]] = (-1, [])

    @property
    def mornings(self) -> list[dt.date]:
        """The planned mornings in order."""
        if self._days[0] != len(self.off):
            days, day = list[dt.date](), FIRST
            while len(days) < MORNINGS:
                if day.weekday() < A_WEEK and day not in self.off:
                    days.append(day)
                day += DAY
            self._days = len(self.off), days
        return self._days[1]

    def planned(self, day: dt.date) -> bool:
        """Whether there is school on this day."""
        return day in self.mornings

    def number(self, day: dt.date) -> int:
        """The number of the school day, or of the last one before."""
        return sum(each <= day for each in self.mornings)

    def week(self, day: dt.date) -> int:
        """The week of the lessons, 1 to 36."""
        return max(0, self.number(day) - 1) // A_WEEK + 1

    def quarter(self, day: dt.date) -> int:
        """The quarter, 1 to 4."""
        return (self.week(day) - 1) // A_QUARTER + 1

    def of_week(self, week: int) -> list[dt.date]:
        """The mornings of a week."""
        return self.mornings[(week - 1) * A_WEEK : week * A_WEEK]

    def reviews(self, held: Collection[dt.date], today: dt.date) -> list[int]:
        """The review weeks: a week later where fewer than two mornings of one were held, and it is over.

        Before the first warm-up nothing is missed.
        """
        with PLAN.open("rb") as file:
            planned: list[int] = tomllib.load(file)["review_weeks"]
        found = set(planned)
        since = self.number(min(held, default=today)) - 1
        for start in planned:
            week = start
            while self._went_by(week, since, held, today) and week < 36 and week + 1 not in found:
                found.remove(week)
                week += 1
                found.add(week)
        return sorted(found)

    def _went_by(self, week: int, since: int, held: Collection[dt.date], today: dt.date) -> bool:
        days = self.of_week(week)
        over = days[-1] < today and (week - 1) * A_WEEK >= since
        return over and sum(day in held for day in days) < CHECKS
