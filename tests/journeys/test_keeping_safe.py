"""The weekly copy, the line of a second journal and a child forgotten, in the real program."""

import datetime as dt
import subprocess
import sys
import time
from pathlib import Path

from tests.journeys.real_morning import past_questions
from tests.journeys.test_trouble import with_family
from tests.terminal import WARMUP, Terminal, environment
from warmup.config import family as families
from warmup.journal.copies import keep_copy
from warmup.journal.journal import Journal
from warmup.tui.guards import LANDING


def test_a_morning_closed_leaves_a_copy_on_the_stick(home: Path, tmp_path: Path) -> None:
    stick = tmp_path / "stick"
    with_family(home)
    family = families.load(home / "family.toml")
    families.save(home / "family.toml", family._replace(copies=str(stick)), family)
    with Terminal(WARMUP, environment(home), columns=100) as terminal:
        past_questions(terminal, "nothing is asked yet")
        time.sleep(LANDING.total_seconds() + 0.1)
        terminal.press("right")
        total = int(terminal.wait("1 of ").split("1 of ")[1].split()[0])
        time.sleep(LANDING.total_seconds() + 0.1)
        for number in range(2, total + 1):
            terminal.press("right")
            terminal.wait(f"{number} of ")
        terminal.press("right")
        terminal.wait("those came easily too")
        time.sleep(LANDING.total_seconds() + 0.1)
        terminal.press("enter")
        assert terminal.finish() == 0
        assert "No weekly copy today: the folder for it is not there." in " ".join(terminal.text().split())
    assert not stick.exists()
    stick.mkdir()
    with Terminal(WARMUP, environment(home), columns=100) as terminal:
        terminal.wait("is done")
        time.sleep(LANDING.total_seconds() + 0.1)
        terminal.press("enter")
        assert terminal.finish() == 0
        assert "No weekly copy" not in terminal.text()
    (made,) = stick.iterdir()
    assert made.name.startswith("warmup-") and made.stat().st_size > 4096


def test_a_second_journal_beside_ours_is_offered(home: Path) -> None:
    with_family(home)
    journal = Journal.open(home, dt.datetime.now)
    journal.shut()
    keep_copy(journal.path, home / "journal-2.db")
    with Terminal(WARMUP, environment(home), columns=120, rows=36) as terminal:
        terminal.wait("A second journal lies beside yours")
        assert "journal-2.db” takes it in." in terminal.text()
        terminal.press("q")
        assert terminal.finish() == 0


def test_a_child_is_forgotten_by_lines(home: Path) -> None:
    with_family(home, "Quillon")
    done = subprocess.run(
        [sys.executable, "-m", "warmup", "forget", "Quillon"],
        input="\nQuillon\n", capture_output=True, text=True, env=environment(home), check=False,
    )  # fmt: skip
    assert done.returncode == 0 and "Quillon is forgotten." in done.stdout and not done.stderr
    assert not any(b"Quillon" in path.read_bytes() for path in home.rglob("*.*"))
