"""Then and now: what did not come easily at first, and does by now."""

from collections.abc import Iterable
from typing import ClassVar

from rich.text import Text
from textual.binding import BindingType
from textual.widget import Widget

from warmup.session.settling import year_so_far
from warmup.session.then_and_now import ABOUT, TITLE, sentences
from warmup.text import clean
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.reading import Reading, paragraph


class ThenAndNowScreen(Reading):
    """What ``warmup then`` prints."""

    CSS_PATH: ClassVar = ["page.tcss", "reading.tcss", "then_and_now.tcss"]
    STATES = (State.THEN,)
    FOOT: ClassVar = {"done": "back", "line_down": "", "line_up": "", "help": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def heading(self) -> str:
        """What it is, and of whom where there are several."""
        whose = f", {clean(self.work.context.child.nickname)}" if self.work.several else ""
        return f"{TITLE}{whose}. {ABOUT}"

    def content(self) -> Iterable[Widget]:
        """A paragraph for each step that can be told of."""
        context = self.work.context
        for sentence in sentences(year_so_far(context), context.today):
            yield paragraph(Text(sentence))
