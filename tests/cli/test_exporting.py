"""Everything out as plain files and back in: the same, or one sentence and nothing changed."""

import shutil
import sqlite3
import tomllib
from contextlib import closing
from pathlib import Path
from random import Random

import pytest

from tests.cli.test_cli import run
from tests.cli.test_forget import NAME, RECORD
from tests.cli.test_keeping import FAMILY, NOW, answers, lived
from tests.journal.test_forgetting import dump
from tests.syncing import note_syncs, number
from warmup.config import family as families
from warmup.config.family import Child
from warmup.journal.journal import Journal


@pytest.fixture
def exported(home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    """A family of two and their journal, exported; gives the folder."""
    home.mkdir()
    both = (Child("Bean"), Child(NAME, journal_name=RECORD))
    families.save(home / "family.toml", FAMILY._replace(children=both))
    (home / "own.toml").write_text('[[prompt]]\nsay = "Which street?"\nanswer = "Pear Lane"\n')
    lived(home, "Bean", range(2, 6))
    lived(home, RECORD, range(2, 4))
    assert run("export", "--all", str(tmp_path / "out")) == 0
    assert "marks.csv: 24 rows." in capsys.readouterr().out
    return tmp_path / "out"


def test_export_wipe_import_is_the_same_row_for_row(home: Path, exported: Path) -> None:
    before, settings = dump(home / "journal.db"), (home / "family.toml").read_bytes()
    shutil.rmtree(home)
    assert run("import", str(exported)) == 0
    assert sorted(dump(home / "journal.db")) == sorted(before)
    assert (home / "family.toml").read_bytes() == settings and (home / "own.toml").exists()
    assert Journal.examine(home) == []


def test_an_empty_journal_gets_even_what_a_merge_would_mend(home: Path, tmp_path: Path) -> None:
    path = lived(home, "Bean", range(2, 4))
    with closing(sqlite3.connect(path)) as db, db:
        db.execute("UPDATE sittings SET touched = 'soon'")
        db.execute("DELETE FROM prompts WHERE date = '2026-11-02'")
    before = dump(path)
    assert run("export", "--all", str(tmp_path / "out")) == 0
    path.unlink()
    assert run("import", str(tmp_path / "out")) == 0
    assert sorted(dump(path)) == sorted(before)


def test_what_the_folder_holds_is_what_its_readme_names(exported: Path) -> None:
    names = {str(path.relative_to(exported)) for path in exported.rglob("*") if path.is_file()}
    readme = (exported / "README.md").read_text()
    assert names == {
        *("README.md", "export.toml", "sittings.csv", "prompts.csv", "marks.csv", "actions.csv", "notes.csv"),
        "practice.csv",
        *("settings/family.toml", "settings/own.toml"),
    }
    assert all(name in readme for name in names - {"README.md", "export.toml"})
    head = tomllib.loads((exported / "export.toml").read_text())
    assert head["format"] == 1 and head["rows"] == {
        "sittings": 6,
        "prompts": 24,
        "marks": 24,
        "actions": 0,
        "notes": 0,
        "practice": 0,
    }
    assert all(path.stat().st_mode & 0o77 == 0 for path in exported.rglob("*"))


def test_every_name_of_it_is_on_the_disk(
    home: Path, exported: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    synced = note_syncs(monkeypatch)
    assert run("export", "--all", str(tmp_path / "again")) == 0
    made = tmp_path / "again"
    assert synced[-3:] == [number(made / "settings"), number(made), number(tmp_path)]


def test_into_a_journal_with_mornings_it_is_merged_and_settings_stay(
    home: Path, exported: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (home / "journal.db").unlink()
    lived(home, "Bean", range(20, 22))
    (home / "own.toml").write_text("")
    assert run("import", str(exported)) == 0
    out = capsys.readouterr().out
    assert "Bean: 6 in all, 4 new here." in out and "own.toml is here already and stays as it is." in out
    assert (home / "own.toml").read_text() == ""


def test_a_forgotten_child_stays_out_unless_asked_for(
    home: Path, exported: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    answers(monkeypatch, "", NAME)
    assert run("forget", NAME) == 0
    assert run("import", str(exported)) == 0
    assert "A child you had forgotten is left out." in capsys.readouterr().out
    assert not any(RECORD.encode() in path.read_bytes() for path in home.rglob("*.*"))
    assert run("import", str(exported), "--with-forgotten") == 0
    assert Journal.open(home, lambda: NOW, read_only=True).mornings() == {"Bean": 4, RECORD: 2}


def test_a_folder_that_is_not_empty_or_can_t_be_made_is_one_sentence(
    home: Path, exported: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "empty").mkdir()
    assert run("export", "--all", str(tmp_path / "empty")) == 0
    for folder in (exported, tmp_path / "no" / "such", home / "journal.db"):
        capsys.readouterr()
        assert run("export", "--all", str(folder)) == 2
        assert capsys.readouterr().err.count("\n") == 1
    assert not list(tmp_path.glob(".warmup-export-*"))


def test_a_disk_that_takes_no_writing_is_one_sentence(
    exported: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The tests may run as a user whom no mode stops, so the refusals are put in by hand."""

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("warmup.cli.exporting._write", full)
    assert run("export", "--all", str(tmp_path / "other")) == 3
    assert capsys.readouterr().err == (
        f"warmup: {tmp_path / 'other'}: nothing was exported (No space left on device).\n"
    )
    assert [path.name for path in tmp_path.iterdir()] == [exported.name]


@pytest.mark.parametrize(
    ("file", "old", "new", "says"),
    [
        ("marks.csv", "fluent", "great", "marks.csv, line 2: expected a row that a journal can hold"),
        ("prompts.csv", ",0,", ",zero,", "prompts.csv, line 2: expected a whole number for position"),
        ("sittings.csv", "child", "kid", "sittings.csv, line 1: expected the columns child, date"),
        ("export.toml", "format = 1", "format = 2", "export.toml, line 1, format: expected format = 1"),
        ("export.toml", "marks = 24", "marks = 25", "marks.csv: expected 25 rows, found 24"),
        ("settings/family.toml", "first_day = 2", "first_day = x2", "family.toml, line "),
        ("settings/own.toml", "say", "\0", "own.toml, line 2"),
    ],
)
def test_what_is_not_right_is_one_sentence_with_file_and_line(
    home: Path, exported: Path, capsys: pytest.CaptureFixture[str], file: str, old: str, new: str, says: str
) -> None:
    path = exported / file
    assert old in path.read_text()
    path.write_bytes(path.read_bytes().replace(old.encode(), new.encode(), 1))
    shutil.rmtree(home)
    capsys.readouterr()
    assert run("import", str(exported)) == 3
    err = capsys.readouterr().err
    assert err.startswith(f"warmup: {says}") and err.count("\n") == 1
    assert not home.exists(), "nothing was begun"


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(40))
def test_a_damaged_export_is_refused_with_a_sentence_or_taken_in_whole(
    home: Path, exported: Path, capsys: pytest.CaptureFixture[str], seed: int
) -> None:
    chance = Random(seed)
    path = chance.choice([each for each in sorted(exported.rglob("*")) if each.suffix in (".csv", ".toml")])
    raw = bytearray(path.read_bytes())
    if chance.random() < 0.3 or not raw:
        raw = raw[: chance.randrange(len(raw) + 1)]
    else:
        raw[chance.randrange(len(raw))] ^= 1 << chance.randrange(8)
    path.write_bytes(raw)
    shutil.rmtree(home)
    capsys.readouterr()
    code = run("import", str(exported))
    err = capsys.readouterr().err
    assert code == 0 or (code == 3 and err.startswith("warmup: ") and err.count("\n") == 1)
    assert code == 0 or not home.exists()
    assert path.read_bytes() == raw
