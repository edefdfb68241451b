"""A child typed in: a nickname, and weeks of its own where it is not in those of the family."""

from dataclasses import replace
from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Horizontal
from textual.widgets import Input, Static

from warmup.config.family import Child
from warmup.session.children import ChildForm, child_of, outcome
from warmup.session.first_form import Unclear, nickname_of
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.page import Page
from warmup.tui.workspace import Workspace

_LINES = (("nickname", "Nickname"), ("first_day", "First school day"), ("week", "That is week"))
_THE_FAMILYS = "the family’s"


class ChildFormScreen(Page[Child]):
    """The form. Its result is the new child; for a ``child`` given, that child under another nickname."""

    CSS_PATH: ClassVar = ["page.tcss", "child_form.tcss"]
    AUTO_FOCUS = "#nickname"
    STATES = (State.CHILD,)
    FOOT: ClassVar = {"begin": "take it", "field_down": "", "give_up": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, child: Child | None = None) -> None:
        super().__init__(work)
        self._child = child

    def heading(self) -> str:
        """Which child it is about."""
        return f"Another nickname for {self._child.nickname}" if self._child else "Another child"

    def body(self) -> ComposeResult:
        """The lines to fill in, and what comes of them."""
        for name, label in _LINES[:1] if self._child else _LINES:
            with Horizontal(classes="row"):
                yield Static(label, classes="ask", markup=False)
                value = self._child.nickname if self._child else ""
                empty = "" if name == "nickname" else _THE_FAMILYS
                yield Input(value, empty, id=name, select_on_focus=True, compact=True)
        yield Static("", id="outcome", markup=False)

    def _form(self) -> ChildForm:
        return ChildForm(*(field.value for field in self.query(Input)))

    def on_mount(self) -> None:
        """Say what is wanted."""
        super().on_mount()
        self._work_out()

    @on(Input.Changed)
    def _work_out(self) -> None:
        """Show what comes of the form."""
        form, work = self._form(), self.work
        if self._child:
            said = ""
        elif not form.nickname.strip():
            said = "Empty lines mean the same weeks as the family."
        else:
            try:
                said = f"→ {outcome(form, work.context.family, work.context.today, work.journal)}"
            except Unclear as unclear:
                said = str(unclear)
        self.query_one("#outcome", Static).update(said)

    def act(self, action: str) -> None:
        """Take the form or say what is not clear; go to another line; or leave it all."""
        match action:
            case "begin":
                try:
                    self.leave(self._taken())
                except Unclear as unclear:
                    self.query_one("#outcome", Static).update(str(unclear))
            case "field_down":
                self.focus_next(Input)
            case "field_up":
                self.focus_previous(Input)
            case _:
                self.leave()

    def _taken(self) -> Child:
        form, context = self._form(), self.work.context
        if self._child is None:
            return child_of(form, context.family, context.today)
        mine = self._child.journal_name
        others = [each for each in context.family.children if each.journal_name != mine]
        return replace(self._child, nickname=nickname_of(form.nickname, others))
