"""A two-minute game for what wobbled: what to lay out, what to say, how it ends."""

from collections.abc import Iterable
from typing import ClassVar

from textual.binding import BindingType
from textual.widget import Widget
from textual.widgets import Static

from warmup.session.gaming import NO_GAME, SAY, TAKE_CARE, for_whom, suggestion, told
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lines import Lines
from warmup.tui.reading import Reading
from warmup.tui.script import Line, Span, Tone, wrapped
from warmup.tui.workspace import Workspace

_TONES = {SAY: Tone.SAY, TAKE_CARE: Tone.STRONG}
_AROUND = 8
"""The rows of a page that are not the game's, at most."""


class GameScreen(Reading):
    """The game of today, and at a key the next one; nothing is recorded."""

    CSS_PATH: ClassVar = ["page.tcss", "reading.tcss", "game.tcss"]
    STATES = (State.GAME,)
    FOOT: ClassVar = {"another_game": "", "leave": "back", "line_down": "", "line_up": "", "help": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        work.context.forget()
        contexts = [session.context for session in work.sessions] or [work.context]
        self._whose, self._nth = for_whom(contexts), 0
        self._found = suggestion(self._whose)
        super().__init__(work)

    def heading(self) -> str:
        """The name of the game, and whose it is where there are several children."""
        if self._found is None:
            return "A two-minute game"
        whose = f"{self._whose.child.nickname}: " if self.work.several else ""
        return f"{whose}{self._found.game.name}"

    def content(self) -> Iterable[Widget]:
        """All there is to say of it."""
        yield Lines(self._lines, id="game")

    def _lines(self, width: int) -> list[Line]:
        if self._found is None:
            return [(Span(NO_GAME),)]
        parts = [
            wrapped(text, width, f"{label}:", _TONES.get(label, Tone.PLAIN))
            for label, text in told(self._found)
        ]
        # Air between them, where all is to be seen at once with it.
        airy = sum(map(len, parts)) + len(parts) <= self.app.size.height - _AROUND
        return [line for part in parts for line in ([*part, ()] if airy else part)]

    def belongs(self, action: str) -> bool:
        """Where there is no game there is no other one."""
        return super().belongs(action) and (action != "another_game" or self._found is not None)

    def act(self, action: str) -> None:
        """The next game, or as on any page that is read."""
        if action != "another_game":
            super().act(action)
            return
        self._nth += 1
        self._found = suggestion(self._whose, self._nth)
        self.query_one("#heading", Static).update(self.heading())
        self.query_one("#game", Lines).refresh(layout=True)
        self.query_one("#scroll").scroll_home(animate=False)
