"""The rows of a journal: a session read and written whole, each value checked as it is read."""

import sqlite3
from collections.abc import Iterable, Mapping
from typing import Any, NamedTuple

from warmup.journal.oddities import Key, Note, Odd, as_position, moment, noting, number, text, unnoted
from warmup.model import Mark
from warmup.text import clean

BESIDE = 1000
"""From this position on a session keeps marked prompts that only another copy of it had."""
CUES = {number: number for number in range(4)}
"""The numbers a mark may give of the last cue, each with itself: a year of history asks for every mark."""
THIS = "WHERE child = ? AND date = ? AND sitting = ?"
"""Picks the rows of one session."""
NOT_BEGUN = -1
"""How far a session got of which no prompt was on screen yet, only its opening."""
MORNING = -1
"""The position of a note that is on no prompt but on the morning."""
LONGEST_NOTE = 400
"""The longest note, in characters."""
MARKS: Mapping[object, Mark | None] = {"": None, **{mark.value: mark for mark in Mark}}
"""What stands in the column ``mark``; nothing for a mark that was taken back."""
MORNINGS = "SELECT DISTINCT child, date FROM sittings ORDER BY child"
"""Asks on which dates each child had a warm-up."""
TOO_HIGH = 2**40
"""A session's number from here on was never given; after some of those there would be no next one."""


class MarkRow(NamedTuple):
    """A mark as it is kept; ``mark`` None is one that was taken back. ``at`` orders marks in time."""

    mark: Mark | None
    cue: int
    adult: str
    from_memory: bool
    at: str


class NoteRow(NamedTuple):
    """A line of what the child said; without ``text`` one that was taken back. ``at`` orders notes in time.

    ``shared`` says that it may go into what is printed for others.
    """

    text: str
    shared: bool = False
    adult: str = ""
    at: str = ""


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
    """A session with its (item, wording) rows, marks and notes by position; ``MORNING`` has a note alone."""

    about: About
    prompts: Mapping[int, tuple[str, str]]
    marks: Mapping[int, MarkRow]
    notes: Mapping[int, NoteRow] = {}


# -- one row, checked


def about_of(values: Any, note: Note) -> About:
    """What a row of ``sittings`` says; plain defaults for what makes no sense. Odd without a beginning."""
    started, touched, shape, routine, position, furthest, rough, closed = values
    if not isinstance(started, str):
        raise Odd("a session whose beginning is no text")
    return About(
        started,
        moment(touched, note),
        text(shape, note),
        text(routine, note),
        number(position, note),
        number(furthest, note, least=NOT_BEGUN),
        number(rough, note, most=1),
        text(closed, note),
    )


def prompt_of(values: Any, note: Note) -> tuple[int, tuple[str, str]]:
    """The position, item and wording of a row of ``prompts``. Odd without a place or an item."""
    position, item, wording = values
    if not isinstance(item, str):
        raise Odd("a prompt whose item is no text")
    return as_position(position), (item, text(wording, note))


def mark_of(values: Any, note: Note) -> tuple[int, MarkRow]:
    """The position of a row of ``marks``, and the mark. Odd without a place or a mark we know."""
    position, mark, cue, adult, from_memory, at = values
    if not isinstance(mark, str) or mark not in MARKS:
        raise Odd("a mark of no kind we know")
    row = MarkRow(
        MARKS[mark],
        number(cue, note, most=max(CUES)),
        text(adult, note),
        bool(number(from_memory, note, most=1)),
        moment(at, note),
    )
    return as_position(position), row


def note_of(values: Any, note: Note) -> tuple[int, NoteRow]:
    """The position of a row of ``notes``, and what it says. Odd without a place or a text."""
    position, said, shared, adult, at = values
    if not isinstance(said, str):
        raise Odd("a note that is no text")
    if plain_note(said) != said:
        note("a note that is no plain line")
    row = NoteRow(plain_note(said), bool(number(shared, note, most=1)), text(adult, note), moment(at, note))
    return as_position(position, least=MORNING), row


def plain_note(said: str) -> str:
    """A note as it is kept: one line of at most ``LONGEST_NOTE`` characters that no terminal obeys."""
    return clean(clean(said)[:LONGEST_NOTE])


def other_note(was: NoteRow | None, said: str, adult: str) -> NoteRow | None:
    """The note that takes the place of another; None where it would say the same."""
    text = plain_note(said)
    return None if text == (was.text if was else "") else NoteRow(text, bool(was and was.shared), adult)


# -- a session whole

ABOUT = "started, touched, shape, routine, position, furthest, rough, closed"
PROMPT = "position, item, wording"
MARK = "position, mark, cue, adult, from_memory, at"
NOTE = "position, text, shared, adult, at"


def read_whole(connection: sqlite3.Connection, key: Key, note: Note = unnoted) -> Whole | None:
    """The session of this key with all that belongs to it; None when there is none.

    Rows that make no sense are left out, and ``note`` hears of them. Odd where the session's own does.
    """
    row = connection.execute(f"SELECT {ABOUT} FROM sittings {THIS}", key).fetchone()
    if row is None:
        return None
    about, prompts, marks, notes = about_of(row, note), {}, {}, {}
    for values in connection.execute(f"SELECT {PROMPT} FROM prompts {THIS}", key):
        with noting(note):
            at, prompt = prompt_of(values, note)
            prompts[at] = prompt
    for values in connection.execute(f"SELECT {MARK} FROM marks {THIS}", key):
        with noting(note):
            at, mark = mark_of(values, note)
            marks[at] = mark
    for values in connection.execute(f"SELECT {NOTE} FROM notes {THIS}", key):
        with noting(note):
            at, said = note_of(values, note)
            notes[at] = said
    return Whole(about, prompts, marks, notes)


def put_mark(connection: sqlite3.Connection, key: Key, at: int, row: MarkRow) -> None:
    """Keep a mark in the place of any other on the same prompt."""
    values = (row.mark.value if row.mark else "", row.cue, row.adult, int(row.from_memory), row.at)
    connection.execute("INSERT OR REPLACE INTO marks VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)", (*key, at, *values))


def put_note(connection: sqlite3.Connection, key: Key, at: int, row: NoteRow) -> None:
    """Keep a note in the place of any other on the same prompt, or on the morning."""
    values = (*key, at, row.text, int(row.shared), row.adult, row.at)
    connection.execute("INSERT OR REPLACE INTO notes VALUES (?, ?, ?, ?, ?, ?, ?, ?)", values)


def put_whole(connection: sqlite3.Connection, key: Key, whole: Whole) -> None:
    """Keep a session as it is, in the place of what stood under its key."""
    values = (*key, *whole.about)
    connection.execute("INSERT OR REPLACE INTO sittings VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", values)
    for table in ("prompts", "marks", "notes"):
        connection.execute(f"DELETE FROM {table} {THIS}", key)
    rows = [(*key, at, item, wording) for at, (item, wording) in whole.prompts.items()]
    connection.executemany("INSERT INTO prompts VALUES (?, ?, ?, ?, ?, ?)", rows)
    for at, mark in whole.marks.items():
        put_mark(connection, key, at, mark)
    for at, said in whole.notes.items():
        put_note(connection, key, at, said)


def numbers_of(db: sqlite3.Connection, child: str, date: str) -> set[int]:
    """The numbers of a date's sessions, also of one that lost its own row: its marks keep their place."""
    one = "SELECT sitting FROM {} WHERE child = :child AND date = :date"
    question = " UNION ".join(one.format(table) for table in ("sittings", "prompts", "marks", "notes"))
    rows = db.execute(question, {"child": child, "date": date})
    return {number for (number,) in rows if isinstance(number, int)}


def next_number(taken: Iterable[int]) -> int:
    """The number of one more session of a date: after all others, so that none that went is given again."""
    numbers = {number for number in taken if 0 < number < TOO_HIGH}
    return max(numbers, default=0) + 1
