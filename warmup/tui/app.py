"""The app: its three themes, and the screens it opens."""

from collections.abc import Callable
from typing import ClassVar

from textual.screen import Screen

from warmup.config.family import Family
from warmup.journal.journal import Journal
from warmup.session.context import Clock, Context
from warmup.tui.actions import rebind
from warmup.tui.key_screen import KeyScreen
from warmup.tui.morning import MorningScreen
from warmup.tui.paint import Look, look_of
from warmup.tui.panes import Stage
from warmup.tui.quiet_app import QuietApp, collect_again
from warmup.tui.workspace import Workspace


class WarmupApp(QuietApp):
    """Opens today's morning; before the first one, asks who it is for.

    ``welcome`` takes the family that the first run's form gives and makes the context of it; None when
    there is a family already. ``notices`` stand on the script, and more quietly ``aside``. A ``guest``
    without a name is asked for it first. ``takes_turns`` says that the prompts of
    several children do.
    """

    TITLE = "warmup"
    CSS_PATH: ClassVar = ["morning.tcss"]

    def __init__(
        self,
        context: Context,
        journal: Journal,
        clock: Clock,
        notices: tuple[str, ...] = (),
        welcome: Callable[[Family], Context] | None = None,
        aside: str = "",
        *,
        guest: bool = False,
        takes_turns: bool = False,
    ) -> None:
        super().__init__(Look(context.family.theme))
        self.context, self.journal, self.clock = context, journal, clock
        self.notices, self.welcome, self.aside = (*notices, *self._take_own_keys()), welcome, aside
        self.guest, self.takes_turns = guest, takes_turns
        self.told_later: Callable[[], tuple[str, ...]] = tuple
        """Gives lines that stand quietly from the first frame on: what takes a look at the disk."""

    def _take_own_keys(self) -> tuple[str, ...]:
        """Bind the family's own keys and name them; what is wrong with them, where something is."""
        written = self.context.family.keys
        rebind({})
        if not written:
            return ()
        from warmup.tui.keymap import own_keys, textual_keymap

        own, wrong = own_keys(written, self.context.places.config / "family.toml")
        if own:
            rebind(own)
            self.set_keymap(textual_keymap(own))
        return (wrong,) if wrong else ()

    def get_default_screen(self) -> Screen[object]:
        """The morning, or a blank one for the form or the question to stand on."""
        if self.welcome is not None or self._asks_for_a_name:
            return Screen()
        return self.new_morning()

    def on_mount(self) -> None:
        """The form comes first where there is no family yet."""
        self.call_after_refresh(collect_again)
        self.call_after_refresh(self._tell_later)
        if self.context.family.pixels:
            self.call_after_refresh(self.take_pixels)
        if self.welcome is not None:
            from warmup.tui.welcome import WelcomeScreen

            work = Workspace(self.context, self.journal, self.clock)
            self.push_screen(WelcomeScreen(work), self._welcomed)
        elif self._asks_for_a_name:
            from warmup.tui.guest import GuestScreen

            self.push_screen(GuestScreen(self._work()), lambda _name: self.push_screen(self.new_morning()))

    def stage_on_screen(self) -> Stage | None:
        """The morning's, unless a page lies on it."""
        screen = self.screen_stack[-1] if self.screen_stack else None
        return screen.stage if isinstance(screen, MorningScreen) else None

    @property
    def _asks_for_a_name(self) -> bool:
        return self.guest and not self.context.marks_by

    def _tell_later(self) -> None:
        """Say what was looked for once the first frame is out; nothing is drawn again where nothing is."""
        if lines := self.told_later():
            for screen in self.screen_stack:
                if isinstance(screen, MorningScreen):
                    screen.work.told_later = lines
                    screen.show()

    def _welcomed(self, family: Family | None) -> None:
        if family is None or self.welcome is None:
            return
        self.context = self.welcome(family)
        self.push_screen(self.new_morning())

    def new_morning(self) -> MorningScreen:
        """The morning of the family and the child."""
        return MorningScreen(self._work())

    def _work(self) -> Workspace:
        given = self.context, self.journal, self.clock, self.turn_theme, self.notices, self.aside
        return Workspace(*given, guest=self.guest, takes_turns=self.takes_turns)

    def action_command_palette(self) -> None:
        """The palette: all that does something on the screen that shows, by name."""
        screen = self.screen
        if isinstance(screen, KeyScreen):
            screen.open_palette()

    def action_do(self, name: str) -> None:
        """Do an action of the table on the screen that shows."""
        do: Callable[[str], None] | None = getattr(self.screen, "do", None)
        if do is not None:
            do(name)

    def turn_theme(self) -> None:
        """Change to the next look, and keep the choice."""
        look = look_of(self.theme).next
        self.theme = look.theme
        self.context.editor.prefer(theme=look.value)


class PageApp(WarmupApp):
    """One page of the morning's alone, as ``page`` makes it, and the end of the program after it."""

    def __init__(
        self, context: Context, journal: Journal, clock: Clock, page: Callable[[Workspace], KeyScreen[object]]
    ) -> None:
        super().__init__(context, journal, clock)
        self._page = page

    def get_default_screen(self) -> Screen[object]:
        """A blank one for the page to stand on."""
        return Screen()

    def on_mount(self) -> None:
        """The page, and the end of the program after it."""
        super().on_mount()
        self.push_screen(self._page(self._work()), lambda _: self.exit(0, 0))
