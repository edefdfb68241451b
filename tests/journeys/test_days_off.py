"""``warmup days --import`` in a terminal: tick, take, see what was taken, and undo it in the program."""

import datetime as dt
import time
from pathlib import Path

import pytest

from tests.config.calendars import calendar, event
from tests.terminal import WARMUP, Terminal, environment
from warmup.config.family import Child, default, load, save, year_of
from warmup.tui.guards import LANDING


@pytest.mark.slow
def test_days_are_ticked_and_taken_and_the_program_takes_them_back(home: Path, tmp_path: Path) -> None:
    today = dt.date.today()
    family = default(today)._replace(children=(Child("Bean", reads=False),), known_until=today)
    family = family._replace(first_day=today - dt.timedelta(today.weekday() + 28), began=today)
    home.mkdir()
    save(home / "family.toml", family)
    ahead = [day for day in year_of(family).mornings if day > today][10:12]
    path = tmp_path / "school.ics"
    path.write_text(
        calendar(
            *(
                event(f"SUMMARY:{name}", f"DTSTART;VALUE=DATE:{day:%Y%m%d}")
                for name, day in zip(("Snow fair", "Fall break"), ahead, strict=True)
            )
        ),
        "utf-8",
    )
    with Terminal((*WARMUP, "days", "--import", str(path)), environment(home)) as terminal:
        terminal.wait("1 morning off: the last day")
        terminal.press("down")
        terminal.press("space")
        terminal.wait("2 mornings off: the last day")
        assert load(home / "family.toml") == family
        terminal.press("enter")
        terminal.wait("2 mornings are off now: the last day")
        assert terminal.finish() == 0
    assert {day for day, _ in load(home / "family.toml").off} | {ahead[1]} == {*ahead}
    with Terminal(WARMUP, environment(home)) as terminal:
        terminal.wait(lambda screen: "quit" in screen or "undo" in screen)
        time.sleep(LANDING.total_seconds() + 0.1)
        terminal.press("u")
        terminal.wait("Undone: the days off from a calendar.")
    assert load(home / "family.toml") == family


@pytest.mark.slow
def test_a_bad_file_opens_no_page(home: Path, tmp_path: Path) -> None:
    home.mkdir()
    save(home / "family.toml", default(dt.date.today()))
    before = (home / "family.toml").read_bytes()
    path = tmp_path / "school.ics"
    path.write_text(calendar(event("DTSTART;VALUE=DATE:soon")), "utf-8")
    with Terminal((*WARMUP, "days", "--import", str(path)), environment(home)) as terminal:
        terminal.wait("school.ics, line 5, DTSTART: expected a date")
        assert terminal.finish() == 3
    assert (home / "family.toml").read_bytes() == before
