"""The child's own window: the picture of the prompt at hand, as large as the terminal, and nothing to read.

It looks at the journal a dozen times a second and shows what stands there; it writes nothing. Where there is
no picture, or none that can be drawn at this size, two quiet hills stand in its place.
"""

import asyncio
from typing import ClassVar

from rich.segment import Segment
from rich.style import Style
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.strip import Strip
from textual.widget import Widget

from warmup.journal.watching import Watch
from warmup.pictures import Drawing, Ink, Picture
from warmup.session.context import Clock
from warmup.session.on_stage import NOTHING, OnStage, Reader
from warmup.tui.paint import palette, stage_strips
from warmup.tui.quiet_app import QuietApp, collect_again
from warmup.tui.rest import hills

EVERY = 0.08
"""The seconds between two looks."""
_AIR = 1
"""The empty cells round a picture where it is legible without them."""


class Canvas(Widget):
    """A picture, or the hills; drawn once a size and kept."""

    ALLOW_SELECT = False
    DEFAULT_CSS = "Canvas { width: 100%; height: 100%; }"

    def __init__(self, *, dark: bool) -> None:
        super().__init__()
        self._dark, self._over = dark, False
        self._picture: Picture | None = None
        self._strips: list[Strip] = []
        self._drawn: tuple[object, ...] = ()

    def show(self, picture: Picture | None, *, over: bool) -> None:
        """Show a picture, or the hills where there is none; ``over`` puts a sun above them."""
        if (picture, over) != (self._picture, self._over):
            self._picture, self._over = picture, over
            self.refresh()

    def render_line(self, y: int) -> Strip:
        """One row."""
        key = (self._picture, self._over, self.size)
        if key != self._drawn:
            self._strips, self._drawn = self._draw(self.size.width, self.size.height), key
        return self._strips[y] if y < len(self._strips) else self._blank(self.size.width)

    def _draw(self, width: int, height: int) -> list[Strip]:
        if not width or not height:
            return []
        drawing, side, top = _drawing(self._picture, width, height) if self._picture else (None, 0, 0)
        if drawing is None:
            return stage_strips(hills(width, height, sun=self._over), self._dark)
        inner = stage_strips(drawing, self._dark)
        if side:
            edge = self._blank(side)
            inner = [Strip([*edge, *strip, *edge], width) for strip in inner]
        return [self._blank(width)] * top + inner

    def _blank(self, width: int) -> Strip:
        style = Style(bgcolor=palette(self._dark).inks[Ink.GROUND])
        return Strip([Segment(" " * width, style)], width)


def _drawing(picture: Picture, width: int, height: int) -> tuple[Drawing | None, int, int]:
    """The picture and the air beside and above it; None where it can't be drawn at this size.

    One read from a journal may name a shape that no picture has.
    """
    try:
        columns, rows = picture.least()
        if columns > width or rows > height:
            return None, 0, 0
        side, top = _AIR * (width - 2 * _AIR >= columns), _AIR * (height - 2 * _AIR >= rows)
        return picture.draw(width - 2 * side, height - 2 * top), side, top
    except Exception:
        return None, 0, 0


class ChildStage(QuietApp):
    """Follows the window of the adult, and ends with the morning."""

    TITLE = ""
    ENABLE_COMMAND_PALETTE = False
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("space,h,p", "turn", show=False, priority=True),
        Binding("q,8,ctrl+q,ctrl+c", "leave", show=False, priority=True),
    ]

    def __init__(self, watch: Watch, clock: Clock, *, dark: bool = True) -> None:
        super().__init__()
        self._watch, self._clock, self._reader = watch, clock, Reader()
        self._canvas = Canvas(dark=dark)
        self.shown: OnStage = NOTHING
        self.hidden = False

    def compose(self) -> ComposeResult:
        """The picture alone."""
        yield self._canvas

    def on_mount(self) -> None:
        """Look at once, and then again and again."""
        self._keep_looking()
        self.call_after_refresh(collect_again)

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
        self._canvas.show(None if self.hidden else self.shown.picture, over=self.shown.over)

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
