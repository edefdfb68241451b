"""The help: every key of a page, what it does, and what the marks mean."""

from collections.abc import Sequence
from itertools import zip_longest
from typing import ClassVar

from rich.text import Text
from textual import events
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import VerticalScroll
from textual.widgets import DataTable, Static

from warmup.session.words import MEANINGS
from warmup.tui.actions import Action, State, actions_of, keys_of
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More
from warmup.tui.page import NARROW, Page
from warmup.tui.workspace import Workspace

_WIDE, _TALL = 96, 34
"""From so many columns and rows on each key has a line of its own, with a sentence."""
_KEYS, _LABEL, _SENTENCE = 9, 19, 54
"""The widths of the columns, in cells."""


class HelpScreen(Page[None]):
    """The keys of the page it was opened from."""

    CSS_PATH: ClassVar = ["page.tcss", "help.tcss"]
    AUTO_FOCUS = "#scroll"
    STATES = (State.HELP,)
    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(*STATES, leave="back", line_down="", line_up="", quit="")
    ]

    def __init__(self, work: Workspace, states: Sequence[State]) -> None:
        super().__init__(work)
        self._states = states
        self._actions = actions_of(states)
        self._table: DataTable[Text] = DataTable(
            id="keys", show_header=False, cursor_type="none", cell_padding=0, classes="plain"
        )
        self._table.can_focus = False
        self._scroll = VerticalScroll(self._table, *self._meanings(), id="scroll")

    def _meanings(self) -> list[Static]:
        if State.PROMPT not in self._states:
            return []
        lines = [Text.assemble((f"{mark}: ", "bold"), meaning) for mark, meaning in MEANINGS]
        return [Static(line, classes="meaning") for line in lines]

    def heading(self) -> str:
        """Whose keys they are."""
        hands = "" if State.FORM in self._states else ": either hand, one at a time"
        return f"Keys of {self._states[0].value}{hands}"

    def body(self) -> ComposeResult:
        """The table of keys above the meanings."""
        yield self._scroll
        yield More(self._scroll)

    def on_resize(self, event: events.Resize) -> None:
        """A key to a line where there is room for its sentence, else two or one without."""
        super().on_resize(event)
        width, height = event.size
        if width >= _WIDE and height >= _TALL:
            self._fill([(each,) for each in self._actions], sentences=True)
        elif width >= NARROW:
            half = (len(self._actions) + 1) // 2
            pairs = zip_longest(self._actions[:half], self._actions[half:])
            self._fill([tuple(each for each in pair if each) for pair in pairs])
        else:
            self._fill([(each,) for each in self._actions])

    def _fill(self, rows: Sequence[Sequence[Action]], *, sentences: bool = False) -> None:
        """Put so many keys on each line, and what each does where ``sentences`` have room."""
        table = self._table.clear(columns=True)
        for _ in rows[0]:
            table.add_column("", width=_KEYS)
            table.add_column("", width=_LABEL)
        if sentences:
            table.add_column("", width=_SENTENCE)
        for row in rows:
            cells = [
                cell for each in row for cell in (Text(keys_of(each) or "menu", "bold"), Text(each.label))
            ]
            cells += [Text(row[0].help)] if sentences else []
            table.add_row(*cells, *[Text()] * (len(table.columns) - len(cells)))

    def act(self, action: str) -> None:
        """Go up and down, or leave."""
        match action:
            case "line_up":
                self._scroll.scroll_relative(y=-1, animate=False)
            case "line_down":
                self._scroll.scroll_relative(y=1, animate=False)
            case _:
                self.leave()

    def open_help(self) -> None:
        """The key that opened it closes it."""
        self.leave()
