"""Days off out of a calendar: what is offered and ticked, what the year's end becomes, and undo."""

import datetime as dt
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.config.calendars import DISTRICT, FAMILY, TODAY
from tests.household import StandingClock, context_at
from warmup.config.calendar_entry import Entry
from warmup.config.calendar_file import entries
from warmup.config.family import Child, Family, YearlyOff, load, year_of
from warmup.config.toml_file import FileProblem
from warmup.session import calendar_days, undoing
from warmup.session.calendar_days import MOST, Offer, days_off, offers, outcome, take, window, with_off
from warmup.session.calendar_names import says_no_school

day = dt.date


def district(family: Family = FAMILY, first: dt.date = TODAY) -> tuple[Offer, ...]:
    return offers(family, entries(DISTRICT, *window(family)), first)


def whole(name: str, first: dt.date, last: dt.date | None = None) -> Entry:
    return Entry(name, first, last or first, True)


SAYS = """
No School; NO SCHOOL - teacher work day; No classes: half of the staff is away; School closed; Fall break
Schools Closed (weather); SPRING RECESS; Winter Vacation; Labor Day; Presidents’ Day; President's Day
Washington's Birthday; MLK Day; Martin Luther King, Jr. Day; Juneteenth; Thanksgiving; Day after Thanksgiving
Christmas Eve; New Year’s Day; Veterans Day; Indigenous Peoples’ Day; Holiday; Day off; Non-school day
Memorial Day; Mid-winter break; No school before the long weekend; Columbus Day; Independence Day
"""
SAYS_NOT = """
First day of school; Early release; Half day before winter break; Holiday concert; Picture day; Late start
School resumes after spring break; Breakfast club; Summer vacation; Washington field trip; Laborer; no name
Veterans Day assembly; Thanksgiving feast lunch; Spring break camp registration; Snow make-up day; Holidaying
Classes return from recess; Breakfast with Grandma; Staff planning day; Last day before the holidays
School in session (no holiday); Christmas tree sale; Labor fair
"""


def listed(names: str) -> list[str]:
    return [name.strip() for name in names.replace("\n", ";").split(";") if name.strip()]


@pytest.mark.parametrize("name", listed(SAYS))
def test_what_says_that_there_is_no_school(name: str) -> None:
    """Common practice, no source; the holidays are those of 5 U.S.C. 6103(a)."""
    assert says_no_school(name)


@pytest.mark.parametrize("name", listed(SAYS_NOT))
def test_what_does_not_say_so(name: str) -> None:
    assert not says_no_school(name)


def test_a_district_s_days_are_ticked_where_they_say_so_and_in_a_row_a_line() -> None:
    found = district()
    ticked = [(each.name, each.when, len(each.days)) for each in found if each.ticked]
    assert ticked == [
        ("Labor Day", "Mon Sep 7", 1),
        ("Fall break, no classes (both schools; bus drivers too)", "Mon Oct 12 to Tue Oct 13", 2),
        ("Veterans Day", "Wed Nov 11", 1),
        ("Thanksgiving recess", "Wed Nov 25 to Thu Nov 26", 2),
        ("Winter break", "Mon Dec 21 to Thu Dec 31", 8),
        ("No School - MLK Day", "Mon Jan 18", 1),
        ("Presidents’ Day", "Mon Feb 15", 1),
        ("Spring Recess", "Mon Apr 5 to Thu Apr 8", 4),
        ("Memorial Day", "Mon May 31", 1),
    ]
    others = {(each.name, each.whole) for each in found if not each.ticked}
    names = {name for name, _ in others}
    assert ("Early release", False) in others and ("Staff planning day", True) in others
    # Christmas Eve lies within the winter break; the first day is over; the year ends on June 14.
    assert not names & {"Christmas Eve", "First day of school"}
    assert [each.days for each in found if each.name == "Summer vacation"] == [(day(2027, 6, 14),)]
    assert [each.ticked for each in found] == sorted((each.ticked for each in found), reverse=True)


def test_what_moves_the_end_brings_more_mornings_into_the_year() -> None:
    """Memorial Day 2027, May 31 by tests/references/calendar.toml, lies behind a year without days off."""
    assert year_of(FAMILY).mornings[-1] == day(2027, 5, 6)
    memorial = whole("Memorial Day", day(2027, 5, 31))
    assert offers(FAMILY, [memorial], TODAY) == ()
    winter = whole("Winter break", day(2026, 12, 7), day(2027, 1, 8))
    assert [each.name for each in offers(FAMILY, [winter, memorial], TODAY)] == [
        "Winter break",
        "Memorial Day",
    ]


def test_only_mornings_ahead_that_are_not_off_already_are_offered() -> None:
    family = FAMILY._replace(
        off=((day(2026, 12, 21), day(2026, 12, 24)),),
        extra=(day(2026, 12, 5), day(2026, 12, 7)),
        yearly_off=(YearlyOff("January 18"),),
    )
    every = whole("No school", day(2026, 8, 1), day(2027, 1, 31))
    (found,) = offers(family, [every], day(2026, 12, 3))
    assert found.days[0] == day(2026, 12, 3) and found.days[-1] == day(2027, 1, 28)
    assert not {day(2026, 12, 5), day(2026, 12, 7), day(2026, 12, 21), day(2027, 1, 18)} & {*found.days}
    assert all(each.weekday() in family.weekdays for each in found.days)
    assert offers(family, [whole("No school", day(2026, 12, 4))], TODAY) == (), "a Friday"
    assert offers(family, [whole("No school", day(2028, 12, 4))], TODAY) == (), "behind the year"


def test_the_year_is_that_of_the_child_whose_it_is() -> None:
    """Two weeks later than the family: eight mornings, Monday to Thursday."""
    later = Child("Pip", first_day=day(2026, 9, 14))
    family = FAMILY._replace(children=(*FAMILY.children, later))
    labor = whole("Labor Day", day(2026, 9, 7))
    spring = whole("Spring break", day(2027, 4, 5))
    assert [each.name for each in offers(family, [labor, spring], TODAY)] == ["Labor Day", "Spring break"]
    found = offers(family, [labor, spring], TODAY, later)
    assert [each.name for each in found] == ["Spring break"]
    assert outcome(family, found) == "1 morning off: the last day moves from May 6 to May 10."
    assert outcome(family, found, later) == "1 morning off: the last day moves from May 20 to May 24."
    assert window(family, later)[0] == day(2026, 9, 14)


def test_days_of_one_name_in_a_row_are_one_line_and_others_are_not() -> None:
    names = ["Ski break", "SKI BREAK", "Ski break"]
    three = [whole(name, day(2027, 2, 24 + n)) for n, name in enumerate(names[:2])]
    three.append(whole("Ski break", day(2027, 3, 1)))  # the Monday after that Thursday
    (line,) = offers(FAMILY, three, TODAY)
    assert line.days == (day(2027, 2, 24), day(2027, 2, 25), day(2027, 3, 1))
    gap = [three[0], whole("Ski break", day(2027, 3, 1))]
    assert len(offers(FAMILY, gap, TODAY)) == 2
    other = [three[0], whole("Fair closed", day(2027, 2, 25))]
    assert len(offers(FAMILY, other, TODAY)) == 2
    weekly = [whole("Early day", day(2026, 9, 2) + dt.timedelta(7 * n)) for n in range(5)]
    assert len(offers(FAMILY._replace(weekdays=(2,)), weekly, TODAY)) == 5, "a week lies between"


def test_a_part_of_the_day_is_never_ticked_and_says_so() -> None:
    (part,) = offers(FAMILY, [Entry("No school", day(2026, 10, 5), day(2026, 10, 5), False)], TODAY)
    assert not part.ticked and part.how_long == "1 morning, part of the day"


def test_no_more_lines_than_may_be_are_offered_and_the_ticked_come_first() -> None:
    many = [Entry(f"game {n}", day(2026, 10, 5), day(2026, 10, 5), False) for n in range(2 * MOST)]
    found = offers(FAMILY, [*many, whole("Spring break", day(2027, 4, 5))], TODAY)
    assert len(found) == MOST and found[0].name == "Spring break"


def test_the_outcome_is_that_of_the_year_with_them_off() -> None:
    found = district()
    ticked = [each for each in found if each.ticked]
    mornings = sum(len(each.days) for each in ticked)
    assert mornings == 21
    # 21 mornings later than Thursday, May 6, Monday to Thursday, past Memorial Day: June 14.
    assert outcome(FAMILY, ticked) == "21 mornings off: the last day moves from May 6 to June 14."
    assert outcome(FAMILY, []) == "Nothing is checked: the last day stays May 6."
    assert outcome(FAMILY, ticked[:1]) == "1 morning off: the last day moves from May 6 to May 10."


def test_taking_saves_them_and_undo_takes_them_back(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock, FAMILY, TODAY)
    assert context.journal is not None
    taken = [each for each in district() if each.ticked]
    said = take(context, taken)
    assert said == "21 mornings are off now: the last day moves from May 6 to June 14."
    saved = load(home / "family.toml")
    assert (day(2026, 12, 21), day(2026, 12, 31)) in saved.off and len(saved.off) == len(taken)
    assert year_of(saved).mornings == context.year.mornings
    assert year_of(saved) == year_of(with_off(FAMILY, calendar_days.mornings_of(taken)))
    undone = undoing.undo_day(context, context.journal)
    assert undone is not None and undone.words == "the days off from a calendar"
    assert load(home / "family.toml") == FAMILY
    assert undoing.undo_day(context, context.journal) is None


def test_where_it_cannot_be_saved_nothing_is_logged(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock, FAMILY, TODAY)
    assert context.journal is not None
    path = home / "family.toml"
    path.write_text("torn [", "utf-8")
    with pytest.raises(FileProblem, match=r"family\.toml.*is not being saved"):
        take(context, district()[:1])
    assert path.read_text("utf-8") == "torn [" and undoing.newest(context.journal, "Bean", TODAY) is None


def test_days_off_ahead_are_in_a_row_over_weekends() -> None:
    family = FAMILY._replace(off=((day(2026, 12, 24), day(2026, 12, 29)), (day(2026, 9, 7), day(2026, 9, 7))))
    year = year_of(family)
    winter = (day(2026, 12, 24), day(2026, 12, 28), day(2026, 12, 29))
    assert days_off(year, TODAY) == ((day(2026, 9, 7),), winter)
    assert days_off(year, day(2026, 12, 28)) == (winter[1:],)
    assert days_off(year, day(2030, 1, 1)) == ()


@given(
    st.lists(
        st.builds(
            lambda name, first, length, whole: Entry(name, first, first + dt.timedelta(length), whole),
            st.sampled_from(["Break", "No school", "Game", "Fair", "Labor Day"]),
            st.dates(day(2026, 8, 1), day(2027, 9, 1)),
            st.integers(0, 20),
            st.booleans(),
        ),
        max_size=12,
    ),
    st.sets(st.integers(0, 6), min_size=1).map(sorted).map(tuple),
    st.dates(day(2026, 8, 31), day(2027, 5, 1)),
)
def test_what_is_taken_is_off_and_nothing_else(
    entries: list[Entry], weekdays: tuple[int, ...], first: dt.date
) -> None:
    family = FAMILY._replace(weekdays=weekdays, extra=(day(2026, 10, 10),))
    found = offers(family, entries, first)
    ticked = [each for each in found if each.ticked]
    off = calendar_days.mornings_of(ticked)
    before, after = year_of(family), year_of(with_off(family, off))
    assert len(before.mornings) == len(after.mornings) and not off & {*after.mornings}
    assert {*before.mornings} - {*after.mornings} <= off
    for each in found:
        assert each.days and all(first <= one and one.weekday() in weekdays for one in each.days)
        assert list(each.days) == sorted({*each.days})
    covered = {
        entry.first + dt.timedelta(n)
        for entry in entries
        if entry.whole and says_no_school(entry.name)
        for n in range((entry.last - entry.first).days + 1)
    }
    left = {one for one in after.mornings if one >= first} & covered
    assert left <= {*family.extra}, "a morning that says there is no school was not offered"
