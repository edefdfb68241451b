"""Says again, with ``calendar`` and num2words, whether each sentence of an opening is true of its date."""

import calendar
import datetime as dt
import re
from bisect import bisect_left, bisect_right
from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

from num2words import num2words

NUMBERS = {num2words(n).replace(" and ", " "): n for n in range(400)}
ORDINALS = {num2words(n, to="ordinal").replace(" and ", " "): n for n in range(1, 100)}
DAY = dt.timedelta(1)


class Truth(NamedTuple):
    """A date, all school days of the year, how many passed before them, and the days that matter by name."""

    date: dt.date
    school: Sequence[dt.date]
    before: int
    days: Mapping[str, dt.date]

    @property
    def held(self) -> bool:
        """Whether the date is a school day."""
        return self.date in self.school[bisect_left(self.school, self.date) :][:1]

    @property
    def number(self) -> int:
        """How many school days up to and with the date."""
        return self.before + bisect_right(self.school, self.date)

    def gap(self, step: int) -> int | None:
        """How many days lie between the date and the school day before (-1) or after it (1)."""
        at = bisect_left(self.school, self.date) - 1 if step < 0 else bisect_right(self.school, self.date)
        return abs((self.school[at] - self.date).days) - 1 if 0 <= at < len(self.school) else None

    def this_week(self) -> list[dt.date]:
        """The school days of the date's row on a wall calendar."""
        rows = calendar.Calendar(calendar.SUNDAY).monthdatescalendar(self.date.year, self.date.month)
        return [day for day in next(row for row in rows if self.date in row) if self._replace(date=day).held]

    def days_of_month(self) -> int:
        """How many days the month has."""
        return calendar.monthrange(self.date.year, self.date.month)[1]


Check = Callable[..., bool]


def _date(t: Truth, weekday: str, month: str, place: str) -> bool:
    told = f"{calendar.day_name[t.date.weekday()]} {calendar.month_name[t.date.month]}"
    return told == f"{weekday} {month}" and ORDINALS[place] == t.date.day


def _first(t: Truth) -> bool:
    return t.before == 0 and t.date == t.school[0]


def _new_month(t: Truth, how: str, month: str) -> bool:
    earlier = t.school[: bisect_left(t.school, t.date)][-1:]
    begun = bool(earlier) and (earlier[0].year, earlier[0].month) != (t.date.year, t.date.month)
    named = not month or month == calendar.month_name[t.date.month]
    return t.held and begun and named and (how == "starts today") is (t.date.day == 1)


def _edge(t: Truth, which: str) -> bool:
    days = t.this_week()
    return len(days) > 1 and t.date == (days[0] if which == "first" else days[-1])


def _until(t: Truth, count: str, name: str) -> bool:
    number = 1 if count == "Only one" else NUMBERS[count.lower()]
    if name == "school starts":
        return t.before == 0 and t.school[0] == t.date + number * DAY
    return t.days.get(name) == t.date + number * DAY


def _which_weekday(t: Truth, which: str, weekday: str, month: str) -> bool:
    rows = calendar.Calendar().monthdatescalendar(t.date.year, t.date.month)
    same = [row[t.date.weekday()] for row in rows if row[t.date.weekday()].month == t.date.month]
    return f"{t.date:%A %B}" == f"{weekday} {month}" and same[ORDINALS[which] - 1] == t.date


def _next(t: Truth, weekday: str) -> bool:
    gap = t.gap(1)
    return gap is not None and calendar.day_name[(t.date + (gap + 1) * DAY).weekday()] == weekday and gap < 6


_WHOLE = r"(\w+), (\w+) ([\w-]+)"
SENTENCES: Mapping[str, Check] = {
    rf"(?:Today|It) is {_WHOLE}\.": _date,
    r"Today is (.+)!": lambda t, name: t.days.get(name) == t.date,
    r"School starts today!|A new school year begins today\.|Put down our first straw\.": _first,
    r"Today is the last school day of the year\.|Add the last straw\.": lambda t: t.date == t.school[-1],
    r"School day (.+): add a straw\.": lambda t, n: t.held and NUMBERS[n] == t.number,
    r"Put down a straw\.|Add today’s straw\.": lambda t: t.held,
    r"School day one hundred!|Today is a big school day\.|Put (?:ten|all our) bundles on the table\.": (
        lambda t: t.held and t.number == 100
    ),
    r"School day ([^:]+)\.": lambda t, n: t.held and NUMBERS[n] == t.number,
    r"Ten loose straws make a new bundle\.|Today’s straw fills a bundle\.|Put a band around it\."
    r"|Today we need a new band for our straws\.": (
        lambda t: t.held and t.number % 10 == 0
    ),
    r"Most years do not have (?:this day|the day we have today)\.": (
        lambda t: f"{t.date:%m-%d}" == "02-29" and calendar.isleap(t.date.year)
    ),
    r"A new year is here!|It starts with January\.|Hang up the new calendar\.": (
        lambda t: t.held and max(day for day in t.school if day < t.date).year < t.date.year
    ),
    r"A new month (starts today|is here)(?:: (\w+))?\.": _new_month,
    r"Turn the page\.": lambda t: t.held,
    r"We are back after (.+) days without school\.": lambda t, n: t.held and t.gap(-1) == NUMBERS[n] > 6,
    r"After today we have (.+) days without school\.": lambda t, n: t.held and t.gap(1) == NUMBERS[n] > 6,
    r"We have (.+) bundles? and (.+) loose straws?\.": (
        lambda t, tens, ones: t.held and 10 * NUMBERS[tens] + NUMBERS[ones] == t.number
    ),
    r"Today is (\w+), our (first|last) school day this week\.": (
        lambda t, day, which: calendar.day_name[t.date.weekday()] == day and _edge(t, which)
    ),
    r"Today is our (first|last) school day this week\.": _edge,
    r"(Only one|.+) more sleeps? until (.+)\.": _until,
    r"After today (\w+) has (.+) more days?\.": (
        lambda t, month, n: month == f"{t.date:%B}" and t.days_of_month() - t.date.day == NUMBERS[n]
    ),
    r"Today is the last day of (\w+)\.": (
        lambda t, month: month == f"{t.date:%B}" and (t.date + DAY).month != t.date.month
    ),
    r"Today is the last day of the month\.": lambda t: (t.date + DAY).month != t.date.month,
    r"We are in (\w+)\.": lambda t, month: month == f"{t.date:%B}",
    r"It has (.+) days\.": lambda t, n: NUMBERS[n] == t.days_of_month(),
    r"(\w+) is the (.+) month of the year\.": (
        lambda t, month, n: month == f"{t.date:%B}" and ORDINALS[n] == t.date.month
    ),
    r"(.+) more school days? make one hundred\.": (
        lambda t, n: t.held and t.number + NUMBERS[n.lower()] == 100
    ),
    r"Tomorrow is (\w+)\.": lambda t, weekday: f"{t.date + DAY:%A}" == weekday,
    r"We have school( again)?\.": lambda t, again: t.gap(1) == 0 and bool(again) is t.held,
    r"Today is the (.+) (\w+day) in (\w+)\.": _which_weekday,
    r"One week from today is (\w+) ([\w-]+)\.": (
        lambda t, month, n: f"{t.date + 7 * DAY:%B}" == month and ORDINALS[n] == (t.date + 7 * DAY).day
    ),
    r"Our next school day is (\w+)\.": _next,
    r"School is over\.": lambda t: t.date > t.school[-1],
    r"We had (.+) school days this year\.": lambda t, n: NUMBERS[n] == t.before + len(t.school),
    r"We have no school today\.": lambda t: not t.held,
}  # fmt: skip
"""Every sentence an opening may hold, and when it is true."""


def untrue(say: str, truth: Truth) -> list[str]:
    """The sentences that are not true of the date, or that nothing here knows."""
    wrong = []
    for sentence in re.split(r"(?<=[.!]) ", say):
        known = [(re.fullmatch(form, sentence), check) for form, check in SENTENCES.items()]
        if not any(found and check(truth, *found.groups()) for found, check in known):
            wrong.append(sentence)
    return wrong
