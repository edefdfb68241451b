"""The pages beside the morning: what they show at every size, how they are reached, and their keys."""

import datetime as dt
import importlib
import subprocess
import sys
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.app import App
from textual.pilot import Pilot
from textual.screen import Screen
from textual.widgets import OptionList

import warmup
from tests.household import FAMILY, TODAY, StandingClock, context_at
from tests.tui.frame import frame, golden
from tests.tui.hands import BOTH, LEFT, RIGHT
from tests.tui.pressing import press
from warmup.config.family import load
from warmup.tui import actions
from warmup.tui.actions import ACTIONS, Action, State, actions_of, menu_of
from warmup.tui.app import WarmupApp
from warmup.tui.choice import LABEL, SENTENCE
from warmup.tui.help import HelpScreen
from warmup.tui.menu import MenuScreen
from warmup.tui.midnight import MidnightScreen
from warmup.tui.morning import MorningScreen
from warmup.tui.page import Keys
from warmup.tui.unlocked import UnlockedScreen
from warmup.tui.wind_down import WindDownScreen

Clock = Callable[[], dt.datetime]
SIZES = ((40, 12), (60, 20), (80, 24), (120, 36), (160, 45))
TUI = Path(warmup.__file__).parent / "tui"
PAGES = (
    "another", "calendar_days", "child_form", "children", "countdown", "counts", "days", "game", "guest",
    "guide", "help", "known", "known_level", "known_year", "menu", "midnight", "mornings", "move_level",
    "note", "on_paper", "past", "past_morning", "practice", "reads", "removal", "report", "report_file",
    "review", "settings", "story", "then_and_now", "topic", "unlocked", "week", "welcome", "who",
    "wind_down", "year", "year_day", "year_week",
)  # fmt: skip


def screen(app: WarmupApp) -> Screen[object]:
    """The screen on top."""
    return app.screen


def at_size(size: tuple[int, int]) -> str:
    return f"{size[0]}x{size[1]}"


# -- the action table


@pytest.mark.parametrize("state", State)
def test_no_key_does_two_things_in_one_state(state: State) -> None:
    keys = Counter(key for action in actions_of((state,)) for key in action.every_key)
    assert keys and [key for key, count in keys.items() if count > 1] == []
    assert "ctrl+c" not in keys


def test_the_morning_s_two_states_share_their_keys() -> None:
    keys = Counter(key for action in actions_of(MorningScreen.STATES) for key in action.every_key)
    double = {key for key, count in keys.items() if count > 1}
    assert double == {"enter", "e", "right", "d", "j", "b", "m", "g", "k", "v", "x"}
    assert "full_stop" in keys and "tab" in keys


TYPED = (
    State.FORM, State.NEW_YEAR, State.GUEST, State.NOTE, State.COUNTDOWN, State.SETTINGS, State.CHILD,
    State.FILE,
)  # fmt: skip


def test_the_help_knows_where_letters_are_typed() -> None:
    """The list here was written by hand; the help then promises no key of either hand."""
    assert {*actions.TYPED} == {*TYPED}


@pytest.mark.parametrize("state", [state for state in State if state not in TYPED])
def test_every_state_can_be_worked_with_either_hand(state: State) -> None:
    """Where words are written letters are typed, with both; what has no key is in the menu, which has."""
    for action in actions_of((state,)):
        if not action.every_key:
            assert action.menu
            continue
        keys = {*action.every_key}
        assert keys <= LEFT | RIGHT | BOTH, action.id
        assert keys & (LEFT | BOTH) and keys & (RIGHT | BOTH), action.id


def test_what_can_be_done_has_a_key_or_stands_in_the_menu() -> None:
    for action in ACTIONS:
        assert action.states or action.menu
        assert action.states <= action.menu or action.every_key
    everyday = {"fluent", "hesitated", "not_yet", "next", "back", "undo", "leave", "cue", "menu", "swap"}
    by_name = {action.id for action in menu_of(State.PROMPT)}
    assert {action.id for action in actions_of((State.PROMPT,))} - by_name == everyday


def test_what_a_list_says_of_an_action_has_room_beside_it() -> None:
    for action in ACTIONS:
        if action.menu or action.states & {State.ANOTHER, State.WIND_DOWN}:
            assert len(action.help) <= SENTENCE and len(action.label) < LABEL, action.id


# -- loaded when they are opened


def test_no_page_is_loaded_before_it_is_opened() -> None:
    code = "import sys, warmup.tui.app; print(*sorted(m for m in sys.modules if m.startswith('warmup.tui.')))"
    loaded = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    ).stdout.split()
    assert "warmup.tui.morning" in loaded
    assert not {
        f"warmup.tui.{page}" for page in (*PAGES, "choice", "close", "lines", "lists", "page", "reading")
    } & {*loaded}


# A practice round looks like a morning, whose stylesheet is the program's.
@pytest.mark.parametrize("page", [page for page in PAGES if page != "practice"])
def test_each_page_is_a_screen_in_a_file_of_its_own_with_its_stylesheet(page: str) -> None:
    module = importlib.import_module(f"warmup.tui.{page}")
    (screen,) = (
        kind
        for name, kind in vars(module).items()
        if name.endswith("Screen") and kind.__module__ == module.__name__
    )
    # Two pages that look alike share that of their base.
    ours = [kind for kind in screen.__mro__ if kind.__module__.startswith("warmup.")]
    paths = [vars(kind).get("CSS_PATH") or () for kind in ours]
    sheets = {name for path in paths for name in ([path] if isinstance(path, str) else path)} - {"page.tcss"}
    named = [kind.__name__ for kind in ours]
    written = "".join((TUI / name).read_text("utf-8") for name in sheets)
    assert any(f"{name} " in written or f"{name}." in written for name in named)


# -- what they show


@pytest.mark.parametrize("size", SIZES, ids=at_size)
async def test_the_menu_and_what_may_be_asked(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await press(pilot, "full_stop")
        golden(f"menu-{at_size(size)}", frame(app))
        await press(pilot, "escape", "l")
        golden(f"unlocked-{at_size(size)}", frame(app))


@pytest.mark.parametrize("size", SIZES, ids=at_size)
async def test_the_week(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await press(pilot, "full_stop")
        await pick(pilot, "this week")
        golden(f"week-{at_size(size)}", frame(app))
        await press(pilot, "right", "space", "down", "e", "e")
        golden(f"week-taught-{at_size(size)}", frame(app))


@pytest.mark.parametrize("size", SIZES, ids=at_size)
async def test_midnight(app: WarmupApp, clock: StandingClock, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        clock.moment += dt.timedelta(days=1)
        await press(pilot, "up")
        assert isinstance(app.screen, MidnightScreen)
        golden(f"midnight-{at_size(size)}", frame(app))


@pytest.mark.parametrize("size", SIZES, ids=at_size)
async def test_a_saturday(home: Path, clock: StandingClock, size: tuple[int, int]) -> None:
    context = context_at(home, clock, FAMILY._replace(known_until=dt.date(2027, 3, 5)), dt.date(2027, 3, 6))
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=size) as pilot:
        await press(pilot)
        golden(f"counts-{at_size(size)}", frame(app))
        await press(pilot, "escape", "u")
        assert "Nothing to undo." in frame(app)
        await press(pilot, "f1")
        assert "yes, it counts" in frame(app) and "came easily" not in frame(app)


@pytest.mark.parametrize("keys", ["full_stop", "l", "f1", "k", "m"])
async def test_no_key_of_the_line_is_cut_off_at_the_narrowest(app: WarmupApp, keys: str) -> None:
    async with app.run_test(size=(40, 12)) as pilot:
        await press(pilot, keys)
        await press(pilot)
        shown = " ".join(frame(app).split())
        page = app.screen
        foot = page.query_one(Keys)
        assert foot.region.bottom <= 12
        for named, does in foot.pairs():
            assert named.text + does.text in shown


# -- what the menu does


def names(app: App[int]) -> list[str]:
    """What stands in the list on screen."""
    return [str(option.prompt).split("  ")[0] for option in app.screen.query_one(OptionList).options]


async def pick(pilot: Pilot[int], label: str) -> None:
    """Go down to an entry of the list and take it."""
    listed = pilot.app.screen.query_one(OptionList)
    at = names(pilot.app).index(label)
    passed = [option for option in listed.options[:at] if not option.disabled]
    await press(pilot, *["s"] * len(passed), "enter")


async def test_the_menu_does_by_name_what_a_key_does(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "tab")
        menu = app.screen
        assert isinstance(menu, MenuScreen)
        await pick(pilot, "a rough day")
        assert isinstance(app.screen, MorningScreen)
        assert "Rough day: marks lower nothing." in " ".join(
            line[40:].strip() for line in frame(app).splitlines()
        )
        await press(pilot, "full_stop")
        await pick(pilot, "what may be asked")
        assert isinstance(screen(app), UnlockedScreen)
        await press(pilot, "escape", "full_stop")
        await pick(pilot, "all keys")
        assert isinstance(screen(app), HelpScreen) and "came easily" in frame(app)


async def test_a_key_of_an_entry_picks_it_from_the_menu(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "full_stop", "m")
        assert isinstance(app.screen, WindDownScreen)
        await press(pilot, "i")
        assert isinstance(screen(app), MorningScreen) and "2 of 2" in frame(app)
        await press(pilot, "full_stop", "n")
        assert isinstance(screen(app), MenuScreen), "a mark is no entry, and marks nothing here"
        assert {line.mark for line in app.journal.history("Bean")} == {None}


async def test_the_cursor_stays_at_the_ends_of_a_list(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "full_stop", "up", "w")
        listed = app.screen.query_one(OptionList)
        assert listed.highlighted == 0
        await press(pilot, *["down"] * 30)
        assert listed.highlighted == listed.option_count - 1
        await press(pilot, "full_stop")
        assert isinstance(app.screen, MorningScreen)


async def test_a_click_on_an_entry_picks_it(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "full_stop")
        rows = frame(app).splitlines()
        row = next(at for at, line in enumerate(rows) if "what may be asked" in line)
        await pilot.click(offset=(5, row))
        await press(pilot)
        assert isinstance(app.screen, UnlockedScreen)


async def test_the_menu_of_the_close_has_only_what_goes_there(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 36)) as pilot:
        await press(pilot, *["right"] * 5, "full_stop")
        assert names(app) == [
            "The day", "what may be asked", "this week", "the year", "a note", "nothing new until I say",
            "a two-minute game", "a morning on paper", "the children", "a report", "sheets to print",
            "past mornings", "what they know", "then and now", "a rough day",
            "The program", "dark, light, contrast", "settings", "the other hand’s keys", "all keys",
            "the guide", "quit",
        ]  # fmt: skip


async def test_nothing_new_is_held_and_let_come_again_from_the_menu(app: WarmupApp, home: Path) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "full_stop")
        await pick(pilot, "nothing new until I say")
        assert "Nothing new until you say" in frame(app)
        assert load(home / "family.toml").children[0].paused == dt.date(2999, 12, 31)
        await press(pilot, "l")
        assert "Nothing new until you say." in frame(app)
        await press(pilot, "escape")
        await press(pilot, "full_stop")
        await pick(pilot, "new things again")
        assert load(home / "family.toml").children[0].paused is None
        assert "New things may come again." in frame(app)


async def test_what_they_know_already_is_said_in_a_line(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "right", "right", "k")
        await pick(pilot, "they know it already")
        shown = " ".join(" ".join(line[40:].split()) for line in frame(app).splitlines())
        assert "It is open already: days of the week, tomorrow." in shown and "3 of 5" in shown


async def test_midnight_over_a_page_leads_to_the_new_morning(app: WarmupApp, clock: StandingClock) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "l", "f1")
        clock.moment += dt.timedelta(days=1)
        await press(pilot, "down")
        assert isinstance(app.screen, MidnightScreen)
        await press(pilot, "enter")
        assert isinstance(screen(app), MorningScreen) and app.context.today == TODAY + dt.timedelta(1)
        assert len(app.screen_stack) == 1


async def test_a_change_elsewhere_leads_back_from_a_page(
    app: WarmupApp, clock: StandingClock, home: Path
) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        from warmup.session.session import resume

        await press(pilot, "l")
        context = context_at(home, clock, load(home / "family.toml"))
        assert context.journal is not None
        other = resume(context, context.journal, clock)
        assert other is not None and other.swap()
        await press(pilot, "y")
        assert isinstance(app.screen, MorningScreen) and "Changed in another window" in frame(app)


def test_an_action_is_what_the_table_says() -> None:
    assert all(isinstance(each, Action) and each.somewhere and each.help.endswith(".") for each in ACTIONS)
