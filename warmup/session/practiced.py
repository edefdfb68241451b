"""The practice rounds that a child had, as a level's history tells them."""

import datetime as dt
from itertools import groupby
from typing import NamedTuple

from warmup import skills
from warmup.model import LevelId, Mark
from warmup.session.context import Context
from warmup.session.words import BEADS

FIVE = 5
"""How many prompts a round has."""


class Practiced(NamedTuple):
    """A round that was held: its date, and the mark of each of its prompts (None: no mark)."""

    date: dt.date
    level: LevelId
    marks: tuple[Mark | None, ...]

    def words(self) -> str:
        """It as a line of a level's history: "practice: ● ● ◐ ● ●"."""
        return f"practice: {' '.join(BEADS[mark] for mark in self.marks)}"


def practiced(context: Context, level: LevelId) -> tuple[Practiced, ...]:
    """The child's rounds of a level in order of time; one of which every mark was taken back is none."""
    rows = context.journal.practiced(context.child.journal_name) if context.journal else []
    mine = [row for row in rows if skills.known(row.item) and skills.locate(row.item).level_id == level]
    found = []
    for (date, _), round_ in groupby(mine, lambda row: (row.date, row.started)):
        marks = {row.position: row.mark for row in round_ if row.position < FIVE}
        if any(marks.values()):
            shown = tuple(marks.get(at) for at in range(max(marks) + 1))
            found.append(Practiced(dt.date.fromisoformat(date), level, shown))
    return tuple(found)
