"""The year page of the real program in a pseudo-terminal: a week held, a level moved, both taken back."""

import datetime as dt
import sys
import time
import tomllib
from pathlib import Path

import pytest

if sys.platform == "win32":
    collect_ignore = ["test_the_year.py"]

from tests.journeys.real_morning import past_questions
from tests.journeys.test_hands_and_mouse import Adult
from tests.terminal import WARMUP, Terminal, environment
from warmup.config.family import Child, Family, save
from warmup.tui.guards import LANDING


def settle() -> None:
    """A key right after one that opened a page would be taken for a bounce."""
    time.sleep(LANDING.total_seconds() + 0.1)


def begun_this_week(home: Path) -> None:
    """A family in its first week, on whatever date: the weeks 31, 33 and 35 are to come."""
    today = dt.datetime.now().date()
    monday, children = today - dt.timedelta(today.weekday()), (Child("Bean", reads=False),)
    home.mkdir(exist_ok=True)
    family = Family(monday, today, children, known_until=today - dt.timedelta(1), weekdays=tuple(range(7)))
    save(home / "family.toml", family)


@pytest.mark.slow
def test_a_week_is_held_and_a_level_moved_and_both_are_there_after_a_kill(home: Path) -> None:
    begun_this_week(home)
    with Terminal(WARMUP, environment(home), 120, 36) as terminal:
        past_questions(terminal, "nothing is asked yet")
        mouse = Adult(terminal, {})
        mouse.does("menu", "what may be asked")
        settle()
        mouse.does("the year", "Quarter 4")
        settle()
        terminal.press("y")
        terminal.wait("Week 1 takes one week more. Last day: ")
        mouse.does("33 □□□□□□□", "Week 33")
        settle()
        mouse.does("to come: ", "another week")
        settle()
        terminal.press("j")
        terminal.wait("where it is")
        settle()
        terminal.press("w", "w")
        terminal.wait("Does not fit: ")
        terminal.press("e")
        terminal.wait("→ week 31")
        terminal.kill()
    held = tomllib.loads((home / "family.toml").read_text("utf-8"))["school"]
    assert held["held_weeks"] == [1]
    year = tomllib.loads((home / "year.toml").read_text("utf-8"))
    assert [week for table in year["skills"].values() for week in table.values()] == [31]
    with Terminal(WARMUP, environment(home), 120, 36) as terminal:
        past_questions(terminal, "nothing is asked yet")
        for undone in ("Undone: moved", "Undone: the weeks"):
            settle()
            terminal.press("u")
            terminal.wait(undone)
        settle()
        terminal.press("8")
        assert terminal.finish() == 0
    assert "held_weeks" not in (home / "family.toml").read_text("utf-8")
    year = tomllib.loads((home / "year.toml").read_text("utf-8"))
    assert [week for table in year["skills"].values() for week in table.values()] == []
