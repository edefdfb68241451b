"""The file of a journal: its tables, how it is opened, and what is wrong with it.

SQLite with ``journal_mode=TRUNCATE`` and ``synchronous=FULL``, one transaction a key press. ``sittings``
holds the sessions, ``prompts`` what they asked, ``marks`` how it went and ``notes`` what the child said, all
keyed by child, date, session and position (of a note on the whole morning -1): marking again replaces the
mark, and an undone mark is a row without one, an undone note one without text. ``actions`` is only ever
added to (see :mod:`warmup.journal.log`). ``practice`` holds the marks of practice rounds, which belong to no
session (see :mod:`warmup.journal.practice`). The routine is kept as JSON when a session starts, so that a
morning comes back exactly. Files are 0600, folders 0700. Version 1 had no ``actions``, version 2 no
``notes`` and version 3 no ``practice``: such a journal is brought over when it is opened.

A journal can come from anywhere, so damage is looked for when it is opened: by SQLite's own check, made on a
copy where the file is only read (it skips the tables' checks there), and by comparing tables, triggers and
views with those made here. What a single value may be is said in :mod:`warmup.journal.oddities`; a damaged
file is set aside byte for byte, and :mod:`warmup.journal.salvage` takes over what can still be read.
"""

import sqlite3
import stat
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import TypeVar

from warmup.journal import log
from warmup.text import clean

VERSION = 4
"""The ``user_version`` of a journal this program writes."""
WAIT = 3000
"""How long another process's lock is waited for, in ms."""
T = TypeVar("T")

_KEYED = """
    child TEXT NOT NULL,
    date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    sitting INTEGER NOT NULL CHECK (typeof(sitting) = 'integer')"""

# Step n takes a journal from version n to n + 1. The checks let damage be found where a value makes no sense.
_MIGRATIONS = (
    (
        f"""CREATE TABLE sittings ({_KEYED},
            started TEXT NOT NULL,
            touched TEXT NOT NULL,
            shape TEXT NOT NULL,
            routine TEXT NOT NULL,
            position INTEGER NOT NULL CHECK (typeof(position) = 'integer'),
            furthest INTEGER NOT NULL CHECK (typeof(furthest) = 'integer'),
            rough INTEGER NOT NULL CHECK (rough IN (0, 1)),
            closed TEXT NOT NULL,
            PRIMARY KEY (child, date, sitting))""",
        f"""CREATE TABLE prompts ({_KEYED},
            position INTEGER NOT NULL CHECK (typeof(position) = 'integer'),
            item TEXT NOT NULL,
            wording TEXT NOT NULL,
            PRIMARY KEY (child, date, sitting, position)) WITHOUT ROWID""",
        # A mark taken back stays as a row without one, so that a merge knows it was taken back later.
        f"""CREATE TABLE marks ({_KEYED},
            position INTEGER NOT NULL CHECK (typeof(position) = 'integer'),
            mark TEXT NOT NULL CHECK (mark IN ('', 'fluent', 'hesitated', 'not_yet', 'skipped')),
            cue INTEGER NOT NULL CHECK (typeof(cue) = 'integer'),
            adult TEXT NOT NULL,
            from_memory INTEGER NOT NULL CHECK (from_memory IN (0, 1)),
            at TEXT NOT NULL,
            PRIMARY KEY (child, date, sitting, position)) WITHOUT ROWID""",
    ),
    log.TABLES,
    (
        f"""CREATE TABLE notes ({_KEYED},
            position INTEGER NOT NULL CHECK (typeof(position) = 'integer'),
            text TEXT NOT NULL,
            shared INTEGER NOT NULL CHECK (shared IN (0, 1)),
            adult TEXT NOT NULL,
            at TEXT NOT NULL,
            PRIMARY KEY (child, date, sitting, position)) WITHOUT ROWID""",
    ),
    (
        """CREATE TABLE practice (
            child TEXT NOT NULL,
            date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
            started TEXT NOT NULL,
            position INTEGER NOT NULL CHECK (typeof(position) = 'integer'),
            item TEXT NOT NULL,
            wording TEXT NOT NULL,
            mark TEXT NOT NULL CHECK (mark IN ('', 'fluent', 'hesitated', 'not_yet', 'skipped')),
            cue INTEGER NOT NULL CHECK (typeof(cue) = 'integer'),
            adult TEXT NOT NULL,
            at TEXT NOT NULL,
            PRIMARY KEY (child, date, started, position)) WITHOUT ROWID""",
    ),
)
# Python gives up on a message of SQLite's that quotes a name in other bytes than UTF-8.
_NO_NAME = "a table has no name that can be read"
TABLES = ("sittings", "prompts", "marks", "actions", "notes", "practice")
"""The tables, each with a column ``child``."""
HEADER = 100
"""The bytes of SQLite's header, its count of changes and the version among them."""


class Damaged(Exception):
    """The file is no journal, or not a whole one."""


def connect(path: Path, wait: int) -> sqlite3.Connection:
    """Open a journal for writing, so that what is committed is on the disk.

    Args:
        path: the file; SQLite makes an empty one where there is none.
        wait: how long another process's lock is waited for, in ms.

    Raises:
        Damaged: the file is no journal, or its header makes no sense.
        sqlite3.Error: it can't be opened, for any other reason.
    """
    _refuse_pipes_beside(path)
    connection = sqlite3.connect(path, timeout=wait / 1000, isolation_level=None)
    try:
        # cell_size_check finds damage early; fullfsync matters on macOS alone.
        for setting in (
            "cell_size_check = ON",
            "journal_mode = TRUNCATE",
            "synchronous = FULL",
            "fullfsync = ON",
        ):
            connection.execute(f"PRAGMA {setting}").fetchall()
    except UnicodeDecodeError as error:
        connection.close()
        raise Damaged(_NO_NAME) from error
    except BaseException as error:
        connection.close()
        # A lock or a full disk has a code of its own; these settings fail with this one for what the header
        # of the file says, such as a schema format that SQLite does not know.
        if getattr(error, "sqlite_errorcode", None) == sqlite3.SQLITE_ERROR:
            raise Damaged(str(error)) from error
        raise
    return _lenient(connection)


def look_at(path: Path, wait: int = WAIT) -> sqlite3.Connection:
    """Open a journal for reading alone; another process's lock is waited for so long, in ms."""
    _refuse_pipes_beside(path)
    address = f"{path.absolute().as_uri()}?mode=ro"
    return _lenient(sqlite3.connect(address, uri=True, timeout=wait / 1000, isolation_level=None))


def _refuse_pipes_beside(path: Path) -> None:
    """OSError where SQLite would open something beside a journal that it would wait for without end."""
    for beside in ("-journal", "-wal"):
        name = f"{path.name}{beside}"
        with suppress(FileNotFoundError):
            if not stat.S_ISREG(path.with_name(name).stat().st_mode):
                raise OSError(f"{clean(name)} is no file")


@contextmanager
def closed_if_it_fails(connection: sqlite3.Connection) -> Iterator[None]:
    """Leave no journal open that nobody can get at any more."""
    try:
        yield
    except BaseException:
        connection.close()
        raise


@contextmanager
def reading(path: Path) -> Iterator[sqlite3.Connection]:
    """A journal to read that stays as it is: a copy where a write cut short must be rolled back first."""
    import shutil
    import tempfile

    connection = look_at(path)
    try:
        try:
            connection.execute("SELECT count(*) FROM sqlite_master").fetchone()
        except UnicodeDecodeError as error:
            raise Damaged(_NO_NAME) from error
        except sqlite3.OperationalError as error:
            connection.close()
            if error.sqlite_errorcode & 0xFF == sqlite3.SQLITE_BUSY:
                raise
            with tempfile.TemporaryDirectory() as folder:
                for name in (path.name, f"{path.name}-journal"):
                    with suppress(FileNotFoundError):
                        shutil.copyfile(path.with_name(name), Path(folder, name))
                connection = connect(Path(folder, path.name), 1000)
                try:
                    yield connection
                finally:
                    connection.close()
        else:
            yield connection
    finally:
        connection.close()


def copy_of(source: sqlite3.Connection) -> sqlite3.Connection:
    """A journal in memory like the one given."""
    copy = _lenient(sqlite3.connect(":memory:", isolation_level=None))
    with closed_if_it_fails(copy):
        # With a read begun nobody can lock the source away while its pages are copied.
        source.execute("BEGIN")
        source.execute("SELECT count(*) FROM sqlite_master").fetchone()
        source.backup(copy)
        source.execute("COMMIT")
    return copy


def in_memory() -> sqlite3.Connection:
    """An empty journal that lies on no disk."""
    connection = _lenient(sqlite3.connect(":memory:", isolation_level=None))
    migrate(connection)
    return connection


def _lenient(connection: sqlite3.Connection) -> sqlite3.Connection:
    # Nothing that a file brings with it may run; a damaged letter in a text is no reason to lose the row.
    connection.execute("PRAGMA trusted_schema = OFF")
    connection.text_factory = lambda raw: raw.decode("utf-8", "replace")
    return connection


def version_written(path: Path) -> int:
    """The ``user_version`` in the header of a file, read without touching it; 0 for what is no journal."""
    with path.open("rb") as file:
        return version_in(file.read(HEADER))


def version_in(header: bytes) -> int:
    """The same from the first bytes of a file."""
    # https://www.sqlite.org/fileformat2.html, section 1.3: the magic string, and the user version at 60.
    return int.from_bytes(header[60:64], "big") if header.startswith(b"SQLite format 3\0") else 0


def tables_in(connection: sqlite3.Connection) -> set[str]:
    """The tables a journal has; older versions had fewer, and others are no concern of ours."""
    rows = connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")
    return {name for (name,) in rows if name in TABLES}


def migrate(connection: sqlite3.Connection) -> None:
    """Bring the tables to this program's version."""

    def steps(inside: sqlite3.Connection) -> None:
        version = inside.execute("PRAGMA user_version").fetchone()[0]
        for statements in _MIGRATIONS[version:]:
            for statement in statements:
                inside.execute(statement)
        inside.execute(f"PRAGMA user_version = {VERSION}")

    if connection.execute("PRAGMA user_version").fetchone()[0] < VERSION:
        transact(connection, steps)


def faults(connection: sqlite3.Connection, *, as_left: bool = False) -> list[str]:
    """What is wrong with the file; empty when it is whole. One that is ``as_left`` is not read through.

    Opened for reading alone, SQLite does not look at the checks of the tables: give it a copy.
    """
    try:
        if strange := _strange(connection):
            return [strange]
        if as_left:
            return []
        # The quick check, a tenth quicker, passes over an index that leads to rows which are not there.
        found = [str(row[0]) for row in connection.execute("PRAGMA integrity_check(1)")]
    except UnicodeDecodeError:
        return [_NO_NAME]
    except sqlite3.DatabaseError as error:
        # A lock or a disk that is gone is no damage.
        if is_damage(error) or error.sqlite_errorcode == sqlite3.SQLITE_ERROR:
            return [str(error)]
        raise
    return [] if found == ["ok"] else found


def _strange(connection: sqlite3.Connection) -> str:
    """What in the file's tables is not as this program makes them; empty when all is.

    A view or a trigger could make of a mark whatever it likes. Other tables are no concern of ours.
    """
    (version,) = connection.execute("PRAGMA user_version").fetchone()
    missing = {_squeezed(sql): sql for step in _MIGRATIONS[:version] for sql in step}
    if not missing:
        return "it has no version number"
    for kind, name, table, sql in connection.execute("SELECT type, name, tbl_name, sql FROM sqlite_master"):
        if kind not in ("table", "index"):
            return f'an unknown {clean(str(kind))} "{clean(str(name))}"'
        known = missing.pop(_squeezed(str(sql)), None) or (kind == "index" and sql is None)
        if not known and str(table).lower() in TABLES:
            return f'the {kind} "{clean(str(name))}" is not as this program makes it'
    return f"no {' '.join(next(iter(missing.values())).split()[1:3])}" if missing else ""


def _squeezed(sql: str) -> str:
    return "".join(sql.split())


def is_damage(error: Exception) -> bool:
    """Whether an error says that the file itself is damaged, SQLite's or one of ours."""
    if isinstance(error, Damaged):
        return True
    code = getattr(error, "sqlite_errorcode", None)
    return code is not None and code & 0xFF in (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB)


def transact(
    connection: sqlite3.Connection, work: Callable[[sqlite3.Connection], T], *, commits: bool = True
) -> T:
    """Do the work wholly or not at all; where it is not to be committed yet, whoever asks does that later."""
    connection.execute("BEGIN IMMEDIATE")
    try:
        result = work(connection)
        if commits:
            connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise
    return result
