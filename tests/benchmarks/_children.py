"""Invented children with a memory nobody can see, and the school year they live.

A child forgets in one of two ways (``KINDS``) that the engine is not told. Both are spaced memories: what
is nearly gone gains most when it is recalled, the direction that tests/references/pedagogy.toml gives under
spacing.meta (Cepeda and others 2006) and spacing.young_children (Vlach and Sandhofer 2012). Every other
number here is invented, common practice, no source: results tell which way of choosing keeps more, not how
much a real child keeps.

All luck is a hash of the seed, the child and what it is drawn for. So each way of choosing meets the same
child, the same missed mornings and the same luck with the same item on the same morning.
"""

import datetime as dt
import hashlib
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple, Protocol

from warmup.model import Item, ItemId

WEEKS, A_WEEK, PROMPTS = 36, 4, 8
FIRST = dt.date(2026, 8, 31)
BREAKS = {12: 1, 16: 2, 27: 1}
"""After which weeks school stops, and for how many."""
EASY, HESITATED, NOT_YET, SKIPPED = LADDER = ("easy", "hesitated", "notyet", "skipped")


def luck(*parts: object) -> float:
    """A number from 0 up to 1, even, and always the same for the same parts."""
    text = "/".join(map(str, parts)).encode()
    return int.from_bytes(hashlib.blake2b(text, digest_size=8).digest(), "big") / 2**64


def bell(*parts: object) -> float:
    """A number about 0 with a spread of 1, never past 3."""
    return 2 * sum(luck(*parts, turn) for turn in range(3)) - 3


def year(weeks: int = WEEKS) -> list[dt.date]:
    """The planned mornings: four a week from a Monday on, with the breaks."""
    away = 0
    days = []
    for week in range(weeks):
        days += [FIRST + dt.timedelta(weeks=week + away, days=day) for day in range(A_WEEK)]
        away += BREAKS.get(week + 1, 0)
    return days


class Memory(Protocol):
    """What a child keeps of each item. Days are counted from the year's first."""

    def recall(self, item: str, day: float) -> float:
        """The chance that it is known on this day, 0 for what was never met."""
        ...

    def meet(self, item: str, day: float) -> None:
        """Be taught it, or taught it again."""
        ...

    def ask(self, item: str, day: float, knew: bool) -> None:
        """Be asked it, and told it where it was not known."""
        ...

    def gain(self, item: str, day: float, later: Sequence[float]) -> float:
        """How much asking now would add to the recall on the ``later`` days, summed, by expectation."""
        ...


def ease(seed: object, ability: float, item: str) -> float:
    """How easily this child comes by this item: about 0, with a spread of a little over 1.5."""
    return ability + 0.7 * bell(seed, item.partition("/")[0]) + 0.9 * bell(seed, item)


class Fading:
    """Half is gone after as many days as an item stays; a success after a long rest makes it stay longer."""

    def __init__(self, seed: object, ability: float) -> None:
        self.seed, self.ability = seed, ability
        self.lift = 3.0 * 1.2**ability
        self.stays: dict[str, float] = {}
        self.seen: dict[str, float] = {}

    def recall(self, item: str, day: float) -> float:
        if item not in self.seen:
            return 0.0
        return float(0.5 ** ((day - self.seen[item]) / self.stays[item]))

    def meet(self, item: str, day: float) -> None:
        lost = 1 - self.recall(item, day)
        self.stays[item] = self.stays[item] * (1 + lost) if item in self.seen else self._first(item)
        self.seen[item] = day

    def ask(self, item: str, day: float, knew: bool) -> None:
        self.stays[item] = self._after(item, self.recall(item, day), knew)
        self.seen[item] = day

    def _first(self, item: str) -> float:
        return max(2.0, 60 * float(1.5 ** ease(self.seed, self.ability, item)))

    def _after(self, item: str, recall: float, knew: bool) -> float:
        stays = self.stays[item]
        return float(min(500, stays * (1 + self.lift * (1 - recall))) if knew else max(1.5, 0.65 * stays))

    def gain(self, item: str, day: float, later: Sequence[float]) -> float:
        known = self.recall(item, day)
        knew, not_yet = (self._after(item, known, each) for each in (True, False))
        return float(
            sum(
                known * 0.5 ** ((then - day) / knew)
                + (1 - known) * 0.5 ** ((then - day) / not_yet)
                - self.recall(item, then)
                for then in later
            )
        )


class Traces:
    """Every meeting leaves a trace that wears off by a power of its age; the less was left, the deeper."""

    def __init__(self, seed: object, ability: float) -> None:
        self.seed, self.ability = seed, ability
        self.wear = 0.5 * 0.92**ability
        self.traces: dict[str, list[tuple[float, float]]] = {}
        self.needs: dict[str, float] = {}

    def _known(self, item: str, strength: float) -> float:
        """Half a chance where the traces together are as deep as the item needs."""
        return strength**2 / (strength**2 + self.needs[item] ** 2)

    def _strength(self, item: str, day: float) -> float:
        return float(sum(deep * (1 + day - at) ** -self.wear for at, deep in self.traces[item]))

    def recall(self, item: str, day: float) -> float:
        return self._known(item, self._strength(item, day)) if item in self.traces else 0.0

    def meet(self, item: str, day: float) -> None:
        if item not in self.needs:
            self.needs[item] = 0.08 * 0.7 ** ease(self.seed, self.ability, item)
        self._leave(item, day, 0.8)

    def ask(self, item: str, day: float, knew: bool) -> None:
        self._leave(item, day, 1.0 if knew else 0.7)

    def _depth(self, recall: float, most: float) -> float:
        return most * (1 - 0.95 * recall)

    def _leave(self, item: str, day: float, most: float) -> None:
        trace = (day, self._depth(self.recall(item, day), most))
        self.traces.setdefault(item, []).append(trace)

    def gain(self, item: str, day: float, later: Sequence[float]) -> float:
        known = self.recall(item, day)
        deep = known * self._depth(known, 1.0) + (1 - known) * self._depth(known, 0.7)
        total = 0.0
        for then in later:
            strength = self._strength(item, then)
            more = strength + deep * (1 + then - day) ** -self.wear
            total += self._known(item, more) - self._known(item, strength)
        return total


KINDS: Mapping[str, Callable[[object, float], Memory]] = {"fading": Fading, "traces": Traces}


@dataclass(slots=True)
class Child:
    """A child of a kind: how able, how the adult marks, and what it keeps.

    The child with this number is as able in every kind. ``slips`` is how often a mark is one step off.
    """

    seed: int
    number: int
    kind: str
    memory: Memory = field(init=False)
    ability: float = field(init=False)
    slips: float = field(init=False)

    def __post_init__(self) -> None:
        self.ability = bell(self.seed, self.number, "ability")
        self.slips = 0.02 + 0.1 * luck(self.seed, self.number, "slips")
        self.memory = KINDS[self.kind](f"{self.seed}/{self.number}", self.ability)

    @property
    def name(self) -> str:
        """A name for requests."""
        return f"{self.kind} {self.number} of {self.seed}"

    def missed(self, mornings: int) -> set[int]:
        """The mornings that are not held: one in twenty, and up to two spells in bed."""
        own = (self.seed, self.number, "missed")
        gone = {at for at in range(mornings) if luck(*own, at) < 0.05}
        for spell in range(int(3 * luck(*own, "spells"))):
            start = int(mornings * luck(*own, "from", spell))
            gone |= set(range(start, start + 2 + int(3 * luck(*own, "long", spell))))
        return gone - {0}

    def answer(self, item: Item, index: int, day: int) -> str:
        """Ask it on this morning: the mark it gets. What was asked and not skipped is remembered better."""
        own = (self.seed, self.number, item.id, index)
        if luck(*own, "skip") < 0.03:
            return SKIPPED
        tired = luck(self.seed, self.number, index, "tired") < 0.08
        known = self.memory.recall(item.id, day) * (0.8 if tired else 1.0)
        knew = luck(*own, "knew") < known
        right = knew or luck(*own, "guess") < item.guess
        self.memory.ask(item.id, day, knew)
        if right:
            step = 0 if luck(*own, "slow") < 0.4 + 0.6 * known else 1
        else:
            step = 1 if luck(*own, "helped") < 0.2 else 2
        if luck(*own, "slip") < self.slips:
            step = min(2, max(0, step + (1 if luck(*own, "way") < 0.5 else -1)))
        return LADDER[step]


class Held(NamedTuple):
    """One morning that was held: its number from 0, what could be asked, and what was, each with its mark."""

    morning: int
    unlocked: tuple[str, ...]
    asked: tuple[tuple[str, str], ...]


class Lived(NamedTuple):
    """A child's year: the mornings, and the mean recall over the items on the day after and 30 days on."""

    mornings: tuple[Held, ...]
    at_end: float
    later: float


Request = dict[str, Any]
Choose = Callable[[Request, Child], Sequence[str]]


def live(child: Child, choose: Choose, items: Sequence[Item], weeks: int = WEEKS) -> Lived:
    """The year of a new child whose mornings are chosen by ``choose``.

    Each item is taught just before it unlocks and again two mornings after, and now and then later on,
    whether it is asked or not.
    """
    days = year(weeks)
    items = [item for item in items if item.week <= weeks]
    by_id = {item.id: item for item in items}
    since = [(day - FIRST).days for day in days]
    request: Request = {"v": 1, "child": child.name, "n": PROMPTS, "history": []}
    request["calendar"] = [day.isoformat() for day in days]
    missed, held = child.missed(len(days)), []
    for index, day in enumerate(days):
        _lessons(child, items, index, since[index])
        if index in missed:
            continue
        unlocked = tuple(item.id for item in items if item.week <= index // A_WEEK + 1)
        request |= {"day_index": index, "date": day.isoformat(), "unlocked": unlocked}
        chosen = choose(request, child)
        marks = [child.answer(by_id[ItemId(item)], index, since[index]) for item in chosen]
        asked = tuple(zip(chosen, marks, strict=True))
        request["history"] += [(day.isoformat(), item, mark) for item, mark in asked]
        held.append(Held(index, unlocked, asked))
    end = since[-1] + 1
    at_end, later = (
        sum(child.memory.recall(item.id, then) for item in items) / len(items) for then in (end, end + 30)
    )
    return Lived(tuple(held), at_end, later)


def _lessons(child: Child, items: Sequence[Item], index: int, day: int) -> None:
    """What is taught since the last morning, asked or not: the new, and now and then something old."""
    week, morning = index // A_WEEK + 1, index % A_WEEK
    for item in items:
        new = item.week == week and morning in (0, 2)
        if new or (item.week < week and luck(child.seed, child.number, index, item.id, "by the way") < 0.01):
            child.memory.meet(item.id, day - 0.5)
