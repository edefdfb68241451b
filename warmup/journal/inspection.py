"""A journal looked at from outside: whether it is whole, and what in it makes no sense. It stays as it is."""

import sqlite3
from collections.abc import Collection
from contextlib import closing
from pathlib import Path

from warmup.journal import merging, schema
from warmup.journal.oddities import Left
from warmup.journal.schema import Damaged
from warmup.journal.store import JournalProblem, NewerJournal, reason, refuse_newer
from warmup.text import clean


def whole_copy(path: Path) -> sqlite3.Connection:
    """A copy in memory of a journal, in this version's form. Raises JournalProblem where it is not whole."""
    try:
        refuse_newer(path)
        with schema.reading(path) as source:
            copy = schema.copy_of(source)
    except (OSError, sqlite3.Error, Damaged) as error:
        raise JournalProblem(f"{clean(str(path))} can't be read: {reason(error)}.") from error
    with schema.closed_if_it_fails(copy):
        # Thorough: what is merged or copied is read along its indexes too.
        if wrong := schema.faults(copy):
            raise JournalProblem(f"{clean(str(path))} is no whole journal ({clean(wrong[0])}).")
        schema.migrate(copy)
    return copy


def findings(path: Path, known: Collection[str] = ()) -> list[str]:
    """What is wrong with a journal, in sentences; ``known`` are the items there are, if that matters."""
    place = clean(str(path))
    try:
        refuse_newer(path)
        with schema.reading(path) as source, closing(schema.copy_of(source)) as copy:
            wrong = schema.faults(copy)
            odd: tuple[Left, ...] = ()
            if not wrong:
                schema.migrate(copy)
                odd = merging.oddities_in(copy, known)
    except NewerJournal as newer:
        return [str(newer)]
    except (OSError, sqlite3.OperationalError) as error:
        return [f"{place}: can't be read ({reason(error)})."]
    except (sqlite3.Error, Damaged) as error:
        wrong, odd = [reason(error)], ()
    if wrong:
        after = "The next time warmup opens it, it is set aside and a new one is begun from what can be read."
        return [f"{place}: damaged ({clean(wrong[0])}). {after}"]
    return [f"{place}: {left}. What makes no sense is left out." for left in odd]
