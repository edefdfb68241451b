"""A page with a list to tick: the list, the line under the cursor in full, and what comes of the ticks."""

from abc import abstractmethod
from collections.abc import Iterable
from typing import ClassVar, Generic, TypeVar

from textual import on
from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import SelectionList, Static

from warmup.tui.key_screen import Result
from warmup.tui.lists import More
from warmup.tui.page import Page
from warmup.tui.ticks import Ticks
from warmup.tui.workspace import Workspace

Value = TypeVar("Value")


class TickingPage(Page[Result], Generic[Result, Value]):
    """Its ``lines`` are what each says, what it stands for, and whether it is ticked from the start."""

    CSS_PATH: ClassVar = ["page.tcss", "ticking.tcss"]
    AUTO_FOCUS = "#list"
    ASKS_AT_MIDNIGHT = False

    def __init__(self, work: Workspace, lines: Iterable[tuple[Content, Value, bool]]) -> None:
        super().__init__(work)
        self._list: Ticks[Value] = Ticks(*lines, id="list", compact=True)

    @abstractmethod
    def whole(self, value: Value) -> str:
        """The line of this value in full."""

    @abstractmethod
    def outcome(self) -> str:
        """What comes of the ticks there are."""

    def body(self) -> ComposeResult:
        """From top to bottom."""
        yield self._list
        yield More(self._list)
        yield Static("", id="whole", markup=False)
        yield Static("", id="outcome", markup=False)

    def on_mount(self) -> None:
        """Say what comes of the ticks there are."""
        super().on_mount()
        self.say_what_comes_of_it()

    def ticked(self) -> tuple[Value, ...]:
        """What is ticked, in the order of the list."""
        lines = map(self._list.get_option_at_index, range(self._list.option_count))
        return tuple(line.value for line in lines if line.value in self._list.selected)

    @on(SelectionList.SelectedChanged)
    def say_what_comes_of_it(self) -> None:
        """Say it anew."""
        self.query_one("#outcome", Static).update(self.outcome())

    @on(SelectionList.SelectionHighlighted)
    def _say_the_whole_line(self, event: SelectionList.SelectionHighlighted[Value]) -> None:
        self.query_one("#whole", Static).update(self.whole(event.selection.value))

    def act(self, action: str) -> None:
        """Tick a line, or all of them."""
        match action:
            case "tick":
                self._list.action_select()
            case "tick_all" if len(self._list.selected) == self._list.option_count:
                self._list.deselect_all()
            case "tick_all":
                self._list.select_all()
            case "leave":
                self.leave()
