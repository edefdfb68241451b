"""What this process wrote to the journal, to be written again should the disk be gone at the next write."""

import datetime as dt
import sqlite3
from collections.abc import Mapping
from contextlib import suppress
from typing import TYPE_CHECKING

from warmup.journal import log
from warmup.journal import rows as table_rows
from warmup.journal.oddities import Key
from warmup.journal.rows import Whole

if TYPE_CHECKING:
    from warmup.journal.practice import PracticeRow


class RedoLog:
    """The sessions this process wrote to, whole, and the actions and practice marks it added.

    A session that was begun in memory may get another number in the file, where a window has taken its own
    meanwhile. To this process it stays what it was, and the other one has the number that this leaves free.
    """

    def __init__(self) -> None:
        self._sessions: dict[Key, Whole] = {}
        self._moved: dict[Key, Key] = {}
        self.actions: list[log.ActionRow] = []
        """Actions in the order in which they were logged, their sessions as this process counts them."""
        self.practice: list[PracticeRow] = []

    def key(self, child: str, date: dt.date, session: int) -> Key:
        """The key of a session as it stands in the tables now."""
        key = (child, date.isoformat(), session)
        return self._moved.get(key, key)

    def number(self, key: Key) -> int:
        """The number by which this process knows the session that stands under a key in the tables."""
        return next((was[2] for was, now in self._moved.items() if now == key), key[2])

    def keep_session(self, disk: sqlite3.Connection, key: Key) -> None:
        """Keep a session as it is on the disk."""
        with suppress(sqlite3.Error):
            whole = table_rows.read_whole(disk, key)
            if whole is not None:
                self._sessions[key] = whole

    def write_again(self, memory: sqlite3.Connection) -> None:
        """Write all of it into a journal, in a transaction."""
        from warmup.journal import merging, practice

        moved = {key: merging.take_in(memory, key, whole) for key, whole in self._sessions.items()}
        for row in self.actions:
            key = self.key(row.child, dt.date.fromisoformat(row.date), row.session)
            log.put(memory, row._replace(session=moved.get(key, key)[2]))
        for practiced in self.practice:
            practice.put(memory, practiced)

    def moved_to(self, moved: Mapping[Key, Key]) -> None:
        """What was in memory is in the file now: under which key there each session stands."""
        held = {was: moved.get(now, now) for was, now in self._moved.items()}
        self._moved = {was: now for was, now in {**moved, **held}.items() if was != now}
        for first in self._moved.keys() - self._moved.values():
            last = first
            while last in self._moved:
                last = self._moved[last]
            self._moved[last] = first
