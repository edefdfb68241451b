"""Review weeks: two checks for each of at most eight skills, on different mornings, and what they say.

In a review week no level opens; one that a child missed comes a week later. Two checks that come easily: the
skill is settled. Fewer: for two weeks it comes more often, easier things first where neither did.
"""

import datetime as dt
from collections.abc import Collection, Mapping
from enum import Enum
from typing import NamedTuple

from warmup.engine.curriculum import Curriculum
from warmup.engine.memory import Knowledge
from warmup.model import ItemId
from warmup.schoolyear import WEEKS, SchoolYear

CHECKS = 2
MOST_SKILLS = 8
AFTER_FOR = 2
"""For how many weeks after a review a skill that did not settle comes more often."""


class Outcome(Enum):
    """What a review says of a skill so far."""

    SETTLED = "settled"
    PARTLY = "came once out of two"
    AGAIN = "easier first"
    OPEN = "once more to check"


class Check(NamedTuple):
    """One check of a skill: its date, the item it asked, and whether that came easily."""

    date: dt.date
    item: ItemId
    easy: bool


def outcome(marks: tuple[bool, ...]) -> Outcome:
    """The outcome of a skill's checks, of each whether it came easily."""
    if len(marks) < CHECKS:
        return Outcome.OPEN
    easy = sum(marks[:CHECKS])
    return Outcome.SETTLED if easy == CHECKS else Outcome.PARTLY if easy else Outcome.AGAIN


def moved(
    reviews: Collection[int], year: SchoolYear, held: Collection[dt.date], first: int, today: int
) -> tuple[int, ...]:
    """The review weeks, each a week later where it went by on fewer mornings than a skill has checks.

    ``held`` are the dates of warm-ups; ``first`` is the index from which on they are known, ``today`` that of
    today. Nothing was missed before the first warm-up. No review moves into another, or past the last week.
    """
    on = {year.index_of(date) for date in held}
    first = max(first, min(on, default=today))
    found = set(reviews)
    for week in sorted(reviews):
        while (
            first <= year.begins(week) < year.ends(week) <= today
            and sum(index in on for index in range(year.begins(week), year.ends(week))) < CHECKS
            and week < WEEKS
            and week + 1 not in found
        ):
            found = found - {week} | {week + 1}
            week += 1
    return tuple(sorted(found))


def checks(knowledge: Knowledge, curriculum: Curriculum, week: int) -> dict[str, tuple[bool, ...]]:
    """The checks of a week by skill, of each whether it came easily."""
    found = checked(knowledge, curriculum, week).items()
    return {skill: tuple(check.easy for check in each) for skill, each in found}


def checked(knowledge: Knowledge, curriculum: Curriculum, week: int) -> dict[str, tuple[Check, ...]]:
    """The checks of a week by skill: the first mark a skill got on each of its mornings.

    What a family wrote itself is no part of the year, and is not checked.
    """
    found = dict[str, tuple[Check, ...]]()
    first, end = curriculum.year.begins(week), curriculum.year.ends(week)
    for day in knowledge.days:
        if not first <= day.index < end:
            continue
        today = dict[str, Check]()
        for item, easy in day.asked:
            known = curriculum.by_id.get(item)
            if easy is not None and known is not None and not known.own:
                today.setdefault(known.skill, Check(day.date, item, easy))
        for skill, check in today.items():
            found[skill] = (*found.get(skill, ()), check)
    return found


def review_summary(knowledge: Knowledge, curriculum: Curriculum, week: int, titles: Mapping[str, str]) -> str:
    """What the review of a week says so far, for the adult; empty when nothing was checked in it."""
    found: dict[Outcome, list[str]] = {each: [] for each in Outcome}
    for skill, marks in checks(knowledge, curriculum, week).items():
        found[outcome(marks)].append(titles.get(skill, skill).lower())
    parts = [f"{each.value}: {', '.join(sorted(names))}" for each, names in found.items() if names]
    return f"{'; '.join(parts)}." if parts else ""
