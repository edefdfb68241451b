"""What a value in a journal may be. A row that makes no sense is left out and told of, never believed.

A journal can come from a memory stick, from a damaged disk, or out of somebody's editor.
"""

import datetime as dt
from collections import Counter
from collections.abc import Callable, Collection, Iterable, Iterator
from contextlib import contextmanager
from typing import NamedTuple

from warmup import renames
from warmup.model import is_own
from warmup.text import FIRST_YEAR, LAST_YEAR, shown

MOST = 100_000
"""The highest position of a prompt that is believed."""
Key = tuple[str, str, int]
"""Which session: the child, the date (ISO), and the number of the session on that date from 1."""
Note = Callable[[str], None]
"""Is told what is wrong with a value: a few words, as in "a date no calendar has"."""


class Odd(ValueError):
    """A row with a value that no journal of ours can hold; the text says what is wrong, in a few words."""


class Left(NamedTuple):
    """Rows of one kind that make no sense: what is wrong, how many there are, and whose the first is."""

    what: str
    rows: int
    first: str

    def __str__(self) -> str:
        """The words that go into a sentence about the journal."""
        return f"{self.what} ({self.rows}, the first of {self.first})"


class Notes:
    """Gathers what makes no sense, by kind."""

    def __init__(self) -> None:
        self._found: Counter[str] = Counter()
        self._first: dict[str, str] = {}
        self._where: tuple[object, ...] = ()

    def __call__(self, what: str) -> None:
        """One more of this kind."""
        self._found[what] += 1
        if what not in self._first:
            parts = ("other bytes" if isinstance(part, bytes) else shown(part) for part in self._where)
            self._first[what] = ", ".join(parts)

    def at(self, *key: object) -> None:
        """From now on it is this session, or whatever stands in its place."""
        self._where = key

    def all(self) -> tuple[Left, ...]:
        """Every kind, in the order in which they were found."""
        return tuple(Left(what, rows, self._first[what]) for what, rows in self._found.items())


def unnoted(_what: str) -> None:
    """A :data:`Note` that ignores what it is told."""


@contextmanager
def noting(note: Note) -> Iterator[None]:
    """Leave out a row that makes no sense, and tell ``note`` of it."""
    try:
        yield
    except Odd as odd:
        note(str(odd))


def note_unknown(item: str, known: Collection[str], note: Note) -> None:
    """Tell of an item that is none of the ``known`` ones, where there are any, and was dropped by no version.

    What a family wrote itself is in no list.
    """
    if known and renames.item(item) not in known and not renames.dropped(item) and not is_own(item):
        note(f"an item this version does not know, {shown(item)}")


def key_of(child: object, date: object, session: object, *, least: int = 1) -> Key:
    """The key of a session. Odd where a part of it makes no sense."""
    if not isinstance(child, str):
        raise Odd("a child's name that is no text")
    if not isinstance(date, str) or not day_of(date):
        raise Odd("a date no calendar has")
    if not isinstance(session, int) or session < least:
        raise Odd("a session whose number is none")
    return child, date, session


def as_position(value: object, *, least: int = 0) -> int:
    """A position in a session. Odd for anything else."""
    if not isinstance(value, int) or not least <= value <= MOST:
        raise Odd("a position no prompt can have")
    return value


def text(value: object, note: Note) -> str:
    """A text; nothing in the place of anything else."""
    if isinstance(value, str):
        return value
    note("something else where text should be")
    return ""


def moment(value: object, note: Note) -> str:
    """A moment, or nothing where none is known; nothing, before all others, in the place of anything else."""
    if isinstance(value, str) and (not value or is_moment(value)):
        return value
    note("a time that is none")
    return ""


def number(value: object, note: Note, most: int = MOST, *, least: int = 0) -> int:
    """A whole number from ``least`` to ``most``; 0 in the place of anything else."""
    if isinstance(value, int) and least <= value <= most:
        return value
    note("a number that can't be")
    return 0


def day_of(text: object) -> dt.date | None:
    """The date, in the years that count, that a journal writes in this way; None for anything else."""
    # A week and its day ("2026-W35-1") are a date to Python as well.
    if not isinstance(text, str) or len(text) != 10 or text[4] != "-" or text[7] != "-":
        return None
    try:
        day = dt.date.fromisoformat(text)
    except ValueError:
        return None
    return day if FIRST_YEAR <= day.year <= LAST_YEAR else None


def count_mornings(rows: Iterable[tuple[object, object]]) -> dict[str, int]:
    """On how many dates each child had a warm-up, from its name and each of the dates."""
    return dict(Counter(child for child, day in rows if isinstance(child, str) and day_of(day)))


def is_moment(text: object) -> bool:
    """Whether this is a moment as a journal writes it: in UTC, to the microsecond."""
    if not (isinstance(text, str) and len(text) == 32 and text.endswith("+00:00") and day_of(text[:10])):
        return False
    try:
        return dt.datetime.fromisoformat(text).isoformat(timespec="microseconds") == text
    except ValueError:
        return False
