"""What the tests of the journal share: a day, a sitting begun, and its marks read back."""

import datetime as dt
import sqlite3
from collections.abc import Callable
from pathlib import Path

from warmup.journal import rows as records
from warmup.journal.journal import Journal, MarkRow
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


def begun(journal: Journal, marks: int = 0) -> Journal:
    """A sitting begun, and its first prompts marked."""
    session = journal.start("Bean", DAY, "daily", "{}", ROWS)
    for at in range(marks):
        journal.step("Bean", DAY, session, at + 1, shown=at + 1, at=at, mark=mark())
    return journal


def wholes(journal: Journal, child: str = "Bean") -> list[Whole]:
    db = journal._store._memory or journal._store._disk
    assert db is not None
    found = [
        records.read_whole(db, (child, DAY.isoformat(), r.session)) for r in journal.sessions_of(child, DAY)
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
