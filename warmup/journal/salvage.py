"""What can still be read of a damaged journal: row by row, from both ends, and position by position.

SQLite stops at the first damaged page of a walk. So every row is asked for in several ways, and each
answer that makes no sense is passed over: a routine that can't be read is empty, a good mark stays.
"""

import datetime as dt
import sqlite3
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import closing, suppress
from itertools import pairwise
from pathlib import Path
from typing import Any, TypeVar

from warmup.journal import fragments, log, merging, practice, schema
from warmup.journal import rows as table_rows
from warmup.journal.oddities import Key, Odd, key_of, unnoted
from warmup.journal.rows import BESIDE, MARK, MORNING, NOTE, PROMPT, THIS, About, MarkRow, NoteRow, Whole

_GAP = 400
"""Between two dates of a child that lie no further apart, in days, each is asked for by itself.

One that lies further off is a date with a flipped digit: the years between would take a minute.
"""
_NUMBERS = 3
"""How many sessions of such a date."""
_LEAST = {"prompts": "position, item, ''", "marks": "position, mark, 0, '', 0, ''"}
"""What counts of a row whose end can't be read: the item and its mark."""
_POSITIONS = (*range(30), *range(BESIDE, BESIDE + 10))
"""Where a prompt may stand that nothing else tells of."""
# The columns before the routine, and those after it: a long routine lies on pages of its own.
_BEFORE, _AFTER = "started, touched, shape", "position, furthest, rough, closed"
# Python gives up on some damaged rows before SQLite does.
_DAMAGE = (sqlite3.Error, UnicodeDecodeError, OverflowError, MemoryError)
_COLUMNS_OF_PROMPTS, _COLUMNS_OF_MARKS, _COLUMNS_OF_NOTES, _COLUMNS_OF_PRACTICE = 6, 9, 8, 10
Prompt = tuple[str, str]
T = TypeVar("T")


def rescue(target: sqlite3.Connection, path: Path) -> int:
    """Take what can be read of a damaged file into a journal; gives how many sessions that was."""
    raw = path.read_bytes()
    try:
        with schema.reading(path) as source:
            return schema.transact(target, lambda db: salvage(db, source, raw))
    except (sqlite3.DatabaseError, schema.Damaged):
        # Nothing leads into the file; its pages may still hold rows.
        with closing(schema.in_memory()) as nothing:
            return schema.transact(target, lambda db: salvage(db, nothing, raw))


def salvage(target: sqlite3.Connection, source: sqlite3.Connection, raw: bytes = b"") -> int:
    """Take all that can be read of ``source`` into ``target``, in a transaction; gives how many sessions.

    ``raw`` is the file itself, for what SQLite does not find any more.
    """
    moved = {}
    prompts, marks, notes = _in_pages(raw)
    for key in _keys(source, {*prompts, *marks, *notes}):
        whole = _whole(source, key, prompts.get(key, {}), marks.get(key, {}), notes.get(key, {}))
        if whole is not None:
            moved[key] = merging.take_in(target, key, whole)
    for values in _walks(source, f"SELECT {log.COLUMNS} FROM actions", "rowid", "id", "at"):
        with suppress(Odd):
            log.take_in(target, log.row_of(values), moved)
    _salvage_practice(target, source, raw)
    return len(moved)


def _salvage_practice(target: sqlite3.Connection, source: sqlite3.Connection, raw: bytes) -> None:
    """Take in the marks of practice rounds, by SQLite's walks and off the pages; of two the later counts."""
    walked = _walks(source, f"SELECT {practice.COLUMNS} FROM practice", "child, date, started, position")
    in_pages = (row for row in fragments.rows(raw) if len(row) == _COLUMNS_OF_PRACTICE)
    for values in (*walked, *in_pages):
        with suppress(Odd):
            practice.take_in(target, practice.row_of(values, unnoted))


def _ask(source: sqlite3.Connection, sql: str, values: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """The rows of a question as far as it gets."""
    with suppress(*_DAMAGE):
        yield from source.execute(sql, values)


def _walks(source: sqlite3.Connection, sql: str, *orders: str) -> list[tuple[Any, ...]]:
    """The rows of a table, walked from both ends in each of these orders."""
    found: dict[tuple[Any, ...], None] = {}
    for order in orders:
        for way in ("ASC", "DESC"):
            columns = ", ".join(f"{column} {way}" for column in order.split(", "))
            found |= dict.fromkeys(_ask(source, f"{sql} ORDER BY {columns}"))
    return list(found)


def _in_pages(
    raw: bytes,
) -> tuple[dict[Key, dict[int, Prompt]], dict[Key, dict[int, MarkRow]], dict[Key, dict[int, NoteRow]]]:
    """The prompts, marks and notes on the pages of the file; of two in one place the later."""
    prompts: dict[Key, dict[int, Prompt]] = {}
    marks: dict[Key, dict[int, MarkRow]] = {}
    notes: dict[Key, dict[int, NoteRow]] = {}
    for row in fragments.rows(raw):
        with suppress(Odd):
            if len(row) == _COLUMNS_OF_PROMPTS:
                at, prompt = table_rows.prompt_of(row[3:], unnoted)
                prompts.setdefault(key_of(*row[:3]), {})[at] = prompt
            elif len(row) == _COLUMNS_OF_MARKS:
                at, mark = table_rows.mark_of(row[3:], unnoted)
                there = marks.setdefault(key_of(*row[:3]), {})
                there[at] = max(there.get(at, mark), mark, key=lambda each: each.at)
            elif len(row) == _COLUMNS_OF_NOTES:
                at, said = table_rows.note_of(row[3:], unnoted)
                noted = notes.setdefault(key_of(*row[:3]), {})
                noted[at] = max(noted.get(at, said), said, key=lambda each: each.at)
    return prompts, marks, notes


def _keys(source: sqlite3.Connection, known: Iterable[Key]) -> list[Key]:
    """Every session that any table tells of, and those that may stand between them."""
    found = dict.fromkeys(known)
    for table in ("sittings", "sittings NOT INDEXED", "prompts", "marks", "notes", "actions"):
        order = "rowid" if table.endswith("INDEXED") else "child, date, sitting"
        for row in _walks(source, f"SELECT child, date, sitting FROM {table}", order):
            with suppress(Odd):
                found[key_of(*row)] = None
    for child in sorted({child for child, _, _ in found}):
        known_dates = sorted({dt.date.fromisoformat(date) for name, date, _ in found if name == child})
        for first, last in pairwise([*known_dates, known_dates[-1] + dt.timedelta(1)]):
            for days in range((last - first).days if (last - first).days <= _GAP else 1):
                for session in range(1, _NUMBERS + 1):
                    found[child, (first + dt.timedelta(days)).isoformat(), session] = None
    return sorted(found, key=lambda key: (key[1], key[0], key[2]))


def _whole(
    source: sqlite3.Connection,
    key: Key,
    prompts: dict[int, Prompt],
    marks: dict[int, MarkRow],
    notes: dict[int, NoteRow],
) -> Whole | None:
    """What can be read of a session; None where nothing can. What was found in the pages comes second."""
    positions = {*prompts, *marks, *notes} - {MORNING}
    prompts = prompts | _by_position(source, key, "prompts", PROMPT, table_rows.prompt_of, positions)
    marks = marks | _by_position(source, key, "marks", MARK, table_rows.mark_of, {*positions, *prompts})
    places = {MORNING, *positions, *prompts}
    notes = notes | _by_position(source, key, "notes", NOTE, table_rows.note_of, places)
    about = _about(source, key, marks)
    if about is None and (prompts or marks or notes):
        about = _made_up(key, marks)
    return Whole(about, prompts, marks, notes) if about else None


def _by_position(
    source: sqlite3.Connection,
    key: Key,
    table: str,
    columns: str,
    read: Callable[[Any, Callable[[str], None]], tuple[int, T]],
    known: Iterable[int],
) -> dict[int, T]:
    """The rows of a session in one of its tables by position, each asked for by itself as well."""
    question = f"SELECT child, date, sitting, {columns} FROM {table} {THIS}"
    rows = [
        row for way in ("ASC", "DESC") for row in _ask(source, f"{question} ORDER BY position {way}", key)
    ]
    missing = sorted({*_POSITIONS, *known} - {row[len(key)] for row in rows})
    try:
        # All at once: most often nothing of a session is there, and no page on the way is damaged.
        marks = ", ".join("?" * len(missing))
        rows += source.execute(f"{question} AND position IN ({marks})", (*key, *missing)).fetchall()
    except _DAMAGE:
        least = f"SELECT child, date, sitting, {_LEAST.get(table, columns)} FROM {table} {THIS}"
        for at in missing:
            asked = [[*_ask(source, f"{each} AND position = ?", (*key, at))] for each in (question, least)]
            rows += asked[0] or asked[1]
    found: dict[int, T] = {}
    for row in rows:
        # By a damaged page above it, a search may end at a row of another session.
        if row[: len(key)] != key:
            continue
        with suppress(Odd):
            at, value = read(row[len(key) :], unnoted)
            found.setdefault(at, value)
    return found


def _about(source: sqlite3.Connection, key: Key, marks: Mapping[int, MarkRow]) -> About | None:
    """A session's own row, its routine empty where that can't be read; None where the row is gone."""
    before, routine, after = (
        next(_ask(source, f"SELECT {columns} FROM sittings {THIS}", key), ())
        for columns in (_BEFORE, "routine", _AFTER)
    )
    if not before:
        return None
    reached = max(marks, default=0)
    with suppress(Odd):
        return table_rows.about_of(
            (*before, *(routine or ("",)), *(after or (reached, reached, 0, ""))), unnoted
        )
    return None


def _made_up(key: Key, marks: Mapping[int, MarkRow]) -> About:
    """A row for a session that lost its own. It is over, and begins before all others of its date."""
    reached, last = max(marks, default=0), max((mark.at for mark in marks.values()), default="")
    return About(f"{key[1]} salvaged {key[2]}", last, "", "", reached, reached, 0, last)
