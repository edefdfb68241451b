"""What the child knows: what deserves a second look first, the rest in groups that open."""

from collections.abc import Iterator
from itertools import groupby
from typing import ClassVar, NamedTuple

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from warmup.english import date_words
from warmup.session.known import STRIP, Known, KnownLevel, Slip, Stand, known
from warmup.session.known_words import BEADS_MEAN, GROUPS, MEANS, SLIPS, counts_words, slip_words
from warmup.session.words import BEADS
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More
from warmup.tui.page import Page
from warmup.tui.script import cut
from warmup.tui.workspace import Workspace

_INDENT = 2
_BEADS = STRIP + 2
"""The cells of a strip of beads, with a gap behind it."""
_BETWEEN = " · "
_OPEN_AT_FIRST = frozenset({Stand.REVISIT.value, SLIPS, Stand.GROWING.value})


class Heading(NamedTuple):
    """The line of a group: its name, how many there are in it, and whether it is open."""

    name: str
    size: int
    open: bool


Row = Heading | KnownLevel | Slip | str
"""A line of the list; one of text alone names a strand."""


class KnownScreen(Page[object]):
    """A line a group and, where that is open, a line a level below the names of the strands."""

    CSS_PATH: ClassVar = ["page.tcss", "known.tcss"]
    AUTO_FOCUS = "#list"
    ASKS_AT_MIDNIGHT: ClassVar = False
    STATES = (State.KNOWN,)
    FITS_ITS_ROOM = True
    FOOT: ClassVar = {"choose": "open", "bars": "", "leave": "back", "help": "", "quit": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        work.context.forget()
        self._known: Known = known(work.context)
        self._open = set(_OPEN_AT_FIRST)
        self._rows: list[Row] = []
        self._laid_out = 0
        self._list = OptionList(id="list", markup=False, compact=True)

    def heading(self) -> str:
        """Whose page it is, and of which day."""
        return f"What {self._known.child} knows · {date_words(self._known.today, weekday=False)}"

    def body(self) -> ComposeResult:
        """The counts, the list, the line under the cursor in words, and what the beads are."""
        yield Static(counts_words(self._known), id="counts", markup=False)
        yield self._list
        yield More(self._list)
        yield Static("", id="about", markup=False)
        yield Static(BEADS_MEAN, id="legend", markup=False)

    def show(self) -> None:
        """The lines as they stand."""
        super().show()
        if not self._list.is_attached:
            return
        rows = list(_rows(self._known, self._open))
        if (rows, self.room) == (self._rows, self._laid_out):
            return
        at = self._list.highlighted or 0
        self._rows, self._laid_out = rows, self.room
        self._list.clear_options()
        self._list.add_options([Option(self._line(row), disabled=isinstance(row, str)) for row in rows])
        self._list.highlighted = at

    def _line(self, row: Row) -> Text:
        match row:
            case Heading(name, size, is_open):
                sign = " " if not size else "▾" if is_open else "▸"
                return Text(f"{sign} {name}: {size}", "bold")
            case KnownLevel():
                return self._told(_strip(row), row.words(), row.note())
            case Slip():
                return self._told(f"{BEADS[row.mark]:>{STRIP}}", row.title, row.watch_for)
            case str():
                return Text(" " * _INDENT + row)

    def _told(self, beads: str, name: str, note: str) -> Text:
        """The beads, the name cut where there is no room, and what there is to say where that has room."""
        lead, room = f"{' ' * _INDENT}{beads:<{_BEADS}}", self.room - _INDENT - _BEADS
        left = room - len(name) - len(_BETWEEN)
        if note and (len(note) <= left or left >= room // 2):
            return Text(f"{lead}{name}{_BETWEEN}{cut(note, left)}")
        return Text(lead + cut(name, room))

    @property
    def row(self) -> Row | None:
        """The line under the cursor."""
        at = self._list.highlighted
        return self._rows[at] if at is not None and at < len(self._rows) else None

    @on(OptionList.OptionHighlighted)
    def _say_it(self) -> None:
        self.query_one("#about", Static).update(_about(self.row))

    # -- what the keys do

    def act(self, action: str) -> None:
        """Go up and down, open a group or a level, look at the year, or leave."""
        match action:
            case "choose":
                self._list.action_select()
            case "bars":
                from warmup.tui.known_year import KnownYearScreen

                self.open(KnownYearScreen(self.work, self._known))
            case _:
                self.leave()

    @on(OptionList.OptionSelected)
    def _choose(self, event: OptionList.OptionSelected) -> None:
        match self._rows[event.option_index]:
            case Heading(name):
                self._open ^= {name}
                self.show()
            case KnownLevel(level) | Slip(level=level):
                from warmup.tui.known_level import KnownLevelScreen

                self.open(KnownLevelScreen(self.work, self._known, level))


def _rows(found: Known, is_open: set[str]) -> Iterator[Row]:
    for name in GROUPS:
        if name == SLIPS:
            if found.slips:
                yield Heading(name, len(found.slips), name in is_open)
                yield from found.slips if name in is_open else ()
            continue
        levels = found.standing(Stand(name))
        yield Heading(name, len(levels), name in is_open and bool(levels))
        if name in is_open:
            for strand, group in groupby(levels, key=lambda level: level.strand):
                # What is worth revisiting is mostly little: the names of the strands would be half of it.
                yield from () if name == Stand.REVISIT.value else (strand.value,)
                yield from group


def _strip(level: KnownLevel) -> str:
    """Its beads, the latest at the right end."""
    return f"{''.join(BEADS[mark] for mark in level.marks):>{STRIP}}"


def _about(row: Row | None) -> str:
    """The line in words: what its group means, a level with its note, a slip with what to do."""
    match row:
        case Heading(name):
            return MEANS[name]
        case KnownLevel():
            note = f": {row.note()}" if row.note() else ""
            return f"{row.words()[0].upper()}{row.words()[1:]}{note}."
        case Slip():
            return f"{row.named[0].upper()}{row.named[1:]}. {slip_words(row)}"
        case _:
            return ""
