"""The name of a day to look forward to."""

import datetime as dt
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import Input, Static

from warmup.config.toml_file import LONGEST_NAME
from warmup.english import date_words
from warmup.session.yearview import rules_on
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.page import Page
from warmup.tui.workspace import Workspace

TELLS = "The mornings before it count the days. An empty line takes the day out."


class CountdownScreen(Page[str]):
    """A line to type in. Its result is the name, empty for none; None where nothing is to change."""

    CSS_PATH: ClassVar = ["page.tcss", "countdown.tcss"]
    AUTO_FOCUS = "#name"
    STATES = (State.COUNTDOWN,)
    FOOT: ClassVar = {"keep_name": "", "drop_name": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, date: dt.date) -> None:
        super().__init__(work)
        self._date = date
        self._named = next((rule.name for rule in rules_on(work.context.family, date)), "")

    def heading(self) -> str:
        """The day."""
        return f"{date_words(self._date)}: a day to look forward to"

    def body(self) -> ComposeResult:
        """The line, and what it does."""
        yield Input(self._named, id="name", max_length=LONGEST_NAME, compact=True, select_on_focus=True)
        yield Static(TELLS, id="tells", markup=False)

    def act(self, action: str) -> None:
        """Take the name, or leave."""
        match action:
            case "keep_name":
                self.leave(self.query_one("#name", Input).value)
            case "drop_name":
                self.leave()
            case "form_help":
                self.open_help()
