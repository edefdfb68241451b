"""Another one: the four reasons for which something else is asked."""

from typing import ClassVar

from textual.binding import BindingType

from warmup.tui.actions import State
from warmup.tui.choice import Choice
from warmup.tui.key_screen import bindings


class AnotherScreen(Choice):
    """The first reason is none: just another."""

    CSS_PATH: ClassVar = ["page.tcss", "choice.tcss", "another.tcss"]
    STATES = (State.ANOTHER,)
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def heading(self) -> str:
        """What is asked."""
        return "Another one. Why?"

    def _would_be_entries(self) -> frozenset[str]:
        return frozenset({"swap"})
