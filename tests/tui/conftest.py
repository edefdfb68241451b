"""The program that most tests of screens open."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import context_at, start_fixed
from warmup.tui.app import WarmupApp

Clock = Callable[[], dt.datetime]


@pytest.fixture
def app(home: Path, clock: Clock) -> WarmupApp:
    """The program on the fixed morning."""
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)
