"""The log of actions: kept with what it changes or not at all, in order, and one for two laptops."""

import datetime as dt
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from tests.journal.journals import DAY, ROWS, Hand, aside, begun, clock, mark, marks_of, open_session, step
from warmup.journal import schema
from warmup.journal.journal import Action, Change, Journal
from warmup.model import Mark

# The tables as version 1 of the journal made them, and a morning in them.
VERSION_1 = """
CREATE TABLE sittings (
    child TEXT NOT NULL,
    date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    sitting INTEGER NOT NULL CHECK (typeof(sitting) = 'integer'),
    started TEXT NOT NULL, touched TEXT NOT NULL, shape TEXT NOT NULL, routine TEXT NOT NULL,
    position INTEGER NOT NULL CHECK (typeof(position) = 'integer'),
    furthest INTEGER NOT NULL CHECK (typeof(furthest) = 'integer'),
    rough INTEGER NOT NULL CHECK (rough IN (0, 1)), closed TEXT NOT NULL,
    PRIMARY KEY (child, date, sitting));
CREATE TABLE prompts (
    child TEXT NOT NULL,
    date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    sitting INTEGER NOT NULL CHECK (typeof(sitting) = 'integer'),
    position INTEGER NOT NULL CHECK (typeof(position) = 'integer'),
    item TEXT NOT NULL, wording TEXT NOT NULL,
    PRIMARY KEY (child, date, sitting, position)) WITHOUT ROWID;
CREATE TABLE marks (
    child TEXT NOT NULL,
    date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    sitting INTEGER NOT NULL CHECK (typeof(sitting) = 'integer'),
    position INTEGER NOT NULL CHECK (typeof(position) = 'integer'),
    mark TEXT NOT NULL CHECK (mark IN ('', 'fluent', 'hesitated', 'not_yet', 'skipped')),
    cue INTEGER NOT NULL CHECK (typeof(cue) = 'integer'), adult TEXT NOT NULL,
    from_memory INTEGER NOT NULL CHECK (from_memory IN (0, 1)), at TEXT NOT NULL,
    PRIMARY KEY (child, date, sitting, position)) WITHOUT ROWID;
INSERT INTO sittings VALUES ('Bean', '2026-11-24', 1, '2026-11-24T13:00:00.000000+00:00',
    '2026-11-24T13:05:00.000000+00:00', 'daily', '{}', 1, 1, 0, '');
INSERT INTO prompts VALUES ('Bean', '2026-11-24', 1, 0, 'count-on/from-7', 'a');
INSERT INTO prompts VALUES ('Bean', '2026-11-24', 1, 1, 'make-ten/7+3', 'b');
INSERT INTO marks VALUES ('Bean', '2026-11-24', 1, 0, 'not_yet', 2, 'Jo', 0,
    '2026-11-24T13:05:00.000000+00:00');
PRAGMA user_version = 1;
"""


def version_1(path: Path) -> Path:
    path.parent.mkdir(exist_ok=True)
    with closing(sqlite3.connect(path)) as db:
        db.executescript(VERSION_1)
    return path


def whats(journal: Journal, session: int | None = None) -> list[str]:
    return [row.what for row in journal.actions_of("Bean", DAY, session)]


def test_a_journal_of_version_1_gets_the_log_and_keeps_its_marks(hand: Hand, tmp_path: Path) -> None:
    version_1(tmp_path / "journal.db")
    before = (tmp_path / "journal.db").read_bytes()
    looked = hand(read_only=True)
    assert [line.mark for line in looked.history("Bean")] == [Mark.NOT_YET, None] and not looked.notice
    assert looked.actions_of("Bean", DAY) == [] and (tmp_path / "journal.db").read_bytes() == before
    journal = hand()
    assert not journal.notice and Journal.examine(tmp_path) == []
    assert [line.mark for line in journal.history("Bean")] == [Mark.NOT_YET, None]
    assert schema.version_written(journal.path) == schema.VERSION == 4
    begun(journal)
    journal.log("Bean", DAY, 1, Action("hold"))
    assert whats(hand()) == ["hold"]


def test_a_journal_of_version_1_can_be_merged(hand: Hand, tmp_path: Path) -> None:
    other = version_1(tmp_path / "old" / "other.db")
    before = other.read_bytes()
    journal = begun(hand(), marks=1)
    journal.merge(other)
    assert len(journal.history("Bean")) == 4 and other.read_bytes() == before


def test_an_action_is_kept_with_what_it_changes_or_not_at_all(hand: Hand) -> None:
    journal = hand(window="w")
    journal.start("Bean", DAY, "daily", "{}", ROWS, action=Action("start"))
    step(journal, "Bean", DAY, 1, 1, shown=1, at=0, mark=mark(), action=Action("mark", 0, "null", '"fluent"'))
    row = hand().actions_of("Bean", DAY, 1)[-1]
    assert (row.id, row.child, row.date, row.session) == ("w-2", "Bean", DAY.isoformat(), 1)
    assert row.window == "w" and dt.datetime.fromisoformat(row.at).utcoffset() == dt.timedelta(0)
    assert (row.what, row.position, row.before, row.after) == ("mark", 0, "null", '"fluent"')
    disk = journal._store._disk
    assert disk is not None
    disk.execute("CREATE TEMP TRIGGER no BEFORE INSERT ON actions BEGIN SELECT RAISE(ABORT, 'no'); END")
    with pytest.raises(sqlite3.IntegrityError):
        step(journal, "Bean", DAY, 1, 2, shown=2, at=1, mark=mark(), action=Action("mark", 1))
    disk.execute("DROP TRIGGER no")
    assert marks_of(journal) == {0: Mark.FLUENT} and whats(journal) == ["start", "mark"]


@pytest.mark.parametrize(
    "action",
    [
        Action(""), Action(" "), Action("x" * 41), Action("a\x1b[31m"), Action("a\nb"), Action("\u202emark"),
        Action("mark", before="{"), Action("mark", after="fluent"),
    ],
)  # fmt: skip
def test_what_is_no_plain_word_or_no_json_is_refused_before_anything_is_written(
    hand: Hand, action: Action
) -> None:
    journal = begun(hand())
    with pytest.raises(ValueError):
        step(journal, "Bean", DAY, 1, 1, shown=1, at=0, mark=mark(), action=action)
    with pytest.raises(ValueError):
        journal.log("Bean", DAY, 1, action)
    assert marks_of(journal) == {} and whats(journal) == []


def test_actions_stay_in_order_though_the_clock_goes_back(hand: Hand) -> None:
    hours = iter([12, 11, 10, 9, 8, 7])
    journal = hand(now=lambda: dt.datetime(2026, 11, 25, next(hours)))
    journal.start("Bean", DAY, "daily", "{}", ROWS, action=Action("start"))
    words = ["swap", "short", "mark", "stop"]
    for what in words:
        journal.log("Bean", DAY, 1, Action(what))
    assert whats(journal) == ["start", *words]
    moments = [row.at for row in journal.actions_of("Bean", DAY)]
    assert moments == sorted(set(moments))


def test_the_newest_action_can_be_taken_back_after_a_restart(hand: Hand) -> None:
    journal = begun(hand(window="a"))
    first = journal.change("Bean", DAY, 1, Change(marks={0: mark()}, position=1), action=Action("mark", 0))
    second = journal.log("Bean", DAY, 1, Action("swap", 1))
    other = journal.log("Bean", DAY, 0, Action("days"))
    journal.shut()
    journal = hand(window="b")
    newest = journal.last_undoable("Bean", DAY)
    assert newest is not None and (newest.id, newest.what) == (other, "days")
    for undone, left in ((second, first), (first, None)):
        newest = journal.last_undoable("Bean", DAY, 1)
        assert newest is not None and newest.id == undone
        journal.log("Bean", DAY, 1, Action("undo", takes_back=undone))
        newest = journal.last_undoable("Bean", DAY, 1)
        assert (newest.id if newest else None) == left
    assert whats(hand()) == ["mark", "swap", "days", "undo", "undo"], "what was taken back stays on record"
    redone = journal.actions_of("Bean", DAY, 1)[-1]
    journal.log("Bean", DAY, 1, Action("undo", takes_back=redone.id))
    newest = journal.last_undoable("Bean", DAY, 1)
    assert newest is not None and newest.id == first, "an undo taken back takes nothing back"


def test_a_change_does_all_of_an_action_at_once(hand: Hand) -> None:
    journal = begun(hand(), marks=3)
    moment = "2026-11-25T09:00:00"
    marks = {2: mark(Mark.NOT_YET, moment), 0: mark(Mark.HESITATED, moment)}
    journal.change(
        "Bean", DAY, 1,
        Change(2, "[1]", [("coins/penny", "e"), ("coins/nickel", "f")], marks, 3, 3, rough=True, closed=True),
    )  # fmt: skip
    assert marks_of(journal) == {0: Mark.HESITATED, 1: Mark.FLUENT, 2: Mark.NOT_YET}
    assert journal.last_mark("Bean", DAY, 1) == 2, "marks of one change have moments of their own"
    row = journal.sessions_of("Bean", DAY)[0]
    assert (row.routine, row.position, row.furthest, row.rough, row.closed) == ("[1]", 3, 3, True, True)
    journal.change("Bean", DAY, 1, Change(closed=False))
    assert open_session(hand(), "Bean", DAY) is not None


def test_two_laptops_have_one_log(hand: Hand, tmp_path: Path) -> None:
    one = begun(hand(tmp_path / "one", window="one"))
    two = begun(hand(tmp_path / "two", clock(dt.datetime(2026, 11, 25, 10)), window="two"))
    one.log("Bean", DAY, 1, Action("swap", 2))
    two.log("Bean", DAY, 1, Action("hold", 3))
    two.log("Bean", DAY, 0, Action("days"))
    for _ in range(2):
        one.merge(two.path)
        two.merge(one.path)
    for journal, own in ((one, "swap"), (two, "hold")):
        assert whats(journal) == ["swap", "hold", "days"] and whats(journal, 1) == [own]
        assert len(whats(journal, 2)) == 1, "the other's session and its action have another number here"


def test_actions_outlive_a_disk_that_goes_away(
    hand: Hand, tmp_path: Path, full: Callable[[bool], None]
) -> None:
    journal = begun(hand(window="w"))
    journal.log("Bean", DAY, 1, Action("swap"))
    journal.path.rename(tmp_path / "away")
    full(True)
    journal.log("Bean", DAY, 1, Action("hold"))
    assert not journal.saving and whats(journal) == ["swap", "hold"]
    full(False)
    (tmp_path / "away").rename(journal.path)
    journal.log("Bean", DAY, 0, Action("days"))
    assert journal.saving and whats(hand()) == ["swap", "hold", "days"] and not aside(tmp_path)
