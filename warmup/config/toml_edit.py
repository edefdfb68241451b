"""Keys and rows of a TOML text changed in place, so that comments, order and what is unknown here stay."""

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any, TypeVar

import tomlkit
from tomlkit.exceptions import TOMLKitError
from tomlkit.items import AoT, Null, Table

from warmup.config.toml_file import Document, FileProblem
from warmup.config.writing import NO_CHANGE

T = TypeVar("T")
UNUSUAL = (TOMLKitError, ValueError, TypeError, KeyError, IndexError, AttributeError, RecursionError)
"""What comes of changing a text whose layout ``tomlkit`` does not take."""


def to_edit(file: Document) -> Any:
    """The text of a file as ``tomlkit`` changes it."""
    return tomlkit.parse(file.text if file.text.endswith("\n") else f"{file.text}\n")


def too_unusual(path: Path) -> FileProblem:
    """A text can't be changed in place."""
    expected, found = "a layout that can be changed", "one that is too unusual"
    return FileProblem(path, None, "", expected, found, f"{NO_CHANGE} Edit it.")


def set_keys(table: Any, old: Mapping[str, Any], new: Mapping[str, Any]) -> None:
    """Set the keys whose values differ; a value that says nothing takes its key away."""
    for key, value in new.items():
        if key in old and old[key] == value:
            continue
        if value in (None, "", []):
            if key in table:
                del table[key]
        elif key in table:
            table[key] = value
        else:
            add_key(table, key, value)


def add_key(table: Any, key: str, value: Any) -> None:
    """Add a key after the last one, and before what stands above the next heading."""
    if isinstance(table, Table):
        above = _taken_above(table)
        table.add(key, value)
        last_table(table).value.body.extend(above)
    else:
        table[key] = value


def _taken_above(table: Table) -> list[Any]:
    """Blank lines and comments at the end of a table, taken out: they stand above the next heading."""
    body = last_table(table).value.body
    above: list[Any] = []
    while body and body[-1][0] is None and not isinstance(body[-1][1], Null):
        above.insert(0, body.pop())
    return above


def last_table(table: Table) -> Table:
    """The table in which the text of this one ends."""
    for key, item in reversed(table.value.body):
        if isinstance(item, AoT) and len(item):
            return last_table(item[-1])
        if isinstance(item, Table) and key is not None and not key.is_dotted():
            return last_table(item)
        if not isinstance(item, Null):
            break
    return table


def set_elements(
    table: Any,
    key: str,
    old: Sequence[T],
    new: Sequence[T],
    form: Callable[[T, bool], Any],
    *,
    tables: bool = False,
) -> None:
    """Take the elements out of a list that went, and put in those that came."""
    gone = [index for index, each in enumerate(old) if each not in new]
    come = list(dict.fromkeys(each for each in new if each not in old))
    change_rows(table, key, gone, come, form, tables=tables)


def change_rows(
    table: Any,
    key: str,
    gone: Sequence[int],
    come: Sequence[T],
    form: Callable[[T, bool], Any],
    *,
    tables: bool,
) -> None:
    """Take out by index, and put in at the end. ``tables`` says that a new list is one of [[tables]]."""
    if not gone and not come:
        return
    rows = table[key] if key in table else tomlkit.aot() if tables else tomlkit.array()
    for each in come:
        _append(rows, form(each, not isinstance(rows, AoT)))
    if key not in table:
        add_key(table, key, rows)
    for index in reversed(gone):
        above = _taken_above(rows[index]) if isinstance(rows, AoT) else []
        del rows[index]
        if above:
            around = rows[max(0, index - 1)] if len(rows) else table
            body = last_table(around).value.body if isinstance(around, Table) else around.body
            body.extend(above)


def _append(rows: Any, row: Any) -> None:
    above = _taken_above(rows[-1]) if isinstance(rows, AoT) and len(rows) else []
    if above:
        last_table(rows[-1]).add(tomlkit.nl())
    rows.append(row)
    if above:
        last_table(rows[-1]).value.body.extend(above)
