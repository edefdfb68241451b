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


class Sheet(NamedTuple):
    """A kind of sheet: its title, what it is for in a sentence, and its pages for a day.

    ``small`` says that it is cut into pieces a small child could choke on.
    """

    title: str
    about: str
    pages: Callable[[Day], Iterable[Page]]
    small: bool = False
