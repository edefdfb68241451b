"""A family with a year of mornings behind it, made with the real engine, for benchmarks."""

import datetime as dt
import sqlite3
from contextlib import closing
from pathlib import Path

from warmup.cli.demo import write_history
from warmup.config import family as families
from warmup.config.family import Child, Family
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.session import remembered
from warmup.session.context import open_context


def write_year(home: Path, today: dt.date, weeks: int = 34, children: int = 1, years: int = 1) -> int:
    """Write ``weeks`` weeks of mornings up to yesterday into ``home``; gives the marks of one child.

    Today is a school day of the week after them. Of more ``years`` the others are as that one. The program
    was ended properly: what it keeps of each child is there.
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
    _add_years(home / "journal.db", years - 1)
    journal = Journal.open(home, dt.datetime.now)
    marks = len(journal.history("Pip"))
    for child in family.children:
        context = open_context(places, family, today, journal, child=child.nickname)
        context.knew_before_today()
        remembered.keep(context)
    journal.shut()
    return marks


def _add_years(path: Path, more: int) -> None:
    """Put the same rows into the years before, 52 weeks apart."""
    with closing(sqlite3.connect(path)) as db, db:
        columns = {
            "sittings": "sitting, started, touched, shape, routine, position, furthest, rough, closed",
            "prompts": "sitting, position, item, wording",
            "marks": "sitting, position, mark, cue, adult, from_memory, at",
        }
        for table, rest in columns.items():
            for year in range(1, more + 1):
                past = f"date(date, '-{364 * year} days')"
                latest = f"date >= date((SELECT max(date) FROM {table}), '-300 days')"
                db.execute(
                    f"INSERT INTO {table} (child, date, {rest}) SELECT child, {past}, {rest} FROM {table} "
                    f"WHERE {latest}"
                )
