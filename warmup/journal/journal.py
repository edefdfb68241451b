"""What happened, on disk: mornings, prompts as they were asked, marks. One SQLite file.

Every writing method is one transaction that is on disk before it returns. When the disk takes no
writing the journal goes on in memory, ``saving`` is False, and it is tried again at each later write. A
damaged file is set aside, never deleted; one from a newer version is never touched.
"""

import datetime as dt
import os
import sqlite3
from collections import Counter
from collections.abc import Callable, Collection, Hashable, Mapping, Sequence
from contextlib import closing, suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

from warmup import renames
from warmup.journal import changes, log, remembered
from warmup.journal import rows as table_rows
from warmup.journal.at_hand import OPENING, AtHand, leave_note
from warmup.journal.changes import Change, Changed, Seen
from warmup.journal.log import END, Action, ActionRow
from warmup.journal.oddities import MOST, Key, Left, Odd, count_mornings, day_of, is_moment, unnoted
from warmup.journal.rows import BESIDE, CUES, MARKS, MORNINGS, NOT_BEGUN, THIS, MarkRow, NoteRow, Whole
from warmup.journal.store import NAME, JournalProblem, NewerJournal, Store
from warmup.model import Asked, ItemId

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

_SHOWN = (
    "FROM sittings s JOIN prompts p USING (child, date, sitting) "
    "LEFT JOIN marks m ON m.child = p.child AND m.date = p.date AND m.sitting = p.sitting "
    "AND m.position = p.position "
    "WHERE s.child = ? AND s.date >= ? AND s.date < ? AND (p.position <= s.furthest OR m.mark <> '') "
    f"AND p.position <= {MOST}"
)
_HISTORY = f"SELECT p.date, p.item, m.mark, m.cue, s.rough, m.from_memory, p.wording {_SHOWN}"
_FIRST = f"SELECT p.item, p.date {_SHOWN} AND m.mark IS NOT 'skipped' ORDER BY p.date"
_IN_ORDER = " ORDER BY p.date, p.sitting, p.position"
_HELD = (
    "SELECT DISTINCT date FROM sittings s WHERE child = ? AND date >= ? "
    "AND (furthest >= 0 OR closed <> '' OR EXISTS (SELECT 1 FROM marks m "
    "WHERE m.child = s.child AND m.date = s.date AND m.sitting = s.sitting AND m.mark <> ''))"
)
# Of the columns beside a max() SQLite gives those of its row (https://www.sqlite.org/lang_select.html, 2.5).
_LAST = (
    "SELECT p.item, m.mark, m.cue, "
    "max(p.date || ' ' || s.started || printf(' %012d %06d', p.sitting, p.position)) "
    f"{_SHOWN} AND m.mark IN ('fluent', 'hesitated', 'not_yet')"
)
_PAST = "SELECT DISTINCT date FROM sittings WHERE child = ? AND date >= ? AND date < ? ORDER BY date DESC"
_NOTED = (
    "SELECT DISTINCT date FROM notes WHERE child = ? AND date >= ? AND date < ? AND text <> '' "
    "ORDER BY date DESC"
)
_SECOND = "SELECT 1 FROM sittings WHERE child = ? AND date >= ? AND date < ? AND sitting > 1 LIMIT 1"
_IN_TIME = " ORDER BY p.date, s.started, p.sitting, p.position"
T = TypeVar("T")
Group = TypeVar("Group", bound=Hashable)


class SessionRow(NamedTuple):
    """A session as it is kept: its number, the routine's JSON, where it stands and how far it got.

    ``furthest`` is ``NOT_BEGUN`` while no prompt was on screen.
    """

    session: int
    shape: str
    routine: str
    position: int
    furthest: int
    rough: bool
    closed: bool


class Journal:
    """The journal of one family. Made by :meth:`open`; one process may hold several."""

    def __init__(self, store: Store, now: Callable[[], dt.datetime], window: str) -> None:
        self._store, self._now = store, now
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
        *,
        action: Action | None = None,
        known: int | None = None,
        furthest: int = 0,
    ) -> int:
        """Keep a new session with its (item, wording) rows; gives its number, from 1 on a date.

        ``furthest`` is the prompt on screen, or ``NOT_BEGUN`` while only the opening is. Changed where the
        date has other sessions than the ``known`` ones: another window began one.
        """
        return self._begin(child, date, shape, routine, rows, [], action, known, furthest)

    def add_whole(
        self,
        child: str,
        date: dt.date,
        shape: str,
        routine: str,
        rows: Sequence[tuple[str, str]],
        marks: Sequence[MarkRow],
        *,
        action: Action | None = None,
    ) -> None:
        """Keep a session that is over, with a mark for each prompt, in one transaction."""
        self._begin(child, date, shape, routine, rows, marks, action)

    def _begin(
        self,
        child: str,
        date: dt.date,
        shape: str,
        routine: str,
        rows: Sequence[tuple[str, str]],
        marks: Sequence[MarkRow],
        action: Action | None,
        known: int | None = None,
        furthest: int = 0,
    ) -> int:
        moment = log.utc(self._now())
        end, closed = (len(rows), moment) if marks else (0, "")
        stamped = {at: mark._replace(at=_moment(mark.at) or moment) for at, mark in enumerate(marks)}
        touched = max((moment, *(mark.at for mark in stamped.values())))

        def keep(db: sqlite3.Connection) -> tuple[int, ActionRow | None]:
            there = db.execute(
                "SELECT sitting, started FROM sittings WHERE child = ? AND date = ?",
                (child, date.isoformat()),
            ).fetchall()
            if known is not None and sum(isinstance(each, str) for _, each in there) != known:
                raise Changed
            # No two sessions of a date begin at one moment, whatever the clock says: it tells them apart.
            last = max((each for _, each in there if is_moment(each)), default="")
            started = log.after(last, moment)
            about = table_rows.About(
                started, max(started, touched), shape, routine, end, max(furthest, end - 1), 0, closed
            )
            key = (child, date.isoformat(), table_rows.next_number(number for number, _ in there))
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
        moment = next((_moment(mark.at) for mark in change.marks.values()), "") or log.utc(self._now())

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
        moment = log.utc(self._now())

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
            self._store.remember_action(row._replace(session=session))

    # -- practice rounds, which are part of no morning

    def new_round(self, child: str, date: dt.date) -> tuple[str, int]:
        """When a practice round begins that begins now, and its number on its date from 1."""
        from warmup.journal import practice

        now, day = log.utc(self._now()), date.isoformat()
        found = self._store.ask(lambda db: practice.begins(db, child, day, now))
        return found or (now, 1)

    def practice(self, row: "PracticeRow") -> "PracticeRow":
        """Keep a mark of a practice round with the moment it is now, after the one it had; gives the row."""
        from warmup.journal import practice

        row = row._replace(at=log.after(row.at, log.utc(self._now())))
        self._store.write(lambda db: practice.put(db, row))
        self._store.remember_practice(row)
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

        self._merged = True
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

        return self._store.write(work)

    # -- reading

    def sessions_of(self, child: str, date: dt.date) -> list[SessionRow]:
        """The sessions of a date, in order."""
        rows = self._store.read(
            f"SELECT sitting, {table_rows.ABOUT} FROM sittings WHERE child = ? AND date = ?",
            (child, date.isoformat()),
        )
        found = []
        for number, *values in rows:
            with suppress(Odd):
                found.append((table_rows.about_of(values, unnoted), number))
        return [
            SessionRow(number, a.shape, a.routine, a.position, a.furthest, bool(a.rough), bool(a.closed))
            for a, number in sorted(found, key=lambda each: (each[0].started, each[1]))
        ]

    def items_of(self, child: str, date: dt.date, session: int) -> tuple[str, ...]:
        """The items of a session's own prompts, in order."""
        where = f"{THIS} AND position < {BESIDE} AND typeof(item) = 'text'"
        question = f"SELECT item FROM prompts {where} ORDER BY position"
        return tuple(
            renames.item(item)
            for (item,) in self._store.read(question, self._store.key(child, date, session))
        )

    def marks_of(self, child: str, date: dt.date, session: int) -> dict[int, MarkRow]:
        """The marks of a session's own prompts by position, those taken back included."""
        rows = self._store.read(
            f"SELECT {table_rows.MARK} FROM marks {THIS} AND position < {BESIDE}",
            self._store.key(child, date, session),
        )
        found = {}
        for row in rows:
            with suppress(Odd):
                at, mark = table_rows.mark_of(row, unnoted)
                found[at] = mark
        return found

    def whole_of(self, child: str, date: dt.date, session: int) -> Whole | None:
        """A session with all of its rows, those beside its own prompts too; None where there is none."""
        key = self._store.key(child, date, session)
        with suppress(Odd):
            return self._store.ask(lambda db: table_rows.read_whole(db, key))
        return None

    def past(self, child: str, before: dt.date, since: dt.date | None = None) -> list[dt.date]:
        """The dates before this one, from ``since`` on, of which a session is kept, the latest first."""
        return self._dates_in(_PAST, child, before, since)

    def noted(self, child: str, before: dt.date) -> list[dt.date]:
        """The dates before this one on which there is a note, the latest first."""
        return self._dates_in(_NOTED, child, before)

    def _dates_in(
        self, question: str, child: str, before: dt.date, since: dt.date | None = None
    ) -> list[dt.date]:
        when = child, since.isoformat() if since else "", before.isoformat()
        return [day for (text,) in self._store.read(question, when) if (day := day_of(text))]

    def last_mark(self, child: str, date: dt.date, session: int) -> int | None:
        """The position marked last, for undo after a restart."""
        marks = self.marks_of(child, date, session)
        standing = (at for at, row in marks.items() if row.mark)
        return max(standing, key=lambda at: (marks[at].at, at), default=None)

    def actions_of(self, child: str, date: dt.date, session: int | None = None) -> list[ActionRow]:
        """The actions of a session (0: those of none) in order of time; of the whole date without one."""
        return log.readable(self._store.read(*self._question(child, date, session)))

    def last_undoable(self, child: str, date: dt.date, session: int | None = None) -> ActionRow | None:
        """The newest of these actions that is no undo and was not taken back; None when there is none."""
        return next(reversed(log.standing(self.actions_of(child, date, session))), None)

    def newest(self, child: str, date: dt.date) -> str:
        """The id of the newest action of a date, undos included; empty when there is none."""
        rows = self._store.read(log.NEWEST, (child, date.isoformat()))
        return str(rows[0][0]) if rows else ""

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

    def _question(self, child: str, date: dt.date, session: int | None) -> tuple[str, tuple[Any, ...]]:
        key = self._store.key(child, date, session or 0)
        return log.QUESTION, (*key, session is None)

    def history(
        self,
        child: str,
        before: dt.date | None = None,
        since: dt.date | None = None,
        item: str | None = None,
    ) -> tuple[Asked, ...]:
        """Every prompt that was shown, in order of time, with its mark; from ``since`` on, up to but not on
        ``before``; those of one ``item`` alone, where one is named.
        """
        when = child, since.isoformat() if since else "", before.isoformat() if before else END
        # Two laptops number the sessions of a date differently, so those are told by when they began.
        order = _IN_TIME if self._store.read(_SECOND, when) else _IN_ORDER
        called = renames.every_name(item) if item else ()
        which = f" AND p.item IN ({', '.join('?' * len(called))})" if called else ""
        rows = self._store.read(_HISTORY + which + order, (*when, *called))
        days = {day: day_of(day) for day in {row[0] for row in rows}}
        names = {
            item: ItemId(renames.item(item)) for item in {row[1] for row in rows} if isinstance(item, str)
        }
        return tuple(
            Asked(day, names[item], MARKS.get(mark), CUES.get(cue, 0), bool(rough), bool(memory), way)
            for text, item, mark, cue, rough, memory, way in rows
            if (day := days[text]) and item in names
        )

    def first_shown(self, child: str, before: dt.date, of: Mapping[ItemId, Group]) -> dict[Group, dt.date]:
        """On which day before this one something of each group was first shown and not left; ``of`` gives the
        group of an item.

        Read from the first day on, and no further than it must be: where years lie there most come early.
        """
        first: dict[Group, dt.date] = {}
        missing = set(of.values())

        def look(db: sqlite3.Connection) -> None:
            with closing(db.execute(_FIRST, (child, "", before.isoformat()))) as rows:
                for item, text in rows:
                    group = of.get(ItemId(renames.item(item))) if isinstance(item, str) else None
                    if group in missing and group is not None and (day := day_of(text)):
                        first[group] = day
                        missing.discard(group)
                    if not missing:
                        return

        self._store.ask(look)
        return first

    def came_easily(self, child: str, before: dt.date, items: Collection[ItemId]) -> dict[ItemId, bool]:
        """Whether each of these items that had a mark before this day came easily the last time, uncued."""
        called = sorted({name for item in items for name in renames.every_name(item)})
        question = f"{_LAST} AND p.item IN ({', '.join('?' * len(called))}) GROUP BY p.item"
        last: dict[ItemId, tuple[str, bool]] = {}
        for item, mark, cue, when in self._store.read(question, (child, "", before.isoformat(), *called)):
            name, found = ItemId(renames.item(item)), (str(when), mark == "fluent" and not CUES.get(cue, 0))
            last[name] = max(found, last.get(name, found))
        return {name: easy for name, (_, easy) in last.items()}

    def dates_of(self, child: str, since: dt.date | None = None) -> set[dt.date]:
        """The dates on which this child had a warm-up, from ``since`` on; a session that showed no prompt is
        none.
        """
        rows = self._store.read(_HELD, (child, since.isoformat() if since else ""))
        return {day for (text,) in rows if (day := day_of(text))}

    def mornings(self) -> dict[str, int]:
        """On how many dates each child had a warm-up, children by their names in the journal."""
        return count_mornings(self._store.read(MORNINGS, ()))

    @classmethod
    def examine(cls, folder: Path, known: Collection[str] = ()) -> list[str]:
        """Look the journal over without changing anything: sentences about what is wrong.

        Items are looked up in the ``known`` ones, where there are any.
        """
        from warmup.journal import inspection

        return inspection.findings(folder / NAME, known)


def _moment(text: str) -> str:
    """A moment as it is kept; nothing for what is no moment."""
    try:
        moment = log.utc(dt.datetime.fromisoformat(text))
    except (ValueError, OverflowError):
        return ""
    return moment if is_moment(moment) else ""
