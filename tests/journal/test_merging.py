"""Two laptops: what the other one knows is taken in by a command, and nothing else changes."""

import datetime as dt
from pathlib import Path

import pytest

from warmup.cli.main import DONE, UNUSABLE, USAGE, main
from warmup.config import family as families
from warmup.config.family import Child, Family
from warmup.journal.journal import Journal, MarkRow
from warmup.model import Mark

NOW = dt.datetime(2026, 11, 25, 8)
ROWS = [("count-on/from-7", "a"), ("make-ten/seven-three", "b")]


def kept(folder: Path, child: str, days: range, mark: Mark) -> Path:
    """A journal with a whole morning on each of these days of November, begun later when not at home."""
    journal = Journal.open(folder, lambda: NOW + dt.timedelta(hours=folder.name == "stick"))
    for day in days:
        at = f"2026-11-{day:02}T08:00:00+00:00"
        marks = [MarkRow(mark, 0, "", False, at)] * 2
        journal.start(child, dt.date(2026, 11, day), "daily", "{}", ROWS, marks)
    journal.shut()
    return journal.path


def merge(other: Path) -> int:
    return main(["merge", str(other)], lambda: NOW)


@pytest.fixture
def family(home: Path) -> Family:
    found = Family(
        first_day=dt.date(2026, 8, 31),
        began=dt.date(2026, 8, 31),
        children=(Child("[b]Bean", journal_name="Bean"),),
    )
    families.save(home / "family.toml", found)
    return found


@pytest.mark.usefixtures("family")
@pytest.mark.parametrize("whole_folder", [True, False])
def test_what_the_other_machine_knows_is_taken_in(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], whole_folder: bool
) -> None:
    kept(home, "Bean", range(2, 5), Mark.FLUENT)
    other = kept(tmp_path / "stick", "Bean", range(4, 10), Mark.NOT_YET)
    kept(tmp_path / "stick", "Pip", range(2, 3), Mark.FLUENT)
    before = other.read_bytes()
    for new in (5, 0):
        assert merge(other.parent if whole_folder else other) == DONE
        assert capsys.readouterr().out.splitlines() == [
            f"[b]Bean: 8 mornings in all, {new} new here.",
            f"Pip: 1 morning in all, {new // 5} new here; family.toml has no child of that name.",
            "Of two marks on one prompt the later counts. The other journal is as it was.",
        ]
    journal = Journal.open(home, lambda: NOW, read_only=True)
    assert [(asked.date.day, asked.mark) for asked in journal.history("Bean")[::2]] == [
        *((day, Mark.FLUENT) for day in (2, 3, 4)), *((day, Mark.NOT_YET) for day in range(4, 10))
    ], "the fourth was done on both: two sessions"  # fmt: skip
    assert other.read_bytes() == before


@pytest.mark.usefixtures("family")
@pytest.mark.parametrize(
    ("what", "code"), [("own", USAGE), ("missing", UNUSABLE), ("text", UNUSABLE), ("newer", UNUSABLE)]
)
def test_what_cannot_be_taken_in_is_told_in_a_sentence_and_changes_nothing(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], what: str, code: int
) -> None:
    own = kept(home, "Bean", range(2, 5), Mark.FLUENT)
    other = own if what == "own" else tmp_path / "other.db"
    if what == "text":
        other.write_text("no journal at all")
    if what == "newer":
        raw = kept(tmp_path / "newer", "Bean", range(2, 3), Mark.FLUENT).read_bytes()
        other.write_bytes(raw[:60] + (9).to_bytes(4, "big") + raw[64:])
    assert merge(other) == code
    out, err = capsys.readouterr()
    assert not out and err.startswith("warmup: ") and err.count("\n") == 1 and other.name in err
    assert Journal.open(home, lambda: NOW, read_only=True).mornings() == {"Bean": 3}


def test_without_a_family_or_a_journal_it_is_all_new(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert merge(kept(tmp_path / "stick", "Bean", range(2, 4), Mark.HESITATED)) == DONE
    assert capsys.readouterr().out.startswith("Bean: 2 mornings in all, 2 new here")
    assert not (home / "family.toml").exists()


@pytest.mark.usefixtures("family")
def test_what_cannot_be_written_is_not_said_to_be_taken_in(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (home / "journal.db").mkdir()
    assert merge(kept(tmp_path / "stick", "Bean", range(2, 4), Mark.FLUENT)) == UNUSABLE
    out, err = capsys.readouterr()
    assert not out and "what was taken in is not kept" in err and "Traceback" not in err
