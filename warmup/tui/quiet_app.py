"""What both windows are: an app in one of our looks, that ends without a word of Textual's own."""

import gc
import io
import sys
from typing import TYPE_CHECKING

from textual.app import App
from textual.theme import Theme

from warmup.pictures import Ink
from warmup.tui.paint import Look, Palette, palette
from warmup.tui.script import Tone

if TYPE_CHECKING:
    from warmup.tui.panes import Stage
    from warmup.tui.pixels import Pixels


class QuietApp(App[int]):
    """Has our looks; ends at once at an error, which :meth:`ended` raises again for the command line."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        for each in Look:
            self.register_theme(_theme(each.theme, palette(each), dark=each is not Look.LIGHT))
        # Set before anything watches it: the styles are then worked out once, not twice.
        self.set_reactive(App.theme, look.theme)
        self.stylesheet.set_variables(self.get_css_variables())

    pixels: "Pixels | None" = None
    """What lays true pixels over the stage, where the terminal shows them."""

    def stage_on_screen(self) -> "Stage | None":
        """The stage of the screen on top; None where that is a page."""
        return None

    def take_pixels(self) -> None:
        """Show true pixels from now on, where they can be shown: asked once the first frame is out."""
        from warmup.tui.terminal import begun

        self.pixels = self.pixels or begun(self)
        self.post_display_hook()

    def on_driver_signal_resume(self) -> None:
        """Back from the shell: draw all of it again, on a screen that was cleared."""
        self.refresh(layout=True)

    def post_display_hook(self) -> None:
        """After cells were drawn: see that the pixels over them still belong there."""
        if self.pixels is not None:
            self.pixels.settle()

    def get_css_variables(self) -> dict[str, str]:
        """The colors of the theme; none while there is no theme yet, so that they are worked out once."""
        return super().get_css_variables() if self.theme.startswith("warmup-") else {}

    def _handle_exception(self, error: Exception) -> None:
        """End at once and without a word: Textual's own report shows what every variable holds."""
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


def draw_in_utf8() -> None:
    """Let the screen be drawn in UTF-8 whatever the locale says: its shapes are in no narrower coding."""
    for stream in (sys.__stdout__, sys.__stderr__):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8")


def collect_again() -> None:
    """Look for garbage again, but not among what the start has loaded."""
    gc.freeze()
    gc.enable()


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
            # A page's heading stands on the panel, not on the band that the words to say have.
            "say": words[Tone.STRONG],
            "notice": palette.tones[Tone.NOTICE].rpartition(" ")[2],
            **{f"block-cursor-{name}": value for name, value in bar.items()},
            **{f"block-cursor-blurred-{name}": value for name, value in bar.items()},
        },
    )
