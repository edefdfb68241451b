"""What happened, on disk: mornings, prompts as they were asked, marks. One SQLite file.

Every writing method is one transaction that is on disk before it returns. When the disk takes no
writing, what was to be written waits and is tried again at each later write, in order; ``saving`` is
False until it went through. A damaged file is set aside, never deleted; one from a newer version is
never touched.
"""

import datetime as dt
import os
import sqlite3
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from warmup.morning import Asked, Mark

VERSION = 1
NAME = "journal.db"
_BUSY_MS = 3000
_DAMAGED = (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB)
_TABLES = (
    """CREATE TABLE sittings (
        child TEXT NOT NULL, date TEXT NOT NULL, sitting INTEGER NOT NULL,
        started TEXT NOT NULL, shape TEXT NOT NULL, routine TEXT NOT NULL,
        position INTEGER NOT NULL DEFAULT 0, furthest INTEGER NOT NULL DEFAULT 0,
        rough INTEGER NOT NULL DEFAULT 0, closed TEXT NOT NULL DEFAULT '',
        PRIMARY KEY (child, date, sitting))""",
    """CREATE TABLE prompts (
        child TEXT NOT NULL, date TEXT NOT NULL, sitting INTEGER NOT NULL, position INTEGER NOT NULL,
        item TEXT NOT NULL, wording TEXT NOT NULL,
        PRIMARY KEY (child, date, sitting, position)) WITHOUT ROWID""",
    # An undone mark stays as a row without one, so that a merge knows it was taken back later.
    """CREATE TABLE marks (
        child TEXT NOT NULL, date TEXT NOT NULL, sitting INTEGER NOT NULL, position INTEGER NOT NULL,
        mark TEXT NOT NULL, cue INTEGER NOT NULL, adult TEXT NOT NULL,
        from_memory INTEGER NOT NULL, at TEXT NOT NULL,
        PRIMARY KEY (child, date, sitting, position)) WITHOUT ROWID""",
)
_MARK = (
    "INSERT INTO marks VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET mark = excluded.mark, "
    "cue = excluded.cue, adult = excluded.adult, from_memory = excluded.from_memory, at = excluded.at "
    "WHERE excluded.at >= marks.at"
)
_THIS = "WHERE child = ? AND date = ? AND sitting = ?"
Statement = tuple[str, tuple[Any, ...]]


class NewerJournal(Exception):
    """The journal was written by a newer version: a sentence that says so. The file is untouched."""


@dataclass(frozen=True, slots=True)
class MarkRow:
    """A mark as it is kept; ``mark`` None is one that was taken back. ``at`` orders marks in time."""

    mark: Mark | None
    cue: int
    adult: str
    from_memory: bool
    at: str


@dataclass(frozen=True, slots=True)
class SittingRow:
    """A sitting as it is kept: its number, the routine's JSON, where it stands and how far it got."""

    sitting: int
    shape: str
    routine: str
    position: int
    furthest: int
    rough: bool
    closed: bool


class Journal:
    """The journal of one family. Made by :meth:`open`."""

    def __init__(self, folder: Path, now: Callable[[], dt.datetime]) -> None:
        self.folder, self.path, self._now = folder, folder / NAME, now
        self.notice = ""
        self._disk: sqlite3.Connection | None = None
        self._memory: sqlite3.Connection | None = None
        self._waiting: list[Statement] = []

    @classmethod
    def open(cls, folder: Path, now: Callable[[], dt.datetime], *, read_only: bool = False) -> "Journal":
        """The journal in this folder; a new one where there is none.

        Raises NewerJournal. A damaged file is renamed aside and ``notice`` says so; when ``read_only``,
        nothing is renamed or made.
        """
        journal = cls(folder, now)
        try:
            journal._disk = journal._connect(read_only=read_only)
        except (OSError, sqlite3.Error) as error:
            if not read_only and _is_damage(error):
                journal._set_aside()
            else:
                journal._carry_on(error)
        return journal

    @property
    def saving(self) -> bool:
        """Whether all that was to be written is on disk."""
        return not self._waiting and self._memory is None

    def shut(self) -> None:
        """Try once more to write what waits, and close the file."""
        if self._waiting:
            self._write([])
        for connection in (self._disk, self._memory):
            if connection is not None:
                connection.close()
        self._disk = self._memory = None

    # -- writing

    def start(
        self, child: str, date: dt.date, shape: str, routine: str, rows: Sequence[tuple[str, str]]
    ) -> int:
        """Keep a new sitting with its (item, wording) rows; gives its number, from 1 on a date."""
        number = 1 + max((row.sitting for row in self.sittings_of(child, date)), default=0)
        self._write(self._whole(child, date, number, shape, routine, rows))
        return number

    def add_whole(
        self,
        child: str,
        date: dt.date,
        shape: str,
        routine: str,
        rows: Sequence[tuple[str, str]],
        marks: Sequence[MarkRow],
    ) -> None:
        """Keep a sitting that is over, with a mark for each prompt, in one transaction."""
        key = (child, date.isoformat(), 1)
        over = "UPDATE sittings SET position = ?, furthest = ?, closed = ? " + _THIS
        end = len(rows)
        self._write(
            [
                *self._whole(child, date, 1, shape, routine, rows),
                *((_MARK, (*key, at, *_mark_values(mark))) for at, mark in enumerate(marks)),
                (over, (end, max(0, end - 1), self._moment(), *key)),
            ]
        )

    def replace(
        self,
        child: str,
        date: dt.date,
        sitting: int,
        start: int,
        routine: str,
        rows: Sequence[tuple[str, str]],
    ) -> None:
        """Put other prompts in the place of those from position ``start`` on; their marks go."""
        key = (child, date.isoformat(), sitting)
        self._write(
            [
                (
                    f"UPDATE sittings SET routine = ?, position = min(position, ?) {_THIS}",
                    (routine, start + len(rows), *key),
                ),
                (f"DELETE FROM prompts {_THIS} AND position >= ?", (*key, start)),
                (f"DELETE FROM marks {_THIS} AND position >= ?", (*key, start)),
                *self._prompts(key, rows, start),
            ]
        )

    def step(
        self,
        child: str,
        date: dt.date,
        sitting: int,
        position: int,
        *,
        shown: int,
        at: int | None = None,
        mark: MarkRow | None = None,
    ) -> None:
        """Keep the mark of the prompt ``at``, if there is one, and stand on ``position``.

        ``shown`` is the furthest prompt that has been on screen once this returns.
        """
        key = (child, date.isoformat(), sitting)
        marked = [(_MARK, (*key, at, *_mark_values(mark)))] if mark is not None else []
        moved = f"UPDATE sittings SET position = ?, furthest = max(furthest, ?) {_THIS}"
        self._write([*marked, (moved, (position, shown, *key))])

    def set_rough(self, child: str, date: dt.date, sitting: int, rough: bool) -> None:
        """Flag a sitting as a rough day, or not."""
        self._write(
            [(f"UPDATE sittings SET rough = ? {_THIS}", (int(rough), child, date.isoformat(), sitting))]
        )

    def close_sitting(self, child: str, date: dt.date, sitting: int) -> None:
        """A sitting is over."""
        at = (self._moment(), child, date.isoformat(), sitting)
        self._write([(f"UPDATE sittings SET closed = ? {_THIS}", at)])

    # -- reading

    def sittings_of(self, child: str, date: dt.date) -> list[SittingRow]:
        """The sittings of a date, in order."""
        rows = self._read(
            "SELECT sitting, shape, routine, position, furthest, rough, closed FROM sittings "
            "WHERE child = ? AND date = ? ORDER BY sitting",
            (child, date.isoformat()),
        )
        return [SittingRow(n, s, r, p, f, bool(rough), bool(closed)) for n, s, r, p, f, rough, closed in rows]

    def open_sitting(self, child: str, date: dt.date) -> SittingRow | None:
        """The latest sitting of a date that is not over."""
        return next((row for row in reversed(self.sittings_of(child, date)) if not row.closed), None)

    def marks_of(self, child: str, date: dt.date, sitting: int) -> dict[int, MarkRow]:
        """The marks of a sitting by position."""
        rows = self._read(
            f"SELECT position, mark, cue, adult, from_memory, at FROM marks {_THIS}",
            (child, date.isoformat(), sitting),
        )
        return {
            at: MarkRow(Mark(mark) if mark else None, cue, adult, bool(memory), moment)
            for at, mark, cue, adult, memory, moment in rows
        }

    def last_mark(self, child: str, date: dt.date, sitting: int) -> int | None:
        """The position marked last, for undo after a restart."""
        marks = self.marks_of(child, date, sitting)
        return max(
            (at for at, row in marks.items() if row.mark), key=lambda at: (marks[at].at, at), default=None
        )

    def history(self, child: str, before: dt.date | None = None) -> tuple[Asked, ...]:
        """Every prompt that was shown, in order of time, with its mark; up to but not on ``before``."""
        rows = self._read(
            "SELECT p.date, p.item, m.mark, m.cue, s.rough, m.from_memory, p.wording "
            "FROM sittings s JOIN prompts p USING (child, date, sitting) "
            "LEFT JOIN marks m ON m.child = p.child AND m.date = p.date AND m.sitting = p.sitting "
            "AND m.position = p.position "
            "WHERE s.child = ? AND s.date < ? AND p.position <= s.furthest "
            "ORDER BY p.date, p.sitting, p.position",
            (child, before.isoformat() if before else "9999"),
        )
        days: dict[str, dt.date] = {}
        return tuple(
            Asked(
                days.get(day) or days.setdefault(day, dt.date.fromisoformat(day)),
                item,
                Mark(mark) if mark else None,
                cue or 0,
                bool(rough),
                bool(memory),
                wording,
            )
            for day, item, mark, cue, rough, memory, wording in rows
        )

    def dates_with_record(self, child: str) -> set[dt.date]:
        """The dates on which this child had a warm-up."""
        rows = self._read("SELECT DISTINCT date FROM sittings WHERE child = ?", (child,))
        return {dt.date.fromisoformat(day) for (day,) in rows}

    def check(self) -> list[str]:
        """What SQLite finds wrong in the file; empty when it is whole."""
        return [row[0] for row in self._read("PRAGMA integrity_check", ()) if row[0] != "ok"]

    @classmethod
    def examine(cls, folder: Path) -> list[str]:
        """Look the journal over without changing anything: sentences about what is wrong."""
        path = folder / NAME
        try:
            journal = cls.open(folder, dt.datetime.now, read_only=True)
        except NewerJournal as newer:
            return [str(newer)]
        try:
            wrong = [] if journal._disk is None else journal.check()
            wrong = wrong or ([journal.notice] if journal.notice else [])
        finally:
            journal.shut()
        if not wrong:
            return []
        return [
            f"{path}: damaged ({wrong[0]}). The next time warmup opens it is set aside and a new one begun."
        ]

    def merge(self, other: Path) -> None:
        """Take in another journal: sittings it has and this one lacks; of two marks the newer one."""
        source = sqlite3.connect(f"{other.resolve().as_uri()}?mode=ro", uri=True)
        try:
            statements: list[Statement] = []
            for table in ("sittings", "prompts"):
                rows = source.execute(f"SELECT * FROM {table}").fetchall()
                marks = ", ".join("?" * len(rows[0])) if rows else ""
                statements += [(f"INSERT OR IGNORE INTO {table} VALUES ({marks})", row) for row in rows]
            statements += [(_MARK, row) for row in source.execute("SELECT * FROM marks")]
            further = "UPDATE sittings SET furthest = max(furthest, ?) " + _THIS
            reached = source.execute("SELECT furthest, child, date, sitting FROM sittings")
            self._write([*statements, *((further, row) for row in reached)])
        finally:
            source.close()

    # -- the file

    def _whole(
        self,
        child: str,
        date: dt.date,
        number: int,
        shape: str,
        routine: str,
        rows: Sequence[tuple[str, str]],
    ) -> list[Statement]:
        key = (child, date.isoformat(), number)
        begun = "INSERT OR IGNORE INTO sittings (child, date, sitting, started, shape, routine) VALUES (?, ?, ?, ?, ?, ?)"
        return [(begun, (*key, self._moment(), shape, routine)), *self._prompts(key, rows, 0)]

    def _prompts(self, key: tuple[Any, ...], rows: Sequence[tuple[str, str]], start: int) -> list[Statement]:
        insert = "INSERT OR IGNORE INTO prompts VALUES (?, ?, ?, ?, ?, ?)"
        return [(insert, (*key, at, item, wording)) for at, (item, wording) in enumerate(rows, start)]

    def _moment(self) -> str:
        return self._now().isoformat()

    def _connect(self, *, read_only: bool) -> sqlite3.Connection:
        if read_only or self.path.exists():
            self._refuse_newer()
        if read_only:
            return sqlite3.connect(f"{self.path.resolve().as_uri()}?mode=ro", uri=True)
        self.folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        os.close(os.open(self.path, os.O_RDWR | os.O_CREAT, 0o600))
        disk = sqlite3.connect(self.path, timeout=_BUSY_MS / 1000, isolation_level=None)
        try:
            disk.execute("PRAGMA journal_mode = TRUNCATE")
            disk.execute("PRAGMA synchronous = FULL")
            self._migrate(disk)
        except BaseException:
            disk.close()
            raise
        return disk

    def _refuse_newer(self) -> None:
        """Raise NewerJournal, or sqlite3.DatabaseError for a file that is no journal; touches nothing."""
        look = sqlite3.connect(f"{self.path.resolve().as_uri()}?mode=ro", uri=True, timeout=_BUSY_MS / 1000)
        try:
            (version,) = look.execute("PRAGMA user_version").fetchone()
            look.execute("SELECT count(*) FROM sqlite_master").fetchone()
        except sqlite3.OperationalError:
            # A rollback left by a crash can't be seen read-only; opening the file for real settles it.
            return
        finally:
            look.close()
        if version > VERSION:
            raise NewerJournal(
                f"{self.path} was written by a newer version of warmup (format {version}; this one reads {VERSION}). "
                "Update warmup; nothing was changed."
            )

    def _migrate(self, disk: sqlite3.Connection) -> None:
        (version,) = disk.execute("PRAGMA user_version").fetchone()
        if version == VERSION:
            # A damaged file may have a sound first page: touch each table once.
            for table in ("sittings", "prompts", "marks"):
                disk.execute(f"SELECT 1 FROM {table} LIMIT 1").fetchone()
            return
        disk.execute("BEGIN IMMEDIATE")
        (version,) = disk.execute("PRAGMA user_version").fetchone()
        if version == 0:
            for statement in _TABLES:
                disk.execute(statement)
            disk.execute(f"PRAGMA user_version = {VERSION}")
        disk.execute("COMMIT")

    def _set_aside(self) -> None:
        """Rename the damaged file and begin a new one."""
        if self._disk is not None:
            self._disk.close()
            self._disk = None
        aside = self.folder / f"journal-damaged-{self._now():%Y%m%d-%H%M%S}.db"
        try:
            self.path.rename(aside)
            self._disk = self._connect(read_only=False)
            self.notice = f"The journal was damaged. It is kept as {aside.name}, and a new one was begun."
        except (OSError, sqlite3.Error) as error:
            self._carry_on(error)

    def _carry_on(self, error: Exception) -> None:
        """The disk takes no writing: go on in memory, with what can still be read."""
        if self._memory is not None:
            return
        self.notice = self.notice or (f"{self.path.name}: {error}" if _is_damage(error) else "")
        self._memory = sqlite3.connect(":memory:", isolation_level=None)
        try:
            look = self._disk or sqlite3.connect(f"{self.path.resolve().as_uri()}?mode=ro", uri=True)
            look.backup(self._memory)
        except sqlite3.Error:
            self._memory = sqlite3.connect(":memory:", isolation_level=None)
        self._migrate(self._memory)

    def _write(self, statements: list[Statement]) -> None:
        self._waiting += statements
        if self._memory is not None:
            for sql, values in statements:
                self._memory.execute(sql, values)
        try:
            if self._disk is None:
                self._disk = self._connect(read_only=False)
            self._disk.execute("BEGIN IMMEDIATE")
            for sql, values in self._waiting:
                self._disk.execute(sql, values)
            self._disk.execute("COMMIT")
        except (OSError, sqlite3.Error) as error:
            self._not_written(error, statements)
        else:
            self._waiting.clear()
            if self._memory is not None:
                self._memory.close()
                self._memory = None

    def _not_written(self, error: Exception, statements: list[Statement]) -> None:
        if self._disk is not None and self._disk.in_transaction:
            self._disk.rollback()
        if _is_damage(error) and self._memory is None:
            self._set_aside()
            if self._disk is not None:
                waiting, self._waiting = self._waiting, []
                self._write(waiting)
                return
        if self._memory is None:
            self._carry_on(error)
            assert self._memory is not None
            for sql, values in statements:
                self._memory.execute(sql, values)

    def _read(self, sql: str, values: tuple[Any, ...]) -> list[Any]:
        source = self._memory or self._disk
        if source is None:
            return []
        try:
            return source.execute(sql, values).fetchall()
        except sqlite3.DatabaseError as error:
            if not _is_damage(error) or source is self._memory:
                raise
            self._set_aside()
            return []


def _mark_values(mark: MarkRow) -> tuple[str, int, str, int, str]:
    return (mark.mark.value if mark.mark else "", mark.cue, mark.adult, int(mark.from_memory), mark.at)


def _is_damage(error: Exception) -> bool:
    code = getattr(error, "sqlite_errorcode", None)
    return code is not None and code & 0xFF in _DAMAGED
