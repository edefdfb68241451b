"""The program that most tests of screens open."""

import asyncio
import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot

from tests.household import context_at, start_fixed
from warmup import games, skills
from warmup.games.fill_the_bowl import GAME as BOWL
from warmup.games.what_the_mitt_hid import GAME as MITT
from warmup.model import LevelId
from warmup.tui.app import WarmupApp

Clock = Callable[[], dt.datetime]
_ROUNDS = 10
"""So often at most what a paint leads to is painted as well."""


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


async def settled(at_least: float = 0, at_most: float = 1) -> None:
    """Wait until the loop has nothing left to do.

    Textual's own wait looks at the processor's time every 20 ms: with many keys it is most of the suite's
    time, and on a busy machine it ends too early or too late. The loop itself knows. No timer is waited for:
    :func:`settle_by_the_loop` paints, and the program's own timers are turned by hand.
    """
    ready, quiet = vars(asyncio.get_running_loop())["_ready"], 0
    while quiet < 3:
        await asyncio.sleep(0)
        quiet = 0 if ready else quiet + 1


@pytest.fixture(autouse=True)
def settle_by_the_loop(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let Textual's pilot wait by the loop, for every test of a screen, and paint what waited for a paint."""
    pause, resize = Pilot.pause, Pilot.resize_terminal

    async def pause_and_paint(pilot: Pilot[int], delay: float | None = None) -> None:
        await pause(pilot, delay)
        for _ in range(_ROUNDS):
            await settled()
            screen = pilot.app.screen
            waits = screen._layout_required or screen._scroll_required or screen._dirty_widgets
            if not (waits or screen._callbacks):
                break
            screen._on_timer_update()

    async def resize_at_once(pilot: Pilot[int], width: int, height: int) -> None:
        await resize(pilot, width, height)
        if pilot.app._resize_event is not None:
            pilot.app._check_resize()
        await pilot.pause()

    monkeypatch.setattr(Pilot, "pause", pause_and_paint)
    monkeypatch.setattr(Pilot, "resize_terminal", resize_at_once)
    for place in ("textual.pilot", "textual.app"):
        monkeypatch.setattr(f"{place}.wait_for_idle", settled)


@pytest.fixture
def app(home: Path, clock: Clock) -> WarmupApp:
    """The program on the fixed morning."""
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)
