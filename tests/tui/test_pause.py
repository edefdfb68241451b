"""The offer of a week with nothing new at the close, and what the list of what is unlocked says of it."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot

from tests.household import FAMILY, context_at, lived
from tests.tui.frame import frame
from warmup.config.family import load
from warmup.model import Mark
from warmup.tui.actions import State
from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen

Clock = Callable[[], dt.datetime]
WEDNESDAY = dt.date(2027, 2, 3)
"""A morning of week 23, a review week."""


@pytest.fixture
def app(home: Path, clock: Clock) -> WarmupApp:
    """A review morning after one on which two of three skills wobbled."""
    context = context_at(home, clock, FAMILY._replace(known_until=WEDNESDAY - dt.timedelta(1)), WEDNESDAY)
    marks = {"month/this": Mark.NOT_YET, "by-tens/to-50": Mark.HESITATED, "weekday/today": Mark.FLUENT}
    lived(context, WEDNESDAY - dt.timedelta(1), marks)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


async def to_the_close(app: WarmupApp, pilot: Pilot[int]) -> None:
    """Leave every prompt without a mark."""
    screen = app.screen
    assert isinstance(screen, MorningScreen)
    while screen.state is not State.CLOSE:
        await pilot.press("right")
    await pilot.pause()


def said(app: WarmupApp) -> str:
    """The script, without the stage beside it, on one line."""
    column = 66 if app.size.width > 72 else 0
    return " ".join(" ".join(line[column:].split()) for line in frame(app).splitlines())


@pytest.mark.parametrize("size", [(60, 20), (120, 36)], ids=lambda size: f"{size[0]}x{size[1]}")
async def test_y_at_the_close_takes_the_offer_and_takes_it_back(
    app: WarmupApp, home: Path, size: tuple[int, int]
) -> None:
    async with app.run_test(size=size) as pilot:
        await to_the_close(app, pilot)
        assert "More than a third wobbled. y nothing new for a week" in said(app)
        await pilot.press("y")
        await pilot.pause()
        assert "Nothing new until Wednesday, February 10. y new things again" in said(app)
        assert "third" not in said(app) and "talked math" in said(app) and "finish" in said(app)
        until = WEDNESDAY + dt.timedelta(7)
        assert load(home / "family.toml").children[0].paused == until
        await pilot.press("l")
        await pilot.pause()
        assert "Nothing new until Wednesday, February 10." in frame(app)
        await pilot.press("l", "6")
        await pilot.pause()
        assert load(home / "family.toml").children[0].paused is None
        assert "New things may come again." in frame(app)
        await pilot.press("l")
        await pilot.pause()
        assert "Nothing new" not in frame(app)


async def test_a_click_takes_it_too(app: WarmupApp) -> None:
    async with app.run_test(size=(60, 20)) as pilot:
        await to_the_close(app, pilot)
        rows = frame(app).splitlines()
        row = next(at for at, line in enumerate(rows) if "More than a third" in line)
        await pilot.click(offset=(rows[row].index("nothing new"), row))
        await pilot.pause()
        assert app.context.child.paused == WEDNESDAY + dt.timedelta(7)


async def test_without_an_offer_the_key_does_nothing_at_the_close(app: WarmupApp, home: Path) -> None:
    rows = ("weekday/today", "make-ten/seven-three", "clock/o-clock", "count-on/across-30")
    lived(app.context, WEDNESDAY - dt.timedelta(2), dict.fromkeys(rows, Mark.FLUENT))
    lived(app.context, WEDNESDAY - dt.timedelta(2), dict.fromkeys(("compare/sets-to-10",), Mark.FLUENT))
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_close(app, pilot)
        assert "third" not in frame(app)
        before = (home / "family.toml").read_bytes()
        await pilot.press("y")
        await pilot.pause()
        assert (home / "family.toml").read_bytes() == before and "Nothing new" not in frame(app)
