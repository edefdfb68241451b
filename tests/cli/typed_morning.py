"""A morning in lines for the tests: lines are typed, and what is said comes back."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from tests.household import FAMILY, TODAY, StandingClock, context_at, start_fixed
from warmup.config.family import year_of
from warmup.journal.journal import Journal
from warmup.model import Mark, Opening
from warmup.session.context import Context
from warmup.session.session import Session, resume

Run = Callable[..., list[str]]
PAST = [day for day in year_of(FAMILY).mornings if day < TODAY]


def fixed(home: Path, clock: StandingClock, opening: Opening | None = None, **family: Any) -> Context:
    """The fixed morning, not begun."""
    context = context_at(home, clock, FAMILY._replace(**family))
    start_fixed(context, opening)
    return context


def on_disk(context: Context, clock: StandingClock) -> Session:
    """The morning as another start of the program finds it."""
    journal = Journal.open(context.places.data, clock)
    found = resume(context_at(context.places.data, clock, context.family, context.today), journal, clock)
    assert found is not None
    return found


def marks(context: Context, clock: StandingClock) -> list[Mark | None]:
    session = on_disk(context, clock)
    return [session.mark_at(at) for at in range(len(session.prompts))]
