"""The family of most tests of a session, and its fixed morning."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import context_at, start_fixed
from warmup.session.context import Context
from warmup.session.session import Session, resume

Clock = Callable[[], dt.datetime]


@pytest.fixture
def context(home: Path, clock: Clock) -> Context:
    """A family in week 25, nothing asked yet."""
    return context_at(home, clock)


@pytest.fixture
def session(context: Context, clock: Clock) -> Session:
    """The fixed five prompts, at the first."""
    start_fixed(context)
    found = resume(context, context.journal, clock) if context.journal else None
    assert found is not None
    return found
