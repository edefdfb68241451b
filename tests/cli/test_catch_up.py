"""Marks of paper typed in at the command line: kept, refused, replaced, and taken back."""

import datetime as dt
import io
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.cli.test_brief import AT_EIGHT, run
from tests.household import FAMILY, TODAY
from warmup.cli.main import DONE, USAGE
from warmup.cli.options import parse
from warmup.config import family as families
from warmup.config.family import load, year_of
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.session.on_paper import LETTERS

DAY = max(day for day in year_of(FAMILY).mornings if day < TODAY)
SUNDAY = dt.date(2027, 2, 28)
F, H, N, S = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED


@pytest.fixture
def at_home(home: Path) -> Path:
    """A family whose days are all known."""
    home.mkdir(exist_ok=True)
    families.save(home / "family.toml", FAMILY)
    return home


def marks(home: Path) -> list[tuple[Mark | None, bool, str]]:
    """The marks that are kept, each with whether it is from memory and by whom."""
    journal = Journal.open(home, lambda: AT_EIGHT)
    found = []
    for day in sorted(journal.dates_of("Bean")):
        for row in journal.sessions_of("Bean", day):
            rows = journal.marks_of("Bean", day, row.session)
            found += [(row.mark, row.from_memory, row.adult) for _, row in sorted(rows.items())]
    journal.shut()
    return found


def words(capsys: pytest.CaptureFixture[str]) -> tuple[str, str]:
    out, err = capsys.readouterr()
    return out, err


def test_a_line_of_letters_is_kept_and_said(at_home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("catch-up", str(DAY), "--marks", "wwsn-.w", "--adult", "Grandpa") == DONE
    out, err = words(capsys)
    assert err == "" and "Tuesday, March 2, 2027. School day 106, week 27" in out
    rows = [line.rpartition("” ")[2] for line in out.splitlines() if "“" in line]
    assert rows == [
        "Came easily.", "Came easily.", "Hesitated.", "Not yet.", "Left for today.", "No mark.",
        "Came easily.", "No mark.",
    ]  # fmt: skip
    assert "Kept from memory: six marks." in out
    assert marks(at_home) == [(each, True, "Grandpa") for each in (F, F, H, N, S, F)]
    assert load(at_home / "family.toml") == FAMILY


@pytest.mark.parametrize("typed", ["-w", "- w", "w-", "--", "-", "ws n-"])
def test_a_hyphen_is_a_mark_and_no_option(typed: str, at_home: Path) -> None:
    assert run("catch-up", str(DAY), "--marks", *typed.split()) == DONE
    assert [mark for mark, _, _ in marks(at_home)] == [LETTERS[letter] for letter in typed if letter != " "]


@given(st.lists(st.lists(st.sampled_from(sorted(LETTERS)), min_size=1).map("".join), min_size=1, max_size=5))
def test_the_letters_reach_the_command_whatever_is_between_them(parts: list[str]) -> None:
    """Split into words anywhere, before or behind the date and other options."""
    whole = "".join(parts)
    for line in (["--marks", *parts, "2026-11-24"], ["2026-11-24", "--marks", *parts, "--replace"]):
        found = parse(["catch-up", *line])
        assert found.marks.strip() == whole and found.date == dt.date(2026, 11, 24)


@pytest.mark.parametrize(
    ("argv", "says"),
    [
        ([str(DAY), "--marks", "wwxw"], 'Letter 3 of "wwxw" is "x"'),
        ([str(DAY), "--marks", "wwwwwwwww"], "letter 9 is one too many"),
        (["2027-03-04", "--marks", "w"], "Thursday, March 4, 2027 is still ahead"),
        (["2026-08-30", "--marks", "w"], "before the first school day, Monday, August 31, 2026"),
        ([str(DAY), "--undo"], "nothing is kept of Tuesday, March 2, 2027"),
        (["soon", "--marks", "w"], "a date like"),
        ([], "YYYY-MM-DD"),
        ([str(DAY), "--marks", "w", "--child", "Nobody"], "Nobody"),
        ([str(DAY), "--adult", "\u200b"], "at most 40 letters"),
    ],
)
def test_what_can_t_be_typed_in_gets_a_sentence_and_changes_nothing(
    argv: list[str], says: str, at_home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("catch-up", *argv) == USAGE
    out, err = words(capsys)
    assert says in err and out == "" and "Traceback" not in err
    assert marks(at_home) == [] and load(at_home / "family.toml") == FAMILY


def test_without_a_family_it_says_how_to_begin(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("catch-up", str(DAY), "--marks", "w") == USAGE
    assert "run warmup in a terminal to set it up" in words(capsys)[1]


def test_a_mark_that_is_there_stays_unless_it_is_to_be_replaced(
    at_home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run("catch-up", str(DAY), "--marks", "ww")
    run("catch-up", str(DAY), "--marks", "nws")
    assert "One had another mark already, and that stays; --replace" in words(capsys)[0]
    assert [mark for mark, _, _ in marks(at_home)] == [F, F, H]
    run("catch-up", str(DAY), "--marks", "nw.", "--replace")
    assert "Kept from memory: one mark." in words(capsys)[0]
    assert [mark for mark, _, _ in marks(at_home)] == [N, F, H]
    run("catch-up", str(DAY), "--marks", "nws")
    out = words(capsys)[0]
    assert "Kept from memory: nothing new." in out and "--undo" not in out and "another mark" not in out


def test_undo_takes_back_one_line_after_another(at_home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run("catch-up", str(DAY), "--marks", "ww")
    run("catch-up", str(DAY), "--marks", "sn", "--replace")
    run("catch-up", str(DAY), "--undo")
    assert "Undone: the marks from paper." in words(capsys)[0]
    assert [mark for mark, _, _ in marks(at_home)] == [F, F]
    run("catch-up", str(DAY), "--undo")
    run("catch-up", str(DAY), "--undo")
    assert words(capsys)[0].splitlines() == ["Undone: the marks from paper.", "Nothing to undo."]
    assert {mark for mark, _, _ in marks(at_home)} <= {None}


def test_a_brief_that_was_printed_is_what_the_letters_mean(
    at_home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run("today", "--brief")
    brief = " ".join(words(capsys)[0].split())
    later = AT_EIGHT + dt.timedelta(days=5)
    run("catch-up", str(DAY), "--marks", "nnnnnnnn")
    words(capsys)
    assert run("catch-up", str(TODAY), "--marks", "wsn-.", now=later) == DONE
    said = [
        line.partition("“")[2].rpartition("”")[0] for line in words(capsys)[0].splitlines() if "“" in line
    ]
    assert len(said) == 8 and [brief.index(f"“{say}”") for say in said] == sorted(
        brief.index(f"“{s}”") for s in said
    )


# -- a day that was not planned


def test_a_sunday_does_not_count_unless_it_is_said(at_home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("catch-up", str(SUNDAY), "--marks", "w") == DONE
    assert "Sunday, February 28, 2027. No school was planned that day." in words(capsys)[0]
    assert load(at_home / "family.toml").extra == ()
    run("catch-up", str(SUNDAY), "--undo")
    assert run("catch-up", str(SUNDAY), "--marks", "wx", "--counts") == USAGE
    assert load(at_home / "family.toml").extra == (), "what is refused changes nothing"
    assert run("catch-up", str(SUNDAY), "--marks", "w", "--counts") == DONE
    assert load(at_home / "family.toml").extra == (SUNDAY,)


def test_after_the_year_it_can_t_count(at_home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    july, later = "2027-07-06", dt.datetime(2027, 7, 8, 8)
    assert run("catch-up", july, "--marks", "w", "--counts", now=later) == USAGE
    assert "can't count" in words(capsys)[1]
    assert run("catch-up", july, "--marks", "w", now=later) == DONE


# -- asked in lines


def typed(monkeypatch: pytest.MonkeyPatch, *lines: str) -> None:
    monkeypatch.setattr(sys, "stdin", io.StringIO("".join(f"{line}\n" for line in lines)))


def test_in_lines_it_lists_the_prompts_and_asks_until_it_can_be_read(
    at_home: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    typed(monkeypatch, "ww?", "w s n")
    assert run("catch-up", str(DAY), "--plain") == DONE
    out = words(capsys)[0]
    assert out.index("1. “") < out.index("8. “") < out.index("A letter a prompt: w came easily")
    assert 'Letter 3 of "ww?"' in out and "Kept from memory: three marks." in out
    assert [mark for mark, _, _ in marks(at_home)] == [F, H, N]


@pytest.mark.parametrize("lines", [[""], []])
def test_enter_alone_and_the_end_of_the_input_change_nothing(
    lines: list[str], at_home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    typed(monkeypatch, *lines)
    assert run("catch-up", str(DAY), "--plain") == DONE
    assert marks(at_home) == []


def test_of_a_sunday_it_asks_whether_it_counts(
    at_home: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    typed(monkeypatch, "what", "y", "w")
    assert run("catch-up", str(SUNDAY), "--plain") == DONE
    assert '"what" is none of these: ' in words(capsys)[0]
    assert load(at_home / "family.toml").extra == (SUNDAY,) and [mark for mark, _, _ in marks(at_home)] == [F]
