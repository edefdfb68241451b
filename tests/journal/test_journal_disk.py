"""A disk that takes no writing: the morning goes on, and is on the disk as soon as it can be."""

import datetime as dt
import os
import re
import sqlite3
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.journal.journals import DAY, ROWS, Hand, begun, clock, mark, marks_of, set_rough, step
from warmup.journal import schema
from warmup.journal.journal import Action, Journal, JournalProblem
from warmup.model import Mark


def test_a_full_disk_loses_nothing_of_the_morning(hand: Hand, full: Callable[[bool], None]) -> None:
    begun(hand(), marks=2).shut()
    full(True)
    journal = hand()
    assert journal.saving
    session = journal.start("Bean", DAY, "short", "x" * 50_000, ROWS)
    assert session == 2 and not journal.saving
    step(journal, "Bean", DAY, 2, 1, shown=1, at=0, mark=mark(Mark.NOT_YET))
    assert marks_of(journal, 2) == {0: Mark.NOT_YET} and marks_of(journal, 1) == {
        0: Mark.FLUENT,
        1: Mark.FLUENT,
    }
    assert len(hand(read_only=True).sessions_of("Bean", DAY)) == 1, "nothing of it is on the disk yet"
    full(False)
    step(journal, "Bean", DAY, 2, 2, shown=2, at=1, mark=mark(Mark.HESITATED))
    assert journal.saving
    assert marks_of(hand(), 2) == {0: Mark.NOT_YET, 1: Mark.HESITATED}
    assert [line.mark for line in hand().history("Bean")] == [
        Mark.FLUENT, Mark.FLUENT, None, Mark.NOT_YET, Mark.HESITATED, None
    ]  # fmt: skip


def test_a_session_that_got_another_number_keeps_it_when_the_disk_goes_away_once_more(
    hand: Hand, full: Callable[[bool], None], tmp_path: Path
) -> None:
    hand().shut()
    full(True)
    journal = hand()
    assert journal.start("Bean", DAY, "short", "x" * 50_000, ROWS) == 1 and not journal.saving
    full(False)
    begun(hand(now=clock(dt.datetime(2026, 11, 25, 7))))
    step(journal, "Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.NOT_YET))
    assert journal.saving and marks_of(hand(), 2) == {0: Mark.NOT_YET}, "another window has number 1"
    for at, kind in ((1, Mark.HESITATED), (2, Mark.SKIPPED)):
        journal.path.rename(tmp_path / "away")
        step(journal, "Bean", DAY, 1, at + 1, shown=at + 1, at=at, mark=mark(kind))
        assert not journal.saving
        (tmp_path / "away").rename(journal.path)
        journal.log("Bean", DAY, 1, Action("swap"))
        assert journal.saving
    step(journal, "Bean", DAY, 1, 4, shown=4, at=3, mark=mark())
    assert marks_of(hand(), 1) == {}
    assert list(marks_of(hand(), 2).values()) == [Mark.NOT_YET, Mark.HESITATED, Mark.SKIPPED, Mark.FLUENT]
    assert [row.session for row in hand().actions_of("Bean", DAY)] == [2, 2]


@pytest.mark.skipif(sys.platform != "linux", reason="the size of a process's files is limited so on Linux")
def test_the_system_refusing_to_grow_the_file(hand: Hand) -> None:
    import resource

    journal = begun(hand(), marks=1)
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    try:
        resource.setrlimit(resource.RLIMIT_FSIZE, (journal.path.stat().st_size, hard))
        journal.start("Bean", DAY, "daily", "x" * 100_000, ROWS)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
    assert not journal.saving and len(journal.sessions_of("Bean", DAY)) == 2
    assert len(hand().sessions_of("Bean", DAY)) == 1 and Journal.examine(hand().folder) == []
    set_rough(journal, "Bean", DAY, 2, True)
    assert journal.saving and hand().sessions_of("Bean", DAY)[1].rough


@pytest.mark.parametrize("what", ["mkdir", "connect"])
def test_a_folder_that_takes_no_writing(
    hand: Hand, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, what: str
) -> None:
    # The tests may run as a user whom no mode stops, so the refusal is put in by hand.
    def refuse(*_args: object, **_kwargs: object) -> None:
        if what == "mkdir":
            raise PermissionError(13, "Permission denied")
        raise sqlite3.OperationalError("attempt to write a readonly database")

    with monkeypatch.context() as patched:
        patched.setattr("pathlib.Path.mkdir" if what == "mkdir" else "warmup.journal.schema.connect", refuse)
        journal = begun(hand(tmp_path / "data"), marks=2)
        assert not journal.saving and "can't be used" in journal.notice
        assert marks_of(journal) == {0: Mark.FLUENT, 1: Mark.FLUENT}
    step(journal, "Bean", DAY, 1, 3, shown=3, at=2, mark=mark())
    assert journal.saving and len(marks_of(hand(tmp_path / "data"))) == 3


def test_a_journal_that_may_be_read_but_not_written(hand: Hand, monkeypatch: pytest.MonkeyPatch) -> None:
    begun(hand(), marks=2).shut()
    real = schema.connect

    def connect(path: Path, wait: int) -> sqlite3.Connection:
        connection = real(path, wait)
        connection.execute("PRAGMA query_only = ON")
        return connection

    with monkeypatch.context() as patched:
        patched.setattr(schema, "connect", connect)
        journal = hand()
        step(journal, "Bean", DAY, 1, 3, shown=3, at=2, mark=mark(Mark.SKIPPED))
        assert not journal.saving and len(marks_of(journal)) == 3, "what lay on the disk is read all the same"
    journal.shut()
    assert marks_of(hand())[2] is Mark.SKIPPED, "tried once more at the end"


def test_a_file_in_place_of_the_folder_and_a_folder_in_place_of_the_file(hand: Hand, tmp_path: Path) -> None:
    (tmp_path / "data").write_text("")
    journal = begun(hand(tmp_path / "data"), marks=1)
    assert not journal.saving and marks_of(journal) == {0: Mark.FLUENT}
    (tmp_path / "home" / "journal.db").mkdir(parents=True)
    assert not begun(hand(tmp_path / "home")).saving
    assert "can't be read" in Journal.examine(tmp_path / "home")[0]


@pytest.mark.skipif(os.name != "posix", reason="an open file can be taken away on POSIX systems only")
@pytest.mark.parametrize("everything", [False, True])
def test_a_journal_taken_away_while_it_is_open_is_not_made_anew(
    hand: Hand, tmp_path: Path, everything: bool
) -> None:
    """A memory stick pulled out: what would be written in its place lies on another disk."""
    stick, drawer = tmp_path / "stick", tmp_path / "drawer"
    journal = begun(hand(stick), marks=2)
    stick.rename(drawer)
    if not everything:
        stick.mkdir()
    for at in (2, 3):
        step(journal, "Bean", DAY, 1, at + 1, shown=at, at=at, mark=mark())
        assert len(marks_of(journal)) == at + 1 and not journal.saving
        assert list(tmp_path.rglob("journal*.db")) == [drawer / "journal.db"]
    assert "journal.db is gone from" in journal.trouble
    if not everything:
        stick.rmdir()
    drawer.rename(stick)
    set_rough(journal, "Bean", DAY, 1, True)
    assert journal.saving and not journal.trouble and marks_of(hand(stick)) == marks_of(journal)


def test_a_morning_gone_on_with_is_at_hand_when_its_journal_is_taken_away(hand: Hand, tmp_path: Path) -> None:
    begun(hand(tmp_path / "stick"), marks=2).shut()
    journal = hand(tmp_path / "stick")
    journal.keep_in_mind("Bean", DAY, 1)
    journal._store._disk.close() if journal._store._disk else None
    (tmp_path / "stick").rename(tmp_path / "drawer")
    step(journal, "Bean", DAY, 1, 3, shown=3, at=2, mark=mark())
    assert marks_of(journal) == dict.fromkeys(range(3), Mark.FLUENT) and len(journal.history("Bean")) == 4


@pytest.mark.skipif(os.name != "posix", reason="links are an administrator's matter elsewhere")
@pytest.mark.parametrize("name", ["journal.db", "data"])
def test_links_that_lead_in_a_circle_are_one_sentence(hand: Hand, tmp_path: Path, name: str) -> None:
    (tmp_path / name).symlink_to(name)
    folder = tmp_path if name == "journal.db" else tmp_path / "data"
    for read_only in (True, False):
        journal = hand(folder, read_only=read_only)
        assert re.fullmatch(r"journal\.db can't be used \([^()]+\)\.", journal.notice)
    assert marks_of(begun(journal, marks=1)) == {0: Mark.FLUENT} and not journal.saving
    assert len(Journal.examine(folder)) == 1 and "can't be read" in Journal.examine(folder)[0]
    with pytest.raises(JournalProblem, match="can't be read"):
        hand(tmp_path / "other").merge(folder / "journal.db")


@pytest.mark.slow
def test_another_program_that_holds_the_file_is_waited_for_a_little_and_then_worked_around(
    hand: Hand, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(schema, "WAIT", 300)
    journal = begun(hand(), marks=1)
    other = sqlite3.connect(journal.path, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    step(journal, "Bean", DAY, 1, 2, shown=2, at=1, mark=mark())
    step(journal, "Bean", DAY, 1, 3, shown=3, at=2, mark=mark())
    assert not journal.saving and len(marks_of(journal)) == 3
    other.execute("COMMIT")
    other.close()
    step(journal, "Bean", DAY, 1, 4, shown=3, at=3, mark=mark())
    assert journal.saving and len(marks_of(hand())) == 4


def test_a_number_taken_meanwhile_by_another_program(hand: Hand, full: Callable[[bool], None]) -> None:
    hand().shut()
    full(True)
    journal = hand()
    assert journal.start("Bean", DAY, "daily", "x" * 50_000, ROWS) == 1 and not journal.saving
    full(False)
    later = clock(dt.datetime(2026, 11, 25, 9))
    assert hand(now=later).start("Bean", DAY, "short", "{}", ROWS[:1]) == 1
    step(journal, "Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.NOT_YET))
    step(journal, "Bean", DAY, 1, 2, shown=2, at=1, mark=mark(Mark.HESITATED))
    assert journal.saving and marks_of(journal, 1) == {0: Mark.NOT_YET, 1: Mark.HESITATED}
    there = hand()
    assert [row.shape for row in there.sessions_of("Bean", DAY)] == ["daily", "short"], "in time"
    assert marks_of(there, 1) == {} and marks_of(there, 2) == {0: Mark.NOT_YET, 1: Mark.HESITATED}


def test_a_session_is_told_from_one_that_took_its_number(hand: Hand, full: Callable[[bool], None]) -> None:
    full(True)
    journal = hand()
    assert journal.start("Bean", DAY, "daily", "x" * 50_000, ROWS, action=Action("begin")) == 1
    full(False)
    other = hand(now=clock(dt.datetime(2026, 11, 25, 9)))
    assert other.start("Bean", DAY, "short", "{}", ROWS[:1], action=Action("other")) == 1
    step(journal, "Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.NOT_YET))
    assert journal.saving
    shapes = {row.session: row.shape for row in journal.sessions_of("Bean", DAY)}
    assert shapes == {1: "daily", 2: "short"}
    for number, shape in shapes.items():
        whole = journal.whole_of("Bean", DAY, number)
        assert whole is not None and whole.about.shape == shape
    actions = {(row.what, row.session) for row in journal.actions_of("Bean", DAY)}
    assert actions == {("begin", 1), ("other", 2)}
    assert [row.what for row in journal.actions_of("Bean", DAY, 1)] == ["begin"]
    assert journal.start("Bean", DAY, "review", "{}", ROWS) == 3


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such pipes")
@pytest.mark.parametrize("name", ["journal.db-journal", "journal.db-wal"])
def test_a_pipe_beside_the_journal_is_not_waited_for(hand: Hand, tmp_path: Path, name: str) -> None:
    journal = begun(hand())
    journal.shut()
    path = journal.path
    path.with_name(name).unlink(missing_ok=True)
    os.mkfifo(path.with_name(name))
    for journal in (hand(), hand(read_only=True)):
        assert journal.notice == f"journal.db can't be used ({name} is no file)."


def test_what_keeps_a_journal_from_being_read_is_said_when_it_is_opened(hand: Hand) -> None:
    """It was found by the first question, in the middle of a command, where nobody expected it."""
    journal = begun(hand())
    journal.shut()
    journal.path.with_name("journal.db-wal").symlink_to("/dev/zero")
    assert hand(read_only=True).notice == "journal.db can't be used (journal.db-wal is no file)."
    journal.path.with_name("journal.db-wal").unlink()
    journal.path.with_name("journal.db-journal").unlink(missing_ok=True)
    journal.path.with_name("journal.db-journal").mkdir()
    assert "journal.db-journal is no file" in hand(read_only=True).notice
