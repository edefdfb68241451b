"""A family that has a file of every kind the program reads: for campaigns that damage them."""

import contextlib
import datetime as dt
import io
import os
import shutil
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from tests.config.calendars import DISTRICT, calendar, event
from tests.config.routines import DAILY, YEAR
from tests.year_of_history import write_year
from warmup.cli.main import main as warmup

NOW = dt.datetime(2026, 11, 25, 8)
FAMILY = """# What we have
format = 1
[school]
first_day = 2026-11-02
began = 2026-11-02
settled = 2026-11-24 # until here
weekdays = ["Monday", "Tuesday", "Wednesday", "Thursday"]
days_off = ["fourth Thursday of November", {from = 2026-12-21, to = 2027-01-01}, 2027-02-15]
extra = [2026-12-05]
held_weeks = [3]
skipped_weeks = [7]
first_week = 2
[[child]]
nickname = "Pip"
reads = false
held = ["coins:worth"]
[[child]]
nickname = "Bean"
record = "Pip1"
reads = true
prompts = 5
taught = {"make-ten/seven-three" = 2026-11-20}
[[countdown]]
name = "the lake"
date = 2027-06-04
[[countdown]]
name = "the feast"
yearly = "fourth Thursday of November"
[preferences]
theme = "dark"
answers = "covered"
pennies = true
animal = "Bear"
adult = "Jo"
prompts = 7
[household]
toddler = true
without = ["rice"]
printed = ["ten-frames"]
[keys]
undo = ["u", "F5"]
[keeping]
copies = "COPIES"
"""
OVERLAY = """format = 1
review_weeks = [5, 9, 14, 18, 23, 27, 32, 36]
nothing_new_from = 34
prompts = [{ to_week = 9, count = 6 }, { to_week = 36, count = 7 }]
[skills.coins]
worth = 24
[skills.make-ten]
see-places = 11
"""
OWN = """format = 1
[[prompt]]
name = "our-street"
say = "What is the name of our street?"
answer = "Pear Tree Lane"
cues = ["It is a fruit.", "It grows on a tree."]
accept = ["Pear Lane"]
watch_for = "Only the first word."
table = "a letter"
week = 2
[[prompt]]
say = "How many stairs go up to our door?"
answer = "four"
strand = "counting"
"""
CALENDAR = calendar(
    event("UID:a", "SUMMARY:Break", "DTSTART;VALUE=DATE:20261012", "RRULE:FREQ=YEARLY;BYMONTH=10;BYDAY=2MO"),
    event("UID:a", "SUMMARY:Break", "RECURRENCE-ID;VALUE=DATE:20261012", "DTSTART;VALUE=DATE:20261013"),
    event(
        *("UID:b", "SUMMARY:Game", "DTSTART;TZID=America/New_York:20260901T170000", "DURATION:PT2H"),
        *("RRULE:FREQ=WEEKLY;COUNT=40;BYDAY=TU,TH", "EXDATE;TZID=America/New_York:20260908T170000"),
    ),
)


class Ran(NamedTuple):
    """What a command did: its exit code and what it said."""

    code: int
    out: str
    err: str


def run(home: Path, *words: str, typed: str = "", now: dt.datetime = NOW) -> Ran:
    """A command of the family in this folder, in this process; ``typed`` are the lines the adult types."""
    out, err = io.StringIO(), io.StringIO()
    with at_home(home, typed), contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        try:
            code = warmup(words, lambda: now)
        except SystemExit as ended:
            code = int(ended.code or 0)
    return Ran(code, out.getvalue(), err.getvalue())


@contextlib.contextmanager
def at_home(home: Path, typed: str) -> Iterator[None]:
    """The family's place, and what its adult types."""
    before, stdin = os.environ.get("WARMUP_HOME"), sys.stdin
    os.environ["WARMUP_HOME"], sys.stdin = str(home), io.StringIO(typed)
    try:
        yield
    finally:
        sys.stdin = stdin
        if before is None:
            del os.environ["WARMUP_HOME"]
        else:
            os.environ["WARMUP_HOME"] = before


def set_up(folder: Path) -> None:
    """Every kind of file, in ``folder``: ``home``, another laptop's ``other``, an ``export``, ``copies``."""
    home = folder / "home"
    write_year(home, NOW.date(), weeks=3, children=2)
    write_year(folder / "other", NOW.date() + dt.timedelta(7), weeks=2, children=1)
    (folder / "copies").mkdir()
    family = FAMILY.replace("COPIES", str(folder / "copies"))
    (home / "family.toml").write_text(family, "utf-8")
    (home / "own.toml").write_text(OWN, "utf-8")
    (home / "year.toml").write_text(OVERLAY, "utf-8")
    for name in ("daily", "sunday"):
        (home / f"{name}.toml").write_text(DAILY, "utf-8")
    (folder / "whole-year.toml").write_text(YEAR, "utf-8")
    (folder / "days.ics").write_text(CALENDAR, "utf-8")
    shutil.copyfile(DISTRICT, folder / "district.ics")
    shutil.copyfile(folder / "other" / "journal.db", home / "journal 2.db")
    # What the program itself leaves: notes at hand, a practice round, a weekly copy.
    for words, typed in (
        (("--plain", "--child", "Pip"), "\n" + "w\ns\n" * 9),
        (("practice", "count", "--plain"), "w\ns\nn\nw\nw\n"),
        (("days", "--import", str(folder / "days.ics"), "--take", "1"), ""),
        (("export", "--all", str(folder / "export")), ""),
    ):
        ran = run(home, *words, typed=typed)
        assert ran.code == 0, ran
