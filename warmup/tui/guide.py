"""The guide: its topics, a line each."""

from typing import ClassVar

from textual.binding import BindingType

from warmup.guide import topic, topics
from warmup.tui.actions import Action, Group, State
from warmup.tui.choice import Choice
from warmup.tui.key_screen import bindings
from warmup.tui.workspace import Workspace


class GuideScreen(Choice):
    """What is picked is read on a page on top."""

    CSS_PATH: ClassVar = ["page.tcss", "choice.tcss", "guide.tcss"]
    STATES = (State.GUIDE,)
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        entries = [
            Action(each.name, (), each.title, each.about, Group.PROGRAM, frozenset()) for each in topics()
        ]
        super().__init__(work, entries)

    def heading(self) -> str:
        """What the page is."""
        return "The guide"

    def pick(self, entry: str) -> None:
        """Read it; the list is there again after it."""
        from warmup.tui.topic import TopicScreen

        self.open(TopicScreen(self.work, topic(entry)))
