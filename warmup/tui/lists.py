"""Lists that are longer than their room say how much of them is out of sight."""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from textual.widget import Widget
from textual.widgets import OptionList, Static

if TYPE_CHECKING:
    from textual.widgets import DataTable


def cut_off(total: int, first: int, shown: int) -> str:
    """How many rows are out of sight above and below: "↑ 2 more  ↓ 3 more"; nothing where all show."""
    above, below = first, total - first - shown
    return "  ".join(f"{arrow} {count} more" for arrow, count in (("↑", above), ("↓", below)) if count > 0)


def step(listed: OptionList, by: int) -> None:
    """Put the cursor on another line, past those that only name a group; at an end it stays where it is."""
    places = [at for at in range(listed.option_count) if not listed.get_option_at_index(at).disabled]
    if places:
        now = places.index(listed.highlighted) if listed.highlighted in places else 0
        listed.highlighted = places[max(0, min(len(places) - 1, now + by))]


def center(listed: Widget, line: int) -> None:
    """Scroll so that a line stands in the middle, once there is a layout."""

    def scroll() -> None:
        listed.scroll_to(y=line - listed.scrollable_content_region.height // 2, animate=False, force=True)

    listed.call_after_refresh(scroll)


def show_cursor(table: "DataTable[Any]") -> None:
    """Scroll to the row under the cursor, if it is out of sight as the table lies now."""
    rows = table.scrollable_content_region.height - int(table.show_header)
    row, first = table.cursor_row, round(table.scroll_y)
    if rows > 0 and not first <= row < first + rows:
        y = row if row < first else row - rows + 1
        table.scroll_to(y=y, animate=False, force=True, immediate=True)


class More(Static):
    """Says it of a widget that scrolls, of whose lines ``fixed`` stand at its top.

    ``show_cursor`` scrolls to the line under its cursor; of an OptionList that need not be said.
    """

    def __init__(
        self,
        listed: Widget,
        fixed: int = 0,
        *,
        classes: str = "more",
        show_cursor: Callable[[], object] = lambda: None,
    ) -> None:
        super().__init__("", classes=classes, markup=False)
        self._show_cursor = listed.scroll_to_highlight if isinstance(listed, OptionList) else show_cursor
        self._listed, self._fixed, self._said, self._rows = listed, fixed, "", 0

    def on_mount(self) -> None:
        """Look again at every scroll, and whenever the room or the list has changed."""
        for change in ("scroll_y", "virtual_size"):
            self.watch(self._listed, change, self._count, init=False)
        self.screen.screen_layout_refresh_signal.subscribe(self, lambda _screen: self._laid_out())

    def _laid_out(self) -> None:
        """Where lines beside the list took of its room, the line under the cursor stays in sight."""
        rows = self._listed.scrollable_content_region.height
        if 0 < rows < self._rows:
            self._show_cursor()
        self._rows = rows
        self._count()

    def _count(self) -> None:
        listed, fixed = self._listed, self._fixed
        said = cut_off(
            listed.virtual_size.height - fixed,
            round(listed.scroll_y),
            listed.scrollable_content_region.height - fixed,
        )
        if said != self._said:
            self._said = said
            self.update(said)
