"""How a morning is picked: an ordered table of rules, the most pressing first. Each takes a few candidates.

A rule never breaks a limit of :mod:`picking`; it takes what it may, and the next rule goes on.
"""

from collections.abc import Callable, Iterable
from typing import NamedTuple

from warmup.engine import review
from warmup.engine.picking import Today
from warmup.engine.pool import ENOUGH, Candidate
from warmup.engine.review import Outcome
from warmup.engine.targets import DAILY_ADDING_FROM, NUMBER_SHARE, NUMBER_WORK, SHARES, WEEKLY, YEARLY
from warmup.model import SlotKind, Strand
from warmup.schoolyear import WEEKS

CLOSE_FROM = 0.85
"""What closes a morning came easily the last time, and is as likely as this to do so again."""
SKILL_RESTS = 14
"""After so many mornings without it a skill comes again."""
SLACK = 2.4
"""By so many points of a quarter's prompts a strand may be off its share before the rules see to it."""
LATELY = 4
"""Over so many mornings it is judged whether a third wobbled."""


class Rule(NamedTuple):
    """One row: its ``name``, the slot its picks stand in, ``which`` candidates in their order, and how many.

    ``which`` gives none on a morning the rule has no say on.
    """

    name: str
    slot: SlotKind
    which: Callable[[Today], Iterable[Candidate]]
    most: int


def _timely(today: Today) -> Iterable[Candidate]:
    """What the day itself asks for: there is one hundredth day a year."""
    return (c for c in today.pool.all if c.item.id in today.pool.timely)


def _named(today: Today) -> Iterable[Candidate]:
    """What the routine file names, each slot as often as it says."""
    for slot in today.shape.slots:
        if slot.kind is SlotKind.NAMED:
            mine = [c for c in today.pool.all if {c.item.skill, c.item.level_id} & set(slot.only)]
            full = sum(pick.candidate in mine for pick in today.picks) + slot.most
            yield from (c for c in mine if sum(pick.candidate in mine for pick in today.picks) < full)


def _closes(today: Today) -> Iterable[Candidate]:
    """Of what may end a morning the most overdue that is likely; else the likeliest of all."""
    able = [c for c in today.pool.all if not c.hard and not c.new and not c.stumbled]
    likely = [c for c in able if c.item.ends and c.chance >= CLOSE_FROM]
    yield from sorted(likely, key=lambda c: -c.overdue)
    yield from sorted(able, key=lambda c: (not c.item.ends, -c.chance))


def _begins(today: Today, *, kindergarten: bool) -> list[Candidate]:
    """The levels never asked, the longest open first."""
    able = [c for c in today.pool.all if c.begins and c.item.kindergarten is kindergarten]
    return sorted(able, key=lambda c: -today.pool.rested(c))


def _first_times(today: Today) -> Iterable[Candidate]:
    """Levels with a kindergarten code."""
    return _begins(today, kindergarten=True)


def _too_few(today: Today) -> Iterable[Candidate]:
    """Levels with a kindergarten code that were asked less than their part of the year so far wants."""
    last = today.pool.curriculum.year.begins(WEEKS)
    behind = list[tuple[float, Candidate]]()
    for c in today.pool.all:
        if c.item.kindergarten and 0 < c.level.marks < ENOUGH and today.pool.rested(c) >= 2:
            opened = today.pool.curriculum.opened(c.item)
            gone = (today.index - opened) / max(1, last - opened)
            if c.level.marks < ENOUGH * gone:
                behind.append((c.level.marks / ENOUGH - gone, c))
    return (c for _, c in sorted(behind, key=lambda pair: pair[0]))


def _rested(today: Today) -> Iterable[Candidate]:
    """Skills that rested too long, the longest first."""
    rests = today.pool.rests
    able = [c for c in today.pool.all if rests[c.item.skill] >= SKILL_RESTS]
    return sorted(able, key=lambda c: -rests[c.item.skill])


def _holding(today: Today) -> Iterable[Candidate]:
    """Shaky things that other levels wait for."""
    return (c for c in today.pool.all if c.item.id in today.pool.holding)


def _checks(today: Today) -> Iterable[Candidate]:
    """In a review week the checks: shaky skills first, then those whose levels are newest; eight at most.

    In its second half the second checks go first, since one alone says little. What a family wrote itself is
    never checked.
    """
    if not today.morning.review:
        return ()
    done = review.checks(today.pool.knowledge, today.pool.curriculum, today.morning.week)
    half = 2 * (today.index % today.morning.mornings_a_week) >= today.morning.mornings_a_week
    shaky = {c.item.skill for c in today.pool.all if c.stumbled}
    best = dict[str, Candidate]()
    for c in today.pool.all:
        if not c.begins and not c.item.own:
            best.setdefault(c.item.skill, c)
    room = review.MOST_SKILLS - len(done)
    first = [c for c in best.values() if c.item.skill not in done]
    first = sorted(first, key=lambda c: (c.item.skill not in shaky, -c.item.week, c.tie))[: max(0, room)]
    again = [c for c in best.values() if len(done.get(c.item.skill, (True,) * review.CHECKS)) < review.CHECKS]
    return [*again, *first] if half else [*first, *again]


def _after_review(today: Today) -> Iterable[Candidate]:
    """What did not settle in the last review: twice a week, easier things first where no check came."""
    week, pool = today.morning.week, today.pool
    last = max((each for each in pool.curriculum.reviews if each < week), default=0)
    if not last or week - last > review.AFTER_FOR or today.morning.review:
        return
    for skill, marks in sorted(review.checks(pool.knowledge, pool.curriculum, last).items()):
        found = review.outcome(marks)
        if found in (Outcome.PARTLY, Outcome.AGAIN) and pool.rests.get(skill, 0) >= 2:
            mine = [c for c in pool.all if c.item.skill == skill and not c.begins]
            easier = found is Outcome.AGAIN
            yield from sorted(mine, key=lambda c: (c.item.level, not c.item.hands) if easier else (0, False))


def wobbled_lately(today: Today) -> bool:
    """Whether more than a third of the last mornings' marks did not come easily."""
    marks = [easy for day in today.pool.knowledge.days[-LATELY:] for easy in day.easy]
    return 3 * (len(marks) - sum(marks)) > len(marks)


def _stumbles(today: Today) -> Iterable[Candidate]:
    """What was hesitated on or not yet, when a third wobbled lately: before levels beyond kindergarten."""
    return [c for c in today.pool.all if c.stumbled] if wobbled_lately(today) else ()


def _first_beyond(today: Today) -> Iterable[Candidate]:
    """Levels without a kindergarten code."""
    return _begins(today, kindergarten=False)


def _weekly(today: Today) -> Iterable[Candidate]:
    """In the second half of a week, what should come every week and has not come in this one."""
    a_week, items = today.morning.mornings_a_week, today.pool.curriculum.by_id
    place = today.index % a_week
    if 2 * place < a_week:
        return
    days = [day for day in today.pool.knowledge.days[-a_week:] if day.index >= today.index - place]
    done = [items[item] for day in days for item, _ in day.asked if item in items]
    for often in WEEKLY:
        for c in (c for c in today.pool.all if often.holds(c.item)):
            # Looked at before each: once one is taken, a second would be more of the same on one morning.
            if any(often.holds(item) for item in (*done, *(pick.item for pick in today.picks))):
                break
            yield c


def _strand(today: Today, strand: Strand) -> Iterable[Candidate]:
    """One of the strand on a morning that has none of it."""
    return () if today.of_strand(strand.value) else today.pool.of_strand(strand.value)


def _calendar(today: Today) -> Iterable[Candidate]:
    """Something of the day, every morning."""
    return _strand(today, Strand.CALENDAR)


def _counting(today: Today) -> Iterable[Candidate]:
    """Something of counting, where the routine file wants it."""
    return _strand(today, Strand.COUNTING)


def _adding(today: Today) -> Iterable[Candidate]:
    """Something of adding, every morning from week 12 on."""
    return _strand(today, Strand.ADDING) if today.morning.week >= DAILY_ADDING_FROM else ()


def _yearly(today: Today) -> Iterable[Candidate]:
    """What should come so often in the year and is behind."""
    pool, last = today.pool, today.pool.curriculum.year.ends(WEEKS)
    for often, a_year in YEARLY:
        mine = (pool.curriculum.opened(i) for i in pool.curriculum.items if often.holds(i))
        opened = min(mine, default=last)
        items = pool.curriculum.by_id
        asked = sum(times for item, times in today.this_year.items() if often.holds(items[item]))
        asked += sum(often.holds(pick.item) for pick in today.picks)
        if opened <= today.index and asked * (last - opened) < a_year * (today.index + 1 - opened):
            yield from (c for c in pool.all if often.holds(c.item))


def _shares(today: Today) -> Iterable[Candidate]:
    """Strands that are behind their share of the quarter, the most behind first."""
    behind = {strand: points for strand, points in today.behind.items() if points > SLACK}
    able = [c for c in today.pool.all if c.item.strand in behind]
    return sorted(able, key=lambda c: -behind[c.item.strand])


def _new_ways(today: Today) -> Iterable[Candidate]:
    """What was never asked of levels that have begun, but of strands that have had enough."""
    return (c for c in _older(today) if c.new)


def _older(today: Today) -> Iterable[Candidate]:
    """What is due, the most overdue first, but of strands ahead of their share; number work where it lags."""
    enough = {strand for strand, points in today.behind.items() if points < -SLACK}
    if today.number_share < NUMBER_SHARE:
        enough.update(strand for strand in SHARES if strand not in NUMBER_WORK)
    return (c for c in today.pool.all if c.item.strand not in enough and not c.begins)


def _any(today: Today) -> Iterable[Candidate]:
    """Whatever the limits allow, so that no place is left empty."""
    return today.pool.all


RULES = (
    Rule("timely", SlotKind.CALENDAR, _timely, 1),
    Rule("named", SlotKind.NAMED, _named, 12),
    Rule("close", SlotKind.SURE, _closes, 1),
    Rule("first times", SlotKind.NEWEST, _first_times, 2),
    Rule("too few", SlotKind.OLDER, _too_few, 2),
    Rule("weekly", SlotKind.OLDER, _weekly, 3),
    Rule("rested", SlotKind.OLDER, _rested, 1),
    Rule("stumbles", SlotKind.WOBBLED, _stumbles, 1),
    Rule("first beyond", SlotKind.NEWEST, _first_beyond, 2),
    Rule("yearly", SlotKind.OLDER, _yearly, 1),
    Rule("shares", SlotKind.OLDER, _shares, 2),
    Rule("holding", SlotKind.WOBBLED, _holding, 1),
    Rule("new ways", SlotKind.OLDER, _new_ways, 1),
    Rule("calendar", SlotKind.CALENDAR, _calendar, 1),
    Rule("adding", SlotKind.ADDING, _adding, 1),
    Rule("checks", SlotKind.CHECK, _checks, 4),
    Rule("after review", SlotKind.WOBBLED, _after_review, 1),
    Rule("counting", SlotKind.COUNTING, _counting, 1),
    Rule("older", SlotKind.OLDER, _older, 12),
    Rule("any", SlotKind.OLDER, _any, 12),
)
