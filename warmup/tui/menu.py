"""The menu: every other page and rare thing to do, by name, with its keys where it has some."""

from collections.abc import Sequence
from typing import ClassVar

from rich.text import Text
from textual import events, on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import OptionList, Static

from warmup.tui.actions import ACTIONS, Action, State, actions_of, keys_of
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More, step
from warmup.tui.page import Page
from warmup.tui.workspace import Workspace

_PAGES = ("unlocked", "help")
"""What opens another page, and stands first."""
_WIDE = 96
"""From so many columns on there is room for a sentence beside each entry."""
_EVERYWHERE = frozenset(action.id for action in actions_of((State.MENU,)))
_IN_MENU = frozenset(action.id for action in ACTIONS if action.in_menu)


class MenuScreen(Page[str]):
    """Its result is the id of the action picked. Each can be picked by its own key as well."""

    CSS_PATH: ClassVar = ["page.tcss", "menu.tcss"]
    AUTO_FOCUS = "#list"
    STATES = (State.MENU,)
    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings(*STATES, choose="", leave="back", help="", quit=""),
        *(each for each in bindings(State.PROMPT, State.CLOSE) if each.id in _IN_MENU - _EVERYWHERE),
    ]

    def __init__(self, work: Workspace, entries: Sequence[Action]) -> None:
        super().__init__(work)
        self._entries = sorted(entries, key=lambda action: action.id not in _PAGES)
        self._list = OptionList(id="list", markup=False, compact=True)
        self._wide: bool | None = None

    def heading(self) -> str:
        """What the page is."""
        return "Menu"

    def body(self) -> ComposeResult:
        """The list."""
        yield self._list
        yield More(self._list)
        yield Static("", id="does", markup=False)

    def on_resize(self, event: events.Resize) -> None:
        """What an entry does stands beside it, or at narrow sizes below the list."""
        super().on_resize(event)
        wide = event.size.width >= _WIDE
        if wide is not self._wide:
            self._wide, at = wide, self._list.highlighted or 0
            self._list.clear_options()
            self._list.add_options([_row(entry, sentence=wide) for entry in self._entries])
            self._list.highlighted = at
            self.query_one("#does").display = not wide

    @on(OptionList.OptionHighlighted)
    def _say_what_it_does(self, event: OptionList.OptionHighlighted) -> None:
        self.query_one("#does", Static).update(self._entries[event.option_index].help)

    def belongs(self, action: str) -> bool:
        """The keys of the entries do something here as well."""
        return super().belongs(action) or any(entry.id == action for entry in self._entries)

    def act(self, action: str) -> None:
        """Go up and down, pick, or leave."""
        match action:
            case "line_up":
                step(self._list, -1)
            case "line_down":
                step(self._list, 1)
            case "choose":
                self._list.action_select()
            case "return" | "leave" | "menu":
                self.leave()
            case _:
                self.leave(action)

    @on(OptionList.OptionSelected)
    def _pick(self, event: OptionList.OptionSelected) -> None:
        self.leave(self._entries[event.option_index].id)


def _row(action: Action, *, sentence: bool) -> Text:
    return Text.assemble(f"{action.label:<24}", (f"{keys_of(action):<9}", "bold"), action.help * sentence)
