"""A week's page: its mornings, what opens, what is reviewed, what to gather."""

import datetime as dt
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, begun, context_at, lived
from tests.session.test_own import DOOR, DUCK
from warmup.config.family import Child, Family
from warmup.journal.routine_json import routine_text
from warmup.journal.rows import MarkRow
from warmup.model import LevelId, Mark
from warmup.schoolyear import WEEKS
from warmup.session.context import Context
from warmup.session.lessons import turn_tick
from warmup.session.summary import closing, to_have_ready
from warmup.session.week import Day, Lesson, WeekPage, Weeks, When

Clock = Callable[[], dt.datetime]
FIRST = FAMILY.first_day
FRESH = FAMILY._replace(known_until=None)
HALVES, TWENTY, QUARTER = (
    LevelId("equal-shares:halves"),
    LevelId("even-odd:pair-to-20"),
    LevelId("coins:quarter"),
)
OWN = (LevelId("own:front-door"), LevelId("own:duck"))
BREAK = ((dt.date(2026, 12, 21), dt.date(2027, 1, 1)),)


def pages(context: Context) -> list[WeekPage]:
    """All 36."""
    weeks = Weeks(context)
    return [weeks.page(week) for week in range(1, WEEKS + 1)]


def by_level(shown: list[WeekPage]) -> dict[LevelId, list[int]]:
    """The weeks on whose pages each level stands."""
    found: dict[LevelId, list[int]] = {}
    for page in shown:
        for row in page.new:
            found.setdefault(row.level, []).append(page.week)
    return found


def live(context: Context, days: int, mark: Mark = Mark.FLUENT) -> dict[LevelId, dt.date]:
    """Live so many mornings from the first, as they are chosen; when each level was first asked."""
    assert context.journal is not None
    found: dict[LevelId, dt.date] = {}
    for day in context.year.mornings[:days]:
        routine = context.routine(context.morning(day))
        rows = [(prompt.item, prompt.wording) for prompt in routine.prompts]
        marks = [MarkRow(mark, 0, "", False, f"{day}T08:00:00") for _ in rows]
        context.journal.start("Bean", day, "daily", routine_text(routine), rows, marks)
        context.forget()
        for prompt in routine.prompts:
            found.setdefault(prompt.level_id, day)
    return found


def families() -> Iterator[tuple[str, Family, dt.date]]:
    """Families whose years differ, each with a today."""
    yield "at the start", FRESH, FIRST
    yield "in March, nothing asked", FAMILY, TODAY
    yield "in summer", FAMILY, dt.date(2027, 8, 1)
    yield "before the first day", FRESH, FIRST - dt.timedelta(20)
    yield "a break", FRESH._replace(off=BREAK), FIRST
    yield "a week held twice, one skipped", FRESH._replace(held_weeks=(3, 3), skipped_weeks=(12, 36)), FIRST
    yield "from January", FRESH._replace(first_day=dt.date(2027, 1, 4), first_week=15), dt.date(2027, 1, 5)
    ticked = Child("Bean", reads=False, held=(HALVES, LevelId("count:to-20")), opened=(QUARTER, TWENTY))
    yield "ticks", FAMILY._replace(children=(ticked,)), TODAY
    own = Child("Bean", reads=False, first_day=dt.date(2027, 2, 1), first_week=1)
    yield "a child with a year of its own", FAMILY._replace(children=(own,)), TODAY


@pytest.mark.slow
@pytest.mark.parametrize(
    "family, today", [(f, t) for _, f, t in families()], ids=[n for n, _, _ in families()]
)
def test_over_36_weeks_each_level_stands_on_one_page_and_each_thing_once_on_its_page(
    home: Path, clock: Clock, family: Family, today: dt.date
) -> None:
    context = context_at(home, clock, family, today)
    every = pages(context)
    found = by_level(every)
    assert {*found} == {*context.plan.weeks} and {len(weeks) for weeks in found.values()} == {1}
    for page in every:
        names = Counter(thing.name for things in page.things for thing in things)
        assert set(names.values()) <= {1}
        for row in page.new:
            assert row.day is None or row.day in {day.first for day in page.days if day.when is not When.OFF}
        shown = [row for group in page.groups() for row in group.new]
        assert sorted(shown) == sorted(page.new), "each stands in one group"


@pytest.mark.slow
def test_every_morning_of_the_year_is_on_one_page(home: Path, clock: Clock) -> None:
    family = FRESH._replace(off=BREAK, held_weeks=(3,), skipped_weeks=(12,))
    context = context_at(home, clock, family, FIRST)
    every = pages(context)
    days = [day for page in every for day in page.days]
    assert [day.first for day in days if day.when is not When.OFF] == list(context.year.mornings)
    off = [day for day in days if day.when is When.OFF]
    assert [(day.first, day.last) for day in off] == [(dt.date(2026, 12, 21), dt.date(2026, 12, 31))]
    assert off[0].words() == "Monday, December 21 to Thursday, December 31"
    held, skipped = every[2], every[11]
    assert len(held.days) == 8 and held.day_name(held.days[1].first) == "Tuesday, September 15"
    assert skipped.days == () and skipped.note.startswith("This week is skipped") and not skipped.new
    assert {*skipped.groups()} and every[12].new


@pytest.mark.slow
def test_the_preview_is_what_comes_where_all_comes_easily(home: Path, clock: Clock) -> None:
    """Seven weeks, one of them a review: the mornings lived one after another ask what the pages said."""
    context = context_at(home, clock, FRESH, FIRST)
    weeks = Weeks(context)
    said = {row.level: row.day for week in range(1, 8) for row in weeks.page(week).new}
    reviewed = {day.first: day.reviewed for day in weeks.page(5).days}
    ready = {day.first: weeks.page(5).things for day in weeks.page(5).days}
    were = live(context, 28)
    assert said == were and len(said) > 25 and ready
    later = context_at(home, clock, FRESH, context.year.mornings[27])
    asked = {row.level: row.day for week in range(1, 8) for row in Weeks(later).page(week).new}
    assert asked == were, "what has been asked stands on the day it was"
    assert {day.first: day.reviewed for day in Weeks(later).page(5).days} == reviewed
    assert all(len(names) > 2 for names in reviewed.values())


def test_what_a_family_wrote_itself_has_its_week_as_well(home: Path, clock: Clock) -> None:
    home.mkdir(parents=True, exist_ok=True)
    (home / "own.toml").write_text(DOOR.replace("answer", "week = 28\nanswer", 1) + DUCK, "utf-8")
    context = context_at(home, clock)
    found = by_level(pages(context))
    assert {level: found[level] for level in OWN} == {OWN[0]: [28], OWN[1]: [27]}
    assert {*found} == {*context.plan.weeks}
    (row,) = (row for row in Weeks(context).page(28).new if row.level == OWN[0])
    assert row.title == "Your own" and turn_tick(row, context).said.endswith("It may come from now on.")
    assert Day(TODAY, TODAY, When.TODAY, ("own", "make-ten")).review_words() == "your own, make ten"


def test_what_is_past_today_and_to_come(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    page = Weeks(context).page(27)
    assert [day.when for day in page.days] == [When.PAST, When.PAST, When.TODAY, When.TO_COME]
    assert page.parts() == ["Week 27 of 36", "quarter 3", "review", "this week"]
    assert {thing.first for things in page.things for thing in things} <= {TODAY, TODAY + dt.timedelta(1)}
    assert page.day_name(TODAY) == "today" and page.day_name(TODAY + dt.timedelta(1)) == "Thursday"
    assert [Weeks(context).page(week).distance for week in (26, 27, 28)] == [-1, 0, 1]
    assert Weeks(context).page(26).things == ((), ()), "what is past needs nothing"


def test_what_is_held_or_opened_early_comes_with_this_week(home: Path, clock: Clock) -> None:
    child = Child("Bean", reads=False, held=(HALVES,), opened=(QUARTER,))
    context = context_at(home, clock, FAMILY._replace(children=(child,)))
    plan = context.plan.weeks
    assert plan[HALVES] < 27 < plan[QUARTER] < plan[TWENTY]
    found = by_level(pages(context))
    assert (found[HALVES], found[QUARTER], found[TWENTY]) == ([27], [27], [plan[TWENTY]])
    rows = {row.level: row for row in Weeks(context).page(27).new}
    assert rows[HALVES].lesson is Lesson.NOT_TAUGHT and rows[HALVES].day is None
    assert rows[QUARTER].lesson is Lesson.TAUGHT
    (held,) = [group for group in Weeks(context).page(27).groups() if group.heading.startswith("Held back")]
    assert [row.level for row in held.new] == [HALVES]
    context.editor.lesson(TWENTY, taught=False)
    assert by_level(pages(context))[TWENTY] == [plan[TWENTY]], "it is not its week yet"
    also = Weeks(context).page(plan[QUARTER], (QUARTER,))
    assert QUARTER in {row.level for row in also.new}


def test_what_is_held_has_no_day_though_it_was_asked_this_week(home: Path, clock: Clock) -> None:
    held = Child("Bean", reads=False, held=(LevelId("make-ten:all"),))
    context = context_at(home, clock, FAMILY._replace(children=(held,)))
    lived(context, TODAY - dt.timedelta(1), {"make-ten/seven-three": Mark.FLUENT})
    (row,) = (row for row in Weeks(context).page(27).new if row.level == "make-ten:all")
    assert row.asked and row.day is None


@pytest.mark.slow
def test_what_was_asked_before_its_week_stands_where_it_was_asked(home: Path, clock: Clock) -> None:
    early = FRESH._replace(children=(Child("Bean", reads=False, opened=(TWENTY,)),))
    context = context_at(home, clock, early, FIRST)
    were = live(context, 8)
    later = context_at(home, clock, early, context.year.mornings[9])
    week = later.year.morning(were[TWENTY]).week
    assert by_level(pages(later))[TWENTY] == [week] and week < 3
    row = next(row for row in Weeks(later).page(week).new if row.level == TWENTY)
    assert (row.day, row.asked) == (were[TWENTY], True)


def test_what_waited_and_comes_this_week_stands_here_but_no_sample_does(home: Path, clock: Clock) -> None:
    waited = Weeks(context_at(home, clock)).page(27).new
    assert waited and all(row.week < 27 and row.day for row in waited)
    new_here = FAMILY._replace(began=TODAY)
    assert Weeks(context_at(home, clock, new_here)).page(27).new == ()


def test_a_year_without_mornings_for_a_week_says_so(home: Path, clock: Clock) -> None:
    family = FRESH._replace(first_day=dt.date(2027, 1, 4), first_week=15)
    weeks = Weeks(context_at(home, clock, family, dt.date(2027, 1, 4)))
    assert weeks.page(14).note == "Your year began after this week" and not weeks.page(15).note


def test_of_today_what_was_asked_and_what_is_still_to_be_asked(home: Path, clock: Clock) -> None:
    context = context_at(home, clock, FRESH, FIRST)
    session = begun(context, clock)
    session.mark(Mark.NOT_YET)
    context.forget()
    page = Weeks(context).page(1)
    today = {row.level: row.asked for row in page.new if row.day == FIRST}
    assert [*today.values()].count(True) == 2, "the one marked, and the one on screen"
    assert {*today} == {prompt.level_id for prompt in session.prompts}
    assert FIRST in {thing.first for things in page.things for thing in things}


def test_the_close_and_the_page_name_the_same_things_for_tomorrow(home: Path, clock: Clock) -> None:
    context = context_at(home, clock, FRESH, FIRST)
    session = begun(context, clock)
    while not session.at_close:
        session.mark(Mark.FLUENT)
    session.close()
    close = closing(session, context.knew_before_today())
    page = Weeks(context).page(1)
    tomorrow = FIRST + dt.timedelta(1)
    wanted, handy = (
        ", ".join(thing.name for thing in things if thing.first == tomorrow) for things in page.things
    )
    assert FIRST not in {thing.first for things in page.things for thing in things}, "today is done"
    assert (
        to_have_ready(context, tomorrow)
        == ("Tuesday", close.table, close.handy)
        == ("Tuesday", wanted, handy)
    )
    assert to_have_ready(context, FIRST)[0] == "today"
    assert to_have_ready(context, FIRST + dt.timedelta(7))[0] == "Monday, September 7"


def test_a_review_week_says_what_it_checks(home: Path, clock: Clock) -> None:
    weeks = Weeks(context_at(home, clock))
    past, _, today, to_come = weeks.page(27).days
    assert past.reviewed == () and today.reviewed and to_come.reviewed
    assert not any(day.reviewed for day in weeks.page(28).days)
    assert "make-ten" in (*today.reviewed, *to_come.reviewed)
