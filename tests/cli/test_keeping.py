"""Copies made and put back by command, the weekly one, and what is said of them."""

import datetime as dt
import io
import os
import sys
from pathlib import Path

import pytest

from tests.cli.test_cli import run
from tests.journal.journals import ROWS
from warmup.cli import keeping
from warmup.cli.keeping import after_the_close, made_in, standing_lines
from warmup.config import family as families
from warmup.config.family import Child, Family
from warmup.config.keeping import Note, leave_note, read_note
from warmup.config.places import Places
from warmup.journal.copies import keep_copy, made_name
from warmup.journal.journal import Change, Journal, MarkRow
from warmup.model import Mark
from warmup.session.context import Context, open_context

TODAY = dt.date(2026, 11, 25)
NOW = dt.datetime(2026, 11, 25, 8)
FAMILY = Family(first_day=dt.date(2026, 8, 31), began=dt.date(2026, 11, 2), children=(Child("Bean"),))


def lived(home: Path, child: str, days: range) -> Path:
    journal = Journal.open(home, lambda: NOW)
    for day in days:
        marks = [MarkRow(Mark.FLUENT, 0, "", False, "")] * len(ROWS)
        journal.start(child, dt.date(2026, 11, day), "daily", "{}", ROWS, marks)
    journal.shut()
    return journal.path


def answers(monkeypatch: pytest.MonkeyPatch, *lines: str) -> None:
    monkeypatch.setattr(sys, "stdin", io.StringIO("".join(f"{line}\n" for line in lines)))


@pytest.fixture
def family(home: Path) -> Family:
    families.save(home / "family.toml", FAMILY)
    return FAMILY


@pytest.mark.usefixtures("family")
def test_a_copy_and_back_by_command(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    path = lived(home, "Bean", range(2, 5))
    assert run("copy", str(tmp_path / "copy.db")) == 0
    assert capsys.readouterr().out.splitlines() == [
        "Bean: 3 mornings copied.", "The copy was read back and is whole."
    ]  # fmt: skip
    lived(home, "Bean", range(9, 11))
    before = path.read_bytes()
    for said in ("no", ""):
        answers(monkeypatch, *([said] if said else []))
        assert run("restore", str(tmp_path / "copy.db")) == 0
        assert "Nothing was changed." in capsys.readouterr().out and path.read_bytes() == before
    answers(monkeypatch, "Yes")
    assert run("restore", str(tmp_path / "copy.db")) == 0
    assert capsys.readouterr().out.splitlines() == [
        "Bean: 5 mornings here, 3 in the copy.",
        "Put the copy in the place of your journal? Type yes: ",
        "The copy is your journal now.",
        "The one before is kept beside it: “warmup merge journal-before-2026-11-25.db” takes in what the "
        "copy lacks.",
    ]
    assert (home / "journal-before-2026-11-25.db").read_bytes() == before
    assert Journal.open(home, lambda: NOW, read_only=True).mornings() == {"Bean": 3}
    assert run("merge", "journal-before-2026-11-25.db") == 0, "a bare name beside the journal"
    assert "Bean: 5 mornings in all, 2 new here." in capsys.readouterr().out


@pytest.mark.usefixtures("family")
def test_what_can_t_be_copied_or_put_back_is_one_sentence_without_our_path(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "text.db").write_text("no journal")
    assert run("copy", str(tmp_path / "copy.db")) == 2
    path = lived(home, "Bean", range(2, 5))
    (tmp_path / "there.db").write_text("mine")
    before = path.read_bytes()
    for words, code in (
        (("restore", str(path)), 2),
        (("restore", str(tmp_path / "text.db")), 3),
        (("restore", str(tmp_path / "none.db")), 3),
        (("copy", str(tmp_path / "there.db")), 3),
        (("copy", str(tmp_path / "no" / "folder.db")), 3),
    ):
        capsys.readouterr()
        assert run(*words) == code
        out, err = capsys.readouterr()
        assert not out and err.startswith("warmup: ") and err.count("\n") == 1
        assert words[0] == "restore" or str(home) not in err
    path.write_bytes(before[:6000])
    assert run("copy", str(tmp_path / "copy.db")) == 3
    assert str(home) not in capsys.readouterr().err and not (tmp_path / "copy.db").exists()


def test_into_a_folder_the_copy_has_the_day_s_name(home: Path, tmp_path: Path) -> None:
    lived(home, "Bean", range(2, 4))
    assert run("copy", str(tmp_path)) == 0
    assert (tmp_path / "warmup-copy-2026-11-25.db").exists()


# -- by itself


def closed(home: Path, folder: str, today: dt.date = TODAY, *, close: bool = True) -> tuple[Context, Journal]:
    """A family with a folder for copies, and today's morning closed."""
    places = Places(home, home)
    family = FAMILY._replace(copies=folder)
    journal = Journal.open(home, lambda: dt.datetime.combine(today, dt.time(8)))
    if not journal.sessions_of("Bean", today):
        journal.start("Bean", today, "daily", "{}", ROWS)
    if close:
        journal.change("Bean", today, 1, Change(closed=True))
    return open_context(places, family, today, journal), journal


def week(home: Path, folder: Path, today: dt.date, *, close: bool = True) -> None:
    context, journal = closed(home, str(folder), today, close=close)
    after_the_close(Places(home, home), context, journal)
    journal.shut()


@pytest.mark.slow
def test_once_a_week_after_the_close_and_the_last_eight_stay(home: Path, tmp_path: Path) -> None:
    (tmp_path / "holiday.db").write_text("mine")
    (tmp_path / "warmup-notes.db").write_text("mine")
    week(home, tmp_path, TODAY, close=False)
    assert made_in(tmp_path) == [], "not before the close"
    for day in range(70):
        week(home, tmp_path, TODAY + dt.timedelta(day))
    wanted = [made_name(TODAY + dt.timedelta(7 * number)) for number in range(2, 10)]
    assert [path.name for path in made_in(tmp_path)] == wanted
    assert len(list(tmp_path.iterdir())) == 10, "nothing else is taken away or left"
    assert read_note(home).copied == TODAY + dt.timedelta(63)
    keep_copy(made_in(tmp_path)[-1], tmp_path / "read.db")


def test_a_folder_that_is_gone_is_one_line_and_not_made(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "relative").mkdir()
    monkeypatch.chdir(tmp_path)
    for folder in (tmp_path / "stick" / "warmup", Path("relative"), Path("~nobody-here/x")):
        week(home, folder, TODAY)
        assert capsys.readouterr().out == "No weekly copy today: the folder for it is not there.\n"
    assert not (tmp_path / "stick").exists() and read_note(home).copied is None


def test_a_folder_that_takes_no_writing_is_one_line(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The tests may run as a user whom no mode stops, so the refusals are put in by hand."""
    for error in (PermissionError(13, "Permission denied"), OSError(28, "No space left on device")):

        def refuse(*_args: object, error: OSError = error, **_options: object) -> None:
            raise error

        monkeypatch.setattr("warmup.journal.copies.tempfile.mkstemp", refuse)
        week(home, tmp_path, TODAY)
        out = capsys.readouterr().out
        assert (
            out.startswith("No weekly copy today: ") and out.count("\n") == 1 and str(error.strerror) in out
        )
    assert list(tmp_path.iterdir()) == []


def test_no_folder_no_copy_and_nothing_read(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    context, journal = closed(home, "")
    monkeypatch.setattr(keeping, "read_note", lambda _: pytest.fail("read"))
    after_the_close(Places(home, home), context, journal)
    journal.shut()


def lines(home: Path, folder: str = "", days: int = 0) -> tuple[str, ...]:
    return standing_lines(Places(home, home), FAMILY._replace(copies=folder), TODAY + dt.timedelta(days))


def test_after_two_weeks_without_a_copy_a_line_says_so(home: Path, tmp_path: Path) -> None:
    home.mkdir()
    assert [lines(home, str(tmp_path), day) for day in (0, 13)] == [(), ()]
    assert lines(home, str(tmp_path), 14) == ("No weekly copy yet. Is the stick in?",)
    leave_note(home, read_note(home)._replace(copied=TODAY))
    assert lines(home, str(tmp_path), 13) == ()
    assert lines(home, str(tmp_path), 14) == ("No weekly copy since November 25. Is the stick in?",)
    assert lines(home, str(tmp_path / "other"), 14) == (), "another folder has its own two weeks"


def test_without_a_folder_it_is_said_every_eight_weeks_at_most(home: Path) -> None:
    home.mkdir()
    told = [day for day in range(200) if lines(home, days=day)]
    began = (TODAY - FAMILY.began).days
    assert told == [56 - began, 112 - began, 168 - began]


def test_a_second_journal_is_offered_until_it_was_taken_in(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = lived(home, "Bean", range(2, 5))
    families.save(home / "family.toml", FAMILY)
    other = home / "journal (from the laptop).db"
    keep_copy(path, other)
    quoted = "'journal (from the laptop).db'" if os.name == "posix" else '"journal (from the laptop).db"'
    wanted = (f"A second journal lies beside yours: “warmup merge {quoted}” takes it in.",)
    before = other.read_bytes()
    assert lines(home) == lines(home) == wanted
    assert run("merge", other.name) == 0 and lines(home) == ()
    assert other.read_bytes() == before
    os.utime(other, (1, 1))
    assert lines(home) == wanted, "it changed since"
    assert not capsys.readouterr().err


def test_the_check_says_when_a_copy_worked_last(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    home.mkdir()
    families.save(home / "family.toml", FAMILY)
    run("check")
    assert "Weekly copies: none ([keeping] copies in family.toml names a folder" in capsys.readouterr().out
    families.save(home / "family.toml", FAMILY._replace(copies=str(tmp_path / "stick")))
    run("check")
    assert "stick (none made yet; the folder is not there now)" in capsys.readouterr().out
    (tmp_path / "stick").mkdir()
    week(home, tmp_path / "stick", TODAY)
    run("check")
    assert f"Weekly copies: {tmp_path / 'stick'} (last on November 25, 2026)" in capsys.readouterr().out


@pytest.mark.parametrize(
    "raw", [b"", b"{}", b"[" * 99_999, b'{"folder":1}', b"\xff", b'{"folder":"a","since":"0001-01-01"}']
)
def test_a_note_that_is_none_says_nothing(home: Path, raw: bytes) -> None:
    home.mkdir()
    (home / "keeping.json").write_bytes(raw)
    assert read_note(home) == Note()
    note = Note("/stick", TODAY, None, TODAY, {"a.db": (1, 2)})
    leave_note(home, note)
    assert read_note(home) == note and [path.name for path in home.iterdir()] == ["keeping.json"]
    leave_note(home / "gone", note)
    assert not (home / "gone").exists()


def test_a_morning_in_lines_says_the_lines_and_leaves_a_copy(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    _, journal = closed(home, str(tmp_path))
    journal.shut()
    known = FAMILY._replace(known_until=TODAY, copies=str(tmp_path))
    families.save(home / "family.toml", known)
    keep_copy(home / "journal.db", home / "second.db")
    for guest, copies in ((["--guest", "Jo"], 0), ([], 1)):
        answers(monkeypatch, "e")
        assert run("--plain", *guest) == 0
        said = "A second journal lies beside yours: “warmup merge second.db” takes it in."
        assert (said in capsys.readouterr().out.splitlines()) is bool(copies)
        assert len(made_in(tmp_path)) == copies


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such pipes")
def test_a_pipe_in_the_place_of_the_note_is_not_waited_for(home: Path) -> None:
    home.mkdir(exist_ok=True)
    (home / "keeping.json").unlink(missing_ok=True)
    os.mkfifo(home / "keeping.json")
    assert read_note(home) == Note()
