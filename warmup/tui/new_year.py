"""A new school year, when the last one is over: the first form once more, with what is known filled in."""

from dataclasses import replace
from typing import ClassVar

from textual.binding import BindingType

from warmup.config.family import Family
from warmup.config.holidays import Holiday
from warmup.session.first_form import Form
from warmup.session.new_year import next_form, offered, outcome, renewed
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.welcome import WelcomeScreen
from warmup.tui.workspace import Workspace

_NEW_YEAR, _SHORT = "A new school year. What they know stays.", "A new year. What they know stays."
_WEEK_SAID = "Begin in"
_STAYS = "To repeat, begin in a later week."


class NewYearScreen(WelcomeScreen):
    """The form. Its result is the family in the new year; None where it was left."""

    HELLO, SHORT_HELLO = _NEW_YEAR, _SHORT
    STATE = State.NEW_YEAR
    BINDINGS: ClassVar[list[BindingType]] = [
        replace(binding, priority=binding.id == "begin") for binding in bindings(State.NEW_YEAR)
    ]
    AUTO_FOCUS = "#first_day"
    WAYS, FEW_WAYS = "Tab next   Space check   Esc back", "Esc back"
    WEEK, FOOT = _WEEK_SAID, _STAYS
    ASKS_NAME = False

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        self._filled = next_form(work.context)

    def offer(self, form: Form) -> tuple[Holiday, ...]:
        """The days off of the year that is typed."""
        return offered(form, self.today)

    def place(self, form: Form) -> str:
        """The week that it begins in."""
        return "week 1"

    def say(self, form: Form) -> str:
        """When it begins and ends."""
        return outcome(form, self.today, self.work.context.family)

    def take(self, form: Form) -> Family:
        """The family in it."""
        return renewed(form, self.today, self.work.context.family)
