"""The app: its two themes, and the screens it opens."""

import gc
import io
import sys
from collections.abc import Callable, Iterable
from typing import ClassVar

from textual.app import App, SystemCommand
from textual.screen import Screen
from textual.theme import Theme

from warmup.config.family import Family
from warmup.journal.journal import Journal
from warmup.pictures import Ink
from warmup.session.context import Clock, Context
from warmup.tui.actions import State, actions_of
from warmup.tui.key_screen import KeyScreen
from warmup.tui.morning import MorningScreen
from warmup.tui.paint import DARK, LIGHT, Palette
from warmup.tui.script import Tone
from warmup.tui.workspace import Workspace


def _theme(name: str, palette: Palette, *, dark: bool) -> Theme:
    words = {
        tone: style.rpartition(" on ")[0].rpartition(" ")[2] or style.rpartition(" ")[2]
        for tone, style in palette.tones.items()
    }
    bar = {"foreground": palette.panel, "background": words[Tone.HERE], "text-style": "bold"}
    return Theme(
        name=name,
        primary=palette.inks[Ink.FIRST],
        accent=palette.inks[Ink.SECOND],
        background=palette.inks[Ink.GROUND],
        surface=palette.panel,
        panel=palette.panel,
        foreground=words[Tone.PLAIN],
        dark=dark,
        variables={
            **{tone.value: color for tone, color in words.items()},
            "amber": palette.tones[Tone.NOTICE].rpartition(" ")[2],
            **{f"block-cursor-{name}": value for name, value in bar.items()},
            **{f"block-cursor-blurred-{name}": value for name, value in bar.items()},
            "footer-background": palette.panel,
            "footer-foreground": words[Tone.PLAIN],
            "footer-key-foreground": words[Tone.KEY],
            "footer-description-foreground": words[Tone.PLAIN],
        },
    )


def draw_in_utf8() -> None:
    """Let the screen be drawn in UTF-8 whatever the locale says: its shapes are in no narrower coding."""
    for stream in (sys.__stdout__, sys.__stderr__):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8")


def _collect_again() -> None:
    """Look for garbage again, but not among what the start has loaded."""
    gc.freeze()
    gc.enable()


class WarmupApp(App[int]):
    """Opens today's morning; before the first one, asks who it is for.

    ``welcome`` takes the family that the first run's form gives and makes the context of it; None when
    there is a family already. ``notices`` stand on the script, and more quietly ``aside``.
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
    ) -> None:
        super().__init__()
        self.context, self.journal, self.clock = context, journal, clock
        self.notices, self.welcome, self.aside = notices, welcome, aside
        self.register_theme(_theme("warmup-dark", DARK, dark=True))
        self.register_theme(_theme("warmup-light", LIGHT, dark=False))
        # Set before anything watches it: the styles are then worked out once, not twice.
        self.set_reactive(App.theme, f"warmup-{context.family.theme}")
        self.stylesheet.set_variables(self.get_css_variables())

    def _handle_exception(self, error: Exception) -> None:
        """End at once and without a word: Textual's own report shows what every variable holds.

        :meth:`ended` raises the error again for the command line, which says it in a sentence.
        """
        self._return_code = 1
        if self._exception is None:
            self._exception = error
            self._exception_event.set()
        self._close_messages_no_wait()

    def ended(self) -> int:
        """The exit code, once the program has run. Raises what ended it, if an error did."""
        if self._exception is not None:
            raise self._exception
        return self.return_code or 0

    def get_css_variables(self) -> dict[str, str]:
        """The colors of the theme; none while there is no theme yet, so that they are worked out once."""
        return super().get_css_variables() if self.theme.startswith("warmup-") else {}

    def get_default_screen(self) -> Screen[object]:
        """The morning, or a blank one for the form to stand on."""
        if self.welcome is not None:
            return Screen()
        return self.new_morning()

    def on_mount(self) -> None:
        """The form comes first where there is no family yet."""
        self.call_after_refresh(_collect_again)
        if self.welcome is not None:
            from warmup.tui.welcome import WelcomeScreen

            work = Workspace(self.context, self.journal, self.clock)
            self.push_screen(WelcomeScreen(work), self._welcomed)

    def _welcomed(self, family: Family | None) -> None:
        if family is None or self.welcome is None:
            return
        self.context = self.welcome(family)
        self.push_screen(self.new_morning())

    def new_morning(self) -> MorningScreen:
        """The morning of the family and the child."""
        return MorningScreen(
            Workspace(self.context, self.journal, self.clock, self.turn_theme, self.notices, self.aside)
        )

    def get_system_commands(self, screen: Screen[object]) -> Iterable[SystemCommand]:
        """Every action of the screen's state, for the command palette."""
        state = screen.state if isinstance(screen, KeyScreen) else State.FORM
        for action in actions_of((state,)):
            yield SystemCommand(
                action.label.capitalize(), action.help, lambda name=action.id: self.action_do(name)
            )

    def action_do(self, name: str) -> None:
        """Do an action of the table on the screen that shows."""
        do: Callable[[str], None] | None = getattr(self.screen, "do", None)
        if do is not None:
            do(name)

    def turn_theme(self) -> None:
        """Change between dark and light, and keep the choice."""
        name = "light" if self.current_theme.dark else "dark"
        self.theme = f"warmup-{name}"
        self.context.editor.prefer(theme=name)
