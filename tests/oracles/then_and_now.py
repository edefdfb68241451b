"""What was hard at first and came easily later, by SQL over the journal, without any of ``warmup``.

The weights are those that the README states: a mark from memory weighs half, and a rough day lowers nothing.
"""

import datetime as dt
import sqlite3
from collections.abc import Mapping
from contextlib import closing
from pathlib import Path
from typing import NamedTuple

_MARKED = """
    SELECT p.item, p.date, m.mark, m.cue, m.from_memory, s.rough
    FROM marks m
    JOIN prompts p USING (child, date, sitting, position)
    JOIN sittings s USING (child, date, sitting)
    WHERE m.child = ? AND m.date <= ? AND m.mark IN ('fluent', 'hesitated', 'not_yet')
    ORDER BY p.date, p.sitting, p.position
"""


class Truth(NamedTuple):
    """Of a level: the date and the mark that were hard, the last date, and how often running by halves."""

    then: str
    was: str
    now: str
    halves: int


def truths(path: Path, child: str, last: dt.date, level_of: Mapping[str, str]) -> dict[str, Truth]:
    """Every level that was hard at first and has come easily lately."""
    with closing(sqlite3.connect(path)) as db:
        rows = [row for row in db.execute(_MARKED, (child, f"{last}")) if row[0] in level_of]
    found = {}
    for level in {level_of[row[0]] for row in rows}:
        mine = [row[1:] for row in rows if level_of[row[0]] == level]
        truth = _truth(mine)
        if truth and _days(truth.now, rows[-1][1]) <= 84:
            found[level] = truth
    return found


def _days(one: str, other: str) -> int:
    return (dt.date.fromisoformat(other) - dt.date.fromisoformat(one)).days


def _truth(rows: list[tuple[str, str, int, int, int]]) -> Truth | None:
    hard, easy, witness = 0, 0, ("", "")
    for number, (date, mark, cue, from_memory, rough) in enumerate(rows):
        if number == 3 or _days(rows[0][0], date) >= 28:
            break
        halves = 1 if from_memory else 2
        if mark == "fluent" and not cue:
            easy += halves
        elif not rough:
            hard += halves
            if not witness[0] or (mark == "not_yet" and witness[1] != "not_yet"):
                witness = date, "not_yet" if mark == "not_yet" else "hesitated"
    running = 0
    for _, mark, cue, from_memory, _ in reversed(rows):
        if mark != "fluent" or cue:
            break
        running += 1 if from_memory else 2
    if hard < 2 or hard < easy or running < 4 or _days(witness[0], rows[-1][0]) < 56:
        return None
    return Truth(*witness, rows[-1][0], running)
