"""An app that shows one page and nothing else, and ends with it: what a command opens without a morning."""

from abc import abstractmethod
from typing import Any, ClassVar

from textual.binding import Binding, BindingType
from textual.screen import Screen

from warmup.session.context import Clock, Context
from warmup.tui.key_screen import KeyScreen
from warmup.tui.paint import Look, look_of
from warmup.tui.quiet_app import QuietApp, collect_again, draw_in_utf8
from warmup.tui.workspace import Workspace


class OnePage(QuietApp):
    """Opens its ``page`` with a ``work`` of this kind, and hands its result to ``done``."""

    TITLE = "warmup"
    ENABLE_COMMAND_PALETTE = False
    BINDINGS: ClassVar[list[BindingType]] = [Binding("ctrl+c,ctrl+q", "quit", show=False, priority=True)]
    WORK: ClassVar[type[Workspace]] = Workspace

    def __init__(self, context: Context, clock: Clock) -> None:
        super().__init__(Look(context.family.theme))
        assert context.journal is not None
        self.work = self.WORK(context, context.journal, clock, self._turn_theme)

    @abstractmethod
    def page(self) -> KeyScreen[Any]:
        """The page."""

    def done(self, _result: Any) -> None:
        """End the program after it."""
        self.exit(0)

    def get_default_screen(self) -> Screen[object]:
        """A blank one for the page to stand on."""
        return Screen()

    def on_mount(self) -> None:
        """Open the page."""
        self.call_after_refresh(collect_again)
        self.push_screen(self.page(), self.done)

    def _turn_theme(self) -> None:
        """Another look while the page is open; the choice is kept by the morning alone."""
        self.theme = look_of(self.theme).next.theme

    def action_do(self, name: str) -> None:
        """Do an action of the table on the screen that shows."""
        if isinstance(self.screen, KeyScreen):
            self.screen.do(name)

    def show_it(self) -> None:
        """Show the page in this terminal. Raises what ended it, if an error did."""
        draw_in_utf8()
        self.run()
        self.ended()
