"""What every page beside the morning is made of: a heading, its own part, what there is to say, its keys."""

from abc import abstractmethod
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.widgets import Footer, Static

from warmup.tui.key_screen import KeyScreen, Result

WIDEST = 92
"""No page is wider, in columns (the number stands in ``page.tcss`` as well)."""
LOW, NARROW = 18, 60
"""Under so many rows a page goes without air, and under so many columns with less at its sides."""


class Keys(Footer):
    """The keys of the screen and what they do, in as many lines as they need."""

    def __init__(self) -> None:
        super().__init__(show_command_palette=False, compact=True)

    def compose(self) -> ComposeResult:
        """A key and its label after the other, in columns."""
        yield from super().compose()
        self.call_after_refresh(self._arrange)

    def on_resize(self) -> None:
        """Another width may take another number of columns."""
        self._arrange()

    def _arrange(self) -> None:
        found = [active.binding for active in self.screen.active_bindings.values() if active.binding.show]
        by_action = {binding.action: binding for binding in found}
        cells = [len(each.key_display or each.key) + len(each.description) + 3 for each in by_action.values()]
        if cells:
            self.styles.grid_size_columns = columns(cells, self.size.width)


def columns(cells: list[int], width: int) -> int:
    """In how many columns pieces of these widths stand beside each other in so many cells; at least one."""
    for count in range(len(cells), 1, -1):
        if sum(max(cells[at::count]) for at in range(count)) <= width:
            return count
    return 1


class Page(KeyScreen[Result]):
    """Composes them, and keeps what there is to say up to date."""

    CSS_PATH: ClassVar = ["page.tcss"]

    @abstractmethod
    def heading(self) -> str:
        """The line at the top."""

    @abstractmethod
    def body(self) -> ComposeResult:
        """The page's own part."""

    def compose(self) -> ComposeResult:
        """From top to bottom."""
        with Vertical(id="page"):
            yield Static(self.heading(), id="heading", markup=False)
            yield from self.body()
            yield Static("", id="loud", markup=False)
            yield Static("", id="said", markup=False)
            yield Keys()

    def on_mount(self) -> None:
        """Show what is to be seen from the start."""
        self.show()

    def on_resize(self, event: events.Resize) -> None:
        """Give up the air where there is little room."""
        self.set_class(event.size.height < LOW, "low")
        self.set_class(event.size.width < NARROW, "narrow")

    def show(self) -> None:
        """What there is to say: what is lost or not saved, and what the last key did."""
        if self not in self.app.screen_stack:
            return
        for name, loud in (("loud", True), ("said", False)):
            lines = [notice.text for notice in self.work.notices() if notice.loud is loud]
            place = self.query_one(f"#{name}", Static)
            place.update("\n".join(lines))
            place.display = bool(lines)
