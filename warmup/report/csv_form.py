"""What is told as records: one table of CSV by RFC 4180, of which no cell can be taken for a formula.

Every record has the same fields. ``part`` says what it is of: ``report`` (whose, and of which days),
``about`` (what it is not), ``day`` (with a warm-up; ``relation`` says whether it was a confirmed school day),
``school day`` (a confirmed one without), ``month`` (a record a count, ``unit`` says of what), ``topic`` and
``thing``, ``step`` (a record a code; ``date`` is when it was first asked, ``until`` when it settled),
``review``, ``note``; or ``letter`` and ``summer`` for what is read in sentences.
"""

import csv
import io
from collections.abc import Iterator
from typing import NamedTuple

from warmup.report.document import Bullets, Document, Plot, Table
from warmup.report.facts import Attendance, Month, Report
from warmup.report.summary import NO_TEST, OUTCOMES, RULES, coded, minutes


class Record(NamedTuple):
    """One record. Dates are as in 2026-08-31, ``number`` counts ``unit``; empty where there is nothing."""

    part: str
    name: str = ""
    code: str = ""
    relation: str = ""
    date: str = ""
    until: str = ""
    number: str = ""
    unit: str = ""
    text: str = ""


def report_csv(report: Report) -> str:
    """A report, its lines ended by CR LF."""
    return _written(records(report))


def document_csv(document: Document, part: str) -> str:
    """A letter or a list, a record a sentence; ``name`` is the title of its section."""
    return _written(_sentences(document, part))


def _written(found: Iterator[Record]) -> str:
    text = io.StringIO(newline="")
    # "excel" is the dialect of RFC 4180: CR LF, and a quote within quotes doubled.
    writer = csv.writer(text, dialect="excel")
    writer.writerow(Record._fields)
    writer.writerows([safe(cell) for cell in record] for record in found)
    return text.getvalue()


def safe(cell: str) -> str:
    """A cell no spreadsheet takes for a formula: an apostrophe before its sign (OWASP, CSV Injection)."""
    return f"'{cell}" if cell.startswith(("=", "+", "-", "@", "\t", "\r")) else cell


def records(report: Report) -> Iterator[Record]:
    """The records of a report, in the order of its sections."""
    yield Record(
        "report", report.child, date=f"{report.first}", until=f"{report.last}", text=f"written {report.made}"
    )
    yield from (Record("about", text=each) for each in (NO_TEST, RULES))
    yield from _days(report.attendance)
    for month in report.attendance.months:
        yield from _month(month)
    for topic in report.topics:
        for number, unit in ((topic.questions, "questions"), (topic.days, "days")):
            yield Record("topic", topic.title, relation=topic.strand, number=str(number), unit=unit)
    for thing in report.materials:
        yield Record("thing", thing.name, number=str(thing.days), unit="days")
    for code, leads, level in coded(report):
        relation = "toward" if leads else "exercises" if code else ""
        settled, count = f"{level.settled or ''}", str(level.questions)
        yield Record("step", level.words, code, relation, f"{level.first}", settled, count, "questions")
    for each in report.reviews:
        first, last = (f"{day}" for day in (each.dates[0], each.dates[-1]))
        yield Record(
            "review", each.title, "", "", first, last, str(each.week), "week", OUTCOMES[each.outcome]
        )
    for note in report.notes:
        yield Record("note", date=f"{note.date}", text=note.text)


def _days(kept: Attendance) -> Iterator[Record]:
    for day in sorted({*kept.held, *kept.confirmed}):
        school = "confirmed school day" if day in kept.confirmed else ""
        yield Record("day" if day in kept.held else "school day", relation=school, date=f"{day}")


def _month(month: Month) -> Iterator[Record]:
    counts = (
        (month.school, "school days confirmed"),
        (month.held, "days with a warm-up"),
        (minutes(month.seconds), "minutes, estimated"),
    )
    for number, unit in counts:
        yield Record("month", date=f"{month.first}", number=str(number), unit=unit)


def _sentences(document: Document, part: str) -> Iterator[Record]:
    yield Record(part, "title", text=document.title)
    yield Record(part, "about", text=document.about)
    for section in document.sections:
        for each in section.parts:
            match each:
                case str():
                    yield Record(part, section.title, text=each)
                case Bullets(lines):
                    for line in lines:
                        yield Record(part, section.title, text=line)
                case Table() | Plot():
                    raise TypeError(f"{part} is read in sentences, and has no {type(each).__name__}")
