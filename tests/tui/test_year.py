"""The year on screen: what it shows at every size, its keys, its clicks, and what is kept of them."""

import datetime as dt
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import DataTable, OptionList

from tests.household import FAMILY, TODAY, StandingClock, context_at, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.hands import BOTH, LEFT, RIGHT
from tests.tui.pressing import press
from tests.tui.test_mouse import click
from tests.tui.test_screens import SIZES, at_size, pick
from warmup.config.family import Child, CountdownRule, Family, load
from warmup.config.places import Places
from warmup.config.plan import load_plan
from warmup.model import DayKind, LevelId
from warmup.session.yearview import DayMark
from warmup.tui.actions import State, actions_of
from warmup.tui.app import WarmupApp
from warmup.tui.countdown import CountdownScreen
from warmup.tui.morning import MorningScreen
from warmup.tui.move_level import MoveLevelScreen
from warmup.tui.year import YearScreen
from warmup.tui.year_day import YearDayScreen
from warmup.tui.year_week import YearWeekScreen

Clock = Callable[[], dt.datetime]
LIVED = FAMILY._replace(
    off=((dt.date(2026, 12, 21), dt.date(2027, 1, 1)), (dt.date(2026, 9, 7), dt.date(2026, 9, 7))),
    held_weeks=(12,),
    skipped_weeks=(20,),
    extra=(dt.date(2027, 3, 6),),
    countdowns=(CountdownRule("the lake", dt.date(2027, 3, 13)),),
)
"""Wednesday, March 3 is in week 25: a break, a holiday, a held and a skipped week, a Saturday to come."""


def opened(home: Path, clock: Clock, family: Family = LIVED, today: dt.date = TODAY) -> WarmupApp:
    context = context_at(home, clock, family, today)
    if today == TODAY:
        start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


async def to_the_year(pilot: Pilot[int]) -> None:
    await press(pilot, "full_stop")
    await pick(pilot, "the year")
    await press(pilot)
    assert isinstance(pilot.app.screen, YearScreen)


def words(app: WarmupApp) -> str:
    """The screen as one line."""
    return " ".join(frame(app).split())


def kept(home: Path) -> Family:
    return load(home / "family.toml")


# -- what they show


@pytest.mark.parametrize("size", SIZES, ids=at_size)
async def test_the_year_a_week_and_a_day_at_every_size(
    home: Path, clock: Clock, size: tuple[int, int]
) -> None:
    app = opened(home, clock)
    async with app.run_test(size=size) as pilot:
        await to_the_year(pilot)
        golden(f"year-{at_size(size)}", frame(app))
        await press(pilot, "enter", "home", *["down"] * 5)
        golden(f"year-week-{at_size(size)}", frame(app))
        await press(pilot, "j")
        golden(f"year-level-{at_size(size)}", frame(app))
        await press(pilot, "escape", *["up"] * 4, "enter", "down", "m", "down", "right")
        golden(f"year-day-{at_size(size)}", frame(app))
        await press(pilot, "k")
        golden(f"year-countdown-{at_size(size)}", frame(app))


@pytest.mark.parametrize("size", SIZES, ids=at_size)
async def test_every_week_can_be_seen_at_every_size(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    app = opened(home, clock)
    async with app.run_test(size=size) as pilot:
        await to_the_year(pilot)
        table = app.screen.query_one(DataTable)
        assert table.max_scroll_x == 0, "nothing is out of sight at the side"
        await pilot.press(*["w"] * 27)
        seen: set[str] = set()
        for _ in range(13):
            await press(pilot, "s", "s", "s")
            now = frame(app)
            lines = shown(app, now)
            seen |= {number for line in lines for number in re.findall(r"(?<![\d/])\d+", line)}
            cut = sum(map(int, re.findall(r"[↑↓] (\d+) more", now)))
            assert len(lines) + cut == table.row_count
        assert {str(week) for week in range(1, 37)} <= seen


def shown(app: WarmupApp, now: str) -> list[str]:
    """The rows of the table that are in sight in the frame ``now``."""
    table = app.screen.query_one(DataTable)
    top, bottom = table.region.y + int(table.show_header), table.region.bottom
    return [line for line in now.splitlines()[top:bottom] if line.strip()]


def test_what_the_marks_are_is_told_in_words_and_each_has_its_own_form() -> None:
    from warmup.tui.year import GRID_LEGEND, LEGEND

    assert len({mark.value for mark in DayMark}) == len(DayMark)
    assert all(mark.value in LEGEND for mark in DayMark) and len(GRID_LEGEND) <= 76


async def test_the_year_of_a_family_that_began_in_january_on_a_saturday(home: Path, clock: Clock) -> None:
    family = FAMILY._replace(first_day=dt.date(2027, 1, 11), first_week=19)
    app = opened(home, clock, family._replace(known_until=None), dt.date(2027, 1, 16))
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "enter")
        while not isinstance(app.screen, MorningScreen):
            app.screen.dismiss()
            await press(pilot)
        await to_the_year(pilot)
        assert "1before" in words(app) or "1 before" in words(app)
        assert "19 ■■■■◇ 1/11 +5" in words(app)


# -- the keys


async def test_a_week_is_held_given_back_and_taken_back(home: Path, clock: Clock) -> None:
    app = opened(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_year(pilot)
        await press(pilot, "down", "y")
        assert "Week 26 takes one week more. Last day: May 20 → May 27." in frame(app)
        assert "26=□□□□  3/15" in frame(app) and kept(home).held_weeks == (12, 26)
        assert "The year: last day May 27, 2027" in frame(app) and "k one week less" in frame(app)
        await press(pilot, "u")
        assert "Undone: the weeks of the lessons." in frame(app) and kept(home) == LIVED
        await press(pilot, "v")
        assert "Week 26 is neither held nor skipped." in frame(app)
        await press(pilot, "left", "up", "up", "k")
        assert "›14" in frame(app)


async def test_we_are_really_in_another_week(home: Path, clock: Clock) -> None:
    app = opened(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_year(pilot)
        await press(pilot, "d", "m")
        assert app.context.morning().week == 34
        assert "Your lessons are in week 34 now." in frame(app) and "›34 ■▣□□  3/2" in frame(app)
        await press(pilot, "u", "left", "up", "m")
        assert app.context.morning().week == 24 and "24=■▣□□  3/2" in frame(app)
        await press(pilot, "escape")
        screen = app.screen
        assert isinstance(screen, MorningScreen) and screen.session is not None
        assert screen.session.morning.week == 24, "nothing was marked: the prompts are chosen again"
        await press(pilot, "u")
        assert screen.session.morning.week == app.context.morning().week == 25


async def test_what_is_marked_stays_when_the_year_moves(home: Path, clock: Clock) -> None:
    app = opened(home, clock, FAMILY)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "up")
        await to_the_year(pilot)
        await press(pilot, "up", "m", "escape")
        screen = app.screen
        assert isinstance(screen, MorningScreen) and screen.session is not None
        assert screen.session.morning.week == 27 and app.context.morning().week == 26


async def test_days_off_from_one_day_to_another_and_school_after_all(home: Path, clock: Clock) -> None:
    app = opened(home, clock, FAMILY)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_year(pilot)
        await press(pilot, "e", "home", "s", "s", "e")
        assert isinstance(app.screen, YearDayScreen) and "Wednesday, March 3, 2027 · today" in frame(app)
        await press(pilot, "s", "g", "s", "d")
        assert "Chosen: March 10 to March 18." in frame(app) and "6 days off" in frame(app)
        await press(pilot, "6")
        assert "Off: March 10 to March 18, 6 school days. Last day: May 6 → May 18." in frame(app)
        assert kept(home).off == ((dt.date(2027, 3, 10), dt.date(2027, 3, 18)),)
        assert "Chosen" not in frame(app) and "›18–" in frame(app) and "6 school after all" in frame(app)
        await press(pilot, "y")
        assert "School after all: Thursday, March 18." in frame(app)
        await press(pilot, "u", "z")
        assert kept(home) == FAMILY
        await press(pilot, "m", "escape")
        assert isinstance(app.screen, YearDayScreen), "first the choice goes, then the page"
        await press(pilot, "backspace")
        assert isinstance(app.screen, YearWeekScreen)


async def test_a_saturday_and_a_day_to_look_forward_to(home: Path, clock: Clock) -> None:
    app = opened(home, clock, FAMILY)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_year(pilot)
        await press(pilot, "enter", "home", "enter", *["right"] * 5)
        assert "Saturday, March 6, 2027" in frame(app) and "y extra morning" in frame(app)
        await press(pilot, "y")
        assert kept(home).extra == (dt.date(2027, 3, 6),) and "6□" in frame(app)
        await press(pilot, "right", "k")
        assert isinstance(app.screen, CountdownScreen)
        await press(pilot, *"quay, 8?", "space", "u", "backspace", "backspace")
        await press(pilot, "enter")
        assert kept(home).countdowns == (CountdownRule("quay, 8?", dt.date(2027, 3, 7)),)
        assert "To look forward to: quay, 8?, Sunday, March 7." in words(app) and "› 7 *" in frame(app)
        assert "k its name" in frame(app)
        await press(pilot, "k", "escape")
        assert len(kept(home).countdowns) == 1
        await press(pilot, "k", "delete", "enter")
        assert kept(home).countdowns == () and "No longer: quay, 8?." in words(app)
        await press(pilot, "u", "u", "u")
        assert kept(home) == FAMILY


async def test_markup_in_a_name_is_only_words(home: Path, clock: Clock) -> None:
    lake = CountdownRule("[red]the[/] lake", TODAY)
    app = opened(home, clock, FAMILY._replace(countdowns=(lake,)))
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_year(pilot)
        await press(pilot, "enter", "home", "enter", "right", "right")
        assert "A day to look forward to: [red]the[/] lake." in frame(app)
        await press(pilot, "k")
        assert "[red]the[/] lake" in frame(app)


SEE = LevelId("hundred-chart:to-100")


async def test_a_level_is_opened_early_held_back_and_moved(home: Path, clock: Clock) -> None:
    app = opened(home, clock, FAMILY)
    places = Places(home, home)
    shipped = load_plan(places)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_year(pilot)
        await press(pilot, "down", "enter", *["down"] * 4)
        assert "to come: " in frame(app) and "i open early" in frame(app)
        await press(pilot, "2")
        assert "opened early: " in frame(app) and "2 not early" in frame(app)
        (level,) = kept(home).children[0].opened
        await press(pilot, "o")
        assert "held back: " in frame(app) and "o let it come" in frame(app)
        assert kept(home).children[0].held == (level,)
        await press(pilot, "j")
        assert isinstance(app.screen, MoveLevelScreen) and "All fits." in frame(app)
        await press(pilot, *["down"] * 4)
        assert "Does not fit: a review week: nothing new opens; after even and odd" in words(app)
        await press(pilot, *["up"] * 3, "enter")
        assert isinstance(app.screen, YearWeekScreen) and "Week 28 → week 29" in words(app)
        assert load_plan(places).weeks == {**shipped.weeks, level: 29}
        await press(pilot, "u", "u", "u")
        assert load_plan(places) == shipped and kept(home) == FAMILY
        assert app.context.plan == shipped


async def test_a_year_toml_that_can_t_be_read_is_named_and_not_touched(home: Path, clock: Clock) -> None:
    app = opened(home, clock, FAMILY)
    async with app.run_test(size=(120, 36)) as pilot:
        await to_the_year(pilot)
        await press(pilot, "down", "enter", *["down"] * 4)
        (home / "year.toml").write_text("[skills.make-tne]\nx = 3\n", "utf-8")
        await press(pilot, "j", "down", "enter")
        assert "year.toml, line 1" in words(app) and isinstance(app.screen, MoveLevelScreen)
        assert (home / "year.toml").read_text("utf-8") == "[skills.make-tne]\nx = 3\n"


async def test_each_child_has_the_year_it_is_in(home: Path, clock: Clock) -> None:
    fern = Child("Fern", first_day=dt.date(2027, 1, 11), reads=False)
    app = opened(home, clock, FAMILY._replace(children=(fern, Child("Moss"))))
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_year(pilot)
        assert "› 8 ■■▣□ 3/1" in frame(app)
        await press(pilot, "y")
        assert kept(home).children[0].held_weeks == (8,) and kept(home).held_weeks == ()


@pytest.mark.parametrize("hand", [LEFT, RIGHT], ids=["left", "right"])
async def test_either_hand_does_all_of_it(home: Path, clock: Clock, hand: frozenset[str]) -> None:
    """Every action of these pages has a key of this hand, and the way in and out goes by them."""
    for state in (State.YEAR, State.YEAR_WEEK, State.YEAR_DAY, State.MOVE):
        for action in actions_of((state,)):
            assert {*action.every_key} & (hand | BOTH), action.id
    app = opened(home, clock, FAMILY)
    keys = {"left": ("tab", "s", "e", "escape"), "right": ("full_stop", "down", "enter", "backspace")}
    menu, down, take, back = keys["left" if hand is LEFT else "right"]
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, menu)
        listed = app.screen.query_one(OptionList)
        at = [str(option.prompt).split("  ")[0] for option in listed.options].index("the year")
        await press(pilot, *[down] * sum(not option.disabled for option in listed.options[:at]), take)
        assert isinstance(app.screen, YearScreen)
        for opens in (YearWeekScreen, YearDayScreen):
            await press(pilot, take)
            assert isinstance(app.screen, opens)
        for leads in (YearWeekScreen, YearScreen, MorningScreen):
            await press(pilot, back)
            assert isinstance(app.screen, leads)


# -- by mouse alone


@pytest.mark.parametrize("size", [(60, 24), (80, 24), (160, 45)], ids=at_size)
async def test_all_of_it_by_mouse_alone(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    app = opened(home, clock, FAMILY)
    async with app.run_test(size=size) as pilot:
        await press(pilot)
        if "menu" not in frame(app):
            await click(pilot, "all keys")
        await click(pilot, "menu")
        await click(pilot, "the year")
        await click(pilot, "one week more")
        assert kept(home).held_weeks == (27,)
        await click(pilot, "one week less")
        assert kept(home).held_weeks == ()
        await click(pilot, "28 □□□□")
        assert isinstance(app.screen, YearWeekScreen) and "Week 28" in frame(app)
        await click(pilot, "we are here")
        assert app.context.morning().week == 28
        await click(pilot, "undo")
        await click(pilot, "to come: ", last=False)
        await click(pilot, "open early")
        assert kept(home).children[0].opened
        await click(pilot, "hold back")
        assert kept(home).children[0].held
        await click(pilot, "another week")
        await click(pilot, "week 29")
        assert isinstance(app.screen, YearWeekScreen) and (home / "year.toml").exists()
        await click(pilot, "Monday, March 8")
        assert isinstance(app.screen, YearDayScreen)
        await click(pilot, "from this day")
        await click(pilot, "11□")
        await click(pilot, "days off")
        assert kept(home).off == ((dt.date(2027, 3, 8), dt.date(2027, 3, 11)),)
        await click(pilot, " 13", last=False)
        await click(pilot, "extra morning")
        assert kept(home).extra == (dt.date(2027, 3, 13),)
        await click(pilot, "next day")
        await click(pilot, "look forward", last=False)
        await click(pilot, "back")
        for _ in range(3):
            await click(pilot, "back")
        assert isinstance(app.screen, MorningScreen)


# -- midnight, and what else may come in between


async def test_midnight_on_the_day_asks_first(home: Path, clock: StandingClock) -> None:
    app = opened(home, clock, FAMILY)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_year(pilot)
        clock.moment += dt.timedelta(days=1)
        await press(pilot, "y")
        assert kept(home) == FAMILY and "It is Thursday now." in frame(app)


async def test_today_off_leads_back_to_a_morning_that_is_none(home: Path, clock: Clock) -> None:
    app = opened(home, clock, FAMILY)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_year(pilot)
        await press(pilot, "enter", "enter", "y")
        assert app.context.morning().kind is DayKind.DAY_OFF
        assert "› 3◇" in frame(app)
        await press(pilot, "escape", "escape", "escape")
        screen = app.screen
        assert isinstance(screen, MorningScreen) and screen.session is not None
        assert not screen.session.morning.is_school
