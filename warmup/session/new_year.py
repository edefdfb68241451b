"""The school year after this one: the form it begins with, and the family that comes of it.

The children, their records and what was said of days before stay. A year may begin again in the middle, with
the week that is to be repeated; who is done with it may rest, and a sibling begins with nothing known.
"""

import datetime as dt

from warmup.config.family import Family, year_of
from warmup.config.holidays import Holiday
from warmup.english import date_words
from warmup.session.context import Context
from warmup.session.first_form import Form, family_of, filled_in, holidays, week_number


def first_day_after(last: dt.date) -> dt.date:
    """The last Monday of the first August that ends after this day (common practice, no source)."""
    for year in (last.year, last.year + 1):
        end = dt.date(year, 8, 31)
        monday = end - dt.timedelta(end.weekday())
        if monday > last:
            return monday
    raise AssertionError("one of two Augusts lies after any day")


def next_form(context: Context) -> Form:
    """The form of the next year, filled in: the same weekdays, the holidays taken, week 1."""
    family = context.family
    last = max(year_of(family).mornings, default=context.today)
    form = filled_in(context.today, family)._replace(first_day=first_day_after(last).isoformat(), week="")
    return form._replace(off=offered(form, context.today))


def offered(form: Form, today: dt.date) -> tuple[Holiday, ...]:
    """The days off that are offered for this form's year. Raises Unclear."""
    return holidays(form._replace(week=""), today)


def renewed(form: Form, today: dt.date, family: Family) -> Family:
    """The family in the year that the form describes. Raises Unclear.

    A week that is said is that of the first school day, and what comes before it counts as passed.
    """
    new, week = family_of(form._replace(week=""), today, family), week_number(form.week)
    return family._replace(
        first_day=new.first_day,
        weekdays=new.weekdays,
        off=tuple(sorted({*family.off, *new.off})),
        first_week=week or 1,
        held_weeks=(),
        skipped_weeks=(),
        last_day=None,
    )


def outcome(form: Form, today: dt.date, family: Family) -> str:
    """When the new year begins and ends. Raises Unclear."""
    year = year_of(renewed(form, today, family))
    if not year.mornings:
        return "No school day is left with so many days off."
    first, last = (date_words(day, weekday=False, year=True) for day in (year.mornings[0], year.mornings[-1]))
    return (
        f"School day {year.before + 1} is {first}, in week {year.week_at(year.before)}; the last is {last}."
    )
