"""The two panes: the stage, which is the child's, and the script, which is the adult's."""

from collections.abc import Callable, Iterable
from typing import NamedTuple

from rich.segment import Segment
from textual import events
from textual.strip import Strip
from textual.widget import Widget

from warmup.pictures import Drawing, Picture
from warmup.tui.actions import BY_ID
from warmup.tui.paint import Depth, Look, depth_of, ground_style, look_of, script_strip, stage_strips
from warmup.tui.rest import hills
from warmup.tui.script import Script

_TO_THE_EDGE = frozenset({"hundred-chart", "pairs"})
"""Pictures without air beside them: ten things to a row, and at 80 by 24 the stage has forty columns."""

_HIGH = 12
"""The rows of a stage from which one is left bare above a picture and below it."""


class Painted(NamedTuple):
    """A picture as it stands on the stage: so many cells of it, in one look, within a rim of bare ones."""

    picture: Picture
    look: Look
    side: int
    top: int
    columns: int
    rows: int


def placed(picture: Picture, width: int, height: int, look: Look) -> Painted:
    """Where a stage of this size puts a picture: one column and row of air where there is room for it."""
    side = int(picture.kind not in _TO_THE_EDGE and picture.fits(width - 2, height))
    top = int(height >= _HIGH and picture.fits(width - 2 * side, height - 2))
    return Painted(picture, look, side, top, width - 2 * side, height - 2 * top)


class Stage(Widget):
    """The picture, and nothing to read; hills where it would be too small. Drawn once a size and kept.

    ``coming`` gives the pictures that the next keys may bring, for who prepares them.
    """

    ALLOW_SELECT = False

    def __init__(
        self,
        clicked: Callable[[], None] = lambda: None,
        coming: Callable[[], Iterable[Picture]] = tuple,
    ) -> None:
        super().__init__(id="stage")
        self._clicked, self.coming = clicked, coming
        self.painted: Painted | None = None
        """The picture that its cells show; None while these are hills."""
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
        width, height, look = self.size.width, self.size.height, look_of(self.app.theme)
        self._depth = depth_of(self.app.no_color, self.app.console.color_system)
        key = (self._picture, self._over, width, height, look)
        if key != self._drawn:
            self._strips, self._drawn = self._draw(width, height, look), key
        if y < len(self._strips):
            return self._strips[y]
        return self._blank(width, look)

    def _draw(self, width: int, height: int, look: Look) -> list[Strip]:
        self.painted = None
        if not width or not height:
            return []
        smooth, drawing = self._depth is not Depth.FEW, None
        if self._picture is not None:
            at = placed(self._picture, width, height, look)
            drawing = _drawing(at.picture, at.columns, at.rows, smooth=smooth)
        if drawing is None:
            return stage_strips(hills(width, height, sun=self._over, smooth=smooth), look, self._depth)
        self.painted = at
        strips = stage_strips(drawing, look, self._depth)
        blank = Segment(" ", ground_style(look, self._depth))
        inner = [Strip([blank, *strip, blank]) if at.side else strip for strip in strips]
        return [self._blank(width, look)] * at.top + inner

    def _blank(self, width: int, look: Look) -> Strip:
        return Strip([Segment(" " * width, ground_style(look, self._depth))], width)

    def on_click(self) -> None:
        """What a click on the picture means is no business of the stage."""
        self._clicked()


def _drawing(picture: Picture, columns: int, rows: int, *, smooth: bool) -> Drawing | None:
    """The picture, or None where it does not fit or, read from a journal, names an unknown shape."""
    try:
        return picture.draw(columns, rows, smooth=smooth) if picture.fits(columns, rows) else None
    except Exception:
        return None


class Told(Widget):
    """Painted lines, of which each piece that takes a click has a tooltip."""

    ALLOW_SELECT = False

    def on_mouse_move(self, event: events.MouseMove) -> None:
        """Have the tooltip of what is under the mouse ready."""
        meta = event.style.meta
        if "action" in meta:
            told: str | None = BY_ID[meta["action"]].help
        else:
            told = BEAD.format(meta["bead"] + 1) if meta.get("bead", -1) >= 0 else None
        if told != self.tooltip:
            self.tooltip = told


BEAD = "Prompt {}: go there."
_WIDEST = 82
"""The widest the script is laid out, in cells; a wider pane has it in its middle."""


class ScriptPane(Told):
    """The script. It asks for its page at the size it has, and keeps it until told to ask again."""

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
        width, height, look = self.size.width, self.size.height, look_of(self.app.theme)
        key = (self._version, width, height, look)
        if key != self._drawn:
            self._strips, self._drawn = self._lay_out(width, height, look), key
        if y < len(self._strips):
            return self._strips[y]
        return script_strip((), width, 0, look)

    def _lay_out(self, width: int, height: int, look: Look) -> list[Strip]:
        # Air round the words where there is room; a line longer than a glance is not read at breakfast.
        margin = max(1 if width < 60 else 2, (width - _WIDEST) // 2)
        air = int(height >= 18)
        lines = self._page(width - 2 * margin, height - 2 * air).fitted(height - 2 * air)
        empty = [script_strip((), width, 0, look)] * air
        return empty + [script_strip(line, width, margin, look) for line in lines]
