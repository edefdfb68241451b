"""A journal as CSV and back: the same row for row, and what is no row is named by its line."""

import csv
import sqlite3
from collections.abc import Mapping
from contextlib import closing
from io import StringIO
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from warmup.journal import schema, tables
from warmup.journal.tables import COLUMNS, Unfit, from_tables, table_text, take_in_whole

# SQLite's text ends at no sign; what UTF-8 can't hold is in no journal.
texts = st.text(st.characters(codec="utf-8"), max_size=20) | st.sampled_from(
    ["", "=1+1", '"', "a,b", "a\r\nb", "\n", "\0", "007", "null", "﻿", " x "]
)
numbers = st.integers(-(2**63), 2**63 - 1)
dates = st.dates().map(str)
keys = st.tuples(texts, dates, numbers)
flags = st.integers(0, 1)
marks = st.sampled_from(["", "fluent", "hesitated", "not_yet", "skipped"])
ROWS = {
    "sittings": st.tuples(keys, texts, texts, texts, texts, numbers, numbers, flags, texts),
    "prompts": st.tuples(keys, numbers, texts, texts),
    "marks": st.tuples(keys, numbers, marks, numbers, texts, flags, texts),
    "notes": st.tuples(keys, numbers, texts, flags, texts, texts),
    "practice": st.tuples(
        st.tuples(texts, dates, texts), numbers, texts, texts, marks, numbers, texts, texts
    ),
}
actions = st.tuples(
    texts, texts, dates, st.integers(0, 2**63 - 1), texts, texts, st.text("ab\n,", min_size=1, max_size=40),
    st.none() | numbers, texts, texts, texts,
)  # fmt: skip
Rows = list[tuple[Any, ...]]


@st.composite
def journals(draw: st.DrawFn) -> Mapping[str, Rows]:
    """The rows of each table, no two with one key."""
    found: dict[str, Rows] = {}
    for table, strategy in ROWS.items():
        width = 3 if table == "sittings" else 4
        rows = [(*row[0], *row[1:]) for row in draw(st.lists(strategy, max_size=6))]
        found[table] = list({row[:width]: row for row in rows}.values())
    found["actions"] = list({row[0]: row for row in draw(st.lists(actions, max_size=6))}.values())
    return found


def journal_of(rows: Mapping[str, Rows]) -> sqlite3.Connection:
    db = schema.in_memory()
    for table, values in rows.items():
        db.executemany(f"INSERT INTO {table} VALUES ({', '.join('?' * len(COLUMNS[table]))})", values)
    return db


def every_row(db: sqlite3.Connection) -> Mapping[str, Rows]:
    return {table: sorted(db.execute(f"SELECT * FROM {table}"), key=repr) for table in COLUMNS}


@pytest.mark.slow
@settings(max_examples=80)
@given(journals())
def test_out_wiped_and_in_again_is_the_same_row_for_row(rows: Mapping[str, Rows]) -> None:
    with closing(journal_of(rows)) as db:
        written = {table: table_text(db, table) for table in COLUMNS}
        assert all(each.left == 0 and each.rows == len(rows[table]) for table, each in written.items())
        with closing(from_tables({table: each.text for table, each in written.items()})) as back:
            assert every_row(back) == every_row(db)
            with closing(schema.in_memory()) as wiped:
                assert schema.transact(wiped, lambda inside: take_in_whole(inside, back))
                assert every_row(wiped) == every_row(db)
                empty = not any(rows.values())
                assert schema.transact(wiped, lambda inside: take_in_whole(inside, back)) is empty


def test_the_form_is_that_of_rfc_4180() -> None:
    """RFC 4180, section 2, rules 1, 3, 5, 6 and 7: CR LF, a header, quotation marks doubled when quoted."""
    row = ('Be"an', "2026-11-25", 1, 0, "a,b", "x\ny")
    with closing(journal_of({"prompts": [row]})) as db:
        text = table_text(db, "prompts").text
    head = "child,date,sitting,position,item,wording\r\n"
    assert text == f'{head}"Be""an",2026-11-25,1,0,"a,b","x\ny"\r\n'
    assert list(csv.reader(StringIO(text, newline="")))[1] == [str(part) for part in row]


def test_a_row_with_a_value_of_another_kind_is_left_out_and_counted() -> None:
    rows = [("Bean", "2026-11-25", 1, 0, b"\xff", "a"), ("Bean", "2026-11-25", 1, 1, "a/b", "a")]
    with closing(journal_of({"prompts": rows})) as db:
        found = table_text(db, "prompts")
    assert (found.rows, found.left) == (1, 1) and "a/b" in found.text


def test_a_routine_of_any_length_comes_back() -> None:
    csv.field_size_limit(131_072)
    row = ("Bean", "2026-11-25", 1, "a", "b", "daily", "x" * 300_000, 0, 0, 0, "")
    with closing(journal_of({"sittings": [row]})) as db:
        text = table_text(db, "sittings").text
        with closing(from_tables({"sittings": text})) as back:
            assert every_row(back) == every_row(db)
    assert csv.field_size_limit() == 131_072, "what else reads CSV is not touched"


HEAD = "child,date,sitting,position,mark,cue,adult,from_memory,at\r\n"
GOOD = "Bean,2026-11-25,1,0,fluent,0,,0,\r\n"


@pytest.mark.parametrize(
    ("text", "line", "expected"),
    [
        ("", 1, "a line of columns"),
        ("child,date\r\n", 1, "the columns child, date"),
        (HEAD + "Bean\r\n", 2, "9 cells"),
        (HEAD + GOOD + GOOD, 3, "a row that a journal can hold"),
        (HEAD + GOOD + GOOD.replace("fluent", "great"), 3, "a row that a journal can hold"),
        (HEAD + GOOD.replace("2026-11-25", "today"), 2, "a row that a journal can hold"),
        (HEAD + GOOD.replace(",1,", ",1.0,"), 2, "a whole number for sitting"),
        (HEAD + GOOD.replace(",1,", ",,"), 2, "a whole number for sitting"),
        (HEAD + GOOD.replace(",1,", f",{2**63},"), 2, "a row that a journal can hold"),
        (HEAD + GOOD.replace(",1,", f",{'9' * 5000},"), 2, "a whole number for sitting"),
        (HEAD + '"Be\r\nan",2026-11-25,1,0,fluent,0,,0,\r\nBean\r\n', 4, "9 cells"),
        (HEAD + 'Bean,"2026', 2, "commas and quotation marks"),
    ],
)
def test_what_is_no_row_is_named_by_its_line(text: str, line: int, expected: str) -> None:
    with pytest.raises(Unfit) as caught:
        from_tables({"marks": text})
    assert caught.value.line == line and caught.value.expected.startswith(expected)
    assert caught.value.table == "marks" and len(caught.value.found) < 100


def test_the_columns_are_those_of_the_tables() -> None:
    with closing(schema.in_memory()) as db:
        for table, columns in tables.COLUMNS.items():
            about = db.execute(f"PRAGMA table_info({table})").fetchall()
            assert tuple(row[1] for row in about) == columns
            assert {row[1] for row in about if row[2] == "INTEGER"} == tables.NUMBERS & {*columns}
