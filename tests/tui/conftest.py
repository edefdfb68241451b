"""The program that most tests of screens open."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import context_at, start_fixed
from tests.tui.settling import settle_by_the_loop
from warmup import games, skills
from warmup.games.fill_the_bowl import GAME as BOWL
from warmup.games.what_the_mitt_hid import GAME as MITT
from warmup.model import LevelId
from warmup.tui.app import WarmupApp

Clock = Callable[[], dt.datetime]


@pytest.fixture(autouse=True)
def two_games(monkeypatch: pytest.MonkeyPatch) -> None:
    """Two games for whatever wobbled, so that no other game moves a screen that names one."""
    pairs = LevelId("make-ten:all")
    found = {
        game.id: game._replace(
            levels=skills.levels(), made=lambda _, *rest, made=game.made: made(pairs, *rest)
        )
        for game in (MITT, BOWL)
    }
    monkeypatch.setattr(games, "games", lambda: found)


@pytest.fixture(autouse=True)
def settle(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let Textual's pilot wait by the loop, for every test of a screen."""
    settle_by_the_loop(monkeypatch.setattr)


@pytest.fixture
def app(home: Path, clock: Clock) -> WarmupApp:
    """The program on the fixed morning."""
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)
