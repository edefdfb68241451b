"""``warmup days``: what it prints and takes out of a calendar file, and that a bad one changes nothing."""

import datetime as dt
import json
import os
import subprocess
import sys
from functools import partial
from pathlib import Path

import pytest

from tests.config.calendars import DISTRICT, TODAY, calendar, event
from warmup.cli import days, main
from warmup.cli.main import DONE, USAGE
from warmup.config.family import load
from warmup.journal.journal import Journal
from warmup.session.context import open_context
from warmup.session.undoing import undo_day

ROOT = Path(__file__).parents[2]


OURS = """school.first_day = 2026-08-31
school.days_off = ["fourth Thursday of November", {from = 2026-12-21, to = 2026-12-24}] # ours
school.extra = [2026-12-05, 2026-08-29]
[[child]]
nickname = "Bean"
"""
"""The family's file, with a remark."""


@pytest.fixture
def family(home: Path) -> Path:
    home.mkdir()
    (home / "family.toml").write_text(OURS, "utf-8")
    return home / "family.toml"


def run(*argv: str, today: dt.date = TODAY) -> int:
    try:
        return main.main(["days", *argv], partial(dt.datetime.combine, today, dt.time(8)))
    except SystemExit as ended:
        return int(ended.code or 0)


def test_the_days_ahead(family: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run() == DONE
    assert capsys.readouterr().out.splitlines() == [
        "Today is school day 2, week 1 of 36.",
        "The last day of the year is Thursday, May 13, 2027.",
        "Days off ahead:",
        "  Thu Nov 26 2026",
        "  Mon Dec 21 2026 to Thu Dec 24 2026, 4 mornings",
        "Extra mornings ahead:",
        "  Sat Dec 5 2026",
        "To change one, open the year in the program’s menu.",
    ]
    assert run(today=dt.date(2027, 6, 1)) == DONE
    assert capsys.readouterr().out.splitlines() == [
        "The year is over, 144 school days.",
        "The last day of the year was Thursday, May 13, 2027.",
        "Days off ahead: none.",
        "Extra mornings ahead: none.",
        "To change one, open the year in the program’s menu.",
    ]
    assert family.read_text("utf-8") == OURS


def test_the_days_ahead_as_json(family: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("--json", today=dt.date(2026, 12, 22)) == DONE
    data = json.loads(capsys.readouterr().out)
    assert data == {
        "format": days.FORMAT,
        "today": "2026-12-22",
        "school_days": 64,
        "week": 16,
        "last_day": "2027-05-13",
        "days_off": [
            {
                "first": "2026-12-22",
                "last": "2026-12-24",
                "mornings": ["2026-12-22", "2026-12-23", "2026-12-24"],
            }
        ],
        "extra": [],
    }
    named = {*data, *data["days_off"][0]}
    assert run("--json", "--import", str(DISTRICT)) == DONE
    data = json.loads(capsys.readouterr().out)
    named |= {*data, *data["offers"][0]}
    assert [name for name in named if f"``{name}``" not in (days.__doc__ or "")] == []
    assert [each["number"] for each in data["offers"]] == [*range(1, len(data["offers"]) + 1)]
    assert data["offers"][0] == {
        "number": 1, "name": "Labor Day", "mornings": ["2026-09-07"], "checked": True, "whole": True,
    }  # fmt: skip
    assert data["last_day_then"] > data["last_day"] == "2027-05-13"


def test_without_a_family_the_usual_year_is_told(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run() == DONE
    out, err = capsys.readouterr()
    assert "The last day of the year is Thursday, May 6, 2027." in out and "no family.toml yet" in err
    assert run("--import", str(DISTRICT)) == DONE
    assert run("--import", str(DISTRICT), "--take", "all") == USAGE
    assert "no family.toml yet" in capsys.readouterr().err and not home.exists()


def test_where_there_is_no_terminal_they_are_listed_with_numbers(
    family: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("--import", str(DISTRICT)) == DONE
    out = capsys.readouterr().out
    lines = out.splitlines()
    assert lines[0].split() == ["1", "x", "Mon", "Sep", "7", "Labor", "Day", "(1", "morning)"]
    assert lines[4] == "  5 x Mon Dec 28 to Thu Dec 31  Winter break (4 mornings)"
    unticked = next(line for line in lines if "Staff planning" in line)
    assert " x " not in unticked and "Mar 8 to Tue Mar 9" in unticked
    assert "With those that have an x, 16 mornings off: the last day moves from May 13 to June 10." in out
    assert "Nothing is changed yet." in lines[-1] and "\x1b" not in out
    assert family.read_text("utf-8") == OURS


def test_what_is_named_is_taken_and_can_be_undone(
    family: Path, home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("--import", str(DISTRICT), "--take", "5, 1-2") == DONE
    out = capsys.readouterr().out.splitlines()
    assert out == [
        "Off: Mon Sep 7, Labor Day",
        "Off: Mon Oct 12 to Tue Oct 13, Fall break, no classes (both schools; bus drivers too)",
        "Off: Mon Dec 28 to Thu Dec 31, Winter break",
        "7 mornings are off now: the last day moves from May 13 to May 26.",
    ]
    text = family.read_text("utf-8")
    assert '"fourth Thursday of November"' in text and "# ours" in text
    off = load(family).off
    assert (dt.date(2026, 10, 12), dt.date(2026, 10, 13)) in off and len(off) == 4
    assert run("--import", str(DISTRICT), "--take", "1") == DONE
    assert "Off: Wed Nov 11, Veterans Day" in capsys.readouterr().out, "what is off is offered no more"
    journal = Journal.open(home, partial(dt.datetime.combine, TODAY, dt.time(9)))
    context = open_context(main._places(), load(family), TODAY, journal)
    for left in (4, 1):
        undone = undo_day(context, journal)
        assert undone is not None and undone.what == "calendar" and len(load(family).off) == left
    assert load(family).yearly_off and family.read_text("utf-8").count("fourth Thursday") == 1
    journal.shut()


@pytest.mark.parametrize("which", ["checked", "all"])
def test_all_or_what_is_ticked(which: str, family: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("--import", str(DISTRICT), "--take", which) == DONE
    out = capsys.readouterr().out
    assert ("Staff planning day" in out) is (which == "all") and "Spring Recess" in out
    assert run("--import", str(DISTRICT), "--take", "checked") == DONE
    assert "Off" not in capsys.readouterr().out


@pytest.mark.parametrize(
    ("argv", "says"),
    [
        (["--take", "1"], "--take needs a calendar file"),
        (["--import", str(DISTRICT), "--take", "0"], "numbers from 1 to"),
        (["--import", str(DISTRICT), "--take", "1,99"], "--take '99' is not understood"),
        (["--import", str(DISTRICT), "--take", "3-1"], "--take '3-1' is not understood"),
        (["--import", str(DISTRICT), "--take", "some"], "“checked” and “all”"),
        (["--import", str(DISTRICT), "--take", ","], "numbers from 1 to"),
        (["--import", str(DISTRICT), "--take", "1\x1b[31m"], "is not understood"),
        (["--import", str(DISTRICT), "--take", "1", "--json"], "--json lists and --take takes"),
        (["--import", str(DISTRICT), "--take", "1", "--child", "Nobody"], "no child called"),
        (["--plain", "--json"], "not allowed"),
    ],
)
def test_what_is_not_understood_is_said_and_nothing_is_changed(
    argv: list[str], says: str, family: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(*argv) == USAGE
    err = capsys.readouterr().err
    assert says in err and "\x1b" not in err and "Traceback" not in err
    assert family.read_text("utf-8") == OURS


@pytest.mark.parametrize("argv", [[], ["--json"], ["--import"], ["--import", "--take", "all"]])
def test_a_year_without_a_morning_is_said(
    argv: list[str], family: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    years = ", ".join(f"{{from = {y}-07-01, to = {y + 1}-06-30}}" for y in range(2026, 2031))
    family.write_text(
        f"school.first_day = 2026-08-31\nschool.days_off = [{years}]\n[[child]]\nnickname = 'Bean'\n", "utf-8"
    )
    argv = [word for each in argv for word in ([each, str(DISTRICT)] if each == "--import" else [each])]
    assert run(*argv) == USAGE
    assert "every day is a day off in family.toml" in capsys.readouterr().err


def test_today_is_offered_until_its_warm_up_is_begun(
    family: Path, home: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    path = tmp_path / "today.ics"
    path.write_text(calendar(event("SUMMARY:Snow: no school", "DTSTART;VALUE=DATE:20260901")), "utf-8")
    assert run("--import", str(path)) == DONE
    assert "Tue Sep 1" in capsys.readouterr().out
    journal = Journal.open(home, partial(dt.datetime.combine, TODAY, dt.time(8)))
    journal.start("Bean", TODAY, "daily", "{}", [])
    journal.shut()
    assert run("--import", str(path)) == DONE
    assert "Nothing in this calendar falls on a school morning ahead" in capsys.readouterr().out
    assert run("--import", str(path), "--take", "all") == DONE
    assert "Nothing in this calendar" in capsys.readouterr().out and family.read_text("utf-8") == OURS


@pytest.mark.slow
def test_what_reads_calendars_is_loaded_by_nothing_else(family: Path, home: Path) -> None:
    """Neither by the way to a morning nor by what prints; ``warmup days`` alone does not load it either."""
    code = """
import contextlib, io, sys
import warmup.cli.main, warmup.tui.app
def loaded():
    return sorted(name for name in sys.modules if name in ("icalendar", "warmup.config.calendar_file"))
for argv in (["today"], ["check"], ["days"], ["days", "--json"], ["days", "--import", sys.argv[1]]):
    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
        assert warmup.cli.main.main(argv) in (0, 1)
    print(argv[-1][-4:], loaded())
"""
    done = subprocess.run(
        [sys.executable, "-c", code, str(DISTRICT)],
        capture_output=True, text=True, cwd=ROOT, check=True, env={**os.environ, "WARMUP_HOME": str(home)},
    )  # fmt: skip
    *before, last = done.stdout.splitlines()
    assert before == ["oday []", "heck []", "days []", "json []"]
    assert last == ".ics ['icalendar', 'warmup.config.calendar_file']"
