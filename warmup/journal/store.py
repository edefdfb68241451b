"""A journal file that goes on when the disk does not: set aside when damaged, stood in for when unwritable.

While the disk takes no writing, a journal in memory holds what could be read and everything written
since, answers every question, and is merged into the file at the next write that goes through.
"""

import datetime as dt
import errno
import os
import sqlite3
import stat
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Any, TypeVar

from warmup.journal import remembered, schema
from warmup.journal.oddities import Key
from warmup.journal.redo import RedoLog
from warmup.journal.schema import VERSION, Damaged
from warmup.text import clean

NAME = "journal.db"
_WAIT_AGAIN = 200
"""How long another process's lock is waited for while the disk takes no writing, in ms."""
_NO_VERSION = 1000
"""A version from here on is none that was ever written, so the number itself is damaged."""
_BUGS = (sqlite3.ProgrammingError, sqlite3.IntegrityError, sqlite3.DataError, sqlite3.NotSupportedError)
T = TypeVar("T")


class JournalProblem(Exception):
    """A sentence that says why a journal can't be used."""


class NewerJournal(JournalProblem):
    """The journal was written by a newer version: a sentence that says so. The file is untouched."""


class Store:
    """The file ``journal.db`` in a folder, or what stands in for it. ``notice`` says what befell it.

    ``trouble`` says in a few words why what was written last is not on disk; it is empty while it is.
    """

    def __init__(self, folder: Path, now: Callable[[], dt.datetime], *, read_only: bool) -> None:
        """Open the file, or make it. Raises NewerJournal; nothing else that a disk can do is an error.

        When ``read_only``, the file is read into memory once, and nothing is renamed or made.
        """
        self.folder, self.path, self._now, self._read_only = folder, folder / NAME, now, read_only
        self.notice = self.trouble = ""
        self._disk: sqlite3.Connection | None = None
        self._memory: sqlite3.Connection | None = None
        self._file: tuple[int, int] | None = None
        self.redo = RedoLog()
        self.as_left = False
        self._others = 0
        self.waits = False
        """Whether what was written last waits to be committed. This process reads it already."""
        try:
            if read_only:
                self._look()
            else:
                self._reach(schema.WAIT)
        except (OSError, sqlite3.Error, Damaged) as error:
            self._step_aside(error)

    @property
    def saving(self) -> bool:
        """Whether all that was written is on disk."""
        return self._memory is None

    def shut(self, outdate: Callable[[], object]) -> bool:
        """Try once more to write what is not on disk, and close the file; whether all of it is there now.

        A stamp is left, after ``outdate`` (see :meth:`leave`).
        """
        self.settle()
        self._try_again()
        kept = self._read_only or self.saving
        self.leave(outdate)
        for connection in (self._disk, self._memory):
            if connection is not None:
                connection.close()
        self._disk = self._memory = None
        return kept

    def leave(self, outdate: Callable[[], object]) -> None:
        """Leave a stamp of the file as it is now, after what no longer holds was taken away by ``outdate``.

        Where others wrote as well, nothing that was kept holds. What can't be kept is worked out again.
        """

        def work() -> None:
            if self.others_wrote():
                remembered.clear(self.folder)
            outdate()
            remembered.leave_stamp(self.path)

        self.undisturbed(work)

    def undisturbed(self, work: Callable[[], object]) -> None:
        """Do something beside the file while nobody writes to it; nothing where that can't be."""
        self.settle()
        disk = self._disk
        if disk is None or self._memory is not None:
            return
        with suppress(OSError, sqlite3.Error):
            if self._file != _identity(self.path):
                return
            # With a read begun, nobody else's transaction comes to its end.
            disk.execute("BEGIN")
            try:
                disk.execute("SELECT count(*) FROM sqlite_master").fetchone()
                work()
            finally:
                disk.execute("COMMIT")

    def others_wrote(self) -> bool:
        """Whether the file was, or may have been, written by another program since it was opened.

        What is read only is read at one moment.
        """
        if self._read_only:
            return False
        return self._memory is not None or self._disk is None or self._others != _data_version(self._disk)

    def key(self, child: str, date: dt.date, session: int) -> Key:
        """The key of a session as it stands in the tables now."""
        return self.redo.key(child, date, session)

    def remember(self, key: Key) -> None:
        """Have a session at hand, should the disk be gone at the next write."""
        if self._memory is None and self._disk is not None:
            self.redo.keep_session(self._disk, key)

    def write(self, work: Callable[[sqlite3.Connection], T], *, later: bool = False) -> T:
        """Do the work in one transaction, on the disk before this returns or else in memory.

        What may come ``later`` is on the disk before anything else is written, and once it is settled.
        """
        self.settle()
        if self._memory is None:
            try:
                result = schema.transact(self._own_file(), work, commits=not later)
                self.waits = later
                return result
            except (OSError, sqlite3.Error) as error:
                if isinstance(error, _BUGS):
                    raise
                self._step_aside(error)
        assert self._memory is not None
        result = schema.transact(self._memory, work)
        self._try_again()
        return result

    def settle(self) -> None:
        """Have on the disk, or else in memory, what was to be written later."""
        if not self.waits:
            return
        self.waits = False
        try:
            self._own_file().execute("COMMIT")
        except (OSError, sqlite3.Error) as error:
            self._step_aside(error)

    def _own_file(self) -> sqlite3.Connection:
        if self._disk is None or self._file != _identity(self.path):
            raise FileNotFoundError(errno.ENOENT, f"{NAME} is no longer the file it was")
        return self._disk

    def read(self, sql: str, values: tuple[Any, ...]) -> list[Any]:
        """The rows of a question."""
        return self.ask(lambda db: db.execute(sql, values).fetchall()) or []

    def ask(self, work: Callable[[sqlite3.Connection], T]) -> T | None:
        """What comes of reading alone; None once the file is closed."""
        if self._memory is None and self._disk is not None:
            try:
                return work(self._disk)
            except sqlite3.Error as error:
                if isinstance(error, _BUGS):
                    raise
                self._step_aside(error)
        if self._memory is None:
            return None
        try:
            return work(self._memory)
        except sqlite3.DatabaseError as error:
            if not (self.as_left and schema.is_damage(error)):
                raise
            self._read_through()
            return work(self._memory)

    @property
    def source(self) -> sqlite3.Connection:
        """What answers questions just now, to be copied. JournalProblem once it is shut."""
        self.settle()
        source = self._memory or self._disk
        if source is None:
            raise JournalProblem(f"{NAME} is closed.")
        return source

    def _step_aside(self, error: Exception) -> None:
        """Go on in memory, with what can still be read and what this process wrote."""
        self.trouble, self._others, self.waits = reason(error), -1, False
        if self._disk is None:
            self.notice = f"{NAME} can't be used ({reason(error)})."
        memory = schema.in_memory()
        if schema.is_damage(error):
            # It was not as it was left after all; the next to open it reads it through.
            remembered.forget(self.folder)
        if self._disk is not None:
            from warmup.journal import salvage

            disk = self._disk
            with suppress(sqlite3.Error):
                if disk.in_transaction:
                    disk.execute("ROLLBACK")
                # A lock was waited for already; each table would wait for it once more.
                disk.execute("PRAGMA busy_timeout = 0")
                schema.transact(memory, lambda db: salvage.salvage(db, disk))
        schema.transact(memory, self.redo.write_again)
        self._memory = memory

    def _try_again(self) -> None:
        """Merge what is only in memory into the file; nothing happens where the disk takes no writing."""
        memory = self._memory
        if memory is None or self._read_only:
            return
        from warmup.journal import merging

        try:
            if self._disk is not None:
                self._disk.close()
                self._disk = None
            disk = self._reach(_WAIT_AGAIN)
            moved = schema.transact(disk, lambda db: merging.merge_into(db, memory)).moved
        except (OSError, sqlite3.Error, Damaged, NewerJournal) as error:
            if isinstance(error, _BUGS):
                raise
            self.trouble = reason(error)
            return
        self.redo.moved_to(moved)
        memory.close()
        self._memory, self.trouble = None, ""

    # -- the file

    def _look(self, *, as_left: bool = True) -> None:
        """Read the file into memory and leave it as it is; what can be read of it where it is damaged.

        One that is as it was left is read where it lies.
        """
        try:
            refuse_newer(self.path)
            if as_left and schema.version_written(self.path) == VERSION and remembered.as_left(self.path):
                whole = schema.look_at(self.path)
                with schema.closed_if_it_fails(whole):
                    # What lies beside it may keep SQLite from opening it, which the first question does.
                    whole.execute("SELECT count(*) FROM sqlite_master").fetchone()
                self._memory, self.as_left = whole, True
                return
            with schema.reading(self.path) as source:
                copy = schema.copy_of(source)
            if wrong := schema.faults(copy):
                copy.close()
                raise Damaged(wrong[0])
            schema.migrate(copy)
            self._memory = copy
        except (Damaged, sqlite3.DatabaseError) as error:
            if not schema.is_damage(error):
                raise
            self._memory = schema.in_memory()
            from warmup.journal import salvage

            kept = salvage.rescue(self._memory, self.path)
            self.notice = f"{NAME} is damaged ({reason(error)})." + (
                f" What could be read of it counts (mornings: {kept})." if kept else ""
            )

    def _read_through(self) -> None:
        """Look at the file once more, which has damage though its stamp says that it is as it was left."""
        if self._memory is not None:
            self._memory.close()
        self.as_left = False
        try:
            self._look(as_left=False)
        except (OSError, sqlite3.Error, Damaged) as error:
            self._step_aside(error)

    def _reach(self, wait: int) -> sqlite3.Connection:
        """Open the file for writing. A damaged one is set aside, and what can be read of it kept."""
        try:
            self._disk = self._connect(wait)
        except (Damaged, sqlite3.DatabaseError) as error:
            if not schema.is_damage(error):
                raise
            self._disk = self._set_aside(wait)
        self._file = _identity(self.path)
        return self._disk

    def _connect(self, wait: int, *, anew: bool = False) -> sqlite3.Connection:
        if self._file is None:
            self.folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        if self.path.exists():
            refuse_newer(self.path)
        elif self._file is not None and not anew:
            # Taken away since it was opened, on a memory stick for instance: a new one in its place would
            # lie on another disk, and the marks in it would be found by nobody.
            raise FileNotFoundError(errno.ENOENT, f"{NAME} is gone from {clean(str(self.folder))}")
        else:
            os.close(os.open(self.path, os.O_RDWR | os.O_CREAT, 0o600))
        as_left = remembered.as_left(self.path)
        disk = schema.connect(self.path, wait)
        try:
            (version,) = disk.execute("PRAGMA user_version").fetchone()
            (tables,) = disk.execute("SELECT count(*) FROM sqlite_master").fetchone()
            if wrong := schema.faults(disk, as_left=as_left) if version or tables else []:
                raise Damaged(wrong[0])
            schema.migrate(disk)
            if self._file is None:
                self.as_left, self._others = as_left, _data_version(disk)
                if not as_left:
                    # None of it may be there when this run leaves a stamp of its own.
                    remembered.forget(self.folder)
        except BaseException:
            disk.close()
            raise
        return disk

    def _set_aside(self, wait: int) -> sqlite3.Connection:
        """Rename the damaged file, begin a new one, and keep in it what can be read of the old."""
        aside = free_name(self.folder, f"journal-damaged-{self._now():%Y%m%d-%H%M%S}")
        move_aside(self.path, aside)
        disk = self._connect(wait, anew=True)
        kept = 0
        with suppress(OSError, sqlite3.Error):
            from warmup.journal import salvage

            kept = salvage.rescue(disk, aside)
        self.notice = f"The journal was damaged. It is kept as {aside.name}, and a new one was begun" + (
            f" with what could be read of it (mornings: {kept})." if kept else "."
        )
        return disk


def _data_version(disk: sqlite3.Connection) -> int:
    """A number that changes when another connection writes (https://www.sqlite.org/pragma.html)."""
    (number,) = disk.execute("PRAGMA data_version").fetchone()
    return int(number)


def free_name(folder: Path, stem: str) -> Path:
    """Where to set a journal aside: ``stem.db``, or with a number behind it where that is taken."""
    for number in range(1, 1000):
        aside = folder / f"{stem}{f'-{number}' if number > 1 else ''}.db"
        if not os.path.lexists(aside):
            return aside
    raise FileExistsError(errno.EEXIST, "too many journals set aside; move some away")


def move_aside(path: Path, aside: Path) -> None:
    """Rename a journal that nobody can open, with what a write cut short left beside it.

    That must never be played into the file which comes in its place.
    """
    for beside in ("-journal", "-wal", "-shm", ""):
        with suppress(FileNotFoundError):
            path.with_name(path.name + beside).rename(aside.with_name(aside.name + beside))


def refuse_newer(path: Path) -> None:
    """Raise NewerJournal for a journal of a newer version; touches nothing."""
    if not stat.S_ISREG(path.stat().st_mode):
        raise OSError(f"{clean(path.name)} is no file")
    version = schema.version_written(path)
    if version >= _NO_VERSION:
        raise Damaged("its version number makes no sense")
    if version > VERSION:
        raise NewerJournal(
            f"{clean(str(path))} was written by a newer version of warmup "
            f"(format {version}; this one reads {VERSION}). "
            "Update warmup; nothing was changed."
        )


def _identity(path: Path) -> tuple[int, int]:
    about = path.stat()
    return about.st_dev, about.st_ino


def reason(error: Exception) -> str:
    """What went wrong, in the system's words, on one line."""
    return clean(getattr(error, "strerror", None) or str(error) or type(error).__name__)
