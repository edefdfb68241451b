"""A whole year as a family lives it, told to the program as its year page does, against a count of our own.

The count goes through every date of the stdlib's ``calendar.Calendar`` (Python Library Reference, calendar:
``itermonthdates``), one after another, with a set of days off and a list of lessons: no index, no search, and
nothing of the program's. What a school day, a held week and an extra morning are is common practice, no
source.
"""

import calendar
import datetime as dt
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.household import FAMILY, Clock, context_at
from warmup.config.family import Child, load
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.schoolyear import school_year
from warmup.session import undoing
from warmup.session.context import Context, open_context
from warmup.session.year_changes import Found, hold_week, in_week, make, turn_days
from warmup.session.yearview import day_view, last_day, year_view

ONE = dt.timedelta(1)
MONDAY = dt.date(2026, 8, 31)


class Counted(NamedTuple):
    """What a date is by the count: its number so far, the week of the lessons, and whether it is school."""

    number: int
    week: int
    school: bool


def dates(first: dt.date, last: dt.date) -> Iterator[dt.date]:
    """Every date in between, as the months of the stdlib's calendar hold them."""
    months = calendar.Calendar(firstweekday=6)
    year, month = first.year, first.month
    while (year, month) <= (last.year, last.month):
        for date in months.itermonthdates(year, month):
            if date.month == month and first <= date <= last:
                yield date
        year, month = (year, month + 1) if month < 12 else (year + 1, 1)


def count(
    first: dt.date,
    weekdays: set[int],
    off: set[dt.date],
    extra: set[dt.date],
    lessons: list[int],
    before: int = 0,
) -> dict[dt.date, Counted]:
    """Each date from the first on until the lessons of every week had their mornings."""
    found: dict[dt.date, Counted] = {}
    number, left = before, [week for week in lessons for _ in weekdays]
    week = lessons[0]
    for date in dates(first, first + 3 * 365 * ONE):
        school = date in extra or (date.weekday() in weekdays and date not in off)
        if school:
            number, week = number + 1, left.pop(0)
        found[date] = Counted(number, week, school)
        if not left:
            return found
    raise AssertionError("a year without an end")


def stretch(first: dt.date, days: int) -> set[dt.date]:
    return {first + n * ONE for n in range(days)}


def agrees(context: Context, counted: dict[dt.date, Counted]) -> None:
    """School day, week and last day, on every date of the year."""
    year = context.year
    for date, (number, week, school) in counted.items():
        morning = context.morning(date)
        assert (morning.school_day, morning.is_school) == (number, school), date
        if number > year.before:
            assert morning.week == week, date
    assert last_day(year) == max(counted) == year_view(context).last
    shown = [date for row in year_view(context).rows for date in row.mornings]
    assert shown == [date for date, each in counted.items() if each.school]


def tell(context: Context, found: Found) -> str:
    """Do it as the page does."""
    journal = context.journal
    assert journal is not None

    def keep(what: str, work: Callable[[], None], **said: object) -> None:
        undoing.logged(context, journal, what, work, said)

    return make(context, found, keep)


def test_the_whole_year_with_sick_days_a_break_saturdays_a_held_week_a_january_starter_and_twins(
    home: Path, clock: Clock
) -> None:
    january = Child("Fern", first_day=dt.date(2027, 1, 11), first_week=1)
    twins = Child("Moss"), Child("Reed")
    family = FAMILY._replace(children=(*twins, january), known_until=None)
    context = context_at(home, clock, family, MONDAY)
    weekdays, lessons = {0, 1, 2, 3}, list(range(1, 37))
    off: set[dt.date] = set()
    extra: set[dt.date] = set()
    agrees(context, count(MONDAY, weekdays, off, extra, lessons))

    # Eight sick days in a row, told one after another as they come: Monday, October 5 on.
    sick = [date for date in sorted(stretch(dt.date(2026, 10, 5), 11)) if date.weekday() < 4]
    assert len(sick) == 8
    for date in sick:
        context.turn_to(date)
        assert tell(context, turn_days(context, date, date)).startswith("Off: ")
        off.add(date)
        agrees(context, count(MONDAY, weekdays, off, extra, lessons))

    # A break of two weeks, its ends marked the wrong way round; then three Saturdays.
    said = tell(context, turn_days(context, dt.date(2027, 1, 3), dt.date(2026, 12, 21)))
    assert said == "Off: December 21 to January 3, 8 school days. Last day: May 20 → June 3."
    off |= stretch(dt.date(2026, 12, 21), 14)
    agrees(context, count(MONDAY, weekdays, off, extra, lessons))
    for saturday in (dt.date(2027, 1, 9), dt.date(2027, 1, 16), dt.date(2027, 2, 6)):
        assert tell(context, turn_days(context, saturday, saturday)).startswith("An extra morning: Saturday")
        extra.add(saturday)
        agrees(context, count(MONDAY, weekdays, off, extra, lessons))

    # One held week.
    assert tell(context, hold_week(context, 17)) == (
        "Week 17 takes one week more. Last day: May 31 → June 7."
    )
    lessons.insert(17, 17)
    agrees(context, count(MONDAY, weekdays, off, extra, lessons))

    # The same for the other twin, and a year of her own for the starter of January.
    reed, fern = opened(home, clock, "Reed"), opened(home, clock, "Fern")
    agrees(reed, count(MONDAY, weekdays, off, extra, lessons))
    agrees(fern, count(dt.date(2027, 1, 11), weekdays, off, extra, list(range(1, 37))))
    tell(fern, hold_week(fern, 5))
    starter = [*range(1, 6), *range(5, 37)]
    agrees(fern, count(dt.date(2027, 1, 11), weekdays, off, extra, starter))
    saved = load(home / "family.toml")
    assert saved.held_weeks == (17,) and saved.children[2].held_weeks == (5,)

    # And school after all on one of the sick days.
    moss = opened(home, clock, "Moss")
    assert day_view(moss, sick[0]).what() == "A day off. 20 school days so far, week 5, a review week."
    assert tell(moss, turn_days(moss, sick[3], sick[3])).startswith("School after all: Thursday")
    off.remove(sick[3])
    agrees(moss, count(MONDAY, weekdays, off, extra, lessons))


def opened(home: Path, clock: Clock, nickname: str) -> Context:
    """The context of one of the children, by the file as it is now."""
    day = dt.date(2027, 3, 3)
    family = load(home / "family.toml")
    return open_context(Places(home, home), family, day, Journal.open(home, clock), child=nickname)


def test_a_family_that_begins_in_january_in_the_nineteenth_week(home: Path, clock: Clock) -> None:
    first = dt.date(2027, 1, 11)
    family = FAMILY._replace(first_day=first, first_week=19, weekdays=(0, 2, 4), known_until=None)
    context = context_at(home, clock, family, first)
    lessons = list(range(19, 37))
    agrees(context, count(first, {0, 2, 4}, set(), set(), lessons, before=18 * 3))
    friday = dt.date(2027, 2, 12)
    tell(context, turn_days(context, friday, friday))
    context.turn_to(dt.date(2027, 3, 2))
    tell(context, in_week(context, 24))
    assert context.morning().week == 24
    at = (context.morning().school_day - 1) // 3 - 18
    lessons = [*lessons[:5], *[24] * (at - 5), *lessons[5:]]
    agrees(context, count(first, {0, 2, 4}, {friday}, set(), lessons, before=18 * 3))
    assert hold_week(context, 18) == "You began in week 19: what was before it stays."


@pytest.mark.slow
@given(
    st.dates(dt.date(2024, 1, 1), dt.date(2030, 12, 31)),
    st.sets(st.integers(0, 6), min_size=1),
    st.lists(st.tuples(st.integers(0, 260), st.integers(1, 16)), max_size=5),
    st.sets(st.integers(0, 200), max_size=4),
    st.lists(st.integers(1, 36), max_size=4),
)
def test_any_year_is_the_count(
    first: dt.date, weekdays: set[int], off: list[tuple[int, int]], extra: set[int], held: list[int]
) -> None:
    free = {date for at, days in off for date in stretch(first + at * ONE, days)}
    besides = {first + at * ONE for at in extra}
    lessons = sorted([*range(1, 37), *held])
    counted = count(first, weekdays, free, besides, lessons)
    ranges = [(first + at * ONE, first + (at + days - 1) * ONE) for at, days in off]
    year = school_year(first, weekdays, ranges, besides, held=held)
    assert year.mornings == tuple(date for date, each in counted.items() if each.school)
    for date, (number, week, _) in counted.items():
        morning = year.morning(date)
        assert morning.school_day == number and (not number or morning.week == week)


@pytest.mark.slow
@settings(max_examples=40)
@given(
    st.sets(st.integers(0, 6), min_size=1, max_size=6),
    st.lists(st.tuples(st.integers(-3, 90), st.sampled_from([0, 0, 0, 1, 3, 9, 20])), max_size=8),
)
def test_whatever_days_are_turned_the_year_is_the_count(
    tmp_path_factory: pytest.TempPathFactory, weekdays: set[int], turns: list[tuple[int, int]]
) -> None:
    """Off where one of them is school, else school after all, else an extra morning; in sets of dates."""
    places = Places(*[tmp_path_factory.getbasetemp() / "nowhere"] * 2)
    family = FAMILY._replace(weekdays=tuple(sorted(weekdays)), known_until=None)
    context = open_context(places, family, MONDAY, None, saved=False)
    off: set[dt.date] = set()
    extra: set[dt.date] = set()
    lessons = list(range(1, 37))
    counted = count(MONDAY, weekdays, off, extra, lessons)
    for at, more in turns:
        days = stretch(MONDAY + at * ONE, more + 1)
        found = turn_days(context, min(days), max(days))
        begins = min(date for date, each in counted.items() if each.school)
        if any(day in counted and counted[day].school for day in days):
            off, extra = off | days, extra - days
        elif any(MONDAY <= day <= max(counted) and day.weekday() in weekdays for day in days):
            off -= days
        elif not more and begins < min(days) < max(counted):
            extra |= days
        else:
            assert isinstance(found, str)
        make(context, found, lambda _what, work, **_said: work())
        counted = count(MONDAY, weekdays, off, extra, lessons)
        assert context.year.mornings == tuple(date for date, each in counted.items() if each.school)
        assert last_day(context.year) == max(counted)


def test_the_count_itself_on_a_week_written_out_by_hand() -> None:
    """Monday and Tuesday are school, the first Tuesday is off, the Saturday counts."""
    counted = count(MONDAY, {0, 1}, {MONDAY + ONE}, {MONDAY + 5 * ONE}, [1, 2])
    assert [each.number for each in counted.values()] == [1, 1, 1, 1, 1, 2, 2, 3, 4]
    assert [each.week for each in counted.values()] == [1, 1, 1, 1, 1, 1, 1, 2, 2]
