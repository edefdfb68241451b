"""One report from the asking to its text: what is wanted, and in which form."""

import datetime as dt
from enum import Enum
from pathlib import Path
from typing import NamedTuple

from warmup.report import csv_form, html_form, json_form, text_form
from warmup.report.document import Document
from warmup.report.facts import Report, Shared
from warmup.report.gathering import gather
from warmup.report.letter import Span, letter, span_of, told_of
from warmup.report.summary import summary
from warmup.report.summer import summer
from warmup.session.context import Context
from warmup.session.then_and_now import then_and_now


class Form(Enum):
    """What a report can be written as, by the ending of its file."""

    TEXT = "txt"
    HTML = "html"
    CSV = "csv"
    JSON = "json"


class Wanted(NamedTuple):
    """What is asked for: the record of some days, a letter, or the list for the summer.

    Without ``first`` it begins with the school year, without ``last`` it ends today; a letter has the days of
    the quarter or year that ``last`` lies in. ``signed`` is the adult's name, where it is to stand there.
    """

    first: dt.date | None = None
    last: dt.date | None = None
    span: Span | None = None
    summer: bool = False
    signed: str = ""
    notes: tuple[Shared, ...] = ()


class Made(NamedTuple):
    """A report made: what it counts, and how it reads."""

    report: Report
    document: Document
    kind: str

    def text(self, form: Form) -> str:
        """The whole of it in a form."""
        match form:
            case Form.TEXT:
                return "\n".join(text_form.lines(self.document)) + "\n"
            case Form.HTML:
                return html_form.page(self.document)
            case Form.CSV if self.kind == "report":
                return csv_form.report_csv(self.report)
            case Form.CSV:
                return csv_form.document_csv(self.document, self.kind)
            case Form.JSON if self.kind == "report":
                return json_form.report_json(self.report)
            case Form.JSON:
                return json_form.document_json(self.document, self.kind)

    def name(self, form: Form) -> str:
        """What a file of it may be called."""
        return f"warmup-{self.kind}-{self.report.last}.{form.value}"


def make(context: Context, wanted: Wanted) -> Made:
    """Count and lay out what is wanted."""
    last = min(wanted.last or context.today, context.today)
    if wanted.span is Span.QUARTER and wanted.last is None:
        last = told_of(context.year, last)
    if wanted.span:
        first, end = span_of(context.year, wanted.span, last)
        report = gather(context, min(first, last), end)
        changes = _changes(context, report) if wanted.span is Span.YEAR else ()
        return Made(report, letter(report, wanted.span, context.year, wanted.signed, changes), "letter")
    begins = span_of(context.year, Span.YEAR, last)[0]
    report = gather(context, wanted.first or min(begins, last), last, wanted.notes)
    if wanted.summer:
        return Made(report, summer(report, context, wanted.signed), "summer")
    return Made(report, summary(report, wanted.signed), "report")


def _changes(context: Context, report: Report) -> tuple[str, ...]:
    """What of the report's days can be set side by side, in words as of its last one."""
    lines = context.history(report.last + dt.timedelta(1), report.first)
    return tuple(change.words(report.last) for change in then_and_now(lines))


def ending(path: Path) -> Form | None:
    """The form that the ending of a file's name says; None where it says none."""
    known = {form.value: form for form in Form} | {"text": Form.TEXT, "htm": Form.HTML}
    return known.get(path.suffix.casefold().removeprefix("."))
