"""The form of a new school year: from the menu of a summer morning, taken, undone, or left as it was."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input

from tests.household import FAMILY, StandingClock, context_at
from tests.tui.frame import frame, golden
from tests.tui.pressing import press
from warmup.config.family import load
from warmup.tui.app import WarmupApp
from warmup.tui.menu import MenuScreen
from warmup.tui.morning import MorningScreen
from warmup.tui.new_year import NewYearScreen

SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]
SUMMER = dt.date(2027, 7, 5)
Clock = Callable[[], dt.datetime]


@pytest.fixture
def app(home: Path) -> WarmupApp:
    clock = StandingClock(dt.datetime.combine(SUMMER, dt.time(8)))
    context = context_at(home, clock, FAMILY._replace(known_until=SUMMER), SUMMER)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


async def opened(app: WarmupApp, pilot: Pilot[int]) -> None:
    await press(pilot, "full_stop")
    assert isinstance(app.screen, MenuScreen)
    app.screen.leave("new_year")
    await press(pilot)
    assert isinstance(app.screen, NewYearScreen)


@pytest.mark.parametrize("size", SIZES)
async def test_the_form_at_every_size(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await opened(app, pilot)
        golden(f"new-year-{size[0]}x{size[1]}", frame(app))


async def test_it_is_taken_as_it_stands_and_undone(app: WarmupApp, home: Path) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await opened(app, pilot)
        await press(pilot, "enter")
        assert isinstance(app.screen, MorningScreen)
        new = load(home / "family.toml")
        assert new.first_day == dt.date(2027, 8, 30) and "The new school year is kept." in frame(app)
        assert "before the first day" in frame(app), "today gets ready for it"
        await press(pilot, "u")
        assert load(home / "family.toml").first_day == FAMILY.first_day
        assert "after the last day" in frame(app)


async def test_left_with_escape_nothing_has_changed(app: WarmupApp, home: Path) -> None:
    before = (home / "family.toml").read_bytes()
    async with app.run_test(size=(80, 24)) as pilot:
        await opened(app, pilot)
        app.screen.query_one("#week", Input).value = "19"
        await press(pilot, "escape")
        assert isinstance(app.screen, MorningScreen) and (home / "family.toml").read_bytes() == before


async def test_only_a_year_that_is_over_offers_another(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(80, 40)) as pilot:
        await press(pilot, "full_stop")
        assert "a new school year" not in frame(app)
