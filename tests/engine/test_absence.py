"""Days without a warm-up, counted by hand: who was away, what that holds back, what is likelier forgotten."""

import datetime as dt

import pytest

from tests.engine.made import made
from warmup.engine.absence import NONE, Absence, absence
from warmup.engine.curriculum import Curriculum, curriculum
from warmup.engine.eligibility import Adjustments, eligible
from warmup.engine.memory import Knowledge, fold
from warmup.engine.pool import Pool
from warmup.model import Asked, Item, Mark, Morning
from warmup.schoolyear import SchoolYear, school_year

MONDAY = dt.date(2026, 8, 31)
KNOT, SAIL = made("knots/one"), made("sails/one")
ITEMS = (KNOT, SAIL)


def day(week: int, weekday: int) -> dt.date:
    """A date by its week from 0 and its weekday from 0 for Monday."""
    return MONDAY + dt.timedelta(7 * week + weekday)


BEFORE = [day(week, weekday) for week in (0, 1) for weekday in range(4)]
"""Two whole weeks: eight warm-ups."""
SICK = (day(2, 0), day(3, 3))
"""Eight school weekdays."""


def year_with(*off: tuple[dt.date, dt.date]) -> SchoolYear:
    return school_year(MONDAY, (0, 1, 2, 3), off)


def known(year: SchoolYear, dates: list[dt.date]) -> tuple[Curriculum, Knowledge]:
    plan = curriculum(ITEMS, year, MONDAY)
    return plan, fold(plan, [Asked(date, KNOT.id, Mark.FLUENT) for date in dates])


def found(dates: list[dt.date], today: dt.date, *off: tuple[dt.date, dt.date]) -> Absence:
    year = year_with(*off)
    plan, knowledge = known(year, dates)
    return absence(plan, knowledge, year.morning(today))


def test_eight_sick_days_are_felt_on_three_mornings_and_no_longer() -> None:
    """By hand: away from September 14 to 24, back on the 28th; the fourth morning back is an ordinary one."""
    back = [day(4, weekday) for weekday in range(4)]
    for at, today in enumerate(back):
        expected = Absence(8, 8, 8) if at < 3 else NONE
        assert found([*BEFORE, *back[:at]], today, SICK) == expected, today


def test_days_that_count_as_school_are_rest_already() -> None:
    assert found(BEFORE, day(4, 0)) == Absence(8, 16, 0)


@pytest.mark.parametrize(("weekday", "days"), [(0, 4), (1, 5)])
def test_from_five_mornings_on_a_child_was_away(weekday: int, days: int) -> None:
    """The week of September 14 is missed whole; on Monday that is four mornings, on Tuesday five."""
    assert found(BEFORE, day(3, weekday), SICK).days == (days if days >= 5 else 0)


def test_a_family_that_comes_seldom_was_not_away() -> None:
    """Every second Monday: else nothing new would ever come."""
    fortnights = [day(week, 0) for week in range(0, 16, 2)]
    assert found(fortnights, day(16, 0)) == NONE


def test_after_five_warm_ups_there_is_nothing_to_come_back_to() -> None:
    assert found(BEFORE[:5], day(4, 0), SICK) == NONE != found(BEFORE[:6], day(4, 0), SICK)


def test_a_warm_up_of_the_same_day_changes_nothing() -> None:
    """The session is resumed, or a second one begun."""
    assert found([*BEFORE, day(4, 0)], day(4, 0), SICK) == Absence(8, 8, 8)


def morning_back() -> tuple[Curriculum, Knowledge, Morning]:
    year = year_with(SICK)
    return *known(year, BEFORE), year.morning(day(4, 0))


def able(plan: Curriculum, knowledge: Knowledge, today: Morning) -> list[Item]:
    return list(eligible(plan, today, knowledge, Adjustments()).items)


def test_nothing_new_opens_on_the_way_back(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("warmup.skills.askable", lambda *_: True)
    monkeypatch.setattr("warmup.skills.timely", lambda *_: False)
    plan, knowledge, today = morning_back()
    assert able(plan, knowledge, today) == [KNOT]
    year = plan.year
    assert able(plan, knowledge, year.morning(day(1, 3))) == [KNOT, SAIL]


def test_what_the_day_itself_asks_for_comes_all_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("warmup.skills.askable", lambda *_: True)
    monkeypatch.setattr("warmup.skills.timely", lambda item, _: item == SAIL.id)
    assert able(*morning_back()) == [KNOT, SAIL]


def test_what_was_known_counts_as_rested_for_all_of_the_days_away() -> None:
    """The interval worked out by hand: one easy mark on each of eight mornings running, from 4."""
    plan, knowledge, today = morning_back()
    (c,) = Pool([KNOT], knowledge, today, plan, "Pip").all
    interval = knowledge.of(KNOT.id).interval
    # Planned are one morning since the last mark, and eight more went by.
    assert c.chance == pytest.approx(0.85 ** ((1 + 8) / interval), abs=1e-6)
    assert c.overdue == pytest.approx(9 / interval, abs=1e-5)


def test_what_was_met_since_is_as_fresh_as_ever() -> None:
    year = year_with(SICK)
    plan, knowledge = known(year, [*BEFORE, day(4, 0)])
    (c,) = Pool([KNOT], knowledge, year.morning(day(4, 1)), plan, "Pip").all
    assert c.chance == pytest.approx(0.85 ** (1 / knowledge.of(KNOT.id).interval), abs=1e-6)
