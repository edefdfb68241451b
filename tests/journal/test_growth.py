"""Questions cost what they ask about: not the other children, and no years before that are not asked for."""

import datetime as dt
import random
import sqlite3
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.journal.journals import STILL
from warmup.journal.journal import Journal
from warmup.model import ItemId, Mark

BEGINS, TODAY = dt.date(2026, 9, 1), dt.date(2026, 10, 1)
OLD, NEW = "number-line/on-to-25", "number-line/on-to-20"
ITEMS = (OLD, NEW, "month/this", "count/to-20", "weekday/today")
OF = {ItemId(item): item for item in ITEMS if item != OLD}
Question = Callable[[Journal], object]
OF_THESE_DAYS: dict[str, Question] = {
    "history": lambda journal: journal.history("Bean", TODAY, BEGINS),
    "dates_of": lambda journal: journal.dates_of("Bean", BEGINS),
    "past": lambda journal: journal.past("Bean", TODAY, BEGINS),
    "sessions_of": lambda journal: journal.sessions_of("Bean", BEGINS),
    "marks_of": lambda journal: journal.marks_of("Bean", BEGINS, 1),
    "whole_of": lambda journal: journal.whole_of("Bean", BEGINS, 1),
    "last_undoable": lambda journal: journal.last_undoable("Bean", BEGINS, 1),
    "newest": lambda journal: journal.newest("Bean", BEGINS),
}
OF_ALL_YEARS: dict[str, Question] = {
    "history": lambda journal: journal.history("Bean"),
    "of an item": lambda journal: journal.history("Bean", item=NEW),
    "first_shown": lambda journal: journal.first_shown("Bean", TODAY, {**OF, ItemId("coins/none"): ""}),
    "came_easily": lambda journal: journal.came_easily("Bean", TODAY, OF),
    "past": lambda journal: journal.past("Bean", TODAY),
    "noted": lambda journal: journal.noted("Bean", TODAY),
}


def fill(path: Path, child: str, first: dt.date, days: int, rng: random.Random) -> None:
    """Days of a child with one session or two, marks of every kind, and a note on each."""
    with sqlite3.connect(path) as db:
        for day in (first + dt.timedelta(n) for n in range(days)):
            for number in range(1, rng.choice((2, 2, 3))):
                key, started = (child, f"{day}", number), f"{day}T0{rng.randrange(9)}:00:00.000000+00:00"
                about = (*key, started, started, "daily", "{}", 4, rng.randrange(-1, 5), 0, "")
                db.execute("INSERT INTO sittings VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", about)
                for at, item in enumerate(rng.sample(ITEMS, 4)):
                    db.execute("INSERT INTO prompts VALUES (?, ?, ?, ?, ?, '')", (*key, at, item))
                    mark = rng.choice(("", *(each.value for each in Mark)))
                    row = (*key, at, mark, rng.choice((0, 0, 2)), "", 0, started)
                    db.execute("INSERT INTO marks VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)", row)
                db.execute("INSERT INTO notes VALUES (?, ?, ?, -1, 'said', 0, '', ?)", (*key, started))
    db.close()


@pytest.fixture
def small(tmp_path: Path) -> Path:
    Journal.open(tmp_path, STILL).shut()
    fill(tmp_path / "journal.db", "Bean", BEGINS, 30, random.Random(1))
    return tmp_path


def steps(folder: Path, question: Question) -> int:
    """How many steps SQLite takes to answer: the same on any machine."""
    journal, count = Journal.open(folder, STILL), 0

    def step() -> int:
        nonlocal count
        count += 1
        return 0

    journal._store.source.set_progress_handler(step, 1)
    question(journal)
    journal._store.source.set_progress_handler(None, 1)
    journal.shut()
    return count


def dearer(folder: Path, asked: dict[str, Question], before: dict[str, int]) -> dict[str, int]:
    """The steps of what takes more of them than before; the end of a range may be one row further on."""
    now = {name: steps(folder, each) for name, each in asked.items()}
    return {name: count for name, count in now.items() if count > before[name] + 2}


def grow(folder: Path, child: str, years: int) -> None:
    for year in range(1, years + 1):
        fill(folder / "journal.db", child, BEGINS - dt.timedelta(364 * year), 30, random.Random(year))


@pytest.mark.slow
def test_other_children_cost_no_step(small: Path) -> None:
    asked = {**OF_ALL_YEARS, **{f"{name} of these days": each for name, each in OF_THESE_DAYS.items()}}
    before = {name: steps(small, each) for name, each in asked.items()}
    for other in ("Acorn", "Fern"):
        grow(small, other, 2)
        fill(small / "journal.db", other, BEGINS, 30, random.Random(2))
    assert dearer(small, asked, before) == {}
    assert min(before.values()) > 5, "nothing was counted"


def test_the_years_before_cost_no_step_where_some_days_are_asked_about(small: Path) -> None:
    before = {name: steps(small, each) for name, each in OF_THESE_DAYS.items()}
    grow(small, "Bean", 3)
    assert dearer(small, OF_THESE_DAYS, before) == {}


def test_every_question_goes_by_an_index(small: Path) -> None:
    """A table is searched by the child and never read through (https://www.sqlite.org/eqp.html, 1.1)."""
    journal = Journal.open(small, STILL)
    asked: list[str] = []
    db = journal._store.source
    # What it hears has the values written out.
    db.set_trace_callback(asked.append)
    for question in (*OF_THESE_DAYS.values(), *OF_ALL_YEARS.values()):
        question(journal)
    db.set_trace_callback(None)
    plans = [row[-1] for sql in asked if "FROM" in sql for row in db.execute(f"EXPLAIN QUERY PLAN {sql}")]
    tables = [plan for plan in plans if "SCAN" in plan or "SEARCH" in plan]
    assert len(tables) > 15 and all("child=?" in plan for plan in tables), tables
    journal.shut()


@pytest.mark.parametrize("seed", range(3))
def test_firsts_and_lasts_are_those_of_the_whole_history(small: Path, seed: int) -> None:
    fill(small / "journal.db", "Bean", BEGINS - dt.timedelta(364), 20, random.Random(seed))
    journal = Journal.open(small, STILL)
    lines = journal.history("Bean", TODAY)
    first = {line.item: line.date for line in reversed(lines) if line.mark is not Mark.SKIPPED}
    marked = [line for line in lines if line.mark not in (None, Mark.SKIPPED)]
    assert journal.first_shown("Bean", TODAY, OF) == first
    easy = {line.item: line.mark is Mark.FLUENT and not line.cue for line in marked}
    assert journal.came_easily("Bean", TODAY, OF) == easy
    assert journal.came_easily("Bean", TODAY, [ItemId("month/this")]).keys() == {"month/this"}
    assert journal.history("Bean", item=NEW) == tuple(line for line in lines if line.item == NEW)
    assert OLD not in first and NEW in first
    journal.shut()
