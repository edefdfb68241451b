"""The year as it lies before a family: its weeks, what is in one of them, and what a day is.

Values only; the screen and ``warmup year`` both show them.
"""

import datetime as dt
from collections import Counter
from collections.abc import Iterator, Mapping
from enum import Enum
from typing import NamedTuple

from warmup import skills
from warmup.config import family as families
from warmup.config.family import CountdownRule, Family
from warmup.engine import eligibility
from warmup.english import date_words, listed, number_word, plural
from warmup.model import DayKind, LevelId, Morning
from warmup.schoolyear import WEEKS, SchoolYear
from warmup.session.context import Context

_DAY = dt.timedelta(1)


class DayMark(Enum):
    """What a day of the year looks like in a row of them: told apart by its form."""

    PAST = "■"
    TODAY = "▣"
    AHEAD = "□"
    OFF = "–"
    FREE = "◇"
    """Today, where it is no school day."""


class WeekState(Enum):
    """Where a week stands today."""

    BEFORE = "before you began"
    PAST = "past"
    NOW = "now"
    AHEAD = "to come"
    SKIPPED = "skipped"


class WeekDay(NamedTuple):
    """A school day, a school weekday that is ``off``, or today whatever it is."""

    date: dt.date
    mark: DayMark
    off: bool = False


class WeekRow(NamedTuple):
    """A school week by the week of its lessons, 1 to 36; or a week of lessons that has none.

    ``again`` is 0 for its first school week, 1 for the second where it is held, and so on. ``days`` are its
    mornings and the school weekdays off around them. ``opens`` is how many levels open in it.
    """

    week: int
    state: WeekState
    again: int = 0
    days: tuple[WeekDay, ...] = ()
    review: bool = False
    opens: int = 0

    @property
    def mornings(self) -> tuple[dt.date, ...]:
        """The dates of its mornings."""
        return tuple(day.date for day in self.days if day.mark not in (DayMark.OFF, DayMark.FREE))

    @property
    def off(self) -> int:
        """How many days off there are in it."""
        return sum(day.off for day in self.days)

    @property
    def name(self) -> str:
        """What it is called: "week 19", "week 19 again"."""
        return f"week {self.week}{' again' * bool(self.again)}"

    def dates(self) -> str:
        """Its first and its last morning, or why it has none: "Jan 11 to Jan 14"."""
        if not self.mornings:
            return self.state.value
        first, last = (date_words(self.mornings[at], weekday=False, short=True) for at in (0, -1))
        return first if first == last else f"{first} to {last}"

    def marks(self) -> str:
        """A mark for each morning, and one for each stretch of days off."""
        runs = [day for at, day in enumerate(self.days) if not (at and self._still_off(at))]
        return "".join(day.mark.value for day in runs)

    def _still_off(self, at: int) -> bool:
        return self.days[at].mark is self.days[at - 1].mark is DayMark.OFF

    def new(self) -> str:
        """What comes in it: "3 new", "review", or nothing."""
        return "review" if self.review else f"{self.opens} new" if self.opens else ""

    def told(self) -> str:
        """All of it in a line of words."""
        off = f"{self.off} {plural(self.off, 'day')} off" if self.off else ""
        new = "review, nothing new" if self.review else self.new() or "nothing new"
        return " · ".join(filter(None, (self.name.capitalize(), self.dates(), off, new)))


class YearView(NamedTuple):
    """The weeks of the year in order, the place of today's, and the last morning if there is one."""

    rows: tuple[WeekRow, ...]
    now: int
    last: dt.date | None

    def place_of(self, week: int, again: int = 0) -> int:
        """Where a week stands; where it does not come so often any more its last time counts."""
        places = [at for at, row in enumerate(self.rows) if row.week == week]
        return places[min(again, len(places) - 1)]


def year_view(context: Context) -> YearView:
    """The year of the context's child as it stands today."""
    year, plan, today = context.year, context.plan, context.today
    opening = Counter(plan.weeks.values())
    rows: list[WeekRow] = []
    now = year.school_week(today)
    place = 0
    for week in range(1, WEEKS + 1):
        places = [at for at, each in enumerate(year.weeks) if each == week]
        for again, at in enumerate(places):
            days = tuple(_days(context, at))
            state = WeekState.NOW if at == now else WeekState.AHEAD if at > now else WeekState.PAST
            if at < year.before // year.mornings_a_week:
                state = WeekState.BEFORE
            if state is WeekState.NOW or (at == len(year.weeks) - 1 and now > at):
                place = len(rows)
            opens = 0 if again else opening[week]
            rows.append(WeekRow(week, state, again, days, week in context.reviews, opens))
        if not places:
            rows.append(WeekRow(week, WeekState.SKIPPED, 0, (), week in context.reviews, opening[week]))
    return YearView(tuple(rows), place, last_day(year))


def last_day(year: SchoolYear) -> dt.date | None:
    """The last morning of the year, if it has any."""
    return year.mornings[-1] if year.mornings else None


def _days(context: Context, at: int) -> Iterator[WeekDay]:
    """The days of a school week by its place: its mornings, and the school weekdays off around them.

    Days off between two weeks belong to the later one where they lie in the calendar week of its first
    morning, else to the earlier one.
    """
    year, today = context.year, context.today
    begins, ends = _begins(year, at), _begins(year, at + 1)
    if begins is None:
        return
    mornings = frozenset(year.between(begins, ends or year.mornings[-1] + _DAY))
    for later in range(((ends or year.mornings[-1] + _DAY) - begins).days):
        date = begins + later * _DAY
        off = date not in mornings and date.weekday() in year.weekdays
        if date in mornings or off or date == today:
            yield WeekDay(date, day_mark(date, today, school=date in mornings), off)


def _begins(year: SchoolYear, at: int) -> dt.date | None:
    """The first date that belongs to a school week; None for one that has no mornings."""
    start = at * year.mornings_a_week - year.before
    if not 0 <= start < len(year.mornings):
        return None
    first = year.mornings[start]
    monday = first - dt.timedelta(first.weekday())
    return max(monday, year.mornings[start - 1] + _DAY) if start else first


def day_mark(date: dt.date, today: dt.date, *, school: bool) -> DayMark:
    """The mark of a school day, or of one that is none."""
    if not school:
        return DayMark.FREE if date == today else DayMark.OFF
    if date == today:
        return DayMark.TODAY
    return DayMark.PAST if date < today else DayMark.AHEAD


# -- a week


class LevelState(Enum):
    """How a level stands with the child today."""

    OPEN = "open"
    EARLY = "opened early"
    HELD = "held back"
    WAITS = "waits for what it stands on"
    AHEAD = "to come"


class PlannedLevel(NamedTuple):
    """A level of a week: what its skill and itself are called, what it needs, and how it stands."""

    level: LevelId
    title: str
    label: str
    week: int
    table: str
    state: LevelState

    @property
    def named(self) -> str:
        """What it is called."""
        return f"{self.title}: {self.label}"


def levels_in(context: Context, week: int) -> tuple[PlannedLevel, ...]:
    """The levels whose week this is, in the order of the plan."""
    found = [level for level, at in context.plan.weeks.items() if at == week]
    if not found:
        return ()
    known, child = context.knowledge(), context.child
    morning = context.morning()
    able = eligibility.open_items(context.curriculum(), morning, known, context.adjustments)
    there = {item.level_id for item in able}

    def state(level: LevelId) -> LevelState:
        if level in child.held:
            return LevelState.HELD
        if level in there or known.of_level(level).marks:
            return LevelState.EARLY if level in child.opened and week > morning.week else LevelState.OPEN
        return LevelState.WAITS if week <= morning.week or level in child.opened else LevelState.AHEAD

    return tuple(planned(level, week, state(level)) for level in found)


def planned(level: LevelId, week: int, state: LevelState = LevelState.AHEAD) -> PlannedLevel:
    """A level by its id, also one that a family wrote itself. KeyError for one that no skill has."""
    at = skills.plain(level)
    return PlannedLevel(level, at.skill.title, at.level.label, week, at.level.table, state)


def objects(levels: tuple[PlannedLevel, ...]) -> str:
    """What the levels would like on the table, each once: "ten frame; straws and bands"."""
    return "; ".join(dict.fromkeys(level.table for level in levels if level.table))


# -- a day


class DayView(NamedTuple):
    """What a date is: its morning, how many prompts were asked on it, and the days that matter on it."""

    morning: Morning
    today: dt.date
    asked: int
    rules: tuple[CountdownRule, ...]

    @property
    def heading(self) -> str:
        """The date, and whether it is today."""
        date = self.morning.date
        return date_words(date, year=True) + (" · today" if date == self.today else "")

    def lines(self) -> tuple[str, ...]:
        """What it is, what was asked, and what there is to look forward to, a sentence each."""
        return tuple(filter(None, (self.what(), self._asked(), *self._festive(), self._ahead())))

    def what(self) -> str:
        """What the date is in the school year: "School day 107, week 27, a review week."."""
        morning, kind = self.morning, self.morning.kind
        week = f"week {morning.week}{', a review week' * morning.review}"
        match kind:
            case DayKind.SCHOOL:
                return f"School day {morning.school_day}, {week}."
            case DayKind.DAY_OFF | DayKind.WEEKEND:
                what = "A day off" if kind is DayKind.DAY_OFF else "No school on this weekday"
                count = morning.school_day
                return f"{what}. {count} school {plural(count, 'day')} so far, {week}."
            case DayKind.BEFORE:
                return "Before the first school day."
            case DayKind.AFTER:
                return "After the last school day."

    def _asked(self) -> str:
        if self.asked:
            return f"{number_word(self.asked).capitalize()} {plural(self.asked, 'prompt')} that day."
        past = self.morning.date < self.today and self.morning.is_school
        return "No warm-up that day." if past else ""

    def _festive(self) -> Iterator[str]:
        for rule in self.rules:
            yield f"A day to look forward to: {rule.name}{', every year' * bool(rule.yearly)}."

    def _ahead(self) -> str:
        named = [
            f"{each.name} in {_days_ahead(each.day - self.morning.date)}" for each in self.morning.countdowns
        ]
        return f"Ahead: {listed(named)}." if named else ""


def _days_ahead(span: dt.timedelta) -> str:
    return f"{span.days} {plural(span.days, 'day')}"


def day_view(context: Context, date: dt.date, asked: Mapping[dt.date, int] | None = None) -> DayView:
    """What this date is; ``asked`` is what :func:`asked_by_day` gives, where it is known."""
    asked = asked_by_day(context) if asked is None else asked
    return DayView(
        context.morning(date), context.today, min(asked.get(date, 0), 999), rules_on(context.family, date)
    )


def asked_by_day(context: Context) -> Mapping[dt.date, int]:
    """How many prompts were shown on each date of the school year, and of the week before, that had any."""
    mornings = context.year.mornings
    since = mornings[0] - dt.timedelta(7) if mornings else context.today
    return Counter(line.date for line in context.history(since=since))


def countdown_days(family: Family, first: dt.date, last: dt.date) -> frozenset[dt.date]:
    """The dates from ``first`` to ``last``, both included, on which a day to look forward to falls."""
    eve = first - _DAY
    return frozenset(each.day for each in families.countdowns(family, eve, ahead=(last - eve).days))


def rules_on(family: Family, date: dt.date) -> tuple[CountdownRule, ...]:
    """The days to look forward to that fall on this date, as the family wrote them."""
    eve = date - _DAY
    return tuple(
        rule
        for rule in family.countdowns
        if families.countdowns(family._replace(countdowns=(rule,)), eve, ahead=1)
    )
