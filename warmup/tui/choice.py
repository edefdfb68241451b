"""A short list of actions to pick one from, by its line, its own key or the mouse."""

from abc import abstractmethod
from collections.abc import Sequence
from itertools import groupby
from typing import ClassVar

from rich.text import Text
from textual import events, on
from textual.app import ComposeResult
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from warmup.tui.actions import Action
from warmup.tui.lists import More
from warmup.tui.page import Page
from warmup.tui.workspace import Workspace

_WIDE = 96
"""From so many columns on there is room for a sentence beside each entry."""
_BESIDE = 8
"""The rows of a page beside its list: air, the heading, what is out of sight, keys in two lines."""
LABEL, KEY, SENTENCE = 30, 6, 52
"""The cells of an entry's name, of its key and of what it does."""


class Choice(Page[str]):
    """Its result is the id of the action picked.

    With ``grouped`` the entries stand under the names of their groups where there are rows for that.
    """

    CSS_PATH: ClassVar = ["page.tcss", "choice.tcss"]
    AUTO_FOCUS = "#list"
    FOOT: ClassVar = {"choose": "", "leave": "back", "help": "", "quit": ""}

    def __init__(self, work: Workspace, entries: Sequence[Action], *, grouped: bool = False) -> None:
        super().__init__(work)
        self._entries, self._grouped = {entry.id: entry for entry in entries}, grouped
        self._list = OptionList(id="list", markup=False, compact=True)
        self._laid_out: tuple[object, ...] = ()

    @abstractmethod
    def heading(self) -> str:
        """What is to be picked."""

    def body(self) -> ComposeResult:
        """The list."""
        yield self._list
        yield More(self._list)
        yield Static("", id="does", markup=False)

    def on_resize(self, event: events.Resize) -> None:
        """What an entry does stands beside it, or at narrow sizes below the list."""
        super().on_resize(event)
        self._lay_out()

    def show(self) -> None:
        """The entries with the keys of the hand that is at them."""
        super().show()
        if self._list.is_attached:
            self._lay_out()

    def _lay_out(self) -> None:
        width, height = self.app.size
        wide = width >= _WIDE
        groups = len({entry.group for entry in self._entries.values()})
        grouped = self._grouped and height >= len(self._entries) + groups + _BESIDE
        if self._laid_out == (wide, grouped, self.work.hand):
            return
        at = self._picked()
        self._laid_out = wide, grouped, self.work.hand
        self._list.clear_options()
        for group, entries in groupby(self._entries.values(), key=lambda entry: entry.group):
            if grouped:
                self._list.add_option(Option(Text(group.value, "bold"), disabled=True))
            self._list.add_options([Option(self._row(entry, wide), id=entry.id) for entry in entries])
        self._list.highlighted = self._list.get_option_index(at or next(iter(self._entries)))
        self.query_one("#does").display = not wide

    def _row(self, entry: Action, wide: bool) -> Text:
        sentence = entry.help if wide else ""
        return Text.assemble(f"{entry.label:<{LABEL}}", (f"{self.key_of(entry):<{KEY}}", "bold"), sentence)

    def key_of(self, entry: Action) -> str:
        """The key that stands beside it."""
        return entry.key(self.work.hand)

    def _picked(self) -> str | None:
        option = self._list.highlighted_option
        return option.id if option else None

    @on(OptionList.OptionHighlighted)
    def _say_what_it_does(self, event: OptionList.OptionHighlighted) -> None:
        self.query_one("#does", Static).update(self._entries[event.option_id or ""].help)

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """A key may belong to several entries, of which the list has one at most."""
        return action != "do" or self.belongs(str(parameters[0]))

    def belongs(self, action: str) -> bool:
        """The keys of the entries do something here, as far as they are in the list."""
        entry = action in self._entries
        return entry or (super().belongs(action) and action not in self._would_be_entries())

    def _would_be_entries(self) -> frozenset[str]:
        """Actions of this page that count only where they are in the list."""
        return frozenset()

    def act(self, action: str) -> None:
        """Go up and down, pick, or leave."""
        match action:
            case "choose":
                self._list.action_select()
            case "return" | "leave" | "menu":
                self.leave()
            case _:
                self.leave(action)

    @on(OptionList.OptionSelected)
    def _pick(self, event: OptionList.OptionSelected) -> None:
        self.pick(event.option_id or "")

    def pick(self, entry: str) -> None:
        """What becomes of the one that was picked: it is the page's result."""
        self.leave(entry)
