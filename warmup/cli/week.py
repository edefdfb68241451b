"""The page of a week as text or JSON, and what to have ready on the next school morning, in a line.

``warmup week --json`` holds ``format`` ("warmup-week"), ``version`` (1), ``child``, ``week``, ``quarter``,
``review`` and ``this_week`` (both true or false), ``days``, ``levels`` and ``gather``. A day has ``first``
and ``last`` (the same date, but for a stretch of days off), ``when`` ("past", "today", "to come" or "off")
and ``reviewed`` (skills); a level ``level``, ``title``, ``label``, ``week`` (that of the plan), ``day`` (on
which it was first asked, or is likely to be; null where there is none in this week), ``lesson`` ("taught",
"not taught yet", or empty where nothing was said) and ``asked``; a thing to gather ``thing``, ``first`` (the
first morning that wants it) and ``picture`` (whether a picture on the stage can stand in for it).
"""

import textwrap
from collections.abc import Iterator
from types import SimpleNamespace
from typing import Any

from warmup.cli.plain import SMALL_THINGS
from warmup.cli.printing import reading_context, show, show_json
from warmup.config.places import Places
from warmup.session.context import Clock, Context
from warmup.session.pausing import paused, until_words
from warmup.session.summary import to_have_ready
from warmup.session.week import MAY_CHANGE, WeekPage, Weeks
from warmup.session.words import has_small_things

FORMAT = "warmup-week"
VERSION = 1
WIDTH = 72
"""The columns of the line that says what to have ready."""
NOTHING_LEFT = "No school morning is left in this year: nothing is needed."


def week(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Print the page of a week: of the one named, of a date's, else of today's."""
    context, journal = reading_context(places, arguments.child, clock, arguments.date)
    page = Weeks(context).page(arguments.week or context.morning(arguments.date).week)
    if arguments.json:
        show_json(week_data(page, context.child.nickname))
    else:
        show(week_lines(page, context))
    if journal:
        journal.shut()


def ready(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Print what to have on the table on the next school morning, or on that of a date or next after it."""
    context, journal = reading_context(places, arguments.child, clock, arguments.date)
    show(ready_lines(arguments, context))
    if journal:
        journal.shut()


def ready_lines(arguments: SimpleNamespace, context: Context) -> Iterator[str]:
    """The day and the things; a second sentence where one of them is small enough to choke on."""
    asked = arguments.date and context.morning(arguments.date)
    day = asked.date if asked and asked.is_school else (asked or context.morning()).next
    if day is None:
        yield NOTHING_LEFT
        return
    when, wanted, handy = to_have_ready(context, day)
    sentences = [f"For {when} have ready: {wanted}." if wanted else f"For {when} nothing is needed."]
    if handy:
        sentences.append(f"If at hand{', too' if wanted else ''}: {handy}.")
    yield from textwrap.wrap(" ".join(sentences), WIDTH, break_on_hyphens=False)
    if has_small_things(wanted, handy):
        yield from textwrap.wrap(SMALL_THINGS, WIDTH)


def week_lines(page: WeekPage, context: Context, *, numbered: bool = False) -> Iterator[str]:
    """The page, one thing a line, every line with its name first; ``numbered`` gives each level a number."""
    number = 0
    yield f"{', '.join(page.parts())}: {context.child.nickname}."
    if page.distance >= 0:
        yield MAY_CHANGE
        if until := paused(context):
            yield until_words(until)
    for group in page.groups():
        yield f"{group.heading}: {group.day.when.value}." if group.day else f"{group.heading}:"
        for row in group.new:
            number += 1
            yield f"  New{f' {number}' * numbered}: {row.words()}"
        if group.day and group.day.reviewed:
            yield f"  Review: {group.day.review_words()}."
    yield from (f"For {day} have ready: {things}." for day, things in page.by_day(page.things.wanted))
    yield from (f"For {day}, if at hand: {things}." for day, things in page.by_day(page.things.handy))
    if page.small_things:
        yield SMALL_THINGS


def week_data(page: WeekPage, child: str) -> dict[str, Any]:
    """The page as JSON values."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "child": child,
        "week": page.week,
        "quarter": page.quarter,
        "review": page.review,
        "this_week": page.distance == 0,
        "days": [
            {
                "first": day.first.isoformat(),
                "last": day.last.isoformat(),
                "when": day.when.value,
                "reviewed": list(day.reviewed),
            }
            for day in page.days
        ],
        "levels": [
            {
                "level": row.level,
                "title": row.title,
                "label": row.label,
                "week": row.week,
                "day": row.day and row.day.isoformat(),
                "lesson": row.lesson.value,
                "asked": row.asked,
            }
            for row in page.new
        ],
        "gather": [
            {"thing": thing.name, "first": thing.first.isoformat(), "picture": picture}
            for things, picture in ((page.things.wanted, False), (page.things.handy, True))
            for thing in things
        ],
    }
