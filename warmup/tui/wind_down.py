"""Winding down: fewer prompts today, or one more and the close; and whether it is a rough day."""

from typing import ClassVar

from textual.binding import BindingType

from warmup.tui.actions import State
from warmup.tui.choice import Choice
from warmup.tui.key_screen import bindings


class WindDownScreen(Choice):
    """A rough day lowers nothing, however the morning ends."""

    CSS_PATH: ClassVar = ["page.tcss", "choice.tcss", "wind_down.tcss"]
    STATES = (State.WIND_DOWN,)
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def heading(self) -> str:
        """What it is for."""
        return "Wind down. What is left out is no debt."

    def _would_be_entries(self) -> frozenset[str]:
        return frozenset({"short", "stop", "rough"})
