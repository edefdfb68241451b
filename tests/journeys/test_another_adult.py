"""The real program in a pseudo-terminal with another adult at the table, and a morning done on paper."""

import datetime as dt
import subprocess
import time
from functools import partial
from pathlib import Path

import pytest

from tests.terminal import WARMUP, Terminal, environment
from warmup.config import family as families
from warmup.config.family import Child, Family
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.session.stored import stored
from warmup.tui.guards import BOUNCE, LANDING

TODAY = dt.date.today()
BEFORE = TODAY - dt.timedelta(1)


@pytest.fixture
def family(home: Path) -> Path:
    """A family whose every day is a school day, since the clock is the real one, and missed yesterday."""
    home.mkdir()
    began = TODAY - dt.timedelta(20)
    bean = Child("Bean", reads=False)
    known = TODAY - dt.timedelta(2)
    families.save(
        home / "family.toml", Family(began, began, (bean,), weekdays=tuple(range(7)), known_until=known)
    )
    return home


def marks(home: Path, date: dt.date) -> list[tuple[Mark | None, str, bool]]:
    """The marks of a date on disk, each with who made it and whether from memory."""
    journal = Journal.open(home, dt.datetime.now)
    rows = journal.marks_of("Bean", date, 1)
    journal.shut()
    return [(rows[at].mark, rows[at].adult, rows[at].from_memory) for at in sorted(rows)]


def run(home: Path, *argv: str) -> str:
    """What a command prints."""
    done = subprocess.run(
        [*WARMUP, *argv],
        env=environment(home),
        capture_output=True,
        text=True,
        check=True,
        stdin=subprocess.DEVNULL,
    )
    return done.stdout


def _ends_a_row(word: str, text: str) -> bool:
    return any(line.endswith(word) for line in text.splitlines())


def test_grandmother_opens_it_once_and_the_family_is_as_it_was(family: Path) -> None:
    saved = (family / "family.toml").read_bytes()
    with Terminal([*WARMUP, "--guest"], environment(family)) as terminal:
        terminal.wait("Your name?")
        # In one burst, as from a paste: the line has all of it before Enter counts.
        terminal.press(*"Grandma", "enter")
        terminal.wait("Guest: Grandma")
        time.sleep(LANDING.total_seconds() + 0.1)
        terminal.press("right")
        terminal.wait("1 of ")
        for number, key in ((2, "up"), (3, "down"), (4, "n")):
            terminal.press(key)
            terminal.wait(f"{number} of ")
        terminal.press("k", "y", "l", "h", ",")
        time.sleep(0.3)
        assert "4 of " in terminal.wait("4 of ")
        terminal.kill()
    expected = [(mark, "Grandma", False) for mark in (Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET)]
    assert marks(family, TODAY) == expected and (family / "family.toml").read_bytes() == saved
    with Terminal(WARMUP, environment(family)) as terminal:
        terminal.wait("school, or off?")
        terminal.press("s", "enter")
        terminal.wait("4 of ")


def test_a_guest_without_a_family_leaves_nothing(home: Path) -> None:
    with Terminal([*WARMUP, "--guest", "Grandma"], environment(home)) as terminal:
        terminal.wait("kept nowhere")
        terminal.press("right")
        terminal.wait("1 of ")
        terminal.press("q")
        assert terminal.finish() == 0
    assert not home.exists()


def test_a_morning_on_paper_is_typed_in_letter_by_letter_and_outlives_a_kill(family: Path) -> None:
    with Terminal([*WARMUP, "catch-up", str(BEFORE)], environment(family)) as terminal:
        terminal.wait("Enter done")
        for key, word in (("w", "came easily"), ("s", "hesitated"), ("n", "not yet")):
            terminal.press(key)
            # The page names the keys of the hand used last; the mark stands at the end of a row.
            terminal.wait(partial(_ends_a_row, word))
            time.sleep(BOUNCE.total_seconds() + 0.05)
        terminal.kill()
    expected = [(mark, "", True) for mark in (Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET)]
    assert marks(family, BEFORE) == expected
    with Terminal([*WARMUP, "catch-up", str(BEFORE)], environment(family)) as terminal:
        terminal.wait(" 3 ○")
        terminal.press("u")
        terminal.wait("Undone: not yet.")
        terminal.press("enter")
        assert terminal.finish() == 0
    assert marks(family, BEFORE)[2][0] is None
    with Terminal(WARMUP, environment(family)) as terminal:
        terminal.wait("nothing is asked yet")
        assert "school, or off?" not in terminal.text(), "yesterday was held, on paper"


def test_a_brief_is_printed_and_its_letters_are_typed_in(family: Path) -> None:
    run(family, "catch-up", str(BEFORE), "--marks", "w")
    brief = run(family, "today", "--brief")
    assert len(brief.splitlines()) <= 30 and run(family, "today", "--brief") == brief
    journal = Journal.open(family, dt.datetime.now)
    ((_, routine),) = stored(journal, "Bean", TODAY)
    journal.shut()
    flat = " ".join(brief.split())
    assert all(f"“{prompt.say}” Answer: {prompt.answer}." in flat for prompt in routine.prompts)
    said = run(family, "catch-up", str(TODAY), "--marks", "ws n-", "--adult", "Grandpa")
    assert "Kept from memory: four marks." in said
    with Terminal(WARMUP, environment(family)) as terminal:
        terminal.wait("5 of ")
    four = (Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED)
    assert marks(family, TODAY) == [(mark, "Grandpa", True) for mark in four]
