"""Missed mornings: what is said of them, and which school day today then is."""

import datetime as dt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.household import FAMILY, TODAY
from warmup.config.family import year_of
from warmup.session.missed import MANY, Missed, Talk, begin

YEAR = year_of(FAMILY)
PAST = [day for day in YEAR.mornings if day < TODAY]


def missed(count: int) -> Missed:
    """The last mornings before today, without a warm-up."""
    return Missed(FAMILY, FAMILY.children[0], TODAY, tuple(PAST[-count:]))


def with_off(off: tuple[dt.date, ...]) -> tuple[int, int]:
    """Today's school day and week in a family that keeps these days off, worked out from the year itself."""
    morning = year_of(FAMILY._replace(off=YEAR.stretches(off))).morning(TODAY)
    return morning.school_day, morning.week


def test_four_are_asked_by_day_and_five_by_one_question() -> None:
    assert [begin(missed(count)).asking for count in (1, MANY - 1, MANY, 60)] == [False, False, True, True]


@pytest.mark.slow
@given(st.integers(MANY, 100))
@settings(max_examples=25, deadline=None)
def test_every_week_that_can_be_said_is_the_week_today_is_in(count: int) -> None:
    away = missed(count)
    weeks = away.weeks()
    assert with_off(away.days)[1] == weeks[0] and with_off(())[1] == weeks[-1]
    for week in weeks:
        off = away.off_for(week)
        assert with_off(off)[1] == week
        # With one more morning off, today would be a week earlier: it is the earliest day there can be.
        held = len(away.days) - len(off)
        assert not held or with_off(away.days[held - 1 :])[1] < week


def test_the_question_begins_where_the_lessons_were() -> None:
    talk = begin(missed(15))
    assert talk.off == talk.missed.days and talk.week == talk.missed.weeks()[0] == 23
    assert talk.missed.today_words(talk.off) == "school day 92, week 23"
    assert talk.open_still == 0


def test_the_week_goes_no_further_than_all_mornings_off_or_held() -> None:
    talk = begin(missed(15))
    assert talk.step("left", ()).week == 23
    for _ in range(9):
        talk = talk.step("right", ())
    assert talk.week == 27 and with_off(talk.off)[1] == 27
    assert talk.missed.today_words(talk.off) == "school day 105, week 27"


def answered(talk: Talk, *steps: str) -> Talk:
    rows = talk.missed.by_week()
    for step in steps:
        talk = talk.step(step, rows)
    return talk


def test_each_day_is_said_school_then_off() -> None:
    talk = begin(missed(3))
    assert talk.answers == (None, None, None) and talk.open_still == 3
    talk = answered(talk, "change", "right", "change", "change", "right")
    assert talk.answers == (False, True, None) and talk.cursor == 2 and talk.open_still == 1
    assert talk.off == (talk.missed.days[1],)
    assert answered(talk, "left", "left", "first_open").cursor == 2
    assert answered(talk, "left", "change").answers[1] is False


def test_one_key_says_it_of_all() -> None:
    talk = answered(begin(missed(15)), "by_day")
    assert answered(talk, "all_off").off == talk.missed.days
    assert answered(talk, "all_school").off == () and not answered(talk, "all_school").open_still


def test_up_and_down_keep_the_weekday() -> None:
    # The fifteen mornings before Wednesday, March 3: from Thursday, February 4, on.
    talk = answered(begin(missed(15)), "by_day")
    assert talk.missed.days[talk.cursor] == dt.date(2027, 2, 4)
    talk = answered(talk, "down")
    assert talk.missed.days[talk.cursor] == dt.date(2027, 2, 11)
    talk = answered(talk, "down", "down", "down")
    # The last week has Monday and Tuesday only.
    assert talk.missed.days[talk.cursor] == dt.date(2027, 3, 2)
    assert answered(talk, "down").cursor == talk.cursor


def test_back_to_the_question_only_where_there_was_one() -> None:
    assert answered(begin(missed(15)), "by_day", "question").asking
    assert not answered(begin(missed(4)), "question").asking


def test_what_is_said_of_a_saturday_counts_school_days_so_far() -> None:
    saturday = Missed(FAMILY, FAMILY.children[0], dt.date(2027, 3, 6), tuple(PAST[-3:]))
    assert saturday.today_words(()) == "school days so far: 108, week 27"


@pytest.mark.parametrize("gap", [1, 2])
def test_days_off_that_follow_one_another_become_one_stretch(gap: int) -> None:
    days = YEAR.mornings[40:52:gap]
    found = YEAR.stretches(days)
    assert found == (((days[0], days[-1]),) if gap == 1 else tuple((day, day) for day in days))
    kept = year_of(FAMILY._replace(off=found))
    assert set(YEAR.mornings[:100]) - set(kept.mornings) == set(days)


def test_a_stretch_stops_before_it_is_longer_than_a_family_file_takes() -> None:
    weekly = year_of(FAMILY._replace(weekdays=(2,)))
    found = weekly.stretches(weekly.mornings)
    assert len(found) > 1 and all((last - first).days < 366 for first, last in found)
    assert found[0][0] == weekly.mornings[0] and found[-1][1] == weekly.mornings[-1]
