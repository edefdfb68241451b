"""Taking a child out of the family: the two questions, with what comes of it."""

from collections.abc import Sequence
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import Static

from warmup.tui.actions import Action, State
from warmup.tui.choice import Choice
from warmup.tui.key_screen import bindings
from warmup.tui.workspace import Workspace


class RemovalScreen(Choice):
    """One of the questions. The first entry, under the cursor, changes nothing."""

    CSS_PATH: ClassVar = ["page.tcss", "choice.tcss", "removal.tcss"]
    STATES = (State.REMOVAL,)
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, question: str, told: str, entries: Sequence[Action]) -> None:
        super().__init__(work, entries)
        self._question, self._told = question, told

    def heading(self) -> str:
        """What is asked."""
        return self._question

    def body(self) -> ComposeResult:
        """What comes of it, and the list."""
        yield Static(self._told, id="told", markup=False)
        yield from super().body()
