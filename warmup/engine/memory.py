"""What a child knows, folded from the marks, in two layers: a record of each item and one of its level.

A record has one number, its *interval*: how many mornings what it stands for can rest. Time is counted in
planned mornings, so a missed morning counts and a weekend does not. What came easily rests longer, what is
not yet comes back sooner. Whether an item comes easily is estimated from both records: items of a level
share much of what is learned.
"""

import datetime as dt
from collections.abc import Iterable, Mapping
from itertools import groupby
from operator import attrgetter
from types import MappingProxyType
from typing import NamedTuple

from warmup.engine.curriculum import Curriculum
from warmup.model import Asked, Item, ItemId, LevelId, Mark

START_INTERVAL = 4.0
SHORTEST, LONGEST = 1.0, 72.0
KEPT = 0.85
"""The estimated chance of an easy answer when an item has rested exactly its interval."""
_LONGEST = 4000.0
"""So many intervals of rest count at most: after more the chance would be no number above 0."""

RETEACH = 3
"""After so many not yet running, an item is taught again rather than asked again."""


class Record(NamedTuple):
    """What is known of one item, or of one level.

    ``interval`` is in mornings. ``last`` is the index of the morning of the last mark. ``run`` counts fluent
    marks running, ``misses`` not yet running, one from memory as a half; ``marks`` all that count. ``shown``
    counts every time it was on screen.
    """

    interval: float = START_INTERVAL
    last: int | None = None
    mark: Mark | None = None
    marked_on: dt.date | None = None
    run: float = 0
    misses: float = 0
    marks: int = 0
    shown: int = 0
    shown_on: dt.date | None = None
    wording: str = ""

    def rested(self, index: int, opened: int) -> int:
        """For how many mornings it has rested; ``opened`` is the index it unlocked at."""
        return max(0, index - (self.last if self.last is not None else opened - 1))

    def chance(self, index: int, opened: int) -> float:
        """The estimated chance, 0 to 1, that it comes easily on this morning."""
        return float(KEPT ** min(self.rested(index, opened) / self.interval, _LONGEST))


NEW = Record()
"""The record of what was never on screen."""


class Day(NamedTuple):
    """One morning: its index, its date, what was on screen and whether that came easily (None: no mark)."""

    index: int  # type: ignore[assignment]  # a named tuple's own method, not used here
    asked: tuple[tuple[ItemId, bool | None], ...]
    date: dt.date

    @property
    def easy(self) -> tuple[bool, ...]:
        """Of each mark that counts, whether it came easily."""
        return tuple(easy for _, easy in self.asked if easy is not None)


class Knowledge(NamedTuple):
    """All that memory holds of a child: a record an item, one a level, and the mornings, newest last."""

    items: Mapping[ItemId, Record] = MappingProxyType({})
    levels: Mapping[LevelId, Record] = MappingProxyType({})
    days: tuple[Day, ...] = ()

    def of(self, item: ItemId) -> Record:
        """The item's record; that of a new one if it was never shown."""
        return self.items.get(item, NEW)

    def of_level(self, level: LevelId) -> Record:
        """The level's record; that of a new one if none of its items was shown."""
        return self.levels.get(level, NEW)


Line = tuple[Asked, int, float]
"""A line of history, the index of its morning, and the chance that an easy answer was a lucky one."""


def learn(record: Record, lines: Iterable[Line], opened: int) -> Record:
    """The record after more lines of history; ``opened`` is the index of the morning the item unlocked.

    A lucky guess proves less, so the chance of one slows the growth. A mark from memory weighs half: the
    interval moves half as far, and the mark is half of one where several running are counted. A new item
    that rested its 4 mornings and came easily rests 12 from then on, and 8 if that is from memory; one that
    is not yet 2, and 3.
    """
    # Worked out in plain names, and put into a record at the end: a year of history is folded before the
    # first frame, each line of it twice.
    interval, last, mark, marked_on, run, misses, marks, shown, shown_on, wording = record
    for asked, index, guess in lines:
        shown, shown_on, wording = shown + 1, asked.date, asked.wording
        if asked.mark is None or asked.mark is Mark.SKIPPED:
            continue
        # A cue was needed: that is hesitation, whatever key was pressed.
        mark = Mark.HESITATED if asked.mark is Mark.FLUENT and asked.cue else asked.mark
        # Whole marks stay whole numbers.
        weight: float = 0.5 if asked.from_memory else 1
        if mark is Mark.FLUENT:
            rested = max(0, index - (opened - 1 if last is None else last))
            grown = _grown(interval, float(rested))
            interval = _within(interval + (grown - interval) * weight * (1.0 - guess))
            run, misses = run + weight, 0
        elif mark is Mark.HESITATED:
            run = misses = 0
        else:
            run, misses = 0, misses + (0 if asked.rough else weight)
            interval = interval if asked.rough else _within(interval * (1.0 - 0.5 * weight))
        last, marked_on, marks = index, asked.date, marks + 1
    return Record(interval, last, mark, marked_on, run, misses, marks, shown, shown_on, wording)


def _grown(interval: float, rested: float) -> float:
    """An early success proves little and a late one more; a very late one is bounded."""
    return interval + 2 * rested if rested <= interval else 3 * min(rested, 2 * interval)


def _within(interval: float) -> float:
    return min(LONGEST, max(SHORTEST, interval))


def fold(curriculum: Curriculum, history: Iterable[Asked], before: Knowledge | None = None) -> Knowledge:
    """Everything history tells, in order of time, on top of what was known ``before``.

    An item the plan no longer names keeps a record of its own, and has no level.
    """
    before = before or Knowledge()
    items, levels, days = dict(before.items), dict(before.levels), list(before.days)
    of_item: dict[ItemId, list[Line]] = {}
    of_level: dict[LevelId, tuple[Item, list[Line]]] = {}
    for date, lines in groupby(history, attrgetter("date")):
        index, asked_now = curriculum.year.index_of(date), list[tuple[ItemId, bool | None]]()
        for asked in lines:
            known = curriculum.by_id.get(asked.item)
            line = (asked, index, known.guess if known else 0.0)
            of_item.setdefault(asked.item, []).append(line)
            if known:
                of_level.setdefault(known.level_id, (known, []))[1].append(line)
            counts = asked.mark is not None and asked.mark is not Mark.SKIPPED
            asked_now.append((asked.item, asked.mark is Mark.FLUENT and not asked.cue if counts else None))
        if days and days[-1].index == index:
            asked_now = [*days.pop().asked, *asked_now]
        days.append(Day(index, tuple(asked_now), date))
    for id_, learned in of_item.items():
        known = curriculum.by_id.get(id_)
        items[id_] = learn(items.get(id_, NEW), learned, curriculum.opened(known) if known else 0)
    for level, (known, learned) in of_level.items():
        levels[level] = learn(levels.get(level, NEW), learned, curriculum.opened(known))
    return Knowledge(items, levels, tuple(days))
