"""The last mornings, to pick one that was done on paper."""

import datetime as dt
from collections.abc import Sequence
from typing import ClassVar

from textual.binding import BindingType

from warmup.english import date_words, number_word, plural
from warmup.tui.actions import Action, Group, State
from warmup.tui.choice import Choice
from warmup.tui.key_screen import bindings
from warmup.tui.workspace import Workspace


class PastScreen(Choice):
    """Its result is the date of the one picked, as in 2026-11-24."""

    CSS_PATH: ClassVar = ["page.tcss", "choice.tcss", "past.tcss"]
    STATES = (State.PAST,)
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, days: Sequence[tuple[dt.date, int]]) -> None:
        """``days`` are dates, each with the number of its marks."""
        super().__init__(work, [_entry(day, marks) for day, marks in days])

    def heading(self) -> str:
        """What is to be picked."""
        return "Which morning was on paper?"


def _entry(day: dt.date, marks: int) -> Action:
    has = f"It has {number_word(marks)} {plural(marks, 'mark')}." if marks else "It has no mark yet."
    return Action(day.isoformat(), (), date_words(day), has, Group.DAY, frozenset())
