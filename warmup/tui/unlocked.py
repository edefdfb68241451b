"""What may be asked: what is to be taught again, what this quarter has unlocked, and what is held back."""

from typing import ClassVar

from rich.text import Text
from textual import events, on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import OptionList, Static

from warmup.session.pausing import paused, until_words
from warmup.session.turning import NOT_ASKED, LevelRow, Row, TeachAgain, heading, rows_of, turn
from warmup.tui.actions import BY_ID, State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More
from warmup.tui.page import WIDEST, Page
from warmup.tui.script import cut
from warmup.tui.workspace import Workspace

_WIDE = 76
"""From so many columns on each level says it; of the one under the cursor it stands below the list."""


class UnlockedScreen(Page[None]):
    """The list, one line of it under the cursor."""

    CSS_PATH: ClassVar = ["page.tcss", "unlocked.tcss"]
    AUTO_FOCUS = "#list"
    STATES = (State.UNLOCKED,)
    FOOT: ClassVar = {"undo": "", "leave": "back", "help": "", "quit": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        work.context.forget()
        self._rows: list[Row] = []
        self._wide, self._room = False, WIDEST
        self._list = OptionList(id="list", markup=False, compact=True)

    def heading(self) -> str:
        """What the list holds."""
        return heading(self.work.context)

    def body(self) -> ComposeResult:
        """The list; what its key does to the line under the cursor."""
        yield Static("", id="paused", markup=False)
        yield self._list
        yield More(self._list)
        yield Static("", id="turn")

    def on_resize(self, event: events.Resize) -> None:
        """Say what was not asked yet where there is room for it."""
        super().on_resize(event)
        wide, room = event.size.width >= _WIDE, self.room
        if (wide, room) != (self._wide, self._room):
            self._wide, self._room, self._rows = wide, room, []
            self.show()

    def show(self) -> None:
        """The rows as they stand now."""
        super().show()
        if not self._list.is_attached:
            return
        until = paused(self.work.context)
        line = self.query_one("#paused", Static)
        line.update(until_words(until) if until else "")
        line.display = until is not None
        rows = rows_of(self.work.context)
        if rows != self._rows:
            at, self._rows = self._list.highlighted or 0, rows
            self._list.clear_options()
            self._list.add_options([_option(row, self._room, wide=self._wide) for row in rows])
            self._list.highlighted = min(at, len(rows) - 1) if rows else None
        self._say_what_it_does()

    @on(OptionList.OptionHighlighted)
    def _say_what_it_does(self) -> None:
        at = self._list.highlighted
        key = f"[@click=screen.do('turn')][b $key]{BY_ID['turn'].key(self.work.hand)}[/] "
        row = self._rows[at] if at is not None and at < len(self._rows) else None
        does = row.turned() if row else ""
        if isinstance(row, LevelRow) and row.at.fresh:
            does += f" · {NOT_ASKED}"
        self.query_one("#turn", Static).update(f"{key}{does}[/]" if does else "")

    @on(OptionList.OptionSelected)
    def _clicked(self) -> None:
        self.do("turn")

    def act(self, action: str) -> None:
        """Go up and down, turn the line under the cursor, undo, or leave."""
        match action:
            case "turn" if self._list.highlighted is not None:
                self.work.said = self._turn(self._rows[self._list.highlighted])
            case "undo":
                self.work.undo()
            case "done" | "return" | "leave" | "unlocked":
                self.leave()

    def _turn(self, row: Row) -> str:
        """Hold a level back or let it come, or say that an item was taught; a line about it."""
        turned = turn(row, self.work.context)
        self.work.keep(turned.what, turned.work, **turned.about)
        return turned.said


def _option(row: Row, room: int, *, wide: bool) -> Text:
    """The row, its name cut where it is too long and not what is said of it."""
    name = row.words(wide=False)
    behind = row.words(wide=wide)[len(name) :]
    return Text(cut(name, room - len(behind)) + behind, "bold" if isinstance(row, TeachAgain) else "")
