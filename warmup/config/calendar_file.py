"""A calendar somebody else keeps, as an iCalendar file (RFC 5545): what stands in it, date by date.

The values are read by ``icalendar``, the rules followed by ``dateutil``. A date is that of the wall clock
where the event is; a time in UTC is told by the calendar's own zone, where it names one. Of what an event
says only its name and dates are of use here, and a value of those that is none is refused with its line.
"""

import datetime as dt
import warnings
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any, NamedTuple

from icalendar import Timezone
from icalendar.parser import Contentline
from icalendar.prop import vDDDTypes, vDuration
from icalendar.timezone import TZP

from warmup.config.calendar_entry import Entry
from warmup.config.calendar_lines import Component, Line, calendars, problem
from warmup.config.recurring import Rule, Walk, rule_parts, starts
from warmup.text import FIRST_YEAR, LAST_YEAR, clean, visible

MOST_EVENTS = 20_000
LONGEST_NAME = 60
"""The longest name of an event, in characters; the rest of it is cut off."""
NO_NAME = "no name"
_LONGEST = dt.timedelta(4000)
"""The longest that an event is taken for: beyond it lies no school year, and behind the year 9999 no date."""
_A_DATE = "a date like 20261126 or a time like 20261126T090000"
_A_RULE = "a rule of days, weeks, months or years like FREQ=YEARLY"
_ZONE_PARTS = frozenset({"FREQ", "INTERVAL", "COUNT", "UNTIL", "WKST", "BYMONTH", "BYMONTHDAY", "BYDAY"})
_MIDNIGHT, _NEARLY_A_DAY = dt.time(), dt.timedelta(hours=23, minutes=59)


class Event(NamedTuple):
    """An event as its lines tell it. Times are those of its own wall clock.

    ``utc`` says that this clock is UTC. ``of`` tells what it is a part of; ``instead`` is the time of the
    series that it stands in for, and with ``on`` all that come after.
    """

    line: int
    name: str
    start: dt.datetime
    length: dt.timedelta
    dated: bool
    utc: bool
    canceled: bool
    rules: tuple[Rule, ...]
    more: tuple[dt.datetime, ...]
    never: frozenset[dt.datetime | dt.date]
    of: str
    instead: dt.datetime | None
    on: bool


def entries(path: Path, first: dt.date, last: dt.date) -> tuple[Entry, ...]:
    """What a calendar file has from ``first`` to ``last``, by date and name. FileProblem where it is none."""
    walk = Walk()
    found: list[Entry] = []
    for calendar in calendars(path):
        reader = _Reader(path, calendar)
        for event, when in _occurrences(path, reader.events(), last, walk):
            entry = _entry(event, reader.at_home(when) if event.utc else when)
            if entry.first <= last and entry.last >= first:
                found.append(entry)
    return tuple(sorted({*found}, key=lambda each: (each.first, each.last, each.name)))


def _entry(event: Event, start: dt.datetime) -> Entry:
    whole = event.dated or (start.time() == _MIDNIGHT and event.length >= _NEARLY_A_DAY)
    end = start + event.length
    # An end is not part of the event (RFC 5545, section 3.6.1): at midnight it is over with the day before.
    last = (end - dt.timedelta(microseconds=1)).date() if end > start else start.date()
    return Entry(event.name, start.date(), last, whole)


def _occurrences(
    path: Path, events: Iterable[Event], last: dt.date, walk: Walk
) -> Iterator[tuple[Event, dt.datetime]]:
    """Each event with each time it begins, those left out that are canceled or stand in for another."""
    series: dict[str, list[Event]] = {}
    instead: dict[str, list[Event]] = {}
    for event in events:
        kept = series if event.instead is None else instead
        kept.setdefault(event.of or f" {event.line}", []).append(event)
    end = dt.datetime.combine(last, dt.time.max)
    for name, events_of in series.items():
        for event in events_of:
            try:
                times = starts(event.start, event.rules, event.more, event.never, end, walk)
            except Exception as error:
                # What dateutil makes of a rule that is none is not told by any one kind of error.
                line = Line(event.line, "RRULE", "")
                raise problem(path, line, _A_RULE, "one that can’t be followed") from error
            yield from _with_changes(event, times, instead.get(name, ()))
    for changes in instead.values():
        yield from ((change, change.start) for change in changes if not change.canceled)


def _with_changes(
    event: Event, times: list[dt.datetime], changes: Iterable[Event]
) -> Iterator[tuple[Event, dt.datetime]]:
    """The times of a series less those that another event stands in for; moved, after one that goes on."""
    moved: list[tuple[Event, dt.datetime]] = []
    for change in sorted(changes, key=lambda each: each.instead or each.start):
        at = change.instead
        assert at is not None
        if change.on:
            later = [when for when in times if when > at]
            moved = [each for each in moved if each[1] <= at]
            moved += [(change, when + (change.start - at)) for when in later if not change.canceled]
            times = [when for when in times if when < at]
        else:
            times = [when for when in times if when != at]
    if not event.canceled:
        yield from ((event, when) for when in times)
        yield from moved


def _read(value: str) -> Any:
    """The date or time of a value, of a period its beginning. ValueError where it is none."""
    try:
        moment = vDDDTypes.from_ical(value)  # type: ignore[no-untyped-call]
    except Exception as error:
        # Besides ValueError the library lets through what its parts raise.
        raise ValueError(value) from error
    moment = moment[0] if isinstance(moment, tuple) else moment
    if not isinstance(moment, dt.date):
        raise ValueError(value)
    return moment


def _known_zone(name: str) -> dt.tzinfo | None:
    """The zone that goes by this name everywhere, or on Windows; None where there is none."""
    # The library's own lookup keeps what calendars told of zones, for those that are read after them too.
    lookup = TZP()
    try:
        with warnings.catch_warnings(action="ignore"):
            zone = lookup.timezone(name) if name else None
    except Exception:
        # It looks for a file of that name, which may be any text.
        return None
    return zone if isinstance(zone, dt.tzinfo) else None


class _Reader:
    """Reads the events of one calendar."""

    def __init__(self, path: Path, calendar: Component) -> None:
        self._path, self._calendar = path, calendar
        self._told = {
            self._value(line)[1].strip(): each
            for each in calendar.inside
            if each.name == "VTIMEZONE" and (line := each.first("TZID"))
        }
        self._zones: dict[str, dt.tzinfo | None] = {}
        named = calendar.first("X-WR-TIMEZONE")
        home = self._value(named)[1].strip() if named else next(iter(self._told), "")
        self._home = self._zone(home)

    def at_home(self, when: dt.datetime) -> dt.datetime:
        """A time in UTC by the calendar's own zone, where it has one."""
        if self._home is None:
            return when
        return when.replace(tzinfo=dt.UTC).astimezone(self._home).replace(tzinfo=None)

    def events(self) -> Iterator[Event]:
        """The events in the order of the file."""
        found = [each for each in self._calendar.inside if each.name == "VEVENT"]
        if len(found) > MOST_EVENTS:
            line = Line(found[MOST_EVENTS].number, "BEGIN", "")
            raise problem(self._path, line, f"at most {MOST_EVENTS} events", f"{len(found)}")
        return map(self._event, found)

    def _event(self, event: Component) -> Event:
        begins = event.first("DTSTART")
        if begins is None:
            line = Line(event.number, "BEGIN:VEVENT", "")
            raise problem(self._path, line, "an event with a DTSTART", "none")
        said = self._moment(begins)
        zone = said.tzinfo if isinstance(said, dt.datetime) else None
        start = self._wall(begins, said, zone)
        if not FIRST_YEAR <= start.year <= LAST_YEAR:
            raise problem(self._path, begins, f"a date between the years {FIRST_YEAR} and {LAST_YEAR}")
        name, of, status = (self._text(event.first(key)) for key in ("SUMMARY", "UID", "STATUS"))
        instead = event.first("RECURRENCE-ID")
        return Event(
            line=(event.first("RRULE") or begins).number,
            name=name[:LONGEST_NAME].strip() if visible(name) else NO_NAME,
            start=start,
            length=self._length(event, start, zone),
            dated=not isinstance(said, dt.datetime),
            utc=zone is dt.UTC or str(zone) == "UTC",
            canceled=status.upper() == "CANCELLED",
            rules=tuple(self._rule(line, said) for line in event.every("RRULE")),
            more=tuple(self._wall(line, each, zone) for line, each in self._dates(event.every("RDATE"))),
            never=frozenset(self._never(event, zone)),
            of=of,
            instead=self._instead(instead, start, zone) if instead else None,
            on=bool(instead and self._value(instead)[0].get("RANGE", "").upper() == "THISANDFUTURE"),
        )

    # -- its parts

    def _length(self, event: Component, start: dt.datetime, zone: dt.tzinfo | None) -> dt.timedelta:
        """How long it lasts; nothing where it does not say so."""
        length = dt.timedelta()
        if line := event.first("DTEND"):
            length = self._wall(line, self._moment(line), zone) - start
        elif line := event.first("DURATION"):
            try:
                length = vDuration.from_ical(self._value(line)[1].strip())  # type: ignore[no-untyped-call]
            except Exception as error:
                raise problem(self._path, line, "a duration like P1D or PT45M") from error
        if line and length < dt.timedelta():
            raise problem(self._path, line, "an end that is not before the beginning")
        return min(length, _LONGEST)

    def _rule(self, line: Line, start: dt.date) -> Rule:
        """A rule; its end is by the clock of the event, and an end that is a date is meant whole."""
        try:
            parts = rule_parts(self._value(line)[1])
            if (until := parts.pop("UNTIL", None)) is None:
                return Rule(parts)
            moment = _read(until)
        except ValueError as error:
            raise problem(self._path, line, _A_RULE) from error
        dated = not isinstance(moment, dt.datetime)
        if not isinstance(start, dt.datetime) and not dated and moment.time() == _MIDNIGHT:
            # Against section 3.3.10, but written by some: midnight in UTC where a date is meant.
            dated, moment = True, moment.date()
        wall = self._wall(line, moment, start.tzinfo if isinstance(start, dt.datetime) else None)
        return Rule(parts, wall + dt.timedelta(1, -1) if dated and wall.year <= LAST_YEAR else wall)

    def _never(self, event: Component, zone: dt.tzinfo | None) -> Iterator[dt.datetime | dt.date]:
        for line, each in self._dates(event.every("EXDATE")):
            yield self._wall(line, each, zone) if isinstance(each, dt.datetime) else each

    def _instead(self, line: Line, start: dt.datetime, zone: dt.tzinfo | None) -> dt.datetime:
        moment = self._moment(line)
        if isinstance(moment, dt.datetime):
            return self._wall(line, moment, zone)
        return dt.datetime.combine(moment, start.time())

    def _dates(self, lines: Iterable[Line]) -> Iterator[tuple[Line, dt.date]]:
        """The dates and times of lists, of a period its beginning."""
        for line in lines:
            named, value = self._value(line)
            try:
                found = [_read(each) for each in value.strip().rstrip(",").split(",")]
            except ValueError as error:
                raise problem(self._path, line, _A_DATE) from error
            yield from ((line, self._placed(moment, named)) for moment in found)

    # -- its values

    def _value(self, line: Line) -> tuple[dict[str, str], str]:
        """The parameters of a line and its value."""
        try:
            _, named, value = Contentline(line.text).parts()  # type: ignore[no-untyped-call]
            return {str(key).upper(): str(each) for key, each in named.items()}, str(value)
        except Exception as error:
            # Whatever the library raises, it is this line that it can't read.
            raise problem(self._path, line, "a line of a calendar like SUMMARY:Fall break") from error

    def _text(self, line: Line | None) -> str:
        return clean(self._value(line)[1]) if line else ""

    def _moment(self, line: Line) -> dt.date:
        """The date or time of a line."""
        named, value = self._value(line)
        try:
            return self._placed(_read(value.strip()), named)
        except ValueError as error:
            raise problem(self._path, line, _A_DATE) from error

    def _placed(self, moment: dt.date, named: dict[str, str]) -> dt.date:
        """A time that is not in UTC gets the zone its line names."""
        if isinstance(moment, dt.datetime) and moment.tzinfo is None and (name := named.get("TZID")):
            return moment.replace(tzinfo=self._zone(name))
        return moment

    def _wall(self, line: Line, moment: dt.date, zone: dt.tzinfo | None) -> dt.datetime:
        """A date or time by the wall clock of a zone; of a date its midnight."""
        if not isinstance(moment, dt.datetime):
            return dt.datetime.combine(moment, _MIDNIGHT)
        zone = zone or self._home
        try:
            there = moment.astimezone(zone) if moment.tzinfo and zone else moment
        except (OverflowError, ValueError) as error:
            raise problem(self._path, line, _A_DATE) from error
        return there.replace(tzinfo=None)

    def _zone(self, name: str) -> dt.tzinfo | None:
        """The zone of this name: one that is known anywhere, else as the calendar tells it, else none."""
        if name not in self._zones:
            self._zones[name] = _known_zone(name)
            if self._zones[name] is None and name in self._told:
                self._zones[name] = self._told_zone(self._told[name])
        return self._zones[name]

    def _told_zone(self, told: Component) -> dt.tzinfo:
        lines = ["BEGIN:VTIMEZONE", *(line.text for line in told.lines)]
        for part in told.inside:
            for line in part.every("RRULE"):
                parts = self._value(line)[1].upper().split(";")
                if (
                    "FREQ=YEARLY" not in parts
                    or not {each.partition("=")[0] for each in parts} <= _ZONE_PARTS
                ):
                    raise problem(self._path, line, "a zone that changes on days of the year")
            lines += [f"BEGIN:{part.name}", *(line.text for line in part.lines), f"END:{part.name}"]
        try:
            zone: Any = Timezone.from_ical("\r\n".join([*lines, "END:VTIMEZONE", ""]))
            made = zone.to_tz(lookup_tzid=False)
            assert isinstance(made, dt.tzinfo)
            return made
        except Exception as error:
            line = Line(told.number, "BEGIN:VTIMEZONE", "")
            raise problem(self._path, line, "a time zone that can be used", "one that can’t") from error
