"""An invented child at the table, and what the adult keys for it: seeded, and knowing nothing of the program.

The numbers are invented, common practice, no source.
"""

import datetime as dt
from collections import Counter
from dataclasses import dataclass, field
from typing import NamedTuple

from tests.benchmarks._children import luck

KINDS = {"quick": (86, 5), "average": (66, 8), "wobbly": (42, 9)}
"""In a hundred: how many first answers come easily, and how many more with each easy one behind."""
FLUENT, HESITATED, NOT_YET, SKIPPED, NONE = "fluent", "hesitated", "not_yet", "skipped", ""
KEYS = {FLUENT: ("up", "w"), HESITATED: ("down", "s"), NOT_YET: ("n", "x"), NONE: ("right", "d")}


class Answer(NamedTuple):
    """The mark that is keyed (empty: gone on without one) and how many cues were shown before."""

    mark: str
    cues: int


class Row(NamedTuple):
    """One line of the log: what was keyed for which item, at which position of which day, and by whom."""

    day: dt.date
    position: int
    item: str
    mark: str
    cue: int
    adult: str


@dataclass
class Child:
    """A child of a kind, and the log of all that was keyed for it."""

    name: str
    kind: str
    seed: int
    runs: Counter[str] = field(default_factory=Counter)
    log: list[Row] = field(default_factory=list)
    rough: set[dt.date] = field(default_factory=set)
    joined: dt.date | None = None

    def chance(self, *parts: object) -> float:
        """This child's luck in something, from 0 up to 1."""
        return luck(self.seed, self.name, *parts)

    def answer(self, item: str, day: dt.date) -> Answer:
        """How it goes with an item on a day."""
        first, more = KINDS[self.kind]
        easy = min(96, first + more * self.runs[item])
        drawn = 100 * self.chance(item, day, "knew")
        if self.chance(item, day, "none") < 0.02:
            return Answer(NONE, 0)
        if drawn < easy:
            # Now and then a cue was shown before it came: that counts as hesitation, whatever the key.
            return Answer(FLUENT, int(self.chance(item, day, "cued") < 0.05))
        cues = int(4 * self.chance(item, day, "cues"))
        return Answer(HESITATED if drawn < easy + 0.55 * (100 - easy) else NOT_YET, cues)

    def keyed(self, row: Row) -> None:
        """Note a mark; one in the same place of the same day is replaced."""
        self.log = [each for each in self.log if (each.day, each.position) != (row.day, row.position)]
        self.log.append(row)
        if row.mark == FLUENT and not row.cue:
            self.runs[row.item] += 1
        elif row.mark in (HESITATED, NOT_YET):
            self.runs[row.item] = 0

    def key(self, mark: str, *parts: object) -> str:
        """The key of a mark, of the right hand or the left."""
        return KEYS[mark][int(2 * self.chance(*parts, "hand"))]
