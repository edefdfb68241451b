"""What one action does to the rows of a session, all of it or none, and whether it still may."""

import sqlite3
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from warmup import renames
from warmup.journal import log
from warmup.journal import rows as table_rows
from warmup.journal.oddities import Key
from warmup.journal.routine_json import routine_text
from warmup.journal.rows import BESIDE, NOT_BEGUN, THIS, MarkRow, NoteRow
from warmup.model import Routine


class Changed(Exception):
    """Another window changed the session since this one looked; nothing was written."""


class Seen(NamedTuple):
    """What a window knows of a session: its items in order, and the id of the date's newest action.

    ``newest`` is None where it does not matter: going on or back spoils nothing that another window did.
    """

    items: tuple[str, ...]
    newest: str | None = None

    def check(self, db: sqlite3.Connection, key: Key) -> None:
        """Raise Changed unless the session still is as it was seen. Call it in the writing transaction."""
        rows = db.execute(f"SELECT item FROM prompts {THIS} AND position < {BESIDE} ORDER BY position", key)
        if tuple(renames.item(item) for (item,) in rows) != self.items:
            raise Changed
        if self.newest is not None and self.newest != log.newest(db, key[0], key[1]):
            raise Changed


class Change(NamedTuple):
    """What one action does to a session, all at once; what is None stays as it is.

    First the prompts from ``start`` on give way to ``rows`` and ``routine``; a mark stays where its prompt
    does, and a prompt with a note that gives way stands beside. Then the ``marks`` and ``notes`` are put on
    their positions, then the session stands on ``position``.
    """

    start: int | None = None
    routine: str = ""
    rows: Sequence[tuple[str, str]] = ()
    marks: Mapping[int, MarkRow] = {}
    position: int | None = None
    shown: int = NOT_BEGUN
    """The furthest prompt that has been on screen, if further than what is kept."""
    rough: bool | None = None
    closed: bool | None = None
    reached: int | None = None
    """The furthest prompt that counts as shown, whatever is kept."""
    notes: Mapping[int, NoteRow] = {}


def replacing(old: Routine, new: Routine, position: int, furthest: int) -> Change:
    """Other prompts in the place of a morning's, from the first one that differs on.

    What comes after ``position``, the prompt on screen, counts as shown up to the first that differs.
    """
    was, now = ([prompt.item for prompt in routine.prompts] for routine in (old, new))
    differ = [at for at in range(max(len(was), len(now))) if was[at : at + 1] != now[at : at + 1]]
    start = min(differ, default=len(now))
    ahead = min((at for at in differ if at > position), default=len(now))
    rows = [(prompt.item, prompt.wording) for prompt in new.prompts[start:]]
    return Change(start, routine_text(new), rows, reached=min(furthest, ahead - 1))


def apply(db: sqlite3.Connection, key: Key, change: Change, stamp: str) -> str:
    """Do a change to the rows of a session; the moment of the last mark or note, else ``stamp``."""
    if change.start is not None:
        _put_others(db, key, change.start, change.routine, change.rows)
    for number, (at, mark) in enumerate(sorted(change.marks.items())):
        stamp = log.after(stamp, stamp) if number else stamp
        table_rows.put_mark(db, key, at, mark._replace(at=stamp))
    for number, (at, note) in enumerate(sorted(change.notes.items()), start=len(change.marks)):
        stamp = log.after(stamp, stamp) if number else stamp
        table_rows.put_note(db, key, at, note._replace(at=stamp))
    for column, value in (
        ("position", change.position),
        ("rough", change.rough),
        ("furthest", change.reached),
    ):
        if value is not None:
            db.execute(f"UPDATE sittings SET {column} = ? {THIS}", (int(value), *key))
    if change.closed is not None:
        closed = stamp if change.closed else ""
        db.execute(f"UPDATE sittings SET closed = ? {THIS}", (closed, *key))
    db.execute(f"UPDATE sittings SET furthest = max(furthest, ?) {THIS}", (change.shown, *key))
    return stamp


def _put_others(
    db: sqlite3.Connection, key: Key, start: int, routine: str, rows: Sequence[tuple[str, str]]
) -> None:
    """Put other prompts in the place of those from ``start`` on, and take away the marks of those that go.

    A note goes with its prompt: to where that stands beside the others, and back where it comes again.
    """
    db.execute(
        "UPDATE sittings SET routine = ?, position = min(position, ?), "
        f"furthest = min(furthest, max(position, ? - 1)) {THIS}",
        (routine, start + len(rows), start, *key),
    )
    old = db.execute(f"SELECT position, item, wording FROM prompts {THIS}", key).fetchall()
    own = {at: (item, wording) for at, item, wording in old if at < BESIDE}
    new = {at: item for at, (item, _) in enumerate(rows, start)}
    gone = [at for at, (item, _) in own.items() if at >= start and new.get(at) != item]
    db.executemany(f"DELETE FROM marks {THIS} AND position = ?", [(*key, at) for at in gone])
    aside = max([BESIDE - 1, *(at for at, _, _ in old)]) + 1
    for number, at in enumerate(_noted(db, key, gone), start=aside):
        db.execute("INSERT INTO prompts VALUES (?, ?, ?, ?, ?, ?)", (*key, number, *own[at]))
        db.execute(f"UPDATE notes SET position = ? {THIS} AND position = ?", (number, *key, at))
    db.execute(f"DELETE FROM prompts {THIS} AND position >= ? AND position < {BESIDE}", (*key, start))
    put = [(*key, at, item, wording) for at, (item, wording) in enumerate(rows, start)]
    db.executemany("INSERT INTO prompts VALUES (?, ?, ?, ?, ?, ?)", put)
    _bring_back(db, key, new)


def _noted(db: sqlite3.Connection, key: Key, positions: Sequence[int]) -> list[int]:
    """Those of the positions that have a note, or one that was taken back."""
    there = {at for (at,) in db.execute(f"SELECT position FROM notes {THIS}", key)}
    return [at for at in positions if at in there]


def _bring_back(db: sqlite3.Connection, key: Key, new: Mapping[int, str]) -> None:
    """Put the notes of prompts that stood beside the others back on them, where these come again."""
    beside = db.execute(f"SELECT position, item FROM prompts {THIS} AND position >= {BESIDE}", key).fetchall()
    for at in _noted(db, key, [position for position, _ in beside]):
        item = dict(beside)[at]
        places = [place for place, other in new.items() if other == item]
        if places and not _noted(db, key, places[:1]):
            db.execute(f"UPDATE notes SET position = ? {THIS} AND position = ?", (places[0], *key, at))
            marked = f"EXISTS (SELECT 1 FROM marks {THIS} AND position = ?)"
            db.execute(f"DELETE FROM prompts {THIS} AND position = ? AND NOT {marked}", (*key, at, *key, at))
