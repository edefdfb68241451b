"""What a child knows, folded from the marks.

Each item has one number, its *interval*: how many mornings it can rest. Time is counted in planned
mornings, so a missed morning counts and a weekend does not. The rule, in the adult's words: came
easily, and it rests about three times as long; hesitated, and it is due back in two mornings; not
yet, and it is due back the next.
"""

import datetime as dt
from collections.abc import Collection, Iterable, Mapping
from itertools import groupby
from operator import attrgetter
from types import MappingProxyType
from typing import NamedTuple

from warmup.engine.curriculum import NO_REVIEWS, Curriculum, Reviews
from warmup.model import Asked, ItemId, Mark, skill_and_name

START_INTERVAL = 4.0
SHORTEST, LONGEST = 1.0, 72.0
KEPT = 0.85
"""The estimated chance of an easy answer when an item has rested exactly its interval."""

RETEACH = 3
"""After so many not yet running, an item is taught again rather than asked again."""


class Record(NamedTuple):
    """What is known of one item.

    ``interval`` is in mornings. ``last`` and ``due_at`` are morning indexes: of the last mark, and of the
    morning it is due back (None when nothing is due_at). ``run`` counts fluent marks running, ``misses``
    not yet running, ``marks`` all that count. ``shown`` counts every time it was on screen.
    """

    interval: float = START_INTERVAL
    last: int | None = None
    due_at: int | None = None
    mark: Mark | None = None
    marked_on: dt.date | None = None
    run: int = 0
    misses: int = 0
    marks: int = 0
    shown: int = 0
    shown_on: dt.date | None = None
    wording: str = ""

    def overdue(self, index: int, opened: int) -> float:
        """How long it has rested, in intervals: 1.0 is just due. ``opened`` is the index it unlocked at."""
        since = self.last if self.last is not None else opened - 1
        return max(0, index - since) / self.interval

    def chance(self, index: int, opened: int) -> float:
        """The estimated chance, 0 to 1, that it comes easily on this morning."""
        return float(KEPT ** self.overdue(index, opened))


NEW = Record()
"""The record of an item that was never on screen."""


class Day(NamedTuple):
    """How one morning went: its date, and how many of its marks were fluent."""

    date: dt.date
    fluent: int
    marked: int


class Checked(NamedTuple):
    """How a skill went in its last review week.

    ``week`` is 1 to 36; ``marks`` says of each morning of that week it was asked on whether it came easily,
    by its first mark; ``last`` is the index of the last of these mornings, ``item`` what was asked then and
    ``hands`` whether with things on the table. ``since`` counts the later mornings it was asked on, up to
    ``last_since``.
    """

    week: int
    marks: tuple[bool, ...]
    last: int
    item: ItemId
    hands: bool
    since: int = 0
    last_since: int = -1


class Knowledge(NamedTuple):
    """All that memory holds of a child: a record an item, the last mornings, newest last, and by skill
    what its last review week said. ``reviews`` are the review weeks of the year it was folded by."""

    records: Mapping[ItemId, Record] = MappingProxyType({})
    days: tuple[Day, ...] = ()
    checks: Mapping[str, Checked] = MappingProxyType({})
    reviews: Reviews = NO_REVIEWS

    def of(self, item: ItemId) -> Record:
        """The item's record; that of a new one if it was never shown."""
        return self.records.get(item, NEW)


def learn(record: Record, asked: Asked, index: int, opened: int, guess: float = 0.0) -> Record:
    """The record after one more line of history, on the morning with this index.

    ``opened`` is the index of the morning the item unlocked; ``guess`` its chance of a lucky answer,
    which slows the growth, since such a success proves less.
    """
    if asked.mark is None or asked.mark is Mark.SKIPPED:
        return _shown(record, asked)
    # A cue was needed: that is hesitation, whatever key was pressed.
    mark = Mark.HESITATED if asked.mark is Mark.FLUENT and asked.cue else asked.mark
    weight = 0.5 if asked.from_memory else 1.0
    interval, due_at, run, misses = record.interval, None, 0, 0
    match mark:
        case Mark.FLUENT:
            since = record.last if record.last is not None else opened - 1
            grown = _grown(interval, float(max(0, index - since)))
            interval, run = _within(interval + (grown - interval) * weight * (1.0 - guess)), record.run + 1
        case Mark.HESITATED:
            due_at = index + 2
        case Mark.NOT_YET:
            interval = interval if asked.rough else _within(interval * (1.0 - 0.5 * weight))
            due_at, misses = index + 1, record.misses + (not asked.rough)
    # Built in one go and by place: a year of history is folded before the first frame.
    return Record(
        interval,
        index,
        due_at,
        mark,
        asked.date,
        run,
        misses,
        record.marks + 1,
        record.shown + 1,
        asked.date,
        asked.wording,
    )


def _shown(record: Record, asked: Asked) -> Record:
    """The record after a prompt that was on screen and got no mark that counts."""
    return record._replace(shown=record.shown + 1, shown_on=asked.date, wording=asked.wording)


def _grown(interval: float, rested: float) -> float:
    """An early success proves little and a late one more; a very late one is bounded."""
    return interval + 2 * rested if rested <= interval else 3 * min(rested, 2 * interval)


def _within(interval: float) -> float:
    return min(LONGEST, max(SHORTEST, interval))


def fold(curriculum: Curriculum, history: Iterable[Asked], before: Knowledge | None = None) -> Knowledge:
    """Everything history tells, in order of time, on top of what was known ``before``."""
    before = before or Knowledge()
    unlocks, guesses, reviews = curriculum.unlocks, curriculum.guesses, curriculum.reviews
    records, checks, days = dict(before.records), dict(before.checks), list(before.days)
    since: dict[str, set[int]] = {}
    for date, lines in groupby(history, attrgetter("date")):
        index = curriculum.year.index_of(date)
        week = index // reviews.mornings_a_week + 1 if reviews else 0
        fluent = marked = 0
        for asked in lines:
            item, mark = asked.item, asked.mark
            record = records.get(item, NEW)
            records[item] = learn(record, asked, index, unlocks.get(item, 0), guesses.get(item, 0.0))
            if mark is None or mark is Mark.SKIPPED:
                continue
            easy = mark is Mark.FLUENT and not asked.cue
            fluent, marked = fluent + easy, marked + 1
            if reviews:
                skill = skill_and_name(item)[0]
                if week in reviews.weeks:
                    checks[skill] = _check(checks.get(skill), week, index, easy, item, item in reviews.hands)
                    since.pop(skill, None)
                elif skill in checks:
                    since.setdefault(skill, set()).add(index)
        _count(days, Day(date, fluent, marked))
    for skill, mornings in since.items():
        checks[skill] = _asked_since(checks[skill], mornings)
    return Knowledge(records, tuple(days[-4:]), checks, reviews or before.reviews)


def _count(days: list[Day], day: Day) -> None:
    """Add a day's marks, to the last day where that is the same."""
    if days and days[-1].date == day.date:
        last = days.pop()
        day = Day(day.date, last.fluent + day.fluent, last.marked + day.marked)
    if day.marked:
        days.append(day)


def _asked_since(checked: Checked, mornings: Collection[int]) -> Checked:
    """A skill's checks with the mornings it was asked on after them."""
    later = [index for index in mornings if index > checked.last_since]
    if not later:
        return checked
    return checked._replace(since=checked.since + len(later), last_since=max(later))


def _check(before: Checked | None, week: int, index: int, easy: bool, item: ItemId, hands: bool) -> Checked:
    """A skill's checks with one more mark of a review week; only the first of a morning counts."""
    if before is None or before.week != week:
        return Checked(week, (easy,), index, item, hands)
    if before.last == index:
        return before
    return Checked(week, (*before.marks, easy), index, item, hands)
