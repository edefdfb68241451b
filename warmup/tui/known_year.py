"""The year in bars: mornings held, levels met and settled, hesitations by strand."""

from collections.abc import Iterable
from typing import ClassVar

from textual.binding import BindingType
from textual.widget import Widget

from warmup.session.known import Known
from warmup.session.known_bars import plots
from warmup.session.known_words import NOTHING_ASKED
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lines import Lines
from warmup.tui.reading import Reading
from warmup.tui.script import Line, Span, Tone
from warmup.tui.workspace import Workspace


class KnownYearScreen(Reading):
    """A plot below another, each as wide as there is room."""

    CSS_PATH: ClassVar = ["page.tcss", "reading.tcss", "known_year.tcss"]
    ASKS_AT_MIDNIGHT: ClassVar = False
    STATES = (State.KNOWN_YEAR,)
    FOOT: ClassVar = {"leave": "back", "line_down": "", "line_up": "", "help": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, found: Known) -> None:
        self._known = found
        super().__init__(work)

    def heading(self) -> str:
        """Whose year it is."""
        return f"The year so far · {self._known.child}"

    def content(self) -> Iterable[Widget]:
        """The plots."""
        yield Lines(self._lines, id="bars")

    def _lines(self, width: int) -> list[Line]:
        found: list[Line] = []
        for plot in plots(self._known, width):
            found += [(), (Span(plot.heading, Tone.STRONG),)]
            found += [(Span(line),) for line in plot.lines]
        return found[1:] or [(Span(NOTHING_ASKED),)]
