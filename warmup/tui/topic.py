"""A topic of the guide, to be read."""

from collections.abc import Iterable
from typing import ClassVar

from textual.binding import BindingType
from textual.widget import Widget
from textual.widgets import Markdown

from warmup.guide import Topic
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.reading import Reading
from warmup.tui.workspace import Workspace


class TopicScreen(Reading):
    """Its title above its text."""

    CSS_PATH: ClassVar = ["page.tcss", "reading.tcss", "topic.tcss"]
    STATES = (State.TOPIC,)
    FOOT: ClassVar = {"leave": "back", "line_down": "", "line_up": "", "help": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, about: Topic) -> None:
        self._about = about
        super().__init__(work)

    def heading(self) -> str:
        """Its title."""
        return self._about.title

    def content(self) -> Iterable[Widget]:
        """Its text."""
        yield Markdown(self._about.text, open_links=False)
