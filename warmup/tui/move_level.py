"""Another week for a level: what it stands on, what stands on it, and what no longer fits in each week."""

from typing import ClassVar

from rich.text import Text
from textual import events, on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from warmup.config.plan_saving import shipped_week
from warmup.model import LevelId
from warmup.schoolyear import WEEKS
from warmup.session import year_changes
from warmup.session.yearview import planned, year_view
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More, center
from warmup.tui.page import Page
from warmup.tui.workspace import Workspace

_TALL = 24
"""From so many rows on the levels that it has to do with are named."""


class MoveLevelScreen(Page[None]):
    """The weeks in a list. Enter moves the level to the one under the cursor."""

    CSS_PATH: ClassVar = ["page.tcss", "move_level.tcss"]
    AUTO_FOCUS = "#list"
    STATES = (State.MOVE,)
    FOOT: ClassVar = {"choose": "move it here", "leave": "back", "help": "", "quit": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, level: LevelId) -> None:
        super().__init__(work)
        context = work.context
        self._level, self._was = level, context.plan.weeks[level]
        self._misfits = [year_changes.no_longer_fits(context, level, week) for week in range(1, WEEKS + 1)]
        self._list = OptionList(*self._options(), id="list", markup=False, compact=True)
        self._list.highlighted = self._was - 1

    def heading(self) -> str:
        """The level."""
        return f"{planned(self._level, self._was).named}, week {self._was}"

    def body(self) -> ComposeResult:
        """What the level has to do with others; the weeks; what does not fit in the one under the cursor."""
        yield Static("", id="stands", markup=False)
        yield self._list
        yield More(self._list)
        yield Static("", id="fits", markup=False)

    def on_resize(self, event: events.Resize) -> None:
        """Name what it stands on where there is room for the names."""
        super().on_resize(event)
        brief = event.size.height < _TALL
        stands = year_changes.stands_on(self.work.context, self._level, brief=brief)
        self.query_one("#stands", Static).update("\n".join(stands))
        center(self._list, self._list.highlighted or 0)

    def _options(self) -> list[Option]:
        rows = {row.week: row for row in reversed(year_view(self.work.context).rows)}
        home = shipped_week(self._level)
        options = []
        for week, misfits in enumerate(self._misfits, start=1):
            here = "where it is" if week == self._was else ""
            came = "as it came" if week == home else ""
            bad = f"! {'; '.join(misfits)}" if misfits else ""
            said = " · ".join(filter(None, (here, came, bad)))
            options.append(Option(Text(f"week {week:>2}  {rows[week].dates():<16}  {said}".rstrip())))
        return options

    @on(OptionList.OptionHighlighted)
    def _say_what_fits(self, event: OptionList.OptionHighlighted) -> None:
        misfits = self._misfits[event.option_index]
        said = f"Does not fit: {'; '.join(misfits)}." if misfits else "All fits."
        self.query_one("#fits", Static).update(said)

    def act(self, action: str) -> None:
        """Go up and down, move the level, or leave."""
        match action:
            case "choose":
                self._move()
            case "return" | "leave":
                self.leave()

    def _move(self) -> None:
        context, at = self.work.context, self._list.highlighted or 0
        self.work.change(year_changes.move_level(context, self._level, at + 1))
        self.leave()

    @on(OptionList.OptionSelected)
    def _clicked(self) -> None:
        self.do("choose")
