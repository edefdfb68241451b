"""Picks the items of one morning: what each would be like for this child, and slot by slot what is asked.

The limits of a kind morning are kept here and in ``lineup``; ``engine`` says what they mean.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from warmup.draw import digest
from warmup.lineup import line_up
from warmup.memory import Knowledge, Record
from warmup.morning import Item, Mark, Morning, Shape, Slot, SlotKind

HARD_UNDER = 0.75
SURE_FROM = 0.9
OF_A_SKILL = 2
FIRST_TIMES = 3
IDEAS = 2
SKILL_RESTS = 12
ITEM_RESTS = 60


class Candidate(NamedTuple):
    """An item on one morning: its record, how overdue it is, and what that makes of it."""

    item: Item
    record: Record
    overdue: float
    chance: float
    priority: tuple[float, int]
    hard: bool
    sure: bool

    @property
    def new(self) -> bool:
        """Whether it was never asked."""
        return self.record.marks == 0

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


class Pick(NamedTuple):
    """A candidate chosen for a slot, and the slot's place in the shape of the morning."""

    candidate: Candidate
    slot: SlotKind
    rank: int

    @property
    def skill(self) -> str:
        """The skill it asks."""
        return self.candidate.item.skill

    @property
    def hard(self) -> bool:
        """Whether it is a hard prompt."""
        return self.candidate.hard

    @property
    def closes(self) -> bool:
        """Whether it is the close."""
        return self.slot is SlotKind.SURE


class Table:
    """All candidates of a morning, and when each skill was last asked."""

    def __init__(self, items: Sequence[Item], knowledge: Knowledge, morning: Morning, child: str) -> None:
        self.morning, self.knowledge = morning, knowledge
        day = morning.date.isoformat()
        self.all = sorted(
            (self._candidate(item, digest(child, day, item.id)) for item in _retired(items, knowledge)),
            key=lambda c: c.priority,
            reverse=True,
        )
        self.begun = {c.item.level_id for c in self.all if c.record.shown}
        self.rests: dict[str, int] = {}
        for c in self.all:
            last = c.record.last if c.record.last is not None else self._opened(c.item) - 1
            self.rests[c.item.skill] = min(self.rests.get(c.item.skill, 999), morning.index - last)

    def easy(self) -> int:
        """How many prompts that are not hard a morning could hold, two of a skill."""
        skills_of = Counter(c.item.skill for c in self.all if not c.hard)
        return sum(min(OF_A_SKILL, number) for number in skills_of.values())

    def _opened(self, item: Item) -> int:
        return (item.week - 1) * self.morning.mornings_a_week

    def _candidate(self, item: Item, tie: int) -> Candidate:
        record, opened = self.knowledge.of(item.id), self._opened(item)
        # Rounded before it is compared: the last bits of a power differ between machines.
        overdue = round(record.overdue(self.morning.index, opened), 6)
        chance = round(record.chance(self.morning.index, opened), 6)
        new = record.marks == 0
        hard = new or record.mark in (Mark.HESITATED, Mark.NOT_YET) or chance < HARD_UNDER
        sure = record.run >= 2 and chance >= SURE_FROM
        # Without the cap the weakest items would eat the morning; what was never asked keeps rising.
        return Candidate(
            item, record, overdue, chance, (overdue if new else min(overdue, 2.0), tie), hard, sure
        )


def _retired(items: Sequence[Item], knowledge: Knowledge) -> list[Item]:
    """The items without the rungs that fluency higher up a ladder has retired."""
    top: dict[str, int] = {}
    for item in items:
        if item.ladder and not item.trouble and knowledge.of(item.id).run >= 2:
            top[item.skill] = max(top.get(item.skill, 0), item.level)
    return [item for item in items if item.trouble or item.level >= top.get(item.skill, 0)]


class Picking:
    """The picks of one morning as they grow, slot by slot."""

    def __init__(self, table: Table, shape: Shape, morning: Morning, settling: bool, count: int) -> None:
        self.table, self.morning, self.settling, self.count = table, morning, settling, count
        self.slots = {slot.kind: slot for slot in shape.slots}
        self.shape, self.seconds = shape, shape.seconds
        self.ranks = {kind: rank for rank, kind in enumerate(self.slots)}
        self.picks: list[Pick] = []
        # Two of a skill, unless so few skills are open that a morning could not be filled.
        self.of_a_skill = max(OF_A_SKILL, -(-count // max(1, len(table.rests))))
        # A hard prompt needs an easy one before it and the close after it.
        self.hard_most = count if settling else max(0, (count - 1) // 2)
        self.calendar_most = self.slots[SlotKind.CALENDAR].most if SlotKind.CALENDAR in self.slots else count

    # -- the slots, the most pressing first

    def fill(self) -> None:
        """Fill every slot."""
        close = 1 if SlotKind.SURE in self.slots and not self.settling else 0
        named = [slot for slot in self.shape.slots if slot.kind is SlotKind.NAMED]
        for slot in named:
            self._take(self._named(slot), SlotKind.NAMED, slot.most)
        for kind, strand in ((SlotKind.CALENDAR, "calendar"), (SlotKind.COUNTING, "counting")):
            if kind in self.slots and not any(p.candidate.item.strand == strand for p in self.picks):
                self._take(self._of(strand), kind, 1)
        self._take(self._focus(), SlotKind.NEWEST, self._focus_most())
        self._take(self._owed(), SlotKind.WOBBLED, self._owed_most())
        self._take(self._resting(), SlotKind.OLDER, self.count - close - len(self.picks))
        self._take(self.table.all, SlotKind.OLDER, self.count - close - len(self.picks))
        if close:
            self._take(self._sure(), SlotKind.SURE, 1)

    def _most(self, kind: SlotKind) -> int:
        return self.slots[kind].most if kind in self.slots else 0

    def _owed_most(self) -> int:
        most = self._most(SlotKind.WOBBLED)
        days = self.table.knowledge.days
        hard_morning = bool(days) and days[-1].fluent * 2 < days[-1].marked
        return most + 1 if most and hard_morning else most

    def _focus_most(self) -> int:
        most = self._most(SlotKind.NEWEST)
        waiting = sum(c.new and c.overdue > 2 for c in self.table.all)
        return most + 1 if waiting else most

    def _named(self, slot: Slot) -> list[Candidate]:
        return [c for c in self.table.all if c.item.skill in slot.only or c.item.level_id in slot.only]

    def _owed(self) -> list[Candidate]:
        """What is due back: what has waited longest first; every third morning what wobbled last.

        There is more of it than room. By age alone everything would come back weeks late, and by freshness
        alone what waits would wait for ever, and all that stands on it.
        """
        due = [c for c in self.table.all if c.record.owed is not None and c.record.owed <= self.morning.index]
        due.sort(key=lambda c: (c.record.owed or 0, -c.priority[0], c.priority[1]))
        return due[-1:] + due[:-1] if self.morning.index % 3 == 0 else due

    def _of(self, strand: str) -> list[Candidate]:
        """The strand's items, those that are not hard first: the morning opens with them."""
        return sorted((c for c in self.table.all if c.item.strand == strand), key=lambda c: c.hard)

    def _focus(self) -> list[Candidate]:
        """Items that were never asked: those left over from earlier weeks first, they have waited longest."""
        return [c for c in self.table.all if c.new]

    def _resting(self) -> list[Candidate]:
        """The best item of each skill, and each item, that has rested too long; the longest rest first."""
        best: dict[str, Candidate] = {}
        for c in self.table.all:
            if self.table.rests[c.item.skill] > SKILL_RESTS and (
                c.item.skill not in best or best[c.item.skill].hard
            ):
                best[c.item.skill] = c
        long = list(best.values())
        old = [c for c in self.table.all if c.record.last is not None]
        old = [c for c in old if self.morning.index - (c.record.last or 0) > ITEM_RESTS]
        return sorted(long, key=lambda c: -self.table.rests[c.item.skill]) + old

    def _sure(self) -> list[Candidate]:
        """What may close the morning: sure things, the longest rested first, then the likeliest."""
        sure = sorted((c for c in self.table.all if c.sure), key=lambda c: (-c.overdue, c.priority[1]))
        rest = sorted((c for c in self.table.all if not c.hard), key=lambda c: (-c.chance, c.priority[1]))
        return sure + rest

    # -- taking

    def _take(self, candidates: Iterable[Candidate], slot: SlotKind, most: int) -> None:
        taken = 0
        for candidate in candidates:
            if taken >= most or len(self.picks) >= self.count:
                return
            if self._may(candidate):
                self.picks.append(Pick(candidate, slot, self._rank(candidate, slot)))
                taken += 1

    def _rank(self, candidate: Candidate, slot: SlotKind) -> int:
        """Where it would like to stand: calendar talk and counting in their own places always."""
        strand = {"calendar": SlotKind.CALENDAR, "counting": SlotKind.COUNTING}.get(candidate.item.strand)
        if slot is not SlotKind.SURE and strand is not None:
            slot = strand if strand in self.ranks else slot
        return self.ranks.get(slot, len(self.ranks))

    def _may(self, candidate: Candidate) -> bool:
        item = candidate.item
        if any(p.candidate.item.id == item.id for p in self.picks):
            return False
        if sum(p.skill == item.skill for p in self.picks) >= self.of_a_skill:
            return False
        calendar = sum(p.candidate.item.strand == "calendar" for p in self.picks)
        if item.strand == "calendar" and calendar >= self.calendar_most:
            return False
        if self.settling:
            return True
        if candidate.hard and sum(p.hard for p in self.picks) >= self.hard_most:
            return False
        return not candidate.new or self._room_for_new(candidate)

    def _room_for_new(self, candidate: Candidate) -> bool:
        new = [p.candidate for p in self.picks if p.candidate.new]
        ideas = {c.item.level_id for c in new} - self.table.begun
        idea = candidate.item.level_id not in self.table.begun
        return len(new) < FIRST_TIMES and (not idea or len(ideas | {candidate.item.level_id}) <= IDEAS)

    # -- time and order

    def _swap(self, out: Pick, candidates: Iterable[Candidate]) -> bool:
        """Put the first candidate that is easier and may stand in the place of ``out``."""
        at = self.picks.index(out)
        rest = self.picks[:at] + self.picks[at + 1 :]
        self.picks = rest
        for candidate in candidates:
            if (
                candidate.feels > out.candidate.feels
                and candidate is not out.candidate
                and self._may(candidate)
            ):
                self.picks = [*rest[:at], Pick(candidate, out.slot, out.rank), *rest[at:]]
                return True
        self.picks = [*rest[:at], out, *rest[at:]]
        return False

    def _over_time(self) -> Pick | None:
        """The last older review when the morning is over its ceiling; None when it fits."""
        if sum(p.candidate.item.seconds for p in self.picks) <= self.seconds:
            return None
        return next((p for p in reversed(self.picks) if p.slot is SlotKind.OLDER), None)

    def ordered(self) -> tuple[Pick, ...]:
        """The picks in an order that breaks no limit and fits the time.

        Too long, and the last older review goes; without a legal order, the hardest review gives way to
        one that is easier, or goes.
        """
        while self.picks:
            late = self._over_time()
            if late is not None:
                self.picks.remove(late)
                continue
            order = line_up(self.picks, gentle=not self.settling)
            if order is not None:
                return order
            hard = [p for p in self.picks if p.hard]
            out = min(hard or self.picks, key=lambda p: (p.slot is not SlotKind.OLDER, p.candidate.feels))
            if not self._swap(out, [c for c in self.table.all if not c.hard]):
                self.picks.remove(out)
        return ()
