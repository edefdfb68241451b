"""Two journals made one: the same whichever is taken into which."""

import sqlite3
from collections.abc import Callable, Collection, Iterator, Mapping
from typing import NamedTuple, TypeVar

from warmup.journal import log, practice
from warmup.journal import rows as table_rows
from warmup.journal.oddities import Key, Left, Notes, key_of, note_unknown, noting
from warmup.journal.rows import BESIDE, MarkRow, NoteRow, Whole

T = TypeVar("T")


class Merged(NamedTuple):
    """What came of a merge: under which key each session stands now, and what was left out of it."""

    moved: Mapping[Key, Key]
    left: tuple[Left, ...]


def merged(one: Whole, other: Whole) -> Whole:
    """Two copies of a session as one: the later touched one, and of two marks on a prompt the later.

    So it is with notes. A prompt with a mark or a note that the later copy does not have stands at
    ``BESIDE`` and after.
    """
    newer, older = sorted((one, other), key=_later, reverse=True)
    prompts, marks, notes = dict(newer.prompts), dict(newer.marks), dict(newer.notes)
    for at, prompt in sorted(older.prompts.items()):
        position = _position_of(prompts, at, prompt[0])
        mark, note = older.marks.get(at), older.notes.get(at)
        if position not in prompts and not (mark and mark.mark) and not (note and note.text):
            continue
        prompts.setdefault(position, prompt)
        _put_later(marks, position, mark, _later_mark)
        _put_later(notes, position, note, _later_note)
    # A damaged journal may hold marks of prompts it lost, and a note may be on the morning.
    for at in {*older.marks, *older.notes} - {*older.prompts} - {*newer.prompts}:
        _put_later(marks, at, older.marks.get(at), _later_mark)
        _put_later(notes, at, older.notes.get(at), _later_note)
    about = newer.about
    if newer.prompts == older.prompts:
        about = about._replace(furthest=max(about.furthest, older.about.furthest))
    return Whole(about, prompts, marks, notes)


def _later(whole: Whole) -> tuple[object, ...]:
    """Orders copies of a session: by when they were touched, and where that ties by what is in them.

    Their marks may differ: of two on one prompt the later counts, whichever copy comes first.
    """
    return whole.about.touched, whole.about, sorted(whole.prompts.items())


def _later_mark(row: MarkRow) -> tuple[str, str, int, str, bool]:
    """Orders marks on one prompt: by their moment, and where that ties by what they say."""
    return row.at, row.mark.value if row.mark else "", row.cue, row.adult, row.from_memory


def _later_note(row: NoteRow) -> tuple[str, str, bool, str]:
    """Orders notes in one place: by their moment, and where that ties by what is in them."""
    return row.at, row.text, row.shared, row.adult


def _put_later(rows: dict[int, T], at: int, row: T | None, order: Callable[[T], tuple[object, ...]]) -> None:
    """Put a row in its place unless what stands there is later."""
    if row is not None and (at not in rows or order(row) > order(rows[at])):
        rows[at] = row


def _position_of(prompts: Mapping[int, tuple[str, str]], at: int, item: str) -> int:
    """Where a copy's prompt stands among these: in its own position, elsewhere, or beside them."""
    if at in prompts and prompts[at][0] == item:
        return at
    same = (position for position, (other, _) in sorted(prompts.items()) if other == item)
    return next(same, max([BESIDE - 1, *prompts]) + 1)


def merge_into(target: sqlite3.Connection, source: sqlite3.Connection) -> Merged:
    """Take all of ``source`` that makes sense into ``target``. Call it in a transaction."""
    moved, notes = {}, Notes()
    for key in keys(source, notes):
        with noting(notes):
            whole = table_rows.read_whole(source, key, notes)
            if whole is not None:
                moved[key] = take_in(target, key, whole)
    log.merge_into(target, source, moved, notes)
    practice.merge_into(target, source, notes)
    return Merged(moved, notes.all())


def keys(source: sqlite3.Connection, notes: Notes) -> Iterator[Key]:
    """The keys of all sessions that make sense; ``notes`` stands on each while it is worked on."""
    rows = source.execute("SELECT child, date, sitting FROM sittings ORDER BY date, child, sitting")
    for row in rows.fetchall():
        notes.at(*row)
        with noting(notes):
            yield key_of(*row)


def take_in(target: sqlite3.Connection, key: Key, whole: Whole) -> Key:
    """Merge a session into a journal: into its own copy there, else under its key or the next free one."""
    child, date, number = key
    copy = target.execute(
        "SELECT sitting FROM sittings WHERE child = ? AND date = ? AND started = ?",
        (child, date, whole.about.started),
    ).fetchone()
    if copy is None:
        numbers = table_rows.numbers_of(target, child, date)
        free = number not in numbers and number < table_rows.TOO_HIGH
        key = (child, date, number if free else table_rows.next_number(numbers))
        table_rows.put_whole(target, key, whole)
        return key
    key = (child, date, copy[0])
    mine = table_rows.read_whole(target, key)
    if mine is not None and mine != whole:
        table_rows.put_whole(target, key, merged(mine, whole))
    return key


def oddities_in(source: sqlite3.Connection, known: Collection[str] = ()) -> tuple[Left, ...]:
    """What in a whole journal makes no sense; ``known`` are the items there are, if that matters.

    It is one of this version.
    """
    notes = Notes()
    for key in keys(source, notes):
        with noting(notes):
            whole = table_rows.read_whole(source, key, notes)
            for item, _ in whole.prompts.values() if whole else ():
                note_unknown(item, known, notes)
    for _ in log.actions(source, notes):
        pass
    for row in practice.marks(source, notes):
        note_unknown(row.item, known, notes)
    return notes.all()
