"""The journal looked at from a second window: what is found, and that nothing is written or held."""

import datetime as dt
import os
import shutil
import sqlite3
import sys
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from warmup.config.family import MOST_CHILDREN
from warmup.journal import at_hand, watching
from warmup.journal.at_hand import OPENING, AtHand, leave_note, note_bytes, note_in
from warmup.journal.journal import Change, Journal, NoteRow
from warmup.journal.watching import Found, Watch

TODAY = dt.date(2026, 11, 25)
OPENED = dt.datetime(2026, 11, 25, 8)
ROWS = [("a/one", ""), ("a/two", "")]


class Clock:
    """A clock that goes on a second at every look."""

    def __init__(self) -> None:
        self.moment = OPENED

    def __call__(self) -> dt.datetime:
        self.moment += dt.timedelta(seconds=1)
        return self.moment


@pytest.fixture
def journal(home: Path) -> Journal:
    """An empty journal."""
    return Journal.open(home, Clock())


def begun(journal: Journal, child: str = "Bean", date: dt.date = TODAY, routine: str = "{}") -> int:
    return journal.start(child, date, "daily", routine, ROWS)


def stands(watch: Watch) -> tuple[str, str, int] | None:
    """Whose session of which date is found, and where it stands."""
    found = watch.found
    return found and (found.key[0], found.key[1], found.about.position)


def watched(home: Path, child: str = "", today: dt.date = TODAY) -> Found | None:
    """What a first look finds."""
    watch = Watch(home, OPENED, child)
    watch.look(today)
    return watch.found


def test_it_follows_from_before_there_is_a_journal(home: Path) -> None:
    watch = Watch(home, OPENED)
    assert watch.look(TODAY) and watch.found is None and not watch.look(TODAY)
    assert not home.exists()
    journal = Journal.open(home, Clock())
    assert watch.look(TODAY) and watch.found is None
    number = begun(journal)
    assert watch.look(TODAY) and stands(watch) == ("Bean", "2026-11-25", 0)
    journal.change("Bean", TODAY, number, Change(position=1))
    assert watch.look(TODAY) and stands(watch) == ("Bean", "2026-11-25", 1)
    journal.change("Bean", TODAY, number, Change(closed=True))
    assert watch.look(TODAY) and watch.found and watch.found.about.closed


def test_nothing_is_opened_while_nothing_changes(
    home: Path, journal: Journal, monkeypatch: pytest.MonkeyPatch
) -> None:
    begun(journal)
    watch = Watch(home, OPENED)
    assert watch.look(TODAY)
    monkeypatch.setattr(watching, "look_at", lambda *_: pytest.fail("the file was opened"))
    assert not any(watch.look(TODAY) for _ in range(20))


def test_a_change_is_seen_where_the_time_of_the_file_says_nothing(home: Path, journal: Journal) -> None:
    """Some disks keep times to two seconds."""
    number, path = begun(journal), home / "journal.db"
    os.utime(path, ns=(0, 0))
    watch = Watch(home, OPENED)
    watch.look(TODAY)
    journal.change("Bean", TODAY, number, Change(position=1))
    os.utime(path, ns=(0, 0))
    assert watch.look(TODAY) and stands(watch) == ("Bean", "2026-11-25", 1)


def test_the_window_that_did_something_last_is_followed(home: Path, journal: Journal) -> None:
    begun(journal, "Fern")
    number = begun(journal, "Bean")
    watch, ferns = Watch(home, OPENED), Watch(home, OPENED, "Fern")
    watch.look(TODAY), ferns.look(TODAY)
    assert stands(watch) == ("Bean", "2026-11-25", 0) and stands(ferns) == ("Fern", "2026-11-25", 0)
    journal.change("Fern", TODAY, 1, Change(position=1))
    watch.look(TODAY), ferns.look(TODAY)
    assert stands(watch) == ("Fern", "2026-11-25", 1) == stands(ferns)
    journal.change("Bean", TODAY, number, Change(position=2))
    watch.look(TODAY), ferns.look(TODAY)
    assert stands(watch) == ("Bean", "2026-11-25", 2) and stands(ferns) == ("Fern", "2026-11-25", 1)


def test_as_many_children_as_a_family_may_have_are_followed(home: Path, journal: Journal) -> None:
    names = [f"Child {number:02}" for number in range(MOST_CHILDREN)]
    for name in names:
        begun(journal, name)
    found = watched(home)
    assert found is not None and found.key[0] == names[-1]


def test_a_note_on_a_past_morning_takes_the_child_s_window_nowhere(home: Path, journal: Journal) -> None:
    yesterday = TODAY - dt.timedelta(1)
    journal.change("Bean", yesterday, begun(journal, date=yesterday), Change(closed=True))
    number = begun(journal)
    journal.change("Bean", yesterday, 1, Change(notes={0: NoteRow("Six.")}))
    watch = Watch(home, OPENED)
    assert watch.look(TODAY) and stands(watch) == ("Bean", "2026-11-25", 0)
    journal.change("Bean", TODAY, number, Change(closed=True))
    journal.change("Bean", yesterday, 1, Change(closed=False))
    assert watch.look(TODAY) and stands(watch) == ("Bean", "2026-11-24", 0), "somebody goes on with it"


def test_yesterdays_morning_counts_only_while_somebody_goes_on_with_it(home: Path, journal: Journal) -> None:
    number = begun(journal)
    tomorrow = TODAY + dt.timedelta(1)
    watch = Watch(home, dt.datetime(2026, 11, 26, 8))
    watch.look(tomorrow)
    assert watch.found is None
    across = Watch(home, OPENED)
    across.look(TODAY)
    assert across.look(tomorrow) and stands(across) == ("Bean", "2026-11-25", 0)
    journal.change("Bean", TODAY, number, Change(position=1))
    assert across.look(tomorrow) and stands(across) == ("Bean", "2026-11-25", 1)


def test_while_another_writes_what_was_seen_stays(home: Path, journal: Journal) -> None:
    number = begun(journal)
    watch = Watch(home, OPENED)
    watch.look(TODAY)
    journal.change("Bean", TODAY, number, Change(position=1))
    with closing(sqlite3.connect(home / "journal.db", isolation_level=None)) as writer:
        writer.execute("BEGIN EXCLUSIVE")
        assert not watch.look(TODAY) and stands(watch) == ("Bean", "2026-11-25", 0)
        writer.execute("ROLLBACK")
    assert watch.look(TODAY) and stands(watch) == ("Bean", "2026-11-25", 1)


@pytest.mark.skipif(sys.platform != "linux", reason="only Linux lists the open files of a process")
def test_no_lock_and_no_file_is_held_between_two_looks(home: Path, journal: Journal) -> None:
    begun(journal)
    journal.shut()
    watch = Watch(home, OPENED)
    watch.look(TODAY)
    files = [fd.readlink() for fd in Path("/proc/self/fd").iterdir() if fd.exists()]
    assert files and not [file for file in files if file.is_relative_to(home)]
    with closing(sqlite3.connect(home / "journal.db", timeout=0, isolation_level=None)) as writer:
        writer.execute("BEGIN EXCLUSIVE")


def test_the_question_goes_along_the_index(home: Path, journal: Journal) -> None:
    for day in range(30):
        begun(journal, f"Child {day % 3}", TODAY - dt.timedelta(day))
    values = {"today": TODAY.isoformat(), "oldest": "2026-11-18", "since": "2026", "child": ""}
    with closing(sqlite3.connect(home / "journal.db")) as db:
        steps = [row[3] for row in db.execute(f"EXPLAIN QUERY PLAN {watching._QUESTION}", values)]
    assert any(step.startswith("SEARCH sittings USING INDEX") for step in steps)
    assert not [step for step in steps if step.startswith("SCAN sittings")]


# -- files that are none, or no whole ones


def _rewritten(change: Callable[[sqlite3.Connection], object]) -> Callable[[Path], None]:
    def rewrite(path: Path) -> None:
        with closing(sqlite3.connect(path, isolation_level=None)) as db:
            change(db)

    return rewrite


def _endless(db: sqlite3.Connection) -> None:
    columns = [row[1] for row in db.execute("PRAGMA table_info(sittings)")]
    db.execute("DROP TABLE sittings")
    names = ", ".join(f"'x' AS {name}" for name in columns)
    db.execute(
        f"CREATE VIEW sittings AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) "
        f"SELECT {names} FROM n"
    )


FILES: dict[str, Callable[[Path], object]] = {
    "no database": lambda path: path.write_bytes(b"\x00\xff rubbish" * 500),
    "cut short": lambda path: path.write_bytes(path.read_bytes()[:5000]),
    "garbage in the middle": lambda path: path.write_bytes(path.read_bytes()[:4096] + b"\xa5" * 40000),
    "empty": lambda path: path.write_bytes(b""),
    "newer": _rewritten(lambda db: db.execute("PRAGMA user_version = 99")),
    "no table": _rewritten(lambda db: db.execute("DROP TABLE sittings")),
    "a view without end": _rewritten(_endless),
    "odd values": _rewritten(lambda db: db.execute("UPDATE sittings SET started = x'ff'")),
}


@pytest.mark.parametrize("spoil", FILES.values(), ids=FILES.keys())
def test_what_is_no_journal_shows_nothing_and_stays_as_it_is(
    spoil: Callable[[Path], object], home: Path, journal: Journal
) -> None:
    begun(journal)
    journal.shut()
    watch, path = Watch(home, OPENED), home / "journal.db"
    watch.look(TODAY)
    assert watch.found
    shutil.copy(path, home / "kept.db")
    spoil(path)
    before = {each: each.read_bytes() for each in home.rglob("*.*")}
    assert watch.look(TODAY) and watch.found is None
    assert {each: each.read_bytes() for each in home.rglob("*.*")} == before
    (home / "kept.db").replace(path)
    assert watch.look(TODAY) and stands(watch) == ("Bean", "2026-11-25", 0), (
        "a journal put back is not followed"
    )


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes with a name here")
@pytest.mark.parametrize("name", ["journal.db", at_hand.NAME])
def test_a_pipe_in_the_place_of_a_file_is_never_waited_for(name: str, home: Path) -> None:
    home.mkdir()
    os.mkfifo(home / name)
    assert watched(home) is None
    (home / name).unlink()
    (home / name).mkdir()
    assert watched(home) is None


def test_a_write_cut_short_is_not_read_as_done_and_not_rolled_back_from_here(
    home: Path, journal: Journal, tmp_path: Path
) -> None:
    """What a power cut leaves: pages half written, and the rollback journal beside them."""
    begun(journal)
    path = home / "journal.db"
    with closing(sqlite3.connect(path, isolation_level=None)) as writer:
        writer.execute("PRAGMA cache_spill = 1")
        writer.execute("PRAGMA cache_size = 1")
        writer.execute("BEGIN IMMEDIATE")
        writer.execute("UPDATE sittings SET position = 1")
        for n in range(200):
            writer.execute("INSERT INTO prompts VALUES ('Bean', '2026-11-25', 9, ?, ?, '')", (n, "x" * 3000))
        for each in home.glob("journal.*"):
            shutil.copy(each, tmp_path / each.name)
        writer.execute("ROLLBACK")
    assert (tmp_path / "journal.db-journal").stat().st_size > 512, "nothing to roll back"
    before = {each: each.read_bytes() for each in tmp_path.rglob("*.*")}
    assert watched(tmp_path) is None
    assert {each: each.read_bytes() for each in tmp_path.rglob("*.*")} == before
    Journal.open(tmp_path, Clock()).shut()
    found = watched(tmp_path)
    assert found and found.about.position == 0


# -- the note beside it


def test_a_note_counts_only_for_the_prompt_at_hand(home: Path, journal: Journal) -> None:
    number = begun(journal)
    key = ("Bean", TODAY.isoformat(), number)
    watch = Watch(home, OPENED)
    for position, cue, fits in ((0, 2, True), (1, 2, False), (OPENING, 0, True)):
        leave_note(home, AtHand(key, position, cue))
        assert watch.look(TODAY) and watch.found
        assert (watch.found.note == AtHand(key, position, cue)) is fits
    journal.change("Bean", TODAY, number, Change(position=1))
    watch.look(TODAY)
    assert watch.found and watch.found.note is None, "the opening does not come before the second prompt"
    leave_note(home, AtHand(("Fern", *key[1:]), 1, 2))
    watch.look(TODAY)
    assert watch.found and watch.found.note is None
    leave_note(home, None)
    assert note_bytes(home) == b"" and watch.look(TODAY)


@pytest.mark.parametrize(
    "raw", [b"", b"{}", b"[1, 2]", b'["Bean", "2026-11-25", 1, "0", 2]', b"[" * 512, b"\xff"]
)
def test_what_is_no_note_says_nothing(raw: bytes) -> None:
    assert note_in(raw) is None


def test_the_note_is_this_accounts_alone_and_too_long_a_name_leaves_none(home: Path) -> None:
    home.mkdir()
    leave_note(home, AtHand(("x" * 600, TODAY.isoformat(), 1), 0, 1))
    assert not (home / at_hand.NAME).exists()
    leave_note(home, AtHand(("Bean", TODAY.isoformat(), 1), 0, 1))
    if os.name == "posix":
        assert (home / at_hand.NAME).stat().st_mode & 0o777 == 0o600


def test_no_note_is_left_where_no_journal_is_or_none_is_needed(home: Path, journal: Journal) -> None:
    number = begun(journal)
    journal.at_hand("Bean", TODAY, number, 0, 0)
    assert note_bytes(home) == b""
    journal.at_hand("Bean", TODAY, number, 0, 1)
    assert note_bytes(home)
    (home / at_hand.NAME).unlink()
    (home / "journal.db").rename(home / "elsewhere.db")
    journal.at_hand("Bean", TODAY, number, 0, 2)
    assert note_bytes(home) == b""
