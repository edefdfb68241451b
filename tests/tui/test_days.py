"""Missed mornings on screen: the one question, the days, and what is kept of it."""

import datetime as dt
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.widgets import DataTable

from tests.household import FAMILY, TODAY, context_at, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import press
from warmup.config.family import Family, load, year_of
from warmup.tui.actions import State
from warmup.tui.app import WarmupApp
from warmup.tui.days import DaysScreen
from warmup.tui.midnight import MidnightScreen
from warmup.tui.morning import MorningScreen

Clock = Callable[[], dt.datetime]
PAST = [day for day in year_of(FAMILY).mornings if day < TODAY]
SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]


def away(home: Path, clock: Clock, count: int, family: Family = FAMILY) -> WarmupApp:
    """The program after this many mornings without a warm-up."""
    context = context_at(home, clock, family._replace(known_until=PAST[-count - 1]))
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def days_shown(app: WarmupApp) -> list[str]:
    """What the table says of each day."""
    return re.findall(r"\?|off|school", "\n".join(re.findall(r"^ *[A-Z]\w+ \d+ .*", frame(app), re.M)))


def kept(home: Path) -> tuple[tuple[dt.date, dt.date], ...]:
    return load(home / "family.toml").off


async def test_a_few_mornings_are_asked_about_once_by_day(home: Path, clock: Clock) -> None:
    app = away(home, clock, 2)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        shown = frame(app)
        assert "school, or off?" in shown and "Monday" in shown and "March 1 ›? ?" in " ".join(shown.split())
        assert "Today: school day 107, week 27." in shown
        await press(pilot, "space", "right", "space", "space")
        assert "March 1 school ›off" in " ".join(frame(app).split())
        assert "Today: school day 106, week 27." in frame(app)
        await press(pilot, "enter")
        assert isinstance(app.screen, MorningScreen) and app.screen.state is State.PROMPT
        assert app.context.morning().school_day == 106
    assert kept(home) == ((dt.date(2027, 3, 2), dt.date(2027, 3, 2)),)
    assert not context_at(home, clock, load(home / "family.toml")).unconfirmed_days()


async def test_enter_waits_until_every_day_is_answered(home: Path, clock: Clock) -> None:
    app = away(home, clock, 3)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "space", "enter")
        assert isinstance(app.screen, DaysScreen)
        assert "2 not answered yet" in frame(app) and "›?" in frame(app)
        await press(pilot, "s", "enter")
        assert isinstance(app.screen, MorningScreen)
    assert kept(home) == ()


async def test_many_mornings_are_one_question_and_one_key(home: Path, clock: Clock) -> None:
    app = away(home, clock, 15)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert "15 mornings have no warm-up." in frame(app)
        assert "‹  week 23  ›    school day 92" in frame(app)
        await press(pilot, "right", "right", "left")
        assert "‹  week 24  ›    school day 93" in frame(app)
        await press(pilot, "enter")
        morning = app.context.morning()
        assert (morning.school_day, morning.week) == (93, 24)
    # The first of them counts as held, the rest is one stretch off.
    assert kept(home) == ((PAST[-14], PAST[-1]),)


async def test_all_off_undo_and_back_to_the_question(home: Path, clock: Clock) -> None:
    app = away(home, clock, 6)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "d", "a")
        assert days_shown(app).count("off") == 6
        await press(pilot, "u")
        assert days_shown(app) == ["?"] * 6
        await press(pilot, "s", "u", "u")
        assert "Where are your lessons now?" in frame(app)
        await press(pilot, "u")
        assert "Nothing to undo." in frame(app)
        await press(pilot, "d", "escape")
        assert "Where are your lessons now?" in frame(app)
        await press(pilot, "f1", "question_mark")
        assert "the rest of the year moves on by itself" in frame(app)
        await press(pilot, "d", "a", "enter")
    assert kept(home) == ((PAST[-6], PAST[-1]),)


async def test_leaving_settles_nothing(home: Path, clock: Clock) -> None:
    app = away(home, clock, 6)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "d", "a", "q")
    assert (
        kept(home) == () and len(context_at(home, clock, load(home / "family.toml")).unconfirmed_days()) == 6
    )


@pytest.mark.parametrize("size", SIZES, ids=lambda s: f"{s[0]}x{s[1]}")
async def test_a_list_that_is_cut_off_says_so_at_every_size(
    home: Path, clock: Clock, size: tuple[int, int]
) -> None:
    """The rows in sight and those that are said to be out of sight are all there are."""
    app = away(home, clock, 60)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        golden(f"missed-{size[0]}x{size[1]}", frame(app))
        # The days are laid out before the next key, as for any hand.
        await press(pilot, "d")
        await press(pilot, "right", "space", "down", "space", "space")
        golden(f"days-{size[0]}x{size[1]}", frame(app))
        table = app.screen.query_one(DataTable)
        rows = [line for line in frame(app).splitlines() if DATE.match(line)]
        cut = sum(map(int, re.findall(r"[↑↓] (\d+) more", frame(app))))
        assert len(rows) + cut == table.row_count == len({day.isocalendar()[:2] for day in PAST[-60:]})
        assert "o all off" in frame(app) and "Today:" in frame(app)


DATE = re.compile(r" *[A-Z][a-z]+ \d+ ")


async def test_seven_school_days_a_week_on_a_narrow_screen_are_a_day_to_a_row(
    home: Path, clock: Clock
) -> None:
    app = away(home, clock, 9, FAMILY._replace(weekdays=tuple(range(7))))
    async with app.run_test(size=(40, 12)) as pilot:
        await press(pilot, "d", "down", "space")
        assert app.screen.query_one(DataTable).row_count > 7 and "›school" in frame(app)
        assert re.search(r"[A-Z][a-z]{2} [A-Z][a-z]{2} \d+ +›school", frame(app)), frame(app)
        assert "more" in frame(app)


async def test_a_click_on_a_day_changes_it(home: Path, clock: Clock) -> None:
    app = away(home, clock, 3)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        lines = frame(app).splitlines()
        column = next(line.index("Tuesday") for line in lines if "Tuesday" in line)
        row = next(n for n, line in enumerate(lines) if "March 1 " in line)
        await pilot.click(offset=(column, row))
        await pilot.pause()
        assert "March 1 ? ›school" in " ".join(frame(app).split())


@pytest.mark.parametrize("theme", ["dark", "light"])
async def test_the_theme_may_change_here_too(home: Path, clock: Clock, theme: str) -> None:
    app = away(home, clock, 3, FAMILY._replace(theme=theme))
    async with app.run_test(size=(80, 24)) as pilot:
        was = app.current_theme.dark
        await press(pilot, "comma")
        assert app.current_theme.dark is not was and "›?" in frame(app)


class Watch:
    """A clock that goes only when it is told to."""

    def __init__(self) -> None:
        self.moment = dt.datetime.combine(TODAY, dt.time(8))

    def __call__(self) -> dt.datetime:
        return self.moment


async def test_the_enter_that_ends_it_may_bounce_and_does_nothing_to_the_first_prompt(home: Path) -> None:
    app = away(home, Watch(), 2)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "s", "enter", "enter")
        assert isinstance(app.screen, MorningScreen) and app.screen.session is not None
        assert app.screen.session.position == 0
        assert "All were school days." in " ".join(frame(app).split())


async def test_days_answered_after_midnight_are_kept_and_the_new_day_is_offered(home: Path) -> None:
    watch = Watch()
    app = away(home, watch, 2)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "a")
        watch.moment += dt.timedelta(days=1)
        await press(pilot, "enter")
        assert isinstance(app.screen, MidnightScreen) and app.screen.work.session is None
    assert kept(home) == ((PAST[-2], PAST[-1]),)


async def test_days_are_taken_back_from_the_first_prompt(home: Path) -> None:
    watch = Watch()
    app = away(home, watch, 15)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "enter")
        assert "Days off: fifteen." in " ".join(frame(app).split()) and kept(home)
        watch.moment += dt.timedelta(seconds=2)
        await press(pilot, "u")
        assert isinstance(app.screen, DaysScreen) and kept(home) == ()
