"""What is told as JSON: ``format`` ("warmup-report"), ``version`` (1), ``kind``, and what there is of it.

``kind`` is "report" with every field of :class:`warmup.report.facts.Report` under ``report``, dates as in
2026-08-31 and durations in seconds, and with ``about``, sentences on what it is not; or "letter" or "summer"
with the sections of the document under ``document``. ``version`` goes up when a field goes or changes its
meaning; a new field alone does not.
"""

import datetime as dt
import json
from dataclasses import fields, is_dataclass
from enum import Enum
from typing import Any

from warmup.report.document import Document
from warmup.report.facts import Report
from warmup.report.summary import NO_TEST, RULES

FORMAT, VERSION = "warmup-report", 1


def report_json(report: Report) -> str:
    """A report, indented, with a line end at its end."""
    return _written("report", report, "report", about=[NO_TEST, RULES])


def document_json(document: Document, kind: str) -> str:
    """A letter or a list."""
    return _written("document", document, kind)


def _written(name: str, value: object, kind: str, **more: object) -> str:
    data = {"format": FORMAT, "version": VERSION, "kind": kind, **more, name: _plain(value)}
    return json.dumps(data, indent=2, ensure_ascii=False) + "\n"


def _plain(value: Any) -> Any:
    match value:
        case dt.date():
            return value.isoformat()
        case Enum():
            return value.name.lower()
        case tuple():
            return [_plain(each) for each in value]
        case _ if is_dataclass(value):
            return {field.name: _plain(getattr(value, field.name)) for field in fields(value)}
        case _:
            return value
