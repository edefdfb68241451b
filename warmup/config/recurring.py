"""When an event of a calendar comes: its first time, its rules, more dates, and dates it does not come on.

All times are those of the wall clock where the event is, without a zone. A rule that never comes again would
be followed to the year 9999, so what is walked is counted (:class:`Walk`), and walked near that year.
"""

import datetime as dt
import re
from collections.abc import Collection, Iterable, Iterator
from typing import NamedTuple

MOST_STEPS = 300_000
"""How many steps the rules of one file may take in all: one or two seconds."""
_STEPS = {
    "YEARLY": dt.timedelta(365),
    "MONTHLY": dt.timedelta(28),
    "WEEKLY": dt.timedelta(7),
    "DAILY": dt.timedelta(1),
    "HOURLY": dt.timedelta(hours=1),
    "MINUTELY": dt.timedelta(minutes=1),
    "SECONDLY": dt.timedelta(seconds=1),
}
_CYCLE = dt.timedelta(146_097)
"""400 years, after which the calendar is the same again, weekdays too (the Gregorian rule)."""
_WITHIN_A_DAY = ("HOURLY", "MINUTELY", "SECONDLY")
_OF_TIMES = ("BYHOUR", "BYMINUTE", "BYSECOND")
_OF_DAYS = ("BYMONTH", "BYWEEKNO", "BYYEARDAY", "BYMONTHDAY", "BYDAY", "BYSETPOS")
_PARTS = frozenset({"FREQ", "INTERVAL", "COUNT", "UNTIL", "WKST", *_OF_TIMES, *_OF_DAYS})
_MOST_TIMES = 100
"""The most times a day a rule may name."""


class Walk:
    """How much of the steps is left."""

    def __init__(self, steps: int = MOST_STEPS) -> None:
        self._left = steps

    def take(self, steps: float) -> None:
        """Take steps. ValueError when there are none left."""
        self._left -= max(1, int(steps))
        if self._left < 0:
            raise ValueError("too many steps")


class Rule(NamedTuple):
    """A rule of RFC 5545, section 3.3.10: its parts without UNTIL, and up to when it goes, that included."""

    parts: dict[str, str]
    until: dt.datetime | None = None

    @property
    def step(self) -> dt.timedelta:
        """The least time between two of its periods."""
        return _STEPS[self.parts["FREQ"]] * int(self.parts.get("INTERVAL", "1"))


def rule_parts(text: str) -> dict[str, str]:
    """The parts of a rule by their names. ValueError for one that is none, or too much to be followed."""
    pairs = [each.partition("=")[::2] for each in text.strip().rstrip(";").upper().split(";")]
    parts = dict(pairs)
    if len(parts) < len(pairs) or not parts.keys() <= _PARTS or parts.get("FREQ") not in _STEPS:
        raise ValueError("no rule")
    for name in ("INTERVAL", "COUNT"):
        if name in parts and not re.fullmatch(r"0*[1-9][0-9]{0,5}", parts[name], re.A):
            raise ValueError("no number")
    times = 1
    for name in _OF_TIMES:
        times *= parts.get(name, "").count(",") + 1
    if times > _MOST_TIMES or (parts["FREQ"] in _WITHIN_A_DAY and not parts.keys().isdisjoint(_OF_DAYS)):
        raise ValueError("too fine")
    return parts


def starts(
    first: dt.datetime,
    rules: Iterable[Rule],
    more: Iterable[dt.datetime],
    never: Collection[dt.datetime | dt.date],
    end: dt.datetime,
    walk: Walk,
) -> list[dt.datetime]:
    """When an event begins, up to and at ``end``, in order, each time once.

    Its first time always counts, whatever the rules say (RFC 5545, section 3.8.5.3). ``never`` holds times,
    and dates on which it does not come at any time. ValueError for a rule that is too much to be followed.
    """
    found = {when for when in (first, *more) if when <= end}
    for rule in rules:
        found.update(_of(rule, first, end, walk))
    return sorted(when for when in found if when not in never and when.date() not in never)


def _of(rule: Rule, first: dt.datetime, end: dt.datetime, walk: Walk) -> Iterator[dt.datetime]:
    """The times of one rule. UNTIL is compared here: dateutil would look for a last time before it."""
    from dateutil.rrule import rrulestr

    text = ";".join(f"{name}={value}" for name, value in rule.parts.items())
    ahead = _CYCLE * ((dt.MAXYEAR - end.year) // 400)
    last = ahead + (end if rule.until is None else min(end, rule.until))
    before, count = first + ahead, 0
    for when in rrulestr(text, dtstart=before):
        walk.take((when - before) / rule.step)
        if when > last:
            return
        before, count = when, count + 1
        yield when - ahead
    if count < int(rule.parts.get("COUNT", count + 1)):
        # It was followed to the end of the calendar.
        walk.take((dt.datetime.max - before) / rule.step)
