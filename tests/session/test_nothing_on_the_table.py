"""Nothing on the table today: no prompt asks for a thing, from the opening on or from where it stands."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, OPENING, begun, context_at, start_fixed
from warmup.config.family import year_of
from warmup.model import Mark
from warmup.session.context import Context
from warmup.session.opening import opening
from warmup.session.session import Session, begin, resume

Clock = Callable[[], dt.datetime]
MORNINGS = year_of(FAMILY).mornings


def on(home: Path, clock: Clock, day: dt.date) -> Context:
    """The family on this morning, nothing asked yet."""
    return context_at(home, clock, FAMILY._replace(began=day, known_until=day - dt.timedelta(1)), day)


def tables(session: Session) -> list[str]:
    """What the prompts and the opening want."""
    first = session.routine.opening
    return [prompt.table for prompt in session.prompts] + ([first.table] if first else [])


@pytest.mark.parametrize("number", [0, 3, 20, 49, 90, 143])
def test_from_the_opening_on_nothing_is_asked_for(home: Path, clock: Clock, number: int) -> None:
    context = on(home, clock, MORNINGS[number])
    assert context.journal is not None
    session = begin(context, context.journal, clock)
    before = session.routine
    assert session.at_opening and any(tables(session))
    assert session.bare()
    assert not any(tables(session)) and session.at_opening
    assert len(session.prompts) >= (4 if number > 15 else 2), "in the first weeks few skills need no thing"
    again = resume(context, context.journal, clock)
    assert again is not None and again.routine == session.routine and not again.bare()
    undone = again.undo()
    assert undone is not None and undone.words == "nothing on the table" and again.routine == before


def test_later_what_was_asked_stays_and_the_rest_asks_for_nothing(home: Path, clock: Clock) -> None:
    session = begun(on(home, clock, MORNINGS[60]), clock)
    session.mark(Mark.FLUENT)
    first = session.prompts[0]
    assert session.bare()
    assert session.prompts[0] == first and session.mark_at(0) is Mark.FLUENT
    assert not any(prompt.table for prompt in session.prompts[1:])
    assert not session.bare()


@pytest.mark.parametrize(
    "change", [Session.another, Session.hold_back, Session.know_already, Session.stop_early]
)
def test_what_comes_in_another_s_place_asks_for_nothing_either(
    home: Path, clock: Clock, change: Callable[[Session], object]
) -> None:
    """Also after the program was left: that there is nothing stands in the log."""
    context = on(home, clock, MORNINGS[60])
    session = begun(context, clock)
    session.bare()
    assert context.journal is not None
    again = resume(context, context.journal, clock)
    assert again is not None
    change(again)
    assert again.prompts != session.prompts and not any(prompt.table for prompt in again.prompts)


def test_the_date_is_said_where_every_other_fact_wants_a_thing() -> None:
    first = year_of(FAMILY).morning(MORNINGS[0])
    fact = opening(first, (), child="Bean", bare=True)
    assert fact is not None and not fact.table
    wanting = opening(first, (), child="Bean")
    assert wanting is not None and wanting.table


def test_a_morning_that_asks_for_nothing_is_left_alone(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    start_fixed(context, OPENING._replace(table=""))
    assert context.journal is not None
    session = resume(context, context.journal, clock)
    assert session is not None
    session.routine = session.routine._replace(
        prompts=tuple(prompt._replace(table="") for prompt in session.prompts)
    )
    assert not session.bare()


def test_another_takes_the_place_of_this_one_alone_and_is_undone(home: Path, clock: Clock) -> None:
    session = begun(on(home, clock, MORNINGS[60]), clock)
    before = session.prompts
    assert session.another()
    assert session.prompts[0] != before[0] and session.prompts[1:] == before[1:]
    undone = session.undo()
    assert undone is not None and session.prompts == before


def test_a_bead_leads_to_what_was_shown_and_one_further(home: Path, clock: Clock) -> None:
    session = begun(on(home, clock, MORNINGS[60]), clock)
    session.mark(Mark.FLUENT)
    assert session.position == 1 and session.go_to(0) and session.position == 0
    assert session.go_to(2) and session.position == 2 and session.furthest == 2
    assert not session.go_to(4) and not session.go_to(len(session.prompts)) and session.position == 2
    assert session.go_to(-1) and session.at_opening
    assert session.mark_at(0) is Mark.FLUENT
