"""The app: its two themes, and the screens it opens."""

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
from warmup.tui.quiet_app import QuietApp, collect_again
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


class WarmupApp(QuietApp):
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
        self.call_after_refresh(collect_again)
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
