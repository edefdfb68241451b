"""What may be asked on a morning, what rests until it is taught again, and when nothing new comes.

A level opens when its week has come and what it stands on is not shaky. The adult holds levels back, opens
some early, says that an item was taught again, and may pause everything new for a while.
"""

import datetime as dt
from collections.abc import Collection, Iterable, Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

from warmup import skills
from warmup.engine import review
from warmup.engine.curriculum import Curriculum
from warmup.engine.memory import RETEACH, Knowledge, Record
from warmup.model import Asked, Item, ItemId, LevelId, Mark, Morning, Plan, skill_and_name
from warmup.schoolyear import WEEKS_A_QUARTER, SchoolYear
from warmup.text import LAST_YEAR

SAMPLES = 2
"""How many prompts tell whether a level from before the family began is known."""


UNTIL_SAID = dt.date(LAST_YEAR, 12, 31)
"""The end of a pause that has none yet: the last date that a file may hold."""


class Adjustments(NamedTuple):
    """What the adult says of one child's levels and items.

    ``held`` levels are not asked, ``early`` ones come before their week. ``taught`` has the date on which
    each item was last taught again. Up to and on ``paused`` no level opens that has not begun; it is
    ``UNTIL_SAID`` where the adult says when that ends.
    """

    held: Collection[LevelId] = ()
    early: Collection[LevelId] = ()
    taught: Mapping[ItemId, dt.date] = MappingProxyType({})
    paused: dt.date | None = None


class Eligible(NamedTuple):
    """The items that may be asked on a morning; ``timely`` names those the day itself asks for."""

    items: tuple[Item, ...]
    timely: frozenset[ItemId] = frozenset()

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
    year; a pause holds it back as it does all that is new.
    """
    able = open_items(curriculum.items, morning, knowledge, adjustments)
    able = sampled(able, knowledge, curriculum.since)
    there = {item.id for item in able}
    shut = _shut(curriculum.items, morning, knowledge, adjustments)
    timely = timely_among(curriculum.items, morning)
    besides = (
        item
        for item in curriculum.items
        if item.id in timely
        and item.id not in there
        and item.week <= morning.week
        and item.level_id not in adjustments.held
        and item.level_id not in shut
    )
    items = (item for item in (*able, *besides) if skills.askable(item.id, morning))
    return Eligible(tuple(items), timely)


def timely_among(items: Iterable[Item], morning: Morning) -> frozenset[ItemId]:
    """Those the day itself asks for."""
    return frozenset(item.id for item in items if skills.timely(item.id, morning))


def open_items(
    items: Iterable[Item], morning: Morning, knowledge: Knowledge, adjustments: Adjustments = _NOTHING
) -> tuple[Item, ...]:
    """The items whose level is open on this morning and that do not rest.

    A level opens when its week has come or it is opened early, the adult does not hold it, and nothing it
    stands on is *not yet*, by its last mark or by a review; once asked it stays open, also where a new
    plan gives it a later week. An item that rests until it is taught again is not open. During a pause
    no level opens of which nothing has a mark yet, unless nothing at all has one.
    """
    items = tuple(items)
    shaky = {
        item.level_id
        for item in items
        if not item.misconception and knowledge.of(item.id).mark is Mark.NOT_YET
    }
    begun = {item.level_id for item in items if knowledge.of(item.id).marks}
    # What stands on a skill that a review found shaky waits while the skill is a step down.
    again = review.step_down(knowledge)
    shaky |= {item.level_id for item in items if item.skill in again}
    shut = _shut(items, morning, knowledge, adjustments)
    return tuple(
        item
        for item in items
        if item.level_id not in adjustments.held
        and item.level_id not in shut
        and (item.week <= morning.week or item.level_id in adjustments.early or item.level_id in begun)
        and (item.level_id in begun or not shaky.intersection(item.stands_on))
        and not rests(knowledge.of(item.id), adjustments.taught.get(item.id))
    )


def _shut(
    items: Sequence[Item], morning: Morning, knowledge: Knowledge, adjustments: Adjustments
) -> frozenset[LevelId]:
    """The levels that a pause keeps from opening: all that have not begun, unless none has."""
    if adjustments.paused is None or morning.date > adjustments.paused:
        return frozenset()
    begun = {item.level_id for item in items if knowledge.of(item.id).marks}
    return frozenset(item.level_id for item in items if begun) - begun


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


def unlocked(plan: Plan, morning: Morning) -> frozenset[LevelId]:
    """The levels that this quarter has unlocked up to this week."""
    return frozenset(
        level
        for level, week in plan.weeks.items()
        if (week - 1) // WEEKS_A_QUARTER + 1 == morning.quarter and week <= morning.week
    )


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


# -- a pause


def paused_until(adjustments: Adjustments, today: dt.date) -> dt.date | None:
    """The last day without new levels, today or later; else None."""
    until = adjustments.paused
    return until if until is not None and until >= today else None


def pause_end(year: SchoolYear, today: dt.date, mornings: int) -> dt.date:
    """The last of so many planned mornings after today, or of those the year still has."""
    ahead = [date for date in year.mornings if date > today][:mornings]
    return ahead[-1] if ahead else today


def wobbling(history: Sequence[Asked], morning: Morning, year: SchoolYear) -> bool:
    """Whether more than a third of the skills marked so far in this review week had a wobble in it.

    A wobble is a mark of hesitated or not yet, or a cue. A rough day lowers nothing: it is left out here
    as well. False in any other week.
    """
    if not morning.review:
        return False
    wobbles: dict[str, bool] = {}
    for line in reversed(history):
        if year.morning(line.date).week != morning.week:
            break
        if line.mark in (None, Mark.SKIPPED) or line.rough:
            continue
        skill, _ = skill_and_name(line.item)
        wobbles[skill] = wobbles.get(skill, False) or line.mark is not Mark.FLUENT or line.cue > 0
    return 3 * sum(wobbles.values()) > len(wobbles)
