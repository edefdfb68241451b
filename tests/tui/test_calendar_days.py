"""The page of days off out of a calendar: what it shows at every size, its keys, the mouse, its result."""

from collections.abc import Sequence
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import SelectionList

from tests.config.calendars import DISTRICT, FAMILY, TODAY
from tests.household import StandingClock, context_at
from tests.tui.frame import frame, golden
from tests.tui.pressing import press
from warmup.cli.days import offered
from warmup.config.family import load
from warmup.session.calendar_days import Offer
from warmup.tui.calendar_days import CalendarApp, CalendarDaysScreen
from warmup.tui.help import HelpScreen

SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]


def district() -> tuple[Offer, ...]:
    return offered(DISTRICT, FAMILY, TODAY, done=False)


@pytest.fixture
def app(home: Path, clock: StandingClock) -> CalendarApp:
    return program(home, clock, district())


def program(home: Path, clock: StandingClock, offers: Sequence[Offer]) -> CalendarApp:
    return CalendarApp(context_at(home, clock, FAMILY, TODAY), clock, offers)


def names(taken: Sequence[Offer]) -> list[str]:
    return [each.name for each in taken]


async def keys(pilot: Pilot[int], *pressed: str) -> None:
    """Press keys, and wait for the page to show what came of them."""
    await press(pilot, *pressed)
    await pilot.pause()


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_it_shows_what_there_is_and_what_the_ticks_do(app: CalendarApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await keys(pilot, "down", "space")
        golden(f"calendar_days-{size[0]}x{size[1]}", frame(app))
        assert "19 mornings off: the last day moves" in " ".join(frame(app).split())


async def test_enter_takes_what_is_ticked(app: CalendarApp, home: Path) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert "21 mornings off: the last day moves from May 6 to June 14." in frame(app)
        await keys(pilot, "enter")
    assert app.taken == tuple(each for each in district() if each.ticked) and len(app.taken) == 9
    assert load(home / "family.toml") == FAMILY, "the page itself changes nothing"


@pytest.mark.parametrize("key", ["escape", "backspace", "q", "8", "ctrl+c", "ctrl+q"])
async def test_leaving_takes_nothing(app: CalendarApp, key: str) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await keys(pilot, "down", "space", key)
    assert app.taken == () and app.ended() == 0


@pytest.mark.parametrize(("down", "tick"), [("down", "space"), ("s", "e")], ids=["right hand", "left hand"])
async def test_the_keys_of_either_hand_tick_and_untick(app: CalendarApp, down: str, tick: str) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await keys(pilot, tick)
        assert "20 mornings off" in frame(app)
        await keys(pilot, down, down, tick, "enter" if down == "down" else "d")
    assert names(app.taken)[0].startswith("Fall break") and "Veterans Day" not in names(app.taken)
    assert len(app.taken) == 7


async def test_all_or_none(app: CalendarApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await keys(pilot, "l")
        assert len(app.screen.query_one(SelectionList).selected) == len(district())
        await keys(pilot, "a")
        assert "Nothing is checked: the last day stays May 6." in frame(app)
        await keys(pilot, "enter")
    assert app.taken == ()


async def test_a_click_ticks_a_line_and_a_click_on_a_key_does_what_it_says(app: CalendarApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        rows = frame(app).splitlines()
        row = next(at for at, line in enumerate(rows) if "Winter break" in line)
        await pilot.click(offset=(30, row))
        await pilot.pause()
        assert "13 mornings off" in frame(app) and "Winter break: 8 mornings" in frame(app)
        foot = next(at for at, line in enumerate(rows) if "take them" in line)
        await pilot.click(offset=(rows[foot].index("take them") + 2, foot))
        await pilot.pause()
    assert "Winter break" not in names(app.taken) and len(app.taken) == 8


async def test_the_help_the_look_and_back(app: CalendarApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await keys(pilot, "f1")
        assert isinstance(app.screen, HelpScreen) and "all or none" in frame(app)
        assert "Keys of days off from a calendar" in frame(app)
        await keys(pilot, "escape")
        assert isinstance(app.screen, CalendarDaysScreen)
        before = app.theme
        await keys(pilot, "comma")
        assert app.theme != before


async def test_a_name_is_shown_as_written_and_never_obeyed(home: Path, clock: StandingClock) -> None:
    (first, *_) = district()
    odd = first._replace(name="[red]x[/red] [@click=app.quit]y[/]")
    async with (app := program(home, clock, [odd])).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert frame(app).count("[red]x[/red] [@click=app.quit]y[/]") == 2


async def test_a_smaller_window_keeps_the_ticks_and_the_cursor(app: CalendarApp) -> None:
    async with app.run_test(size=(120, 36)) as pilot:
        await keys(pilot, "down", "down", "space")
        await pilot.resize_terminal(40, 12)
        assert "20 mornings off" in frame(app) and "Veterans Day: 1 morning" in frame(app)
