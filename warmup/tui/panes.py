"""The two panes: the stage, which is the child's, and the script, which is the adult's."""

from collections.abc import Callable

from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip
from textual.widget import Widget

from warmup.pictures import Drawing, Ink, Picture
from warmup.tui.paint import Depth, depth_of, ground_style, palette, script_strip, stage_strips
from warmup.tui.rest import hills
from warmup.tui.script import Script

_TO_THE_EDGE = frozenset({"hundred-chart", "pairs"})
"""Pictures without air beside them: ten things to a row, and at 80 by 24 the stage has forty columns."""

_HIGH = 12
"""The rows of a stage from which one is left bare above a picture and below it."""


class Stage(Widget):
    """The picture, and nothing to read. Drawn once a size and kept."""

    ALLOW_SELECT = False

    def __init__(self) -> None:
        super().__init__(id="stage")
        self._picture: Picture | None = None
        self._over = False
        self._strips: list[Strip] = []
        self._drawn: tuple[object, ...] = ()
        self._depth = Depth.ALL

    def show(self, picture: Picture | None, *, over: bool = False) -> None:
        """Show a picture, or hills where there is none; ``over`` puts a sun above them."""
        self._picture, self._over = picture, over
        self.refresh()

    def render_line(self, y: int) -> Strip:
        """One row of the picture."""
        width, height, dark = self.size.width, self.size.height, self.app.current_theme.dark
        self._depth = depth_of(self.app.no_color, self.app.console.color_system)
        key = (self._picture, self._over, width, height, dark)
        if key != self._drawn:
            self._strips, self._drawn = self._draw(width, height, dark), key
        if y < len(self._strips):
            return self._strips[y]
        return self._blank(width, dark)

    def _draw(self, width: int, height: int, dark: bool) -> list[Strip]:
        picture = self._picture
        if not width or not height:
            return []
        smooth = self._depth is not Depth.FEW
        if picture is None:
            return stage_strips(hills(width, height, sun=self._over, smooth=smooth), dark, self._depth)
        # One column and row of air where there is room for it.
        side = int(picture.kind not in _TO_THE_EDGE and picture.fits(width - 2, height))
        top = int(height >= _HIGH and picture.fits(width - 2 * side, height - 2))
        drawing = _drawing(picture, width - 2 * side, height - 2 * top, smooth=smooth)
        if drawing is None:
            return self._words(picture.words(), width, height, dark)
        strips = stage_strips(drawing, dark, self._depth)
        blank = Segment(" ", ground_style(dark, self._depth))
        inner = [Strip([blank, *strip, blank]) if side else strip for strip in strips]
        return [self._blank(width, dark)] * top + inner

    def _blank(self, width: int, dark: bool) -> Strip:
        return Strip([Segment(" " * width, ground_style(dark, self._depth))], width)

    def _words(self, words: str, width: int, height: int, dark: bool) -> list[Strip]:
        """Words where the picture would be too small to read: for the adult to lay out on the table."""
        import textwrap

        ink = palette(dark).inks
        style = Style(color=ink[Ink.INK], bgcolor=ink[Ink.GROUND])
        lines = textwrap.wrap(f"On the table: {words}", max(10, width - 4))[:height]
        top = (height - len(lines)) // 2
        rows = [Strip([Segment("  " + line, style)]).adjust_cell_length(width, style) for line in lines]
        return [self._blank(width, dark)] * top + rows


def _drawing(picture: Picture, columns: int, rows: int, *, smooth: bool) -> Drawing | None:
    """The picture, or None where it does not fit or, read from a journal, names an unknown shape."""
    try:
        return picture.draw(columns, rows, smooth=smooth) if picture.fits(columns, rows) else None
    except Exception:
        return None


_WIDEST = 82
"""The widest the script is laid out, in cells; a wider pane has it in its middle."""


class ScriptPane(Widget):
    """The script. It asks for its page at the size it has, and keeps it until told to ask again."""

    ALLOW_SELECT = False

    def __init__(self, page: Callable[[int, int], Script]) -> None:
        super().__init__(id="script")
        self._page = page
        self._strips: list[Strip] = []
        self._drawn: tuple[object, ...] = ()
        self._version = 0

    def show(self) -> None:
        """Ask for the page again."""
        self._version += 1
        self.refresh()

    def render_line(self, y: int) -> Strip:
        """One line of the page."""
        width, height, dark = self.size.width, self.size.height, self.app.current_theme.dark
        key = (self._version, width, height, dark)
        if key != self._drawn:
            self._strips, self._drawn = self._lay_out(width, height, dark), key
        if y < len(self._strips):
            return self._strips[y]
        return script_strip((), width, 0, dark)

    def _lay_out(self, width: int, height: int, dark: bool) -> list[Strip]:
        # Air round the words where there is room; a line longer than a glance is not read at breakfast.
        margin = max(1 if width < 60 else 2, (width - _WIDEST) // 2)
        air = int(height >= 18)
        lines = self._page(width - 2 * margin, height - 2 * air).fitted(height - 2 * air)
        empty = [script_strip((), width, 0, dark)] * air
        return empty + [script_strip(line, width, margin, dark) for line in lines]
