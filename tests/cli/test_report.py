"""``warmup report``: what it prints, writes and refuses."""

import csv
import datetime as dt
import io
import json
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, StandingClock, context_at, lived
from warmup.cli import main as command
from warmup.cli.main import DONE, UNUSABLE, USAGE, main
from warmup.config.family import Child
from warmup.model import Mark
from warmup.session.past import PastMorning

AT_EIGHT = dt.datetime.combine(TODAY, dt.time(8))
YESTERDAY = TODAY - dt.timedelta(1)


def run(*argv: str) -> int:
    """The exit code of a command, run here; argparse's own exits as codes."""
    try:
        return main(argv, lambda: AT_EIGHT)
    except SystemExit as ended:
        return int(ended.code or 0)


@pytest.fixture(autouse=True)
def kept(home: Path, clock: StandingClock) -> Path:
    """Two children, and one morning of the first."""
    home.mkdir()
    context = context_at(home, clock, FAMILY._replace(children=(Child("Bean"), Child("Wren"))))
    lived(context, YESTERDAY, {"make-ten/seven-three": Mark.FLUENT, "count/to-20": Mark.NOT_YET})
    assert context.journal is not None
    context.journal.shut()
    return home


def files(home: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in home.rglob("*.*")}


def test_it_prints_text_and_changes_nothing(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = files(home)
    assert run("report") == DONE
    told = capsys.readouterr().out
    assert told.startswith("Math warm-ups: Bean\n") and "on 1 day, about 1 minute in all, with 2" in told
    assert files(home) == before


def test_each_form_is_printed_as_it_is(capfdbinary: pytest.CaptureFixture[bytes]) -> None:
    assert run("report", "--form", "csv") == DONE
    table = capfdbinary.readouterr().out
    assert table.startswith(b"part,name,") and b"\r\n" in table and b"\r\r" not in table
    rows = list(csv.DictReader(io.StringIO(table.decode(), newline="")))
    assert [row["date"] for row in rows if row["part"] == "day"] == [f"{YESTERDAY}"]
    assert run("report", "--form", "json", "--letter", "quarter") == DONE
    assert json.loads(capfdbinary.readouterr().out)["kind"] == "letter"
    assert run("report", "--form", "html", "--summer") == DONE
    assert capfdbinary.readouterr().out.startswith(b"<!DOCTYPE html>\n")


def test_it_is_of_the_child_and_the_days_that_are_named(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("report", "--child", "Wren", "--from", "2027-02-01", "--to", "2027-02-28") == DONE
    told = capsys.readouterr().out
    assert "Math warm-ups: Wren" in told and "February 1, 2027 to February 28, 2027." in told
    assert "on 0 days" in told and "Bean" not in told
    assert run("report", "--child", "Fern") == USAGE


@pytest.mark.parametrize(
    ("argv", "why"),
    [
        (("--letter", "year", "--from", "2027-02-01"), "a letter is about a whole quarter or year"),
        (("--letter", "year", "--summer"), "not allowed with argument"),
        (("--notes", "--summer"), "--notes goes with a record"),
        (("--from", "2027-03-04"), "the days end on 2027-03-03"),
        (("--from", "2027-03-02", "--to", "2027-03-01"), "the days end on 2027-03-01"),
        (("--form", "pdf"), "invalid choice"),
        (("--to", "yesterday"), "expected a date like"),
    ],
)
def test_what_makes_no_report_is_refused(
    argv: tuple[str, ...], why: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("report", *argv) == USAGE
    told = capsys.readouterr()
    assert why in told.err and told.out == "" and "Traceback" not in told.err


@pytest.mark.parametrize(
    ("name", "argv", "begins"),
    [
        ("a.html", (), b"<!DOCTYPE"),
        ("a.csv", (), b"part,"),
        ("a", (), b"Math warm-ups"),
        ("a.txt", ("--form", "json"), b"{"),
    ],
)
def test_out_writes_the_form_its_ending_says(
    tmp_path: Path, name: str, argv: tuple[str, ...], begins: bytes, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("report", "--out", str(tmp_path / name), *argv) == DONE
    assert (tmp_path / name).read_bytes().startswith(begins)
    assert capsys.readouterr().out == f"Written: {tmp_path / name}\n"


def test_out_never_writes_over_a_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "a.html").write_text("mine")
    assert run("report", "--out", str(tmp_path / "a.html")) == UNUSABLE
    assert (tmp_path / "a.html").read_text() == "mine"
    assert "there is a file of that name already" in capsys.readouterr().err
    assert run("report", "--out", str(tmp_path / "no" / "a.html")) == UNUSABLE
    assert [path.name for path in tmp_path.iterdir()] == ["a.html"]


def test_in_a_terminal_it_is_shown_first(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    shown: list[object] = []
    monkeypatch.setattr(command, "_on_a_terminal", lambda: True)
    monkeypatch.setattr("warmup.tui.report.preview", lambda *given: shown.append(given[-1]))
    assert run("report", "--form", "html") == DONE and len(shown) == 1
    assert capsys.readouterr().out == ""
    assert run("--plain", "report") == run("report", "--out", str(tmp_path / "a.txt")) == DONE
    assert len(shown) == 1 and "Math warm-ups" in capsys.readouterr().out


def test_without_a_family_and_a_journal_it_is_empty(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for path in (*home.glob("*.*"),):
        path.unlink()
    assert run("report") == DONE
    told = capsys.readouterr()
    assert "on 0 days" in told.out and "no family.toml yet" in told.err
    assert [*home.glob("*.*")] == []


def test_notes_are_told_only_when_they_are_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("report", "--notes") == DONE
    told = capsys.readouterr()
    assert "there are no notes that were marked for reports" in told.err and "Notes" not in told.out


def test_a_note_that_is_ticked_is_told_and_no_other(
    home: Path, clock: StandingClock, capsys: pytest.CaptureFixture[str]
) -> None:
    context = context_at(home, clock, FAMILY._replace(children=(Child("Bean"), Child("Wren"))))
    assert context.journal is not None
    past = PastMorning(context, context.journal, YESTERDAY, 1)
    past.write(0, "Like the eggs on Sunday!")
    past.share(0)
    past.write(1, "Slept badly.")
    assert context.journal.shut()
    assert run("report", "--notes") == DONE
    told = capsys.readouterr().out
    assert "Like the eggs on Sunday!" in told and "Slept badly" not in told
    assert run("report") == DONE
    assert "eggs" not in capsys.readouterr().out
