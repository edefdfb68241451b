"""Copies of a journal: made from a snapshot, read back before they count, and put in the journal's place.

A copy is a journal like any other, in one file. It is made beside its place and renamed into it only when it
was read back: whole by SQLite's own check, and with as many rows in each table as the snapshot has.
"""

import datetime as dt
import errno
import os
import re
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing, suppress
from pathlib import Path

from warmup.journal import schema
from warmup.journal.inspection import whole_copy
from warmup.journal.schema import TABLES, VERSION, Damaged
from warmup.journal.store import NAME, JournalProblem, free_name, move_aside, reason, refuse_newer
from warmup.text import clean

MADE = re.compile(r"warmup-[0-9]{4}-[0-9]{2}-[0-9]{2}\.db")
"""The names of the copies the program makes by itself."""
ASIDE = re.compile(r"journal-((damaged|before)-[0-9-]+|[0-9]{8}-[0-9]{6})\.db")
"""The names of journals that were set aside: damaged, replaced by a copy, or before a child was taken out."""
_BY_HAND = re.compile(r"warmup-copy-[0-9-]*\.db")
_MOST = 50
"""How many files beside a journal are looked into."""


def made_name(day: dt.date) -> str:
    """What a copy of this day is called."""
    return f"warmup-{day.isoformat()}.db"


def keep_copy(source: Path, target: Path, *, over: bool = False) -> None:
    """Copy the journal ``source`` to the file ``target``, whole or not at all, and read it back.

    Raises JournalProblem, with nothing changed: no whole journal, no room, a folder that is not there, or a
    file in the place already, unless it may be written ``over``. Its sentence names no folder of the source.
    """
    try:
        snapshot = whole_copy(source)
    except JournalProblem as problem:
        raise JournalProblem(str(problem).replace(clean(str(source)), source.name)) from problem
    with closing(snapshot):
        write(snapshot, target, over=over)


def write(snapshot: sqlite3.Connection, target: Path, *, over: bool = False) -> None:
    """Put a whole journal into a file of its own, as :func:`keep_copy` does."""
    place = clean(str(target))
    try:
        if not over and os.path.lexists(target):
            raise FileExistsError(errno.EEXIST, "something is there already; name another file")
        name = _temporary(snapshot, target)
        try:
            name.replace(target)
        except BaseException:
            name.unlink(missing_ok=True)
            raise
        _settle(target.parent)
    except (OSError, sqlite3.Error, Damaged) as error:
        raise JournalProblem(
            f"{place}: no copy could be made ({reason(error)}). Nothing was changed."
        ) from error


def _temporary(snapshot: sqlite3.Connection, target: Path) -> Path:
    """A file beside the target that holds the journal, read back and on the disk."""
    handle, text = tempfile.mkstemp(prefix=".journal-copy-", dir=target.parent)
    os.close(handle)
    name = Path(text)
    try:
        # Nothing of a copy counts before it is renamed, so no rollback file need lie beside it.
        with closing(sqlite3.connect(name, isolation_level=None)) as disk:
            disk.execute("PRAGMA journal_mode = MEMORY")
            snapshot.backup(disk)
        with closing(schema.look_at(name)) as back:
            if wrong := schema.faults(back):
                raise Damaged(f"read back it is not whole: {wrong[0]}")
            if counts(back) != counts(snapshot):
                raise Damaged("read back it has other rows than the journal")
        with name.open("rb+") as file:
            os.fsync(file.fileno())
    except BaseException:
        name.unlink(missing_ok=True)
        raise
    return name


def counts(journal: sqlite3.Connection) -> tuple[int, ...]:
    """How many rows each table has; none where an older journal has no such table."""
    there = schema.tables_in(journal)
    return tuple(
        journal.execute(f"SELECT count(*) FROM {table}").fetchone()[0] if table in there else 0
        for table in TABLES
    )


def _settle(folder: Path) -> None:
    """Have a rename on the disk, where a folder can be told so."""
    if hasattr(os, "O_DIRECTORY"):
        with suppress(OSError):
            handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
            try:
                os.fsync(handle)
            finally:
                os.close(handle)


# -- put in the journal's place


def put_in_place(folder: Path, snapshot: sqlite3.Connection, day: dt.date) -> str:
    """Make ``snapshot`` the journal of this folder; gives the name the present one is kept under, if any.

    The present one stays as it is, byte for byte, as ``journal-before-DATE.db``. Raises JournalProblem, with
    nothing changed.
    """
    path = folder / NAME
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        aside, there = "", os.path.lexists(path)
        if there:
            with suppress(Damaged):
                refuse_newer(path)
        name = _temporary(snapshot, path)
        try:
            if there:
                aside = _exchange(path, name, day)
            else:
                name.replace(path)
        except BaseException:
            name.unlink(missing_ok=True)
            raise
        _settle(folder)
    except (OSError, sqlite3.Error, Damaged) as error:
        raise JournalProblem(
            f"{NAME}: could not be replaced ({reason(error)}). It is as it was before."
        ) from error
    return aside


def _exchange(path: Path, name: Path, day: dt.date) -> str:
    """Keep the journal under another name and put the file ``name`` in its place; gives that name."""
    aside = free_name(path.parent, f"journal-before-{day.isoformat()}")
    try:
        holder = schema.connect(path, schema.WAIT)
    except (Damaged, sqlite3.DatabaseError) as error:
        if not schema.is_damage(error):
            raise
        move_aside(path, aside)
        name.replace(path)
        return aside.name
    with closing(holder):
        try:
            # No other window writes between the two names; a write cut short is rolled back first.
            holder.execute("BEGIN IMMEDIATE")
        except sqlite3.DatabaseError as error:
            if not schema.is_damage(error):
                raise
        if os.name == "nt":
            holder.close()
        _swap(path, name, aside)
    return aside.name


def _swap(path: Path, name: Path, aside: Path) -> None:
    try:
        # Two names of one file: there is a journal in its place at every moment.
        os.link(path, aside)
    except OSError:
        path.rename(aside)
    try:
        name.replace(path)
    except BaseException:
        aside.replace(path)
        raise


# -- beside the journal


def beside(folder: Path, *, strange: bool = False) -> Iterator[Path]:
    """Every other journal in the folder, by its header and its tables: in order of their names.

    Those set aside and the program's own copies are among them, unless only ``strange`` ones are wanted, as
    a sync tool leaves them. Nothing is touched.
    """
    try:
        with os.scandir(folder) as entries:
            names = sorted(
                entry.name
                for entry in entries
                if entry.name.endswith(".db") and entry.name != NAME and entry.is_file(follow_symlinks=False)
            )
    except OSError:
        return
    ours = (ASIDE, MADE, _BY_HAND) if strange else ()
    for name in [each for each in names if not any(name.fullmatch(each) for name in ours)][:_MOST]:
        if _is_journal(folder / name):
            yield folder / name


def _is_journal(path: Path) -> bool:
    try:
        if not 0 < schema.version_written(path) <= VERSION:
            return False
        with closing(schema.look_at(path, wait=200)) as db:
            return schema.tables_in(db).issuperset(TABLES[:3])
    except sqlite3.OperationalError as error:
        # Somebody writes in it just now: by its header it is one.
        return error.sqlite_errorcode & 0xFF == sqlite3.SQLITE_BUSY
    except (OSError, sqlite3.Error, UnicodeDecodeError):
        return False
