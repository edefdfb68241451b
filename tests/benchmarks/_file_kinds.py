"""The kinds of files that the program reads, and the commands that read and write them."""

from collections.abc import Mapping
from typing import NamedTuple

from warmup.journal import schema

Words = tuple[str, ...]
READING: tuple[Words, ...] = (
    ("today", "--plain"), ("today", "--json"), ("today", "--child", "Bean"), ("week",), ("ready",), ("year",),
    ("year", "--json"), ("report",), ("report", "--letter", "quarter"), ("report", "--summer"), ("days",),
    ("known",), ("then",), ("game",), ("past",), ("past", "2026-11-23"), ("notes",), ("catalogue",), (),
    ("why", "coins/name-it"), ("why", "own/our-street"), ("ask", "make-ten"), ("ask", "own"), ("sheets",),
    ("today", "--date", "2027-03-03"), ("report", "--form", "html"), ("check",),
)  # fmt: skip
"""Commands that print."""
WRITING: tuple[Words, ...] = (
    ("--plain",), ("--plain", "--guest", "Jo"), ("today", "--brief"), ("practice", "count", "--plain"),
    ("catch-up", "2026-11-24", "--marks", "wsn-w"), ("catch-up", "2026-11-24", "--undo"), ("forget", "Bean"),
    ("copy", "COPIES"), ("export", "--all", "OUT"), ("sheets", "ten-frames", "--printed", "--out", "PAGE"),
    ("days", "--import", "GOOD", "--take", "1"), ("--plain", "--together"), ("sheets", "week"),
)  # fmt: skip
"""Commands that write."""


class Kind(NamedTuple):
    """Files of a kind: where they are, the commands that read them first of all, and what is expected.

    A ``state`` may be lost without a word; a ``journal`` is SQLite's; an ``own`` file the others read too.
    """

    paths: Words
    first: tuple[Words, ...] = (("check",),)
    state: bool = False
    journal: bool = False
    own: bool = True


_EXPORT = tuple(f"export/settings/{name}.toml" for name in ("family", "own", "year", "daily"))
_TABLES = tuple(f"export/{name}.csv" for name in schema.TABLES)
_BESIDE = ("home/journal.db-journal", "home/journal.db-wal", "home/journal 2.db")
_FOLDERS = ("home", "home/remembered", "export", "other", "export/settings")
_DAYS = ("days", "--import", "FILE")
KINDS: Mapping[str, Kind] = {
    "family.toml": Kind(("home/family.toml",)),
    "family.toml.bak": Kind(("home/family.toml.bak",), state=True),
    "year.toml over the other": Kind(("home/year.toml",)),
    "year.toml, whole": Kind(("home/year.toml",)),
    "own.toml": Kind(("home/own.toml",)),
    "routines": Kind(("home/daily.toml", "home/sunday.toml"), (("check",), ("today", "--plain"))),
    "calendars": Kind(("days.ics", "district.ics"), (_DAYS, (*_DAYS, "--take", "all")), own=False),
    "the journal": Kind(("home/journal.db",), journal=True),
    "beside the journal": Kind(_BESIDE, state=True),
    "merge": Kind(("other/journal.db",), (("merge", "FILE"),), journal=True, own=False),
    "restore": Kind(("other/journal.db",), (("restore", "FILE"),), journal=True, own=False),
    "an export’s TOML": Kind(("export/export.toml", *_EXPORT), (("import", "EXPORT"),), own=False),
    "an export’s tables": Kind(_TABLES, (("import", "EXPORT"),), own=False),
    "what is remembered": Kind(("home/remembered/journal.json", "home/remembered/child-*.json"), state=True),
    "notes of the program": Kind(("home/at-hand.json", "home/keeping.json"), state=True),
    "weekly copies": Kind(("copies", "copies/warmup-2026-11-25.db"), (("check",), ("--plain",)), state=True),
    "folders": Kind(_FOLDERS, (("check",), ("import", "EXPORT"), ("merge", "OTHER"))),
}
