"""Everything that can be wrong with a disk or a file, in the real program: a sentence, and nothing lost."""

import datetime as dt
import resource
import sqlite3
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.terminal import WARMUP, Terminal, environment
from warmup.cli.main import UNUSABLE
from warmup.config import family as families
from warmup.config.family import Child, default
from warmup.journal.journal import Journal


def with_family(home: Path, nickname: str = "Bean") -> None:
    """A family for whom today is a school day, whatever day it is."""
    # The date when the program starts: a run may go past midnight.
    today = dt.date.today()
    family = default(today)._replace(first_day=today, first_week=1, weekdays=tuple(range(7)), off=())
    home.mkdir(parents=True, exist_ok=True)
    families.save(home / "family.toml", family._replace(children=(Child(nickname),)))


def everything_said(home: Path, **more: str) -> str:
    """All that the program writes to a terminal until it ends by itself."""
    with Terminal(WARMUP, environment(home, **more), columns=100) as terminal:
        terminal.finish()
        return " ".join(terminal.text().split())


def opens(home: Path, says: str = "? all keys", columns: int = 100) -> str:
    """The screen of the program once it shows a text; it is then quit."""
    with Terminal(WARMUP, environment(home), columns=columns) as terminal:
        shown = terminal.wait(says)
        terminal.press("q")
        assert terminal.finish() == 0
    return shown


def test_a_data_folder_that_takes_no_writing(home: Path, tmp_path: Path) -> None:
    """A journal that cannot be made (its place is taken by a folder): the morning goes on and says so."""
    with_family(home)
    (home / "journal.db").mkdir()
    with Terminal(WARMUP, environment(home), columns=100) as terminal:
        terminal.wait("Not being saved")
        terminal.press("right")
        terminal.wait("1 of ")
        terminal.press("up")
        shown = terminal.wait("2 of ")
        assert "Not being saved" in shown
        terminal.press("q")
        assert terminal.finish() == UNUSABLE
        assert "whatwasmarkedjustnowisnotkept" in "".join(terminal.text().split())
    assert (home / "journal.db").is_dir()


def test_a_full_disk(home: Path) -> None:
    """A limit on the size of files gives the real errors of a full disk."""
    with_family(home)
    opens(home)
    before = (home / "journal.db").stat().st_size
    room = before - 4096
    limited = [
        sys.executable,
        "-c",
        "import resource, signal, os, sys; signal.signal(signal.SIGXFSZ, signal.SIG_IGN);"
        f"resource.setrlimit(resource.RLIMIT_FSIZE, ({room}, {room}));"
        "os.execv(sys.executable, [sys.executable, '-m', 'warmup'])",
    ]
    (home / "journal.db").rename(home / "kept.db")
    with Terminal(limited, environment(home), columns=100) as terminal:
        terminal.wait("nothing is asked yet")
        terminal.press("right")
        terminal.wait("came easily")
        # The same key three times at once would be taken for a bounce.
        terminal.press("up", "down", "up")
        shown = terminal.wait("4 of ")
        assert "Traceback" not in shown
        terminal.press("q")
        assert terminal.finish() == UNUSABLE
        assert "whatwasmarkedjustnowisnotkept" in "".join(terminal.text().split())
    assert resource.RLIMIT_FSIZE is not None and (home / "kept.db").stat().st_size == before


DAMAGE: dict[str, Callable[[bytes], bytes]] = {
    "not a database": lambda _: b"\x00\xff rubbish" * 500,
    "cut short": lambda whole: whole[: len(whole) // 2 + 100],
    "garbage in the middle": lambda whole: whole[:4096] + b"\xa5" * 4096 + whole[8192:],
    "empty": lambda _: b"",
}


@pytest.mark.parametrize("damage", DAMAGE.values(), ids=DAMAGE.keys())
def test_a_damaged_journal_is_set_aside_and_the_morning_opens(
    home: Path, damage: Callable[[bytes], bytes]
) -> None:
    with_family(home)
    opens(home)
    damaged = damage((home / "journal.db").read_bytes())
    (home / "journal.db").write_bytes(damaged)
    shown = opens(home)
    assert "Traceback" not in shown
    kept = [path.read_bytes() for path in home.glob("journal-damaged-*.db")]
    assert damaged == b"" or kept == [damaged] or Journal.examine(home) == []
    assert Journal.examine(home) == []


def test_a_newer_journal_is_left_alone(home: Path) -> None:
    with_family(home)
    opens(home)
    with sqlite3.connect(home / "journal.db") as newer:
        newer.execute("PRAGMA user_version = 99")
    newer.close()
    before = (home / "journal.db").read_bytes()
    said = everything_said(home)
    # A terminal breaks the sentence wherever its own edge falls.
    said = "".join(said.split())
    assert "newerversion" in said and "Updatewarmup" in said and "Traceback" not in said
    assert (home / "journal.db").read_bytes() == before


@pytest.mark.parametrize(
    "nickname", ["[b]Pip[/b] [/x]", "Pip 🦊 🧺", "x" * 40, "'; DROP TABLE marks; --", "\u202ebackward"]
)
def test_any_nickname_is_shown_as_it_is_or_refused_in_a_sentence(home: Path, nickname: str) -> None:
    with_family(home, nickname)
    assert "Traceback" not in opens(home)
    done = subprocess.run(
        [*WARMUP, "today"], env=environment(home), capture_output=True, text=True, check=True
    )
    assert nickname.replace("\u202e", "") in done.stdout.replace("\u202e", "")


@pytest.mark.parametrize("nickname", ["x" * 10_000, "", "\x1b"])
def test_a_nickname_that_is_none_is_refused_with_its_line(home: Path, nickname: str) -> None:
    with_family(home)
    path = home / "family.toml"
    written = f'"{nickname}"'.replace("\x1b", "\\u001b")
    path.write_text(path.read_text("utf-8").replace('"Bean"', written), "utf-8")
    before = path.read_bytes()
    said = everything_said(home)
    assert "family.toml" in said and "nickname" in said and "Traceback" not in said
    assert path.read_bytes() == before


def test_a_terminal_without_letters_gets_question_marks_and_no_traceback(home: Path) -> None:
    with_family(home)
    environ = environment(home, LC_ALL="C", PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    done = subprocess.run([*WARMUP, "today"], env=environ, capture_output=True, check=True)
    assert b"Prompt 1 of" in done.stdout and b"Traceback" not in done.stderr


@pytest.mark.parametrize(("columns", "rows"), [(20, 5), (8, 3), (200, 4), (30, 60)])
def test_a_terminal_of_an_odd_size_does_not_stop_it(home: Path, columns: int, rows: int) -> None:
    with_family(home)
    with Terminal(WARMUP, environment(home), columns=columns, rows=rows) as terminal:
        terminal.wait(lambda text: len(text.split()) > 1)
        terminal.press("right", "up", "space", "4", "4", "q")
        assert terminal.finish() == 0


def test_the_screen_is_drawn_whole_where_the_locale_is_ascii(home: Path) -> None:
    with_family(home)
    environ = environment(home, LC_ALL="C", PYTHONIOENCODING="ascii", PYTHONUTF8="0", PYTHONCOERCECLOCALE="0")
    with Terminal(WARMUP, environ) as terminal:
        assert "→ next" in terminal.wait("? all keys")
        terminal.press("q")
        assert terminal.finish() == 0


def test_a_bad_file_of_own_prompts_stops_no_morning_and_a_mended_one_is_asked(home: Path) -> None:
    with_family(home)
    mended = '[[prompt]]\nsay = "Who [b]lives[/b] here?"\nanswer = "we do"\n'
    bad = mended.replace("answer", "anser")
    (home / "own.toml").write_text(bad, "utf-8")
    shown = opens(home, "says why.")
    assert "own.toml, line 3, can’t be used" in shown and "Traceback" not in shown
    assert (home / "own.toml").read_text("utf-8") == bad
    (home / "journal.db").unlink()
    (home / "own.toml").write_text(mended, "utf-8")
    done = subprocess.run(
        [*WARMUP, "today"], env=environment(home), capture_output=True, text=True, check=True
    )
    assert done.stderr == "" and done.stdout.count("Say: Who [b]lives[/b] here?\nAnswer: we do\n") == 1
