"""Lists that are longer than their room say how much of them is out of sight."""

from textual.widget import Widget
from textual.widgets import OptionList, Static


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


class More(Static):
    """Says it of a widget that scrolls, of whose lines ``fixed`` stand at its top."""

    def __init__(self, listed: Widget, fixed: int = 0, *, classes: str = "more") -> None:
        super().__init__("", classes=classes, markup=False)
        self._listed, self._fixed, self._said = listed, fixed, ""

    def on_mount(self) -> None:
        """Look again at every scroll, and whenever the room or the list has changed."""
        for change in ("scroll_y", "virtual_size"):
            self.watch(self._listed, change, self._count, init=False)
        self.screen.screen_layout_refresh_signal.subscribe(self, lambda _screen: self._count())

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
