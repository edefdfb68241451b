"""The rows of a journal: what its tables are, a sitting read and written whole, and two journals made one."""

import datetime as dt
import sqlite3
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from warmup.morning import Asked, Mark

VERSION = 1
"""The ``user_version`` of a journal this program writes."""

Key = tuple[str, dt.date, int]
"""Which sitting: the child's nickname, the date, and the number of the sitting on that date from 1."""

_KEYED = """
    child TEXT NOT NULL,
    date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    sitting INTEGER NOT NULL CHECK (typeof(sitting) = 'integer')"""

# Step n takes a journal from version n to n + 1.
_MIGRATIONS = (
    (
        f"""CREATE TABLE sittings ({_KEYED},
            started TEXT NOT NULL,
            touched TEXT NOT NULL,
            shape TEXT NOT NULL,
            routine TEXT NOT NULL,
            position INTEGER NOT NULL CHECK (typeof(position) = 'integer'),
            closed TEXT NOT NULL,
            rough INTEGER NOT NULL CHECK (rough IN (0, 1)),
            PRIMARY KEY (child, date, sitting)) WITHOUT ROWID""",
        f"""CREATE TABLE prompts ({_KEYED},
            position INTEGER NOT NULL CHECK (typeof(position) = 'integer'),
            item TEXT NOT NULL,
            wording TEXT NOT NULL,
            shown INTEGER NOT NULL CHECK (shown IN (0, 1)),
            PRIMARY KEY (child, date, sitting, position)) WITHOUT ROWID""",
        f"""CREATE TABLE marks ({_KEYED},
            position INTEGER NOT NULL CHECK (typeof(position) = 'integer'),
            mark TEXT NOT NULL CHECK (mark IN ('', 'fluent', 'hesitated', 'not_yet', 'skipped')),
            cue INTEGER NOT NULL CHECK (typeof(cue) = 'integer'),
            adult TEXT NOT NULL,
            from_memory INTEGER NOT NULL CHECK (from_memory IN (0, 1)),
            at TEXT NOT NULL,
            PRIMARY KEY (child, date, sitting, position)) WITHOUT ROWID""",
    ),
)
_MARKS: Mapping[str, Mark | None] = {"": None} | {mark.value: mark for mark in Mark}
_WHICH = "child = ? AND date = ? AND sitting = ?"


@dataclass(frozen=True, slots=True)
class MarkRow:
    """A mark on the prompt at ``position``; ``mark`` is None for one that was taken back.

    ``cue`` is the number of the last cue used, ``adult`` who marked, ``at`` when in UTC (filled in as it
    is written: of two marks on one prompt the one with the later ``at`` counts).
    """

    position: int
    mark: Mark | None
    cue: int = 0
    adult: str = ""
    from_memory: bool = False
    at: str = ""


@dataclass(frozen=True, slots=True)
class Sitting:
    """One sitting: a routine as it was begun, and how far it has come.

    ``routine`` is the JSON it was begun with (or changed to), ``position`` the prompt it stands at from 0.
    ``started`` tells it from every other sitting, on any machine; ``touched`` is its last change.
    """

    child: str
    date: dt.date
    number: int
    started: str
    touched: str
    shape: str
    routine: str
    position: int
    closed: bool
    rough: bool


@dataclass(frozen=True, slots=True)
class PromptRow:
    """A prompt of a sitting: its item, the way it was worded, and whether it came on the screen."""

    item: str
    wording: str
    shown: bool


@dataclass(frozen=True, slots=True)
class Whole:
    """A sitting with all its prompts and marks, by position."""

    sitting: Sitting
    prompts: Mapping[int, PromptRow]
    marks: Mapping[int, MarkRow]


def sql(key: Key) -> tuple[str, str, int]:
    """A key as it stands in the tables."""
    return key[0], key[1].isoformat(), key[2]


def connect(path: Path, wait: int) -> sqlite3.Connection:
    """Open a journal file: a change is on the disk when it is committed, and ``wait`` ms are spent on a lock."""
    connection = sqlite3.connect(path, timeout=wait / 1000, isolation_level=None)
    try:
        # cell_size_check finds damage early; fullfsync matters on macOS alone; the schema is never trusted.
        for setting in (
            "trusted_schema = OFF",
            "cell_size_check = ON",
            "journal_mode = TRUNCATE",
            "synchronous = FULL",
            "fullfsync = ON",
        ):
            connection.execute(f"PRAGMA {setting}").fetchall()
    except BaseException:
        connection.close()
        raise
    return _lenient(connection)


def look_at(path: Path) -> sqlite3.Connection:
    """Open a journal file for reading alone."""
    return _lenient(sqlite3.connect(f"{path.absolute().as_uri()}?mode=ro", uri=True, timeout=3, isolation_level=None))


def _lenient(connection: sqlite3.Connection) -> sqlite3.Connection:
    # A damaged letter in a text is no reason to lose the row.
    connection.text_factory = lambda raw: raw.decode("utf-8", "replace")
    return connection


def in_memory() -> sqlite3.Connection:
    """An empty journal that lies on no disk."""
    connection = _lenient(sqlite3.connect(":memory:", isolation_level=None))
    migrate(connection)
    return connection


def version_written(path: Path) -> int:
    """The ``user_version`` in the header of a file, read without touching it; 0 for what is no journal."""
    with path.open("rb") as file:
        header = file.read(100)
    # https://www.sqlite.org/fileformat2.html, section 1.3: the magic string, and user version at offset 60.
    return int.from_bytes(header[60:64], "big") if header.startswith(b"SQLite format 3\0") else 0


def migrate(connection: sqlite3.Connection) -> None:
    """Bring the tables to this program's version."""

    def steps(inside: sqlite3.Connection) -> None:
        version = inside.execute("PRAGMA user_version").fetchone()[0]
        for statements in _MIGRATIONS[version:]:
            for statement in statements:
                inside.execute(statement)
        if version < VERSION:
            inside.execute(f"PRAGMA user_version = {VERSION}")

    transact(connection, steps)


def faults(connection: sqlite3.Connection, thorough: bool = False) -> list[str]:
    """What SQLite finds wrong with the file; empty when it is sound."""
    check = "integrity_check" if thorough else "quick_check(1)"
    found = [str(row[0]) for row in connection.execute(f"PRAGMA {check}")]
    return [] if found == ["ok"] else found


def transact[T](connection: sqlite3.Connection, work: Callable[[sqlite3.Connection], T]) -> T:
    """Do the work wholly or not at all."""
    connection.execute("BEGIN IMMEDIATE")
    try:
        result = work(connection)
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise
    return result
