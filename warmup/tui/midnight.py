"""The clock says another date than the morning on screen: today's, or finish that one?"""

import datetime as dt
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import Static

from warmup.session.words import STAYS, now_words, open_still
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.page import Page


class MidnightScreen(Page[bool]):
    """Asks it. Its result is whether to go over to the new date."""

    CSS_PATH: ClassVar = ["page.tcss", "midnight.tcss"]
    STATES = (State.MIDNIGHT,)
    FOOT: ClassVar = dict.fromkeys(("today", "finish", "help", "quit"), "")
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]
    ASKS_AT_MIDNIGHT = False

    def heading(self) -> str:
        """The date it is now."""
        now = self.work.midnight.offered or self.work.context.today
        return now_words(now, self._stood)

    @property
    def _stood(self) -> dt.date:
        return self.work.context.today

    def body(self) -> ComposeResult:
        """What goes on if it is not gone over to."""
        yield Static(STAYS, id="kept", markup=False)
        yield Static(self._open_still(), id="open", markup=False)

    def _open_still(self) -> str:
        return open_still(self.work.midnight.offered or self._stood, self._stood)

    def do(self, action: str) -> None:
        """Where the clock was put right again meanwhile, there is nothing left to ask."""
        if action != "quit" and self.work.midnight.asks(self._stood):
            self.query_one("#heading", Static).update(self.heading())
            self.query_one("#open", Static).update(self._open_still())
        elif self.work.midnight.offered is None:
            self.leave(False)
        else:
            super().do(action)

    def act(self, action: str) -> None:
        """Go over to the new date's morning, or stay."""
        midnight = self.work.midnight
        if action == "today" and midnight.offered:
            now = midnight.offered
            midnight.go()
            self.work.turn_to(now)
            self.leave(True)
        else:
            midnight.stay()
            self.leave(False)
