"""Practice rounds in a journal: a row a prompt that was marked, apart from all that a morning keeps.

A row belongs to a child, a date and the moment its round began, which no other round shares; so rounds of two
laptops never meet, and nothing need be numbered anew. A mark taken back is a row without one. Nothing here is
folded into memory, and no count of mornings looks at it.
"""

import sqlite3
from collections.abc import Iterable
from contextlib import suppress
from typing import Any, NamedTuple

from warmup import renames
from warmup.journal import log
from warmup.journal.oddities import (
    Note,
    Notes,
    Odd,
    as_position,
    is_moment,
    key_of,
    moment,
    noting,
    number,
    text,
)
from warmup.journal.rows import CUES, MARKS
from warmup.model import Mark

COLUMNS = "child, date, started, position, item, wording, mark, cue, adult, at"
QUESTION = f"SELECT {COLUMNS} FROM practice WHERE child = ?"
_THIS = "WHERE child = ? AND date = ? AND started = ? AND position = ?"


class PracticeRow(NamedTuple):
    """A mark of a practice round, by its round and its position there; ``mark`` None was taken back.

    ``started`` and ``at`` are moments in UTC; ``started`` tells the round from every other of the child.
    """

    child: str
    date: str
    started: str
    position: int
    item: str
    wording: str
    mark: Mark | None
    cue: int
    adult: str
    at: str


def row_of(values: Any, note: Note) -> PracticeRow:
    """The row of these columns. Odd without a round, a place, an item or a mark we know."""
    child, date, started, position, item, wording, mark, cue, adult, at = values
    key_of(child, date, 1)
    if not is_moment(started):
        raise Odd("a practice round that begins at no time")
    if not isinstance(item, str):
        raise Odd("a practice prompt whose item is no text")
    if not isinstance(mark, str) or mark not in MARKS:
        raise Odd("a practice mark of no kind we know")
    return PracticeRow(
        child,
        date,
        started,
        as_position(position),
        item,
        text(wording, note),
        MARKS[mark],
        number(cue, note, most=max(CUES)),
        text(adult, note),
        moment(at, note),
    )


def readable(rows: Iterable[Any]) -> list[PracticeRow]:
    """The rows that are as they should be, in order of time, their items by the names they have now."""
    found = []
    for values in rows:
        with suppress(Odd):
            row = row_of(values, lambda _what: None)
            found.append(row._replace(item=renames.item(row.item)))
    return sorted(found, key=lambda row: (row.date, row.started, row.position))


def begins(db: sqlite3.Connection, child: str, date: str, moment: str) -> tuple[str, int]:
    """When a round begins that begins at this moment, and its number on its date, from 1."""
    question = "SELECT DISTINCT started FROM practice WHERE child = ? AND date = ?"
    rounds = [started for (started,) in db.execute(question, (child, date)) if is_moment(started)]
    return log.after(max(rounds, default=""), moment), len(rounds) + 1


def put(db: sqlite3.Connection, row: PracticeRow) -> None:
    """Keep a row in the place of any other on the same prompt."""
    values = (*row[:6], row.mark.value if row.mark else "", *row[7:])
    db.execute("INSERT OR REPLACE INTO practice VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", values)


def take_in(target: sqlite3.Connection, row: PracticeRow) -> None:
    """Merge a row into a journal: of two on one prompt the later counts."""
    there = target.execute(f"SELECT {COLUMNS} FROM practice {_THIS}", row[:4]).fetchone()
    if there is not None:
        with suppress(Odd):
            if _later(row_of(there, lambda _what: None)) >= _later(row):
                return
    put(target, row)


def _later(row: PracticeRow) -> tuple[object, ...]:
    """Orders rows of one prompt: by their moment, and where that ties by what they say."""
    return row.at, row.mark.value if row.mark else "", row.cue, row.adult, row.item, row.wording


def merge_into(target: sqlite3.Connection, source: sqlite3.Connection, notes: Notes) -> None:
    """Take in every row that makes sense."""
    for row in marks(source, notes):
        take_in(target, row)


def marks(source: sqlite3.Connection, notes: Notes) -> Iterable[PracticeRow]:
    """The rows that make sense; ``notes`` stands on each while it is worked on."""
    rows = source.execute(f"SELECT {COLUMNS} FROM practice ORDER BY child, date, started, position")
    for values in rows.fetchall():
        notes.at(*values[:3])
        with noting(notes):
            yield row_of(values, notes)
