"""Copies of a journal: whole or not at all, read back, put in its place, and told from its own."""

import datetime as dt
import os
import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from tests.benchmarks.copies_while_keying import campaign
from tests.journal.journals import DAY, Hand, begun, foreign, marks_of, set_rough
from warmup.journal import copies, schema
from warmup.journal.copies import beside, counts, keep_copy, made_name, put_in_place
from warmup.journal.inspection import whole_copy
from warmup.journal.journal import JournalProblem, NewerJournal


def test_a_copy_holds_every_row_and_passes_the_check_of_sqlite(hand: Hand, tmp_path: Path) -> None:
    """https://www.sqlite.org/pragma.html#pragma_integrity_check: "ok" where nothing is wrong."""
    journal = begun(hand(), marks=3)
    keep_copy(journal.path, tmp_path / "copy.db")
    with (
        closing(sqlite3.connect(tmp_path / "copy.db")) as made,
        closing(sqlite3.connect(journal.path)) as own,
    ):
        assert made.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert list(made.iterdump()) == list(own.iterdump())
        assert counts(made) == (1, 4, 3, 0, 0, 0)
    assert sorted(path.name for path in tmp_path.iterdir()) == [
        "copy.db", "journal.db", "journal.db-journal", "remembered"
    ]  # fmt: skip
    assert os.name != "posix" or (tmp_path / "copy.db").stat().st_mode & 0o77 == 0


def test_a_file_in_the_way_stays_unless_it_may_go(hand: Hand, tmp_path: Path) -> None:
    journal = begun(hand(), marks=1)
    target = tmp_path / "copy.db"
    target.write_bytes(b"mine")
    with pytest.raises(JournalProblem, match="something is there already"):
        keep_copy(journal.path, target)
    assert target.read_bytes() == b"mine"
    keep_copy(journal.path, target, over=True)
    assert schema.version_written(target) == schema.VERSION


@pytest.mark.parametrize("what", ["damaged", "foreign", "gone", "no folder", "full", "misread"])
def test_what_is_no_copy_is_one_sentence_and_leaves_nothing(
    hand: Hand, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, what: str
) -> None:
    journal = begun(hand(), marks=1)
    journal.shut()
    source, target = journal.path, tmp_path / "out" / "copy.db"
    if what != "no folder":
        target.parent.mkdir()
    match what:
        case "damaged":
            source.write_bytes(source.read_bytes()[:5000])
        case "foreign":
            source.write_bytes(foreign())
        case "gone":
            source.unlink()
        case "full":
            # The error of a full disk, as SQLite gives it; a small file system is not to be had in a test.
            real = sqlite3.connect

            def small(name: Path | str, **options: Any) -> sqlite3.Connection:
                db: sqlite3.Connection = real(name, **options)
                if ".journal-copy-" in str(name):
                    db.execute("PRAGMA max_page_count = 2")
                return db

            monkeypatch.setattr("warmup.journal.copies.sqlite3.connect", small)
        case "misread":
            monkeypatch.setattr(copies, "counts", lambda db: (id(db),))
    with pytest.raises(JournalProblem) as caught:
        keep_copy(source, target)
    said = str(caught.value)
    assert said.count(". ") <= 1 and said.endswith(".") and "\n" not in said
    assert (str(tmp_path) in said) is (what in ("no folder", "full", "misread")), "the path that was given"
    assert not target.parent.exists() or list(target.parent.iterdir()) == []


def test_a_copy_put_in_place_keeps_the_one_before_byte_for_byte(hand: Hand, tmp_path: Path) -> None:
    journal = begun(hand(), marks=1)
    keep_copy(journal.path, tmp_path / "copy.db")
    set_rough(journal, "Bean", DAY, 1, True)
    journal.shut()
    before = journal.path.read_bytes()
    for name in ("journal-before-2026-11-25.db", "journal-before-2026-11-25-2.db"):
        with closing(whole_copy(tmp_path / "copy.db")) as snapshot:
            assert put_in_place(tmp_path, snapshot, DAY) == name
        assert not hand().sessions_of("Bean", DAY)[0].rough and len(marks_of(hand())) == 1
    assert (tmp_path / "journal-before-2026-11-25.db").read_bytes() == before


def test_a_window_that_is_open_meanwhile_loses_nothing(hand: Hand, tmp_path: Path) -> None:
    journal = begun(hand(), marks=1)
    with closing(schema.in_memory()) as empty:
        put_in_place(tmp_path, empty, DAY)
    set_rough(journal, "Bean", DAY, 1, True)
    journal.shut()
    assert hand().sessions_of("Bean", DAY)[0].rough and len(marks_of(hand())) == 1


def test_a_damaged_journal_is_set_aside_for_a_copy_and_a_newer_one_is_not(hand: Hand, tmp_path: Path) -> None:
    path = tmp_path / "journal.db"
    path.write_bytes(b"no journal at all")
    with closing(schema.in_memory()) as empty:
        aside = put_in_place(tmp_path, empty, DAY)
        assert (tmp_path / aside).read_bytes() == b"no journal at all" and hand().mornings() == {}
        newer = path.read_bytes()[:60] + (9).to_bytes(4, "big") + path.read_bytes()[64:]
        path.write_bytes(newer)
        with pytest.raises(NewerJournal):
            put_in_place(tmp_path, empty, DAY)
    assert path.read_bytes() == newer


@pytest.mark.parametrize("lock", ["EXCLUSIVE", "IMMEDIATE"])
def test_a_journal_locked_by_another_program_is_not_replaced(
    hand: Hand, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, lock: str
) -> None:
    monkeypatch.setattr(schema, "WAIT", 50)
    path = begun(hand(), marks=1).path
    before = path.read_bytes()
    with closing(sqlite3.connect(path, isolation_level=None)) as other, closing(schema.in_memory()) as empty:
        other.execute(f"BEGIN {lock}")
        with pytest.raises(JournalProblem, match="could not be replaced"):
            put_in_place(tmp_path, empty, DAY)
        other.execute("ROLLBACK")
    assert path.read_bytes() == before and not list(tmp_path.glob("*before*"))
    assert not list(tmp_path.glob(".journal-copy-*"))


def test_only_journals_nobody_here_made_are_strangers(hand: Hand, tmp_path: Path) -> None:
    journal = begun(hand(), marks=1)
    ours = (
        *(made_name(DAY), "journal-before-2026-11-25.db", "journal-damaged-2026.db"),
        *("journal-20261125-080000.db", "warmup-copy-2026.db"),
    )
    theirs = ["journal (2).db", "journal-2.db", "journal-before.db"]
    for name in (*theirs, *ours):
        keep_copy(journal.path, tmp_path / name)
    (tmp_path / "text.db").write_text("SQLite format 3")
    (tmp_path / "other.db").write_bytes(foreign())
    (tmp_path / "folder.db").mkdir()
    whole = {path: path.read_bytes() for path in tmp_path.iterdir() if path.is_file()}
    assert [path.name for path in beside(tmp_path, strange=True)] == theirs
    assert sorted(path.name for path in beside(tmp_path)) == sorted([*theirs, *ours])
    assert {path: path.read_bytes() for path in tmp_path.iterdir() if path.is_file()} == whole
    assert list(beside(tmp_path / "no such folder")) == []


@pytest.mark.slow
def test_every_copy_taken_while_marks_are_keyed_is_a_state_that_was_on_disk(tmp_path: Path) -> None:
    found = campaign(tmp_path, 6, seed=1)
    assert found.copies == 6 and found.wrong == 0 and found.states > 1


def test_the_name_of_a_day() -> None:
    assert made_name(dt.date(2026, 11, 5)) == "warmup-2026-11-05.db"
    assert copies.MADE.fullmatch(made_name(dt.date(2026, 11, 5)))
