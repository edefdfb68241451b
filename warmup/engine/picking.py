"""Picks the items of one morning, slot by slot, so that it stays a kind one.

The limits of a kind morning are kept here and in ``order``; ``engine`` says what they mean, and
``tests.benchmarks.retention`` what other rules were tried and what they gave.
"""

from collections.abc import Iterable
from itertools import pairwise
from typing import NamedTuple

from warmup.engine import review
from warmup.engine.order import find_order
from warmup.engine.pool import OF_A_SKILL, Candidate, Pool
from warmup.model import Mark, Morning, Shape, Slot, SlotKind

FIRST_TIMES = 3
IDEAS = 2
RETURN_FROM = 0.85
"""A return may close the morning when it is as likely as this: it has not yet rested its whole interval."""
SKILL_RESTS, SETTLED_RESTS = 10, 24
"""After so many mornings a skill is asked again; a dozen at most, since there is not always room."""
ITEM_RESTS = 60
LONG_WAIT, MANY = 2.0, 6
"""So many items that have waited twice their interval for a first time make a morning ask one more."""
FLOOR = 0.76
"""What the mean chance of a morning should come to, after mornings that went half well."""
HALF_WELL, MOVES, AFTER_BREAK = 0.35, 0.15, 0.05
SWAPS = 4
AFTERS = 2
"""So many skills that came easily once out of two in the review are asked in a morning."""
_STRANDS = {SlotKind.CALENDAR: "calendar", SlotKind.COUNTING: "counting"}


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


class Picking:
    """The picks of one morning as they grow, slot by slot."""

    def __init__(
        self,
        pool: Pool,
        shape: Shape,
        morning: Morning,
        new_family: bool,
        count: int,
    ) -> None:
        self.pool, self.morning, self.new_family, self.count = pool, morning, new_family, count
        self.slots = {slot.kind: slot for slot in shape.slots}
        self.shape, self.seconds = shape, shape.seconds
        self.ranks = {kind: rank for rank, kind in enumerate(self.slots)}
        self.picks: list[Pick] = []
        self.settled = review.settled(pool)
        # Two of a skill, unless so few skills are open that a morning could not be filled.
        self.of_a_skill = max(OF_A_SKILL, -(-count // max(1, len(pool.rests))))
        self.calendar_most = self._most(SlotKind.CALENDAR) or count

    # -- the slots, the most pressing first

    def fill(self) -> None:
        """Fill every slot."""
        for slot in self.shape.slots:
            if slot.kind is SlotKind.NAMED:
                self._take(self._named(slot), SlotKind.NAMED, slot.most)
        self._take([c for c in self.pool.all if c.item.id in self.pool.timely], SlotKind.CALENDAR, 1)
        for kind in self._missing():
            if all(c.hard for c in self._of(_STRANDS[kind])):
                # It takes one of the few places for hard prompts, so it goes before those that may wait.
                self._take(self._of(_STRANDS[kind]), kind, 1)
        self._take(review.steps_down(self.pool), SlotKind.AFTER, 1)
        # One that rested longest goes before what is new; the others find their place after it.
        self._take(self._resting()[:3], SlotKind.OLDER, 1)
        self._take(self._focus(), SlotKind.NEWEST, self._focus_most())
        if not self.new_family:
            self._take(self._closes(), SlotKind.SURE, self._most(SlotKind.SURE))
        self._take(self._due(), SlotKind.WOBBLED, self._due_most())
        if SlotKind.CHECK in self.slots:
            self._spread(review.checks(self.pool), SlotKind.CHECK, self._most(SlotKind.CHECK))
        self._spread(review.twice_a_week(self.pool), SlotKind.AFTER, AFTERS)
        self._spread((*self._resting(), *self._older()), SlotKind.OLDER, self.count)
        for kind in self._missing():
            self._take(self._of(_STRANDS[kind]), kind, 1)
        self._take(self.pool.all, SlotKind.OLDER, self.count)
        if self.new_family:
            # In the first days too few items are open: calendar talk may fill the morning.
            self.calendar_most = self.count
            self._take(self.pool.all, SlotKind.OLDER, self.count)

    @property
    def hard_most(self) -> int:
        """How many hard prompts there may be: each needs an easy one before it, and the close counts."""
        if self.new_family:
            return self.count
        return (self.count - 1) // 2 + any(p.closes and p.hard for p in self.picks)

    def _most(self, kind: SlotKind) -> int:
        return self.slots[kind].most if kind in self.slots else 0

    def _missing(self) -> list[SlotKind]:
        """The strands every morning has, calendar talk and counting, that nothing is picked of yet."""
        there = {p.candidate.item.strand for p in self.picks}
        return [kind for kind, strand in _STRANDS.items() if kind in self.slots and strand not in there]

    def _focus_most(self) -> int:
        """One more when many have been waiting."""
        if self.morning.next is None:
            return 0  # The last morning of the year.
        most = self._most(SlotKind.NEWEST)
        waiting = sum(c.new and c.overdue > LONG_WAIT for c in self.pool.all)
        return most + 1 if most and waiting >= MANY else most

    def _due_most(self) -> int:
        """One more after a hard morning, one less when a return closes this one."""
        most, days = self._most(SlotKind.WOBBLED), self.pool.knowledge.days
        hard_morning = bool(days) and days[-1].fluent * 2 < days[-1].marked
        closing = any(p.closes and p.hard for p in self.picks)
        return max(0, most + hard_morning - closing) if most else 0

    def _named(self, slot: Slot) -> list[Candidate]:
        return [c for c in self.pool.all if c.item.skill in slot.only or c.item.level_id in slot.only]

    def _due(self) -> list[Candidate]:
        """What is due back; a plain item that is not yet goes first, since other levels wait for it."""
        due = [c for c in self.pool.all if c.due(self.morning.index)]
        return sorted(due, key=lambda c: c.item.misconception or c.record.mark is not Mark.NOT_YET)

    def _of(self, strand: str) -> list[Candidate]:
        """The strand's items, those that are not hard first: the morning opens with them."""
        return sorted((c for c in self.pool.all if c.item.strand == strand), key=lambda c: c.hard)

    def _focus(self) -> list[Candidate]:
        """Items that were never asked, those that have waited longest first.

        What was taught before the family began is unknown rather than new, and comes after; of a ladder its
        highest rung first, since fluency there retires those below. What a level is stumbled on for comes
        after its plain item.
        """

        def later(c: Candidate) -> tuple[bool, int, bool]:
            unknown = c.item.week < self.pool.since
            early = c.item.misconception and c.item.level_id not in self.pool.begun
            return unknown, -c.item.level if unknown and c.item.ladder else 0, early

        return sorted((c for c in self.pool.all if c.new), key=later)

    def _resting(self) -> list[Candidate]:
        """The best item of each skill, and each item, that has rested too long; the longest rest first."""
        best: dict[str, Candidate] = {}
        for c in self.pool.all:
            most = SETTLED_RESTS if c.item.skill in self.settled else SKILL_RESTS
            if self.pool.rests[c.item.skill] > most and (
                c.item.skill not in best or (best[c.item.skill].hard and not c.hard)
            ):
                best[c.item.skill] = c
        long = sorted(best.values(), key=lambda c: -self.pool.rests[c.item.skill])
        return long + [c for c in self.pool.all if c.rested(self.morning.index) > ITEM_RESTS]

    def _older(self) -> list[Candidate]:
        """Everything by how overdue it is; a skill that settled in the review waits while it rests."""
        return [
            c
            for c in self.pool.all
            if c.item.skill not in self.settled or c.new or c.record.due_at is not None
        ]

    def _closes(self) -> list[Candidate]:
        """What may close the morning: sure things, the longest rested first, then the likeliest.

        An even number of prompts has room for one more hard one, and it is the last. There a return goes
        before a sure thing when it is likely: helped with lately, it comes about as easily. But not what is
        not yet, and not before a break.
        """
        back: list[Candidate] = []
        if self.count % 2 == 0 and not self._before_break():
            due_at = (
                c for c in self._due() if c.record.mark is Mark.HESITATED or c.rested(self.morning.index) >= 2
            )
            back = sorted((c for c in due_at if c.chance >= RETURN_FROM), key=lambda c: c.tie)
        sure = [c for c in self.pool.all if c.sure]
        sure.sort(key=lambda c: (c.item.skill in self.settled, -c.overdue, c.tie))
        rest = sorted((c for c in self.pool.all if not c.hard), key=lambda c: (-c.chance, c.tie))
        return back + sure + rest

    # -- taking

    def _take(self, candidates: Iterable[Candidate], slot: SlotKind, most: int) -> None:
        taken = 0
        for candidate in candidates:
            if taken >= most or len(self.picks) >= self.count:
                return
            if self._may(candidate, slot):
                self.picks.append(Pick(candidate, slot, self._rank(candidate, slot)))
                taken += 1

    def _spread(self, candidates: Iterable[Candidate], slot: SlotKind, most: int) -> None:
        """Take them while there is room beside what every morning has."""
        room = len(self.picks) + most
        for candidate in candidates:
            if len(self.picks) >= min(room, self.count - len(self._missing())):
                return
            self._take([candidate], slot, 1)

    def _rank(self, candidate: Candidate, slot: SlotKind) -> int:
        """Where it would like to stand: calendar talk and counting in their own places always."""
        kinds = {strand: kind for kind, strand in _STRANDS.items() if kind in self.ranks}
        if slot is not SlotKind.SURE:
            slot = kinds.get(candidate.item.strand, slot)
        return self.ranks.get(slot, self.ranks.get(SlotKind.OLDER, len(self.ranks)))

    def _may(self, candidate: Candidate, slot: SlotKind) -> bool:
        item = candidate.item
        if any(p.candidate.item.id == item.id for p in self.picks):
            return False
        if sum(p.skill == item.skill for p in self.picks) >= self.of_a_skill:
            return False
        calendar = [p.skill for p in self.picks if p.candidate.item.strand == "calendar"]
        # Two of one skill would be about the same day: one would tell the answer of the other.
        if item.strand == "calendar" and (len(calendar) >= self.calendar_most or item.skill in calendar):
            return False
        if self.new_family:
            return True
        if candidate.new and not self._new_is_welcome(candidate, slot):
            return False
        # A hard close does not count: ``hard_most`` is one higher for it.
        hard = sum(p.hard for p in self.picks) - (slot is SlotKind.SURE)
        if candidate.hard and hard >= self.hard_most:
            return False
        return not candidate.new or self._room_for_new(candidate)

    def _new_is_welcome(self, candidate: Candidate, slot: SlotKind) -> bool:
        """Nothing is new in a review, nor on the last morning, but what is named or what the day asks for."""
        asked_for = slot is SlotKind.NAMED or candidate.item.id in self.pool.timely
        return asked_for or self._focus_most() > 0

    def _room_for_new(self, candidate: Candidate) -> bool:
        new = [p.candidate for p in self.picks if p.candidate.new]
        ideas = {c.item.level_id for c in new} - self.pool.begun
        idea = candidate.item.level_id not in self.pool.begun
        return len(new) < FIRST_TIMES and (not idea or len(ideas | {candidate.item.level_id}) <= IDEAS)

    # -- kindness, time and order

    def be_kind(self) -> None:
        """Swap the hardest review for a sure one, at most four times, until the morning is kind enough."""
        sure = [c for c in self.pool.all if c.sure]
        for _ in range(SWAPS if not self.new_family else 0):
            mean = sum(p.candidate.feels for p in self.picks) / max(1, len(self.picks))
            reviews = [p for p in self.picks if p.slot in (SlotKind.OLDER, SlotKind.WOBBLED) and p.hard]
            reviews = [p for p in reviews if not p.candidate.new]
            if mean >= self._floor() or not reviews:
                return
            if not self._swap(min(reviews, key=lambda p: (p.candidate.feels, p.candidate.tie)), sure):
                return

    def _floor(self) -> float:
        """The mean chance this morning should have: higher after hard mornings, and after a break."""
        days = self.pool.knowledge.days
        marked = sum(day.marked for day in days)
        went = sum(day.fluent for day in days) / marked if marked else HALF_WELL
        floor = FLOOR + max(-MOVES, min(MOVES, HALF_WELL - went))
        return floor + AFTER_BREAK * self._after_break()

    def _before_break(self) -> bool:
        """Whether this is the last morning for more than a week."""
        return self.morning.next is None or (self.morning.next - self.morning.date).days > 7

    def _after_break(self) -> bool:
        """Whether this is the first or second morning after more than a week without one."""
        before = [day.date for day in self.pool.knowledge.days if day.date < self.morning.date]
        last = [*before, self.morning.date][-3:]
        return any((after - day).days > 7 for day, after in pairwise(last))

    def _swap(self, out: Pick, candidates: Iterable[Candidate]) -> bool:
        """Put the first candidate that is easier and may stand in the place of ``out``."""
        at = self.picks.index(out)
        rest = self.picks[:at] + self.picks[at + 1 :]
        self.picks = rest
        missing = {_STRANDS[kind] for kind in self._missing()}
        for candidate in candidates:
            if missing and candidate.item.strand not in missing:
                continue
            easier = candidate.feels > out.candidate.feels and candidate is not out.candidate
            if easier and self._may(candidate, out.slot):
                self.picks = [*rest[:at], Pick(candidate, out.slot, out.rank), *rest[at:]]
                return True
        self.picks = [*rest[:at], out, *rest[at:]]
        return False

    def _over_time(self) -> Pick | None:
        """What goes when the morning is over its ceiling, None when it fits: the last older review first."""
        if sum(p.candidate.item.seconds for p in self.picks) <= self.seconds:
            return None
        late = [SlotKind.OLDER, SlotKind.WOBBLED, SlotKind.AFTER, SlotKind.CHECK, SlotKind.NEWEST]
        able = [p for p in reversed(self.picks) if p.candidate.item.strand not in _STRANDS.values()]
        going = [p for kind in late for p in able if p.slot is kind]
        return going[0] if going else self.picks[0]

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
            order = find_order(self.picks)
            if order is None and self.new_family:
                order = find_order(self.picks, gentle=False)
            if order is not None:
                return order
            hard = [p for p in self.picks if p.hard]
            out = min(hard or self.picks, key=lambda p: (p.slot is not SlotKind.OLDER, p.candidate.feels))
            if not self._swap(out, [c for c in self.pool.all if not c.hard]):
                self.picks.remove(out)
        return ()
