"""Days off out of a calendar file: tick those to take, and see at once what that does to the year's end."""

from collections.abc import Sequence
from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.screen import Screen
from textual.widgets import SelectionList, Static

from warmup.session.calendar_days import MOST, Offer, outcome
from warmup.session.context import Clock, Context
from warmup.tui.actions import State
from warmup.tui.key_screen import KeyScreen, bindings
from warmup.tui.lists import More
from warmup.tui.page import Page
from warmup.tui.paint import Look, look_of
from warmup.tui.quiet_app import QuietApp, collect_again, draw_in_utf8
from warmup.tui.ticks import Ticks
from warmup.tui.workspace import Workspace


class CalendarDaysScreen(Page[tuple[Offer, ...]]):
    """The list. Its result is what was taken; None where the page was left."""

    CSS_PATH: ClassVar = ["page.tcss", "calendar_days.tcss"]
    AUTO_FOCUS = "#list"
    STATES = (State.CALENDAR,)
    FOOT: ClassVar = {"take": "", "tick": "", "tick_all": "", "leave": "leave all as it is", "help": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]
    ASKS_AT_MIDNIGHT = False

    def __init__(self, work: Workspace, offers: Sequence[Offer]) -> None:
        super().__init__(work)
        self._offers = offers
        wide = max(len(each.when) for each in offers) + 2
        self._list: Ticks[int] = Ticks(
            *(
                (Content(f"{each.when:<{wide}}{each.name}"), number, each.ticked)
                for number, each in enumerate(offers)
            ),
            id="list",
            compact=True,
        )

    def heading(self) -> str:
        """What is to be ticked."""
        first = f", the first {MOST}" if len(self._offers) == MOST else ""
        return f"Which of these are days off{first}?"

    def body(self) -> ComposeResult:
        """The list; the line under the cursor in full; what comes of the ticks."""
        yield self._list
        yield More(self._list)
        yield Static("", id="whole", markup=False)
        yield Static("", id="outcome", markup=False)

    def on_mount(self) -> None:
        """Say what comes of the ticks there are."""
        super().on_mount()
        self._say_what_comes_of_it()

    def taken(self) -> tuple[Offer, ...]:
        """What is ticked, in the order of the list."""
        return tuple(self._offers[number] for number in sorted(self._list.selected))

    @on(SelectionList.SelectedChanged)
    def _say_what_comes_of_it(self) -> None:
        context = self.work.context
        self.query_one("#outcome", Static).update(outcome(context.family, self.taken(), context.child))

    @on(SelectionList.SelectionHighlighted)
    def _say_the_whole_line(self) -> None:
        at = self._list.highlighted
        if at is not None:
            each = self._offers[at]
            self.query_one("#whole", Static).update(f"{each.name}: {each.how_long}")

    def act(self, action: str) -> None:
        """Go up and down, tick, take what is ticked, or leave all as it is."""
        match action:
            case "tick":
                self._list.action_select()
            case "tick_all" if len(self._list.selected) == len(self._offers):
                self._list.deselect_all()
            case "tick_all":
                self._list.select_all()
            case "take":
                self.leave(self.taken())
            case "leave":
                self.leave(None)


class CalendarApp(QuietApp):
    """Shows the page and nothing else; ``taken`` is its result."""

    TITLE = "warmup"
    ENABLE_COMMAND_PALETTE = False
    BINDINGS: ClassVar[list[BindingType]] = [Binding("ctrl+c,ctrl+q", "quit", show=False, priority=True)]

    def __init__(self, context: Context, clock: Clock, offers: Sequence[Offer]) -> None:
        super().__init__(Look(context.family.theme))
        assert context.journal is not None
        self._work = Workspace(context, context.journal, clock, self._turn_theme)
        self._offers = offers
        self.taken: tuple[Offer, ...] = ()

    def get_default_screen(self) -> Screen[object]:
        """A blank one for the page to stand on."""
        return Screen()

    def on_mount(self) -> None:
        """Open the page."""
        self.call_after_refresh(collect_again)
        self.push_screen(CalendarDaysScreen(self._work, self._offers), self._end)

    def _end(self, taken: tuple[Offer, ...] | None) -> None:
        self.taken = taken or ()
        self.exit(0)

    def _turn_theme(self) -> None:
        """Another look while the page is open; the choice is kept by the morning alone."""
        self.theme = look_of(self.theme).next.theme

    def action_do(self, name: str) -> None:
        """Do an action of the table on the screen that shows."""
        if isinstance(self.screen, KeyScreen):
            self.screen.do(name)


def ask(context: Context, clock: Clock, offers: Sequence[Offer]) -> tuple[Offer, ...]:
    """Show the page in this terminal; what was taken, nothing where it was left."""
    draw_in_utf8()
    app = CalendarApp(context, clock, offers)
    app.run()
    app.ended()
    return app.taken
