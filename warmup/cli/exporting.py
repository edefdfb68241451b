"""Everything a family has as plain files, and back: ``warmup export --all DIR`` and ``warmup import DIR``.

The folder holds

* ``README.md``: what is in it, for people;
* ``export.toml``: ``format`` (1), ``made`` (the date), ``journal`` (the version of the tables), and under
  ``[rows]`` how many rows each table has;
* ``sittings.csv``, ``prompts.csv``, ``marks.csv``, ``actions.csv``, ``notes.csv`` and ``practice.csv``: the
  journal, in the form that :mod:`warmup.journal.tables` describes;
* ``settings/``: family.toml, own.toml and the family's own routine files, byte for byte.

An import checks all of that first. Into an empty journal every row goes as it is; into another one the rows
are merged, as those of another machine are. A settings file that is there already is never written over.
"""

import datetime as dt
import os
import sqlite3
import tempfile
from collections.abc import Callable, Mapping
from contextlib import AbstractContextManager, closing
from pathlib import Path
from types import SimpleNamespace

from warmup.cli.keeping import LEFT_OUT, without_forgotten
from warmup.cli.printing import Refused, complain, show, whole_path
from warmup.config import family as families
from warmup.config.own import NAME as OWN
from warmup.config.own import load_own
from warmup.config.places import Places, there
from warmup.config.toml_file import LIMIT, FileProblem, file_bytes, read
from warmup.config.writing import sync_folder, write_atomic
from warmup.journal import schema, tables
from warmup.journal.inspection import whole_copy
from warmup.journal.journal import Journal
from warmup.journal.store import NAME, JournalProblem, reason
from warmup.session.context import Clock, load_family
from warmup.text import clean

FORMAT = 1
HEAD, SETTINGS = "export.toml", "settings"
_LARGEST = 500_000_000
"""The largest table that is read, in bytes."""
_SINCE = {"practice": 4}
"""The version of the journal that first had a table; an export from before that has no file of it."""
_ADVICE = "Nothing was changed; fix that, or export once more."
Kept = Callable[[Places, Clock, str], AbstractContextManager[Journal]]

_README = """# Everything warmup keeps for this family

`warmup import` and the name of this folder takes all of it back, on this machine or another.

- `settings/family.toml`: nicknames, school days, days off. `settings/own.toml`: your own prompts, if any.
- `sittings.csv`: a row for each warm-up, with its date, and the prompts it had (`routine`, as JSON).
- `prompts.csv`: a row for each prompt: the item it asked, and in which of its wordings.
- `marks.csv`: a row for each mark: `fluent` (came easily), `hesitated`, `not_yet`, `skipped` (left), or
  nothing for one that was taken back; how many cues were shown, who marked, and when (UTC).
- `actions.csv`: a row for each thing done, so that it can be undone.
- `notes.csv`: a row for each note, on a prompt or (position -1) on a morning; `shared` is 1 for reports.
- `practice.csv`: a row for each mark of a practice round; `started` is when its round began (UTC).

A row of one table belongs to that of another by `child`, `date`, `sitting` and `position`. The CSV files are
UTF-8 with commas, and any spreadsheet opens them. Your child's name is in these files: keep them as you keep
other papers of your family.
"""


# -- out


def export(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Write everything into a folder that is not there yet, or is empty: whole or not at all."""
    target = whole_path(arguments.folder, "the folder")
    if os.path.lexists(target) and not (target.is_dir() and not any(target.iterdir())):
        raise Refused(f"{clean(arguments.folder)} is there already and not empty; name another folder")
    if not there(places.data / NAME) and not there(places.config / "family.toml"):
        raise Refused("there is nothing to export yet; run warmup once")
    if not target.parent.is_dir():
        raise Refused("the folder that it would be made in is not there; make that first")
    texts, left = _tables(places)
    try:
        with tempfile.TemporaryDirectory(prefix=".warmup-export-", dir=target.parent) as folder:
            made = Path(folder, "made")
            made.mkdir(mode=0o700)
            _fill(made, texts, places, clock().date())
            made.rename(target)
            sync_folder(target.parent)
    except OSError as error:
        raise JournalProblem(f"{clean(arguments.folder)}: nothing was exported ({reason(error)}).") from error
    show(f"{name}.csv: {written.rows} rows." for name, written in texts.items())
    show([f"Rows left out, since they make no sense: {left}."] * bool(left))
    show(["Everything is in that folder; its README.md says what is what."])


def _tables(places: Places) -> tuple[dict[str, tables.Written], int]:
    path = places.data / NAME
    with closing(whole_copy(path) if there(path) else schema.in_memory()) as journal:
        found = {table: tables.table_text(journal, table) for table in tables.COLUMNS}
    return found, sum(each.left for each in found.values())


def _fill(folder: Path, texts: Mapping[str, tables.Written], places: Places, day: dt.date) -> None:
    import tomli_w

    head = {
        "format": FORMAT,
        "made": day,
        "journal": schema.VERSION,
        "rows": {name: each.rows for name, each in texts.items()},
    }
    files = {f"{name}.csv": each.text.encode() for name, each in texts.items()}
    files |= {"README.md": _README.encode(), HEAD: tomli_w.dumps(head).encode()}
    (folder / SETTINGS).mkdir(mode=0o700)
    for path in _settings(places.config):
        try:
            files[f"{SETTINGS}/{path.name}"] = file_bytes(path, LIMIT)
        except FileProblem as problem:
            complain(f"{problem} It is left out.")
    for name, content in files.items():
        _write(folder / name, content)
    sync_folder(folder / SETTINGS)
    sync_folder(folder)


def _write(path: Path, content: bytes) -> None:
    with open(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as file:  # noqa: PTH123
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


def _settings(folder: Path) -> list[Path]:
    try:
        return sorted(path for path in folder.glob("*.toml") if path.is_file())
    except OSError:
        return []


# -- back


def take_back(arguments: SimpleNamespace, clock: Clock, places: Places, kept: Kept) -> None:
    """Take an exported folder in. FileProblem, with nothing changed, where something in it is not right.

    ``kept`` opens the family's own journal, to write in.
    """
    folder = whole_path(arguments.folder, "the folder")
    family, _ = load_family(places, clock().date())
    settings = _checked(folder)
    with closing(_journal(folder)) as journal:
        left = not arguments.with_forgotten and without_forgotten(journal, family)
        with kept(places, clock, "what was taken in") as own:
            if own.notice:
                complain(own.notice)
            before = own.mornings()
            own.take_in(journal, as_it_is=True)
            after = own.mornings()
    for name, mornings in after.items():
        show([f"{clean(name)}: {mornings} in all, {mornings - before.get(name, 0)} new here."])
    show([LEFT_OUT] * left)
    for path in settings:
        if there(places.config / path.name):
            show([f"{clean(path.name)} is here already and stays as it is."])
        else:
            write_atomic(places.config / path.name, file_bytes(path, LIMIT).decode("utf-8-sig"))
            show([f"{clean(path.name)} was taken in."])


def _checked(folder: Path) -> list[Path]:
    """The settings files of an export, each of which can be read."""
    head = read(folder / HEAD, _ADVICE)
    if head.whole("format", least=1, most=10**6) != FORMAT:
        head.refuse(("format",), f"format = {FORMAT} (this may be from a newer version)")
    if head.whole("journal", least=1, most=10**6) > schema.VERSION:
        head.refuse(("journal",), f"at most {schema.VERSION} (this is from a newer version: update warmup)")
    found = _settings(folder / SETTINGS)
    for path in found:
        read(path, _ADVICE)
    if there(folder / SETTINGS / "family.toml"):
        families.load(folder / SETTINGS / "family.toml")
    if there(folder / SETTINGS / OWN):
        load_own(Places(folder / SETTINGS, folder))
    return found


def _journal(folder: Path) -> sqlite3.Connection:
    head = read(folder / HEAD, _ADVICE)
    version = head.whole("journal", least=1, most=schema.VERSION)
    kept = [table for table in tables.COLUMNS if _SINCE.get(table, 1) <= version]
    texts = {table: _text(folder / f"{table}.csv") for table in kept}
    try:
        journal = tables.from_tables(texts)
    except tables.Unfit as unfit:
        path = folder / f"{unfit.table}.csv"
        raise FileProblem(path, unfit.line, "", unfit.expected, clean(unfit.found), _ADVICE) from None
    with schema.closed_if_it_fails(journal):
        for table in kept:
            wanted = head.whole("rows", table, least=0, most=10**12)
            (found,) = journal.execute(f"SELECT count(*) FROM {table}").fetchone()
            if found != wanted:
                raise FileProblem(folder / f"{table}.csv", None, "", f"{wanted} rows", f"{found}", _ADVICE)
    return journal


def _text(path: Path) -> str:
    raw = file_bytes(path, _LARGEST, _ADVICE)
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        raise FileProblem(path, line, "", "text in UTF-8", "other bytes", _ADVICE) from None
