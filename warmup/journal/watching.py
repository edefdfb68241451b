"""The journal looked at from a second window: which prompt is at hand. Nothing is written, nothing held.

A look is the header of the file and a stat. Only where one of them has changed is the file opened, for
reading alone, asked one question along its index, and closed again: between two looks there is neither a
lock nor an open file. SQLite itself sees to it that a write under way, or one cut short, is never read as
done: the first is asked about again at the next look, the second is nothing to show. It is for a process
that has no journal open itself: to close a file lets go of every lock that the process has on it.
"""

import datetime as dt
import sqlite3
from contextlib import closing
from pathlib import Path
from typing import NamedTuple

from warmup.journal import at_hand, log
from warmup.journal.at_hand import AtHand
from warmup.journal.oddities import Key, key_of, unnoted
from warmup.journal.rows import ABOUT, About, about_of
from warmup.journal.schema import HEADER, VERSION, look_at, version_in
from warmup.journal.store import NAME

_BACK = dt.timedelta(7)
"""How far back lies the oldest morning that a window may still have open."""
_STEPS = 100_000
"""The work one question may take, in steps of SQLite's: far more than it needs, far less than a blink."""
_CHILDREN = 100
"""How many names in a journal are looked at: more than a family may have children."""
_QUESTION = f"""
WITH RECURSIVE children(name) AS (
    SELECT min(child) FROM sittings
    UNION ALL
    SELECT (SELECT min(child) FROM sittings WHERE child > name) FROM children WHERE name IS NOT NULL
    LIMIT {_CHILDREN})
SELECT child, date, sitting, {ABOUT} FROM children JOIN sittings ON child = name
WHERE date >= :oldest AND (date = :today OR touched >= :since) AND (:child = '' OR child = :child)
ORDER BY date <> :today AND closed <> '', touched DESC LIMIT 1"""
"""The session worked on last: one of today, or of another date that a window went on with meanwhile.

One that is over and of another date comes behind: it is touched by a correction or a note as well.
"""


class Found(NamedTuple):
    """A session as it stands in the journal, and the note beside it where that is about this prompt."""

    key: Key
    about: About
    note: AtHand | None


class Watch:
    """Looks at the journal in a folder; ``child`` is a name in it, empty for whoever's turn it is."""

    def __init__(self, folder: Path, opened: dt.datetime, child: str = "") -> None:
        self._folder, self._path, self._child = folder, folder / NAME, child
        self._since = log.utc(opened)
        self._seen: tuple[object, ...] | None = None
        self.found: Found | None = None
        """The session worked on last, as of the last look; None where there is none, or none to be read."""

    def look(self, today: dt.date) -> bool:
        """Look once; whether there was anything new to read. No error is raised."""
        # On some disks the time of a change is as coarse as two seconds; the count in the header never is.
        header, about = at_hand.first_bytes(self._path, HEADER)
        note = at_hand.note_bytes(self._folder)
        seen = (about, header, note, today)
        if seen == self._seen:
            return False
        try:
            self.found = self._ask(today, note) if 0 < version_in(header) <= VERSION else None
        except sqlite3.Error as error:
            if getattr(error, "sqlite_errorcode", 0) & 0xFF in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED):
                return False  # Somebody is writing: the next look will see it.
            self.found = None
        except (OSError, ValueError):
            self.found = None
        self._seen = seen
        return True

    def _ask(self, today: dt.date, raw: bytes) -> Found | None:
        values = {
            "today": today.isoformat(),
            "oldest": (today - _BACK).isoformat(),
            "since": self._since,
            "child": self._child,
        }
        with closing(look_at(self._path, wait=0)) as journal:
            journal.set_progress_handler(lambda: 1, _STEPS)
            row = journal.execute(_QUESTION, values).fetchone()
        if row is None:
            return None
        key, about = key_of(*row[:3]), about_of(row[3:], unnoted)
        note = at_hand.note_in(raw)
        fits = note is not None and note.key == key and max(note.position, 0) == about.position
        return Found(key, about, note if fits else None)
