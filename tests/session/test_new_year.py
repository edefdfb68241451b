"""The next school year: what is filled in, what comes of the form, and what stays of the year before."""

import calendar
import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.household import FAMILY, context_at
from warmup.config.family import Child, year_of
from warmup.session.first_form import Form, Unclear
from warmup.session.new_year import first_day_after, next_form, outcome, renewed

Clock = Callable[[], dt.datetime]
SUMMER = dt.date(2027, 7, 5)
OLD = FAMILY._replace(
    held_weeks=(9,),
    skipped_weeks=(11,),
    last_day=dt.date(2027, 5, 14),
    known_until=dt.date(2027, 5, 14),
    off=((dt.date(2026, 11, 26), dt.date(2026, 11, 26)),),
    children=(Child("Bean", reads=True), Child("Fern", resting=True)),
    prompts=6,
)


@given(st.dates(dt.date(2020, 1, 1), dt.date(2100, 1, 1)))
def test_it_begins_on_the_last_monday_of_the_next_august(last: dt.date) -> None:
    """Found by the stdlib's calendar: the last Monday in a month's table."""

    def monday(year: int) -> dt.date:
        days = [week[0] for week in calendar.monthcalendar(year, 8) if week[0]]
        return dt.date(year, 8, days[-1])

    expected = monday(last.year) if monday(last.year) > last else monday(last.year + 1)
    assert first_day_after(last) == expected


def test_the_form_has_the_same_weekdays_and_the_next_years_holidays(home: Path, clock: Clock) -> None:
    context = context_at(home, clock, OLD, SUMMER)
    form = next_form(context)
    assert (form.first_day, form.weekdays, form.week) == ("2027-08-30", "Mon Tue Wed Thu", "")
    assert {each.first.year for each in form.off} == {2027, 2028}


def test_the_new_year_begins_clean_and_keeps_the_children_and_their_days(home: Path, clock: Clock) -> None:
    form = next_form(context_at(home, clock, OLD, SUMMER))
    new = renewed(form, SUMMER, OLD)
    assert new.children == OLD.children and new.prompts == 6 and new.began == OLD.began
    assert (new.held_weeks, new.skipped_weeks, new.last_day, new.first_week) == ((), (), None, 1)
    assert {*OLD.off} < {*new.off} and new.known_until == OLD.known_until
    year = year_of(new)
    assert year.mornings[0] == dt.date(2027, 8, 30) and year.morning(year.mornings[0]).school_day == 1
    assert len(year.mornings) == 144
    assert outcome(form, SUMMER, OLD).startswith("School day 1 is August 30, 2027, in week 1; the last is ")


def test_a_year_that_ended_before_its_first_school_day_is_followed_by_another(
    home: Path, clock: Clock
) -> None:
    saturday = dt.date(2026, 8, 29)
    family = OLD._replace(first_day=saturday, last_day=saturday, held_weeks=(), known_until=None)
    assert next_form(context_at(home, clock, family, SUMMER)).first_day == "2027-08-30"


def test_a_part_may_be_repeated_from_a_week_on(home: Path, clock: Clock) -> None:
    form = next_form(context_at(home, clock, OLD, SUMMER))._replace(first_day="2027-09-07", week="19")
    year = year_of(renewed(form, SUMMER, OLD))
    first = year.morning(dt.date(2027, 9, 7))
    assert (first.week, first.school_day, first.previous) == (19, 73, None)
    said = outcome(form, SUMMER, OLD)
    assert said.startswith("School day 73 is September 7, 2027, in week 19; the last is ")


@pytest.mark.parametrize(("field", "wrong"), [("first_day", "soon"), ("weekdays", "Xx"), ("week", "40")])
def test_what_is_unclear_is_said(home: Path, clock: Clock, field: str, wrong: str) -> None:
    values = {**next_form(context_at(home, clock, OLD, SUMMER))._asdict(), field: wrong}
    form = Form(**values)
    with pytest.raises(Unclear):
        renewed(form, SUMMER, OLD)
