"""The story of the prompt at hand: when its item was asked, how it went, and when it is due."""

from collections.abc import Iterable
from typing import ClassVar

from rich.text import Text
from textual.binding import BindingType
from textual.widget import Widget

from warmup.session.story import story
from warmup.text import quoted
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.reading import Reading, paragraph


class StoryScreen(Reading):
    """What ``warmup why`` prints of it."""

    CSS_PATH: ClassVar = ["page.tcss", "reading.tcss", "story.tcss"]
    STATES = (State.STORY,)
    FOOT: ClassVar = {"leave": "back", "line_down": "", "line_up": "", "help": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def heading(self) -> str:
        """The words of the prompt."""
        session = self.work.session
        return quoted(session.prompt.say) if session and session.prompt else ""

    def content(self) -> Iterable[Widget]:
        """Why it comes today, then its story."""
        session = self.work.session
        if session is None or session.prompt is None:
            return
        if session.prompt.why:
            yield paragraph(Text.assemble(("Why today: ", "bold"), session.prompt.why))
        self.work.context.forget()
        for line in story(self.work.context, session.prompt.item):
            yield paragraph(Text(line))
