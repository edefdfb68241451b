"""A child is forgotten: no byte of the name in any file of the family, and no merge brings it back."""

import datetime as dt
import json
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from tests.cli.test_cli import run
from tests.cli.test_keeping import FAMILY, NOW, TODAY, answers, lived, week
from tests.syncing import note_syncs, number
from warmup.config import family as families
from warmup.config.family import Child
from warmup.journal import forgetting, schema
from warmup.journal.at_hand import AtHand, leave_note
from warmup.journal.copies import keep_copy, made_name
from warmup.journal.journal import Journal

pytestmark = pytest.mark.slow
NAME, RECORD = "Quillon", "Quillonette"


@pytest.fixture
def household(home: Path, tmp_path: Path) -> Path:
    """Two children, copies of every kind, a backup and the leftovers of killed programs; gives the stick."""
    stick = tmp_path / "stick"
    stick.mkdir()
    both = (Child("Bean"), Child(NAME, journal_name=RECORD))
    family = FAMILY._replace(children=both, copies=str(stick))
    families.save(home / "family.toml", family)
    families.save(home / "family.toml", family._replace(adult="Jo"), family)
    assert NAME in (home / "family.toml.bak").read_text()
    path = lived(home, RECORD, range(2, 20))
    lived(home, "Bean", range(2, 12))
    week(home, stick, TODAY)
    for name in ("journal-before-2026-11-01.db", "journal (2).db", "journal-20261101-080000.db"):
        keep_copy(path, home / name)
    damaged = home / "journal-damaged-20261102-080000.db"
    damaged.write_bytes(path.read_bytes()[:-5000])
    damaged.with_name(f"{damaged.name}-journal").write_bytes(RECORD.encode())
    for name in (".family.toml-abcdefgh", "family-20261101-080000.toml"):
        (home / name).write_text(NAME)
    leave_note(home, AtHand((RECORD, "2026-11-25", 1), 1, 2))
    return stick


def holding(*folders: Path) -> list[str]:
    return sorted(
        path.name
        for folder in folders
        for path in folder.rglob("*")
        if path.is_file() and any(name.encode() in path.read_bytes() for name in (NAME, RECORD))
    )


def test_no_byte_of_the_name_is_left_in_any_file(
    home: Path, household: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert len(holding(home, household)) == 12
    answers(monkeypatch, "", NAME)
    assert run("forget", NAME) == 0
    out, err = capsys.readouterr()
    assert f"{NAME} is forgotten." in out and not err
    assert holding(home, household) == []
    for path in (home / "journal.db", home / "journal (2).db", household / made_name(TODAY)):
        keep_copy(path, household / "read.db", over=True)
        journal = Journal.open(path.parent, lambda: NOW, read_only=True)
        assert journal.mornings().keys() <= {"Bean"}
    family = families.load(home / "family.toml")
    assert [child.nickname for child in family.children] == ["Bean"] and family.adult == "Jo"
    assert forgetting.of_name(family.forgotten, RECORD) == family.forgotten != ()


def test_nothing_of_it_comes_back_when_the_power_goes(
    home: Path, household: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The cut ends of the journals, and the names of files that are gone."""
    answers(monkeypatch, "", NAME)
    (home / "remembered").mkdir(exist_ok=True)
    synced = note_syncs(monkeypatch)
    assert run("forget", NAME) == 0
    journals = (home / "journal.db", home / "journal (2).db", household / made_name(TODAY))
    assert {*map(number, journals)} <= {*synced}
    assert {*map(number, (home, home / "remembered", household))} == {*synced[-4:]}


@pytest.mark.parametrize("said", [["", "quillon"], ["", ""], [""], []])
def test_another_name_or_none_changes_nothing(
    home: Path, household: Path, monkeypatch: pytest.MonkeyPatch, said: list[str]
) -> None:
    before = {path: path.read_bytes() for path in home.rglob("*.*")}
    answers(monkeypatch, *said)
    assert run("forget", NAME) == 0
    assert {path: path.read_bytes() for path in home.rglob("*.*")} == before


@pytest.mark.usefixtures("household")
def test_a_copy_first_is_whole_and_out_of_reach(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    answers(monkeypatch, str(home / "kept.db"), NAME)
    assert run("forget", NAME) == 2 and "name another folder" in capsys.readouterr().err
    assert RECORD in Journal.open(home, lambda: NOW, read_only=True).mornings()
    answers(monkeypatch, str(tmp_path / "kept.db"), NAME)
    assert run("forget", NAME) == 0
    (tmp_path / "kept").mkdir()
    (tmp_path / "kept.db").rename(tmp_path / "kept" / "journal.db")
    assert Journal.open(tmp_path / "kept", lambda: NOW, read_only=True).mornings()[RECORD] == 18


def test_a_merge_and_a_restore_leave_the_child_out_unless_asked(
    home: Path,
    household: Path,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    other = tmp_path / "other.db"
    keep_copy(home / "journal.db", other)
    answers(monkeypatch, "", NAME)
    run("forget", NAME)
    assert run("merge", str(other)) == 0
    answers(monkeypatch, "yes")
    assert run("restore", str(other)) == 0
    assert capsys.readouterr().out.count("A child you had forgotten is left out.") == 2
    assert holding(home, household) == []
    assert run("merge", str(other), "--with-forgotten") == 0
    assert Journal.open(home, lambda: NOW, read_only=True).mornings()[RECORD] == 18


def test_copies_that_could_not_be_reached_are_told_and_done_the_next_time(
    home: Path, household: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    away = household.rename(household.with_name("away"))
    answers(monkeypatch, "", NAME)
    assert run("forget", NAME) == 3
    err = capsys.readouterr().err
    assert f"the copies in it are as they were. Run “warmup forget {RECORD}” once more" in err
    assert err.count("\n") == 1
    assert holding(home) == [] and holding(away) == [made_name(TODAY)]
    away.rename(household)
    answers(monkeypatch, "", RECORD)
    assert run("forget", RECORD) == 0 and holding(home, household) == []


def test_a_journal_set_aside_that_is_held_by_another_program_is_not_deleted(
    home: Path, household: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(schema, "WAIT", 50)
    with closing(sqlite3.connect(home / "journal-before-2026-11-01.db", isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        answers(monkeypatch, "", NAME)
        assert run("forget", NAME) == 3
    assert "journal-before-2026-11-01.db: the child could not be taken out" in capsys.readouterr().err
    assert holding(home, household) == ["journal-before-2026-11-01.db"]


def test_the_only_child_leaves_a_family_that_reads(
    home: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    for name, stands in ((NAME, "Sunshine"), ("Sunshine", "Pebble")):
        home.mkdir(exist_ok=True)
        (home / "family.toml").unlink(missing_ok=True)
        families.save(home / "family.toml", FAMILY._replace(children=(Child(name),)))
        answers(monkeypatch, "", name)
        assert run("forget", name) == 0
        assert f"“{stands}” stands there until you put in a nickname" in capsys.readouterr().out
        assert [child.nickname for child in families.load(home / "family.toml").children] == [stands]


def test_what_somebody_wrote_elsewhere_is_named_and_left(
    home: Path, household: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    own = f'[[prompt]]\nsay = "How old is {NAME}?"\nanswer = "five"\n'
    (home / "own.toml").write_text(own)
    answers(monkeypatch, "", NAME)
    assert run("forget", NAME) == 0
    assert "own.toml still has the name somewhere in other words" in capsys.readouterr().out
    assert holding(home, household) == ["own.toml"] and (home / "own.toml").read_text() == own


def test_who_is_not_there_can_t_be_forgotten(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lived(home, "Bean", range(2, 4))
    assert run("forget", "[b]Nobody\x1b[31m") == 2
    assert "there is no child '[b]Nobody[31m'" in capsys.readouterr().err
    assert json.dumps("Bean") not in capsys.readouterr().out


def test_a_child_goes_out_of_a_journal_whose_version_makes_no_sense(
    home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    lived(home, "Fern", range(2, 5))
    lived(home, NAME, range(2, 4))
    raw = bytearray((home / "journal.db").read_bytes())
    raw[60:64] = b"\x8f\x3a\x00\x01"
    (home / "journal.db").write_bytes(raw)
    answers(monkeypatch, "", NAME)
    assert run("forget", NAME) == 0 and holding(home) == []
    journal = Journal.open(home, dt.datetime.now, read_only=True)
    assert journal.mornings() == {"Fern": 3}


def test_marks_of_a_child_that_no_family_file_names_go_too(
    home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    lived(home, NAME, range(2, 4))
    answers(monkeypatch, "", NAME)
    assert run("forget", NAME) == 0 and holding(home) == []
    assert not (home / "family.toml").exists()
