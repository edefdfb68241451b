"""The first run: a form that is filled in, takes anything, and never asks for more than three keys."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.household import desk_at
from tests.screens.frame import frame, golden
from warmup.app import WarmupApp
from warmup.desk import Desk, year_of
from warmup.documents import Places
from warmup.family import Family, default, load, save
from warmup.screens.morning import MorningScreen
from warmup.screens.paint import DARK
from warmup.screens.welcome import Form, Unclear, family_of, filled_in

TODAY = dt.date(2026, 11, 25)
Clock = Callable[[], dt.datetime]


def test_the_form_is_filled_in_and_can_be_taken_as_it_stands() -> None:
    form = filled_in(TODAY)
    assert form == Form("Sunshine", "2026-08-31", "Mon Tue Wed Thu", "13")
    family = family_of(form, TODAY)
    assert year_of(family).morning(TODAY).week == 13 and family.began == TODAY


@given(st.dates(dt.date(2020, 1, 1), dt.date(2060, 12, 31)))
def test_on_every_date_the_form_can_be_taken_as_it_stands(today: dt.date) -> None:
    family = family_of(filled_in(today), today)
    assert family.first_day <= today or today.month >= 7
    assert year_of(family).morning(today).week == int(filled_in(today).week)


@given(st.builds(Form, st.text(), st.text(), st.text(), st.text()))
def test_whatever_is_typed_gives_a_family_or_a_sentence(form: Form) -> None:
    try:
        assert isinstance(family_of(form, TODAY), Family)
    except Unclear as unclear:
        assert str(unclear).endswith(".")


@given(st.integers(1, 36), st.dates(dt.date(2026, 9, 1), dt.date(2027, 5, 1)))
def test_the_week_said_is_the_week_it_is(week: int, today: dt.date) -> None:
    form = filled_in(today)
    family = family_of(form._replace(week=str(week)), today)
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
    desk = desk_at(home, clock, default(TODAY), TODAY)
    assert desk.journal is not None
    (home / "family.toml").unlink()

    def welcome(family: Family) -> Desk:
        save(home / "family.toml", family)
        return desk_at(home, clock, family, TODAY)

    desk.places = Places(home, home)
    return WarmupApp(desk, desk.journal, clock, (), welcome)


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 36), (160, 45)], ids=lambda s: f"{s[0]}x{s[1]}")
async def test_one_key_leads_to_the_first_prompt(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    app = first_run(home, clock)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        golden(f"welcome-{size[0]}x{size[1]}", frame(app))
        assert app.screen.query_one("#form").styles.background.hex.lower() == DARK.panel, "not in our colors"
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, MorningScreen) and app.screen.sitting is not None
        assert load(home / "family.toml").children[0].nickname == "Sunshine"


async def test_a_nickname_is_typed_and_a_slip_is_said(home: Path, clock: Clock) -> None:
    app = first_run(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press(*"Bean", "tab", *"soon", "enter")
        await pilot.pause()
        assert "year-month-day" in frame(app) and not (home / "family.toml").exists()
        await pilot.press("home", "ctrl+k", *"2026-09-07", "enter")
        await pilot.pause()
        assert load(home / "family.toml").children[0].nickname == "Bean"
