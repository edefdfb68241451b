"""The child's own window: the picture of the prompt at hand, as large as the terminal, and nothing to read.

It looks at the journal a dozen times a second and shows what stands there; it writes nothing. Where there is
no picture, or none that can be drawn at this size, two quiet hills stand in its place.
"""

import asyncio
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType

from warmup.journal.watching import Watch
from warmup.session.context import Clock
from warmup.session.on_stage import NOTHING, OnStage, Reader
from warmup.tui.paint import Look
from warmup.tui.panes import Stage
from warmup.tui.quiet_app import QuietApp, collect_again

EVERY = 0.08
"""The seconds between two looks."""


class ChildStage(QuietApp):
    """Follows the window of the adult, and ends with the morning."""

    TITLE = ""
    ENABLE_COMMAND_PALETTE = False
    CSS = "#stage { width: 100%; height: 100%; }"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("space,h,p", "turn", show=False, priority=True),
        Binding("q,8,ctrl+q,ctrl+c", "leave", show=False, priority=True),
    ]

    def __init__(
        self, watch: Watch, clock: Clock, look: Look = Look.DARK, *, true_pixels: bool = True
    ) -> None:
        super().__init__(look)
        self._watch, self._clock, self._reader = watch, clock, Reader()
        self._stage, self._true_pixels = Stage(coming=lambda: self.shown.coming), true_pixels
        self.shown: OnStage = NOTHING
        self.hidden = False

    def compose(self) -> ComposeResult:
        """The picture alone."""
        yield self._stage

    def on_mount(self) -> None:
        """Look at once, and then again and again."""
        self._keep_looking()
        self.call_after_refresh(collect_again)
        if self._true_pixels:
            self.call_after_refresh(self.take_pixels)

    def stage_on_screen(self) -> Stage | None:
        """The only thing there is."""
        return self._stage if self._stage.is_attached else None

    def _keep_looking(self) -> None:
        """Look, and again a little later. A timer of Textual's own costs several times as much as a look."""
        try:
            self.look()
        except Exception as error:
            self._handle_exception(error)
        asyncio.get_running_loop().call_later(EVERY, self._keep_looking)

    def look(self) -> None:
        """Follow what the journal says; leave once the morning that was open here is closed."""
        if not self._watch.look(self._clock().date()):
            return
        now, before = self._reader.on_stage(self._watch.found), self.shown
        self.shown = now
        if now.closed and before.prompt[:2] == now.prompt[:2] and not before.closed:
            self.exit(0)
            return
        if now.prompt != before.prompt:
            self.hidden = now.hidden
        self._show()

    def _show(self) -> None:
        self._stage.show(None if self.hidden else self.shown.picture, over=self.shown.over)

    def action_turn(self) -> None:
        """Hide the picture, or show it again."""
        self.hidden = not self.hidden
        self._show()

    def action_leave(self) -> None:
        """Leave without a word."""
        self.exit(0)

    def action_help_quit(self) -> None:
        """Textual would say in words how to leave."""
        self.exit(0)
