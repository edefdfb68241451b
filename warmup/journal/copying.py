"""A copy of the journal in a file of its own, made while the journal is open, and looked over."""

import os
import sqlite3
from contextlib import closing, suppress
from pathlib import Path

from warmup.journal import schema
from warmup.journal.store import JournalProblem, reason
from warmup.text import clean

_TABLES = ("sittings", "prompts", "marks", "actions")


def write_copy(source: sqlite3.Connection, path: Path, child: str) -> int:
    """Put a copy of a journal at ``path``, and give in how many mornings of it the child was.

    The copy is opened again, looked over, and its rows of the child counted against the journal's. Raises
    JournalProblem, and leaves no copy behind, where it can't be written or is not like the journal.
    """
    try:
        os.close(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600))
    except OSError as error:
        raise _not_made(path, error) from error
    try:
        with closing(sqlite3.connect(path)) as copy:
            # https://www.sqlite.org/backup.html: the pages as of one moment, whoever writes meanwhile.
            source.backup(copy)
        _on_disk(path)
        with closing(schema.look_at(path)) as copy:
            wrong = schema.faults(copy, thorough=True)
            if wrong or _rows_of(copy, child) != _rows_of(source, child):
                raise sqlite3.DatabaseError(wrong[0] if wrong else "it has other rows than the journal")
            days = "SELECT count(DISTINCT date) FROM sittings WHERE child = ?"
            return int(copy.execute(days, (child,)).fetchone()[0])
    except (OSError, sqlite3.Error) as error:
        with suppress(OSError):
            path.unlink()
        raise _not_made(path, error) from error


def _not_made(path: Path, error: Exception) -> JournalProblem:
    return JournalProblem(
        f"{clean(str(path))}: no copy could be made ({reason(error)}). Nothing was changed."
    )


def _rows_of(journal: sqlite3.Connection, child: str) -> list[int]:
    question = "SELECT count(*) FROM {} WHERE child = ?"
    return [journal.execute(question.format(table), (child,)).fetchone()[0] for table in _TABLES]


def _on_disk(path: Path) -> None:
    handle = os.open(path, os.O_RDWR)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
