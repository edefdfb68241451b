"""A note: one line of what the child said."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import Input, Static

from warmup.journal.rows import LONGEST_NOTE
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.page import Page
from warmup.tui.workspace import Workspace

ASKS = "What did they say?"
TELLS = "In a line. It stays with you; a past morning’s page can let it into reports."


class NoteScreen(Page[str]):
    """The line, with what is written already. Its result is what was typed; None where it stays as it was."""

    CSS_PATH: ClassVar = ["page.tcss", "note.tcss"]
    AUTO_FOCUS = "#note"
    ASKS_AT_MIDNIGHT: ClassVar = False
    STATES = (State.NOTE,)
    FOOT: ClassVar = dict.fromkeys(("noted", "unnoted", "note_help"), "")
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, about: str, text: str) -> None:
        """``about`` is what the note is on, in words."""
        super().__init__(work)
        self._about, self._text = about, text

    def heading(self) -> str:
        """What is asked."""
        return ASKS

    def body(self) -> ComposeResult:
        """What it is about, and the line."""
        yield Static(self._about, id="about", markup=False)
        yield Input(self._text, id="note", max_length=LONGEST_NOTE, compact=True, select_on_focus=False)
        yield Static(TELLS, id="tells", markup=False)

    def on_mount(self) -> None:
        """Show the end of a line that is longer than its room: that is where more is typed."""
        super().on_mount()
        self.call_after_refresh(self._scroll_to_end)

    def _scroll_to_end(self) -> None:
        line = self.query_one("#note", Input)
        line.scroll_to(x=line.virtual_size.width, animate=False, force=True)

    def act(self, action: str) -> None:
        """Take the line, or leave it, or tell of the keys."""
        match action:
            case "noted":
                self.leave(self.query_one("#note", Input).value)
            case "unnoted":
                self.leave()
            case "note_help":
                self.open_help()
