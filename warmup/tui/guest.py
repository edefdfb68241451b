"""A guest's morning begins with one line: who is it?"""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import Input, Static

from warmup.config.toml_file import LONGEST_NAME
from warmup.text import clean, visible
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.page import Page
from warmup.tui.workspace import GUEST

ASKS = "Your name?"
TELLS = "Your marks are kept with it. Enter alone leaves it “guest”."


class GuestScreen(Page[str]):
    """The line. Its result is the name, which the context has by then."""

    CSS_PATH: ClassVar = ["page.tcss", "guest.tcss"]
    AUTO_FOCUS = "#name"
    ASKS_AT_MIDNIGHT: ClassVar = False
    STATES = (State.GUEST,)
    FOOT: ClassVar = dict.fromkeys(("named", "name_help"), "")
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def heading(self) -> str:
        """What is asked."""
        return ASKS

    def body(self) -> ComposeResult:
        """The line, and what becomes of it."""
        yield Input(placeholder=GUEST, id="name", max_length=LONGEST_NAME, compact=True)
        yield Static(f"{TELLS} Ctrl+Q leaves.", id="tells", markup=False)

    def act(self, action: str) -> None:
        """Take the name, or tell of the keys."""
        match action:
            case "named":
                typed = clean(self.query_one("#name", Input).value)
                name = self.work.context.marks_by = typed if visible(typed) else GUEST
                self.leave(name)
            case "name_help":
                self.open_help()
