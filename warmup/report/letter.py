"""A letter to the family about a quarter or the year: plain sentences, each of them counted."""

import datetime as dt
from collections.abc import Iterator, Sequence
from enum import Enum

from warmup.engine.review import Outcome
from warmup.english import ordinal_word, plural
from warmup.report.document import Document, Part, Section
from warmup.report.facts import Report
from warmup.report.summary import NO_TEST, RULES, dated, days, minutes
from warmup.schoolyear import WEEKS_A_QUARTER, SchoolYear

MOST = 5
"""How many steps a letter names at once."""


class Span(Enum):
    """What a letter is about."""

    QUARTER = "quarter"
    YEAR = "year"


def span_of(year: SchoolYear, span: Span, day: dt.date) -> tuple[dt.date, dt.date]:
    """The first and the last planned morning of the year, or of the quarter that a day lies in."""
    mornings: Sequence[dt.date] = year.mornings
    if span is Span.QUARTER:
        mornings = [each for each in mornings if _quarter(year, each) == _quarter(year, day)] or mornings
    return (mornings[0], mornings[-1]) if mornings else (day, day)


def told_of(year: SchoolYear, today: dt.date) -> dt.date:
    """The day whose quarter a letter of ``today`` tells: in its first week a quarter is no news yet.

    Then it is the last morning of the one before, which the first quarter has not.
    """
    first, _ = span_of(year, Span.QUARTER, today)
    begun = year.between(first, today + dt.timedelta(1))
    before = year.between(year.mornings[0], first) if year.mornings else ()
    return before[-1] if before and len(begun) <= year.mornings_a_week and today >= first else today


def _quarter(year: SchoolYear, day: dt.date) -> int:
    return (year.morning(day).week - 1) // WEEKS_A_QUARTER + 1


def letter(
    report: Report, span: Span, year: SchoolYear, signed: str = "", changes: Sequence[str] = ()
) -> Document:
    """The letter; the report is that of its span, as far as it is known today.

    ``changes`` are sentences of what was hard at first and comes easily by now.
    """
    name, last = report.child, span_of(year, span, report.first)[1]
    what = "school year" if span is Span.YEAR else f"{ordinal_word(_quarter(year, report.first))} quarter"
    opening = (
        f"This is a letter about {name}’s math warm-ups in the {what}, from "
        f"{dated(report.first)} to {dated(report.last)}."
    )
    if last > report.last:
        opening += f" The {span.value} goes on until {dated(last)}."
    parts: tuple[Part, ...] = (
        "Dear family,",
        opening,
        *_told(report, span),
        *([" ".join(changes)] if changes else []),
        NO_TEST,
        RULES,
        f"Warm wishes{f', {signed}' if signed else ''}",
    )
    made = f"Written on {dated(report.made)}."
    return Document(f"A letter about {name}’s {what}", made, (Section("", parts),))


def _told(report: Report, span: Span) -> Iterator[str]:
    """The sentences that are true of this report; what there is nothing of is not said."""
    held = len(report.attendance.held)
    if not held:
        yield "No warm-up is written down for these days."
        return
    long = minutes(report.attendance.seconds)
    yield (
        f"There was a warm-up on {days(held)}, about {long} {plural(long, 'minute')} in all. "
        "The minutes are an estimate."
    )
    if report.topics:
        order = (strand for strand, _ in report.strands.most_common())
        yield f"The questions were about: {'; '.join(order)}."
    new = [level.words for level in report.levels if level.first >= report.first]
    if new:
        yield f"Asked for the first time this {span.value}: {_some(new)}."
    settled = dict.fromkeys(each.title.lower() for each in report.reviews if each.outcome is Outcome.SETTLED)
    if settled:
        yield f"In a review week, this came easily on two mornings: {_some(list(settled))}."
    easy = [level.words for level in report.levels if level.easy]
    if easy:
        yield f"This came easily when it was last marked: {_some(easy[::-1])}."
    slow = [level.words for level in report.levels if level.easy is False]
    if slow:
        yield (
            f"Some of this did not come easily when it was last marked, and that is ordinary: {_some(slow)}."
        )


def _some(things: Sequence[str]) -> str:
    """The first few things, and how many more there are."""
    more = len(things) - MOST
    named = "; ".join(things[:MOST])
    return f"{named}; and {more} more" if more > 0 else named
