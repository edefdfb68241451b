"""The form of the first run: what it is filled in with, the family it describes, and what comes of it.

No widgets here. All values are text as it is typed; what can't be taken is said in a sentence.
"""

import datetime as dt
import re
from collections.abc import Collection, Iterable
from dataclasses import replace
from typing import NamedTuple

from warmup.config.family import Child, Family, default, year_of
from warmup.config.holidays import Holiday, offered
from warmup.config.toml_file import LONGEST_NAME
from warmup.english import WEEKDAYS, date_words, plural
from warmup.model import DayKind, Morning
from warmup.schoolyear import WEEKS, SchoolYear
from warmup.session.context import Context
from warmup.text import CLOCK_YEARS, clean, visible


class Unclear(Exception):
    """Something in the form can't be taken: a sentence that says what is expected."""


class Form(NamedTuple):
    """The form as it is filled in. ``week`` is empty while the week is worked out from the rest.

    ``off`` holds the days off that are ticked.
    """

    nickname: str
    first_day: str
    weekdays: str
    week: str = ""
    off: tuple[Holiday, ...] = ()


def known_by(context: Context) -> Family | None:
    """The family without a file whose children are those of the journal; None where it has none."""
    return context.family if context.journal and context.journal.names() else None


def filled_in(today: dt.date, known: Family | None = None) -> Form:
    """The form for a family that starts today: a year from late August, Monday to Thursday, holidays off.

    ``known`` is that family where its children are known, from a journal that outlived family.toml.
    """
    family = known or default(today)
    form = Form(
        family.children[0].nickname,
        family.first_day.isoformat(),
        short_weekdays(family.weekdays),
    )
    return form._replace(off=holidays(form, today))


def holidays(form: Form, today: dt.date) -> tuple[Holiday, ...]:
    """The days off that are offered for this form's year, ticked or not. Raises Unclear."""
    family = family_of(form._replace(off=()), today)
    # All of them may be taken, and the year then ends later: what comes up to that end is offered.
    end = family.first_day + dt.timedelta(366)
    while True:
        found = offered(family.first_day, end, family.weekdays)
        year = year_of(family._replace(off=_stretches(found)))
        if year.mornings[-1] >= end:
            return found
        end = year.mornings[-1]


def family_of(form: Form, today: dt.date, known: Family | None = None) -> Family:
    """The family a form describes. Raises Unclear.

    Of a ``known`` family the first child has the nickname, and keeps its name in the journal.

    A week that is said and is not the one that the first day gives (weeks off are not known here) begins
    the year anew: it is that week since Monday.
    """
    children = known.children if known else ()
    nickname = nickname_of(form.nickname, children[1:])
    first = replace(children[0], nickname=nickname) if children else Child(nickname)
    family = default(today)._replace(
        children=(first, *children[1:]),
        first_day=date_of(form.first_day),
        weekdays=weekdays_of(form.weekdays),
        off=_stretches(form.off),
    )
    week = week_number(form.week)
    if week is None or year_of(family).morning(today).week == week:
        return family
    return family._replace(first_day=today - dt.timedelta(today.weekday()), first_week=week)


def nickname_of(text: str, others: Iterable[Child]) -> str:
    """A nickname that is typed, cleaned. Unclear where there is none or one of the others has it."""
    nickname = clean(text)[:LONGEST_NAME].strip()
    if not visible(nickname):
        raise Unclear("A nickname, please: any word the child likes.")
    if any(nickname.casefold() == other.nickname.casefold() for other in others):
        raise Unclear(f"There is another {nickname}; a nickname of its own, please.")
    return nickname


def _stretches(taken: Collection[Holiday]) -> tuple[tuple[dt.date, dt.date], ...]:
    return tuple(sorted((each.first, each.last) for each in taken))


def date_of(text: str) -> dt.date:
    """A date that is typed, as 2026-08-31 or 8/31/2026. Raises Unclear."""
    text = text.strip()
    if match := re.fullmatch(r"([0-9]{1,2})/([0-9]{1,2})/([0-9]{4})", text, re.A):
        text = f"{match[3]}-{int(match[1]):02}-{int(match[2]):02}"
    try:
        day = dt.date.fromisoformat(text)
    except ValueError:
        raise Unclear("The first school day like 2026-08-31 or 8/31/2026.") from None
    if day.year not in CLOCK_YEARS:
        raise Unclear("The first school day in a year from 1900 to 2200.")
    return day


def short_weekdays(weekdays: Collection[int]) -> str:
    """School weekdays as they may be typed: "Mon Tue Wed Thu"."""
    return " ".join(WEEKDAYS[day][:3] for day in weekdays)


def weekdays_of(text: str) -> tuple[int, ...]:
    """School weekdays as they are typed, in order. Raises Unclear."""
    found = set()
    for word in text.replace(",", " ").split():
        days = [
            n
            for n, name in enumerate(WEEKDAYS)
            if len(word) > 1 and name.casefold().startswith(word.casefold())
        ]
        if len(days) != 1:
            raise Unclear(f"School weekdays like Mon Tue Wed Thu; not “{word[:12]}”.")
        found.add(days[0])
    if not found:
        raise Unclear("At least one school weekday, like Mon.")
    return tuple(sorted(found))


def week_number(text: str) -> int | None:
    """The week that is said, "week 11" or "11"; None where nothing is."""
    number = text.strip().casefold().removeprefix("week").strip()
    if not text.strip():
        return None
    if not re.fullmatch(r"[0-9]{1,4}", number) or not 1 <= int(number) <= WEEKS:
        raise Unclear(f"The week as a number from 1 to {WEEKS}.")
    return int(number)


def weekday_of(text: str, weekdays: str) -> str:
    """What stands beside the first day: its weekday, and which day is first where it is no school day."""
    try:
        day, school = date_of(text), weekdays_of(weekdays)
    except Unclear:
        return ""
    name = WEEKDAYS[day.weekday()]
    if day.weekday() in school:
        return name
    first = next(n % 7 for n in range(day.weekday() + 1, day.weekday() + 8) if n % 7 in school)
    return f"{name}, so from {WEEKDAYS[first]}"


def week_of(form: Form, today: dt.date) -> str:
    """The week as the form's own dates give it: "week 11". Raises Unclear."""
    return f"week {year_of(family_of(form._replace(week=''), today)).morning(today).week}"


def outcome(form: Form, today: dt.date) -> str:
    """What comes of the form as it stands: which school day today is and when the year ends. Or Unclear."""
    family = family_of(form, today)
    year = year_of(family)
    last = date_words(year.mornings[-1], weekday=False)
    verb = "was" if year.mornings[-1] < today else "is"
    said = f"{today_words(year.morning(today), year)}; the last {verb} {last}."
    if family.first_day == date_of(form.first_day):
        return said
    # A week that was said counts from this Monday on, which is not the day that was typed.
    return f"{said} Counted from {date_words(family.first_day)}, as week {family.first_week}."


def today_words(morning: Morning, year: SchoolYear, verb: str = "is") -> str:
    """Where today stands in a year that is, or with another ``verb`` one that would be."""
    week = f"week {morning.week} of {WEEKS}"
    passed = f"{morning.school_day} {plural(morning.school_day, 'school day')}"
    match morning.kind:
        case DayKind.SCHOOL:
            return f"Today {verb} school day {morning.school_day}, {week}"
        case DayKind.BEFORE:
            return f"School day {year.before + 1} {verb} {date_words(year.mornings[0])}"
        case DayKind.AFTER:
            return f"The year {verb} over, {passed}"
        case DayKind.WEEKEND | DayKind.DAY_OFF:
            return f"No school today; {passed} so far, {week}"
