"""A morning that was done on paper: its prompts as rows, and a key for each mark."""

import datetime as dt
from typing import ClassVar

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import OptionList, Static

from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.session import undoing
from warmup.session.context import Clock, Context
from warmup.session.on_paper import PaperSession, can_count, count, paper_session
from warmup.session.words import BEADS
from warmup.text import quoted
from warmup.tui.actions import State
from warmup.tui.app import PageApp
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More, step
from warmup.tui.page import Page
from warmup.tui.parts import place_parts
from warmup.tui.script import cut
from warmup.tui.workspace import Workspace

TELLS = "Type the letters on the paper, w, s or n, or the keys below. Each is kept at once."
COUNTS_NOT = "No school was planned that day: it does not count."
_MARKS = {
    "paper_fluent": Mark.FLUENT,
    "paper_hesitated": Mark.HESITATED,
    "paper_not_yet": Mark.NOT_YET,
    "paper_left": Mark.SKIPPED,
    "paper_none": None,
}
_WORDS = {
    Mark.FLUENT: "came easily",
    Mark.HESITATED: "hesitated",
    Mark.NOT_YET: "not yet",
    Mark.SKIPPED: "left",
    None: "",
}
_BESIDE = 8
"""The cells of a row beside its words and the mark."""
_LONGEST = max(map(len, _WORDS.values()))


class PaperScreen(Page[object]):
    """The rows, one of them under the cursor; a mark puts it on the next."""

    CSS_PATH: ClassVar = ["page.tcss", "on_paper.tcss"]
    AUTO_FOCUS = "#list"
    ASKS_AT_MIDNIGHT: ClassVar = False
    STATES = (State.PAPER,)
    FITS_ITS_ROOM = True
    FOOT: ClassVar = {
        **dict.fromkeys(_MARKS, ""),
        **dict.fromkeys(("paper_counts", "undo", "paper_done", "help"), ""),
    }
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, date: dt.date) -> None:
        super().__init__(work)
        self._date = date
        self._paper = self._found()
        self._list = OptionList(id="list", markup=False, compact=True)

    def _found(self) -> PaperSession:
        return paper_session(self.work.context, self.work.journal, self.work.clock, self._date)

    def heading(self) -> str:
        """Which morning it is."""
        morning = self._paper.morning
        return " · ".join(place_parts(morning)[: 1 + morning.is_school])

    def body(self) -> ComposeResult:
        """What is to be done, and the rows."""
        yield Static(TELLS, id="tells", markup=False)
        yield self._list
        yield More(self._list)

    def on_mount(self) -> None:
        """Begin at the first row without a mark."""
        super().on_mount()
        self._list.highlighted = next(
            (at for at in range(len(self._paper.prompts)) if not self._paper.mark_at(at)), 0
        )

    def read_again(self) -> None:
        """Take over what another window did."""
        self._paper = self._found()

    def belongs(self, action: str) -> bool:
        """Whether a day counts can be said where it might be asked."""
        counted = action != "paper_counts" or can_count(self.work.context, self._date)
        return counted and super().belongs(action)

    def show(self) -> None:
        """The rows as they stand."""
        super().show()
        if not self._list.is_attached:
            return
        at = self._list.highlighted
        self._list.clear_options()
        self._list.add_options([self._row(n) for n in range(len(self._paper.prompts))])
        self._list.highlighted = at
        self.query_one("#heading", Static).update(self.heading())
        fun = can_count(self.work.context, self._date)
        self.query_one("#tells", Static).update(f"{TELLS} {COUNTS_NOT}" if fun else TELLS)

    def _row(self, at: int) -> Text:
        """The number, the bead, the words as far as they go, and the mark at the end."""
        mark = self._paper.mark_at(at)
        room = self.room - _LONGEST - _BESIDE
        said = cut(quoted(self._paper.prompts[at].say), room)
        return Text(f"{at + 1:>2} {BEADS[mark]}  {said:<{room}}  {_WORDS[mark]}")

    @on(OptionList.OptionSelected)
    def _clicked(self) -> None:
        self.show()

    def act(self, action: str) -> None:
        """Go up and down, mark, undo, or leave."""
        at = self._list.highlighted or 0
        match action:
            case "paper_up":
                step(self._list, -1)
            case "paper_down":
                step(self._list, 1)
            case "undo":
                self._undo()
            case "paper_counts":
                self._count()
            case "paper_done" | "leave":
                self.leave()
            case _:
                self._paper.put({at: _MARKS[action]}, undoing.MARK)
                step(self._list, 1)

    def _undo(self) -> None:
        before = self._marks()
        undone = self._paper.undo()
        back = [at for at, mark in enumerate(self._marks()) if before[at : at + 1] != [mark]]
        if len(back) == 1:
            self._list.highlighted = back[0]
        self.work.said = f"Undone: {undone.words}." if undone else "Nothing to undo."
        if undone and undone.what == undoing.COUNTS:
            self._chosen_anew()

    def _marks(self) -> list[Mark | None]:
        return [self._paper.mark_at(at) for at in range(len(self._paper.prompts))]

    def _count(self) -> None:
        count(self.work.context, self.work.journal, self._date)
        self.work.said = "It counts as a school day."
        self._chosen_anew()

    def _chosen_anew(self) -> None:
        """As long as nothing is marked, the prompts are those of what the day now is."""
        self._paper = self._found()
        self._paper.choose_again()


class PaperApp(PageApp):
    """The page alone, for one date."""

    def __init__(self, context: Context, journal: Journal, clock: Clock, date: dt.date) -> None:
        def page(work: Workspace) -> PaperScreen:
            shown = PaperScreen(work, date)
            work.start_over = shown.read_again
            return shown

        super().__init__(context, journal, clock, page)
