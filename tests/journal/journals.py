"""What the tests of the journal share: a day, a session begun, and its marks read back."""

import datetime as dt
import sqlite3
from collections.abc import Callable
from pathlib import Path

from warmup.journal import rows as table_rows
from warmup.journal.journal import Action, Change, Journal, MarkRow, SessionRow
from warmup.journal.rows import Whole
from warmup.model import Mark

DAY = dt.date(2026, 11, 25)
ROWS = [("count-on/from-7", "a"), ("make-ten/7+3", "b"), ("month/after-december", "c"), ("coins/dime", "d")]
Hand = Callable[..., Journal]


def clock(start: dt.datetime = dt.datetime(2026, 11, 25, 8)) -> Callable[[], dt.datetime]:
    """A clock that stands still: order must come from the journal itself."""
    return lambda: start


STILL = clock()


def mark(kind: Mark | None = Mark.FLUENT, at: str = "", cue: int = 0) -> MarkRow:
    return MarkRow(kind, cue, "", False, at)


def marks_of(journal: Journal, session: int = 1) -> dict[int, Mark | None]:
    return {at: row.mark for at, row in journal.marks_of("Bean", DAY, session).items()}


def step(
    journal: Journal,
    child: str,
    date: dt.date,
    session: int,
    position: int,
    *,
    shown: int,
    at: int | None = None,
    mark: MarkRow | None = None,
    action: Action | None = None,
) -> None:
    """Mark the prompt ``at``, if one is given, and stand on ``position``."""
    marks = {} if mark is None or at is None else {at: mark}
    journal.change(child, date, session, Change(marks=marks, position=position, shown=shown), action=action)


def set_rough(
    journal: Journal, child: str, date: dt.date, session: int, rough: bool, action: Action | None = None
) -> None:
    journal.change(child, date, session, Change(rough=rough), action=action)


def close_session(
    journal: Journal, child: str, date: dt.date, session: int, action: Action | None = None
) -> None:
    journal.change(child, date, session, Change(closed=True), action=action)


def open_session(journal: Journal, child: str, date: dt.date) -> SessionRow | None:
    """The latest session of a date that is not over."""
    return next((row for row in reversed(journal.sessions_of(child, date)) if not row.closed), None)


def begun(journal: Journal, marks: int = 0) -> Journal:
    """A session begun, and its first prompts marked."""
    session = journal.start("Bean", DAY, "daily", "{}", ROWS)
    for at in range(marks):
        step(journal, "Bean", DAY, session, at + 1, shown=at + 1, at=at, mark=mark())
    return journal


def wholes(journal: Journal, child: str = "Bean") -> list[Whole]:
    db = journal._store._memory or journal._store._disk
    assert db is not None
    found = [
        table_rows.read_whole(db, (child, DAY.isoformat(), r.session))
        for r in journal.sessions_of(child, DAY)
    ]
    return [whole for whole in found if whole is not None]


def aside(folder: Path) -> list[Path]:
    return sorted(folder.glob("journal-damaged-*.db"))


def foreign() -> bytes:
    db = sqlite3.connect(":memory:")
    db.execute("CREATE TABLE sittings (x)")
    raw = db.serialize()
    db.close()
    return raw
