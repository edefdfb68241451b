"""``warmup days``: the days off ahead, and days off taken out of a calendar file.

With ``--json`` it prints one object: ``format``, ``today``, ``school_days`` (so far), ``week``, ``last_day``,
``days_off`` (each with ``first``, ``last`` and its ``mornings``) and ``extra``, dates as ISO 8601 has them.
With ``--import`` there are ``offers`` in place of the last two, each with ``number``, ``name``, ``mornings``,
``checked`` and ``whole``, and ``last_day_then``, with the checked ones off.
"""

import datetime as dt
import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from types import SimpleNamespace

from warmup.cli.printing import Refused, reading_context, show, show_json
from warmup.config.family import Child, Family, year_of
from warmup.config.places import Places
from warmup.english import date_words
from warmup.model import Morning
from warmup.session import calendar_days
from warmup.session.calendar_days import Offer
from warmup.session.context import Clock, Context
from warmup.session.first_form import today_words
from warmup.text import clean

FORMAT = 2
ALL, CHECKED = "all", "checked"
TICK = "x"
_HOW = (
    f"{TICK}: its name says that there is no school. Nothing is changed yet. To take them as days off, say "
    f"it again with --take {CHECKED}, with numbers like --take 1,3-5, or with --take {ALL}."
)


def print_days(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Print the days off and extra mornings ahead, the school days so far and the year's last day."""
    context, journal = reading_context(places, arguments.child, clock)
    if journal:
        journal.shut()
    _held(context)
    if arguments.json:
        show_json(_data(context, context.morning()) | _ahead_data(context))
    else:
        show(_lines(context, context.morning()))


def _held(context: Context) -> None:
    """Refused where not one morning is held: of such a year nothing can be said."""
    if not context.year.mornings:
        raise Refused("every day is a day off in family.toml, so there is no school morning")


def _data(context: Context, morning: Morning) -> dict[str, object]:
    return {
        "format": FORMAT,
        "today": morning.date.isoformat(),
        "school_days": morning.school_day,
        "week": morning.week,
        "last_day": context.year.mornings[-1].isoformat(),
    }


def _ahead_data(context: Context) -> dict[str, object]:
    runs = calendar_days.days_off(context.year, context.today)
    return {
        "days_off": [
            {"first": days[0].isoformat(), "last": days[-1].isoformat(), "mornings": _iso(days)}
            for days in runs
        ],
        "extra": _iso(_extra(context)),
    }


def _iso(days: Sequence[dt.date]) -> list[str]:
    return [day.isoformat() for day in days]


def _extra(context: Context) -> list[dt.date]:
    ahead = {day for day in context.family.extra if day >= context.today}
    return sorted(ahead.intersection(context.year.mornings))


def _lines(context: Context, morning: Morning) -> Iterator[str]:
    year = context.year
    yield f"{today_words(morning, year)}."
    tense = "was" if year.mornings[-1] < context.today else "is"
    yield f"The last day of the year {tense} {date_words(year.mornings[-1], year=True)}."
    for heading, runs in (
        ("Days off ahead", calendar_days.days_off(year, context.today)),
        ("Extra mornings ahead", [(day,) for day in _extra(context)]),
    ):
        yield f"{heading}:" if runs else f"{heading}: none."
        yield from (f"  {_run(days)}" for days in runs)
    yield "To change one, open the year in the program’s menu."


def _run(days: Sequence[dt.date]) -> str:
    first, last = (date_words(day, short=True, year=True) for day in (days[0], days[-1]))
    return first if first == last else f"{first} to {last}, {len(days)} mornings"


# -- a calendar file


def offered(
    path: Path, family: Family, today: dt.date, done: bool, child: Child | None = None
) -> tuple[Offer, ...]:
    """What a calendar file has for the family from today on; from tomorrow on where today is ``done``."""
    from warmup.config.calendar_file import entries

    first, last = calendar_days.window(family, child)
    return calendar_days.offers(
        family, entries(path, first, last), max(first, today + dt.timedelta(done)), child
    )


def begun_today(context: Context) -> bool:
    """Whether there is a warm-up of today: then today is no day off."""
    journal, child = context.journal, context.child.journal_name
    return bool(journal and journal.sessions_of(child, context.today))


def print_offers(arguments: SimpleNamespace, clock: Clock, places: Places, path: Path) -> None:
    """Print what may be taken, with numbers. Nothing is changed."""
    context, journal = reading_context(places, arguments.child, clock)
    _held(context)
    found = offered(path, context.family, context.today, begun_today(context), context.child)
    if journal:
        journal.shut()
    if arguments.json:
        show_json(_data(context, context.morning()) | _offers_data(context, found))
    else:
        show(_offer_lines(context, found))


def _offers_data(context: Context, found: Sequence[Offer]) -> dict[str, object]:
    ticked = calendar_days.mornings_of(each for each in found if each.ticked)
    then = year_of(calendar_days.with_off(context.family, ticked), context.child)
    return {
        "offers": [
            {
                "number": number,
                "name": each.name,
                "mornings": _iso(each.days),
                "checked": each.ticked,
                "whole": each.whole,
            }
            for number, each in enumerate(found, start=1)
        ],
        "last_day_then": then.mornings[-1].isoformat(),
    }


def _offer_lines(context: Context, found: Sequence[Offer]) -> Iterator[str]:
    if not found:
        yield calendar_days.NOTHING
        return
    wide = max(len(each.when) for each in found)
    for number, each in enumerate(found, start=1):
        tick = TICK if each.ticked else " "
        yield f"{number:>3} {tick} {each.when:<{wide}}  {each.name} ({each.how_long})"
    if len(found) == calendar_days.MOST:
        yield f"There may be more: no more than {calendar_days.MOST} are listed."
    ticked = [each for each in found if each.ticked]
    if ticked:
        outcome = calendar_days.outcome(context.family, ticked, context.child)
        yield f"With those that have an {TICK}, {outcome}"
    yield _HOW


def chosen(words: str, found: Sequence[Offer]) -> tuple[Offer, ...]:
    """The offers that ``--take`` names: "all", "checked", or numbers like "1,3-5". Refused for others."""
    words = clean(words).casefold()
    if words in (ALL, CHECKED):
        return tuple(each for each in found if words == ALL or each.ticked)
    numbers: set[int] = set()
    for part in words.replace(" ", "").split(","):
        match = re.fullmatch(r"([0-9]{1,4})(?:-([0-9]{1,4}))?", part, re.A)
        first, last = (int(match[1]), int(match[2] or match[1])) if match else (0, 0)
        if not 1 <= first <= last <= len(found):
            many = f"numbers from 1 to {len(found)}" if found else "nothing to take"
            raise Refused(f"--take {part!r} is not understood; there are {many}, “{CHECKED}” and “{ALL}”")
        numbers.update(range(first, last + 1))
    return tuple(found[number - 1] for number in sorted(numbers))


def take(arguments: SimpleNamespace, context: Context, clock: Clock, path: Path) -> Iterator[str]:
    """Take days off out of a calendar file, those named or those ticked on a page; lines about it."""
    _held(context)
    found = offered(path, context.family, context.today, begun_today(context), context.child)
    if not found:
        yield calendar_days.NOTHING
        return
    if arguments.take:
        taken = chosen(arguments.take, found)
    else:
        from warmup.tui.calendar_days import ask

        taken = ask(context, clock, found)
    if not taken:
        yield "Nothing was taken, so nothing is changed."
        return
    outcome = calendar_days.take(context, taken)
    yield from (f"Off: {each.when}, {each.name}" for each in taken)
    yield outcome
