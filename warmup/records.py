"""The rows of a journal: its tables, a sitting read and written whole, and two journals made one."""

import sqlite3
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import NamedTuple, TypeVar

from warmup import log
from warmup.morning import Mark

VERSION = 2
"""The ``user_version`` of a journal this program writes."""
BESIDE = 1000
"""From this position on a sitting keeps marked prompts that only another copy of it had."""

Key = tuple[str, str, int]
"""Which sitting: the child, the date (ISO), and the number of the sitting on that date from 1."""
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
)
THIS = "WHERE child = ? AND date = ? AND sitting = ?"
"""Picks the rows of one sitting."""
MARKS: Mapping[str, Mark | None] = {"": None, **{mark.value: mark for mark in Mark}}
"""What stands in the column ``mark``; nothing for a mark that was taken back."""


class MarkRow(NamedTuple):
    """A mark as it is kept; ``mark`` None is one that was taken back. ``at`` orders marks in time."""

    mark: Mark | None
    cue: int
    adult: str
    from_memory: bool
    at: str


class About(NamedTuple):
    """A row of ``sittings`` after its key: ``started`` tells it from every other, on any machine."""

    started: str
    touched: str
    shape: str
    routine: str
    position: int
    furthest: int
    rough: int
    closed: str


class Whole(NamedTuple):
    """A sitting with its (item, wording) rows and marks by position."""

    about: About
    prompts: Mapping[int, tuple[str, str]]
    marks: Mapping[int, MarkRow]


# -- the file


def connect(path: Path, wait: int) -> sqlite3.Connection:
    """Open a journal: what is committed is on the disk, and ``wait`` ms are spent on another's lock."""
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
    except BaseException:
        connection.close()
        raise
    return _lenient(connection)


def look_at(path: Path) -> sqlite3.Connection:
    """Open a journal for reading alone."""
    address = f"{path.absolute().as_uri()}?mode=ro"
    return _lenient(sqlite3.connect(address, uri=True, timeout=3, isolation_level=None))


@contextmanager
def reading(path: Path) -> Iterator[sqlite3.Connection]:
    """A journal to read that stays as it is: a copy where a write cut short must be rolled back first."""
    import shutil
    import tempfile

    connection = look_at(path)
    try:
        try:
            connection.execute("SELECT count(*) FROM sqlite_master").fetchone()
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
    # A damaged letter in a text is no reason to lose the row.
    connection.text_factory = lambda raw: raw.decode("utf-8", "replace")
    return connection


def version_written(path: Path) -> int:
    """The ``user_version`` in the header of a file, read without touching it; 0 for what is no journal."""
    with path.open("rb") as file:
        header = file.read(100)
    # https://www.sqlite.org/fileformat2.html, section 1.3: the magic string, and the user version at 60.
    return int.from_bytes(header[60:64], "big") if header.startswith(b"SQLite format 3\0") else 0


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


def faults(connection: sqlite3.Connection, *, thorough: bool = False) -> list[str]:
    """What SQLite finds wrong with the file; empty when it is whole."""
    check = "integrity_check" if thorough else "quick_check(1)"
    try:
        found = [str(row[0]) for row in connection.execute(f"PRAGMA {check}")]
        for table in ("sittings", "prompts", "marks"):
            connection.execute(f"SELECT child, date, sitting, position FROM {table} LIMIT 1").fetchone()
        connection.execute("SELECT touched, furthest FROM sittings LIMIT 1").fetchone()
        if connection.execute("PRAGMA user_version").fetchone()[0] > 1:
            connection.execute("SELECT id, at, takes_back FROM actions LIMIT 1").fetchone()
    except sqlite3.DatabaseError as error:
        # A missing table or column is damage as well; a lock or a disk that is gone is not.
        if is_damage(error) or error.sqlite_errorcode == sqlite3.SQLITE_ERROR:
            return [str(error)]
        raise
    return [] if found == ["ok"] else found


def is_damage(error: Exception) -> bool:
    """Whether SQLite says with this error that the file itself is damaged."""
    code = getattr(error, "sqlite_errorcode", None)
    return code is not None and code & 0xFF in (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB)


def transact(connection: sqlite3.Connection, work: Callable[[sqlite3.Connection], T]) -> T:
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


# -- a sitting whole


def read_whole(connection: sqlite3.Connection, key: Key) -> Whole | None:
    """The sitting of this key with all that belongs to it; None when there is none."""
    row = connection.execute(
        f"SELECT started, touched, shape, routine, position, furthest, rough, closed FROM sittings {THIS}",
        key,
    ).fetchone()
    if row is None:
        return None
    prompts = connection.execute(f"SELECT position, item, wording FROM prompts {THIS}", key)
    return Whole(
        About(*row), {at: (item, wording) for at, item, wording in prompts}, read_marks(connection, key)
    )


def read_marks(connection: sqlite3.Connection, key: Key) -> dict[int, MarkRow]:
    """The marks of a sitting by position."""
    rows = connection.execute(f"SELECT position, mark, cue, adult, from_memory, at FROM marks {THIS}", key)
    return {
        at: MarkRow(MARKS[mark], cue, adult, bool(memory), time)
        for at, mark, cue, adult, memory, time in rows
    }


def put_mark(connection: sqlite3.Connection, key: Key, at: int, row: MarkRow) -> None:
    """Keep a mark in the place of any other on the same prompt."""
    values = (row.mark.value if row.mark else "", row.cue, row.adult, int(row.from_memory), row.at)
    connection.execute("INSERT OR REPLACE INTO marks VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)", (*key, at, *values))


def put_whole(connection: sqlite3.Connection, key: Key, whole: Whole) -> None:
    """Keep a sitting as it is, in the place of what stood under its key."""
    values = (*key, *whole.about)
    connection.execute("INSERT OR REPLACE INTO sittings VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", values)
    for table in ("prompts", "marks"):
        connection.execute(f"DELETE FROM {table} {THIS}", key)
    rows = [(*key, at, item, wording) for at, (item, wording) in whole.prompts.items()]
    connection.executemany("INSERT INTO prompts VALUES (?, ?, ?, ?, ?, ?)", rows)
    for at, mark in whole.marks.items():
        put_mark(connection, key, at, mark)


def merged(one: Whole, other: Whole) -> Whole:
    """Two copies of a sitting as one: the later touched one, and of two marks on a prompt the later.

    A marked prompt that the later copy does not have stands at ``BESIDE`` and after.
    """
    newer, older = sorted((one, other), key=lambda whole: whole.about.touched, reverse=True)
    prompts, marks = dict(newer.prompts), dict(newer.marks)
    for at, prompt in sorted(older.prompts.items()):
        place = _place(prompts, at, prompt[0])
        mark = older.marks.get(at)
        if mark is None or (place not in prompts and mark.mark is None):
            continue
        prompts.setdefault(place, prompt)
        if place not in marks or mark.at > marks[place].at:
            marks[place] = mark
    about = newer.about
    if newer.prompts == older.prompts:
        about = about._replace(furthest=max(about.furthest, older.about.furthest))
    return Whole(about, prompts, marks)


def _place(prompts: Mapping[int, tuple[str, str]], at: int, item: str) -> int:
    """Where a copy's prompt stands among these: in its own place, elsewhere, or beside them."""
    if at in prompts and prompts[at][0] == item:
        return at
    same = (place for place, (other, _) in sorted(prompts.items()) if other == item)
    return next(same, max(BESIDE - 1, *prompts, -1) + 1)


def merge_into(
    target: sqlite3.Connection, source: sqlite3.Connection, *, patient: bool = False
) -> dict[Key, Key]:
    """Take every sitting of ``source`` into ``target``, and say under which key each stands there.

    With ``patient`` what can't be read of a damaged source is passed over. Call it in a transaction.
    """
    moved = {}
    for key in _keys(source, patient):
        target.execute("SAVEPOINT one")
        try:
            whole = read_whole(source, key)
            if whole is not None:
                moved[key] = take_in(target, key, whole)
        except (sqlite3.DatabaseError, LookupError, TypeError, ValueError):
            if not patient:
                raise
            if target.in_transaction:
                target.execute("ROLLBACK TO one")
        finally:
            if target.in_transaction:
                target.execute("RELEASE one")
    try:
        log.merge_into(target, source, moved)
    except sqlite3.DatabaseError:
        if not patient:
            raise
    return moved


def _keys(source: sqlite3.Connection, patient: bool) -> list[Key]:
    found: dict[Key, None] = {}
    # Damage stops a walk through the table, so a damaged one is walked from both ends.
    for order in ("ASC", "DESC")[: 1 + patient]:
        try:
            for child, date, sitting in source.execute(
                "SELECT child, date, sitting FROM sittings "
                f"ORDER BY child {order}, date {order}, sitting {order}"
            ):
                found[child, date, sitting] = None
        except sqlite3.DatabaseError:
            if not patient:
                raise
    return list(found)


def take_in(target: sqlite3.Connection, key: Key, whole: Whole) -> Key:
    """Merge a sitting into a journal: into its own copy there, else under its key or the next free one."""
    child, date, number = key
    copy = target.execute(
        "SELECT sitting FROM sittings WHERE child = ? AND date = ? AND started = ?",
        (child, date, whole.about.started),
    ).fetchone()
    if copy is None:
        taken = {
            row[0]
            for row in target.execute("SELECT sitting FROM sittings WHERE child = ? AND date = ?", key[:2])
        }
        key = (child, date, number if number not in taken else max(taken) + 1)
        put_whole(target, key, whole)
        return key
    key = (child, date, copy[0])
    mine = read_whole(target, key)
    if mine is not None and mine != whole:
        put_whole(target, key, merged(mine, whole))
    return key
