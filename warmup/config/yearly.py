"""Days that come every year, told in words: "December 25", "fourth Thursday of November"."""

import datetime as dt
import re
from collections.abc import Iterable, Sequence
from typing import Any

from warmup.english import MONTHS, WEEKDAYS

EVERY_YEAR = 'a day like "December 25", "fourth Thursday of November" or "last Monday of May"'
"""What is expected of such words."""
LONGEST = 14
"""The most days in a row that one of them may begin."""
_ORDINALS = {"first": 1, "second": 2, "third": 3, "fourth": 4, "last": -1}
_MOST_DAYS = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
"""How many days each month has at most: February 29 is a day some years have."""


def understood(words: str) -> bool:
    """Whether the words tell a day that comes every year."""
    return _terms(words) is not None


def days(words: str, first: dt.date, last: dt.date) -> list[dt.date]:
    """The dates the words fall on from ``first`` to ``last``; none where they are not understood."""
    terms = _terms(words)
    if terms is None:
        return []
    from dateutil.rrule import YEARLY, rrule  # few families have a day that comes every year

    midnight = dt.time()
    start, until = dt.datetime.combine(first, midnight), dt.datetime.combine(last, midnight)
    return [day.date() for day in rrule(YEARLY, dtstart=start, until=until, **terms)]


def stretches(
    told: Iterable[tuple[str, int]], first: dt.date, last: dt.date
) -> tuple[tuple[dt.date, dt.date], ...]:
    """The stretches of days, both ends included, that touch the time from ``first`` to ``last``.

    Each of ``told`` is the words of a first day and how many days there are in a row, 1 to 14.
    """
    return tuple(
        (day, day + dt.timedelta(count - 1))
        for words, count in told
        for day in days(words, first - dt.timedelta(count - 1), last)
    )


def _named(word: str, among: Sequence[str]) -> int | None:
    return next((n for n, name in enumerate(among) if name.lower() == word.lower()), None)


def _terms(words: str) -> dict[str, Any] | None:
    """The terms of a yearly recurrence for ``rrule``; None when the words are not understood."""
    if (match := re.fullmatch(r"(\w+) ([0-9]{1,2})", words)) and (
        month := _named(match[1], MONTHS)
    ) is not None:
        day = int(match[2])
        return {"bymonth": month + 1, "bymonthday": day} if 1 <= day <= _MOST_DAYS[month] else None
    if match := re.fullmatch(r"(\w+) (\w+) (?:of|in) (\w+)", words):
        ordinal, weekday, month = (
            _ORDINALS.get(match[1].lower()),
            _named(match[2], WEEKDAYS),
            _named(match[3], MONTHS),
        )
        if ordinal and weekday is not None and month is not None:
            from dateutil.rrule import weekday as nth

            return {"bymonth": month + 1, "byweekday": nth(weekday, ordinal)}
    return None
