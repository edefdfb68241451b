"""The school year: every date has an answer, and numbering never skips, doubles or turns back."""

import calendar
import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.bank import reference
from warmup.model import Countdown, DayKind
from warmup.schoolyear import SchoolYear, lessons_from, school_year
from warmup.text import LAST_YEAR

DAYS = st.dates(dt.date(2020, 1, 1), dt.date(2060, 12, 31))
WEEKDAYS = st.sets(st.integers(0, 6), min_size=1)
ONE = dt.timedelta(1)


@st.composite
def years(rng: st.DrawFn) -> SchoolYear:
    """Any family's year between 2020 and 2060, with days off, extra mornings and a start in the middle."""
    first = rng(DAYS)
    starts = st.integers(0, 400).map(lambda n: first + n * ONE)
    off = rng(
        st.lists(st.tuples(starts, st.integers(0, 30)).map(lambda t: (t[0], t[0] + t[1] * ONE)), max_size=5)
    )
    extra = rng(st.lists(starts, max_size=4))
    return school_year(first, rng(WEEKDAYS), off, extra, rng(st.integers(1, 36)))


@pytest.mark.slow
@given(years())
def test_mornings_are_numbered_without_a_gap_and_each_knows_its_neighbors(year: SchoolYear) -> None:
    number, last = year.before, None
    for day in year.mornings:
        morning = year.morning(day, reviews=(5, 9, 14))
        number += 1
        assert morning.school_day == number
        assert morning.index == number - 1
        assert morning.date == day and morning.mornings_a_week == year.mornings_a_week
        assert morning.kind is DayKind.SCHOOL
        assert morning.previous == last
        assert morning.week == (number - 1) // year.mornings_a_week + 1
        assert 1 <= morning.week <= 36 and morning.quarter == (morning.week + 8) // 9
        assert morning.review == (morning.week in (5, 9, 14))
        last = day
    assert number == 36 * year.mornings_a_week


@pytest.mark.slow
@given(years(), DAYS)
def test_every_date_answers_and_the_count_never_turns_back(year: SchoolYear, day: dt.date) -> None:
    one, other = year.morning(day), year.morning(day + ONE)
    assert one.school_day <= other.school_day <= one.school_day + 1
    assert one.week <= other.week <= one.week + 1
    assert (one.next is None) == (day >= year.mornings[-1])
    assert one.next is None or year.morning(one.next).is_school
    assert one.is_school == (day in year.mornings)
    if day < year.mornings[0]:
        assert one.kind is DayKind.BEFORE and one.school_day == year.before
    elif day > year.mornings[-1]:
        assert one.kind is DayKind.AFTER and one.week == 36
    elif not one.is_school:
        assert one.kind is (DayKind.DAY_OFF if day.weekday() in year.weekdays else DayKind.WEEKEND)


@given(DAYS, WEEKDAYS)
def test_mornings_fall_on_the_school_weekdays_of_the_stdlib_calendar(
    first: dt.date, weekdays: set[int]
) -> None:
    year = school_year(first, weekdays)
    expected = [
        d
        for d in (first + n * ONE for n in range(36 * 7 + 7))
        if calendar.weekday(d.year, d.month, d.day) in weekdays
    ]
    assert list(year.mornings) == expected[: len(year.mornings)]


@pytest.mark.slow
@given(DAYS, WEEKDAYS, st.data())
def test_a_day_off_moves_everything_after_it_by_one(
    first: dt.date, weekdays: set[int], data: st.DataObject
) -> None:
    plain = school_year(first, weekdays)
    off = data.draw(st.sampled_from(plain.mornings[:-1]))
    moved = school_year(first, weekdays, [(off, off)])
    for day in plain.mornings:
        assert moved.morning(day).school_day == plain.morning(day).school_day - (day >= off)


@pytest.mark.slow
@given(DAYS, st.data())
def test_an_extra_morning_counts_from_its_day_on(first: dt.date, data: st.DataObject) -> None:
    plain = school_year(first, (0, 1, 2, 3))
    free = [
        d
        for d in (first + n * ONE for n in range(200))
        if not plain.morning(d).is_school and d > plain.mornings[0]
    ]
    extra = data.draw(st.sampled_from(free))
    with_it = school_year(first, (0, 1, 2, 3), extra=[extra])
    assert with_it.morning(extra).is_school
    for n in range(200):
        day = first + n * ONE
        assert with_it.morning(day).school_day == plain.morning(day).school_day + (day >= extra)


def test_odd_dates_of_the_reference_change_nothing() -> None:
    """Leap days, year ends, 53-week years and clock changes: calendar.toml, all sourced there."""
    table = reference("calendar")
    odd = [dt.date(year, 2, 29) for year in table["leap_years"]["leap"] if 2020 <= year <= 2060]
    odd += [dt.date(year, 12, 31) for year in table["iso_53"]["years"] if 2020 <= year <= 2060]
    odd += [
        dt.date.fromisoformat(row[end])
        for row in table["daylight_saving"]["rows"]
        for end in ("begins", "ends")
    ]
    assert len(odd) > 15
    for day in odd:
        year = school_year(day - 30 * ONE, range(7))
        numbers = [year.morning(day + n * ONE).school_day for n in range(-2, 3)]
        assert numbers == [29, 30, 31, 32, 33], day


def test_a_year_may_begin_in_the_middle() -> None:
    year = school_year(dt.date(2027, 1, 11), (0, 1, 2, 3), first_week=19)
    first = year.morning(dt.date(2027, 1, 11))
    assert (first.school_day, first.week, first.quarter, first.index) == (73, 19, 3, 72)
    assert len(year.mornings) == 18 * 4
    before = year.morning(dt.date(2027, 1, 10)).week
    assert before == 19 and type(before) is int, "it is written into the JSON of a routine"


def test_a_five_morning_family_has_five_mornings_a_week() -> None:
    year = school_year(dt.date(2026, 8, 31), range(5))
    assert [year.morning(day).week for day in year.mornings] == [n // 5 + 1 for n in range(180)]


@pytest.mark.parametrize(("weekdays", "week"), [((), 1), ((7,), 1), ((0,), 0), ((0,), 37)])
def test_what_is_no_year_is_refused(weekdays: tuple[int, ...], week: int) -> None:
    with pytest.raises(ValueError, match="not"):
        school_year(dt.date(2026, 8, 31), weekdays, first_week=week)


def test_endless_days_off_end_the_year_early_and_still_answer() -> None:
    year = school_year(dt.date(2026, 8, 31), (0, 1, 2, 3), [(dt.date(2026, 9, 10), dt.date(2060, 1, 1))])
    assert len(year.mornings) == 7
    assert year.morning(dt.date(2026, 9, 9)).next is None
    nothing = school_year(dt.date(2026, 8, 31), (0,), [(dt.date(2026, 1, 1), dt.date(2060, 1, 1))])
    assert nothing.morning(dt.date(2026, 9, 7)).kind is DayKind.BEFORE


MONDAY = dt.date(2026, 8, 31)


def days(*offsets: int) -> tuple[dt.date, ...]:
    """The dates so many days after the first Monday."""
    return tuple(MONDAY + offset * ONE for offset in offsets)


def off(first: int, last: int) -> tuple[dt.date, dt.date]:
    """Days off, both ends included."""
    return MONDAY + first * ONE, MONDAY + last * ONE


def test_a_date_knows_the_mornings_before_and_after_it_and_what_it_is() -> None:
    year = school_year(MONDAY, (0, 1, 2, 3), [(MONDAY + ONE, MONDAY + 2 * ONE)])
    kinds = [DayKind.BEFORE, DayKind.SCHOOL, *[DayKind.DAY_OFF] * 2, DayKind.SCHOOL, *[DayKind.WEEKEND] * 3]
    assert [year.morning(MONDAY + n * ONE).kind for n in range(-1, 7)] == kinds
    assert [year.morning(MONDAY + n * ONE).previous for n in (-1, 0, 1, 3, 5)] == [
        None, None, MONDAY, MONDAY, MONDAY + 3 * ONE
    ]  # fmt: skip
    assert [year.morning(MONDAY + n * ONE).next for n in (-1, 0, 2, 3)] == [
        MONDAY, *days(3), *days(3), *days(7)
    ]  # fmt: skip
    assert [year.index_of(MONDAY + n * ONE) for n in (-8, -1, 0, 1, 3, 4)] == [-4, 0, 0, 1, 1, 2]
    last = year.mornings[-1]
    assert year.kind(last) is DayKind.SCHOOL and year.kind(last + ONE) is DayKind.AFTER


def test_a_morning_carries_what_the_family_says_of_the_day() -> None:
    year = school_year(MONDAY, (0,))
    plain = year.morning(MONDAY)
    assert plain.countdowns == () and plain.festive == () and plain.pennies and plain.animal == "Bear"
    lake = Countdown("the lake", MONDAY + ONE)
    told = year.morning(MONDAY, (lake,), ("a birthday",), pennies=False, animal="Owl")
    assert (told.countdowns, told.festive, told.pennies, told.animal) == (
        (lake,), ("a birthday",), False, "Owl"
    )  # fmt: skip


def test_a_family_begins_with_no_morning_before_its_first() -> None:
    assert SchoolYear((0,), days(0)).index_of(MONDAY) == 0
    assert school_year(MONDAY, (0,)).morning(MONDAY).school_day == 1


@pytest.mark.parametrize(
    ("first", "end", "expected"),
    [(0, 4, (0, 1, 2, 3)), (1, 3, (1, 2)), (1, 1, ()), (-9, 2, (0, 1)), (4, 8, (7,)), (5, 6, ())],
)
def test_the_mornings_between_two_dates_are_those_from_the_first_up_to_the_other(
    first: int, end: int, expected: tuple[int, ...]
) -> None:
    year = school_year(MONDAY, (0, 1, 2, 3))
    assert year.between(*days(first, end)) == days(*expected)


@pytest.mark.parametrize(
    ("missed", "expected"),
    [
        ((), []),
        ((1,), [(1, 1)]),
        ((0, 1, 2), [(0, 2)]),
        ((3, 7), [(3, 7)]),
        ((0, 2, 3, 8), [(0, 0), (2, 3), (8, 8)]),
        ((5, 6, 7), [(7, 7)]),
    ],
)
def test_mornings_that_follow_one_another_are_one_stretch_also_over_a_weekend(
    missed: tuple[int, ...], expected: list[tuple[int, int]]
) -> None:
    year = school_year(MONDAY, (0, 1, 2, 3))
    assert year.stretches(days(*missed)) == tuple(days(*ends) for ends in expected)


def test_a_stretch_is_a_hundred_days_long_at_most() -> None:
    year = school_year(MONDAY, range(7))
    assert year.stretches(year.mornings[:100]) == (days(0, 99),)
    assert year.stretches(year.mornings[:101]) == (days(0, 99), days(100, 100))


def test_days_off_hold_from_the_first_to_the_last_of_them() -> None:
    year = school_year(MONDAY, range(7), [off(2, 3), off(6, 6)])
    assert year.mornings[:5] == days(0, 1, 4, 5, 7)


def test_days_off_may_push_the_year_by_three_years_and_no_further() -> None:
    """Three leap years: 1098 days, as ``HORIZON`` says."""
    late = school_year(MONDAY, range(7), [off(0, 1097)])
    assert late.mornings == days(1098)
    assert school_year(MONDAY, range(7), [off(0, 1098)]).mornings == ()


def test_a_year_begun_on_the_last_date_a_file_may_hold_is_whole() -> None:
    assert len(school_year(dt.date(LAST_YEAR, 12, 31), range(7), [(MONDAY, MONDAY)]).mornings) == 252


def test_an_extra_morning_counts_once_on_a_day_off_too_and_not_before_the_first_day() -> None:
    extra = days(-3, 0, 2, 5, 5, 1)
    year = school_year(MONDAY, (1, 2), [off(1, 2)], extra)
    assert year.mornings[:5] == days(0, 1, 2, 5, 8)
    assert len(year.mornings) == 72


def test_weekdays_may_come_in_any_order_and_twice() -> None:
    year = school_year(MONDAY, (3, 0, 3))
    assert year.weekdays == (0, 3) and year.mornings[:3] == days(0, 3, 7)
    assert year.mornings_a_week == 2


def test_what_is_no_year_is_named() -> None:
    with pytest.raises(ValueError, match=r"^school weekdays are 0 to 6, at least one of them, not \[7\]$"):
        school_year(MONDAY, [7])
    with pytest.raises(ValueError, match=r"^a year has weeks 1 to 36, not 37$"):
        school_year(MONDAY, [0], first_week=37)
    assert len(school_year(MONDAY, [0], first_week=36).mornings) == 1


def test_a_year_begun_in_its_last_week_stays_there() -> None:
    year = school_year(MONDAY, (0, 1), first_week=36)
    assert [year.morning(day).school_day for day in days(-1, 0, 1, 2)] == [70, 71, 72, 72]
    assert {year.morning(day).week for day in days(-1, 0, 1, 2)} == {36}
    assert {year.morning(day).quarter for day in days(-1, 0, 1, 2)} == {4}


@pytest.mark.parametrize(
    ("held", "skipped", "weeks"),
    [
        ((), (), list(range(1, 37))),
        ((9,), (), [*range(1, 10), *range(9, 37)]),
        ((9, 9, 36), (), [*range(1, 9), 9, 9, 9, *range(10, 37), 36]),
        ((), (11, 12), [*range(1, 11), *range(13, 37)]),
        ((11,), (11,), [*range(1, 11), *range(12, 37)]),
    ],
)
def test_a_held_week_comes_again_and_a_skipped_one_never(
    held: tuple[int, ...], skipped: tuple[int, ...], weeks: list[int]
) -> None:
    """Written out by hand: the week of the lessons of each of the year's mornings, four a week."""
    year = school_year(MONDAY, (0, 1, 2, 3), held=held, skipped=skipped)
    mornings = [year.morning(day, reviews=(9,)) for day in year.mornings]
    assert [morning.week for morning in mornings] == [week for week in weeks for _ in range(4)]
    assert [morning.school_day for morning in mornings] == list(range(1, 4 * len(weeks) + 1))
    assert all(morning.review is (morning.week == 9) for morning in mornings)
    for week in range(1, 37):
        first, end = year.begins(week), year.ends(week)
        assert [year.week_at(at) for at in range(first, end)] == [week] * 4 * weeks.count(week)
        assert first == 0 or year.week_at(first - 1) < week
    # A weekend still belongs to the week before it.
    assert [year.morning(MONDAY + (7 * n + 5) * ONE).week for n in range(len(weeks))] == weeks


def test_weeks_before_the_family_began_are_not_held_and_one_week_stays() -> None:
    year = school_year(MONDAY, (0, 1), first_week=20, held=(3, 20), skipped=(4, 21))
    assert year.weeks == (*range(1, 20), 20, 20, *range(22, 37)) and year.before == 38
    assert year.morning(MONDAY).week == 20 and year.morning(MONDAY).school_day == 39
    assert school_year(MONDAY, (0,), skipped=range(1, 37)).weeks == (36,)
    with pytest.raises(ValueError, match="37"):
        school_year(MONDAY, (0,), held=(37,))


@given(years(), DAYS, st.integers(1, 60))
def test_time_goes_on_outside_the_year_by_the_school_weekdays(
    year: SchoolYear, day: dt.date, days: int
) -> None:
    """Counted one date after another by the stdlib's calendar."""
    later = day + days * ONE
    passed = [day + n * ONE for n in range(days)]
    first, last = year.mornings[0], year.mornings[-1]
    outside = [
        d
        for d in passed
        if (d < first or d > last) and calendar.weekday(d.year, d.month, d.day) in year.weekdays
    ]
    inside = sum(d in year.mornings for d in passed)
    assert year.index_of(later) - year.index_of(day) == len(outside) + inside


@given(years(), DAYS)
def test_no_morning_comes_after_the_last_day(year: SchoolYear, last: dt.date) -> None:
    first, weekdays = year.mornings[0], year.weekdays
    whole = school_year(first, weekdays)
    cut = school_year(first, weekdays, last_day=last)
    assert cut.mornings == tuple(day for day in whole.mornings if day <= last)
    assert school_year(first, weekdays, last_day=whole.mornings[-1]) == whole


@st.composite
def lessons(rng: st.DrawFn) -> tuple[int, tuple[int, ...], tuple[int, ...]]:
    """The week a family began in, and weeks it holds and skips."""
    first = rng(st.integers(1, 36))
    some = st.lists(st.integers(first, 36), max_size=6).map(tuple)
    return first, rng(some), rng(some)


@pytest.mark.slow
@given(lessons(), WEEKDAYS, st.integers(-20, 290), st.integers(1, 36))
def test_today_is_in_the_week_that_the_family_says(
    begun: tuple[int, tuple[int, ...], tuple[int, ...]], weekdays: set[int], later: int, week: int
) -> None:
    """Whatever was held and skipped before, and at the same place in the week."""
    first, held, skipped = begun
    free = [(MONDAY + 40 * ONE, MONDAY + 52 * ONE)]
    today = MONDAY + later * ONE
    was = school_year(MONDAY, weekdays, free, first_week=first, held=held, skipped=skipped)
    long = school_year(MONDAY, weekdays, free, first_week=first, held=(36,) * 100)
    at = long.school_week(today)
    found = lessons_from(was.weeks, first, at, week)
    assert (found is None) == (week < first)
    if found is None:
        return
    year = school_year(MONDAY, weekdays, free, first_week=first, held=found[0], skipped=found[1])
    morning = year.morning(today)
    assert morning.week == week and morning.school_day == long.morning(today).school_day
    assert morning.index == long.index_of(today)
    before, after = was.weeks, year.weeks
    if was.morning(today).week == week and at < len(before):
        assert after == before, "what is so already stays"
    elif week > was.week_at(at * was.mornings_a_week):
        assert after[:at] == before[:at], "the lessons that were stay"
        assert [each for each in after[at:] if each > week] == [each for each in before if each > week]
    else:
        assert [each for each in after if each != week] == [each for each in before if each != week]


@pytest.mark.parametrize(
    ("at", "week", "held", "skipped"),
    [
        (9, 10, (), ()),
        (9, 13, (), (10, 11, 12)),
        (9, 8, (8, 8), ()),
        (0, 3, (), (1, 2)),
        (38, 36, (36, 36, 36), ()),
    ],
)
def test_the_weeks_that_are_skipped_or_held_written_out_by_hand(
    at: int, week: int, held: tuple[int, ...], skipped: tuple[int, ...]
) -> None:
    """The tenth school week is 9 from 0."""
    assert lessons_from(tuple(range(1, 37)), 1, at, week) == (held, skipped)


def test_a_week_that_was_held_gives_up_its_repeats_first_and_a_skipped_one_comes_back() -> None:
    weeks = (1, 2, 3, 3, 3, 4, *range(6, 37))
    assert lessons_from(weeks, 1, 3, 4) == ((), (5,))
    assert lessons_from(weeks, 1, 3, 5) == ((), (4,))
    assert lessons_from(weeks, 1, 6, 5) == ((3, 3), ())
    assert lessons_from(weeks, 2, 6, 1) is None and lessons_from(weeks, 1, 6, 37) is None
