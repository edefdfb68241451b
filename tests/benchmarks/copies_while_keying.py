"""Copies taken while marks are keyed: ``python -m tests.benchmarks.copies_while_keying [COUNT] [SEED]``.

One process keys marks into a journal as fast as it can, each in one transaction; another takes COUNT (100)
copies meanwhile. Each copy is put in the place of another journal, and what that then holds must be a state
that was on the disk: the marks keyed up to some moment and none after it, the session moved on as far, and as
many actions. Exit code 1 where one is not.
"""

import datetime as dt
import multiprocessing
import sys
import tempfile
from contextlib import closing
from multiprocessing.synchronize import Event
from pathlib import Path
from random import Random
from typing import NamedTuple

from tests.benchmarks import _arguments
from warmup.journal.copies import keep_copy, put_in_place
from warmup.journal.inspection import whole_copy
from warmup.journal.journal import Action, Change, Journal, JournalProblem, MarkRow
from warmup.model import Mark

DAY = dt.date(2026, 11, 25)
PROMPTS = 5_000


class Found(NamedTuple):
    """How many copies were taken and how many of them are wrong, and how many different states there were."""

    copies: int
    wrong: int
    states: int


def key_marks(folder: Path, stop: Event, begun: Event) -> None:
    """Key one mark after another, each with its action, until told to stop."""
    moment = dt.datetime(2026, 11, 25, 8, tzinfo=dt.UTC)
    journal = Journal.open(folder, lambda: moment, window="keys")
    rows = [(f"count-on/{at}", "a") for at in range(PROMPTS)]
    session = journal.start("Bean", DAY, "daily", "x" * 12_000, rows)
    for at in range(PROMPTS):
        last = stop.is_set()
        mark = MarkRow(list(Mark)[at % 4], at % 4, "Jo", False, moment.isoformat())
        change = Change(marks={at: mark}, position=at + 1, shown=at + 1)
        journal.change("Bean", DAY, session, change, action=Action("mark", at, "{}", "{}"))
        if at == 3:
            begun.set()
        if last:
            break  # One mark at least after the last copy.
    journal.shut()


def state(path: Path) -> tuple[int, bool]:
    """How many marks a journal holds, and whether it is as it was on the disk after that many."""
    with closing(whole_copy(path)) as db:
        marks = db.execute("SELECT position, mark, cue FROM marks ORDER BY position").fetchall()
        (position,) = db.execute("SELECT position FROM sittings").fetchone()
        (actions,) = db.execute("SELECT count(*) FROM actions").fetchone()
    keyed = [(at, list(Mark)[at % 4].value, at % 4) for at in range(len(marks))]
    return len(marks), marks == keyed and position == len(marks) == actions


def campaign(folder: Path, count: int, seed: int) -> Found:
    """Take COUNT copies while another process keys, and put each in the place of another journal."""
    chance, start = Random(seed), multiprocessing.get_context("spawn")
    stop, begun = start.Event(), start.Event()
    keys = start.Process(target=key_marks, args=(folder / "keyed", stop, begun))
    keys.start()
    states, wrong = set[int](), 0
    try:
        begun.wait(60)
        for number in range(count):
            stop.wait(chance.random() / 20)
            copy, home = folder / f"{number}.db", folder / f"home-{number}"
            try:
                keep_copy(folder / "keyed" / "journal.db", copy)
                with closing(whole_copy(copy)) as snapshot:
                    put_in_place(home, snapshot, DAY)
                marks, right = state(home / "journal.db")
            except JournalProblem as problem:
                print(problem)
                marks, right = -1, False
            states.add(marks)
            wrong += not right
            copy.unlink(missing_ok=True)
    finally:
        stop.set()
        keys.join()
    marks, right = state(folder / "keyed" / "journal.db")
    return Found(count, wrong + (not right), len(states | {marks}))


def main(count: int, seed: int) -> int:
    """Print what became of COUNT copies."""
    with tempfile.TemporaryDirectory() as folder:
        found = campaign(Path(folder), count, seed)
    print(f"{found.copies} copies of {found.states} states; not a state that was on disk: {found.wrong}")
    return 1 if found.wrong else 0


if __name__ == "__main__":
    sys.exit(main(*_arguments.count_and_seed("copies_while_keying", __doc__, "count", 100)))
