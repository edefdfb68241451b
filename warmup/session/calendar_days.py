"""Days off out of a calendar somebody else keeps: what is offered and ticked, and what comes of taking it."""

import datetime as dt
from collections.abc import Collection, Iterable, Sequence
from itertools import pairwise
from typing import NamedTuple

from warmup.config.calendar_entry import Entry
from warmup.config.family import Child, Family, year_of
from warmup.config.toml_file import FileProblem
from warmup.english import date_words, plural
from warmup.schoolyear import SchoolYear
from warmup.session import undoing
from warmup.session.calendar_names import says_no_school
from warmup.session.context import Context

NOTHING = "Nothing in this calendar falls on a school morning ahead, or all of that is off already."
PART = "part of the day"
_NEAR = dt.timedelta(6)
"""How far apart two events of one name may be to stand in one line."""
MOST = 300
"""The most lines that are offered: a calendar may hold thousands of lessons and games."""


class Offer(NamedTuple):
    """A line to take: what the calendar calls it, and the mornings in a row it would take out of the year.

    ``ticked`` says whether its name says that there is no school; ``whole`` whether it takes whole days.
    """

    name: str
    days: tuple[dt.date, ...]
    ticked: bool
    whole: bool

    @property
    def when(self) -> str:
        """Its first and last morning: "Wed Nov 25 to Thu Nov 26"."""
        first, last = (date_words(day, short=True) for day in (self.days[0], self.days[-1]))
        return first if first == last else f"{first} to {last}"

    @property
    def how_long(self) -> str:
        """How many mornings, and whether it takes but a part of them: "1 morning, part of the day"."""
        count = len(self.days)
        return f"{count} {plural(count, 'morning')}{'' if self.whole else f', {PART}'}"


def window(family: Family, child: Child | None = None) -> tuple[dt.date, dt.date]:
    """The dates a calendar is read for: the family's year, and a year more for what moves its end."""
    year = year_of(family, child)
    return year.mornings[0], year.mornings[-1] + dt.timedelta(366)


def offers(
    family: Family, entries: Collection[Entry], first: dt.date, child: Child | None = None
) -> tuple[Offer, ...]:
    """What a calendar has for the family's planned mornings from ``first`` on.

    Those that say that there is no school come first and have a tick, then the others, each in order of time.
    What moves the year's end may bring more mornings into it: the ticked ones count for that.
    """
    planned = _planned(family, [each for each in entries if _ticked(each)], first, child)
    ahead = [day for day in planned if day >= first and day not in family.extra]
    named: dict[tuple[str, bool], list[Entry]] = {}
    for each in entries:
        if ahead and each.last >= ahead[0] and each.first <= ahead[-1]:
            named.setdefault((each.name.casefold(), each.whole), []).append(each)
    found = [
        Offer(same[0].name, days, _ticked(same[0]), same[0].whole)
        for same in named.values()
        for days in _runs(same, ahead)
    ]
    # What lies within a ticked line says nothing new.
    ticked = sorted(
        (each for each in found if each.ticked), key=lambda each: (-len(each.days), each.days, each.name)
    )
    kept: list[Offer] = []
    for offer in (*ticked, *(each for each in found if not each.ticked)):
        if not any(other.ticked and {*offer.days} <= {*other.days} for other in kept):
            kept.append(offer)
    return tuple(sorted(kept, key=lambda each: (not each.ticked, each.days, each.name)))[:MOST]


def _ticked(entry: Entry) -> bool:
    return entry.whole and says_no_school(entry.name)


def _planned(
    family: Family, ticked: Iterable[Entry], first: dt.date, child: Child | None
) -> tuple[dt.date, ...]:
    """The mornings of the year, those among them that would be off with what is ticked."""
    off: set[dt.date] = set()
    every = {
        each.first + dt.timedelta(n) for each in ticked for n in range((each.last - each.first).days + 1)
    }
    every -= {*family.extra} | {day for day in every if day < first}
    while True:
        planned = {*year_of(with_off(family, off), child).mornings, *off}
        more = every & planned
        if more == off:
            return tuple(sorted(planned))
        off = more


def _runs(entries: Iterable[Entry], ahead: Sequence[dt.date]) -> list[tuple[dt.date, ...]]:
    """The mornings of events of one name, those in a row together."""
    place = {day: at for at, day in enumerate(ahead)}
    found = [tuple(day for day in ahead if each.first <= day <= each.last) for each in entries]
    runs: list[tuple[dt.date, ...]] = []
    for days in sorted(filter(None, found)):
        last = runs[-1][-1] if runs else None
        if last and (days[0] <= last or (place[days[0]] == place[last] + 1 and days[0] - last <= _NEAR)):
            runs[-1] = tuple(sorted({*runs[-1], *days}))
        else:
            runs.append(days)
    return runs


def with_off(family: Family, off: Collection[dt.date]) -> Family:
    """The family with these days off as well."""
    return family._replace(off=(*family.off, *((day, day) for day in off)))


def mornings_of(taken: Iterable[Offer]) -> frozenset[dt.date]:
    """The mornings that are off with what is taken."""
    return frozenset(day for offer in taken for day in offer.days)


def outcome(family: Family, taken: Iterable[Offer], child: Child | None = None) -> str:
    """What the ticks do to the year's last day, in a sentence."""
    off = mornings_of(taken)
    if not off:
        return f"Nothing is checked: the last day stays {last_day(year_of(family, child))}."
    moves = _moves(year_of(family, child), year_of(with_off(family, off), child))
    return f"{len(off)} {plural(len(off), 'morning')} off: the last day {moves}."


def _moves(before: SchoolYear, after: SchoolYear) -> str:
    now, then = last_day(before), last_day(after)
    return f"stays {now}" if then == now else f"moves from {now} to {then}"


def last_day(year: SchoolYear) -> str:
    """The last day of a year in words: "May 6"."""
    return date_words(year.mornings[-1], weekday=False)


def take(context: Context, taken: Sequence[Offer]) -> str:
    """Take them, so that it can be undone; what the last day is now, in a sentence.

    FileProblem, and nothing changed or logged, where the family file can't be written.
    """
    off = mornings_of(taken)
    before = context.year
    after = year_of(with_off(context.family, off), context.child)
    mornings = tuple(sorted({*before.mornings, *off, *after.mornings}))
    stretches = before._replace(mornings=mornings).stretches(off)

    def work() -> None:
        context.editor.take_off(stretches)
        if context.editor.unsaved:
            path = context.places.config / "family.toml"
            raise FileProblem(
                path, None, "", "a file to save in", "one that won’t take it", context.editor.unsaved
            )

    assert context.journal is not None
    undoing.logged(context, context.journal, undoing.CALENDAR, work, {"mornings": len(off)})
    are = "morning is" if len(off) == 1 else "mornings are"
    return f"{len(off)} {are} off now: the last day {_moves(before, context.year)}."


def days_off(year: SchoolYear, first: dt.date) -> tuple[tuple[dt.date, ...], ...]:
    """The days off from ``first`` on: school weekdays without a morning, those in a row together."""
    start, end = max(first, year.mornings[0]), year.mornings[-1]
    dates = [start + dt.timedelta(n) for n in range((end - start).days + 1)]
    weekly = [day for day in dates if day.weekday() in year.weekdays]
    held = {*year.mornings}
    runs: list[list[dt.date]] = []
    for before, day in pairwise([None, *weekly]):
        if day is None or day in held:
            continue
        if runs and runs[-1][-1] == before:
            runs[-1].append(day)
        else:
            runs.append([day])
    return tuple(map(tuple, runs))
