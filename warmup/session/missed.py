"""Planned mornings without a warm-up: what is said of them, and which school day today then is.

In family.toml a morning is either off or it was school, so "our lessons are in week 6" is kept as the
mornings that were off: the earliest count as held, the rest as off, until today is in that week.
"""

import datetime as dt
from collections.abc import Collection, Sequence
from typing import NamedTuple

from warmup.config.family import Child, Family, year_of
from warmup.model import DayKind, Morning

MANY = 5
"""From so many on, one question comes first: where the lessons are now."""

WHERE_NOW = "Where are your lessons now?"
TELLS = "School: it counts. Off: the rest of the year moves on by itself. Nothing is marked either way."
"""What the two answers mean."""

Answers = tuple[bool | None, ...]
"""What was said of each missed morning in order: True for off, False for school, None for nothing yet."""


class Missed(NamedTuple):
    """The mornings without a warm-up, oldest first, of a child of the family today."""

    family: Family
    child: Child
    today: dt.date
    days: tuple[dt.date, ...]

    def morning(self, off: Collection[dt.date]) -> Morning:
        """What today is with these of them off."""
        ranges = (*self.family.off, *((day, day) for day in off))
        return year_of(self.family._replace(off=ranges), self.child).morning(self.today)

    def today_words(self, off: Collection[dt.date]) -> str:
        """Which school day and week that makes it: "school day 21, week 6"."""
        morning = self.morning(off)
        counted = "school day" if morning.kind is DayKind.SCHOOL else "school days so far:"
        return f"{counted} {morning.school_day}, week {morning.week}"

    def weeks(self) -> range:
        """The weeks today can be in: from all of the mornings off to all of them held."""
        return range(self.morning(self.days).week, self.morning(()).week + 1)

    def off_for(self, week: int) -> tuple[dt.date, ...]:
        """Which of them are off when today is in this week, on the earliest day of it that can be."""
        fewest, most = 0, len(self.days)
        while fewest < most:
            held = (fewest + most) // 2
            if self.morning(self.days[held:]).week < week:
                fewest = held + 1
            else:
                most = held
        return self.days[fewest:]

    def by_week(self) -> tuple[tuple[int, ...], ...]:
        """The places of the days, a calendar week together."""
        weeks: dict[dt.date, list[int]] = {}
        for at, day in enumerate(self.days):
            weeks.setdefault(_monday(day), []).append(at)
        return tuple(map(tuple, weeks.values()))


def _monday(date: dt.date) -> dt.date:
    return date - dt.timedelta(date.weekday())


Rows = Sequence[Sequence[int]]
"""Which days stand in each row on screen, by their places."""


class Talk(NamedTuple):
    """What was said so far, and where the cursor is; ``asking`` while the question about ``week`` stands."""

    missed: Missed
    answers: Answers
    week: int
    asking: bool
    cursor: int = 0

    @property
    def question(self) -> str:
        """What is asked of them, or what is so where the question is about the week."""
        if self.asking:
            return f"{len(self.answers)} mornings have no warm-up."
        return "No warm-up on these mornings: school, or off?"

    @property
    def off(self) -> tuple[dt.date, ...]:
        """The mornings that are off as it stands."""
        if self.asking:
            return self.missed.off_for(self.week)
        return tuple(day for day, off in zip(self.missed.days, self.answers, strict=True) if off)

    @property
    def open_still(self) -> int:
        """How many mornings nothing was said of yet; the one question answers them all."""
        return 0 if self.asking else self.answers.count(None)

    def step(self, what: str, rows: Rows) -> "Talk":
        """After one step: a move (``up``, ``down``, ``left``, ``right``) or a word about the days."""
        match what:
            case "left" | "down" if self.asking:
                return self._replace(week=max(self.week - 1, self.missed.weeks()[0]))
            case "right" | "up" if self.asking:
                return self._replace(week=min(self.week + 1, self.missed.weeks()[-1]))
            case "left":
                return self._replace(cursor=max(0, self.cursor - 1))
            case "right":
                return self._replace(cursor=min(len(self.answers) - 1, self.cursor + 1))
            case "up" | "down":
                return self._replace(cursor=_beside(rows, self, -1 if what == "up" else 1))
            case "by_day":
                return self._replace(asking=False)
            case "question":
                return self._replace(asking=len(self.answers) >= MANY)
            case "change" if not self.asking:
                # From nothing to school, to off, and back to school.
                at, new = self.cursor, self.answers[self.cursor] is False
                return self._replace(answers=(*self.answers[:at], new, *self.answers[at + 1 :]))
            case "all_off" | "all_school" if not self.asking:
                return self._replace(answers=(what == "all_off",) * len(self.answers))
            case "first_open" if self.open_still:
                return self._replace(cursor=self.answers.index(None))
        return self


def begin(missed: Missed) -> Talk:
    """Nothing said yet. Many mornings begin with one question: are the lessons still where they were?"""
    unsaid: Answers = (None,) * len(missed.days)
    return Talk(missed, unsaid, missed.weeks()[0], asking=len(missed.days) >= MANY)


def _beside(rows: Rows, talk: Talk, step: int) -> int:
    """The place nearest by weekday in the row below (``step`` 1) or above (-1); its own at the edge."""
    at, days = talk.cursor, talk.missed.days
    row = next(n for n, places in enumerate(rows) if at in places)
    if not 0 <= row + step < len(rows):
        return at
    return min(rows[row + step], key=lambda place: abs(days[place].weekday() - days[at].weekday()))
