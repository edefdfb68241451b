"""Sheets to print, on screen: this week’s are ticked, one file is made, what is on paper is kept."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.widgets import SelectionList

from tests.household import FAMILY, TODAY, context_at, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import press
from warmup.config import family as families
from warmup.sheets.kinds import kinds
from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen
from warmup.tui.sheets import SheetsScreen

Clock = Callable[[], dt.datetime]
SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]


def program(home: Path, clock: Clock) -> WarmupApp:
    context = context_at(home, clock, FAMILY)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


@pytest.mark.slow
@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_what_it_looks_like(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    app = program(home, clock)
    async with app.run_test(size=size) as pilot:
        await press(pilot)
        app.action_do("sheets")
        await press(pilot, "down")
        assert isinstance(app.screen, SheetsScreen)
        shown = frame(app)
        assert shown.count("▐") >= 2 and "back" in shown and "all keys" in shown
        golden(f"sheets-{size[0]}x{size[1]}", shown)


@pytest.mark.slow
async def test_a_file_is_made_once_and_what_is_on_paper_is_kept_and_taken_back(
    home: Path, clock: Clock, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        app.action_do("sheets")
        await press(pilot)
        page = app.screen
        assert isinstance(page, SheetsScreen)
        picked = page.ticked()
        assert picked and set(picked) < set(kinds())
        await press(pilot, "v", "d")
        target = tmp_path / f"warmup-sheets-{TODAY}.html"
        made = target.read_text("utf-8")
        assert "size: A4;" in made and made.count("<svg") >= len(picked)
        await press(pilot, "l", "enter")
        second = tmp_path / f"warmup-sheets-{TODAY}-2.html"
        assert target.read_text("utf-8") == made and second.read_text("utf-8").count("<svg") > 20
        await press(pilot, "l", "y")
        assert families.load(home / "family.toml").printed == ()
        await press(pilot, "l", "y")
        assert len(families.load(home / "family.toml").printed) == len(kinds())
        await press(pilot, "y")
        assert families.load(home / "family.toml").printed == ()
        await press(pilot, "u")
        assert len(families.load(home / "family.toml").printed) == len(kinds())
        await press(pilot, "u")
        assert families.load(home / "family.toml").printed == ()
        assert page.query_one("#list", SelectionList).has_focus
        await press(pilot, "escape")
        assert isinstance(app.screen, MorningScreen)
