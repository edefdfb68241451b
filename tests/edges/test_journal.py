"""The journal: what was acknowledged is there again, whatever happens to the disk or the program."""

import datetime as dt
import os
import random
import sqlite3
import stat
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from warmup import records, store
from warmup.journal import Journal, JournalProblem, MarkRow, NewerJournal
from warmup.morning import Asked, Mark
from warmup.records import BESIDE, About, Whole, merged

DAY = dt.date(2026, 11, 25)
ROWS = [("count-on/from-7", "a"), ("make-ten/7+3", "b"), ("month/after-december", "c"), ("coins/dime", "d")]
Hand = Callable[..., Journal]


def clock(start: dt.datetime = dt.datetime(2026, 11, 25, 8)) -> Callable[[], dt.datetime]:
    """A clock that stands still: order must come from the journal itself."""
    return lambda: start


STILL = clock()


@pytest.fixture
def hand(tmp_path: Path) -> Iterator[Hand]:
    """Opens journals and shuts them in the end."""
    held: list[Journal] = []

    def open_one(
        folder: Path = tmp_path, now: Callable[[], dt.datetime] = STILL, *, read_only: bool = False
    ) -> Journal:
        held.append(Journal.open(folder, now, read_only=read_only))
        return held[-1]

    yield open_one
    for journal in held:
        journal.shut()


def mark(kind: Mark | None = Mark.FLUENT, at: str = "", cue: int = 0) -> MarkRow:
    return MarkRow(kind, cue, "", False, at)


def marks_of(journal: Journal, sitting: int = 1) -> dict[int, Mark | None]:
    return {at: row.mark for at, row in journal.marks_of("Bean", DAY, sitting).items()}


def begun(journal: Journal, marks: int = 0) -> Journal:
    """A sitting begun, and its first prompts marked."""
    sitting = journal.start("Bean", DAY, "daily", "{}", ROWS)
    for at in range(marks):
        journal.step("Bean", DAY, sitting, at + 1, shown=at + 1, at=at, mark=mark())
    return journal


# -- what is kept


def test_a_morning_from_start_to_close(hand: Hand) -> None:
    journal = begun(hand())
    journal.step("Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.HESITATED, cue=2))
    journal.step("Bean", DAY, 1, 2, shown=2)
    journal.set_rough("Bean", DAY, 1, True)
    row = hand().open_sitting("Bean", DAY)
    assert row is not None and (row.sitting, row.shape, row.routine) == (1, "daily", "{}")
    assert (row.position, row.furthest, row.rough, row.closed) == (2, 2, True, False)
    assert hand().history("Bean") == (
        Asked(DAY, ROWS[0][0], Mark.HESITATED, 2, True, False, "a"),
        Asked(DAY, ROWS[1][0], None, 0, True, False, "b"),
        Asked(DAY, ROWS[2][0], None, 0, True, False, "c"),
    ), "the fourth was never shown"
    journal.close_sitting("Bean", DAY, 1)
    assert hand().open_sitting("Bean", DAY) is None and hand().sittings_of("Bean", DAY)[0].closed
    assert journal.history("Bean", before=DAY) == () and journal.history("Pip") == ()
    assert journal.dates_with_record("Bean") == {DAY} and journal.check() == []


def test_the_file_is_synced_at_every_commit_and_read_by_nobody_else(hand: Hand, tmp_path: Path) -> None:
    # What makes a committed row durable by https://www.sqlite.org/pragma.html: synchronous 2 is FULL.
    journal = hand(tmp_path / "new")
    disk = journal._store._disk
    assert disk is not None
    assert disk.execute("PRAGMA synchronous").fetchone() == (2,)
    assert disk.execute("PRAGMA journal_mode").fetchone() == ("truncate",)
    assert disk.execute("PRAGMA busy_timeout").fetchone() == (3000,)
    assert disk.execute("PRAGMA user_version").fetchone() == (records.VERSION,)
    if os.name == "posix":
        assert [stat.S_IMODE(p.stat().st_mode) for p in (journal.path, journal.folder)] == [0o600, 0o700]


def test_a_later_mark_counts_though_the_clock_stands_still_or_goes_back(hand: Hand) -> None:
    journal = begun(hand(), marks=2)
    journal.step("Bean", DAY, 1, 1, shown=2, at=0, mark=mark(Mark.NOT_YET, "2001-01-01T00:00:00"))
    assert marks_of(journal) == {0: Mark.NOT_YET, 1: Mark.FLUENT}
    assert journal.last_mark("Bean", DAY, 1) == 0
    journal.step("Bean", DAY, 1, 0, shown=2, at=0, mark=mark(None))
    assert hand().last_mark("Bean", DAY, 1) == 1 and marks_of(journal)[0] is None
    assert journal.history("Bean")[0].mark is None, "a mark taken back leaves the prompt unmarked"


@pytest.mark.parametrize("text", ["soon", "0001-01-01", "9999-12-31T23:59:59"])
def test_a_mark_with_a_strange_moment_is_kept(hand: Hand, text: str) -> None:
    journal = begun(hand())
    journal.step("Bean", DAY, 1, 1, shown=1, at=0, mark=mark(at=text))
    journal.step("Bean", DAY, 1, 2, shown=2, at=1, mark=mark())
    assert marks_of(journal) == {0: Mark.FLUENT, 1: Mark.FLUENT}


def test_prompts_put_in_the_place_of_others_do_not_count_as_shown(hand: Hand) -> None:
    journal = begun(hand(), marks=3)
    journal.step("Bean", DAY, 1, 1, shown=3)
    journal.replace("Bean", DAY, 1, 2, "[]", [("coins/penny", "e")])
    assert marks_of(journal) == {0: Mark.FLUENT, 1: Mark.FLUENT}
    assert [line.item for line in journal.history("Bean")] == [ROWS[0][0], ROWS[1][0]]
    row = journal.sittings_of("Bean", DAY)[0]
    assert (row.routine, row.position, row.furthest) == ("[]", 1, 1)
    journal.replace("Bean", DAY, 1, 1, "[1]", [("coins/nickel", "f")])
    assert [line.item for line in journal.history("Bean")] == [ROWS[0][0], "coins/nickel"]


def test_sittings_of_one_date_are_numbered_though_begun_at_one_moment(hand: Hand) -> None:
    journal, other = hand(), hand()
    assert [j.start("Bean", DAY, "daily", "{}", ROWS) for j in (journal, other, journal)] == [1, 2, 3]
    journal.add_whole("Pip", DAY, "daily", "{}", ROWS, [mark(at="2026-11-25T09:00:00")] * 4)
    assert journal.sittings_of("Pip", DAY)[0].closed and len(journal.history("Pip")) == 4
    assert len({whole.about.started for whole in wholes(journal)}) == 3


def wholes(journal: Journal, child: str = "Bean") -> list[Whole]:
    db = journal._store._memory or journal._store._disk
    assert db is not None
    found = [
        records.read_whole(db, (child, DAY.isoformat(), r.sitting)) for r in journal.sittings_of(child, DAY)
    ]
    return [whole for whole in found if whole is not None]


def test_a_year_is_read_in_a_few_milliseconds(hand: Hand, tmp_path: Path) -> None:
    journal = hand()
    days = [DAY + dt.timedelta(n) for n in range(144)]
    for day in days:
        rows = [(f"count-on/{n}", "a") for n in range(9)]
        journal.add_whole("Bean", day, "daily", "x" * 12_000, rows, [mark()] * 9)
    begin = time.perf_counter()
    history = hand().history("Bean")
    took = time.perf_counter() - begin
    assert len(history) == 1296 and [line.date for line in history] == sorted(line.date for line in history)
    assert took < 0.2, f"{took * 1000:.0f} ms to open a year's journal and read it (usually 20)"


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
    assert again.sittings_of(child, DAY)[0].routine == routine and not again.notice
    assert again.history(child)[0].item == routine
    again.shut()


# -- damage


def aside(folder: Path) -> list[Path]:
    return sorted(folder.glob("journal-damaged-*.db"))


DAMAGE: dict[str, Callable[[bytes], bytes]] = {
    "noise": lambda _raw: random.Random(1).randbytes(9000),
    "text": lambda _raw: b"Dear journal, today was a good day.\n" * 100,
    "one page": lambda raw: raw[:4096],
    "half": lambda raw: raw[: len(raw) // 2],
    "a hundred bytes": lambda raw: raw[:100],
    "garbage in the middle": lambda raw: raw[:6000] + b"\xa5" * 4000 + raw[10000:],
    "first page": lambda raw: raw[:200] + b"\xff" * 3000 + raw[3200:],
    "version": lambda raw: raw[:60] + b"\x8f\x3a\x00\x01" + raw[64:],
    "another program's": lambda _raw: foreign(),
}


def foreign() -> bytes:
    db = sqlite3.connect(":memory:")
    db.execute("CREATE TABLE sittings (x)")
    raw = db.serialize()
    db.close()
    return raw


@pytest.mark.parametrize("kind", DAMAGE)
def test_a_damaged_journal_is_set_aside_and_a_new_one_begun(hand: Hand, tmp_path: Path, kind: str) -> None:
    journal = begun(hand(), marks=3)
    journal.shut()
    damaged = DAMAGE[kind](journal.path.read_bytes())
    journal.path.write_bytes(damaged)
    assert "damaged" in Journal.examine(tmp_path)[0] and journal.path.read_bytes() == damaged
    looked = hand(read_only=True)
    assert looked.notice and looked.history("Bean") == () and not aside(tmp_path)
    new = hand()
    assert new.saving and new.check() == [] and "kept as journal-damaged-20261125-080000.db" in new.notice
    assert [path.read_bytes() for path in aside(tmp_path)] == [damaged]
    begun(new, marks=1)
    assert len(hand().history("Bean")) >= 2 and not hand().notice


def test_what_can_be_read_of_a_damaged_journal_is_kept(hand: Hand, tmp_path: Path) -> None:
    journal = hand()
    days = [DAY + dt.timedelta(n) for n in range(40)]
    for day in days:
        journal.add_whole("Bean", day, "daily", "x" * 9000, ROWS, [mark()] * 4)
    journal.shut()
    raw = bytearray(journal.path.read_bytes())
    middle = len(raw) // 2 // 4096 * 4096
    raw[middle : middle + 8192] = b"\xa5" * 8192
    journal.path.write_bytes(raw)
    new = hand()
    kept = new.history("Bean")
    assert (
        "mornings: " in new.notice
        and 100 <= len(kept) < 160
        and {line.mark for line in kept} == {Mark.FLUENT}
    )
    assert new.check() == []


def test_a_write_cut_short_beside_a_damaged_journal_is_not_played_into_the_new_one(
    hand: Hand, tmp_path: Path
) -> None:
    journal = begun(hand())
    journal.shut()
    beside = journal.path.with_name("journal.db-journal")
    journal.path.write_bytes(DAMAGE["version"](journal.path.read_bytes()))
    beside.write_bytes(b"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7" + b"\0" * 600)
    new = begun(hand(), marks=1)
    assert new.check() == [] and len(new.sittings_of("Bean", DAY)) == 2 and len(marks_of(new, 2)) == 1
    moved = tmp_path / "journal-damaged-20261125-080000.db-journal"
    assert moved.read_bytes().startswith(b"\xd9\xd5") and (not beside.exists() or beside.stat().st_size == 0)


def test_a_second_damage_in_the_same_second_writes_over_nothing(hand: Hand, tmp_path: Path) -> None:
    for content in (b"one", b"two", b"three"):
        (tmp_path / "journal.db").write_bytes(content * 99)
        hand().shut()
    assert {path.read_bytes()[:3] for path in aside(tmp_path)} == {b"one", b"two", b"thr"}


@settings(database=None, derandomize=True, deadline=None, max_examples=60)
@given(st.data())
def test_any_bytes_anywhere_never_stop_the_morning(
    tmp_path_factory: pytest.TempPathFactory, data: Any
) -> None:
    folder = tmp_path_factory.mktemp("bytes")
    journal = begun(Journal.open(folder, clock()), marks=3)
    journal.shut()
    raw = bytearray(journal.path.read_bytes())
    at = data.draw(st.integers(0, len(raw) - 1))
    new = data.draw(st.binary(min_size=1, max_size=80))
    raw[at : at + len(new)] = new
    journal.path.write_bytes(raw)
    try:
        again = Journal.open(folder, clock())
    except NewerJournal:
        assert 60 - len(new) < at < 64 and journal.path.read_bytes() == raw
        return
    begun(again, marks=1)
    again.history("Bean"), again.dates_with_record("Bean")
    assert again.saving and again.check() == []
    again.shut()


def test_damage_that_shows_in_the_middle_of_a_morning_loses_no_mark_of_it(hand: Hand, tmp_path: Path) -> None:
    journal = begun(hand(), marks=2)
    raw = bytearray(journal.path.read_bytes())
    raw[:] = b"\xa5" * len(raw)
    journal.path.write_bytes(raw)
    journal.step("Bean", DAY, 1, 3, shown=3, at=2, mark=mark(Mark.NOT_YET))
    expected = {0: Mark.FLUENT, 1: Mark.FLUENT, 2: Mark.NOT_YET}
    assert marks_of(journal) == expected and journal.saving and len(aside(tmp_path)) == 1
    assert marks_of(hand()) == expected


def test_an_empty_file_is_a_new_journal(hand: Hand, tmp_path: Path) -> None:
    (tmp_path / "journal.db").touch()
    assert begun(hand(), marks=1).saving and not aside(tmp_path)


# -- a newer version


@pytest.mark.parametrize("version", [2, 7, 999])
def test_a_newer_journal_is_left_byte_for_byte(hand: Hand, tmp_path: Path, version: int) -> None:
    journal = begun(hand(), marks=1)
    journal.shut()
    db = sqlite3.connect(journal.path)
    db.execute(f"PRAGMA user_version = {version}")
    db.close()
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    for read_only in (False, True):
        with pytest.raises(NewerJournal, match="newer version of warmup"):
            hand(read_only=read_only)
    assert "newer version" in Journal.examine(tmp_path)[0]
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == before


# -- a disk that takes no writing


@pytest.fixture
def full(monkeypatch: pytest.MonkeyPatch) -> Callable[[bool], None]:
    """Makes every journal opened from now on as large as it may be, or not.

    A small file system is not to be had in a test, so SQLite's own ceiling stands in for the full disk:
    the error, and when it comes, are those of a full disk.
    """
    real, is_full = records.connect, [False]

    def connect(path: Path, wait: int) -> sqlite3.Connection:
        connection = real(path, wait)
        if is_full[0]:
            (pages,) = connection.execute("PRAGMA page_count").fetchone()
            connection.execute(f"PRAGMA max_page_count = {max(1, pages)}")
        return connection

    def switch(on: bool) -> None:
        is_full[0] = on

    monkeypatch.setattr(records, "connect", connect)
    return switch


def test_a_full_disk_loses_nothing_of_the_morning(hand: Hand, full: Callable[[bool], None]) -> None:
    begun(hand(), marks=2).shut()
    full(True)
    journal = hand()
    assert journal.saving
    sitting = journal.start("Bean", DAY, "short", "x" * 50_000, ROWS)
    assert sitting == 2 and not journal.saving
    journal.step("Bean", DAY, 2, 1, shown=1, at=0, mark=mark(Mark.NOT_YET))
    assert marks_of(journal, 2) == {0: Mark.NOT_YET} and marks_of(journal, 1) == {
        0: Mark.FLUENT,
        1: Mark.FLUENT,
    }
    assert len(hand(read_only=True).sittings_of("Bean", DAY)) == 1, "nothing of it is on the disk yet"
    full(False)
    journal.step("Bean", DAY, 2, 2, shown=2, at=1, mark=mark(Mark.HESITATED))
    assert journal.saving
    assert marks_of(hand(), 2) == {0: Mark.NOT_YET, 1: Mark.HESITATED}
    assert [line.mark for line in hand().history("Bean")] == [
        Mark.FLUENT, Mark.FLUENT, None, Mark.NOT_YET, Mark.HESITATED, None
    ]  # fmt: skip


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
    assert not journal.saving and len(journal.sittings_of("Bean", DAY)) == 2
    assert len(hand().sittings_of("Bean", DAY)) == 1 and hand().check() == []
    journal.set_rough("Bean", DAY, 2, True)
    assert journal.saving and hand().sittings_of("Bean", DAY)[1].rough


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
        patched.setattr(*((Path, "mkdir") if what == "mkdir" else (records, "connect")), refuse)
        journal = begun(hand(tmp_path / "data"), marks=2)
        assert not journal.saving and "can't be used" in journal.notice
        assert marks_of(journal) == {0: Mark.FLUENT, 1: Mark.FLUENT}
    journal.step("Bean", DAY, 1, 3, shown=3, at=2, mark=mark())
    assert journal.saving and len(marks_of(hand(tmp_path / "data"))) == 3


def test_a_journal_that_may_be_read_but_not_written(hand: Hand, monkeypatch: pytest.MonkeyPatch) -> None:
    begun(hand(), marks=2).shut()
    real = records.connect

    def connect(path: Path, wait: int) -> sqlite3.Connection:
        connection = real(path, wait)
        connection.execute("PRAGMA query_only = ON")
        return connection

    with monkeypatch.context() as patched:
        patched.setattr(records, "connect", connect)
        journal = hand()
        journal.step("Bean", DAY, 1, 3, shown=3, at=2, mark=mark(Mark.SKIPPED))
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
def test_a_journal_taken_away_while_it_is_open(hand: Hand, tmp_path: Path, everything: bool) -> None:
    journal = begun(hand(tmp_path / "stick"), marks=2)
    journal.path.unlink()
    if everything:
        journal.path.with_name("journal.db-journal").unlink(missing_ok=True)
        journal.folder.rmdir()
    journal.step("Bean", DAY, 1, 3, shown=3, at=2, mark=mark())
    assert marks_of(journal) == dict.fromkeys(range(3), Mark.FLUENT)
    assert journal.saving is not everything and (tmp_path / "stick").exists() is not everything
    if everything:
        journal.folder.mkdir()
        journal.set_rough("Bean", DAY, 1, True)
    assert journal.saving and marks_of(hand(tmp_path / "stick")) == marks_of(journal)


def test_another_program_that_holds_the_file_is_waited_for_a_little_and_then_worked_around(
    hand: Hand, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(store, "_WAIT", 300)
    journal = begun(hand(), marks=1)
    other = sqlite3.connect(journal.path, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    begin = time.perf_counter()
    journal.step("Bean", DAY, 1, 2, shown=2, at=1, mark=mark())
    journal.step("Bean", DAY, 1, 3, shown=3, at=2, mark=mark())
    assert time.perf_counter() - begin < 5 and not journal.saving and len(marks_of(journal)) == 3
    other.execute("COMMIT")
    other.close()
    journal.step("Bean", DAY, 1, 4, shown=3, at=3, mark=mark())
    assert journal.saving and len(marks_of(hand())) == 4


def test_a_number_taken_meanwhile_by_another_program(hand: Hand, full: Callable[[bool], None]) -> None:
    hand().shut()
    full(True)
    journal = hand()
    assert journal.start("Bean", DAY, "daily", "x" * 50_000, ROWS) == 1 and not journal.saving
    full(False)
    later = clock(dt.datetime(2026, 11, 25, 9))
    assert hand(now=later).start("Bean", DAY, "short", "{}", ROWS[:1]) == 1
    journal.step("Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.NOT_YET))
    journal.step("Bean", DAY, 1, 2, shown=2, at=1, mark=mark(Mark.HESITATED))
    assert journal.saving and marks_of(journal, 1) == {0: Mark.NOT_YET, 1: Mark.HESITATED}
    there = hand()
    assert [row.shape for row in there.sittings_of("Bean", DAY)] == ["short", "daily"]
    assert marks_of(there, 1) == {} and marks_of(there, 2) == {0: Mark.NOT_YET, 1: Mark.HESITATED}


# -- reading alone


def test_reading_alone_makes_nothing_and_changes_nothing(hand: Hand, tmp_path: Path) -> None:
    assert hand(tmp_path / "none", read_only=True).history("Bean") == () and not (tmp_path / "none").exists()
    begun(hand(), marks=1).shut()
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    journal = hand(read_only=True)
    assert len(journal.history("Bean")) == 2 and Journal.examine(tmp_path) == []
    journal.shut()
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == before


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
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    assert Journal.examine(tmp_path) == [] and len(hand(read_only=True).history("Bean")) == 3
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == before
    journal = hand()
    assert not journal.notice and marks_of(journal) == {0: Mark.FLUENT, 1: Mark.FLUENT}


# -- two journals made one


def test_two_laptops_lose_nothing(hand: Hand, tmp_path: Path) -> None:
    one = begun(hand(tmp_path / "one"), marks=1)
    two = hand(tmp_path / "two", clock(dt.datetime(2026, 11, 25, 10)))
    two.merge(one.path)
    one.step("Bean", DAY, 1, 2, shown=2, at=1, mark=mark(Mark.HESITATED))
    two.step("Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.NOT_YET, "2026-11-25T10:00:00"))
    two.start("Pip", DAY, "daily", "{}", ROWS)
    for _ in range(2):
        one.merge(two.path)
        two.merge(one.path)
        for journal in (one, two):
            assert marks_of(journal) == {0: Mark.NOT_YET, 1: Mark.HESITATED}
            assert len(journal.sittings_of("Pip", DAY)) == 1
            assert journal.sittings_of("Bean", DAY)[0].furthest == 2


def test_sittings_begun_apart_are_never_mixed(hand: Hand, tmp_path: Path) -> None:
    one, two = hand(tmp_path / "one"), hand(tmp_path / "two", clock(dt.datetime(2026, 11, 25, 10)))
    begun(one, marks=2)
    two.start("Bean", DAY, "short", "{}", ROWS[::-1])
    two.step("Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.NOT_YET))
    for _ in range(2):
        one.merge(two.path)
        assert [row.shape for row in one.sittings_of("Bean", DAY)] == ["daily", "short"]
        assert marks_of(one, 1) == {0: Mark.FLUENT, 1: Mark.FLUENT} and marks_of(one, 2) == {0: Mark.NOT_YET}


@pytest.mark.parametrize("content", [b"", b"no journal at all" * 50, foreign()])
def test_what_is_no_journal_is_not_merged(hand: Hand, tmp_path: Path, content: bytes) -> None:
    (tmp_path / "other.db").write_bytes(content)
    journal = begun(hand(tmp_path / "one"), marks=1)
    for path in (tmp_path / "other.db", tmp_path / "none.db", tmp_path):
        with pytest.raises(JournalProblem):
            journal.merge(path)
    assert journal.saving and marks_of(journal) == {0: Mark.FLUENT}


moments = st.integers(0, 5).map(lambda n: f"2026-11-25T08:00:0{n}.000000+00:00")
kinds = st.sampled_from([None, Mark.FLUENT, Mark.NOT_YET])


@st.composite
def a_whole(draw: Any) -> Whole:
    items = draw(st.permutations(["a/a", "b/b", "c/c", "d/d"]))[: draw(st.integers(1, 4))]
    prompts = {at: (item, "w") for at, item in enumerate(items)}
    marks = draw(st.dictionaries(st.sampled_from(list(prompts)), st.builds(mark, kinds, moments)))
    last = max([row.at for row in marks.values()], default="2026-11-25T08:00:00.000000+00:00")
    about = About("s", max(last, draw(moments)), "daily", "{}", 0, draw(st.integers(0, 3)), 0, "")
    return Whole(about, prompts, marks)


@settings(database=None, derandomize=True, deadline=None, max_examples=200)
@given(a_whole(), a_whole())
def test_a_merge_keeps_the_latest_mark_of_every_item_once(one: Whole, other: Whole) -> None:
    def standing(whole: Whole) -> dict[str, MarkRow]:
        return {whole.prompts[at][0]: row for at, row in whole.marks.items()}

    both = merged(one, other)
    assert merged(both, other) == both and merged(both, one) == both, "merging again changes nothing"
    items = [item for item, _ in both.prompts.values()]
    assert len(items) == len(set(items))
    newer = max(one, other, key=lambda whole: whole.about.touched)
    assert {at: p for at, p in both.prompts.items() if at < BESIDE} == newer.prompts
    for item, row in (standing(one) | standing(other)).items():
        latest = max(standing(w)[item].at for w in (one, other) if item in standing(w))
        if item in standing(both):
            assert standing(both)[item].at == latest
        else:
            assert row.mark is None or item in dict(newer.prompts.values()), "only what was taken back may go"


# -- several programs, and a kill at any time

WORKER = """
import datetime as dt, sys
from pathlib import Path
from warmup.journal import Journal, MarkRow
from warmup.morning import Mark
folder, child, first, count = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3]), int(sys.argv[4])
journal = Journal.open(folder, dt.datetime.now)
day = dt.date(2026, 11, 25)
if first < 0:
    first = 0
    journal.start(child, day, "daily", "x" * 9000, [(f"count-on/{n}", "a") for n in range(500)])
print("ready", flush=True)
sys.stdin.readline()
for at in range(first, first + count):
    row = MarkRow(Mark.HESITATED, 0, "", False, "")
    journal.step(child, day, 1, at + 1, shown=at, at=at, mark=row)
    print(at if journal.saving else "not saved", flush=True)
"""


def worker(folder: Path, child: str, first: int, count: int) -> subprocess.Popen[str]:
    arguments = [sys.executable, "-c", WORKER, str(folder), child, str(first), str(count)]
    process = subprocess.Popen(
        arguments, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, cwd=Path(__file__).parents[2]
    )
    assert process.stdout is not None and process.stdout.readline() == "ready\n"
    return process


def test_two_programs_that_mark_at_once_lose_nothing(hand: Hand, tmp_path: Path) -> None:
    hand().start("Bean", DAY, "daily", "{}", [(f"count-on/{n}", "a") for n in range(500)])
    both = [worker(tmp_path, "Bean", 0, 60), worker(tmp_path, "Bean", 100, 60)]
    begin = time.perf_counter()
    for process in both:
        assert process.stdin is not None
        process.stdin.write("go\n")
        process.stdin.flush()
    said = [process.communicate()[0].split() for process in both]
    assert time.perf_counter() - begin < 20
    assert said == [[str(n) for n in range(60)], [str(n) for n in range(100, 160)]], "all of it was saved"
    journal = hand()
    assert sorted(marks_of(journal)) == [*range(60), *range(100, 160)] and journal.check() == []


def test_a_kill_at_any_time_leaves_every_acknowledged_mark(hand: Hand, tmp_path: Path) -> None:
    chance = random.Random(7)
    for kill in range(15):
        child = f"Bean {kill}"
        process = worker(tmp_path, child, -1, 500)
        assert process.stdin is not None and process.stdout is not None
        process.stdin.write("go\n")
        process.stdin.flush()
        acknowledged = [process.stdout.readline() for _ in range(chance.randrange(1, 12))]
        time.sleep(chance.random() * 0.004)
        process.kill()
        acknowledged += process.stdout.read().splitlines(keepends=True)
        process.wait()
        process.stdin.close()
        process.stdout.close()
        whole = [int(line) for line in acknowledged if line.endswith("\n")]
        journal = hand()
        assert not journal.notice and journal.check() == []
        marks = journal.marks_of(child, DAY, 1)
        assert set(whole) <= set(marks) <= {*whole, len(whole)}, f"kill {kill}: {whole} of {sorted(marks)}"
        journal.shut()
    assert not aside(tmp_path)
