"""The routines of a morning that the journal keeps, as far as they can be read."""

import datetime as dt
from collections.abc import Sequence
from contextlib import suppress

from warmup import skills
from warmup.journal.journal import Journal, SessionRow
from warmup.journal.routine_json import routine_from
from warmup.model import Routine

CHOSEN_ANEW = (
    "What was chosen for this date can't be read any more, so it was chosen anew. Its marks are kept."
)


def stored(journal: Journal | None, child: str, date: dt.date) -> list[tuple[SessionRow, Routine]]:
    """The sessions of a date whose routine can be read, in order of time.

    A mark belongs to the item of its row, so a routine with other items than the rows is none of them,
    nor is one with an item that this version does not know.
    """
    if journal is None:
        return []
    found = []
    for row in journal.sessions_of(child, date):
        with suppress(ValueError):
            found.append((row, routine_from(row.routine)))
    return [
        (row, routine) for row, routine in found if _fits(routine, journal.items_of(child, date, row.session))
    ]


def current(readable: Sequence[tuple[SessionRow, Routine]]) -> tuple[SessionRow, Routine] | None:
    """The one of these sessions that a morning goes on with: the open one, else the last; None of none."""
    still_open = (each for each in reversed(readable) if not each[0].closed)
    return next(still_open, readable[-1] if readable else None)


def _fits(routine: Routine, rows: tuple[str, ...]) -> bool:
    items = tuple(prompt.item for prompt in routine.prompts)
    return items == rows and all(map(skills.known, items))


def chosen_anew(journal: Journal | None, child: str, date: dt.date) -> bool:
    """Whether what was chosen for a date is kept but can't be read, so that it must be chosen anew."""
    kept = journal is not None and bool(journal.sessions_of(child, date))
    return kept and not stored(journal, child, date)
