"""Another child: whose morning it is to be, from a list."""

from collections.abc import Sequence
from typing import ClassVar

from textual.binding import BindingType

from warmup.config.family import Child
from warmup.session.whose_turn import has_been
from warmup.tui.actions import Action, Group, State
from warmup.tui.choice import Choice
from warmup.tui.key_screen import bindings
from warmup.tui.workspace import Workspace

WHO = "child "
"""What stands before a name in an entry's id, so that it is no action's."""
_BEEN, _TO_COME = "Has been today.", "Has not been today."


class WhoScreen(Choice):
    """Its result is the child's name in the journal behind ``WHO``."""

    CSS_PATH: ClassVar = ["page.tcss", "choice.tcss", "who.tcss"]
    STATES = (State.WHO,)
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        super().__init__(work, _entries(work, work.others()))

    def heading(self) -> str:
        """What is asked."""
        return "Whose morning?"


def _entries(work: Workspace, children: Sequence[Child]) -> list[Action]:
    """An entry a child, as the list shows it; no child is an action of the table."""
    today = work.context.today
    return [
        Action(
            f"{WHO}{child.journal_name}",
            (),
            child.nickname,
            _BEEN if has_been(work.journal, child, today) else _TO_COME,
            Group.DAY,
            frozenset(),
        )
        for child in children
    ]
