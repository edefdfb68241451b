"""A page to be read: it scrolls, and there is nothing to pick."""

from abc import abstractmethod
from collections.abc import Iterable
from typing import ClassVar

from rich.text import Text
from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.widget import Widget
from textual.widgets import Static

from warmup.tui.lists import More
from warmup.tui.page import Page
from warmup.tui.workspace import Workspace


class Reading(Page[str]):
    """Its result is an action to be done after it, if one of its keys means that."""

    CSS_PATH: ClassVar = ["page.tcss", "reading.tcss"]
    AUTO_FOCUS = "#scroll"

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        self._scroll = VerticalScroll(*self.content(), id="scroll")

    @abstractmethod
    def content(self) -> Iterable[Widget]:
        """What there is to read."""

    def body(self) -> ComposeResult:
        """What there is to read, and how much of it is out of sight."""
        yield self._scroll
        yield More(self._scroll)

    def act(self, action: str) -> None:
        """Go up and down, or leave."""
        match action:
            case "line_up":
                self._scroll.scroll_relative(y=-1, animate=False)
            case "line_down":
                self._scroll.scroll_relative(y=1, animate=False)
            case "return" | "leave" | "done":
                self.leave()
            case _:
                self.leave(action)


def paragraph(text: Text) -> Static:
    """Some of it, in words."""
    return Static(text, classes="line", markup=False)
