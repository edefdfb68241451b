"""The page of a week: from week to week, its ticks by key and by mouse, and what is taken back."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList

from tests.household import FAMILY, OPENING, context_at, start_fixed
from tests.tui.frame import frame
from tests.tui.pressing import morning, press
from warmup.config.family import Child, load
from warmup.engine.eligibility import UNTIL_SAID
from warmup.model import LevelId, Mark
from warmup.tui.actions import State, menu_of
from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen
from warmup.tui.week import WeekScreen

Clock = Callable[[], dt.datetime]
SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]
QUARTER = LevelId("coins:quarter")
COINS = "Coins: a quarter, and coins in order of worth"


async def open_week(pilot: Pilot[int], *keys: str) -> WeekScreen:
    """The page of this week, from wherever the morning stands, after some more keys."""
    app = pilot.app
    assert isinstance(app, WarmupApp)
    morning(app).action_do("week")
    await press(pilot, *keys)
    assert isinstance(app.screen, WeekScreen)
    return app.screen


def highlighted(app: WarmupApp) -> str:
    """The line under the cursor."""
    option = app.screen.query_one(OptionList).highlighted_option
    return str(option.prompt).strip() if option else ""


def words(app: WarmupApp) -> str:
    """The screen as one line."""
    return " ".join(frame(app).split())


def child(home: Path) -> Child:
    """The child as family.toml has it."""
    return load(home / "family.toml").children[0]


async def to_the_coins(pilot: Pilot[int]) -> None:
    """Week 28, the cursor on the level of the quarter."""
    await open_week(pilot, "right")
    assert isinstance(pilot.app, WarmupApp)
    for _ in range(20):
        if COINS in highlighted(pilot.app):
            return
        await press(pilot, "down")
    raise AssertionError("it is not there")


@pytest.mark.parametrize("opening", [True, False])
async def test_it_opens_from_the_opening_from_a_prompt_and_from_the_close(
    home: Path, clock: Clock, opening: bool
) -> None:
    context = context_at(home, clock)
    start_fixed(context, OPENING if opening else None)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    states = (State.OPENING, State.CLOSE) if opening else (State.PROMPT,)
    async with app.run_test(size=(80, 24)) as pilot:
        for state in states:
            if state is State.CLOSE:
                await press(pilot, *["right"] * 6)
            assert morning(app).state is state
            assert "week" in {action.id for action in menu_of(state)}
            await press(pilot, "full_stop")
            listed = app.screen.query_one(OptionList)
            names = [str(option.prompt).split("  ")[0] for option in listed.options]
            listed.highlighted = names.index("this week")
            await press(pilot, "enter")
            assert isinstance(app.screen, WeekScreen) and "Week 27 of 36" in frame(app)
            await press(pilot, "escape")
            assert isinstance(app.screen, MorningScreen)


async def test_the_arrows_go_from_week_to_week_and_stop_at_the_ends(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await open_week(pilot, "left")
        assert "Week 26 of 36 · quarter 3" in frame(app) and "this week" not in frame(app)
        await press(pilot, "d", "d")
        assert "Week 28 of 36" in frame(app)
        await press(pilot, *["right"] * 9)
        assert "Week 36 of 36 · quarter 4 · review" in frame(app)
        await press(pilot, *["a"] * 36)
        assert "Week 1 of 36" in frame(app) and "Monday, August 31 · past" in frame(app)


async def test_space_turns_a_tick_and_u_takes_it_back(app: WarmupApp, home: Path) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_coins(pilot)
        assert "Space it was taught" in frame(app)
        await press(pilot, "space")
        assert f"Taught: {COINS}. It may come from now on." in words(app)
        assert child(home).opened == (QUARTER,) and child(home).held == ()
        assert highlighted(app) == f"{COINS} · taught", "it stays on this page, under the cursor"
        assert "Space it is not taught yet" in frame(app)
        await press(pilot, "enter")
        assert child(home).held == (QUARTER,) and highlighted(app) == f"{COINS} · not taught yet"
        assert "Held back until it was taught" in frame(app)
        await press(pilot, "u")
        assert "Undone: not taught yet." in frame(app) and child(home).opened == (QUARTER,)
        await press(pilot, "z")
        assert "Undone: taught." in frame(app) and child(home).opened == () and highlighted(app) == COINS
        await press(pilot, "u")
        assert "Nothing to undo." in frame(app)


async def test_what_was_opened_early_then_stands_on_the_page_of_this_week(app: WarmupApp) -> None:
    async with app.run_test(size=(120, 36)) as pilot:
        await to_the_coins(pilot)
        await press(pilot, "space", "left")
        assert f"{COINS} · taught" in frame(app) and "this week" in frame(app)
        await press(pilot, "right")
        assert COINS not in frame(app)


async def test_a_click_on_a_level_turns_its_tick_and_one_on_a_day_does_nothing(
    app: WarmupApp, home: Path
) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await open_week(pilot, "right")
        at = {line.strip(): row for row, line in enumerate(frame(app).splitlines())}
        await pilot.click(offset=(10, at[COINS]))
        await press(pilot)
        assert child(home).opened == (QUARTER,) and "It may come from now on." in words(app)
        before = child(home)
        await pilot.click(offset=(10, at["Monday, March 8 · to come"]))
        await press(pilot)
        assert child(home) == before and "Space it" not in frame(app)
        row, line = next((r, ln) for r, ln in enumerate(frame(app).splitlines()) if "← week before" in ln)
        await pilot.click(offset=(line.index("week before"), row))
        await press(pilot)
        assert "Week 27 of 36" in frame(app)


async def test_the_action_under_the_list_is_clicked_as_well(app: WarmupApp, home: Path) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_coins(pilot)
        row = next(r for r, line in enumerate(frame(app).splitlines()) if "Space it was taught" in line)
        await pilot.click(offset=(4, row))
        await press(pilot)
        assert child(home).opened == (QUARTER,)


async def test_no_key_of_it_marks(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await open_week(pilot, "up", "w", "n", "x", "down", "s", "space", "e", "enter", "0", "left", "d", "k")
        assert {line.mark for line in app.journal.history("Bean")} == {None}
        assert not {*Mark} & {line.mark for line in app.journal.history("Bean")}


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_all_of_it_can_be_reached_by_the_cursor(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await open_week(pilot, *["up"] * 8)
        seen = frame(app)
        for _ in range(app.screen.query_one(OptionList).option_count):
            await press(pilot, "down")
            seen += frame(app)
        flat = " ".join(seen.split())
        assert "↓" not in frame(app).replace("← ", "")
        for part in (
            "Monday, March 1 · past",
            "Thursday, March 4 · to come",
            "To have ready",
            "If at hand, too",
        ):
            assert part in flat
        assert "keep small things away" in flat


async def test_a_pause_is_said_in_place_of_what_may_change(home: Path, clock: Clock) -> None:
    paused = Child("Bean", reads=False, paused=UNTIL_SAID)
    context = context_at(home, clock, FAMILY._replace(children=(paused,)))
    start_fixed(context)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(40, 12)) as pilot:
        await open_week(pilot)
        assert "Nothing new until you say." in frame(app)
        await press(pilot, "left")
        assert "Nothing new" not in frame(app)


async def test_a_routine_file_that_can_not_be_read_is_said_and_the_morning_stays(
    app: WarmupApp, home: Path
) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        (home / "daily.toml").write_text("format = 1\n[[slot]]\nkind = 'sideways'\n", "utf-8")
        (home / "review.toml").write_text("format = 1\n[[slot]]\nkind = 'sideways'\n", "utf-8")
        morning(app).action_do("week")
        await press(pilot)
        assert isinstance(app.screen, MorningScreen) and "review.toml" in frame(app)


async def test_one_that_breaks_while_it_is_open_leaves_the_page_as_it_is(app: WarmupApp, home: Path) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await open_week(pilot)
        (home / "daily.toml").write_text("format = 1\n[[slot]]\nkind = 'sideways'\n", "utf-8")
        await press(pilot, "right")
        assert isinstance(app.screen, WeekScreen) and "daily.toml" in words(app)
        assert "Week 27 of 36" in frame(app)
