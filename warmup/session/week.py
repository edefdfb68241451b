"""A week of the lessons: its mornings, what opens on each, what is reviewed, and what to gather.

Every level of the plan belongs to one week of the 36. That is the week the plan gives it, or where that is
skipped the one after it; for what was opened early the week in which it was first asked, or this one; for
what is held back this week, once its own has come; and this week too for what waited and comes in it.
"""

import datetime as dt
from collections.abc import Collection, Iterator, Mapping, Sequence
from enum import Enum
from itertools import takewhile
from typing import NamedTuple

from warmup import skills
from warmup.english import WEEKDAYS, date_words
from warmup.model import OWN_SKILL, LevelId, is_own, skill_and_name
from warmup.schoolyear import WEEKS, WEEKS_A_QUARTER, SchoolYear
from warmup.session.ahead import Ahead
from warmup.session.context import Context
from warmup.session.things import Gather, Thing, gather
from warmup.session.words import has_small_things

MAY_CHANGE = "What is to come may still change."
_DAY = dt.timedelta(1)


class When(Enum):
    """How a day of the page stands to today."""

    PAST = "past"
    TODAY = "today"
    TO_COME = "to come"
    OFF = "off"


class Lesson(Enum):
    """What the family says of a level's own lesson: its tick."""

    TAUGHT = "taught"
    NOT_TAUGHT = "not taught yet"
    UNSAID = ""


class Day(NamedTuple):
    """A morning, or the school weekdays that are off from ``first`` to ``last``.

    ``reviewed`` are the ids of the skills that a morning of a review week checks, or has checked.
    """

    first: dt.date
    last: dt.date
    when: When
    reviewed: tuple[str, ...] = ()

    def words(self) -> str:
        """The day: "Tuesday, March 2"; of a stretch the first and the last."""
        until = f" to {date_words(self.last)}" if self.last > self.first else ""
        return f"{date_words(self.first)}{until}"

    def review_words(self) -> str:
        """What is reviewed on it, by the names of the skills."""
        return ", ".join(map(_title, self.reviewed))


class New(NamedTuple):
    """A level on the page of its week.

    ``week`` is the one of the plan. ``day`` is the morning on which it was first asked, or is likely to be;
    None where there is none in this week. ``asked`` says that something of it was on screen already.
    """

    level: LevelId
    title: str
    label: str
    week: int
    day: dt.date | None
    lesson: Lesson
    asked: bool

    def named(self) -> str:
        """What it is called."""
        return f"{self.title}: {self.label}"

    def words(self) -> str:
        """What it is called, with its tick in words."""
        return f"{self.named()}{f' · {self.lesson.value}' if self.lesson.value else ''}"


def _title(skill: str) -> str:
    if skill == OWN_SKILL:
        from warmup.skills.own import skill as own_skill  # few families have any

        return own_skill().title.lower()
    return skills.SKILLS[skill].title.lower()


class Group(NamedTuple):
    """Levels of the page that stand together: those of a ``day``, or under a ``heading``."""

    heading: str
    new: tuple[New, ...]
    day: Day | None = None


class WeekPage(NamedTuple):
    """All of it.

    ``distance`` is how many weeks it lies ahead of today's, below 0 behind it. ``note`` says why it has no
    morning; empty where it has.
    """

    week: int
    quarter: int
    review: bool
    distance: int
    days: tuple[Day, ...]
    new: tuple[New, ...]
    things: Gather
    note: str = ""

    @property
    def small_things(self) -> bool:
        """Whether something of it is small enough to choke on."""
        return has_small_things(*(thing.name for things in self.things for thing in things))

    def parts(self) -> list[str]:
        """Which week it is: "Week 25 of 36", "quarter 3", "this week"."""
        review, now = ["review"] * self.review, ["this week"] * (self.distance == 0)
        return [f"Week {self.week} of {WEEKS}", f"quarter {self.quarter}", *review, *now]

    def groups(self) -> Iterator[Group]:
        """The days in order, each with what is new on it, then what has no day here."""
        for day in self.days:
            on_it = (row for row in self.new if row.day and day.when is not When.OFF)
            yield Group(day.words(), tuple(row for row in on_it if row.day == day.first), day)
        if self.note:
            yield Group(self.note, ())
        without = [row for row in self.new if row.day is None]
        held = tuple(row for row in without if row.lesson is Lesson.NOT_TAUGHT)
        others = tuple(row for row in without if row.lesson is not Lesson.NOT_TAUGHT)
        if others:
            yield Group("Opened in that week" if self.distance < 0 else "When there is room", others)
        if held:
            yield Group("Held back until it was taught", held)

    def by_day(self, things: Sequence[Thing]) -> Iterator[tuple[str, str]]:
        """What to have ready for each morning, by what it is called: "Tuesday", "cups, toast"."""
        for day in dict.fromkeys(thing.first for thing in things):
            yield self.day_name(day), ", ".join(thing.name for thing in things if thing.first == day)

    def day_name(self, date: dt.date) -> str:
        """Today, the weekday of a morning, or its date where the page has another of that weekday."""
        if any(day.first == date and day.when is When.TODAY for day in self.days):
            return "today"
        mornings = [day.first for day in self.days if day.when is not When.OFF]
        alone = [each.weekday() for each in mornings].count(date.weekday()) == 1
        return WEEKDAYS[date.weekday()] if alone else date_words(date)


class Weeks:
    """The weeks of one child's year as they stand; to be made anew when anything has changed.

    FileProblem where a routine file can't be read.
    """

    def __init__(self, context: Context) -> None:
        self._context, self._year, self._ahead = context, context.year, Ahead(context)
        self.this_week = context.morning().week
        self._asked = _first_asked(context)
        mornings = self._mornings(self.this_week)
        self._ahead.until(mornings[-1] if mornings else context.today)
        coming = {level for level, day in self._ahead.first_asked.items() if day in mornings}
        planned = context.plan.weeks
        own = filter(is_own, planned)
        levels = [*(level for level in skills.levels() if level in planned), *own]
        self._week_of = {level: self._week(level, coming) for level in levels}

    def _week(self, level: LevelId, coming: Collection[LevelId]) -> int:
        """The week on whose page a level stands; ``coming`` are those that this week's mornings ask."""
        context, week = self._context, self._context.plan.weeks[level]
        opens, first = _opens(self._year, week), self._asked.get(level)
        if level in context.child.held:
            return max(opens, self.this_week)
        if first is not None:
            return min(opens, self._year.morning(first).week)
        if level in context.child.opened:
            return min(opens, self.this_week)
        # Before the family began nothing waited: what comes of that is a sample.
        waited = level in coming and week >= context.curriculum().since
        return self.this_week if waited else opens

    def page(self, week: int, also: Collection[LevelId] = ()) -> WeekPage:
        """The page of a week, 1 to 36; ``also`` are levels that stand on it besides."""
        context, mornings = self._context, self._mornings(week)
        chosen = self._ahead.until(mornings[-1]) if mornings else {}
        review = week in context.reviews
        reviewed = self._reviewed(mornings) if review else {}
        return WeekPage(
            week,
            (week - 1) // WEEKS_A_QUARTER + 1,
            review,
            week - self.this_week,
            tuple(self._days(mornings, reviewed)),
            tuple(
                self._new(level, mornings)
                for level, its_week in self._week_of.items()
                if its_week == week or level in also
            ),
            gather({day: chosen[day] for day in mornings if day in chosen}),
            "" if mornings else self._without_mornings(week),
        )

    def _without_mornings(self, week: int) -> str:
        """Why a week has none."""
        if self._year.begins(week) == self._year.ends(week):
            return "This week is skipped: what it opens comes in the week after it"
        if self._year.begins(week) < self._year.before:
            return "Your year began after this week"
        return "Your year has no mornings left for this week"

    def _mornings(self, week: int) -> tuple[dt.date, ...]:
        """The mornings of a week that lie in the family's year; none of one that is skipped."""
        year = self._year
        first, end = (max(0, index - year.before) for index in (year.begins(week), year.ends(week)))
        return year.mornings[first:end]

    def _days(
        self, mornings: Sequence[dt.date], reviewed: Mapping[dt.date, tuple[str, ...]]
    ) -> Iterator[Day]:
        """The mornings, and before each what is off between it and the one before."""
        today = self._context.today
        for date in mornings:
            before = self._year.morning(date).previous
            off = _weekdays_between(self._year, before, date) if before else []
            if off:
                yield Day(off[0], off[-1], When.OFF)
            when = When.PAST if date < today else When.TODAY if date == today else When.TO_COME
            yield Day(date, date, when, reviewed.get(date, ()))

    def _new(self, level: LevelId, mornings: Sequence[dt.date]) -> New:
        child, at = self._context.child, skills.plain(level)
        first = self._asked.get(level) or self._ahead.first_asked.get(level)
        held, early = level in child.held, level in child.opened
        return New(
            level,
            at.skill.title,
            at.level.label,
            self._context.plan.weeks[level],
            first if first in mornings and not held else None,
            Lesson.NOT_TAUGHT if held else Lesson.TAUGHT if early else Lesson.UNSAID,
            level in self._asked,
        )

    def _reviewed(self, mornings: Sequence[dt.date]) -> dict[dt.date, tuple[str, ...]]:
        """The skills that each of these mornings has checked, or those it would ask."""
        found: dict[dt.date, dict[str, None]] = {day: {} for day in mornings}
        for line in self._context.history(since=mornings[0]) if mornings else ():
            if line.date in found and line.marked:
                found[line.date][skill_and_name(line.item)[0]] = None
        for day, prompts in self._ahead.until(mornings[-1]).items() if mornings else ():
            if day in found:
                found[day].update(dict.fromkeys(prompt.skill for prompt in prompts))
        return {day: tuple(names) for day, names in found.items()}


def _first_asked(context: Context) -> dict[LevelId, dt.date]:
    """The day on which something of each level was first on screen; any of those before the school year.

    Memory has them all; only those of the school year are read for their very day.
    """
    planned, found = context.curriculum().by_id, dict[LevelId, dt.date]()
    for day in takewhile(lambda day: day.index < 0, context.knowledge().days):
        for item in {item for item, _ in day.asked} & planned.keys():
            found.setdefault(planned[item].level_id, day.date)
    mornings = context.year.mornings
    for line in context.history(since=mornings[0] if mornings else None):
        if line.item in planned:
            found.setdefault(planned[line.item].level_id, line.date)
    return found


def _opens(year: SchoolYear, week: int) -> int:
    """The week in which a level of this one opens: where it is skipped the one after it."""
    return week if year.begins(week) < year.ends(week) else year.week_at(year.begins(week))


def _weekdays_between(year: SchoolYear, after: dt.date, before: dt.date) -> list[dt.date]:
    """The school weekdays that lie between two mornings that follow one another."""
    days = (after + _DAY * n for n in range(1, (before - after).days))
    return [day for day in days if day.weekday() in year.weekdays]
