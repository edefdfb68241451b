"""Journals with flipped bits, and what is read of them: ``python -m tests.benchmarks.salvage [COUNT]`` (60).

A school year of mornings is written, a few bits of it are flipped (seeded), and the program opens it. What
it keeps is compared with two counts of the marks that can still be read, made by other ways: each mark asked
of SQLite by its whole key, and each page of the file taken apart by hand, by the published form of the
file (https://www.sqlite.org/fileformat2.html, sections 1.6 and 2.1). Exit code 1 where a mark is left behind.
"""

import datetime as dt
import shutil
import sqlite3
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import closing, suppress
from pathlib import Path
from random import Random
from typing import NamedTuple

from rich.console import Console
from rich.progress import track
from rich.table import Table

from tests.benchmarks import _arguments
from tests.benchmarks._faults import flipped
from warmup.journal.journal import Action, Journal, MarkRow
from warmup.model import Mark

FIRST = dt.date(2026, 8, 31)
MORNINGS = 144
Place = tuple[str, str, int, int]


class Read(NamedTuple):
    """A mark as one of the counts read it."""

    place: Place
    mark: str
    at: str


def written(folder: Path, seed: int) -> Path:
    """A school year of two children in a journal of its own."""
    chance, moment = Random(seed), [dt.datetime(2026, 8, 31, 8, tzinfo=dt.UTC)]
    journal = Journal.open(folder, lambda: moment[0], window="year")
    for number in range(MORNINGS):
        day = FIRST + dt.timedelta(number)
        moment[0] = dt.datetime.combine(day, dt.time(8), dt.UTC)
        for child in ("Bean", "Pip")[: 1 + number % 2]:
            rows = [(f"count-on/{chance.randrange(300)}", "abc"[at % 3]) for at in range(8)]
            marks = [
                MarkRow(chance.choice(list(Mark)), chance.randrange(4), "Jo", False, moment[0].isoformat())
                for _ in rows
            ]
            action = Action("others", 0, "null", '["fluent"]')
            journal.start(child, day, "daily", "x" * 12_000, rows, marks, action=action)
    journal.shut()
    return journal.path


# -- three ways to read marks


def every_mark(path: Path) -> set[Read]:
    """The marks of a whole journal."""
    with closing(sqlite3.connect(path)) as db:
        db.text_factory = lambda raw: raw.decode("utf-8", "replace")
        rows = db.execute("SELECT child, date, sitting, position, mark, at FROM marks WHERE position < 1000")
        return {Read((child, date, session, at), mark, time) for child, date, session, at, mark, time in rows}


def one_by_one(path: Path, known: set[Read]) -> set[Read]:
    """Each mark that was written, asked of SQLite by its whole key, if it still is what it was."""
    found = set()
    with closing(sqlite3.connect(f"file:{path}?mode=ro", uri=True)) as db:
        for read in known:
            with suppress(sqlite3.Error, UnicodeDecodeError):
                row = db.execute(
                    "SELECT mark, at FROM marks "
                    "WHERE child = ? AND date = ? AND sitting = ? AND position = ?",
                    read.place,
                ).fetchone()
                if row == read[1:]:
                    found.add(read)
    return found


def by_hand(raw: bytes, known: set[Read]) -> set[Read]:
    """Each mark that was written and still stands as it was in a page of the file."""
    found, size = set[Read](), int.from_bytes(raw[16:18], "big")
    if size < 512:
        return found
    for start in range(0, len(raw), size):
        page = raw[start : start + size]
        if page[0] not in (2, 10):
            continue
        head, before = (12, 4) if page[0] == 2 else (8, 0)
        for cell in range(int.from_bytes(page[3:5], "big")):
            with suppress(IndexError, ValueError):
                pointer = int.from_bytes(page[head + 2 * cell :][:2], "big") + before
                match list(_record(page, pointer)):
                    case [str(child), str(date), int(session), int(at), str(mark), _, _, _, str(time)]:
                        found.add(Read((child, date, session, at), mark, time))
    return found & known


def _record(page: bytes, at: int) -> Iterator[int | str]:
    """The values of a cell without overflow; ValueError for what holds something else."""
    length, at = _varint(page, at)
    start = at
    header, at = _varint(page, at)
    kinds = []
    while at < start + header:
        kind, at = _varint(page, at)
        kinds.append(kind)
    for kind in kinds:
        if kind in (8, 9):
            yield kind - 8
        elif kind in (1, 2, 3, 4):
            yield int.from_bytes(page[at : at + kind], "big", signed=True)
            at += kind
        elif kind >= 13 and kind % 2:
            yield page[at : at + (kind - 13) // 2].decode()
            at += (kind - 13) // 2
        else:
            raise ValueError(kind)
    if at != start + length or at > len(page):
        raise ValueError("a record of another length")


def _varint(page: bytes, at: int) -> tuple[int, int]:
    value = 0
    for _ in range(8):
        value = value << 7 | page[at] & 0x7F
        at += 1
        if page[at - 1] < 0x80:
            return value, at
    raise ValueError("a number that is too long")


# -- the figures


def main(count: int) -> int:
    """Damage COUNT journals and print what was kept."""
    console, table = Console(), Table("", "marks", "a journal in the worst case")
    figures: dict[str, list[int]] = {}
    worst = []
    with tempfile.TemporaryDirectory() as folder:
        whole = written(Path(folder, "whole"), 1)
        raw, known = whole.read_bytes(), every_mark(whole)
        for seed in track(range(count), console=console, transient=True):
            home = Path(folder, str(seed))
            home.mkdir()
            damaged = flipped(raw, seed)
            (home / "journal.db").write_bytes(damaged)
            asked, seen = one_by_one(home / "journal.db", known), by_hand(damaged, known)
            journal = Journal.open(home, lambda: dt.datetime(2027, 6, 1, 8, tzinfo=dt.UTC))
            journal.shut()
            kept = every_mark(home / "journal.db") & known
            row = {
                "written": known,
                "read by their keys": asked,
                "read from the pages": seen,
                "kept": kept,
                "read by their keys, left behind": asked - kept,
                "read from the pages, left behind": seen - kept,
            }
            for name, marks in row.items():
                figures.setdefault(name, []).append(len(marks))
            if (asked | seen) - kept:
                worst.append(seed)
            shutil.rmtree(home)
    extreme: Callable[[list[int]], int] = max
    for name, counts in figures.items():
        extreme = max if "left" in name else min
        table.add_row(name, str(sum(counts)), str(extreme(counts)))
    console.print(f"{count} journals of {len(raw) // 1024} KB, each with 4 to 23 flipped bits")
    console.print(table)
    if worst:
        console.print(f"Left behind in the journals of the seeds {worst}")
    return 1 if worst else 0


if __name__ == "__main__":
    sys.exit(main(_arguments.number("salvage", __doc__, "count", 60)))
