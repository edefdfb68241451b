"""Days off out of a calendar file: tick those to take, and see at once what that does to the year's end."""

from collections.abc import Sequence
from typing import ClassVar

from textual.binding import BindingType
from textual.content import Content

from warmup.session.calendar_days import MOST, Offer, outcome
from warmup.session.context import Clock, Context
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.one_page import OnePage
from warmup.tui.ticking import TickingPage
from warmup.tui.workspace import Workspace


class CalendarDaysScreen(TickingPage[tuple[Offer, ...], int]):
    """Its result is what was taken; None where the page was left."""

    STATES = (State.CALENDAR,)
    FOOT: ClassVar = {"take": "", "tick": "", "tick_all": "", "leave": "leave all as it is", "help": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, offers: Sequence[Offer]) -> None:
        self._offers = offers
        wide = max(len(each.when) for each in offers) + 2
        super().__init__(
            work,
            (
                (Content(f"{each.when:<{wide}}{each.name}"), number, each.ticked)
                for number, each in enumerate(offers)
            ),
        )

    def heading(self) -> str:
        """What is to be ticked."""
        first = f", the first {MOST}" if len(self._offers) == MOST else ""
        return f"Which of these are days off{first}?"

    def whole(self, value: int) -> str:
        """The days by their whole name, and how many mornings they take."""
        each = self._offers[value]
        return f"{each.name}: {each.how_long}"

    def outcome(self) -> str:
        """How the year's end moves."""
        context = self.work.context
        return outcome(context.family, self._taken(), context.child)

    def _taken(self) -> tuple[Offer, ...]:
        return tuple(self._offers[number] for number in self.ticked())

    def act(self, action: str) -> None:
        """Take what is ticked, or as on any page with a list to tick."""
        if action == "take":
            self.leave(self._taken())
        else:
            super().act(action)


class CalendarApp(OnePage):
    """The page alone; ``taken`` is its result."""

    def __init__(self, context: Context, clock: Clock, offers: Sequence[Offer]) -> None:
        super().__init__(context, clock)
        self._offers = offers
        self.taken: tuple[Offer, ...] = ()

    def page(self) -> CalendarDaysScreen:
        """The list."""
        return CalendarDaysScreen(self.work, self._offers)

    def done(self, taken: tuple[Offer, ...] | None) -> None:
        """Keep what was taken, and end."""
        self.taken = taken or ()
        super().done(taken)


def ask(context: Context, clock: Clock, offers: Sequence[Offer]) -> tuple[Offer, ...]:
    """Show the page in this terminal; what was taken, nothing where it was left."""
    app = CalendarApp(context, clock, offers)
    app.show_it()
    return app.taken
