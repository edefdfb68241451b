"""The real program in a pseudo-terminal: a note in the morning, yesterday corrected, and both found again."""

import datetime as dt
import time
from pathlib import Path

import pytest

from tests.journeys.test_another_adult import BEFORE, TODAY, family, marks, run
from tests.terminal import WARMUP, Terminal, environment
from warmup.journal.journal import Journal
from warmup.journal.rows import MORNING
from warmup.model import Mark
from warmup.tui.guards import BOUNCE, LANDING

__all__ = ["family"]
F, H, N = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET


def land() -> None:
    """A key right after the one that opened a page would be taken for a bounce."""
    time.sleep(LANDING.total_seconds() + 0.1)


def to_yesterday(terminal: Terminal) -> None:
    """From the morning to the page of the morning before."""
    land()
    terminal.press(".")
    terminal.wait("past mornings")
    land()
    rows = terminal.text().splitlines()
    row = next(at for at, line in enumerate(rows) if "past mornings" in line)
    where = f"{rows[row].index('past mornings') + 1};{row + 1}"
    terminal.press(f"\x1b[<0;{where}M", f"\x1b[<0;{where}m")
    terminal.wait("Enter open")
    land()
    terminal.press("enter")
    terminal.wait("a note")
    land()


@pytest.mark.usefixtures("family")
def test_yesterday_is_corrected_noted_and_undone_and_outlives_a_kill(home: Path) -> None:
    run(home, "catch-up", str(BEFORE), "--marks", "wsn")
    with Terminal(WARMUP, environment(home), rows=45) as terminal:
        terminal.wait("nothing is asked yet")
        to_yesterday(terminal)
        terminal.press("s")
        terminal.wait("was came easily")
        terminal.press("7")
        terminal.wait("What did they say?")
        terminal.press(*"An egg carton!", "enter")
        terminal.wait("Note: An egg carton!")
        terminal.kill()
    assert [mark for mark, _, _ in marks(home, BEFORE)] == [H, H, N]
    told = run(home, "past", str(BEFORE))
    assert "It went: hesitated, from memory; corrected on" in told and "was came easily." in told
    assert "Note: An egg carton!" in told and "An egg carton!" in run(home, "notes", "EGG")
    with Terminal(WARMUP, environment(home), rows=45) as terminal:
        terminal.wait("nothing is asked yet")
        to_yesterday(terminal)
        terminal.press("u")
        terminal.wait("Undone: the note.")
        time.sleep(BOUNCE.total_seconds() + 0.1)
        terminal.press("z")
        terminal.wait("Undone: hesitated.")
        terminal.kill()
    assert [mark for mark, _, _ in marks(home, BEFORE)] == [F, H, N]
    assert run(home, "notes") == "There is no note yet.\n"


@pytest.mark.usefixtures("family")
def test_a_note_in_the_morning_is_on_disk_when_the_morning_is_back(home: Path) -> None:
    run(home, "catch-up", str(BEFORE), "--marks", "w")
    with Terminal(WARMUP, environment(home), rows=45) as terminal:
        terminal.wait("nothing is asked yet")
        land()
        terminal.press("5")
        terminal.wait("the morning as a whole")
        terminal.press(*"Slept q8 well.", "enter")
        terminal.wait("Noted.")
        terminal.kill()
    journal = Journal.open(home, dt.datetime.now)
    whole = journal.whole_of("Bean", TODAY, 1)
    journal.shut()
    assert whole is not None and whole.notes[MORNING].text == "Slept q8 well."
