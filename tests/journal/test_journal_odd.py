"""One odd value in a whole journal: told by the check, left out of a merge, and never a traceback."""

import datetime as dt
import json
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from tests.household import FAMILY
from tests.journal.journals import DAY, ROWS, Hand, begun, clock, mark, marks_of, open_session, step
from warmup.cli.main import DONE, WRONG, main
from warmup.config import family as families
from warmup.config.family import Child
from warmup.journal.journal import Action, Change, Journal, JournalProblem, NoteRow
from warmup.journal.rows import MORNING
from warmup.model import Mark

NOW = dt.datetime(2026, 11, 25, 8)
# What no check of the tables refuses, and what the check of the program must say of it.
ODD: dict[str, tuple[str, str]] = {
    "a date of no calendar": ("UPDATE {table} SET date = '2026-31-26'", "a date no calendar has"),
    "the thirtieth of February": ("UPDATE {table} SET date = '2026-02-30'", "a date no calendar has"),
    "a year before all": ("UPDATE {table} SET date = '0001-01-01'", "a date no calendar has"),
    "a year after all": ("UPDATE {table} SET date = '9999-12-31'", "a date no calendar has"),
    "a child of bytes": ("UPDATE {table} SET child = x'80ff'", "a child's name that is no text"),
    "a session below one": ("UPDATE {table} SET sitting = -3", "a session whose number is none"),
    "the largest number": ("UPDATE sittings SET sitting = 9223372036854775807", ""),
    "a beginning of bytes": ("UPDATE sittings SET started = x'00'", "a session whose beginning is no text"),
    "touched by bytes": ("UPDATE sittings SET touched = x'ff'", "a time that is none"),
    "touched soon": ("UPDATE sittings SET touched = 'soon'", "a time that is none"),
    "a shape of bytes": ("UPDATE sittings SET shape = x'00'", "something else where text should be"),
    "a routine of bytes": ("UPDATE sittings SET routine = x'7b7d'", "something else where text should be"),
    "closed by bytes": ("UPDATE sittings SET closed = x'00'", "something else where text should be"),
    "standing before all": ("UPDATE sittings SET position = -7, furthest = -7", "a number that can't be"),
    "further back than an opening": ("UPDATE sittings SET furthest = -2", "a number that can't be"),
    "standing beyond all": ("UPDATE sittings SET position = 1 << 62, furthest = 1 << 62", "a number that"),
    "an item of bytes": ("UPDATE prompts SET item = x'00ff' WHERE position = 1", "a prompt whose item"),
    "a wording of bytes": ("UPDATE prompts SET wording = x'00'", "something else where text should be"),
    "a prompt before all": ("UPDATE prompts SET position = -1 WHERE position = 3", "a position no"),
    "a prompt beyond all": ("UPDATE prompts SET position = 1 << 62 WHERE position = 3", "a position no"),
    "a mark beyond all": ("UPDATE marks SET position = 1 << 62 WHERE position = 1", "a position no"),
    "an adult of bytes": ("UPDATE marks SET adult = x'00'", "something else where text should be"),
    "marked by bytes": ("UPDATE marks SET at = x'00'", "a time that is none"),
    "marked soon": ("UPDATE marks SET at = 'soon'", "a time that is none"),
    "marked in the last year": ("UPDATE marks SET at = '9999-12-31T23:59:59.999999+00:00'", "a time that is"),
    "a hundred cues": ("UPDATE marks SET cue = 100", "a number that can't be"),
    "an action of bytes": ("UPDATE actions SET before = x'00'", "an action with something else"),
    "an action of escapes": ("UPDATE actions SET what = char(27) || '[31m'", "an action whose kind"),
    "an action at no time": ("UPDATE actions SET at = 'now'", "an action at a time that is none"),
    "a note of bytes": ("UPDATE notes SET text = x'00ff'", "a note that is no text"),
    "a note of escapes": ("UPDATE notes SET text = char(27) || '[31mred'", "a note that is no plain line"),
    "a note as long as a book": ("UPDATE notes SET text = hex(zeroblob(999))", "a note that is no plain"),
    "a note before all": ("UPDATE notes SET position = -2 WHERE position = 1", "a position no"),
    "a note by bytes": ("UPDATE notes SET adult = x'00'", "something else where text should be"),
    "noted soon": ("UPDATE notes SET at = 'soon'", "a time that is none"),
    "an action of no place": ("UPDATE actions SET position = -1", "a position no"),
}  # fmt: skip


def with_odd(journal: Journal, sql: str) -> Path:
    """A journal with two marked mornings and an action, the odd value in it; the file itself stays whole."""
    yesterday = DAY - dt.timedelta(1)
    journal.start("Bean", yesterday, "daily", "{}", ROWS, [mark(Mark.NOT_YET)] * 4)
    begun(journal, marks=2).log("Bean", DAY, 1, Action("swap", 1))
    notes = {1: NoteRow("Six and one more.", adult="Jo"), MORNING: NoteRow("In a hurry.", shared=True)}
    journal.change("Bean", DAY, 1, Change(notes=notes))
    journal.shut()
    with closing(sqlite3.connect(journal.path, isolation_level=None)) as db:
        for table in ("sittings", "prompts", "marks", "notes") if "{table}" in sql else ("",):
            change = sql.format(table=table)
            only = f"date = '{DAY}' AND sitting = 1"
            db.execute(f"{change} AND {only}" if "WHERE" in change else f"{change} WHERE {only}")
        assert db.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
    return journal.path


def use(journal: Journal) -> None:
    """All that the program asks of a journal, and a morning more."""
    for child in ("Bean", "Pip"):
        journal.history(child), journal.history(child, before=DAY), journal.dates_of(child)
        journal.sessions_of(child, DAY), open_session(journal, child, DAY), journal.last_mark(child, DAY, 1)
        journal.marks_of(child, DAY, 1), journal.items_of(child, DAY, 1), journal.actions_of(child, DAY)
        journal.last_undoable(child, DAY)
        journal.whole_of(child, DAY, 1), journal.past(child, DAY)
    assert set(journal.mornings()) <= {"Bean", "Pip"}
    known = len(journal.sessions_of("Bean", DAY))
    session = journal.start("Bean", DAY, "daily", "{}", ROWS, action=Action("start"), known=known)
    step(journal, "Bean", DAY, session, 1, shown=1, at=0, mark=mark(), action=Action("mark", 0))
    assert journal.marks_of("Bean", DAY, session)[0].mark is Mark.FLUENT and journal.saving
    newest = journal.last_undoable("Bean", DAY)
    assert newest is not None and newest.what == "mark"


@pytest.mark.slow
@pytest.mark.parametrize("kind", ODD)
def test_an_odd_value_is_told_and_stops_nothing(hand: Hand, tmp_path: Path, kind: str) -> None:
    sql, said = ODD[kind]
    with_odd(hand(), sql)
    found = Journal.examine(tmp_path)
    assert (said and any(said in each and "the first of" in each for each in found)) or found == []
    hand(read_only=True).history("Bean")
    journal = hand()
    assert not journal.notice
    assert len([line for line in journal.history("Bean") if line.date < DAY]) == 4, "the day before stays"
    use(journal)


@pytest.mark.slow
@pytest.mark.parametrize("kind", ODD)
def test_an_odd_value_poisons_no_journal_it_is_merged_into(hand: Hand, tmp_path: Path, kind: str) -> None:
    sql, said = ODD[kind]
    other = with_odd(hand(tmp_path / "other", clock(dt.datetime(2026, 11, 25, 10))), sql)
    before = other.read_bytes()
    journal = begun(hand(tmp_path / "one"), marks=2)
    left = journal.merge(other)
    assert not said or any(said in each.what for each in left)
    assert Journal.examine(tmp_path / "one") == [] and marks_of(journal) == {0: Mark.FLUENT, 1: Mark.FLUENT}
    assert len([line for line in journal.history("Bean") if line.date < DAY]) == 4
    assert journal.merge(other) == left and other.read_bytes() == before
    use(journal)


def test_the_check_counts_odd_rows_and_names_the_first(
    hand: Hand, home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    families.save(home / "family.toml", FAMILY._replace(children=(Child("Bean", journal_name="Bean"),)))
    with_odd(hand(home), "UPDATE marks SET cue = 100")
    assert main(["check"], lambda: NOW) == WRONG
    line = capsys.readouterr().out.splitlines()[-1]
    assert f'a number that can\'t be (2, the first of "Bean", "{DAY}", 1)' in line


def test_a_merge_says_what_it_left_out(
    hand: Hand, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = with_odd(hand(tmp_path / "other"), ODD["a date of no calendar"][0])
    assert main(["merge", str(other)], lambda: NOW) == DONE
    said = capsys.readouterr().out.splitlines()
    assert "Bean: 1 morning in all, 1 new here; family.toml has no child of that name." in said
    assert said[-2].startswith("Left out, since it makes no sense: a date no calendar has (1, ")


BAD_CHECKS = {
    "unknown mark": "UPDATE marks SET mark = 'brilliant' WHERE position = 1",
    "a number for text": "UPDATE sittings SET rough = 7",
    "text for a number": "UPDATE marks SET cue = 'two'",
    "half shared": "UPDATE notes SET shared = 0.5",
}


@pytest.mark.parametrize("kind", BAD_CHECKS)
def test_what_the_checks_refuse_is_damage_though_only_read(hand: Hand, tmp_path: Path, kind: str) -> None:
    path = begun(hand(), marks=2)
    path.change("Bean", DAY, 1, Change(notes={0: NoteRow("Seven.")}))
    path.shut()
    with closing(sqlite3.connect(path.path, isolation_level=None)) as db:
        db.execute("PRAGMA ignore_check_constraints = ON")
        db.execute(BAD_CHECKS[kind])
    before = path.path.read_bytes()
    assert "damaged (CHECK constraint failed" in Journal.examine(tmp_path)[0]
    looked = hand(read_only=True)
    assert "is damaged (CHECK constraint failed" in looked.notice and path.path.read_bytes() == before
    with pytest.raises(JournalProblem, match="no whole journal"):
        hand(tmp_path / "other").merge(path.path)
    new = hand()
    assert "was damaged" in new.notice and Journal.examine(tmp_path) == []
    assert new.history("Bean") == looked.history("Bean")
    assert marks_of(new)[0] is Mark.FLUENT, "the good mark stays"


FOREIGN = {
    "trigger": (
        "CREATE TRIGGER more AFTER INSERT ON marks BEGIN "
        "UPDATE marks SET mark = 'fluent' WHERE mark <> 'fluent'; END"
    ),
    "view": "CREATE VIEW more AS SELECT * FROM marks",
    "index": "CREATE UNIQUE INDEX more ON marks (mark)",
    "column": "ALTER TABLE marks ADD COLUMN stars INTEGER NOT NULL DEFAULT 0",
    "table without its checks": (
        "CREATE TABLE other AS SELECT * FROM marks; DROP TABLE marks; ALTER TABLE other RENAME TO marks"
    ),
    "table gone": "DROP TABLE prompts",
    "log gone": "DROP TABLE actions",
    "notes gone": "DROP TABLE notes",
}


@pytest.mark.slow
@pytest.mark.parametrize("kind", FOREIGN)
def test_triggers_views_and_other_tables_of_our_names_are_damage(
    hand: Hand, tmp_path: Path, kind: str
) -> None:
    journal = begun(hand())
    step(journal, "Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.NOT_YET))
    journal.shut()
    with closing(sqlite3.connect(journal.path, isolation_level=None)) as db:
        db.executescript(FOREIGN[kind])
    before = journal.path.read_bytes()
    assert "damaged (" in Journal.examine(tmp_path)[0]
    with pytest.raises(JournalProblem, match="no whole journal"):
        hand(tmp_path / "other").merge(journal.path)
    assert "is damaged" in hand(read_only=True).notice and journal.path.read_bytes() == before
    new = hand()
    assert "was damaged" in new.notice and Journal.examine(tmp_path) == []
    assert marks_of(new) == {0: Mark.NOT_YET}


def test_a_table_of_somebody_elses_is_no_concern_of_ours(hand: Hand, tmp_path: Path) -> None:
    begun(hand(), marks=1).shut()
    with closing(sqlite3.connect(tmp_path / "journal.db", isolation_level=None)) as db:
        db.executescript("CREATE TABLE shopping (what); ANALYZE")
    assert Journal.examine(tmp_path) == [] and not hand().notice


def test_names_in_other_bytes_are_damage(hand: Hand, tmp_path: Path) -> None:
    path = begun(hand(), marks=2)
    path.shut()
    raw = path.path.read_bytes()
    at = raw.index(b"CREATE TABLE marks") + len("CREATE TABLE ")
    path.path.write_bytes(raw[:at] + b"\x80" + raw[at + 1 :])
    assert "damaged" in Journal.examine(tmp_path)[0]
    with pytest.raises(JournalProblem):
        hand(tmp_path / "other").merge(path.path)
    assert marks_of(hand()) == {0: Mark.FLUENT, 1: Mark.FLUENT}


UNREADABLE: dict[str, str] = {
    "empty": "",
    "no JSON": "{",
    "a list": "[]",
    "a number": "7",
    "nested deep": "[" * 100_000 + "]" * 100_000,
    "nested deep in a field": '{"format": ' + '{"a":' * 100_000 + "1" + "}" * 100_001,
    "a long number": "1" * 5000,
    "not a number": "NaN",
    "another form": json.dumps({"format": "shopping-list", "version": 1}),
}


@pytest.mark.parametrize("kind", UNREADABLE)
def test_a_routine_that_cannot_be_read_is_chosen_anew_with_a_notice(
    hand: Hand, home: Path, capsys: pytest.CaptureFixture[str], kind: str
) -> None:
    families.save(home / "family.toml", FAMILY._replace(children=(Child("Bean", journal_name="Bean"),)))
    journal = begun(hand(home), marks=2)
    journal.shut()
    with closing(sqlite3.connect(journal.path, isolation_level=None)) as db:
        db.execute("UPDATE sittings SET routine = ?", (UNREADABLE[kind],))
    assert main(["today"], lambda: NOW) == DONE
    out, err = capsys.readouterr()
    assert "Prompt 1 of 7" in out
    assert err == (
        "warmup: What was chosen for this date can't be read any more, so it was chosen anew. "
        "Its marks are kept.\n"
    )
    assert [line.mark for line in hand(home).history("Bean")][:2] == [Mark.FLUENT] * 2


ADDED_BY_TODAY = ("not_asked_yet", "teach_again")
"""What ``warmup today --json`` holds beside the routine."""


def test_an_item_this_version_does_not_know_is_told_and_asked_no_more(
    hand: Hand, home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    families.save(home / "family.toml", FAMILY._replace(children=(Child("Bean", journal_name="Bean"),)))
    assert main(["today", "--json"], lambda: NOW) == DONE
    routine = capsys.readouterr().out
    data = {key: value for key, value in json.loads(routine).items() if key not in ADDED_BY_TODAY}
    data["prompts"][1]["item"] = "juggle/three"
    rows = [(prompt["item"], prompt["wording"]) for prompt in data["prompts"]]
    journal = hand(home)
    journal.start("Bean", DAY - dt.timedelta(1), "daily", "{}", rows, [mark(Mark.NOT_YET)] * len(rows))
    journal.start("Bean", DAY, "daily", json.dumps(data), rows)
    assert main(["today"], lambda: NOW) == DONE
    out, err = capsys.readouterr()
    assert "chosen anew" in err and "Prompt 1 of 7" in out
    assert main(["check"], lambda: NOW) == WRONG
    said = capsys.readouterr().out.splitlines()[-1]
    assert (
        'an item this version does not know, "juggle/three" (2, the first of "Bean", "2026-11-24", 1)' in said
    )


def test_marks_whose_session_lost_its_own_row_are_not_overwritten_by_the_next(hand: Hand) -> None:
    journal = begun(hand(), marks=2)
    journal.shut()
    with closing(sqlite3.connect(journal.path)) as db, db:
        db.execute("DELETE FROM sittings")
    again = hand()
    assert again.start("Bean", DAY, "daily", "{}", ROWS) == 2
    again.shut()
    with closing(sqlite3.connect(journal.path)) as db:
        assert db.execute("SELECT count(*) FROM marks WHERE sitting = 1").fetchone() == (2,)
