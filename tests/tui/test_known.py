"""What the child knows on screen: what matters first, groups that open, a level, the year in bars."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList

from tests.household import FAMILY, TODAY, context_at, lived, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import press
from warmup.config.family import Child, Family, year_of
from warmup.model import Mark
from warmup.tui.app import WarmupApp
from warmup.tui.known import KnownScreen
from warmup.tui.known_level import KnownLevelScreen
from warmup.tui.known_year import KnownYearScreen
from warmup.tui.morning import MorningScreen
from warmup.tui.practice import PracticeScreen

Clock = Callable[[], dt.datetime]
SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]
MORNINGS = [day for day in year_of(FAMILY).mornings if day < TODAY]
F, H, N = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET
FEW = FAMILY._replace(children=(Child("[b]Bean", reads=False),))
LIVED = (
    (16, {"count/to-39": F, "weekday/today": F}),
    (17, {"count/to-39": F, "weekday/today": F, "count/across-30": F}),
    (60, {"weekday/today": H, "by-tens/to-50": N, "count/across-30": N}),
    (61, {"by-tens/to-50": N, "make-ten/seven-three": F}),
)
"""By the index of the morning: two skills settled in week 5, one of which wobbled since, and one is shaky."""


def program(home: Path, clock: Clock, family: Family = FEW) -> WarmupApp:
    """The program on the fixed morning, with a few mornings behind it."""
    context = context_at(home, clock, family)
    for at, marks in LIVED:
        lived(context, MORNINGS[at], marks)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


async def to_the_page(pilot: Pilot[int]) -> None:
    await press(pilot)
    assert isinstance(pilot.app, WarmupApp)
    pilot.app.action_do("knows")
    await press(pilot)
    assert isinstance(pilot.app.screen, KnownScreen)


def flat(app: WarmupApp) -> str:
    return " ".join(frame(app).split())


@pytest.mark.slow
async def test_what_they_show_at_every_size(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    async with app.run_test(size=SIZES[0]) as pilot:
        await to_the_page(pilot)
        await press(pilot, "down")
        for name, keys in (("known", ()), ("known-year", ("k",)), ("known-level", ("escape", "enter"))):
            await press(pilot, *keys)
            for width, height in SIZES:
                await pilot.resize_terminal(width, height)
                await press(pilot)
                golden(f"{name}-{width}x{height}", frame(app))


@pytest.mark.slow
async def test_groups_open_and_close_and_a_level_opens_with_either_hand(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 36)) as pilot:
        await to_the_page(pilot)
        assert "▾ worth revisiting: 2" in frame(app) and "▸ settled: 1" in frame(app)
        for choose, up, down, back in (("enter", "up", "down", "backspace"), ("e", "w", "s", "escape")):
            await press(pilot, choose)
            assert "▸ worth revisiting: 2" in frame(app) and "count by tens" not in frame(app)
            await press(pilot, choose, down, down, up)
            assert app.screen.query_one(OptionList).highlighted == 1
            await press(pilot, choose)
            assert isinstance(app.screen, KnownLevelScreen)
            await press(pilot, back)
            assert isinstance(app.screen, KnownScreen)
            await press(pilot, up)
        for bars, back in (("k", "left"), ("v", "a")):
            await press(pilot, bars)
            assert isinstance(app.screen, KnownYearScreen) and "weeks  1 to  9" in frame(app)
            await press(pilot, back)
        await press(pilot, "a")
        assert isinstance(app.screen, MorningScreen)


@pytest.mark.slow
async def test_what_is_settled_opens_below_its_count_and_a_click_opens_a_level(
    home: Path, clock: Clock
) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 36)) as pilot:
        await to_the_page(pilot)
        for text in ("▸ settled: 1", "count, to thirty-nine · since Sep 29"):
            rows = frame(app).splitlines()
            row = next(at for at, line in enumerate(rows) if text in line)
            await pilot.click(offset=(8, row))
            await press(pilot)
        assert isinstance(app.screen, KnownLevelScreen)
        assert "Settled since September 29, 2026." in flat(app) and "K.CC.A.1" in flat(app)
        assert "A slip that is open." in flat(app)


@pytest.mark.slow
async def test_the_slip_under_the_cursor_says_what_to_do(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 36)) as pilot:
        await to_the_page(pilot)
        listed = app.screen.query_one(OptionList)
        listed.highlighted = 4
        assert "▾ slips that are open: 1" in frame(app)
        await press(pilot)
        assert "At the table:" in flat(app)


@pytest.mark.slow
async def test_before_the_first_morning_everything_is_to_come(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        app.action_do("knows")
        await press(pilot)
        assert "worth revisiting: 0" in frame(app) and "▸ not met yet: " in frame(app)
        await press(pilot, "k")
        assert "No warm-up has asked anything yet." in flat(app)


@pytest.mark.slow
async def test_a_level_is_practiced_from_its_page_which_then_tells_of_the_round(
    home: Path, clock: Clock
) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 36)) as pilot:
        await to_the_page(pilot)
        await press(pilot, "down", "enter")
        assert isinstance(app.screen, KnownLevelScreen) and "practice:" not in frame(app)
        await press(pilot, "v")
        assert isinstance(app.screen, PracticeScreen)
        await press(pilot, "w", "s", "escape")
        assert isinstance(app.screen, KnownLevelScreen)
        assert "Practice rounds, apart from mornings: Mar 3 practice: ● ◐" in flat(app)
