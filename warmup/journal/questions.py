"""What is asked of a journal: sessions, marks, actions, the history of a child. Nothing here writes.

Rows are believed value by value: what makes no sense is passed over.
"""

import datetime as dt
import sqlite3
from collections.abc import Collection, Hashable, Mapping
from contextlib import closing, suppress
from typing import NamedTuple, TypeVar

from warmup import renames
from warmup.journal import log
from warmup.journal import rows as table_rows
from warmup.journal.log import END, ActionRow
from warmup.journal.oddities import MOST, Odd, count_mornings, day_of, unnoted
from warmup.journal.rows import BESIDE, CUES, MARKS, MORNINGS, THIS, MarkRow, Whole
from warmup.journal.store import Store
from warmup.model import Asked, ItemId

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


class Questions:
    """What can be asked of the journal in a store, by child and date."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def sessions_of(self, child: str, date: dt.date) -> list[SessionRow]:
        """The sessions of a date, in order."""
        rows = self._store.read(
            f"SELECT sitting, {table_rows.ABOUT} FROM sittings WHERE child = ? AND date = ?",
            (child, date.isoformat()),
        )
        found = []
        for number, *values in rows:
            with suppress(Odd):
                about, key = table_rows.about_of(values, unnoted), (child, date.isoformat(), number)
                found.append((about, self._store.redo.number(key)))
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
        key = self._store.key(child, date, session or 0)
        rows = log.readable(self._store.read(log.QUESTION, (*key, session is None)))
        number = self._store.redo.number
        return [row._replace(session=number((row.child, row.date, row.session))) for row in rows]

    def last_undoable(self, child: str, date: dt.date, session: int | None = None) -> ActionRow | None:
        """The newest of these actions that is no undo and was not taken back; None when there is none."""
        return next(reversed(log.standing(self.actions_of(child, date, session))), None)

    def newest(self, child: str, date: dt.date) -> str:
        """The id of the newest action of a date, undos included; empty when there is none."""
        rows = self._store.read(log.NEWEST, (child, date.isoformat()))
        return str(rows[0][0]) if rows else ""

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

    def names(self) -> tuple[str, ...]:
        """The names marks are held under, the one with the most mornings first."""
        mornings = self.mornings()
        return tuple(sorted(mornings, key=lambda name: (-mornings[name], name)))
