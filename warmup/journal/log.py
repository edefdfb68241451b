"""The log of actions: what the adult did, when, in which window, and what stood there before and after.

Rows are only ever added. An undo is an action as well, which names the one it takes back, so what was
corrected stays beside the correction, and the newest action can be taken back after a restart.
"""

import datetime as dt
import json
import sqlite3
from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress
from typing import Any, NamedTuple

from warmup.journal.oddities import Key, Notes, Odd, as_position, is_moment, key_of, noting
from warmup.text import CLOCK_YEARS, LAST_YEAR, clean, visible

END = str(LAST_YEAR + 1)
"""What every moment that makes sense is before; other bytes in its place are after it."""
LONGEST_WORD = 40
"""The longest ``what``, window, and id of a window, in characters."""
TABLES = (
    """CREATE TABLE actions (
        id TEXT NOT NULL PRIMARY KEY,
        child TEXT NOT NULL,
        date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
        sitting INTEGER NOT NULL CHECK (typeof(sitting) = 'integer' AND sitting >= 0),
        at TEXT NOT NULL,
        window TEXT NOT NULL,
        what TEXT NOT NULL CHECK (typeof(what) = 'text' AND length(what) BETWEEN 1 AND 40),
        position INTEGER CHECK (typeof(position) IN ('integer', 'null')),
        before TEXT NOT NULL,
        after TEXT NOT NULL,
        takes_back TEXT NOT NULL)""",
    "CREATE INDEX actions_by_sitting ON actions (child, date, sitting)",
    "CREATE INDEX actions_by_moment ON actions (at)",
)
COLUMNS = "id, child, date, sitting, at, window, what, position, before, after, takes_back"


class Action(NamedTuple):
    """An action to be logged: a kind word (``mark``, ``swap``, ``days`` ...) and what it changed.

    ``before`` and ``after`` are JSON texts whose form the kind decides. ``takes_back`` is the id of the
    action that this one, an undo, takes back; empty for all others.
    """

    what: str
    position: int | None = None
    before: str = "null"
    after: str = "null"
    takes_back: str = ""


class ActionRow(NamedTuple):
    """An action as it is kept. ``session`` is 0 where it belongs to none; ``id`` is its own on any machine.

    ``at`` is a moment in UTC and never goes back within a journal; two journals made one are in order of
    ``at``, then of ``id``.
    """

    id: str
    child: str
    date: str
    session: int
    at: str
    window: str
    what: str
    position: int | None
    before: str
    after: str
    takes_back: str


def row_of(values: Iterable[Any]) -> ActionRow:
    """The row of these columns. Odd where one of them is not what it should be."""
    row = ActionRow(*values)
    key_of(row.child, row.date, row.session, least=0)
    if not is_moment(row.at):
        raise Odd("an action at a time that is none")
    for word in (row.id, row.window, row.what):
        if not isinstance(word, str) or not _is_word(word, 2 * LONGEST_WORD):
            raise Odd("an action whose kind, window or id is no plain word")
    if not all(isinstance(text, str) for text in (row.before, row.after, row.takes_back)):
        raise Odd("an action with something else where text should be")
    return row if row.position is None else row._replace(position=as_position(row.position))


def check(action: Action) -> None:
    """ValueError for an action that can't be logged: no plain kind word, or no JSON."""
    if not _is_word(action.what, LONGEST_WORD):
        raise ValueError(f"no plain word: {action.what!r}")
    json.loads(action.before), json.loads(action.after)


def _is_word(text: str, most: int) -> bool:
    return len(text) <= most and clean(text) == text and visible(text)


def append(db: sqlite3.Connection, key: Key, action: Action, window: str, number: int, at: str) -> ActionRow:
    """Add an action to those of a session, at this moment or just after the newest one there is.

    ``number`` is the first that the window may give to it.
    """
    (newest,) = db.execute(f"SELECT max(at) FROM actions WHERE at < '{END}'").fetchone()
    while db.execute("SELECT 1 FROM actions WHERE id = ?", (f"{window}-{number}",)).fetchone():
        number += 1
    row = ActionRow(
        f"{window}-{number}",
        *key,
        after(newest, at),
        window,
        action.what,
        action.position,
        action.before,
        action.after,
        action.takes_back,
    )
    put(db, row)
    return row


def put(db: sqlite3.Connection, row: ActionRow) -> None:
    """Keep a row; nothing happens where one of its id is kept already."""
    db.execute(f"INSERT OR IGNORE INTO actions ({COLUMNS}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", row)


NEWEST = "SELECT id FROM actions WHERE child = ? AND date = ? ORDER BY at DESC, id DESC LIMIT 1"


def newest(db: sqlite3.Connection, child: str, date: str) -> str:
    """The id of the newest action of a date, undos included; empty when there is none."""
    row = db.execute(NEWEST, (child, date)).fetchone()
    return str(row[0]) if row else ""


QUESTION = f"SELECT {COLUMNS} FROM actions WHERE child = ? AND date = ? AND (sitting = ? OR ?)"


def readable(rows: Iterable[Any]) -> list[ActionRow]:
    """The rows that are as they should be, in order of time."""
    found = []
    for values in rows:
        with suppress(Odd):
            found.append(row_of(values))
    return sorted(found, key=lambda row: (row.at, row.id))


def standing(rows: Iterable[ActionRow]) -> list[ActionRow]:
    """Of the rows in order of time those that no undo takes back, undos themselves left out.

    An undo that was itself taken back takes nothing back.
    """
    gone: set[str] = set()
    kept = []
    for row in reversed(list(rows)):
        if row.id in gone:
            continue
        if row.takes_back:
            gone.add(row.takes_back)
        else:
            kept.append(row)
    return kept[::-1]


def merge_into(
    target: sqlite3.Connection, source: sqlite3.Connection, moved: Mapping[Key, Key], notes: Notes
) -> None:
    """Take in the actions that ``target`` lacks. ``moved`` says under which key a session stands there."""
    for row in actions(source, notes):
        take_in(target, row, moved)


def actions(source: sqlite3.Connection, notes: Notes) -> Iterator[ActionRow]:
    """The actions that make sense; ``notes`` stands on each while it is worked on."""
    for values in source.execute(f"SELECT {COLUMNS} FROM actions ORDER BY at, id"):
        notes.at(*values[1:4])
        with noting(notes):
            yield row_of(values)


def take_in(target: sqlite3.Connection, row: ActionRow, moved: Mapping[Key, Key]) -> None:
    """Take in one action; of two with one id, as only a damaged file has them, always the same one."""
    key = (row.child, row.date, row.session)
    row = row._replace(session=moved.get(key, key)[2])
    same = target.execute(f"SELECT {COLUMNS} FROM actions WHERE id = ?", (row.id,)).fetchone()
    if same is not None and _order(target, row) > _order(target, ActionRow(*same)):
        target.execute("DELETE FROM actions WHERE id = ?", (row.id,))
    put(target, row)


def _order(target: sqlite3.Connection, row: ActionRow) -> tuple[str, ...]:
    """Orders actions of one id by what they say and by when their session began, whatever its number here."""
    question = "SELECT started FROM sittings WHERE child = ? AND date = ? AND sitting = ?"
    began = target.execute(question, (row.child, row.date, row.session)).fetchone()
    return (*(str(part) for part in row._replace(session=0)), str(began))


def after(last: object, moment: str) -> str:
    """The moment, or the smallest step after the last where the clock stood still or went back."""
    if not isinstance(last, str) or moment > last:
        return moment
    with suppress(ValueError, OverflowError):
        return utc(dt.datetime.fromisoformat(last) + dt.timedelta(microseconds=1))
    return moment


def by_clock(moment: dt.datetime) -> str:
    """What a clock says, in UTC; where that makes no sense the first moment that does.

    An action of such a moment is kept just after the newest there is.
    """
    sensible = moment.year in CLOCK_YEARS
    return utc(moment if sensible else dt.datetime(CLOCK_YEARS[0], 1, 1, tzinfo=dt.UTC))


def utc(moment: dt.datetime) -> str:
    """A moment as it is kept: in UTC, to the microsecond, so that texts sort as moments do."""
    return moment.astimezone(dt.UTC).isoformat(timespec="microseconds")
