"""Copies of the journal: made, put back, made once a week by themselves, and what is said of them."""

import datetime as dt
import os
import shlex
import sqlite3
from collections.abc import Collection
from contextlib import closing, suppress
from pathlib import Path
from types import SimpleNamespace

from warmup.cli.lines import Ended, ask
from warmup.cli.printing import Refused, show, whole_path
from warmup.config.family import Family
from warmup.config.keeping import Note, copies_folder, leave_note, of_folder, read_note
from warmup.config.places import Places, there
from warmup.english import date_words, plural
from warmup.journal import copies, forgetting, schema
from warmup.journal.inspection import whole_copy
from warmup.journal.journal import Journal
from warmup.journal.oddities import count_mornings
from warmup.journal.rows import MORNINGS
from warmup.journal.store import NAME, JournalProblem
from warmup.session.context import Clock, Context, load_family
from warmup.text import clean

KEPT = 8
"""How many of the weekly copies stay."""
WEEK, STALE, TELL = dt.timedelta(7), dt.timedelta(14), dt.timedelta(56)
"""How old a copy is when the next is made, when that is said, and how often it is said that there is none."""
LEFT_OUT = "A child you had forgotten is left out."


# -- by command


def copy(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Copy the journal to a file that is not there yet, or into a folder under the day's name."""
    target = whole_path(arguments.file, "the copy")
    if target.is_dir():
        target /= f"warmup-copy-{clock().date().isoformat()}.db"
    if not there(places.data / NAME):
        raise Refused("there is no journal yet to copy; the first morning begins it")
    copies.keep_copy(places.data / NAME, target)
    with closing(schema.look_at(target)) as made:
        mornings = count_mornings(made.execute(MORNINGS))
    family, _ = load_family(places, clock().date())
    show(f"{who}: {_mornings(mornings[name])} copied." for name, who in _named(family, mornings))
    show(["The copy was read back and is whole."])


def restore(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Put a copy in the journal's place, once it was said what that changes and the adult said yes."""
    source, today = whole_path(arguments.file, "the copy"), clock().date()
    family, _ = load_family(places, today)
    if source.is_dir():
        source /= NAME
    if os.path.realpath(source) == os.path.realpath(places.data / NAME):
        raise Refused("that is your own journal; name the copy")
    with closing(whole_copy(source)) as snapshot:
        left = without_forgotten(snapshot, family)
        here, back = _here(places, clock), count_mornings(snapshot.execute(MORNINGS))
        for name, who in _named(family, {**here, **back}):
            show([f"{who}: {_mornings(here.get(name, 0))} here, {back.get(name, 0)} in the copy."])
        show([LEFT_OUT] * left)
        if there(places.data / NAME) and not _yes("Put the copy in the place of your journal? Type yes: "):
            show(["Nothing was changed."])
            return
        aside = copies.put_in_place(places.data, snapshot, today)
    show(["The copy is your journal now."])
    if aside:
        show([f"The one before is kept beside it: “warmup merge {aside}” takes in what the copy lacks."])


def _yes(question: str) -> bool:
    with suppress(Ended):
        return ask(question).casefold() == "yes"
    return False


def _here(places: Places, clock: Clock) -> dict[str, int]:
    journal = Journal.open(places.data, clock, read_only=True)
    mornings = journal.mornings()
    journal.shut()
    return mornings


def without_forgotten(snapshot: sqlite3.Connection, family: Family) -> bool:
    """Take out of a copy in memory each child that was forgotten; whether there was one."""
    known = {child.journal_name for child in family.children}
    names = forgetting.forgotten_in(snapshot, family.forgotten, known)
    if names:
        snapshot.execute("PRAGMA secure_delete = ON")
        schema.transact(snapshot, lambda db: forgetting.remove(db, names))
        snapshot.execute("VACUUM")
    return bool(names)


def _named(family: Family, names: Collection[str]) -> list[tuple[str, str]]:
    """The names in a journal, each with what the child is called."""
    known = {child.journal_name: child.nickname for child in family.children}
    return [(name, clean(known.get(name, name))) for name in sorted(names)]


def _mornings(count: int) -> str:
    return f"{count} {plural(count, 'morning')}"


# -- by itself


def after_the_close(places: Places, context: Context, journal: Journal) -> None:
    """Once today's morning is closed and a week has gone: a copy into the family's folder.

    One line where that did not work; no folder is made in the place of one that is gone.
    """
    family, today = context.family, context.today
    names = [child.journal_name for child in family.children] if family.copies else []
    if not any(row.closed for name in names for row in journal.sessions_of(name, today)):
        return
    note = of_folder(read_note(places.data), family.copies, today)
    if note.copied is None or not dt.timedelta(0) <= today - note.copied < WEEK:
        if wrong := _weekly(places, family, today):
            show([f"No weekly copy today: {wrong}"])
        else:
            note = note._replace(copied=today)
    leave_note(places.data, note)


def _weekly(places: Places, family: Family, today: dt.date) -> str:
    """Make the week's copy and take the oldest away; what is wrong in a sentence, empty where nothing is."""
    folder = copies_folder(family.copies)
    if folder is None:
        return "the folder for it is not there."
    try:
        copies.keep_copy(places.data / NAME, folder / copies.made_name(today), over=True)
    except JournalProblem as problem:
        return str(problem)
    with suppress(OSError):
        for path in made_in(folder)[:-KEPT]:
            path.unlink()
    return ""


def made_in(folder: Path) -> list[Path]:
    """The weekly copies in a folder, the oldest first."""
    with suppress(OSError), os.scandir(folder) as entries:
        return sorted(
            Path(entry.path)
            for entry in entries
            if copies.MADE.fullmatch(entry.name) and entry.is_file(follow_symlinks=False)
        )
    return []


def standing_lines(places: Places, family: Family, today: dt.date) -> tuple[str, ...]:
    """What is worth saying of the copies this morning: one line at most. After the first frame."""
    note = read_note(places.data)
    now = of_folder(note, family.copies, today)
    line = _other_journal(places.data, note)
    if not line and family.copies:
        last = now.copied or now.since or today
        if abs(today - last) >= STALE:
            when = f"since {date_words(last, weekday=False)}" if now.copied else "yet"
            line = f"No weekly copy {when}. Is the stick in?"
    elif not line and abs(today - (now.told or family.began)) >= TELL:
        now = now._replace(told=today)
        line = "All of this is on this machine alone: “warmup copy FILE” makes a copy."
    if now != note:
        leave_note(places.data, now)
    return (line,) if line else ()


def _other_journal(data: Path, note: Note) -> str:
    """A line on a journal beside ours, as a sync tool leaves one, that was not taken in as it is now."""
    for path in copies.beside(data, strange=True):
        if as_it_is(path) != note.taken.get(path.name):
            name = shlex.quote(path.name) if os.name == "posix" else f'"{path.name}"'
            return f"A second journal lies beside yours: “warmup merge {clean(name)}” takes it in."
    return ""


def as_it_is(path: Path) -> tuple[int, int]:
    """The size of a file in bytes and when it changed in ns; nothing of one that is gone."""
    try:
        about = path.stat()
    except OSError:
        return 0, 0
    return about.st_size, about.st_mtime_ns


def check_line(places: Places, today: dt.date) -> str:
    """What ``warmup check`` says of the weekly copies."""
    family, _ = load_family(places, today)
    if not family.copies:
        return "Weekly copies: none ([keeping] copies in family.toml names a folder for them)"
    copied = of_folder(read_note(places.data), family.copies, today).copied
    when = f"last on {date_words(copied, weekday=False, year=True)}" if copied else "none made yet"
    missing = "" if copies_folder(family.copies) else "; the folder is not there now"
    return f"Weekly copies: {clean(family.copies)} ({when}{missing})"
