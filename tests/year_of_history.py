"""A family with a year of mornings behind it, made with the real engine, for benchmarks."""

import datetime as dt
from pathlib import Path

from warmup.cli.demo import write_history
from warmup.config import family as families
from warmup.config.family import Child, Family
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.session.context import open_context


def write_year(home: Path, today: dt.date, weeks: int = 34, children: int = 1) -> int:
    """Write ``weeks`` weeks of mornings up to yesterday into ``home``; gives the marks of one child.

    Today is a school day of the week after them.
    """
    start = max(0, today.weekday() - 3)
    monday = today - dt.timedelta(today.weekday())
    family = Family(
        first_day=monday - dt.timedelta(weeks=weeks),
        began=monday - dt.timedelta(weeks=weeks),
        children=tuple(Child(f"Pip{number or ''}", reads=False) for number in range(children)),
        weekdays=tuple(range(start, start + 4)),
        known_until=today - dt.timedelta(1),
    )
    places = Places(home, home)
    families.save(home / "family.toml", family)
    for child in family.children:
        context = open_context(places, family, today, None, child=child.nickname)
        write_history(context, places, family.first_day)
    journal = Journal.open(home, dt.datetime.now)
    marks = len(journal.history("Pip"))
    journal.shut()
    return marks
