"""The real program in a pseudo-terminal: a report is read, and put into a file with a key and a name."""

import datetime as dt
import time
from functools import partial
from pathlib import Path

import pytest

from tests.household import StandingClock, lived
from tests.terminal import WARMUP, Terminal, environment
from warmup.config import family as families
from warmup.config.family import Child, Family
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.session.context import open_context
from warmup.tui.guards import BOUNCE

TODAY = dt.date.today()
YESTERDAY = TODAY - dt.timedelta(1)


@pytest.fixture
def here(home: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A family with one morning behind it, and an empty folder to be in."""
    home.mkdir()
    began = TODAY - dt.timedelta(20)
    family = Family(
        began, began, (Child("Bean", reads=False),), weekdays=tuple(range(7)), known_until=YESTERDAY
    )
    families.save(home / "family.toml", family)
    journal = Journal.open(home, StandingClock(dt.datetime.combine(YESTERDAY, dt.time(8))))
    context = open_context(Places(home, home), family, TODAY, journal)
    lived(context, YESTERDAY, {"make-ten/seven-three": Mark.FLUENT, "count/to-20": Mark.HESITATED})
    journal.shut()
    folder = tmp_path / "here"
    folder.mkdir()
    monkeypatch.chdir(folder)
    return folder


def _shows(words: str, text: str) -> bool:
    return words in " ".join(text.split())


def test_it_is_shown_then_written_and_never_over_what_is_there_unasked(home: Path, here: Path) -> None:
    before = {path.name: path.read_bytes() for path in home.rglob("*.*")}
    name = f"warmup-letter-{TODAY}.html"
    with Terminal([*WARMUP, "report", "--letter", "year"], environment(home)) as terminal:
        terminal.wait("Dear family,")
        assert list(here.iterdir()) == []
        terminal.press("k")
        terminal.wait(name)
        terminal.press("enter")
        terminal.wait("Written:")
        page = (here / name).read_text("utf-8")
        assert "There was a warm-up on 1 day, about 1 minute in all." in page
        (here / name).write_text("mine")
        time.sleep(BOUNCE.total_seconds() + 0.1)
        terminal.press("k")
        terminal.wait("Into which file?")
        for said in ("already. Enter again", "will be gone"):
            time.sleep(BOUNCE.total_seconds() + 0.1)
            terminal.press("enter")
            terminal.wait(partial(_shows, said))
            assert (here / name).read_text() == "mine"
        time.sleep(BOUNCE.total_seconds() + 0.1)
        terminal.press("enter")
        terminal.wait("Written:")
        assert (here / name).read_text("utf-8") == page
        time.sleep(BOUNCE.total_seconds() + 0.1)
        terminal.press("left")
        assert terminal.finish() == 0
    assert {path.name: path.read_bytes() for path in home.rglob("*.*")} == before


def test_with_plain_it_is_printed_in_a_terminal(home: Path, here: Path) -> None:
    with Terminal([*WARMUP, "--plain", "report"], environment(home)) as terminal:
        assert terminal.finish() == 0
        assert b"This is no test, no assessment and no grade." in terminal.written
    assert list(here.iterdir()) == []
