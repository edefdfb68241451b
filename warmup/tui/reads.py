"""Asked once, when number words open: does the child read them? Then answers start covered."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import Static

from warmup.session import undoing
from warmup.session.words import READS_TELLS, READS_WHY, STARTS_COVERED, reads_question
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.page import Page


class ReadsScreen(Page[bool]):
    """Asks it. Its result is whether it was answered: leaving the page leaves it for another day."""

    CSS_PATH: ClassVar = ["page.tcss", "reads.tcss"]
    STATES = (State.READS,)
    FOOT: ClassVar = dict.fromkeys(("no_reader", "reader", "help", "quit"), "")
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def heading(self) -> str:
        """Why it is asked today."""
        return READS_WHY

    def body(self) -> ComposeResult:
        """The question, and what comes of it."""
        yield Static(READS_TELLS, id="tells", markup=False)
        yield Static(reads_question(self.work.context), id="question", markup=False)

    def act(self, action: str) -> None:
        """Answer."""
        work = self.work
        if action == "leave":
            self.leave(False)
            return
        reads = action == "reader"
        work.keep(undoing.READS, lambda: work.context.editor.reads(reads))
        work.said = STARTS_COVERED if reads else ""
        self.leave(True)
