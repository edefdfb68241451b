"""Which school day, week and quarter a date is.

Planned mornings are the school weekdays from a first day on, less the days off, plus the mornings
held besides. School day n is the n-th of them, and a week is as many mornings as there
are school weekdays, so a day off moves everything on by itself. The lessons have weeks 1 to 36; a week that
the family holds takes one more of its weeks, and one it skips takes none. Dates are local dates: no clocks,
no time zones, so no day has 23 hours here.
"""

import datetime as dt
from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Collection, Iterable, Iterator
from heapq import merge
from itertools import groupby, islice, takewhile
from typing import NamedTuple

from warmup.model import Countdown, DayKind, Morning

WEEKS = 36
WEEKS_A_QUARTER = 9
LONGEST_STRETCH = 100
"""The longest stretch that days off are joined to, in days."""
_ONE = dt.timedelta(1)
HORIZON = 3 * 366
"""How many days the days off may push a year before it is cut short."""


class SchoolYear(NamedTuple):
    """A family's year: its mornings in order, and the number of mornings before the first of them.

    ``weekdays`` counts from 0 for Monday. ``before`` is the number of school mornings that passed
    before the family began (0 unless it began in the middle of a year). ``weeks`` holds the week of the
    lessons for each week of school, in order: a week that was held comes again, one that was skipped never.
    """

    weekdays: tuple[int, ...]
    mornings: tuple[dt.date, ...]
    before: int = 0
    weeks: tuple[int, ...] = tuple(range(1, WEEKS + 1))

    @property
    def mornings_a_week(self) -> int:
        """How many mornings a school week has, 1 to 7."""
        return len(self.weekdays)

    def index_of(self, date: dt.date) -> int:
        """How many planned mornings came before ``date``, also those before the family began.

        Time goes on outside the year: there each school weekday counts, back from the first morning (below
        ``before``, so it may be negative) and on from the last.
        """
        if self.mornings and date < self.mornings[0]:
            return self.before - self.weekdays_in(date, self.mornings[0])
        index = self.before + bisect_left(self.mornings, date)
        if self.mornings and date > self.mornings[-1]:
            index += self.weekdays_in(self.mornings[-1] + _ONE, date)
        return index

    def weekdays_after(self, first: dt.date, end: dt.date) -> int:
        """How many school weekdays lie between two dates, off or not."""
        return self.weekdays_in(first + _ONE, end)

    def weekdays_in(self, first: dt.date, end: dt.date) -> int:
        """How many school weekdays there are from ``first`` up to but not on ``end``."""
        weeks, days = divmod((end - first).days, 7)
        return weeks * len(self.weekdays) + sum(
            (first.weekday() + later) % 7 in self.weekdays for later in range(days)
        )

    def week_at(self, index: int) -> int:
        """The week of the lessons at this index, 1 to 36; outside the year the first or the last one."""
        return self.weeks[min(max(index // self.mornings_a_week, 0), len(self.weeks) - 1)]

    def begins(self, week: int) -> int:
        """The index of the first morning of a week, or where that is skipped of the one after it."""
        return bisect_left(self.weeks, week) * self.mornings_a_week

    def ends(self, week: int) -> int:
        """The index after the last morning of a week; as :meth:`begins` where it is skipped."""
        return bisect_right(self.weeks, week) * self.mornings_a_week

    def kind(self, date: dt.date) -> DayKind:
        """What the date is."""
        if not self.mornings or date < self.mornings[0]:
            return DayKind.BEFORE
        if date > self.mornings[-1]:
            return DayKind.AFTER
        if self.mornings[bisect_left(self.mornings, date)] == date:
            return DayKind.SCHOOL
        return DayKind.DAY_OFF if date.weekday() in self.weekdays else DayKind.WEEKEND

    def morning(
        self,
        date: dt.date,
        countdowns: tuple[Countdown, ...] = (),
        festive: tuple[str, ...] = (),
        *,
        reviews: Collection[int] = (),
        pennies: bool = True,
        animal: str = "Bear",
    ) -> Morning:
        """Everything about one date; ``reviews`` are the review weeks."""
        passed = bisect_right(self.mornings, date)
        number = self.before + passed
        # The last school day so far says the week, also over a weekend; before the first that one does.
        week = self.week_at(max(number - 1, self.before))
        left, right = bisect_left(self.mornings, date), passed
        return Morning(
            date=date,
            kind=self.kind(date),
            school_day=number,
            week=week,
            quarter=(week - 1) // WEEKS_A_QUARTER + 1,
            review=week in reviews,
            index=self.index_of(date),
            mornings_a_week=self.mornings_a_week,
            previous=self.mornings[left - 1] if left else None,
            next=self.mornings[right] if right < len(self.mornings) else None,
            countdowns=countdowns,
            festive=festive,
            pennies=pennies,
            animal=animal,
        )

    def school_week(self, date: dt.date) -> int:
        """The place in ``weeks`` of the school week of a date, whose week :meth:`morning` says."""
        passed = self.before + bisect_right(self.mornings, date)
        return max(passed - 1, self.before) // self.mornings_a_week

    def between(self, first: dt.date, end: dt.date) -> tuple[dt.date, ...]:
        """The planned mornings from ``first`` up to but not on ``end``."""
        return self.mornings[bisect_left(self.mornings, first) : bisect_left(self.mornings, end)]

    def stretches(self, days: Collection[dt.date]) -> tuple[tuple[dt.date, dt.date], ...]:
        """Planned mornings as stretches of those that follow one another, both ends included."""
        found: list[tuple[dt.date, dt.date]] = []
        before = None
        for day in self.mornings:
            if day in days:
                if found and found[-1][1] == before and (day - found[-1][0]).days < LONGEST_STRETCH:
                    found[-1] = (found[-1][0], day)
                else:
                    found.append((day, day))
            before = day
        return tuple(found)


def school_year(
    first_day: dt.date,
    weekdays: Collection[int],
    off: Iterable[tuple[dt.date, dt.date]] = (),
    extra: Iterable[dt.date] = (),
    first_week: int = 1,
    held: Collection[int] = (),
    skipped: Collection[int] = (),
    last_day: dt.date | None = None,
) -> SchoolYear:
    """The year that begins in ``first_week`` (1 to 36) on ``first_day`` or the first school day after it.

    ``off`` holds ranges of days off, both ends included. ``extra`` are mornings held on other days;
    one before ``first_day`` does not count. Each mention of a week in ``held`` makes it one school week
    longer, one in ``skipped`` takes it out; a week before ``first_week`` stays as it was, and where all are
    skipped the last one stays. No morning comes after ``last_day``, where the family says one. ValueError
    without a weekday or for a week out of range.
    """
    days = tuple(sorted(set(weekdays)))
    if not days or not set(days) <= set(range(7)):
        raise ValueError(f"school weekdays are 0 to 6, at least one of them, not {weekdays!r}")
    for week in (first_week, *held, *skipped):
        if not 1 <= week <= WEEKS:
            raise ValueError(f"a year has weeks 1 to {WEEKS}, not {week}")
    weeks = _lesson_weeks(first_week, held, skipped)
    before = (first_week - 1) * len(days)
    free = tuple(off)
    weekly = _weekly(first_day, days)
    school = (day for day in weekly if not any(start <= day <= last for start, last in free))
    besides = sorted(day for day in set(extra) if day >= first_day)
    # Two ordered rows of dates become one, and a date that stands in both is one morning.
    planned = (day for day, _same in groupby(merge(school, besides)))
    mornings = takewhile(lambda day: last_day is None or day <= last_day, planned)
    return SchoolYear(days, tuple(islice(mornings, len(weeks) * len(days) - before)), before, weeks)


def _lesson_weeks(first: int, held: Collection[int], skipped: Collection[int]) -> tuple[int, ...]:
    past = range(1, first)
    to_come = [
        week
        for week in range(first, WEEKS + 1)
        for _ in range(week not in skipped and 1 + sum(each == week for each in held))
    ]
    return (*past, *(to_come or [WEEKS]))


def lessons_from(
    weeks: tuple[int, ...], first: int, at: int, week: int
) -> tuple[tuple[int, ...], tuple[int, ...]] | None:
    """The weeks to hold and to skip so that the school week ``at`` has the lessons of ``week``.

    ``weeks`` and ``at`` are those of :attr:`SchoolYear.weeks`, of a family that began in the week ``first``.
    Lessons that are further on skip the weeks just before: all that stood from ``at`` on and before ``week``
    goes, a held week's repeats first of all. Lessons that are further back hold ``week`` until then, and what
    comes after it moves on as it stands. None for a week before ``first``, or one past the last.
    """
    if not first <= week <= WEEKS:
        return None
    begins, ends = bisect_left(weeks, week), bisect_right(weeks, week)
    if begins > at:
        found = [*weeks[:at], *([] if begins < ends else [week]), *weeks[begins:]]
    else:
        found = [*weeks[:ends], *[week] * (at + 1 - ends), *weeks[ends:]]
    counts = Counter(found)
    lessons = range(first, WEEKS + 1)
    held = tuple(each for each in lessons for _ in range(counts[each] - 1))
    return held, tuple(each for each in lessons if not counts[each])


def _weekly(first: dt.date, weekdays: Collection[int]) -> Iterator[dt.date]:
    """The dates from ``first`` up to the horizon that fall on these weekdays."""
    # Dates of files end with the year 2999, so the calendar goes on behind the horizon.
    for later in range(HORIZON + 1):
        date = first + dt.timedelta(later)
        if date.weekday() in weekdays:
            yield date
