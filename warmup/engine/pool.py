"""The items of one morning as this child would meet them: how overdue each is, how likely, how hard."""

from collections import Counter
from collections.abc import Collection, Sequence
from typing import NamedTuple

from warmup.engine.memory import Knowledge, Record
from warmup.model import Item, Mark, Morning
from warmup.randomness import digest

HARD_UNDER = 0.75
SURE_FROM = 0.9
OF_A_SKILL = 2
_LONG = 999
"""A rest longer than any year, in mornings."""


class Candidate(NamedTuple):
    """An item on one morning: its record, how overdue it is, and what that makes of it.

    ``tie`` decides between equals: a number from a hash of child, date and item.
    """

    item: Item
    record: Record
    overdue: float
    chance: float
    tie: int
    hard: bool
    sure: bool

    @property
    def new(self) -> bool:
        """Whether it was never asked."""
        return self.record.marks == 0

    @property
    def priority(self) -> tuple[float, int]:
        """What is asked first, the greater the sooner.

        Without the cap the weakest items would eat the morning; what was never asked keeps rising.
        """
        return (self.overdue if self.new else min(self.overdue, 2.0), self.tie)

    @property
    def feels(self) -> float:
        """The chance that counts for kindness: what the last mark said outweighs the clock."""
        if self.new:
            return 0.6
        match self.record.mark:
            case Mark.HESITATED:
                return 0.7
            case Mark.NOT_YET:
                return 0.5
            case _:
                return self.chance

    def due(self, index: int) -> bool:
        """Whether it is due back by the morning with this index."""
        return self.record.due_at is not None and self.record.due_at <= index

    def rested(self, index: int) -> int:
        """How many mornings ago it was last marked; 0 when it never was."""
        return index - self.record.last if self.record.last is not None else 0


class Pool:
    """All candidates of a morning, the most pressing first, and when each skill was last asked.

    ``since`` is the week in which the family began: what came before is unknown, not late.
    ``timely`` names the items that the day itself asks for.
    """

    def __init__(
        self,
        items: Sequence[Item],
        knowledge: Knowledge,
        morning: Morning,
        child: str,
        since: int = 1,
        timely: Collection[str] = (),
    ) -> None:
        self.morning, self.knowledge, self.since, self.timely = morning, knowledge, since, timely
        day = morning.date.isoformat()
        self.all = sorted(
            (
                self._candidate(item, digest(child, day, item.id))
                for item in _retired(items, knowledge, timely)
            ),
            key=lambda c: c.priority,
            reverse=True,
        )
        self.begun = {c.item.level_id for c in self.all if c.record.shown}
        self.rests: dict[str, int] = {}
        self._by_skill: dict[str, list[Candidate]] = {}
        for c in self.all:
            self._by_skill.setdefault(c.item.skill, []).append(c)
            last = c.record.last if c.record.last is not None else self._opened(c.item) - 1
            # What is open before its week and never asked says nothing of when the skill was.
            rested = _LONG if c.new and last >= morning.index else morning.index - last
            self.rests[c.item.skill] = min(self.rests.get(c.item.skill, _LONG), rested)

    def surest(self) -> Candidate | None:
        """What the child is most likely to get, for a morning that ends early; None when there is nothing.

        First what came easily twice running, the likeliest of it; then whatever is not hard, then what took
        longer last time. What was never asked comes last, the earliest of the year first. An item whose last
        mark is not yet is no kind end, and neither is one that was on screen today.
        """
        able = (c for c in self.all if c.record.mark is not Mark.NOT_YET)
        fresh = (c for c in able if c.record.shown_on != self.morning.date)
        return max(fresh, key=_ease, default=None)

    def easy(self) -> int:
        """How many prompts that are not hard a morning could hold, two of a skill."""
        skills_of = Counter(c.item.skill for c in self.all if not c.hard)
        return sum(min(OF_A_SKILL, number) for number in skills_of.values())

    def of_skill(self, skill: str) -> list[Candidate]:
        """A skill's candidates, the most pressing first."""
        return self._by_skill.get(skill, [])

    def _opened(self, item: Item) -> int:
        return (max(item.week, self.since) - 1) * self.morning.mornings_a_week

    def _candidate(self, item: Item, tie: int) -> Candidate:
        record, opened = self.knowledge.of(item.id), self._opened(item)
        # Rounded before it is compared: the last bits of a power differ between machines.
        overdue = round(record.overdue(self.morning.index, opened), 6)
        chance = round(record.chance(self.morning.index, opened), 6)
        hard = record.marks == 0 or record.mark in (Mark.HESITATED, Mark.NOT_YET) or chance < HARD_UNDER
        sure = record.run >= 2 and chance >= SURE_FROM
        return Candidate(item, record, overdue, chance, tie, hard, sure)


def _ease(c: Candidate) -> tuple[int, float, int, int]:
    """How likely it is to come easily, for comparing."""
    if c.new:
        return 0, 0.0, -c.item.week, c.tie
    return 1 if c.hard else 2 if c.record.run < 2 else 3, c.feels, 0, c.tie


def _retired(items: Sequence[Item], knowledge: Knowledge, timely: Collection[str]) -> list[Item]:
    """The items without the rungs that fluency higher up a ladder has retired.

    What was not yet the last time stays: else what stands on it would wait for good.
    """
    top: dict[str, int] = {}
    for item in items:
        if item.ladder and not item.misconception and knowledge.of(item.id).run >= 2:
            top[item.skill] = max(top.get(item.skill, 0), item.level)
    return [
        item
        for item in items
        if item.misconception
        or item.level >= top.get(item.skill, 0)
        or item.id in timely
        or knowledge.of(item.id).mark is Mark.NOT_YET
    ]
