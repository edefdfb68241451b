"""Two laptops: the journal of another machine is taken in."""

import os
import sqlite3
from collections.abc import Callable
from contextlib import AbstractContextManager
from pathlib import Path
from types import SimpleNamespace

from warmup.cli.keeping import LEFT_OUT, as_it_is, without_forgotten
from warmup.cli.printing import Refused, complain, show, whole_path
from warmup.config.keeping import leave_note, read_note
from warmup.config.places import Places, there
from warmup.english import plural
from warmup.journal.journal import Journal
from warmup.journal.store import NAME
from warmup.session.context import Clock, load_family
from warmup.text import clean

Kept = Callable[[Places, Clock, str], AbstractContextManager[Journal]]


def merge(arguments: SimpleNamespace, clock: Clock, places: Places, kept: Kept) -> None:
    """Take in the journal of another machine, and say how many mornings of each child are new here.

    ``kept`` opens the family's own journal, to write in.
    """
    family, _ = load_family(places, clock().date())
    other = _other(arguments.file, places)
    with kept(places, clock, "what was taken in") as journal:
        if journal.notice:
            complain(journal.notice)
        if os.path.realpath(other) == os.path.realpath(journal.path):
            raise Refused(f"{clean(str(other))} is your own journal; name the other one")
        before = journal.mornings()
        stood, forgotten = as_it_is(other), list[bool]()

        def leave_out(copy: sqlite3.Connection) -> None:
            forgotten.append(not arguments.with_forgotten and without_forgotten(copy, family))

        left = journal.merge(other, leave_out)
        after = journal.mornings()
    known = {child.journal_name: child.nickname for child in family.children}
    for name, mornings in after.items():
        new = mornings - before.get(name, 0)
        who = clean(known.get(name, name))
        unknown = "" if name in known else "; family.toml has no child of that name"
        show([f"{who}: {mornings} {plural(mornings, 'morning')} in all, {new} new here{unknown}."])
    show(f"Left out, since it makes no sense: {each}." for each in left)
    show([f"{LEFT_OUT} --with-forgotten takes everything in."] * any(forgotten))
    if os.path.realpath(other.parent) == os.path.realpath(places.data):
        note = read_note(places.data)
        leave_note(places.data, note._replace(taken={**note.taken, other.name: stood}))
    show(["Of two marks on one prompt the later counts. The other journal is as it was."])


def _other(file: str, places: Places) -> Path:
    """The journal that is meant: a file, that of a folder, or one that lies beside ours under a bare name."""
    other = whole_path(file, "the other journal")
    if other.is_dir():
        return other / NAME
    beside = places.data / file
    return beside if Path(file).name == file and not there(other) and there(beside) else other
