"""Painted lines on the pages beside the morning: the keys at their foot, and the help."""

from collections.abc import Callable, Sequence

from textual.geometry import Size
from textual.strip import Strip

from warmup.tui.paint import look_of, script_strip
from warmup.tui.panes import Told
from warmup.tui.script import Line


class Lines(Told):
    """Lines that are made for the width there is, as many rows high as they are."""

    def __init__(self, lines: Callable[[int], Sequence[Line]], *, id: str) -> None:
        super().__init__(id=id)
        self._lines = lines

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """A row for each line at this width."""
        return len(self._lines(max(1, width)))

    def render_line(self, y: int) -> Strip:
        """One of them."""
        width, look = self.size.width, look_of(self.app.theme)
        lines = self._lines(max(1, width))
        return script_strip(lines[y] if y < len(lines) else (), width, 0, look)
