"""A journal as CSV files, and back: the form of ``warmup export``.

A table is a file, ``sittings.csv`` (the sessions), ``prompts.csv``, ``marks.csv``, ``actions.csv``,
``notes.csv`` and ``practice.csv``: UTF-8, fields set apart by commas and quoted as RFC 4180 says, lines
ended by CR LF, the first line the names of the columns. A row is a row of the table. Text stands as it is,
also where a cell holds several lines (the routine of a session is one JSON text); numbers are whole and
written in digits; the one thing that may be missing, the ``position`` of an action, is then an empty cell.
The columns are described in :mod:`warmup.journal.schema`, the JSON in :mod:`warmup.journal.routine_json`.

What is read back goes through the checks of the tables themselves, row by row, into a journal in memory.
"""

import csv
import re
import sqlite3
from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from io import StringIO
from typing import NamedTuple

from warmup.journal import log, practice, schema
from warmup.journal.rows import ABOUT, MARK, NOTE, PROMPT

_KEY = "child, date, sitting"
COLUMNS: dict[str, tuple[str, ...]] = {
    table: tuple(columns.split(", "))
    for table, columns in (
        ("sittings", f"{_KEY}, {ABOUT}"),
        ("prompts", f"{_KEY}, {PROMPT}"),
        ("marks", f"{_KEY}, {MARK}"),
        ("actions", log.COLUMNS),
        ("notes", f"{_KEY}, {NOTE}"),
        ("practice", practice.COLUMNS),
    )
}
"""The columns of each table, in order."""
NUMBERS = frozenset({"sitting", "position", "furthest", "rough", "cue", "from_memory", "shared"})
"""The columns that hold whole numbers; all others hold text."""
_WHOLE = re.compile(r"-?[0-9]{1,19}")
_LONGEST = 50_000_000
"""The longest cell that is read, in characters."""


class Unfit(Exception):
    """A row that can't be in a journal: which line it is on, from 1, and what was expected and found."""

    def __init__(self, line: int, expected: str, found: str) -> None:
        super().__init__(line, expected, found)
        self.table, self.line, self.expected, self.found = "", line, expected, found


class Written(NamedTuple):
    """A table as CSV, how many rows that are, and how many were left out since they make no sense."""

    text: str
    rows: int
    left: int


def table_text(journal: sqlite3.Connection, table: str) -> Written:
    """A table of a journal as CSV. A row with a value of another kind than its column has is left out."""
    columns, rows, left, out = COLUMNS[table], 0, 0, StringIO(newline="")
    to = csv.writer(out, lineterminator="\r\n")
    to.writerow(columns)
    order = ", ".join(columns[:4])
    for row in journal.execute(f"SELECT {', '.join(columns)} FROM {table} ORDER BY {order}"):
        if all(_fits(table, column, value) for column, value in zip(columns, row, strict=True)):
            to.writerow(["" if value is None else value for value in row])
            rows += 1
        else:
            left += 1
    return Written(out.getvalue(), rows, left)


def _fits(table: str, column: str, value: object) -> bool:
    if column in NUMBERS:
        return isinstance(value, int) or (value is None and _may_miss(table, column))
    return isinstance(value, str)


def _may_miss(table: str, column: str) -> bool:
    return (table, column) == ("actions", "position")


def _put_table(journal: sqlite3.Connection, table: str, text: str) -> None:
    """Put the rows of a table's CSV into an empty journal. Unfit at the first wrong one."""
    columns, statement = COLUMNS[table], _insert(table)
    for line, cells in _records(text):
        if line == 1:
            if tuple(cells) != columns:
                raise Unfit(1, f"the columns {', '.join(columns)}", ", ".join(cells)[:60] or "nothing")
            continue
        if len(cells) != len(columns):
            raise Unfit(line, f"{len(columns)} cells", f"{len(cells)}")
        values = [_value(table, column, cell, line) for column, cell in zip(columns, cells, strict=True)]
        try:
            journal.execute(statement, values)
        except (sqlite3.IntegrityError, OverflowError):
            raise Unfit(line, "a row that a journal can hold, each once", "another") from None


def _insert(table: str) -> str:
    columns = COLUMNS[table]
    return f"INSERT INTO {table} ({', '.join(columns)}) VALUES ({', '.join('?' * len(columns))})"


def _records(text: str) -> Iterator[tuple[int, Sequence[str]]]:
    """The records with the line, from 1, each begins on."""
    reader, line = csv.reader(StringIO(text, newline=""), strict=True), 1
    try:
        for cells in reader:
            yield line, cells
            line = reader.line_num + 1
    except csv.Error as error:
        raise Unfit(line, "commas and quotation marks as CSV has them", str(error)) from None
    if line == 1:
        raise Unfit(1, "a line of columns", "nothing")


def _value(table: str, column: str, cell: str, line: int) -> str | int | None:
    if column not in NUMBERS:
        return cell
    if not cell and _may_miss(table, column):
        return None
    if not _WHOLE.fullmatch(cell):
        raise Unfit(line, f"a whole number for {column}", f'"{cell[:20]}"')
    return int(cell)


def take_in_whole(target: sqlite3.Connection, source: sqlite3.Connection) -> bool:
    """Put every row of ``source`` into ``target``, in a transaction; False where that is not empty."""
    if any(target.execute(f"SELECT 1 FROM {table} LIMIT 1").fetchone() for table in COLUMNS):
        return False
    for table, columns in COLUMNS.items():
        rows = source.execute(f"SELECT {', '.join(columns)} FROM {table}")
        target.executemany(_insert(table), rows)
    return True


def from_tables(texts: Mapping[str, str]) -> sqlite3.Connection:
    """A journal in memory of the CSV of each table. Raises Unfit, which names the table."""
    journal, limit = schema.in_memory(), csv.field_size_limit(_LONGEST)
    try:
        with schema.closed_if_it_fails(journal):
            for table, text in texts.items():
                try:
                    schema.transact(journal, partial(_put_table, table=table, text=text))
                except Unfit as unfit:
                    unfit.table = table
                    raise
    finally:
        csv.field_size_limit(limit)
    return journal
