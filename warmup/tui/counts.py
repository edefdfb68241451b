"""A morning on a day that was not planned: does it count?"""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import Static

from warmup.session import undoing
from warmup.session.words import COUNTED, COUNTS, FOR_FUN, NOT_PLANNED
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.page import Page
from warmup.tui.parts import place_parts

NOTHING_BEHIND = "There is no page behind this one. ‹quit› leaves."


class CountsScreen(Page[bool]):
    """Asks it. Its result is the answer."""

    CSS_PATH: ClassVar = ["page.tcss", "counts.tcss"]
    STATES = (State.COUNTS,)
    FOOT: ClassVar = dict.fromkeys(("fun", "count", "undo", "help", "quit"), "")
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def heading(self) -> str:
        """The day."""
        return " · ".join(place_parts(self.work.context.morning()))

    def body(self) -> ComposeResult:
        """The question."""
        yield Static(NOT_PLANNED, id="welcome", markup=False)
        yield Static(COUNTS, id="question", markup=False)

    def act(self, action: str) -> None:
        """Answer, or take back what was said before."""
        work = self.work
        match action:
            case "count":
                work.keep(undoing.EXTRA, lambda: work.context.editor.count(work.context.today))
                work.said = COUNTED
                self.leave(True)
            case "fun":
                work.said = FOR_FUN
                self.leave(False)
            case "undo":
                work.undo()
            case "leave":
                work.said = NOTHING_BEHIND
