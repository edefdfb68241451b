"""The first run: a form that is filled in, takes anything, and never asks for more than three keys."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from textual.pilot import Pilot
from textual.widgets import Input, SelectionList

from tests.household import context_at
from tests.tui.frame import frame, golden
from warmup.config.family import Family, default, load, save, year_of
from warmup.session.context import Context
from warmup.session.first_form import Form, Unclear, family_of, filled_in, outcome, week_of, weekday_of
from warmup.session.words import PRIVACY
from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen
from warmup.tui.paint import DARK

TODAY = dt.date(2026, 11, 25)
Clock = Callable[[], dt.datetime]


def test_the_form_is_filled_in_and_can_be_taken_as_it_stands() -> None:
    form = filled_in(TODAY)
    assert form[:4] == ("Sunshine", "2026-08-31", "Mon Tue Wed Thu", "")
    family = family_of(form, TODAY)
    assert year_of(family).morning(TODAY).week == 12 and family.began == TODAY
    assert (family.first_day, family.first_week) == (dt.date(2026, 8, 31), 1)


def test_the_holidays_are_off_unless_their_tick_is_taken_away() -> None:
    form = filled_in(TODAY)
    assert [each.name for each in form.off][3:5] == ["Thanksgiving (2 days)", "Winter break (10 days)"]
    taken = year_of(family_of(form, TODAY))
    thanksgiving, christmas_eve = dt.date(2026, 11, 26), dt.date(2026, 12, 24)
    assert not {thanksgiving, christmas_eve} & set(taken.mornings)
    bare = year_of(family_of(form._replace(off=()), TODAY))
    assert {thanksgiving, christmas_eve} <= set(bare.mornings)
    # Eight Mondays to Thursdays of winter, a Thursday of Thanksgiving, five single holidays before May 3.
    assert len(form.off) == 8
    day = dt.date(2027, 5, 3)
    assert bare.mornings.index(day) - taken.mornings.index(day) == 14


def test_what_comes_of_the_form_is_said_in_a_sentence() -> None:
    form = filled_in(TODAY)
    assert outcome(form, TODAY) == "Today is school day 48, week 12 of 36; the last is June 2."
    assert (
        outcome(form, dt.date(2026, 11, 26))
        == "No school today; 48 school days so far, week 12 of 36; the last is June 2."
    )
    assert outcome(form, dt.date(2026, 8, 1)) == "School day 1 is Monday, August 31; the last is June 2."
    assert outcome(form, dt.date(2027, 7, 1)) == "The year is over, 144 school days; the last was June 2."
    said = outcome(form._replace(week="week 3"), TODAY)
    assert said.startswith("Today is school day 11, week 3 of 36; ")
    assert said.endswith(" Counted from Monday, November 23, as week 3.")


@pytest.mark.parametrize(
    ("first_day", "beside"),
    [("2026-08-31", "Monday"), ("8/28/2026", "Friday, so from Monday"), ("soon", ""), ("2026-02-30", "")],
)
def test_the_weekday_of_the_first_day_stands_beside_it(first_day: str, beside: str) -> None:
    assert weekday_of(first_day, "Mon Tue Wed Thu") == beside


@given(st.dates(dt.date(2020, 1, 1), dt.date(2060, 12, 31)))
def test_on_every_date_the_form_can_be_taken_as_it_stands(today: dt.date) -> None:
    form = filled_in(today)
    family = family_of(form, today)
    assert family.first_day <= today or today.month >= 7
    assert f"week {year_of(family).morning(today).week}" == week_of(form, today)
    school = set(year_of(family._replace(off=())).mornings)
    assert all(each.touches(family.weekdays) for each in form.off)
    assert {day for day in school if any(each.first <= day <= each.last for each in form.off)}
    assert outcome(form, today).endswith(".")


@given(st.builds(Form, st.text(), st.text(), st.text(), st.text()))
def test_whatever_is_typed_gives_a_family_or_a_sentence(form: Form) -> None:
    try:
        assert isinstance(family_of(form, TODAY), Family)
    except Unclear as unclear:
        assert str(unclear).endswith(".")


@pytest.mark.parametrize("wrong", [{"nickname": "\u200b"}, {"week": "00361"}, {"week": "0"}])
def test_what_no_family_can_have_is_said_so(wrong: dict[str, str]) -> None:
    with pytest.raises(Unclear):
        family_of(filled_in(TODAY)._replace(**wrong), TODAY)  # type: ignore[arg-type]


def test_children_of_the_journal_stay_though_the_first_never_got_a_name() -> None:
    known = default(TODAY, ("Sunshine", "Fern"))
    form = filled_in(TODAY, known)
    assert [child.nickname for child in family_of(form, TODAY, known).children] == ["Sunshine", "Fern"]
    first, second = family_of(form._replace(nickname="Bean"), TODAY, known).children
    assert (first.nickname, first.journal_name, second.nickname) == ("Bean", "Sunshine", "Fern")


@given(st.integers(1, 36), st.dates(dt.date(2026, 9, 1), dt.date(2027, 5, 1)))
def test_the_week_said_is_the_week_it_is(week: int, today: dt.date) -> None:
    form = filled_in(today)
    family = family_of(form._replace(week=f"week {week}"), today)
    assert year_of(family).morning(today).week == week


@pytest.mark.parametrize("words", ["mon, tue", "Tu Th", "monday", "WED fri SAT"])
def test_weekdays_may_be_said_in_many_ways(words: str) -> None:
    assert family_of(filled_in(TODAY)._replace(weekdays=words), TODAY).weekdays


@pytest.mark.parametrize("words", ["", "T", "noday", "Mon Mon-Thu"])
def test_what_is_no_weekday_is_said_so(words: str) -> None:
    with pytest.raises(Unclear):
        family_of(filled_in(TODAY)._replace(weekdays=words), TODAY)


def first_run(home: Path, clock: Clock) -> WarmupApp:
    """The program where there is no family yet."""
    context = context_at(home, clock, default(TODAY), TODAY)
    assert context.journal is not None
    (home / "family.toml").unlink()

    def welcome(family: Family) -> Context:
        save(home / "family.toml", family)
        return context_at(home, clock, family, TODAY)

    return WarmupApp(context, context.journal, clock, (), welcome)


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 36), (160, 45)], ids=lambda s: f"{s[0]}x{s[1]}")
async def test_one_key_leads_to_the_first_prompt(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    app = first_run(home, clock)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        golden(f"welcome-{size[0]}x{size[1]}", frame(app))
        assert app.screen.query_one("#form").styles.background.hex.lower() == DARK.panel, "not in our colors"
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, MorningScreen) and app.screen.session is not None
        assert load(home / "family.toml").children[0].nickname == "Sunshine"


async def test_a_nickname_is_typed_and_a_slip_is_said(home: Path, clock: Clock) -> None:
    app = first_run(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press(*"Bean", "tab", *"soon", "enter")
        await pilot.pause()
        assert "like 2026-08-31" in frame(app) and not (home / "family.toml").exists()
        await pilot.press("home", "ctrl+k", *"2026-09-07", "enter")
        await pilot.pause()
        assert load(home / "family.toml").children[0].nickname == "Bean"


async def typed(pilot: Pilot[int], *keys: str) -> None:
    for key in keys:
        await pilot.press(key)
    await pilot.pause()


async def test_the_date_that_is_typed_counts_and_the_week_follows(home: Path, clock: Clock) -> None:
    """The week is worked out again with every line; only one that was typed itself holds."""
    app = first_run(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await typed(pilot, "tab", *"2026-09-08")
        week = app.screen.query_one("#week", Input)
        assert week.value == "week 11" and "school day 44, week 11 of 36" in frame(app)
        assert "Tuesday" in frame(app) and "Labor Day" not in frame(app)
        await typed(pilot, "tab", *"Mon Wed Fri")
        assert week.value == "week 11" and "school day 32, week 11 of 36" in frame(app)
        await typed(pilot, "enter")
        family = load(home / "family.toml")
    assert (family.first_day, family.first_week, family.weekdays) == (dt.date(2026, 9, 8), 1, (0, 2, 4))


async def test_a_week_that_is_typed_holds_until_it_is_cleared(home: Path, clock: Clock) -> None:
    app = first_run(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        week = app.screen.query_one("#week", Input)
        week.focus()
        await typed(pilot, *"19")
        assert "week 19 of 36" in frame(app) and "Counted from Monday, November 23" in frame(app)
        await typed(pilot, "shift+tab", "shift+tab", *"Mon Tue")
        assert week.value == "19" and "week 19 of 36" in frame(app)
        week.focus()
        await typed(pilot, "end", "ctrl+u", "tab")
        assert "24 school days so far, week 12 of 36" in frame(app) and week.value == "week 12"
        assert "more" not in frame(app)
        await typed(pilot, "enter")
    assert load(home / "family.toml").first_week == 1


async def test_a_tick_taken_away_is_a_school_day_and_shows_at_once(home: Path, clock: Clock) -> None:
    app = first_run(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        assert "school day 48, week 12" in frame(app)
        app.screen.query_one("#off").focus()
        await typed(pilot, "down", "down", "space")
        assert "Veterans Day" in frame(app) and "school day 49, week 13" in frame(app)
        await typed(pilot, "enter")
    off = load(home / "family.toml").off
    assert (dt.date(2026, 11, 11), dt.date(2026, 11, 11)) not in off
    assert (dt.date(2026, 12, 21), dt.date(2027, 1, 1)) in off and len(off) == 7


async def test_a_list_that_is_cut_off_says_how_much_of_it(home: Path, clock: Clock) -> None:
    app = first_run(home, clock)
    async with app.run_test(size=(40, 12)) as pilot:
        await pilot.pause()
        assert "↓ 6 more" in frame(app)
        app.screen.query_one("#off").focus()
        await typed(pilot, "end")
        assert "↑ 6 more" in frame(app) and "Memorial Day" in frame(app)


@pytest.mark.parametrize("today", [TODAY, dt.date(2026, 11, 28)], ids=["school", "no school"])
async def test_the_least_terminal_shows_the_form_to_its_last_line(
    home: Path, clock: Clock, today: dt.date, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("tests.tui.test_welcome.TODAY", today)
    app = first_run(home, clock)
    async with app.run_test(size=(40, 12)) as pilot:
        await pilot.pause()
        shown = frame(app)
        assert "Labor Day" in shown and PRIVACY in shown
        assert not app.screen.show_vertical_scrollbar


async def test_the_help_names_what_checks_a_day_off(home: Path, clock: Clock) -> None:
    app = first_run(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await typed(pilot, "f1")
        assert "Space     check" in frame(app)
        await typed(pilot, "escape")
        listed = app.screen.query_one("#off", SelectionList)
        checked = len(listed.selected)
        listed.focus()
        await typed(pilot, "space")
        assert len(listed.selected) == checked - 1


async def test_the_button_begins_too(home: Path, clock: Clock) -> None:
    app = first_run(home, clock)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.click("#begin")
        await pilot.pause()
        assert isinstance(app.screen, MorningScreen)
    assert load(home / "family.toml").children[0].nickname == "Sunshine"
