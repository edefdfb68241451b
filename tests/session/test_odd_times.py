"""Times that are no ordinary morning: summer, a late start, an early end, a second year, a jumping clock."""

import datetime as dt
from pathlib import Path

import pytest

from tests.household import FAMILY, StandingClock, begun, context_at, lived
from warmup.cli.plain import day_words
from warmup.config.family import Child, Family, year_of
from warmup.engine.absence import NONE
from warmup.journal.routine_json import routine_text
from warmup.model import DayKind, Mark
from warmup.session.context import Context
from warmup.session.session import resume
from warmup.session.summary import closing
from warmup.session.words import KEEP_WARM, of_the_day

DAY = dt.timedelta(1)
INDEPENDENCE = dt.date(2027, 7, 5)
EASY = dict.fromkeys(
    (
        "month/this",
        "count/to-20",
        "weekday/today",
        "parts/split-to-5",
        "measure/longer",
        "compare/match-to-5",
    ),
    Mark.FLUENT,
)


@pytest.fixture
def clock() -> StandingClock:
    return StandingClock(dt.datetime(2027, 3, 3, 8))


def on(home: Path, clock: StandingClock, day: dt.date, family: Family = FAMILY) -> Context:
    """The family on a day, all mornings before it settled."""
    return context_at(home, clock, family._replace(known_until=day - DAY), day)


# -- summer, and before the year


def test_in_summer_there_are_three_things_and_no_week_is_named(home: Path, clock: StandingClock) -> None:
    context = on(home, clock, INDEPENDENCE)
    for day in context.year.mornings[-30:]:
        lived(context, day, EASY)
    morning, routine = context.morning(), context.routine()
    assert morning.kind is DayKind.AFTER and len(routine.prompts) == 3
    assert of_the_day(context, morning) == KEEP_WARM
    said = "The school year is over, 144 school days. Three things a week keep math warm."
    assert day_words(morning) == said
    levels = {level for level, record in context.knowledge().levels.items() if record.marks}
    assert {prompt.level_id for prompt in routine.prompts} <= levels, "nothing new in summer"
    # A number the family gave is one of school mornings.
    context.editor.change(context.family._replace(prompts=8))
    assert len(context.routine().prompts) == 3


def test_time_does_not_stand_still_in_summer(home: Path, clock: StandingClock) -> None:
    """A week of it is as many mornings as a week of school: what rested longer is likelier forgotten."""
    context = on(home, clock, INDEPENDENCE)
    index = [context.morning(INDEPENDENCE + week * 7 * DAY).index for week in range(4)]
    assert [later - index[0] for later in index] == [0, 4, 8, 12]


def test_the_day_before_the_first_one_is_getting_ready(home: Path, clock: StandingClock) -> None:
    context = on(home, clock, FAMILY.first_day - 3 * DAY)
    said = day_words(context.morning())
    assert said == "The school year has not begun; it begins on Monday, August 31. Getting ready."
    assert context.routine().prompts and not context.unconfirmed_days()


# -- a start in January, an end in May


def test_a_start_in_january_asks_nothing_of_the_days_before_it(home: Path, clock: StandingClock) -> None:
    monday = dt.date(2027, 1, 11)
    starter = Family(first_day=monday, began=monday, children=(Child("Fern"),), first_week=19)
    context = context_at(home, clock, starter, monday)
    morning, routine = context.morning(), context.routine()
    assert (morning.school_day, morning.week, morning.quarter) == (73, 19, 3)
    assert context.unconfirmed_days() == () and context.absence(morning) == NONE
    assert context.reviews == context.plan.reviews, "a review before the start was not missed"
    told = {prompt.why for prompt in routine.prompts}
    assert "from before you began: to see whether it is known" in told
    assert len(routine.prompts) == context.count(morning, context.shape(morning))


def test_a_child_that_joins_in_january_is_sampled_and_the_other_goes_on(
    home: Path, clock: StandingClock
) -> None:
    """Each by its own: the new one's earlier levels are unknown, and nobody asks of its autumn."""
    monday = dt.date(2027, 1, 11)
    both = FAMILY._replace(
        children=(Child("Bean"), Child("Fern", began=monday)), known_until=monday - 5 * DAY
    )
    context = context_at(home, clock, both, monday)
    from warmup.session.context import open_context

    fern = open_context(context.places, both, monday, context.journal, child="Fern")
    assert fern.began == monday and fern.curriculum().since == fern.morning().week
    assert context.curriculum().since == 1
    thursday = monday - 4 * DAY
    assert fern.unconfirmed_days() == context.unconfirmed_days() == (thursday,), "the family's, asked once"
    alone = both._replace(children=both.children[1:])
    assert open_context(context.places, alone, monday, context.journal).unconfirmed_days() == ()


def test_a_year_may_end_early(home: Path, clock: StandingClock) -> None:
    """May 6 is the last day: the close of that day is the year's, and the next one is summer."""
    last = dt.date(2027, 5, 6)
    family = FAMILY._replace(last_day=last)
    context = on(home, clock, last, family)
    assert context.morning().is_school and context.morning().next is None
    session = begun(context, clock)
    assert closing(session, context.knew_before_today()).year.startswith("That was the last school day")
    after = context.morning(last + DAY)
    assert after.kind is DayKind.AFTER and len(context.routine(after).prompts) == 3
    assert year_of(family).mornings == tuple(day for day in year_of(FAMILY).mornings if day <= last)


# -- a quarter's end


def test_the_last_morning_of_a_quarter_says_so_and_no_other_does(home: Path, clock: StandingClock) -> None:
    said = {}
    for day in year_of(FAMILY).mornings[34:38] + year_of(FAMILY).mornings[71:73]:
        context = on(home, clock, day)
        if words := closing(begun(context, clock), context.knew_before_today()).quarter:
            said[day] = words
    year = year_of(FAMILY)
    assert said == {
        year.mornings[35]: "Quarter one is done: thirty-six school days.",
        year.mornings[71]: "Quarter two is done: seventy-two school days.",
    }


# -- a second year with the same child


@pytest.fixture
def second_year(home: Path, clock: StandingClock) -> Context:
    """A year of warm-ups, then the next one on its first day."""
    first = context_at(home, clock)
    for day in first.year.mornings[::3]:
        lived(first, day, EASY)
    monday = dt.date(2027, 8, 30)
    return on(home, clock, monday, FAMILY._replace(first_day=monday))


def test_last_year_lies_before_the_new_one(second_year: Context) -> None:
    """Its marks are as old as they are: 44 Mondays to Thursdays lie between June 9 and August 30."""
    last = second_year.knowledge().of_level(second_year.curriculum().items[0].level_id)
    days = [day.index for day in second_year.knowledge().days]
    assert all(index < 0 for index in days) and days == sorted(set(days)) and last is not None
    passed = [second_year.knowledge().days[-1].date + n * DAY for n in range(1, 200)]
    between = [day for day in passed if day < second_year.today and day.weekday() < 4]
    assert days[-1] == -len(between) - 1


def test_it_begins_gently_and_asks_nothing_of_the_summer(second_year: Context) -> None:
    morning = second_year.morning()
    assert (morning.school_day, morning.week) == (1, 1)
    assert second_year.unconfirmed_days() == ()
    assert of_the_day(second_year, morning).endswith("for three mornings nothing new opens.")
    known = second_year.knowledge().levels
    told = {prompt.level_id: prompt.why for prompt in second_year.routine().prompts}
    assert {level for level in told if level not in known} <= {
        level for level, why in told.items() if why == "the day itself asks for it"
    }
    assert len(told) >= 4 and sum(level in known for level in told) >= 3


# -- a clock that jumps


def test_the_hour_changes_nothing(home: Path, clock: StandingClock) -> None:
    """At seven, at four in the afternoon, a minute before midnight: the very same routine."""
    told = set()
    for hour, minute in ((7, 0), (16, 0), (23, 59)):
        clock.moment = dt.datetime(2027, 3, 3, hour, minute)
        told.add(routine_text(context_at(home, clock).routine()))
    assert len(told) == 1


@pytest.mark.parametrize("jump", [-1, 1])
def test_a_date_that_jumps_gets_a_session_of_its_own_and_no_mark_is_lost(
    home: Path, clock: StandingClock, jump: int
) -> None:
    """A clock set back, a flight over the date line: each date keeps what was marked on it."""
    wednesday = dt.date(2027, 3, 3)
    context = on(home, clock, wednesday)
    session = begun(context, clock)
    session.mark(Mark.FLUENT)
    session.mark(Mark.HESITATED)
    other = on(home, clock, wednesday + jump * DAY)
    moved = begun(other, clock)
    assert moved.morning.date == wednesday + jump * DAY and not any(moved.marks.values())
    moved.mark(Mark.NOT_YET)
    assert other.journal is not None
    again = on(home, clock, wednesday)
    assert again.journal is not None
    back = resume(again, again.journal, clock)
    assert back is not None and back.items == session.items
    assert [back.mark_at(at) for at in range(3)] == [Mark.FLUENT, Mark.HESITATED, None]


def test_what_may_follow_a_quarter_is_said_after_it(home: Path, clock: StandingClock) -> None:
    from warmup.cli.spoken_lines import close_lines
    from warmup.session.words import QUARTER_BY_COMMAND

    day = year_of(FAMILY).mornings[35]
    context = on(home, clock, day)
    session = begun(context, clock)
    for _ in session.prompts:
        session.next()
    ending = closing(session, context.knew_before_today())
    lines = list(close_lines([session], [ending]))
    assert lines[lines.index(ending.quarter) + 1] == QUARTER_BY_COMMAND
