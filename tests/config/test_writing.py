"""Files written whole: the version before, windows that cross, and what a killed program leaves."""

import datetime as dt
import os
from dataclasses import replace
from pathlib import Path

import pytest

from tests.config.families import FAMILY
from tests.config.layouts import CHANGES, by_hand
from warmup.config import writing
from warmup.config.family import load, save
from warmup.config.toml_file import FileProblem

day = dt.date


# -- the version before


def test_what_was_written_by_hand_outlives_quick_saves_in_the_backup(tmp_path: Path) -> None:
    path, backup = tmp_path / "family.toml", tmp_path / "family.toml.bak"
    save(path, FAMILY)
    by_hand(path, path.read_text("utf-8") + "\n# by hand\n")
    written_by_hand = path.read_text("utf-8")
    now = save(path, FAMILY._replace(theme="light"), FAMILY)
    assert backup.read_text("utf-8") == written_by_hand
    for change in ("held", "off", "paused", "covered"):
        now = save(path, CHANGES[change](now), now)
        assert backup.read_text("utf-8") == written_by_hand
    by_hand(path, path.read_text("utf-8") + "# again\n")
    again = path.read_text("utf-8")
    save(path, now._replace(theme="dark"), now)
    assert backup.read_text("utf-8") == again


def test_the_backup_of_another_day_gives_way(tmp_path: Path) -> None:
    path, backup = tmp_path / "family.toml", tmp_path / "family.toml.bak"
    save(path, FAMILY)
    save(path, FAMILY._replace(theme="light"))
    yesterday = path.stat().st_mtime - writing.QUICK - 60
    for file in (path, backup):
        os.utime(file, (yesterday, yesterday))
    text = path.read_text("utf-8")
    save(path, FAMILY._replace(theme="dark"))
    assert backup.read_text("utf-8") == text


def test_a_save_that_another_window_crosses_is_made_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "family.toml"
    save(path, FAMILY)
    real = writing._temporary
    crossed: list[bool] = []

    def temporary(target: Path, content: bytes) -> Path:
        if target.name == "family.toml" and not crossed:
            crossed.append(True)
            by_hand(path, f'{path.read_text("utf-8")}animal = "Moose"\n')
        return real(target, content)

    monkeypatch.setattr(writing, "_temporary", temporary)
    bean = replace(FAMILY.children[0], held=())
    found = save(path, FAMILY._replace(children=(bean,)), FAMILY)
    assert found == load(path) == FAMILY._replace(children=(bean,), animal="Moose")
    assert sorted(file.name for file in tmp_path.iterdir()) == ["family.toml", "family.toml.bak"]


def test_a_file_that_never_rests_is_left_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "family.toml"
    save(path, FAMILY)
    real = writing._temporary

    def temporary(target: Path, content: bytes) -> Path:
        by_hand(path, path.read_text("utf-8") + "# on and on\n")
        return real(target, content)

    monkeypatch.setattr(writing, "_temporary", temporary)
    with pytest.raises(FileProblem, match="keeps changing"):
        save(path, FAMILY._replace(theme="light"), FAMILY)
    assert load(path).theme == "dark"


# -- what a killed program leaves


def test_old_temporary_files_of_ours_are_swept_and_nothing_else(tmp_path: Path) -> None:
    now = 1_800_000_000.0
    old, new = now - writing.STRAY - 60, now - 60
    stray = [".family.toml-ab_9xyz0", ".family.toml.bak-00000000"]
    others = [
        "family.toml",
        ".family.toml-short",
        ".daily.toml-ab_9xyz0",
        ".family.toml-AB_9XYZ0",
        "x.family.toml-ab_9xyz0",
    ]
    for name in (*stray, *others):
        (tmp_path / name).write_text("")
        os.utime(tmp_path / name, (old, old))
    (tmp_path / ".family.toml-newer000").write_text("")
    os.utime(tmp_path / ".family.toml-newer000", (new, new))
    (tmp_path / ".family.toml-afolder0").mkdir()
    os.utime(tmp_path / ".family.toml-afolder0", (old, old))
    (tmp_path / ".family.toml-linked00").symlink_to(tmp_path / "family.toml")
    writing.sweep(tmp_path / "family.toml", now)
    left = {".family.toml-newer000", ".family.toml-afolder0", ".family.toml-linked00"}
    assert {file.name for file in tmp_path.iterdir()} == {*others, *left}
    writing.sweep(tmp_path / "no such folder" / "family.toml", now)


def test_a_temporary_file_is_named_as_the_sweep_expects(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A kill between writing and renaming, put in by hand; the next start a day later clears it away."""

    def killed(*_args: object) -> None:
        raise SystemExit

    path = tmp_path / "family.toml"
    save(path, FAMILY)
    monkeypatch.setattr(writing, "_move", killed)
    monkeypatch.setattr(Path, "unlink", lambda *_args, **_more: None)
    for theme in ("light", "dark"):
        with pytest.raises(SystemExit):
            save(path, load(path)._replace(theme="light", adult=theme))
    monkeypatch.undo()
    assert len(list(tmp_path.iterdir())) > 2
    writing.sweep(path, path.stat().st_mtime + writing.STRAY + 60)
    assert [file.name for file in tmp_path.iterdir()] == ["family.toml"]
