"""What every page beside the morning is made of: a heading, its own part, what there is to say, its keys."""

from abc import abstractmethod
from collections.abc import Mapping
from typing import Any, ClassVar

from textual import events
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.widgets import OptionList, Static

from warmup.tui.actions import with_keys
from warmup.tui.key_screen import KeyScreen, Result
from warmup.tui.lines import Lines
from warmup.tui.lists import step
from warmup.tui.paint import Look, look_of
from warmup.tui.parts import key
from warmup.tui.script import Line, Span, flowed

WIDEST = 92
"""No page is wider, in columns (the number stands in ``page.tcss`` as well)."""
LOW, NARROW = 18, 60
"""Under so many rows a page goes without air, and under so many columns with less at its sides."""


class Keys(Lines):
    """The keys of the page for one hand and what they do, in as many lines as they need."""

    def __init__(self, page: "Page[Any]") -> None:
        super().__init__(self._flowed, id="foot")
        self._page = page

    def _flowed(self, width: int) -> list[Line]:
        return flowed([span for pair in self.pairs() for span in pair], width)

    def pairs(self) -> list[tuple[Span, Span]]:
        """Each key with what it does."""
        return [key(name, self._page.work.hand, label) for name, label in self._page.foot().items()]


class Page(KeyScreen[Result]):
    """Composes them, and keeps what there is to say up to date."""

    CSS_PATH: ClassVar = ["page.tcss"]
    FOOT: ClassVar[Mapping[str, str]]
    """The actions that the line of keys names, each with its label there, or none for its own."""
    FITS_ITS_ROOM: ClassVar = False
    """Whether what it shows hangs on the room there is, so that it is shown anew at another size."""

    def foot(self) -> Mapping[str, str]:
        """Those of them that do something in the state the page is in."""
        return {name: label for name, label in self.FOOT.items() if self.belongs(name)}

    @abstractmethod
    def heading(self) -> str:
        """The line at the top."""

    @abstractmethod
    def body(self) -> ComposeResult:
        """The page's own part."""

    def compose(self) -> ComposeResult:
        """From top to bottom."""
        with Vertical(id="page"):
            yield Static(self.heading(), id="heading", markup=False)
            yield from self.body()
            yield Static("", id="loud", markup=False)
            yield Static("", id="said", markup=False)
            yield Keys(self)

    @property
    def room(self) -> int:
        """How many columns a line of the page has."""
        width = self.app.size.width
        return min(width, WIDEST) - (2 if width < NARROW else 4)

    def action_do(self, action: str, key: str = "") -> None:
        """Do what a key stands for, after a line has taken in the letters that were typed just before it.

        Keys with priority come before letters of the same burst, as of a paste or on a busy machine.
        """
        line = self.focused
        if line is None or isinstance(line, OptionList):
            super().action_do(action, key)
            return
        line.call_later(super().action_do, action, key)

    def stepped(self, action: str) -> bool:
        """Put the cursor of the page's list, ``#list``, on another line."""
        by = {"line_up": -1, "line_down": 1}.get(action)
        listed = next(iter(self.query("#list").results(OptionList)), None)
        if by is None or listed is None:
            return False
        step(listed, by)
        return True

    def on_mount(self) -> None:
        """Show what is to be seen from the start."""
        self.set_class(look_of(self.app.theme) is Look.CONTRAST, "contrast")
        self.show()

    def on_resize(self, event: events.Resize) -> None:
        """Give up the air where there is little room, and show anew what hangs on that."""
        self.set_class(event.size.height < LOW, "low")
        self.set_class(event.size.width < NARROW, "narrow")
        if self.FITS_ITS_ROOM:
            self.show()

    def show(self) -> None:
        """What there is to say: what is lost or not saved, and what the last key did."""
        if self not in self.app.screen_stack:
            return
        self.query_one(Keys).refresh(layout=True)
        for name, loud in (("loud", True), ("said", False)):
            lines = [
                with_keys(notice.text, self.work.hand)
                for notice in self.work.notices()
                if notice.loud is loud
            ]
            place = self.query_one(f"#{name}", Static)
            place.update("\n".join(lines))
            place.display = bool(lines)
