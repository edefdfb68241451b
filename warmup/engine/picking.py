"""One morning as it is picked: the limits that keep it kind, and the order it is asked in."""

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from functools import cached_property
from itertools import takewhile
from typing import NamedTuple

from warmup.engine.pool import OF_A_SKILL, Candidate, Pool
from warmup.engine.targets import DAILY_ADDING_FROM, NUMBER_WORK, SHARES
from warmup.model import Item, ItemId, LevelId, Shape, SlotKind, Strand
from warmup.schoolyear import WEEKS_A_QUARTER

FIRST_TIMES, IDEAS, OF_THINGS = 3, 2, 2
APART = 8
"""So many mornings lie between two prompts that count as two."""
BESIDE, AROUND = 12, 50
"""Seconds for the cues and the mark of a prompt, and for a morning's opening and close."""
_THINGS = (Strand.SHAPE.value, Strand.MEASURING.value)
_CALENDAR, _ADDING = Strand.CALENDAR.value, Strand.ADDING.value


class Pick(NamedTuple):
    """A candidate, the rule that picked it, and the slot of the morning it stands in."""

    candidate: Candidate
    rule: str
    slot: SlotKind
    rank: int

    @property
    def item(self) -> Item:
        """The item that is asked."""
        return self.candidate.item

    @property
    def closes(self) -> bool:
        """Whether it is the close."""
        return self.slot is SlotKind.SURE


class Today:
    """The picks of one morning as they grow.

    ``count`` is the number of prompts wanted. ``gentle`` says whether the limits on what is hard or new
    hold: where nearly everything is new there is nothing easy to put between.
    """

    def __init__(self, pool: Pool, shape: Shape, count: int, *, gentle: bool) -> None:
        self.pool, self.shape, self.count, self.gentle = pool, shape, count, gentle
        self.morning, self.index = pool.morning, pool.morning.index
        self.picks: list[Pick] = []
        self.most, self.ranks = dict[SlotKind, int](), dict[SlotKind, int]()
        for rank, slot in enumerate(shape.slots):
            self.most[slot.kind] = self.most.get(slot.kind, 0) + slot.most
            self.ranks.setdefault(slot.kind, rank)
        # Two of a skill, unless so few skills are open that a morning could not be filled.
        self.of_a_skill = max(OF_A_SKILL, -(-count // max(1, len(pool.rests))))

    # -- what the year has had

    @cached_property
    def behind(self) -> dict[str, float]:
        """By how many points of the quarter's prompts each strand is behind its share, today's included.

        The quarter is taken to hold as many prompts a morning as today.
        """
        quarter, year = self.morning.quarter - 1, self.pool.curriculum.year
        start = year.begins(quarter * WEEKS_A_QUARTER + 1)
        mornings = max(1, year.ends((quarter + 1) * WEEKS_A_QUARTER) - start)
        asked = self._by_strand(self._asked(start))
        so_far, whole = asked.total() + self.count, self.count * mornings
        return {
            strand: (shares[quarter] * so_far - 100 * asked[strand]) / whole
            for strand, shares in SHARES.items()
        }

    @cached_property
    def this_year(self) -> Counter[ItemId]:
        """How often each item of the plan was on screen since the year's first morning."""
        return self._asked(0)

    @cached_property
    def number_share(self) -> float:
        """The percent of the year's prompts so far that were number work; 100 before the first."""
        asked = self._by_strand(self.this_year)
        return 100 * sum(asked[strand] for strand in NUMBER_WORK) / asked.total() if asked else 100.0

    def _asked(self, start: int) -> Counter[ItemId]:
        """How often each item of the plan was asked from the morning with index ``start`` on."""
        items = self.pool.curriculum.by_id
        days = takewhile(lambda day: day.index >= start, reversed(self.pool.knowledge.days))
        return Counter(item for day in days for item, _ in day.asked if item in items)

    def _by_strand(self, asked: Counter[ItemId]) -> Counter[str]:
        strands = Counter[str]()
        for item, times in asked.items():
            strands[self.pool.curriculum.by_id[item].strand] += times
        return strands

    # -- what this morning has

    def of_strand(self, *strands: str) -> list[Pick]:
        """What is picked of these strands; no family's own, which stands in for none."""
        return [pick for pick in self.picks if pick.item.strand in strands and not pick.item.own]

    def has_own(self) -> bool:
        """Whether this morning has asked, or is to ask, what the family wrote itself."""
        days, items = self.pool.knowledge.days, self.pool.curriculum.by_id
        asked = days[-1].asked if days and days[-1].index == self.index else ()
        return any(pick.item.own for pick in self.picks) or any(
            item in items and items[item].own for item, _ in asked
        )

    @property
    def left(self) -> int:
        """How many places of the morning are free."""
        return self.count - sum(pick.item.places for pick in self.picks)

    def missing(self) -> list[str]:
        """The strands this morning still has to have, in so far as anything of them may be asked."""
        wanted = [_CALENDAR] if SlotKind.CALENDAR in self.most else []
        if SlotKind.ADDING in self.most and self.morning.week >= DAILY_ADDING_FROM:
            wanted.append(_ADDING)
        return [strand for strand in wanted if self.pool.of_strand(strand) and not self.of_strand(strand)]

    # -- taking

    def take(self, rule: str, slot: SlotKind, most: int, candidates: Iterable[Candidate]) -> None:
        """Take at most so many of the candidates, in their order, where slot and limits allow it.

        Places and time are left for the strands that the morning still has to have.
        """
        most = min(most, self.most.get(slot, 0) - sum(pick.slot is slot for pick in self.picks))
        for candidate in candidates:
            if most < 1 or self.left < 1:
                return
            others = [strand for strand in self.missing() if strand != candidate.item.strand]
            if self._leaves_room(candidate, others) and self.may(candidate):
                self.picks.append(Pick(candidate, rule, slot, self._rank(candidate, slot)))
                most -= 1

    def _leaves_room(self, candidate: Candidate, others: Sequence[str]) -> bool:
        """Whether places and time are left for one prompt each of other strands."""
        if self.left - candidate.item.places < len(others):
            return False
        shortest = (min(c.item.seconds for c in self.pool.of_strand(strand)) for strand in others)
        return self.seconds(candidate.item.seconds, *shortest) <= self.shape.seconds

    def seconds(self, *more: int) -> int:
        """How long the morning takes with prompts of so many seconds besides, with all around them."""
        prompts = [*(pick.item.seconds for pick in self.picks), *more]
        return AROUND + sum(prompts) + BESIDE * len(prompts)

    def _rank(self, candidate: Candidate, slot: SlotKind) -> int:
        """Where it would like to stand: calendar talk and counting in their own places, if there are any."""
        own = {_CALENDAR: SlotKind.CALENDAR, Strand.COUNTING.value: SlotKind.COUNTING}
        its = own.get(candidate.item.strand, slot)
        return self.ranks[its if slot is not SlotKind.SURE and its in self.ranks else slot]

    def may(self, candidate: Candidate) -> bool:
        """Whether it breaks none of the limits of a kind morning beside what is picked."""
        return all(limit(self, candidate) for limit in LIMITS) and (
            not self.gentle or all(limit(self, candidate) for limit in GENTLE)
        )

    def hard_left(self) -> int:
        """How many more hard prompts there may be: each has an easy one before it, and the close is none."""
        prompts = self.count - sum(pick.item.places - 1 for pick in self.picks)
        return (prompts - 1) // 2 - sum(pick.candidate.hard for pick in self.picks)

    # -- in order

    def ordered(self) -> tuple[Pick, ...]:
        """The picks in an order that breaks no limit; without one, the last pick that is hard goes.

        Of strands that every morning has, one goes only where there is no other.
        """
        while self.picks:
            order = find_order(self.picks, gentle=self.gentle)
            if order is not None:
                return order
            hard = [pick for pick in self.picks if pick.candidate.hard or not self.gentle] or self.picks
            daily = self.of_strand(_CALENDAR, _ADDING)
            others = [pick for pick in hard if pick not in daily]
            self.picks.remove((others or hard)[-1])
        return ()


Limit = Callable[[Today, Candidate], bool]


def _once(today: Today, c: Candidate) -> bool:
    return all(pick.item.id != c.item.id for pick in today.picks)


def _two_of_a_skill(today: Today, c: Candidate) -> bool:
    return sum(pick.item.skill == c.item.skill for pick in today.picks) < today.of_a_skill


def _calendar(today: Today, c: Candidate) -> bool:
    """One prompt about the day: another would tell its answer. What a family wrote is not about the day."""
    most = today.most.get(SlotKind.CALENDAR, today.count)
    return c.item.strand != _CALENDAR or c.item.own or len(today.of_strand(_CALENDAR)) < most


def _things(today: Today, c: Candidate) -> bool:
    """Two prompts of shape, space and measuring: they want the most fetching."""
    return c.item.strand not in _THINGS or sum(p.item.strand in _THINGS for p in today.picks) < OF_THINGS


def _time(today: Today, c: Candidate) -> bool:
    """The morning fits its ceiling, with cues, marks, opening and close."""
    return today.seconds(c.item.seconds) <= today.shape.seconds


def _fortnight(today: Today, c: Candidate) -> bool:
    """What counts as two prompts comes once in two weeks."""
    return c.item.places == 1 or c.begins or c.level.rested(today.index, 0) >= APART


def _one_own(today: Today, c: Candidate) -> bool:
    """One prompt that the family wrote itself, also where a morning has a second warm-up."""
    return not c.item.own or not today.has_own()


def _hard(today: Today, c: Candidate) -> bool:
    return not c.hard or today.hard_left() > 0


def _first_times(today: Today, c: Candidate) -> bool:
    return not c.new or sum(pick.candidate.new for pick in today.picks) < FIRST_TIMES


def _ideas(today: Today, c: Candidate) -> bool:
    begun: set[LevelId] = {pick.item.level_id for pick in today.picks if pick.candidate.begins}
    return not c.begins or len(begun | {c.item.level_id}) <= IDEAS


def _nothing_new(today: Today, c: Candidate) -> bool:
    """In a review week a level begins only if it has a kindergarten code and waited a week; on the last
    morning of the year none does. What the day itself asks for comes all the same.
    """
    if not c.begins or c.item.id in today.pool.timely:
        return True
    waited = c.item.kindergarten and today.pool.rested(c) >= today.morning.mornings_a_week
    return bool(today.morning.next) and (waited or not today.morning.review)


LIMITS: tuple[Limit, ...] = (_once, _two_of_a_skill, _calendar, _things, _time, _fortnight, _one_own)
"""Kept on every morning."""
GENTLE: tuple[Limit, ...] = (_hard, _first_times, _ideas, _nothing_new)
"""Kept on every morning on which enough is known."""


def find_order(picks: Sequence[Pick], *, gentle: bool = True) -> tuple[Pick, ...] | None:
    """The picks in an order with no skill twice running; None when there is no such order.

    The close comes last. When ``gentle``, no two hard ones run together and the first is not hard. Of all
    such orders it is the one that keeps closest to the ranks, earliest places first.
    """
    return _extend((), sorted(picks, key=lambda pick: (pick.closes, pick.rank)), gentle)


def _extend(done: tuple[Pick, ...], left: list[Pick], gentle: bool) -> tuple[Pick, ...] | None:
    if not left:
        return done
    hard = sum(pick.candidate.hard for pick in left)
    after_hard = bool(done) and done[-1].candidate.hard
    # More hard ones than places for them: every second one, beginning with this if it may be hard.
    if gentle and hard > (len(left) + (bool(done) and not after_hard)) // 2:
        return None
    for at, pick in enumerate(left):
        if pick.closes and len(left) > 1:
            continue
        if done and pick.item.skill == done[-1].item.skill:
            continue
        if gentle and pick.candidate.hard and (not done or after_hard):
            continue
        order = _extend((*done, pick), left[:at] + left[at + 1 :], gentle)
        if order is not None:
            return order
    return None
