"""The menu: every other page and rare thing to do, by name, with its key; and the palette, which has all."""

from typing import ClassVar

from textual.binding import BindingType

from warmup.tui.actions import ACTIONS, Action, State, actions_of
from warmup.tui.choice import Choice
from warmup.tui.key_screen import action_of, bindings

_MORNING = (State.OPENING, State.PROMPT, State.CLOSE)
_OWN = frozenset(key for action in actions_of((State.MENU,)) for key in action.every_key)


class MenuScreen(Choice):
    """What is in it may be picked by its own key as well, unless that goes up and down here."""

    CSS_PATH: ClassVar = ["page.tcss", "choice.tcss", "menu.tcss"]
    STATES = (State.MENU,)
    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(*STATES),
        *(
            binding
            for binding in bindings(*_MORNING)
            if binding.key not in _OWN
            and action_of(binding) in {action.id for action in ACTIONS if action.menu}
        ),
    ]

    def heading(self) -> str:
        """What the page is."""
        return "Menu"

    def key_of(self, entry: Action) -> str:
        """Its key, but none that goes on another page than the morning alone."""
        elsewhere = not entry.menu.isdisjoint(_MORNING) and entry.states.isdisjoint(_MORNING)
        return "" if elsewhere else super().key_of(entry)
