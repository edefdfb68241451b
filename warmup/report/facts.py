"""What a report tells, counted: all of it out of the journal, the family's days and the catalogue."""

import datetime as dt
from collections import Counter
from dataclasses import dataclass
from typing import Protocol

from warmup.engine.review import Outcome
from warmup.model import LevelId


class Shared(Protocol):
    """A note of the journal that its adult ticked as shared: its morning and its words."""

    @property
    def date(self) -> dt.date:
        """The morning it was written on."""

    @property
    def text(self) -> str:
        """Its words."""


@dataclass(frozen=True)
class Note:
    """A note as it stands in a report: its date, and its words on one line."""

    date: dt.date
    text: str


@dataclass(frozen=True)
class Month:
    """One month of a report, by its first day in it.

    ``school`` counts planned school days that the adult confirmed, ``held`` the days with a warm-up, and
    ``seconds`` estimates how long these took, in seconds.
    """

    first: dt.date
    school: int
    held: int
    seconds: int


@dataclass(frozen=True)
class Attendance:
    """The days: with a warm-up, planned as school and confirmed, and planned but said nothing of yet."""

    held: tuple[dt.date, ...]
    confirmed: tuple[dt.date, ...]
    open: tuple[dt.date, ...]
    months: tuple[Month, ...]

    @property
    def both(self) -> int:
        """How many confirmed school days had a warm-up."""
        return len({*self.held} & {*self.confirmed})

    @property
    def seconds(self) -> int:
        """An estimate of how long all warm-ups took, in seconds."""
        return sum(month.seconds for month in self.months)


@dataclass(frozen=True)
class Topic:
    """A skill by its title and strand: how many questions were asked of it, on how many days."""

    strand: str
    title: str
    questions: int
    days: int


@dataclass(frozen=True)
class Material:
    """A thing that questions wanted on the table, and on how many days."""

    name: str
    days: int


@dataclass(frozen=True)
class LevelMet:
    """A level that was asked: its words, the codes it exercises and those it leads toward.

    ``first`` is the date it was first asked, ``settled`` that on which a review first found its skill
    settled with a question of this level (None: not so far). ``questions`` counts those of the report's days.
    ``easy`` says whether all of its items came easily the last time that they were marked (None: none was).
    """

    id: LevelId
    words: str
    codes: tuple[str, ...]
    toward: tuple[str, ...]
    first: dt.date
    settled: dt.date | None
    questions: int
    easy: bool | None


@dataclass(frozen=True)
class Reviewed:
    """What a review week found of a skill by its title, and the dates of its checks, at most two."""

    week: int
    title: str
    outcome: Outcome
    dates: tuple[dt.date, ...]


@dataclass(frozen=True)
class Report:
    """All that is told of one child from ``first`` to ``last``, both included, as known on ``made``.

    ``left_out`` counts the shared notes that are not told, since they name another child or a file.
    """

    child: str
    first: dt.date
    last: dt.date
    made: dt.date
    attendance: Attendance
    topics: tuple[Topic, ...]
    materials: tuple[Material, ...]
    levels: tuple[LevelMet, ...]
    reviews: tuple[Reviewed, ...]
    notes: tuple[Note, ...] = ()
    left_out: int = 0

    @property
    def questions(self) -> int:
        """How many questions were asked."""
        return self.strands.total()

    @property
    def strands(self) -> Counter[str]:
        """How many of these each strand has, in the order of the topics."""
        found = Counter[str]()
        for topic in self.topics:
            found[topic.strand] += topic.questions
        return found
