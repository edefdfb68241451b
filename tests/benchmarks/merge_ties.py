"""Two journals that tie, merged both ways: ``python -m tests.benchmarks.merge_ties [COUNT]`` (2000).

Each pair holds copies of the same sessions with other marks, notes, corrections, what was taken back and
flags, and sessions of its own, at times drawn from a few moments only, so that ties are many. One is merged
into the other and the other into the one: the rows must be the same, actions included, and stay so when each
is merged once more. A session's number is that of the journal it is in; it is compared by when it began.
Exit code 1 where a pair differs.
"""

import datetime as dt
import sqlite3
import sys
from collections.abc import Sequence
from contextlib import closing
from random import Random
from typing import Any

from rich.console import Console
from rich.progress import track

from tests.benchmarks import _arguments
from warmup.journal import log, merging, practice, schema
from warmup.journal import rows as table_rows
from warmup.journal.log import Action
from warmup.journal.practice import PracticeRow
from warmup.journal.rows import MORNING, About, MarkRow, NoteRow, Whole
from warmup.model import Mark

DATES = ("2026-11-24", "2026-11-25")
ITEMS = ("count-on/a", "make-ten/b", "month/c", "coins/d")
Rows = list[tuple[Any, ...]]


def moment(chance: Random) -> str:
    """One of three moments."""
    return log.utc(dt.datetime(2026, 11, 25, 8, 0, chance.randrange(3), tzinfo=dt.UTC))


def session(chance: Random, started: str) -> Whole:
    """A copy of a session: what another copy may have in another way is drawn."""
    items = chance.sample(ITEMS, chance.randrange(2, 5))
    prompts = {at: (item, chance.choice("ab")) for at, item in enumerate(items)}
    marks = {
        at: MarkRow(
            chance.choice([None, *Mark]),
            chance.randrange(3),
            chance.choice(["", "Jo"]),
            chance.random() < 0.2,
            moment(chance),
        )
        for at in prompts
        if chance.random() < 0.7
    }
    notes = {
        at: NoteRow(
            chance.choice(["", "Six.", "Like eggs."]),
            chance.random() < 0.3,
            chance.choice(["", "Jo"]),
            moment(chance),
        )
        for at in (MORNING, *prompts)
        if chance.random() < 0.4
    }
    touched = max([moment(chance), *(mark.at for mark in marks.values())])
    about = About(
        started,
        touched,
        chance.choice(["daily", "short"]),
        chance.choice(["{}", "[]"]),
        chance.randrange(3),
        chance.randrange(4),
        chance.randrange(2),
        chance.choice(["", touched]),
    )
    return Whole(about, prompts, marks, notes)


def pair(seed: int) -> tuple[sqlite3.Connection, sqlite3.Connection]:
    """Two journals that share some sessions and actions and have some of their own."""
    chance = Random(seed)
    both = schema.in_memory(), schema.in_memory()
    for date in DATES:
        for number in range(chance.randrange(1, 4)):
            for side, journal in enumerate(both):
                shared = chance.random() < 0.7
                started = f"2026-11-25T07:0{number}:00.00000{0 if shared else side + 1}+00:00"
                if chance.random() < 0.15:
                    continue
                key = ("Bean", date, chance.randrange(1, 3))
                key = merging.take_in(journal, key, session(chance, started))
                window = f"window-{side if chance.random() < 0.8 else 2}"
                for each in range(chance.randrange(3)):
                    action = Action("mark", each, "null", chance.choice(["1", "2"]))
                    if each and chance.random() < 0.3:
                        action = Action("undo", each, takes_back=f"{window}-1")
                    log.append(journal, key, action, window, 1, moment(chance))
                for at in range(chance.randrange(3)):
                    practice.put(journal, practiced(chance, date, at))
    return both


def practiced(chance: Random, date: str, at: int) -> PracticeRow:
    """A practice mark; its round began at one of three moments."""
    asked = moment(chance), at, chance.choice(ITEMS), chance.choice("ab")
    return PracticeRow("Bean", date, *asked, chance.choice([None, *Mark]), 0, "", moment(chance))


def rows(journal: sqlite3.Connection) -> dict[str, Rows]:
    """Everything in a journal, each session under the moment it began instead of its number."""
    began = {
        (child, date, number): started
        for child, date, number, started in journal.execute(
            "SELECT child, date, sitting, started FROM sittings"
        )
    }

    def named(row: Sequence[Any]) -> tuple[Any, ...]:
        return tuple(began.get(tuple(row[:3]), row[2]) if at == 2 else part for at, part in enumerate(row))

    tables = {
        "sittings": f"SELECT child, date, sitting, {table_rows.ABOUT} FROM sittings",
        "prompts": "SELECT * FROM prompts",
        "marks": "SELECT * FROM marks",
        "notes": "SELECT * FROM notes",
        "practice": "SELECT * FROM practice",
        "actions": "SELECT child, date, sitting, id, at, what, position, after, takes_back FROM actions",
    }
    return {table: sorted(map(named, journal.execute(sql)), key=repr) for table, sql in tables.items()}


def differing(seed: int) -> list[str]:
    """The tables in which a pair merged both ways differs; "again" where a second merge changes anything."""
    one, other = pair(seed)
    with closing(one), closing(other):
        first, second = schema.copy_of(one), schema.copy_of(other)
        with closing(first), closing(second):
            merging.merge_into(first, other)
            merging.merge_into(second, one)
            ways = rows(first), rows(second)
            found = [table for table in ways[0] if ways[0][table] != ways[1][table]]
            for again in (second, other, one):
                merging.merge_into(first, again)
                if rows(first) != ways[0]:
                    return [*found, "again"]
            return found


def main(count: int) -> int:
    """Merge COUNT pairs both ways and print how many differ."""
    console = Console()
    ties = 0
    differ = {}
    for seed in track(range(count), console=console, transient=True):
        one, other = pair(seed)
        with closing(one), closing(other):
            ties += _ties(one, other)
        if found := differing(seed):
            differ[seed] = found
    console.print(f"{count} pairs, {ties} copies of a session that were touched at the same moment")
    console.print(
        f"pairs that differ by the order of their merge: {len(differ)} {dict(list(differ.items())[:9])}"
    )
    return 1 if differ else 0


def _ties(one: sqlite3.Connection, other: sqlite3.Connection) -> int:
    question = "SELECT child, date, started, touched FROM sittings"
    return len({*one.execute(question)} & {*other.execute(question)})


if __name__ == "__main__":
    sys.exit(main(_arguments.number("merge_ties", __doc__, "count", 2000)))
