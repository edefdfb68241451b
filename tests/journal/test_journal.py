"""The journal: what was acknowledged is there again, letter for letter, and reading changes nothing."""

import datetime as dt
import os
import sqlite3
import stat
import subprocess
import sys
from itertools import count
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.journal.journals import (
    DAY,
    ROWS,
    Hand,
    begun,
    clock,
    close_session,
    mark,
    marks_of,
    open_session,
    set_rough,
    step,
    wholes,
)
from warmup.journal import schema
from warmup.journal.journal import NOT_BEGUN, Change, Journal, NewerJournal
from warmup.model import Asked, ItemId, Mark


def test_a_morning_of_which_only_the_opening_was_seen_has_shown_no_prompt(hand: Hand) -> None:
    journal = hand()
    journal.start("Bean", DAY, "daily", "{}", ROWS, furthest=NOT_BEGUN)
    set_rough(journal, "Bean", DAY, 1, True)
    row = open_session(hand(), "Bean", DAY)
    assert row is not None and (row.position, row.furthest) == (0, NOT_BEGUN)
    assert hand().history("Bean") == () and hand().dates_of("Bean") == set(), "nothing was asked"
    assert Journal.examine(journal.folder) == []
    step(journal, "Bean", DAY, 1, 0, shown=0)
    assert [line.item for line in hand().history("Bean")] == [ROWS[0][0]]


def test_a_morning_from_start_to_close(hand: Hand) -> None:
    journal = begun(hand())
    step(journal, "Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.HESITATED, cue=2))
    step(journal, "Bean", DAY, 1, 2, shown=2)
    set_rough(journal, "Bean", DAY, 1, True)
    row = open_session(hand(), "Bean", DAY)
    assert row is not None and (row.session, row.shape, row.routine) == (1, "daily", "{}")
    assert (row.position, row.furthest, row.rough, row.closed) == (2, 2, True, False)
    assert hand().history("Bean") == (
        Asked(DAY, ItemId(ROWS[0][0]), Mark.HESITATED, 2, True, False, "a"),
        Asked(DAY, ItemId(ROWS[1][0]), None, 0, True, False, "b"),
        Asked(DAY, ItemId(ROWS[2][0]), None, 0, True, False, "c"),
    ), "the fourth was never shown"
    close_session(journal, "Bean", DAY, 1)
    assert open_session(hand(), "Bean", DAY) is None and hand().sessions_of("Bean", DAY)[0].closed
    assert journal.history("Bean", before=DAY) == () and journal.history("Pip") == ()
    assert journal.dates_of("Bean") == {DAY} and Journal.examine(journal.folder) == []


def test_the_file_is_synced_at_every_commit_and_read_by_nobody_else(hand: Hand, tmp_path: Path) -> None:
    # What makes a committed row durable by https://www.sqlite.org/pragma.html: synchronous 2 is FULL.
    journal = hand(tmp_path / "new")
    disk = journal._store._disk
    assert disk is not None
    assert disk.execute("PRAGMA synchronous").fetchone() == (2,)
    assert disk.execute("PRAGMA journal_mode").fetchone() == ("truncate",)
    assert disk.execute("PRAGMA busy_timeout").fetchone() == (3000,)
    assert disk.execute("PRAGMA user_version").fetchone() == (schema.VERSION,)
    if os.name == "posix":
        assert [stat.S_IMODE(p.stat().st_mode) for p in (journal.path, journal.folder)] == [0o600, 0o700]


def test_a_later_mark_counts_though_the_clock_stands_still_or_goes_back(hand: Hand) -> None:
    journal = begun(hand(), marks=2)
    step(journal, "Bean", DAY, 1, 1, shown=2, at=0, mark=mark(Mark.NOT_YET, "2001-01-01T00:00:00"))
    assert marks_of(journal) == {0: Mark.NOT_YET, 1: Mark.FLUENT}
    assert journal.last_mark("Bean", DAY, 1) == 0
    step(journal, "Bean", DAY, 1, 0, shown=2, at=0, mark=mark(None))
    assert hand().last_mark("Bean", DAY, 1) == 1 and marks_of(journal)[0] is None
    assert journal.history("Bean")[0].mark is None, "a mark taken back leaves the prompt unmarked"


@pytest.mark.parametrize("text", ["soon", "0001-01-01", "9999-12-31T23:59:59"])
def test_a_mark_with_a_strange_moment_is_kept(hand: Hand, text: str) -> None:
    journal = begun(hand())
    step(journal, "Bean", DAY, 1, 1, shown=1, at=0, mark=mark(at=text))
    step(journal, "Bean", DAY, 1, 2, shown=2, at=1, mark=mark())
    assert marks_of(journal) == {0: Mark.FLUENT, 1: Mark.FLUENT}


def test_prompts_put_in_the_place_of_others_do_not_count_as_shown(hand: Hand) -> None:
    journal = begun(hand(), marks=3)
    step(journal, "Bean", DAY, 1, 1, shown=3)
    journal.change("Bean", DAY, 1, Change(2, "[]", [("coins/penny", "e")]))
    assert marks_of(journal) == {0: Mark.FLUENT, 1: Mark.FLUENT}
    assert [line.item for line in journal.history("Bean")] == [ROWS[0][0], ROWS[1][0]]
    row = journal.sessions_of("Bean", DAY)[0]
    assert (row.routine, row.position, row.furthest) == ("[]", 1, 1)
    journal.change("Bean", DAY, 1, Change(1, "[1]", [("coins/nickel", "f")]))
    assert [line.item for line in journal.history("Bean")] == [ROWS[0][0], "coins/nickel"]


def test_sessions_of_one_date_are_numbered_though_begun_at_one_moment(hand: Hand) -> None:
    journal, other = hand(), hand()
    assert [j.start("Bean", DAY, "daily", "{}", ROWS) for j in (journal, other, journal)] == [1, 2, 3]
    journal.start("Pip", DAY, "daily", "{}", ROWS, [mark(at="2026-11-25T09:00:00")] * 4)
    assert journal.sessions_of("Pip", DAY)[0].closed and len(journal.history("Pip")) == 4
    assert len({whole.about.started for whole in wholes(journal)}) == 3


@pytest.mark.slow
def test_reading_twice_the_mornings_is_twice_the_work_at_most(hand: Hand, tmp_path: Path) -> None:
    def work(mornings: int) -> int:
        journal = hand(tmp_path / str(mornings))
        for n in range(mornings):
            rows = [(f"count-on/{n}", "a") for n in range(9)]
            day = DAY + dt.timedelta(n)
            journal.start("Bean", day, "daily", "x" * 12_000, rows, [mark()] * 9)
        steps = count()
        disk = journal._store._disk
        assert disk is not None
        disk.set_progress_handler(lambda: next(steps) < 0, 100)
        history = journal.history("Bean")
        assert len(history) == 9 * mornings
        assert [line.date for line in history] == sorted(line.date for line in history)
        return next(steps)

    year, half = work(144), work(72)
    assert 0 < half < year < 2.2 * half, f"{year}, {half} hundred steps of SQLite's machine"


@pytest.mark.slow
@settings(database=None, derandomize=True, deadline=None, max_examples=40)
@given(
    st.text(st.characters(codec="utf-8"), max_size=50), st.text(st.characters(codec="utf-8"), max_size=200)
)
def test_names_and_routines_are_kept_letter_for_letter(
    tmp_path_factory: pytest.TempPathFactory, child: str, routine: str
) -> None:
    folder = tmp_path_factory.mktemp("letters")
    journal = Journal.open(folder, clock())
    journal.start(child, DAY, "daily", routine, [(routine, child)])
    journal.shut()
    again = Journal.open(folder, clock())
    assert again.sessions_of(child, DAY)[0].routine == routine and not again.notice
    assert again.history(child)[0].item == routine
    again.shut()


def test_reading_alone_makes_nothing_and_changes_nothing(hand: Hand, tmp_path: Path) -> None:
    assert hand(tmp_path / "none", read_only=True).history("Bean") == () and not (tmp_path / "none").exists()
    begun(hand(), marks=1).shut()
    before = {path: path.read_bytes() for path in tmp_path.rglob("*.*")}
    journal = hand(read_only=True)
    assert len(journal.history("Bean")) == 2 and Journal.examine(tmp_path) == []
    journal.shut()
    assert {path: path.read_bytes() for path in tmp_path.rglob("*.*")} == before


def test_a_write_cut_short_is_no_damage(hand: Hand, tmp_path: Path) -> None:
    begun(hand(), marks=2).shut()
    cut_short = (
        "import os, sqlite3, sys\n"
        "db = sqlite3.connect(sys.argv[1], isolation_level=None)\n"
        "db.execute('PRAGMA journal_mode = TRUNCATE'), db.execute('PRAGMA cache_size = 1')\n"
        "db.execute('BEGIN IMMEDIATE')\n"
        "db.execute('DELETE FROM marks')\n"
        "for n in range(200):\n"
        "    db.execute(\"INSERT INTO prompts VALUES ('x', '2026-01-01', 1, ?, ?, '')\", (n, 'x' * 500))\n"
        "os.kill(os.getpid(), 9) if os.name == 'posix' else os._exit(9)\n"
    )
    subprocess.run([sys.executable, "-c", cut_short, tmp_path / "journal.db"], check=False)
    assert (tmp_path / "journal.db-journal").stat().st_size > 0, "it was cut short in the middle"
    before = {path: path.read_bytes() for path in tmp_path.rglob("*.*")}
    assert Journal.examine(tmp_path) == [] and len(hand(read_only=True).history("Bean")) == 3
    assert {path: path.read_bytes() for path in tmp_path.rglob("*.*")} == before
    journal = hand()
    assert not journal.notice and marks_of(journal) == {0: Mark.FLUENT, 1: Mark.FLUENT}


@pytest.mark.parametrize("version", [schema.VERSION + 1, 7, 999])
def test_a_newer_journal_is_left_byte_for_byte(hand: Hand, tmp_path: Path, version: int) -> None:
    journal = begun(hand(), marks=1)
    journal.shut()
    db = sqlite3.connect(journal.path)
    db.execute(f"PRAGMA user_version = {version}")
    db.close()
    before = {path: path.read_bytes() for path in tmp_path.rglob("*.*")}
    for read_only in (False, True):
        with pytest.raises(NewerJournal, match="newer version of warmup"):
            hand(read_only=read_only)
    assert "newer version" in Journal.examine(tmp_path)[0]
    assert {path: path.read_bytes() for path in tmp_path.rglob("*.*")} == before
