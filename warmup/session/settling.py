"""When a level was first asked and when it settled: counted in one place, for the page and the report."""

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from typing import NamedTuple

from warmup import skills
from warmup.engine.memory import Knowledge, fold
from warmup.engine.review import CHECKS, Check, Outcome, checked, outcome
from warmup.model import Asked, LevelId, Mark
from warmup.session.context import Context

SETTLED_MEANS = (
    "A step is settled when, in a review week, its topic came easily on two mornings and one of the two "
    "questions was of this step."
)


def asked(history: Iterable[Asked]) -> tuple[Asked, ...]:
    """The lines that count as asked: the question was on screen and was not left that day."""
    return tuple(line for line in history if line.mark is not Mark.SKIPPED)


def known_today(context: Context) -> Knowledge:
    """What the child's history says up to today. Where the clock was ahead once, no more is known."""
    known = context.knowledge()
    if any(day.date > context.today for day in known.days):
        known = fold(context.curriculum(), context.history(context.today + dt.timedelta(1)))
    return known


def year_so_far(context: Context) -> tuple[Asked, ...]:
    """The child's history of this school year, up to today: years lie in a journal, and no other is read."""
    mornings = context.year.mornings
    return context.history(context.today + dt.timedelta(1), mornings[0] if mornings else context.today)


def counted(line: Asked) -> Mark | None:
    """The mark as it counts. A cue was needed: that is hesitation, whatever key was pressed."""
    return Mark.HESITATED if line.mark is Mark.FLUENT and line.cue else line.mark


def level_of(line: Asked) -> LevelId:
    """The level of the item that was asked."""
    return skills.locate(line.item).level_id


class Review(NamedTuple):
    """The checks of one skill in one review week, which began and went on until its last morning so far."""

    week: int
    until: dt.date
    skill: str
    checks: tuple[Check, ...]

    @property
    def outcome(self) -> Outcome:
        """What the checks say."""
        return outcome(tuple(check.easy for check in self.checks))


def reviewed(context: Context, known: Knowledge, last: dt.date) -> Iterator[Review]:
    """What was checked up to ``last``, review after review; ``known`` is what was known then."""
    year, plan = context.year, context.curriculum()
    for week in sorted(context.reviews):
        found = checked(known, plan, week)
        mornings = year.mornings[
            max(0, year.begins(week) - year.before) : max(0, year.ends(week) - year.before)
        ]
        until = max((day for day in mornings if day <= last), default=None)
        if until is not None:
            for skill in sorted(found):
                yield Review(week, until, skill, found[skill])


def settled_on(reviews: Iterable[Review]) -> Mapping[LevelId, dt.date]:
    """The date of the check with which a skill first settled, for the levels its two checks asked."""
    found = dict[LevelId, dt.date]()
    for review in reviews:
        if review.outcome is Outcome.SETTLED:
            pair = review.checks[:CHECKS]
            for check in pair:
                found.setdefault(skills.locate(check.item).level_id, pair[-1].date)
    return found
