"""What may be asked on a morning, what rests until it is taught again, and when nothing new comes.

A level opens when its week has come and what it stands on is not shaky. The adult holds levels back, opens
some early, says that an item was taught again, and may pause everything new for a while.
"""

import datetime as dt
from collections.abc import Collection, Iterable, Mapping, Sequence
from types import MappingProxyType
from typing import TYPE_CHECKING, NamedTuple

from warmup import skills
from warmup.engine.absence import absence
from warmup.engine.curriculum import Curriculum
from warmup.engine.memory import RETEACH, Knowledge, Record
from warmup.model import Item, ItemId, LevelId, Morning
from warmup.text import LAST_YEAR

if TYPE_CHECKING:
    from warmup.engine.things import Household

SHAKY = 2
"""So many not yet running make an item shaky, and what stands on it waits."""
GATE = 4
"""For so many mornings at most a level with a kindergarten code waits for what it stands on."""
SAMPLES = 2
"""How many prompts tell whether a level from before the family began is known."""
UNTIL_SAID = dt.date(LAST_YEAR, 12, 31)
"""The end of a pause that has none yet: the last date that a file may hold."""


class Adjustments(NamedTuple):
    """What the adult says of one child's levels and items.

    ``held`` levels are not asked, ``early`` ones come before their week. ``taught`` has the date on which
    each item was last taught again. Up to and on ``paused`` no level opens that has not begun; it is
    ``UNTIL_SAID`` where the adult says when that ends. ``household`` says what the house lacks; None where
    that is nothing.
    """

    held: Collection[LevelId] = ()
    early: Collection[LevelId] = ()
    taught: Mapping[ItemId, dt.date] = MappingProxyType({})
    paused: dt.date | None = None
    household: "Household | None" = None


class Eligible(NamedTuple):
    """The items that may be asked on a morning.

    ``timely`` names those the day itself asks for, ``holding`` the shaky ones that keep a level of this
    week or before from opening.
    """

    items: tuple[Item, ...]
    timely: frozenset[ItemId] = frozenset()
    holding: frozenset[ItemId] = frozenset()

    def without(self, item: ItemId) -> "Eligible":
        """All of them but one."""
        return self._replace(items=tuple(each for each in self.items if each.id != item))


_NOTHING = Adjustments()


# -- what is open


def eligible(
    curriculum: Curriculum, morning: Morning, knowledge: Knowledge, adjustments: Adjustments
) -> Eligible:
    """The items that may be asked on this morning and make sense on it.

    What the day itself asks for does not wait for what it stands on, since there is one hundredth day a
    year; a pause holds it back as it does all that is new. After an absence it comes, and nothing else new.
    """
    able = open_items(curriculum, morning, knowledge, adjustments)
    if absence(curriculum, knowledge, morning).days:
        able = tuple(item for item in able if knowledge.of_level(item.level_id).marks)
    holding = frozenset(holds(curriculum, morning, knowledge, able))
    able = sampled(able, knowledge, curriculum.since)
    there = {item.id for item in able}
    paused = _paused(morning, knowledge, adjustments)
    timely = timely_among(curriculum.items, morning)
    besides = (
        item
        for item in curriculum.items
        if item.id in timely
        and item.id not in there
        and item.week <= morning.week
        and item.level_id not in adjustments.held
        and not (paused and not knowledge.of_level(item.level_id).marks)
    )
    items = (item for item in (*able, *besides) if skills.askable(item.id, morning))
    return Eligible(tuple(at_home(items, morning, adjustments.household)), timely, holding)


def at_home(items: Iterable[Item], morning: Morning, household: "Household | None") -> Iterable[Item]:
    """Those of the items that can be asked in this house, with what it has; all where it lacks nothing."""
    if household is None:
        return items
    return (item for item in items if household.can_ask(item.id, morning))


def timely_among(items: Iterable[Item], morning: Morning) -> frozenset[ItemId]:
    """Those the day itself asks for."""
    return frozenset(item.id for item in items if skills.timely(item.id, morning))


def open_items(
    curriculum: Curriculum, morning: Morning, knowledge: Knowledge, adjustments: Adjustments = _NOTHING
) -> tuple[Item, ...]:
    """The items whose level is open on this morning and that do not rest.

    A level opens when its week has come or it is opened early, the adult does not hold it, and nothing it
    stands on or waits on is shaky; one with a kindergarten code waits for ``GATE`` mornings and no longer.
    Once asked it stays open, also where a new plan gives it a later week. An item that rests until it is
    taught again is not open. During a pause no level opens of which nothing has a mark yet, unless nothing
    at all has one.
    """
    shaken = shaky(curriculum, knowledge)
    paused = _paused(morning, knowledge, adjustments)

    def opens(item: Item) -> bool:
        if item.level_id in adjustments.held:
            return False
        if knowledge.of_level(item.level_id).marks:
            return True
        if paused or not (item.week <= morning.week or item.level_id in adjustments.early):
            return False
        late = item.kindergarten and morning.index - curriculum.opened(item) >= GATE
        return late or not shaken.intersection((*item.stands_on, *item.waits_on))

    return tuple(
        item
        for item in curriculum.items
        if opens(item) and not rests(knowledge.of(item.id), adjustments.taught.get(item.id))
    )


def shaky(curriculum: Curriculum, knowledge: Knowledge) -> frozenset[str]:
    """The items that were not yet twice running, and the levels with such a one that is no misconception."""
    items = [item for item in curriculum.items if knowledge.of(item.id).misses >= SHAKY]
    levels = (item.level_id for item in items if not item.misconception)
    return frozenset((*(item.id for item in items), *levels))


def holds(
    curriculum: Curriculum, morning: Morning, knowledge: Knowledge, able: Collection[Item]
) -> Iterable[ItemId]:
    """The shaky items for which a level waits whose week has come."""
    shaken, there = shaky(curriculum, knowledge), {item.level_id for item in able}
    waited = {
        name
        for item in curriculum.items
        if item.week <= morning.week and item.level_id not in there
        for name in (*item.stands_on, *item.waits_on)
    }
    return (
        item.id
        for item in able
        if item.id in shaken and (item.id in waited or (item.level_id in waited and not item.misconception))
    )


def _paused(morning: Morning, knowledge: Knowledge, adjustments: Adjustments) -> bool:
    """Whether a pause keeps from opening what has not begun; where nothing has, there is no pause."""
    until = adjustments.paused
    return until is not None and morning.date <= until and any(r.marks for r in knowledge.levels.values())


def sampled(items: Sequence[Item], knowledge: Knowledge, since: int) -> tuple[Item, ...]:
    """The items without those that two samples have shown to be known.

    A level from before the week the family began (``since``) is unknown, not new: two prompts sample it.
    Two that come easily, and the rest of the level is taken as known; else all of it is open.
    """
    asked: dict[str, list[bool]] = {}
    first: dict[str, list[str]] = {}
    for item in items:
        if item.week < since:
            record = knowledge.of(item.id)
            first.setdefault(item.level_id, []).append(item.id)
            asked.setdefault(item.level_id, []).extend([record.run > 0] if record.marks else [])

    def wanted(item: Item) -> bool:
        if item.week >= since or knowledge.of(item.id).marks:
            return True
        went = asked[item.level_id]
        return item.id in first[item.level_id][:SAMPLES] if len(went) < SAMPLES else not all(went)

    return tuple(item for item in items if wanted(item))


# -- what is taught again


def rests(record: Record, taught: dt.date | None) -> bool:
    """Whether an item waits to be taught again: ``RETEACH`` not yet running, and not taught since.

    ``taught`` is the last date on which it was. That of the last mark will do: a warm-up comes before
    the day's lesson. A further not yet on a later date puts the item to rest again.
    """
    if record.misses < RETEACH:
        return False
    return taught is None or record.marked_on is None or taught < record.marked_on


def missed(items: Iterable[Item], knowledge: Knowledge, held: Collection[LevelId]) -> tuple[ItemId, ...]:
    """Items with three not yet running, of levels not held, the newest first; taught since or not."""
    found = [
        (knowledge.of(item.id).marked_on or dt.date.min, item.id)
        for item in items
        if item.level_id not in held and knowledge.of(item.id).misses >= RETEACH
    ]
    return tuple(item for _, item in sorted(found, key=lambda each: each[0], reverse=True))


def to_teach(items: Iterable[Item], knowledge: Knowledge, adjustments: Adjustments) -> tuple[ItemId, ...]:
    """Those of them that rest until the adult says they were taught again."""
    return tuple(
        item
        for item in missed(items, knowledge, adjustments.held)
        if rests(knowledge.of(item), adjustments.taught.get(item))
    )
