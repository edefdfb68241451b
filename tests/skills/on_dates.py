"""Asking a real skill on dates of our choosing: the published ones, and a sample of forty years."""

import datetime as dt
from collections.abc import Iterator
from typing import Any

from tests.bank import reference
from tests.mornings import morning
from warmup import skills
from warmup.model import Prompt
from warmup.randomness import SeededRandom


def asked_on(item: str, day: dt.date, count: int = 1, *, countdowns: bool = True) -> list[Prompt]:
    """``count`` prompts of the item ``skill/name`` on a school morning of this date."""
    at = morning(day)
    at = at if countdowns else at._replace(countdowns=())
    return [skills.prompt(item, at, SeededRandom("on", item, day, n)) for n in range(count)]


def worked_dates() -> list[dict[str, Any]]:
    """The 85 worked dates of references/calendar.toml, each with its ``date`` read."""
    rows = reference("calendar")["dates"]["rows"]
    return [{**row, "date": dt.date.fromisoformat(row["date"])} for row in rows]


def sampled_dates() -> Iterator[dt.date]:
    """Dates from 2020 to 2060: every 5th, the ends of all Februaries and years, and clock-change days.

    The years with 53 weeks by ISO 8601 (references/calendar.toml, [iso_53]) have all days of their ends.
    """
    for ordinal in range(dt.date(2020, 1, 1).toordinal(), dt.date(2061, 1, 1).toordinal(), 5):
        yield dt.date.fromordinal(ordinal)
    for year in range(2020, 2061):
        around = 5 if year in reference("calendar")["iso_53"]["years"] else 1
        for turn in (dt.date(year, 3, 1), dt.date(year + 1, 1, 1)):
            for days in range(-around, around + 1):
                yield turn + dt.timedelta(days)
    yield from clock_changes()


def clock_changes() -> list[dt.date]:
    """The Sundays on which clocks change and the days either side (15 U.S.C. 260a, [daylight_saving])."""
    rows = reference("calendar")["daylight_saving"]["rows"]
    sundays = [dt.date.fromisoformat(row[end]) for row in rows for end in ("begins", "ends")]
    return [sunday + dt.timedelta(step) for sunday in sundays for step in (-1, 0, 1)]
