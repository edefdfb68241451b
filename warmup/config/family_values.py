"""What family.toml says, as plain values: a family, its children, days that come every year."""

import datetime as dt
from dataclasses import dataclass
from typing import NamedTuple

from warmup.model import ItemId, LevelId


@dataclass(frozen=True, slots=True)
class Child:
    """One child: a nickname, and the levels held back or opened early.

    ``journal_name`` (``record`` in the file) is the name its marks are kept under in the journal: the first
    nickname, so that a new one loses nothing.
    ``taught`` holds items, each once, with the date the adult said they were taught again.
    Up to and on ``paused`` no level opens that has not begun. ``reads`` says whether the child reads number
    words, so that answers start covered; None while nobody was asked. A child with a ``first_day`` of its own
    is in weeks of its own, from ``first_week`` on, with the weeks it holds and skips (see :class:`Family`);
    any other goes by the family's. ``prompts`` is how many a morning of this child has, None for what the
    family says. A child that is ``resting`` has no mornings for now. ``began`` is the day of its first
    warm-up, None where it is the family's.
    """

    nickname: str
    held: tuple[LevelId, ...] = ()
    opened: tuple[LevelId, ...] = ()
    journal_name: str = ""
    taught: tuple[tuple[ItemId, dt.date], ...] = ()
    paused: dt.date | None = None
    reads: bool | None = None
    first_day: dt.date | None = None
    first_week: int = 1
    held_weeks: tuple[int, ...] = ()
    skipped_weeks: tuple[int, ...] = ()
    prompts: int | None = None
    resting: bool = False
    began: dt.date | None = None

    def __post_init__(self) -> None:
        if not self.journal_name:
            object.__setattr__(self, "journal_name", self.nickname)


class CountdownRule(NamedTuple):
    """A day that matters: its name, and either its date or, when it comes every year, how it is found."""

    name: str
    date: dt.date | None = None
    yearly: str = ""


class YearlyOff(NamedTuple):
    """Days off that come every year: the words of the first of them, and how many in a row, 1 to 14."""

    yearly: str
    days: int = 1


class Family(NamedTuple):
    """What family.toml says.

    ``weekdays`` are the school weekdays in order (0 is Monday). The lessons of each mention of a week in
    ``held_weeks`` take one school week more, those in ``skipped_weeks`` none; after ``last_day`` there is no
    school, whatever weeks are left. ``began`` is the day the program was first used, ``known_until``
    (``settled`` in the file) the day up to which each planned morning is known to be school or off. ``off``
    holds stretches of days off, both ends included; ``extra`` the mornings held beside the plan. ``theme`` is
    "dark", "light" or "contrast"; ``adult`` is who marks, empty when it does not matter; ``animal`` what the
    stuffed animal of some prompts is called; ``prompts`` how many a morning has, None for what the year plan
    says. ``yearly_off`` are the days off that come every year; in the file they stand among the others.
    ``toddler`` says that there is one in the house, ``without`` names the things of the catalogue that the
    house does not have, ``printed`` the sheets that it has on paper. ``keys`` has the keys of the
    family's own by the ids of actions, as they are written and believed by nobody yet; an action has none
    where what is written is no key.
    ``together`` lets the children's prompts take turns in one morning.
    ``copies`` is the folder for a copy of the journal a week, empty where there is none; ``forgotten`` are
    digests of the names of children that were taken out for good, in order.
    """

    first_day: dt.date
    began: dt.date
    children: tuple[Child, ...]
    first_week: int = 1
    held_weeks: tuple[int, ...] = ()
    skipped_weeks: tuple[int, ...] = ()
    last_day: dt.date | None = None
    weekdays: tuple[int, ...] = (0, 1, 2, 3)
    known_until: dt.date | None = None
    off: tuple[tuple[dt.date, dt.date], ...] = ()
    extra: tuple[dt.date, ...] = ()
    countdowns: tuple[CountdownRule, ...] = ()
    theme: str = "dark"
    answers_shown: bool = True
    pennies: bool = True
    adult: str = ""
    animal: str = "Bear"
    prompts: int | None = None
    yearly_off: tuple[YearlyOff, ...] = ()
    toddler: bool = False
    without: tuple[str, ...] = ()
    keys: tuple[tuple[str, tuple[str, ...]], ...] = ()
    together: bool = False
    copies: str = ""
    forgotten: tuple[str, ...] = ()
    pixels: bool = True
    printed: tuple[str, ...] = ()
