"""The items of one morning as this child would meet them: how likely each is, how overdue, how hard."""

import math
from collections import Counter
from collections.abc import Collection, Iterable, Sequence
from typing import NamedTuple

from warmup.engine.absence import absence
from warmup.engine.curriculum import Curriculum
from warmup.engine.memory import KEPT, START_INTERVAL, Knowledge, Record
from warmup.model import OWN_SKILL, WOBBLES, Item, LevelId, Mark, Morning
from warmup.randomness import digest

HARD_UNDER = 0.75
OF_A_SKILL = 2
"""So many prompts of one skill a morning may have."""
OWN = 0.6
"""How much of an item's chance its own record says; its level's says the rest."""
MOST_OVERDUE = 2.0
"""Past this what was asked before is no more pressing, or the weakest items would eat the morning."""
RETIRE = 2
ENOUGH = 5
"""So often a level with a kindergarten code is asked before another may take its place."""
_LONG = 999
"""A rest longer than any year, in mornings."""


class Candidate(NamedTuple):
    """An item on one morning, with its record, its level's, and what they make of it.

    ``overdue`` is in intervals: 1.0 is just due. ``tie`` decides between equals: a number from a hash of
    child, date and item.
    """

    item: Item
    record: Record
    level: Record
    overdue: float
    chance: float
    tie: int

    @property
    def new(self) -> bool:
        """Whether it was never asked."""
        return self.record.marks == 0

    @property
    def begins(self) -> bool:
        """Whether nothing of its level was ever asked."""
        return self.level.marks == 0

    @property
    def hard(self) -> bool:
        """Whether it is likely to fail: a chance under 0.75, a last mark of not yet, or never asked.

        What was never asked counts as known where its level last came easily.
        """
        if self.record.mark is Mark.NOT_YET or self.chance < HARD_UNDER:
            return True
        return self.new and self.level.mark is not Mark.FLUENT

    @property
    def stumbled(self) -> bool:
        """Whether it was hesitated on or not yet the last time."""
        return self.record.mark in WOBBLES


class Pool:
    """All candidates of a morning, the most pressing first, and how long each skill has rested.

    The ``items`` are of the curriculum; ``timely`` names those that the day itself asks for, ``holding`` the
    shaky ones that keep a level from opening.
    """

    def __init__(
        self,
        items: Sequence[Item],
        knowledge: Knowledge,
        morning: Morning,
        curriculum: Curriculum,
        child: str,
        timely: Collection[str] = (),
        holding: Collection[str] = (),
    ) -> None:
        self.morning, self.knowledge, self.curriculum = morning, knowledge, curriculum
        self.timely, self.holding = timely, holding
        self.absence = absence(curriculum, knowledge, morning)
        day = morning.date.isoformat()
        # A level's plain item is its first in the catalogue, whatever order the items come in.
        place = {item: n for n, item in enumerate(curriculum.by_id)}
        ordered = sorted(items, key=lambda item: place[item.id])
        self.all = sorted(
            (self._candidate(item, digest(child, day, item.id)) for item in self._in_turn(ordered)),
            key=lambda c: (c.overdue if c.new else min(c.overdue, MOST_OVERDUE), c.tie),
            reverse=True,
        )
        self.rests: dict[str, int] = {}
        self._strands: dict[str, list[Candidate]] = {}
        for c in self.all:
            if not c.item.own:
                self._strands.setdefault(c.item.strand, []).append(c)
            rested = self.rested(c)
            self.rests[c.item.skill] = min(self.rests.get(c.item.skill, _LONG), rested)

    def easy(self) -> int:
        """How many prompts that are not hard a morning could hold: two of a skill, one of a family's own."""
        skills = Counter(c.item.skill for c in self.all if not c.hard)
        return sum(min(1 if skill == OWN_SKILL else OF_A_SKILL, number) for skill, number in skills.items())

    def of_strand(self, strand: str) -> Sequence[Candidate]:
        """A strand's candidates, the most pressing first; no family's own, which stand in for none."""
        return self._strands.get(strand, ())

    def rested(self, c: Candidate) -> int:
        """For how many mornings the candidate's level has rested, or has been open."""
        if c.begins and c.item.week > self.morning.week:
            return _LONG  # Opened before its week: it says nothing of when the skill was asked.
        return c.level.rested(self.morning.index, self.curriculum.opened(c.item))

    def _candidate(self, item: Item, tie: int) -> Candidate:
        record, level = self.knowledge.of(item.id), self.knowledge.of_level(item.level_id)
        index, opened = self.morning.index, self.curriculum.opened(item)
        of_level = level.chance(self._felt(level), opened)
        if record.marks:
            chance = OWN * record.chance(self._felt(record), opened) + (1 - OWN) * of_level
            overdue = math.log(chance) / math.log(KEPT)
        else:
            chance, overdue = of_level, record.rested(index, opened) / START_INTERVAL
        # Rounded before it is compared: the last bits of a power differ between machines.
        return Candidate(item, record, level, round(overdue, 6), round(chance, 6), tie)

    def _felt(self, record: Record) -> int:
        """The index of today for what this record says: later, for what was last marked before an absence."""
        away = record.last is not None and record.last < self.absence.since
        return self.morning.index + (self.absence.uncounted if away else 0)

    def _in_turn(self, items: Sequence[Item]) -> Iterable[Item]:
        """The items whose turn it is: no rung that a higher one has retired, no level but by its plain item.

        What was stumbled on stays, else what stands on it would wait for good.
        """
        known, first, top = self.knowledge, dict[LevelId, Item](), dict[str, int]()
        for item in items:
            first.setdefault(item.level_id, item)
            if item.ladder and known.of_level(item.level_id).run >= RETIRE:
                top[item.skill] = max(top.get(item.skill, 0), item.level)
        for item in items:
            record, level = known.of(item.id), known.of_level(item.level_id)
            if item.id in self.timely:
                yield item
            elif not level.marks:
                if first[item.level_id] is item:
                    yield item
            elif (
                item.level >= top.get(item.skill, 0)
                or record.mark in WOBBLES
                or (item.kindergarten and level.marks < ENOUGH)
                or not item.ladder
            ):
                yield item
