"""A document as plain text, for a terminal or a plain file: lines of a given width, tables in columns.

Plots are left out: what they show stands in a table as well.
"""

import textwrap
from collections.abc import Iterator, Sequence

from warmup.report.document import Bullets, Document, Part, Plot, Table

WIDTH = 72
"""How many columns a line of a file has."""
_LEAST = 9
"""A column of words is no narrower; where it would be, each row is told in lines."""


def lines(document: Document, width: int = WIDTH) -> Iterator[str]:
    """The document in lines of at most ``width`` columns, as far as its longest word allows."""
    yield from _wrapped(document.title, width)
    yield "=" * min(width, len(document.title))
    yield from _wrapped(document.about, width)
    for section in document.sections:
        yield ""
        if section.title:
            yield from _wrapped(section.title, width)
            yield "-" * min(width, len(section.title))
        told = [part for part in section.parts if not isinstance(part, Plot)]
        for number, part in enumerate(told):
            if number:
                yield ""
            yield from _part(part, width)


def _part(part: Part, width: int) -> Iterator[str]:
    match part:
        case str():
            yield from _wrapped(part, width)
        case Bullets(each):
            for line in each:
                yield from _wrapped(line, width, "- ")
        case Table():
            yield from _table(part, width)
        case Plot():
            pass


def _wrapped(text: str, width: int, first: str = "") -> list[str]:
    later = " " * len(first)
    return textwrap.wrap(text, max(8, width), initial_indent=first, subsequent_indent=later) or [first]


def _table(table: Table, width: int) -> Iterator[str]:
    yield from _wrapped(f"{table.caption}:", width)
    widths = _widths(table, width)
    if widths is None:
        yield from _told_by_row(table, width)
        return
    yield from _row(table, table.heads, widths)
    yield "  ".join("-" * each for each in widths)
    for row in table.rows:
        yield from _row(table, row, widths)


def _widths(table: Table, width: int) -> list[int] | None:
    """How wide each column is: as its longest cell, the widest ones narrower where all have no room."""
    columns = list(zip(table.heads, *table.rows, strict=True))
    widths = [max(map(len, column)) for column in columns]
    least = [
        max(
            _LEAST if number not in table.numbers else 0,
            max(len(word) for cell in column for word in cell.split() or [""]),
        )
        for number, column in enumerate(columns)
    ]
    room = width - 2 * (len(columns) - 1)
    while sum(widths) > room:
        able = [number for number, wide in enumerate(widths) if wide > least[number]]
        if not able:
            return None
        widths[max(able, key=lambda number: widths[number])] -= 1
    return widths


def _row(table: Table, row: Sequence[str], widths: Sequence[int]) -> Iterator[str]:
    cells = [textwrap.wrap(cell, wide) or [""] for cell, wide in zip(row, widths, strict=True)]
    for at in range(max(map(len, cells))):
        pieces = [cell[at] if at < len(cell) else "" for cell in cells]
        set_out = (
            f"{piece:>{wide}}" if number in table.numbers else f"{piece:<{wide}}"
            for number, (piece, wide) in enumerate(zip(pieces, widths, strict=True))
        )
        yield "  ".join(set_out).rstrip()


def _told_by_row(table: Table, width: int) -> Iterator[str]:
    """Where there is no room for columns: a row after another, each cell behind its head."""
    for row in table.rows:
        told = "; ".join(
            cell if not number else f"{head.lower()}: {cell}"
            for number, (head, cell) in enumerate(zip(table.heads, row, strict=True))
            if cell
        )
        yield from _wrapped(told, width, "- ")
