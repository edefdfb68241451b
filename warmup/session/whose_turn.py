"""Whose morning it is where there are several children: in which order they come, and who has been today."""

import datetime as dt

from warmup.config.family import Child, Family, year_of
from warmup.journal.journal import Journal


def in_order(family: Family, today: dt.date) -> tuple[Child, ...]:
    """The children who have mornings, in the order of this day: each school morning the next comes first."""
    awake = tuple(child for child in family.children if not child.resting)
    if len(awake) < 2:
        return awake
    first = year_of(family).index_of(today) % len(awake)
    return (*awake[first:], *awake[:first])


def has_been(journal: Journal, child: Child, today: dt.date) -> bool:
    """Whether the child's warm-up of this day was finished, and no other one is open."""
    rows = journal.sessions_of(child.journal_name, today)
    return bool(rows) and all(row.closed for row in rows)


def still_to_come(family: Family, journal: Journal, today: dt.date) -> tuple[Child, ...]:
    """Those of the children in their order who have not been today."""
    return tuple(child for child in in_order(family, today) if not has_been(journal, child, today))


def first_to_come(family: Family, journal: Journal, today: dt.date) -> Child:
    """Whose morning opens: the first who has not been today, or the first of all where everybody has.

    Where all of them rest it is the family's first child.
    """
    order = in_order(family, today)
    for child in order:
        if not has_been(journal, child, today):
            return child
    return (*order, *family.children)[0]
