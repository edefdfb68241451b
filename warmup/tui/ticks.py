"""Boxes to be ticked that say by their sign whether they are: not every look and terminal has shades."""

from typing import TypeVar

from rich.segment import Segment
from textual.strip import Strip
from textual.widgets import Checkbox, SelectionList

T = TypeVar("T")


class Tick(Checkbox):
    """One box."""

    def __init__(self, label: str, value: bool, *, id: str) -> None:
        super().__init__(label, value, id=id, compact=True)
        self.BUTTON_INNER = _sign(value)

    def watch_value(self) -> None:
        """Another sign for what it is now."""
        self.BUTTON_INNER = _sign(self.value)
        super().watch_value()


class Ticks(SelectionList[T]):
    """A list with a box in each line."""

    def render_line(self, y: int) -> Strip:
        """A line; Textual's has an X in each box, in its second segment, and hides it by its color."""
        line = super().render_line(y)
        at = self.scroll_offset.y + y
        if at >= self.option_count:
            return line
        left, middle, *rest = line
        ticked = self.get_option_at_index(at).value in self.selected
        return Strip([left, Segment(_sign(ticked), middle.style), *rest])


def _sign(ticked: bool) -> str:
    return "X" if ticked else "–"
