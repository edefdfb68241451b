"""Calendar talk that several skills share: how days, months and dates are named and counted.

Everything here is arithmetic on dates, never on hours, so that the Sundays on which clocks change
(15 U.S.C. 260a) are days like any other.
"""

import datetime as dt

from warmup.english import MONTHS, WALL_WEEK, WEEKDAYS, number_word, ordinal_word


def day_name(day: dt.date) -> str:
    """The day of the week: "Wednesday"."""
    return WEEKDAYS[day.weekday()]


def later_day(name: str, steps: int) -> str:
    """The day of the week ``steps`` after the one named (before it, when negative)."""
    return WALL_WEEK[(WALL_WEEK.index(name) + steps) % len(WALL_WEEK)]


def month_name(day: dt.date) -> str:
    """The month a date lies in: "November"."""
    return MONTHS[day.month - 1]


def later_month(name: str, steps: int) -> str:
    """The month ``steps`` after the one named (before it, when negative)."""
    return MONTHS[(MONTHS.index(name) + steps) % len(MONTHS)]


def month_days(year: int, month: int) -> int:
    """How many days the month has, by the Gregorian rule for leap years."""
    return (dt.date(year + month // 12, month % 12 + 1, 1) - dt.date(year, month, 1)).days


def days_left(day: dt.date) -> int:
    """How many days of the month come after this one."""
    return month_days(day.year, day.month) - day.day


def ahead(day: dt.date, days: int) -> dt.date:
    """The date so many days on (back, when negative)."""
    return day + dt.timedelta(days=days)


def supposed(told: str, real: str) -> str:
    """How a prompt sets its day, month or date: as it is, or as make-believe where today is another."""
    return f"It’s {told}" if told == real else f"Pretend it’s {told}"


def said(day: dt.date) -> str:
    """The date as it is said: "November twenty-fifth"."""
    return f"{month_name(day)} {ordinal_word(day.day)}"


def also_said(day: dt.date) -> tuple[str, ...]:
    """Other right ways to say the month and the number: the cardinal counts as well as the ordinal."""
    month, number, place = month_name(day), number_word(day.day), ordinal_word(day.day)
    return (f"{month} {number}", f"{month} the {place}", f"the {place} of {month}")


def with_weekday(day: dt.date) -> tuple[str, ...]:
    """The date with its day of the week said along."""
    return tuple(f"{day_name(day)}, {form}" for form in (said(day), *also_said(day)))


def near_by(day: dt.date) -> tuple[str, ...]:
    """Other right ways to say a date whose month the question makes plain: the number alone will do."""
    place = ordinal_word(day.day)
    return (*also_said(day), place, f"the {place}", number_word(day.day), *with_weekday(day))
