"""A morning in a house that lacks things, or with a toddler in it."""

import datetime as dt
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, begun, context_at
from warmup.config.family import Family, year_of
from warmup.engine.things import Household, things_on
from warmup.journal.routine_json import routine_data, routine_from, routine_text
from warmup.model import Mark, Routine
from warmup.session.context import Context
from warmup.session.opening import JOBS, job
from warmup.session.summary import closing
from warmup.session.words import has_small_things

Clock = Callable[[], dt.datetime]
MORNINGS = year_of(FAMILY).mornings
TODDLER = FAMILY._replace(toddler=True)
CLOCKLESS = FAMILY._replace(without=("clock with hands", "wall calendar", "straws"))


def on(home: Path, clock: Clock, day: dt.date, family: Family) -> Context:
    """The family on this morning, nothing asked yet."""
    return context_at(home, clock, family._replace(began=day, known_until=day - dt.timedelta(1)), day)


def tables(routine: Routine) -> list[str]:
    """What the prompts and the opening want."""
    first = [routine.opening.table] if routine.opening else []
    found = [*first, *(prompt.table for prompt in routine.prompts)]
    return [box(table) for table in found]


def box(table: str) -> str:
    """A table on which a box of crackers or of cereal is a box."""
    return re.sub("(cracker|cereal) box", "box", table)


@pytest.mark.parametrize("number", range(1, 144, 13))
def test_with_a_toddler_nothing_small_is_wanted_and_nothing_small_is_to_be_had_ready(
    home: Path, clock: Clock, number: int
) -> None:
    context = on(home, clock, MORNINGS[number], TODDLER)
    session = begun(context, clock)
    assert len(session.prompts) >= 4
    assert not has_small_things(*tables(session.routine))
    assert not any("band" in table for table in tables(session.routine))
    ready = closing(session, context.knowledge())
    assert not has_small_things(box(ready.table), box(ready.handy), *ready.models)


@pytest.mark.parametrize("number", [5, 40, 75, 110, 140])
def test_what_the_house_lacks_is_never_asked_for(home: Path, clock: Clock, number: int) -> None:
    context = on(home, clock, MORNINGS[number], CLOCKLESS)
    session = begun(context, clock)
    house = context.household
    assert house is not None and len(session.prompts) >= 4
    assert all(house.has(table) for table in tables(session.routine))
    assert session.another() and all(house.has(table) for table in tables(session.routine))
    session.stop_early()
    assert all(house.has(table) for table in tables(session.routine))


@pytest.mark.parametrize("number", [0, 50, 120])
def test_a_family_that_says_nothing_of_its_house_has_the_very_same_routine(
    home: Path, clock: Clock, number: int
) -> None:
    """Byte for byte; and without a word of a house in what is kept."""
    context = on(home, clock, MORNINGS[number], FAMILY)
    assert context.household is None
    text = routine_text(context.routine())
    assert text == routine_text(on(home, clock, MORNINGS[number], FAMILY).routine())
    assert '"job"' not in text and routine_from(text).opening == context.routine().opening
    # A house that lacks what nothing wants is asked the same: only what is lacking makes a difference.
    odd = on(home, clock, MORNINGS[number], FAMILY._replace(without=("balance",)))
    assert routine_text(odd.routine()) == text


def test_a_toddler_may_have_one_job_on_some_dates_the_same_on_any_machine(home: Path, clock: Clock) -> None:
    house = Household(toddler=True)
    days = [dt.date(2026, 9, 1) + dt.timedelta(n) for n in range(60)]
    jobs = [job(day, house) for day in days]
    assert {*jobs} == {"", *(say for say, _ in JOBS)} and jobs.count("") == 30
    assert jobs == [job(day, house) for day in days]
    bare = {job(day, house, bare=True) for day in days}
    assert bare == {"", *(say for say, thing in JOBS if not thing)}
    lacking = Household(toddler=True, without=frozenset({"spoons"}))
    assert not any("spoons" in job(day, lacking) for day in days)
    assert not has_small_things(*(thing for _, thing in JOBS))
    with_one = next(day for day in MORNINGS if job(day, house))
    routine = on(home, clock, with_one, TODDLER).routine()
    assert routine.opening is not None and routine.opening.job in {say for say, _ in JOBS}
    assert routine_from(routine_text(routine)).opening == routine.opening
    assert routine_data(routine)["opening"]["job"] == routine.opening.job


def test_from_a_mark_on_what_comes_is_fitted_to_the_house_and_what_was_asked_stays(
    home: Path, clock: Clock
) -> None:
    context = on(home, clock, MORNINGS[60], FAMILY)
    session = begun(context, clock)
    session.mark(Mark.FLUENT)
    first, before = session.prompts[0], session.prompts
    assert not session.fit_house(), "nothing is lacking"
    every = tuple(thing.name for prompt in before for either in things_on(prompt.table) for thing in either)
    assert every
    context.editor.change(FAMILY._replace(toddler=True, without=tuple(dict.fromkeys(every))))
    house = context.household
    assert house is not None
    changed = session.fit_house()
    assert session.prompts[0] == first and session.mark_at(0) is Mark.FLUENT
    assert all(house.has(prompt.table) for prompt in session.prompts[1:])
    assert changed is (session.prompts != before) and not session.fit_house()
