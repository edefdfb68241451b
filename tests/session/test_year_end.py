"""What the last school morning of the year says at its close, and no other morning does."""

import datetime as dt
import re
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from num2words import num2words

from tests.household import FAMILY, begun, context_at, lived
from warmup.config.family import Family, year_of
from warmup.engine.memory import Knowledge
from warmup.model import Mark
from warmup.session.context import Context
from warmup.session.summary import closing
from warmup.session.year_end import year_end

Clock = Callable[[], dt.datetime]
LAST = year_of(FAMILY).mornings[-1]
DAY = dt.timedelta(1)
EASY, HARD = Mark.FLUENT, Mark.NOT_YET


def context_on(home: Path, clock: Clock, day: dt.date, family: Family = FAMILY) -> Context:
    return context_at(home, clock, family._replace(known_until=day - DAY), day)


def reviewed(context: Context, *days: Mapping[str, Mark]) -> None:
    """Live the last mornings before today with these marks."""
    before = [day for day in context.year.mornings if day < context.today][-len(days) :]
    for day, marks in zip(before, days, strict=True):
        lived(context, day, marks)


@pytest.mark.parametrize("off", [0, 12])
def test_it_counts_the_school_days_of_the_year_and_is_two_sentences(
    home: Path, clock: Clock, off: int
) -> None:
    """Days off move the last day on; the year is as long as it was planned."""
    december = dt.date(2026, 12, 20)
    family = FAMILY._replace(off=((december, december + off * DAY),) if off else ())
    context = context_on(home, clock, year_of(family).mornings[-1], family)
    days = [day for day in context.year.mornings if day <= context.today]
    count = num2words(len(days)).replace(" and ", " ")
    said = year_end(context, context.morning())
    assert said.startswith(f"That was the last school day of the year: {count} school days.")
    assert len(re.findall(r"[.]", said)) == 2 and "%" not in said
    assert (context.today > LAST) is bool(off)


@pytest.mark.parametrize("away", [-1, 1, 5])
def test_no_other_day_says_it(home: Path, clock: Clock, away: int) -> None:
    context = context_on(home, clock, LAST)
    assert year_end(context, context.morning()) and not year_end(context, context.morning(LAST + away * DAY))


def test_what_settled_after_the_most_wobbles_is_named(home: Path, clock: Clock) -> None:
    context = context_on(home, clock, LAST)
    lived(context, dt.date(2026, 10, 5), {"month/this": HARD})
    lived(context, dt.date(2026, 10, 6), {"month/this": HARD, "weekday/today": HARD})
    both = {"month/this": EASY, "weekday/today": EASY, "count-on/across-30": EASY}
    reviewed(context, both, {**both, "count-on/across-30": HARD})
    assert year_end(context, context.morning()).endswith(
        " One thing that settled after taking its time: months."
    )


def test_what_wobbled_in_another_year_took_no_time(home: Path, clock: Clock) -> None:
    context = context_on(home, clock, LAST)
    lived(context, dt.date(2026, 5, 5), {"month/this": HARD})
    both = {"month/this": EASY, "weekday/today": EASY}
    reviewed(context, both, both)
    assert year_end(context, context.morning()).endswith(" One thing that settled: months.")


def test_where_nothing_settled_it_says_what_comes_easily_or_that_you_sat_down(
    home: Path, clock: Clock
) -> None:
    context = context_on(home, clock, LAST)
    assert year_end(context, context.morning()).endswith(" You sat down together and talked math.")
    reviewed(context, {"month/this": EASY, "count-on/across-30": EASY})
    assert year_end(context, context.morning()).endswith(" One thing that comes easily now: count on.")


def test_the_close_has_it_with_the_marks_of_the_day(home: Path, clock: Clock) -> None:
    context = context_on(home, clock, LAST)
    session = begun(context, clock)
    assert "sat down" in closing(session, Knowledge()).year
    session.mark(EASY)
    assert "comes easily now" in closing(session, Knowledge()).year
