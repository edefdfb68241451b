"""The settings page: nothing is changed before it is saved as a whole, and one undo takes it back."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Checkbox, Input, OptionList, Select, SelectionList, Static

from tests.household import FAMILY, TODAY, StandingClock, context_at, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import morning, press
from warmup.config.family import Child, Family, load
from warmup.model import Mark
from warmup.tui.app import WarmupApp
from warmup.tui.help import HelpScreen
from warmup.tui.midnight import MidnightScreen
from warmup.tui.morning import MorningScreen
from warmup.tui.settings import NO_GUARANTEE, NOTHING_CHANGED, SettingsScreen

Clock = Callable[[], dt.datetime]
SIZES = ((40, 12), (60, 20), (80, 24), (120, 36), (160, 45))


async def opened(pilot: Pilot[int], app: WarmupApp) -> SettingsScreen:
    """The page, opened from the menu by name."""
    await press(pilot, "full_stop")
    entries = app.screen.query_one("#list", OptionList)
    while (entry := entries.highlighted_option) is not None and "settings" not in str(entry.prompt):
        await press(pilot, "down")
    await press(pilot, "enter")
    assert isinstance(app.screen, SettingsScreen)
    return app.screen


def page(app: WarmupApp) -> SettingsScreen:
    assert isinstance(app.screen, SettingsScreen)
    return app.screen


def fill(app: WarmupApp, field: str, value: str) -> None:
    page(app).query_one(f"#{field}", Input).value = value


def beside(app: WarmupApp, field: str) -> str:
    return str(page(app).query_one(f"#beside-{field}", Static).render())


def program(home: Path, clock: Clock, family: Family) -> WarmupApp:
    context = context_at(home, clock, family)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_the_page_at_every_size(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await opened(pilot, app)
        golden(f"settings-{size[0]}x{size[1]}", frame(app))


async def test_escape_leaves_everything_as_it_was_and_says_so(app: WarmupApp, home: Path) -> None:
    was = (home / "family.toml").read_bytes()
    async with app.run_test(size=(80, 24)) as pilot:
        await opened(pilot, app)
        fill(app, "nickname-0", "Pip")
        page(app).query_one("#toddler", Checkbox).value = True
        await press(pilot, "escape")
        assert isinstance(app.screen, MorningScreen) and NOTHING_CHANGED in frame(app)
        assert (home / "family.toml").read_bytes() == was and app.context.family == FAMILY
        # Saved as it stands, nothing is written either.
        await opened(pilot, app)
        await press(pilot, "enter")
        assert NOTHING_CHANGED in frame(app) and (home / "family.toml").read_bytes() == was


async def test_one_key_saves_all_and_one_takes_all_of_it_back(app: WarmupApp, home: Path) -> None:
    file = home / "family.toml"
    file.write_text(f"# ours\n{file.read_text('utf-8')}# the end\n", "utf-8")
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "up")
        await opened(pilot, app)
        fill(app, "adult", "Dad")
        page(app).query_one("#theme", Select).value = "light"
        page(app).query_one("#covered", Checkbox).value = True
        await press(pilot, "enter")
        assert "Saved: answers, look and who marks." in frame(app) and app.theme == "warmup-light"
        saved = load(file)
        assert saved == FAMILY._replace(adult="Dad", theme="light", answers_shown=False)
        text = file.read_text("utf-8")
        assert text.startswith("# ours\n") and text.endswith("# the end\n")
        await press(pilot, "u")
        assert "Undone: the settings." in frame(app) and load(file) == FAMILY and app.theme == "warmup-dark"
        await press(pilot, "u")
        assert "Undone: came easily." in frame(app)


async def test_what_other_days_do_to_the_year_is_said_at_once(app: WarmupApp) -> None:
    async with app.run_test(size=(120, 36)) as pilot:
        await opened(pilot, app)
        assert "Today is school day 107, week 27 of 36; the last school day is May 6, 2027." in frame(app)
        fill(app, "weekdays", "mon tue wed")
        await press(pilot)
        assert "Today would be school day 81, week 27 of 36; the last school day would be" in frame(app)
        fill(app, "first_day", "sometime")
        await press(pilot)
        assert "would be" not in frame(app) and "like 2026-08-31" in beside(app, "first_day")


async def test_days_saved_choose_the_morning_anew_and_its_date_is_right_at_once(
    app: WarmupApp, home: Path
) -> None:
    async with app.run_test(size=(120, 36)) as pilot:
        before = morning(app).session
        assert before is not None and before.morning.school_day == 107
        await opened(pilot, app)
        fill(app, "first_day", "9/7/2026")
        await press(pilot, "enter")
        now = morning(app).session
        assert now is not None and now.morning.school_day == 103
        assert load(home / "family.toml").first_day == dt.date(2026, 9, 7)
        await press(pilot, "u")
        again = morning(app).session
        assert again is not None and again.morning.school_day == 107


async def test_a_toddler_comes_in_the_middle_of_a_morning(app: WarmupApp) -> None:
    """The second prompt wants cereal; the first is marked and stays."""
    async with app.run_test(size=(120, 36)) as pilot:
        await press(pilot, "up")
        session = morning(app).session
        assert session is not None and session.prompts[1].table == "cereal in a cup"
        await opened(pilot, app)
        page(app).query_one("#toddler", Checkbox).value = True
        await press(pilot)
        assert beside(app, "toddler") == NO_GUARANTEE
        await press(pilot, "enter")
        now = morning(app).session
        assert now is not None and now.mark_at(0) is Mark.FLUENT and now.position == 1
        assert now.prompts[0] == session.prompts[0] and now.prompts[1].table == "spoons, cup"
        assert "Saved: toddler." in frame(app) and "You need" in frame(app)


async def test_what_is_wrong_is_said_beside_its_field_and_nothing_is_saved(
    app: WarmupApp, home: Path
) -> None:
    was = (home / "family.toml").read_bytes()
    async with app.run_test(size=(80, 24)) as pilot:
        await opened(pilot, app)
        fill(app, "weekdays", "Mon Blue")
        fill(app, "animal", "[red]")
        await press(pilot, "enter")
        assert "not “Blue”" in beside(app, "weekdays") and beside(app, "animal") == ""
        assert "Not saved yet" in frame(app) and app.focused is page(app).query_one("#weekdays")
        assert (home / "family.toml").read_bytes() == was
        fill(app, "weekdays", "Mon Tue Wed Thu")
        await press(pilot, "enter")
        assert load(home / "family.toml").animal == "[red]", "a name is no markup"


async def test_the_things_the_house_has_are_ticked_and_moved_through_by_keys_alone(
    app: WarmupApp, home: Path
) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await opened(pilot, app)
        await press(pilot, *["down"] * 11)
        assert app.focused is page(app).query_one("#things", SelectionList)
        await press(pilot, "space", "down", "space", "enter")
        assert load(home / "family.toml").without == ("wall calendar", "clock with hands")
        await opened(pilot, app)
        await press(pilot, *["down"] * 11, "space", "enter")
        assert load(home / "family.toml").without == ("clock with hands",)


async def test_an_open_choice_has_its_own_keys_and_escape_leaves_only_that(
    app: WarmupApp, home: Path
) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await opened(pilot, app)
        await press(pilot, *["tab"] * 3, "space")
        prompts = page(app).query_one("#prompts", Select)
        assert prompts.expanded
        await press(pilot, "escape")
        assert not prompts.expanded and page(app)
        await press(pilot, "space", "down", "down", "enter")
        assert prompts.value == 5 and page(app)
        await press(pilot, "up", "up", "down", "enter")
        assert load(home / "family.toml").prompts == 5


async def test_what_the_file_was_edited_to_meanwhile_stays(app: WarmupApp, home: Path) -> None:
    file = home / "family.toml"
    async with app.run_test(size=(80, 24)) as pilot:
        await opened(pilot, app)
        fill(app, "adult", "Dad")
        file.write_text(file.read_text("utf-8").replace('animal = "Bear"', 'animal = "Moose"'), "utf-8")
        file.write_text(f'{file.read_text("utf-8")}\n[household]\nwithout = ["straws"]  # lost\n', "utf-8")
        await press(pilot, "enter")
        saved = load(file)
        assert (saved.adult, saved.without) == ("Dad", ("straws",)) and "# lost" in file.read_text("utf-8")
        assert app.context.family == saved


async def test_a_file_that_can_t_be_read_any_more_is_never_written_over(app: WarmupApp, home: Path) -> None:
    file = home / "family.toml"
    async with app.run_test(size=(120, 36)) as pilot:
        await opened(pilot, app)
        fill(app, "adult", "Dad")
        file.write_text("school = [", "utf-8")
        await press(pilot, "enter")
        assert isinstance(app.screen, MorningScreen)
        assert "What you choose is not being saved" in frame(app) and "Saved" not in frame(app)
        assert file.read_text("utf-8") == "school = ["


async def test_every_child_has_its_nickname_there_and_help_and_midnight_come_as_ever(
    home: Path, clock: StandingClock
) -> None:
    app = program(home, clock, FAMILY._replace(children=(*FAMILY.children, Child("Pip"))))
    async with app.run_test(size=(80, 24)) as pilot:
        await opened(pilot, app)
        fill(app, "nickname-1", "bean")
        await press(pilot, "enter")
        assert "another bean" in beside(app, "nickname-1") and page(app)
        await press(pilot, "f1")
        assert isinstance(app.screen, HelpScreen) and "save all" in frame(app)
        assert "Keys of the settings\n" in frame(app)
        await press(pilot, "escape")
        fill(app, "nickname-1", "Nut")
        clock.moment = dt.datetime.combine(TODAY + dt.timedelta(1), dt.time(8))
        await press(pilot, "enter")
        assert isinstance(app.screen, MidnightScreen)
        await press(pilot, "left")
        await press(pilot, "enter")
        assert [child.nickname for child in load(home / "family.toml").children] == ["Bean", "Nut"]
