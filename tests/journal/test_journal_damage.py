"""A damaged journal: set aside whole, what can be read of it kept, and the morning goes on."""

import datetime as dt
import os
import random
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from tests.journal.journals import DAY, ROWS, Hand, aside, begun, clock, foreign, mark, marks_of, step
from warmup.journal import schema
from warmup.journal.journal import Journal, NewerJournal
from warmup.model import Mark

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


@pytest.mark.slow
@pytest.mark.parametrize("kind", DAMAGE)
def test_a_damaged_journal_is_set_aside_and_a_new_one_begun(hand: Hand, tmp_path: Path, kind: str) -> None:
    journal = begun(hand(), marks=3)
    journal.shut()
    damaged = DAMAGE[kind](journal.path.read_bytes())
    journal.path.write_bytes(damaged)
    assert "damaged" in Journal.examine(tmp_path)[0] and journal.path.read_bytes() == damaged
    looked = hand(read_only=True)
    assert "damaged" in looked.notice or "can't be used" in looked.notice
    read = looked.history("Bean")
    assert not aside(tmp_path)
    new = hand()
    assert (
        new.saving
        and Journal.examine(new.folder) == []
        and "kept as journal-damaged-20261125-080000.db" in new.notice
    )
    assert [path.read_bytes() for path in aside(tmp_path)] == [damaged] and new.history("Bean") == read
    begun(new, marks=1)
    assert len(hand().history("Bean")) >= 2 and not hand().notice


def test_no_journal_that_was_set_aside_gives_way_to_another(hand: Hand, tmp_path: Path) -> None:
    journal = begun(hand(), marks=1)
    journal.shut()
    journal.path.write_bytes(journal.path.read_bytes()[:60] + b"\x8f\x3a\x00\x01")
    name = tmp_path / "journal-damaged-20261125-080000"
    taken = [Path(f"{name}.db"), *(Path(f"{name}-{number}.db") for number in range(2, 120))]
    for path in taken:
        path.write_text("kept")
    assert hand().saving and {path.read_text() for path in taken} == {"kept"}
    assert len(aside(tmp_path)) == len(taken) + 1


@pytest.mark.slow
def test_what_can_be_read_of_a_damaged_journal_is_kept(hand: Hand, tmp_path: Path) -> None:
    journal = hand()
    days = [DAY + dt.timedelta(n) for n in range(40)]
    for day in days:
        journal.start("Bean", day, "daily", "x" * 9000, ROWS, [mark()] * 4)
    journal.shut()
    raw = bytearray(journal.path.read_bytes())
    middle = len(raw) // 2 // 4096 * 4096
    raw[middle : middle + 8192] = b"\xa5" * 8192
    journal.path.write_bytes(raw)
    new = hand()
    kept = new.history("Bean")
    assert (
        "mornings: " in new.notice
        and 140 <= len(kept) <= 160
        and {line.mark for line in kept} == {Mark.FLUENT}
    )
    assert Journal.examine(new.folder) == []


def test_a_write_cut_short_beside_a_damaged_journal_is_not_played_into_the_new_one(
    hand: Hand, tmp_path: Path
) -> None:
    journal = begun(hand())
    journal.shut()
    beside = journal.path.with_name("journal.db-journal")
    journal.path.write_bytes(DAMAGE["version"](journal.path.read_bytes()))
    beside.write_bytes(b"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7" + b"\0" * 600)
    new = begun(hand(), marks=1)
    assert (
        Journal.examine(new.folder) == []
        and len(new.sessions_of("Bean", DAY)) == 2
        and len(marks_of(new, 2)) == 1
    )
    moved = tmp_path / "journal-damaged-20261125-080000.db-journal"
    assert moved.read_bytes().startswith(b"\xd9\xd5") and (not beside.exists() or beside.stat().st_size == 0)


def test_a_second_damage_in_the_same_second_writes_over_nothing(hand: Hand, tmp_path: Path) -> None:
    for content in (b"one", b"two", b"three"):
        (tmp_path / "journal.db").write_bytes(content * 99)
        hand().shut()
    assert {path.read_bytes()[:3] for path in aside(tmp_path)} == {b"one", b"two", b"thr"}


@pytest.mark.slow
@settings(database=None, derandomize=True, deadline=None, max_examples=60)
@given(st.integers(0, 2**20), st.binary(min_size=1, max_size=80))
@example(63, b"\x07")
def test_any_bytes_anywhere_never_stop_the_morning(
    tmp_path_factory: pytest.TempPathFactory, place: int, new: bytes
) -> None:
    """Bytes 60 to 63 hold the version (sqlite.org/fileformat2.html, 1.3); a newer one is not touched."""
    folder = tmp_path_factory.mktemp("bytes")
    journal = begun(Journal.open(folder, clock()), marks=3)
    journal.shut()
    raw = bytearray(journal.path.read_bytes())
    at = place % len(raw)
    raw[at : at + len(new)] = new
    left = journal.path.stat()
    journal.path.write_bytes(raw)
    # Two writes of one tick of the disk's clock look alike; damage does not come so soon.
    os.utime(journal.path, ns=(left.st_atime_ns, left.st_mtime_ns + 10**9))
    version = int.from_bytes(raw[60:64], "big")
    if raw.startswith(b"SQLite format 3\0") and schema.VERSION < version < 1000:
        with pytest.raises(NewerJournal):
            Journal.open(folder, clock())
        assert journal.path.read_bytes() == raw
        return
    again = Journal.open(folder, clock())
    begun(again, marks=1)
    again.history("Bean"), again.dates_of("Bean")
    assert again.saving
    with schema.reading(again.path) as db:
        assert schema.faults(db) == []
    again.shut()


def test_a_damaged_schema_format_is_damage_and_set_aside(hand: Hand, tmp_path: Path) -> None:
    """Bytes 44 to 47 of the header (sqlite.org/fileformat2.html, 1.3.9): SQLite knows formats 1 to 4."""
    journal = begun(hand(), marks=3)
    journal.shut()
    raw = bytearray(journal.path.read_bytes())
    raw[44:48] = (5).to_bytes(4, "big")
    journal.path.write_bytes(raw)
    assert "unsupported file format" in Journal.examine(tmp_path)[0]
    again = hand()
    assert again.saving and "was damaged" in again.notice and len(aside(tmp_path)) == 1
    assert marks_of(again) == dict.fromkeys(range(3), Mark.FLUENT), "its pages still hold the marks"


def test_damage_that_shows_in_the_middle_of_a_morning_loses_no_mark_of_it(hand: Hand, tmp_path: Path) -> None:
    journal = begun(hand(), marks=2)
    raw = bytearray(journal.path.read_bytes())
    raw[:] = b"\xa5" * len(raw)
    journal.path.write_bytes(raw)
    step(journal, "Bean", DAY, 1, 3, shown=3, at=2, mark=mark(Mark.NOT_YET))
    expected = {0: Mark.FLUENT, 1: Mark.FLUENT, 2: Mark.NOT_YET}
    assert marks_of(journal) == expected and journal.saving and len(aside(tmp_path)) == 1
    assert marks_of(hand()) == expected


def test_an_index_that_leads_to_a_row_that_is_not_there_is_damage(hand: Hand, tmp_path: Path) -> None:
    journal = begun(hand(), marks=3)
    path = journal.path
    journal.shut()
    with closing(sqlite3.connect(path)) as db:
        (page,) = db.execute(
            "SELECT rootpage FROM sqlite_master WHERE name = 'sqlite_autoindex_sittings_1'"
        ).fetchone()
    _overwrite(path, page * 4096 - 1, b"\x17")
    os.utime(path)
    with closing(sqlite3.connect(path)) as db:
        assert db.execute("PRAGMA quick_check").fetchone() == ("ok",), "only the whole check finds it"
    assert "damaged" in Journal.examine(tmp_path)[0]
    assert "damaged" in hand(read_only=True).notice
    again = hand()
    assert again.saving and "was damaged" in again.notice and len(aside(tmp_path)) == 1
    assert marks_of(again) == dict.fromkeys(range(3), Mark.FLUENT)


@pytest.mark.parametrize("read_only", [False, True])
def test_damage_under_a_stamp_that_still_fits_is_found_where_it_is_read(
    hand: Hand, tmp_path: Path, *, read_only: bool
) -> None:
    journal = hand()
    for number in range(20):
        journal.start("Bean", DAY - dt.timedelta(number), "daily", "x" * 9000, ROWS, [mark()] * 4)
    path = journal.path
    journal.shut()
    marks = len(hand(read_only=True).history("Bean"))
    with closing(sqlite3.connect(path)) as db:
        (page,) = db.execute("SELECT rootpage FROM sqlite_master WHERE name = 'marks'").fetchone()
    _overwrite(path, (page - 1) * 4096 + 8, b"\xff" * 4)
    found = hand(read_only=read_only)
    assert found.as_left, "nothing tells of it"
    assert len(found.history("Bean")) == marks, "its pages still hold the marks"
    if not read_only:
        begun(found, marks=1)
        assert found.saving and len(aside(tmp_path)) == 1 and Journal.examine(tmp_path) == []


def _overwrite(path: Path, at: int, raw: bytes) -> None:
    """Put other bytes into a file, which keeps its size and its time."""
    about = path.stat()
    with path.open("r+b") as file:
        file.seek(at)
        file.write(raw)
    os.utime(path, ns=(about.st_atime_ns, about.st_mtime_ns))


def test_an_empty_file_is_a_new_journal(hand: Hand, tmp_path: Path) -> None:
    (tmp_path / "journal.db").touch()
    assert begun(hand(), marks=1).saving and not aside(tmp_path)
