"""What happened, on disk: mornings, prompts as they were asked, marks. One SQLite file.

Every writing method is one transaction that is on disk before it returns, but for a session that is begun
before the first frame (:meth:`Journal.hold`). When the disk takes no writing the journal goes on in memory,
``saving`` is False, and it is tried again at each later write. A damaged file is set aside, never deleted;
one from a newer version is never touched.
"""

import datetime as dt
import os
import sqlite3
from collections import Counter
from collections.abc import Callable, Collection, Sequence
from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from warmup.journal import changes, log, remembered
from warmup.journal import rows as table_rows
from warmup.journal.at_hand import OPENING, AtHand, leave_note
from warmup.journal.changes import Change, Changed, Seen
from warmup.journal.log import Action, ActionRow
from warmup.journal.oddities import Key, Left, count_mornings, is_moment
from warmup.journal.questions import Questions, SessionRow
from warmup.journal.rows import MORNINGS, NOT_BEGUN, THIS, MarkRow, NoteRow, Whole
from warmup.journal.store import NAME, JournalProblem, NewerJournal, Store

if TYPE_CHECKING:
    from warmup.journal.practice import PracticeRow

__all__ = [
    "NOT_BEGUN",
    "Action",
    "ActionRow",
    "Change",
    "Changed",
    "Journal",
    "JournalProblem",
    "MarkRow",
    "NewerJournal",
    "NoteRow",
    "Seen",
    "SessionRow",
]

T = TypeVar("T")


class Journal(Questions):
    """The journal of one family. Made by :meth:`open`; one process may hold several."""

    def __init__(self, store: Store, now: Callable[[], dt.datetime], window: str) -> None:
        super().__init__(store)
        self._now = now
        self.folder, self.path, self.window = store.folder, store.path, window
        self._actions = 0
        # How often something of a child was written on a date.
        self._dates: Counter[tuple[str, dt.date]] = Counter()
        self._merged = False
        # Of what days that were written to since the last stamp, and whether a first frame goes before.
        self._touched: set[tuple[str, dt.date]] = set()
        self._held = False
        # Whatever an earlier window noted is taken away by the first note of this one.
        self._noted: AtHand | str | None = "unknown"

    @classmethod
    def open(
        cls, folder: Path, now: Callable[[], dt.datetime], *, read_only: bool = False, window: str = ""
    ) -> "Journal":
        """The journal in this folder; a new one where there is none.

        Raises NewerJournal. A damaged file is renamed aside, what can be read of it is kept, and ``notice``
        says so; when ``read_only``, nothing is renamed or made. A folder that takes no writing is no error.
        ``window`` names the running program in the log of actions: a random name where none is given.
        """
        return cls(Store(folder, now, read_only=read_only), now, window or os.urandom(8).hex())

    @property
    def notice(self) -> str:
        """What befell the file when it was opened, in a sentence; empty when nothing did."""
        return self._store.notice

    @property
    def saving(self) -> bool:
        """Whether all that was written is on disk."""
        return self._store.saving

    @property
    def trouble(self) -> str:
        """Why what was written is not on disk, in a few words; empty while it is."""
        return self._store.trouble

    def shut(self) -> bool:
        """Try once more to write what is not on disk, and close the file; whether all of it is there now."""
        return self._store.shut(self._outdate)

    def copy_to(self, path: Path, child: str) -> int:
        """Put a whole copy of the journal at ``path``; in how many mornings of it the child was.

        Raises JournalProblem, and leaves no copy, where it can't be written or is not like the journal.
        """
        from warmup.journal import copies, schema

        with closing(schema.copy_of(self._store.source)) as snapshot:
            copies.write(snapshot, path)
            return count_mornings(snapshot.execute(MORNINGS)).get(child, 0)

    # -- what was kept of it

    @property
    def as_left(self) -> bool:
        """Whether the file was as this program had left it, and nobody else wrote to it since."""
        return self._store.as_left and not (self._merged or self._store.others_wrote())

    def past_of(self, child: str, today: dt.date) -> int | None:
        """A number that stays the same as long as nothing of the child changes on the days before today.

        None where that can't be told.
        """
        if self._merged or self._store.others_wrote():
            return None
        return sum(count for (name, date), count in self._dates.items() if name == child and date < today)

    # -- writing

    def start(
        self,
        child: str,
        date: dt.date,
        shape: str,
        routine: str,
        rows: Sequence[tuple[str, str]],
        marks: Sequence[MarkRow] = (),
        *,
        action: Action | None = None,
        known: int | None = None,
        furthest: int = 0,
    ) -> int:
        """Keep a new session with its (item, wording) rows; gives its number, from 1 on a date.

        With ``marks``, one for each prompt, it is over already. ``furthest`` is the prompt on screen, or
        ``NOT_BEGUN`` while only the opening is. Changed where the date has other sessions than the ``known``
        ones: another window began one.
        """
        moment = log.by_clock(self._now())
        end, closed = (len(rows), moment) if marks else (0, "")
        stamped = {at: mark._replace(at=_moment(mark.at) or moment) for at, mark in enumerate(marks)}
        touched = max((moment, *(mark.at for mark in stamped.values())))

        def keep(db: sqlite3.Connection) -> tuple[int, ActionRow | None]:
            key, started = _next_session(db, child, date.isoformat(), known, moment)
            about = table_rows.About(
                started, max(started, touched), shape, routine, end, max(furthest, end - 1), 0, closed
            )
            table_rows.put_whole(db, key, Whole(about, dict(enumerate(rows)), stamped))
            return key[2], self._append(db, key, action, moment)

        number, row = self._write(keep, action, child, date, later=self._held and not marks)
        self._remember((child, date.isoformat(), number), row)
        return number

    def change(
        self,
        child: str,
        date: dt.date,
        session: int,
        change: Change,
        *,
        action: Action | None = None,
        seen: Seen | None = None,
    ) -> str:
        """Do all of a change, and log the action that it is, or nothing of it; gives the action's id or "".

        ValueError for an action that can't be logged (see :func:`warmup.journal.log.check`), Changed where
        the session is no longer as it was ``seen``.
        """
        moment = next((_moment(mark.at) for mark in change.marks.values()), "") or log.by_clock(self._now())

        def work(db: sqlite3.Connection) -> ActionRow | None:
            key = self._store.key(child, date, session)
            if seen is not None:
                seen.check(db, key)
            touched = db.execute(f"SELECT touched FROM sittings {THIS}", key).fetchone()
            stamp = log.after(touched[0] if touched and is_moment(touched[0]) else "", moment)
            stamp = changes.apply(db, key, change, stamp)
            db.execute(f"UPDATE sittings SET touched = ? {THIS}", (stamp, *key))
            return self._append(db, key, action, moment)

        row = self._write(work, action, child, date)
        self._remember((child, date.isoformat(), session), row)
        return row.id if row else ""

    def log(self, child: str, date: dt.date, session: int, action: Action) -> str:
        """Log an action that changes nothing else here; ``session`` 0 for none. Gives the action's id."""
        moment = log.by_clock(self._now())

        def work(db: sqlite3.Connection) -> ActionRow | None:
            return self._append(db, self._store.key(child, date, session), action, moment)

        row = self._write(work, action)
        self._remember((child, date.isoformat(), session), row)
        return row.id if row else ""

    def _write(
        self,
        work: Callable[[sqlite3.Connection], T],
        action: Action | None,
        child: str = "",
        date: dt.date = dt.date.max,
        *,
        later: bool = False,
    ) -> T:
        """Do the work of an action; it changes what a ``child`` did on a date, where one is named."""
        if action is not None:
            log.check(action)
        self._actions += 1
        self._dates[child, date] += 1
        self._touched.add((child, date))
        result = self._store.write(work, later=later)
        if not later:
            self._store.leave(self._outdate)
        return result

    def hold(self) -> None:
        """Let a session that starts now be on the disk once this is settled, or anything else is written.

        Until then this window alone reads it: a frame that shows no mark need not wait for the disk.
        """
        self._held = True

    def settle(self) -> None:
        """Have everything on the disk, and a stamp of it for the next start."""
        self._held = False
        self._store.settle()
        if self._touched or not self._store.as_left:
            self._store.leave(self._outdate)

    def undisturbed(self, work: Callable[[], object]) -> None:
        """Do something beside the file while nobody writes to it; nothing where that can't be."""
        self._store.undisturbed(work)

    def _outdate(self) -> None:
        """Take away what was kept and no longer holds. Raises OSError: then no stamp says that all does."""
        if self._merged:
            remembered.clear(self.folder)
        for child, date in self._touched:
            remembered.outdate(self.folder, child, date)
        self._touched.clear()

    def _append(
        self, db: sqlite3.Connection, key: Key, action: Action | None, moment: str
    ) -> ActionRow | None:
        return None if action is None else log.append(db, key, action, self.window, self._actions, moment)

    def _remember(self, key: Key, row: ActionRow | None) -> None:
        """Keep what was written, should the disk be gone at the next write."""
        child, date, session = key
        self._store.remember(self._store.key(child, dt.date.fromisoformat(date), session))
        if row is not None:
            self._store.redo.actions.append(row._replace(session=session))

    # -- practice rounds, which are part of no morning

    def new_round(self, child: str, date: dt.date) -> tuple[str, int]:
        """When a practice round begins that begins now, and its number on its date from 1."""
        from warmup.journal import practice

        now, day = log.by_clock(self._now()), date.isoformat()
        found = self._store.ask(lambda db: practice.begins(db, child, day, now))
        return found or (now, 1)

    def practice(self, row: "PracticeRow") -> "PracticeRow":
        """Keep a mark of a practice round with the moment it is now, after the one it had; gives the row."""
        from warmup.journal import practice

        row = row._replace(at=log.after(row.at, log.by_clock(self._now())))
        self._store.write(lambda db: practice.put(db, row))
        self._store.redo.practice.append(row)
        self._store.leave(self._outdate)
        return row

    def practiced(self, child: str) -> "list[PracticeRow]":
        """The marks of a child's practice rounds in order of time, those taken back included."""
        from warmup.journal import practice

        return practice.readable(self._store.read(practice.QUESTION, (child,)))

    def merge(
        self, other: Path, leave_out: Callable[[sqlite3.Connection], object] = lambda _: None
    ) -> tuple[Left, ...]:
        """Take in another journal: sessions this one lacks; of two marks on one prompt the later.

        The other file stays as it is; ``leave_out`` may take rows out of the copy of it that is merged. Rows
        that make no sense are left out; gives the kinds of them. Raises JournalProblem where the file can't
        be read.
        """
        from warmup.journal import inspection

        with closing(inspection.whole_copy(other)) as copy:
            leave_out(copy)
            return self.take_in(copy)

    def take_in(self, other: sqlite3.Connection, *, as_it_is: bool = False) -> tuple[Left, ...]:
        """Take in a whole journal that was opened already, as :meth:`merge` does.

        With ``as_it_is`` an empty journal gets every row of it unchanged.
        """
        from warmup.journal import merging, tables

        def work(db: sqlite3.Connection) -> tuple[Left, ...]:
            if as_it_is and tables.take_in_whole(db, other):
                return ()
            return merging.merge_into(db, other).left

        self._merged = True
        return self._store.write(work)

    # -- for the window that works on a session

    def at_hand(self, child: str, date: dt.date, session: int, position: int, cue: int) -> None:
        """Note for the child's window what no row says: cues that are shown, or the opening once more."""
        key = self._store.key(child, date, session)
        said = AtHand(key, position, cue) if cue or position == OPENING else None
        # In the place of a stick that was pulled out nothing is written.
        if said != self._noted and self.saving and self.path.exists():
            self._noted = said
            leave_note(self.folder, said)

    def keep_in_mind(self, child: str, date: dt.date, session: int) -> None:
        """Have this session at hand should the disk go away: a window works on it."""
        self._store.remember(self._store.key(child, date, session))

    @classmethod
    def examine(cls, folder: Path, known: Collection[str] = ()) -> list[str]:
        """Look the journal over without changing anything: sentences about what is wrong.

        Items are looked up in the ``known`` ones, where there are any.
        """
        from warmup.journal import inspection

        return inspection.findings(folder / NAME, known)


def _next_session(
    db: sqlite3.Connection, child: str, date: str, known: int | None, moment: str
) -> tuple[Key, str]:
    """The key of one more session of a date, and when it begins. Changed where others than ``known`` are."""
    rows = db.execute("SELECT started FROM sittings WHERE child = ? AND date = ?", (child, date))
    there = [each for (each,) in rows if isinstance(each, str)]
    if known is not None and len(there) != known:
        raise Changed
    # No two sessions of a date begin at one moment, whatever the clock says: it tells them apart.
    last = max(filter(is_moment, there), default="")
    numbers = table_rows.numbers_of(db, child, date)
    return (child, date, table_rows.next_number(numbers)), log.after(last, moment)


def _moment(text: str) -> str:
    """A moment as it is kept; nothing for what is no moment."""
    try:
        moment = log.by_clock(dt.datetime.fromisoformat(text))
    except (ValueError, OverflowError):
        return ""
    return moment if is_moment(moment) else ""
