"""Where the files lie: no home folder, links in a circle, a file in the way, and the demo's own place."""

import datetime as dt
import os
import sys
from functools import partial
from pathlib import Path
from types import SimpleNamespace

import pytest

from tests.household import FAMILY, context_at, start_fixed
from warmup.cli.main import DONE, UNUSABLE, USAGE, WRONG, main
from warmup.config.family import Child, default, load, save

NOW = dt.datetime(2026, 11, 25, 8)
COMMANDS = ["today", "ask make-ten", "why make-ten/seven-three", "catalogue", "check", "merge other.db", ""]


def run(command: str) -> int:
    return main(command.split(), lambda: NOW)


def one_sentence(capsys: pytest.CaptureFixture[str]) -> str:
    """What was said on standard error, which is one line, and nothing was printed."""
    out, err = capsys.readouterr()
    assert out == "" and err.count("\n") == 1 and err.startswith("warmup: ") and "Traceback" not in err
    return err


@pytest.mark.parametrize("command", COMMANDS)
def test_no_home_folder_gets_one_sentence(
    command: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def nobody(_user: int) -> None:
        raise KeyError

    for name in ("WARMUP_HOME", "HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setitem(sys.modules, "pwd", SimpleNamespace(getpwuid=nobody))
    assert run(command) == UNUSABLE
    assert "HOME: expected your home folder, found none. Set it, or" in one_sentence(capsys)


@pytest.mark.parametrize("command", COMMANDS)
def test_links_in_a_circle_in_place_of_the_folder(
    command: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "loop").symlink_to("loop")
    (tmp_path / "file").write_text("")
    for name, found in (("loop", "links that lead in a circle"), ("loop/x", "links"), ("file", "a file")):
        monkeypatch.setenv("WARMUP_HOME", str(tmp_path / name))
        assert run(command) == UNUSABLE
        said = one_sentence(capsys)
        assert f"WARMUP_HOME: expected a folder, found {found}" in said and "Name another folder" in said
    assert sorted(path.name for path in tmp_path.iterdir()) == ["file", "loop"]


@pytest.mark.parametrize("command", ["today", "ask make-ten", "why make-ten/seven-three", "merge x.db", ""])
def test_links_in_a_circle_in_place_of_the_family_file(
    command: str, home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    home.mkdir()
    (home / "family.toml").symlink_to("family.toml")
    assert run(command) == UNUSABLE
    assert (
        "family.toml: expected a file that can be read, found links that lead in a circle."
        in one_sentence(capsys)
    )
    assert run("check") == WRONG
    out = capsys.readouterr().out
    assert out.count("lead in a circle") == 1 and "family.toml (not there yet)" not in out
    assert (home / "family.toml").is_symlink() and not (home / "journal.db").exists()


def test_links_in_a_circle_in_place_of_the_other_journal(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "loop").symlink_to("loop")
    home.mkdir()
    assert run(f"merge {tmp_path / 'loop'}") == UNUSABLE
    assert "loop can't be read" in one_sentence(capsys)


def test_a_folder_that_is_gone_from_under_the_program(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "gone").mkdir()
    monkeypatch.chdir(tmp_path / "gone")
    (tmp_path / "gone").rmdir()
    assert run("merge other.db") == USAGE
    assert "name a whole path" in one_sentence(capsys)
    monkeypatch.setenv("WARMUP_HOME", "relative")
    assert run("check") == UNUSABLE
    assert "WARMUP_HOME: expected a folder" in one_sentence(capsys)
    monkeypatch.chdir(tmp_path)


# -- the demo


@pytest.mark.slow
@pytest.mark.parametrize(
    "command",
    ["today", "why make-ten/seven-three", "ask make-ten", "check", "catalogue", "today --date 2026-11-24"],
)
def test_the_demo_is_the_demo_before_and_after_any_command(
    command: str, home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    save(home / "family.toml", default(NOW.date())._replace(children=(Child("Bean"),), weekdays=(0, 1)))
    before = (home / "family.toml").read_bytes()
    own, _ = (run(command), capsys.readouterr())
    for words in (f"--demo {command}", f"{command} --demo"):
        assert run(words) == own == DONE
        out = capsys.readouterr().out
        assert "Bean" not in out and str(home) not in out
        if "today" in command:
            assert "Warm-up for Pip" in out and "week 31" in out
        if command == "check":
            assert "warmup-demo-" in out
    assert [path.name for path in home.iterdir()] == ["family.toml"]
    assert (home / "family.toml").read_bytes() == before


@pytest.mark.slow
def test_the_demo_of_a_merge_merges_into_the_demo(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(f"merge {tmp_path / 'none.db'} --demo") == UNUSABLE
    assert "none.db can't be read" in capsys.readouterr().err and not home.exists()


# -- marks whose family is gone


def with_marks(home: Path, *records: str) -> None:
    """A journal with a morning of each child, and no family file."""
    for record in records:
        context = context_at(home, lambda: NOW, FAMILY._replace(children=(Child(record),)))
        start_fixed(context)
        assert context.journal is not None
        context.journal.shut()
    for name in ("family.toml", "family.toml.bak"):
        (home / name).unlink(missing_ok=True)


def test_check_names_the_marks_that_have_no_child(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with_marks(home, "Bean", "Pip")
    family = default(NOW.date())
    save(home / "family.toml", family._replace(children=(Child("Beanie", journal_name="Bean"),)))
    assert run("check") == WRONG
    out = capsys.readouterr().out
    assert (
        'The journal holds 1 morning of "Pip", and no child in family.toml has that record. '
        'A [[child]] with a nickname and record = "Pip" brings them back.'
    ) in out
    assert '"Bean"' not in out
    text = (home / "family.toml").read_text("utf-8")
    (home / "family.toml").write_text(text + '\n[[child]]\nnickname = "Lark"\nrecord = "Pip"\n')
    assert run("check") == DONE


def test_check_says_where_the_family_went(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with_marks(home, "Bean")
    assert run("check") == WRONG
    out = capsys.readouterr().out
    assert 'The journal holds 1 morning of "Bean", and there is no family.toml: run warmup, whose form' in out
    (home / "family.toml.bak").write_text("")
    assert run("check") == WRONG
    assert "no family.toml: copy family.toml.bak to family.toml, or run warmup" in capsys.readouterr().out


def test_printing_without_a_family_takes_the_child_of_the_journal(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with_marks(home, "Bean")
    assert run("today") == DONE
    assert "Warm-up for Bean" in capsys.readouterr().out


def test_the_morning_opens_with_the_child_of_the_journal(
    home: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The app is not run here: what it is given is enough."""
    from warmup.cli import main as cli
    from warmup.tui import app

    with_marks(home, "Bean")
    given: list[tuple[Child, ...]] = []
    monkeypatch.setattr(cli, "_on_a_terminal", lambda: True)
    monkeypatch.setattr(app.WarmupApp, "run", lambda self: given.append(self.context.family.children))
    assert run("") == DONE
    assert given == [(Child("Bean"),)]
    assert run("--child Nobody") == USAGE and len(given) == 1
    assert "no child called 'Nobody' in family.toml; there is Bean" in capsys.readouterr().err


def test_the_default_family_has_a_child_for_each_record() -> None:
    today = NOW.date()
    assert default(today).children == (Child("Sunshine"),)
    assert default(today, ("Bean", "Pip", "bean")).children == (Child("Bean"), Child("Pip"))
    odd = ("", "\x07", "x" * 41, " Bean", "\u202eback")
    assert default(today, odd).children == (Child("Sunshine"),)
    assert len(default(today, [f"child {n}" for n in range(50)]).children) == 30
    assert [c.journal_name for c in default(today, (*odd, "Lark")).children] == ["Lark"]


def test_the_advice_on_a_bad_file_names_the_version_before_first(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    family = default(NOW.date())
    save(home / "family.toml", family)
    save(home / "family.toml", family._replace(theme="light"))
    (home / "family.toml").write_text("[school", "utf-8")
    assert run("today") == UNUSABLE
    assert "Fix that line, or copy family.toml.bak, the version before it, over" in one_sentence(capsys)
    (home / "family.toml.bak").replace(home / "family.toml")
    assert load(home / "family.toml") == family
    (home / "family.toml").write_text("[school", "utf-8")
    assert run("today") == UNUSABLE
    said = one_sentence(capsys)
    assert "move the file away and start again: the form finds the marks" in said and "delete" not in said


def test_old_temporary_files_are_cleared_at_the_next_morning(
    home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The morning itself is not opened here: what comes before it has cleared them by then."""
    from warmup.cli import main as cli
    from warmup.cli import opening

    save(home / "family.toml", default(NOW.date()))
    for name in (".family.toml-abcdefgh", "mine.txt"):
        (home / name).write_text("")
        os.utime(home / name, (NOW.timestamp() - 200_000,) * 2)

    def stop(*_args: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(cli, "_on_a_terminal", lambda: True)
    monkeypatch.setattr(opening, "kept", stop)
    assert main([], partial(dt.datetime.combine, NOW.date(), NOW.time())) == DONE
    assert sorted(path.name for path in home.iterdir()) == ["family.toml", "mine.txt"]
