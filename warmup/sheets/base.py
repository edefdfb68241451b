"""What a kind of sheet is, and what it may know of the day."""

import datetime as dt
from collections.abc import Callable, Iterable, Mapping
from typing import NamedTuple

from warmup.sheets.lines import Drawn

SMALL_PIECES = "Small pieces choke small children: keep them from children under three."


class Page(NamedTuple):
    """One side of a sheet: a title, and what is drawn in the room that is the same on every paper."""

    title: str
    drawn: tuple[Drawn, ...]


class Day(NamedTuple):
    """The day a sheet is made for; ``numbers`` has the school days of its month, each with its number."""

    date: dt.date
    numbers: Mapping[dt.date, int]


class Use(NamedTuple):
    """What a sheet stands in for: things on a table, kinds of pictures, skills by their ids."""

    things: tuple[str, ...] = ()
    pictures: tuple[str, ...] = ()
    skills: tuple[str, ...] = ()


class Sheet(NamedTuple):
    """A kind of sheet: its title, what it is for in a sentence, its pages for a day, and what wants it.

    ``use`` is what a week's prompts are held against. ``small`` says that it is cut into pieces a small child
    could choke on, ``monthly`` that it is another one each month.
    """

    title: str
    about: str
    pages: Callable[[Day], Iterable[Page]]
    use: Use = Use()
    small: bool = False
    monthly: bool = False
