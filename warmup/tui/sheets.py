"""Sheets to print: what there is, how much paper it takes, and one page made of what is ticked."""

from pathlib import Path
from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.content import Content
from textual.widgets import SelectionList, Static

from warmup.english import plural
from warmup.report.keeping import NotKept, keep
from warmup.session import undoing
from warmup.sheets.base import SMALL_PIECES
from warmup.sheets.html import document
from warmup.sheets.kinds import kinds
from warmup.sheets.making import TITLE, day_of, file_name, sides_of
from warmup.sheets.needed import not_printed, this_week, tick
from warmup.sheets.paper import Paper
from warmup.text import clean
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More
from warmup.tui.page import Page
from warmup.tui.ticks import Ticks
from warmup.tui.workspace import Workspace

_NAMES = {Paper.LETTER: "Letter", Paper.A4: "A4"}
NOTHING = "Nothing is ticked."
ON_PAPER = "on paper"


class SheetsScreen(Page[None]):
    """The list. Ticked from the start is what this week uses and the house does not have on paper."""

    CSS_PATH: ClassVar = ["page.tcss", "calendar_days.tcss"]
    AUTO_FOCUS = "#list"
    STATES = (State.SHEETS,)
    FOOT: ClassVar = {
        "make_sheets": "",
        "tick": "",
        "tick_all": "",
        "have_sheets": "",
        "other_paper": "",
        "leave": "back",
        "help": "",
    }
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]
    ASKS_AT_MIDNIGHT = False

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        self._paper = Paper.LETTER
        context = work.context
        day = day_of(context, context.today)
        self._pages = {name: len([*sheet.pages(day)]) for name, sheet in kinds().items()}
        self._wanted = wanted = frozenset(not_printed(context, this_week(context)))
        self._list: Ticks[str] = Ticks(
            *((self._row(name), name, name in wanted) for name in kinds()), id="list", compact=True
        )

    def _row(self, name: str) -> Content:
        had = "" if not_printed(self.work.context, (name,)) else ON_PAPER
        return Content(f"{kinds()[name].title:<30}{had}")

    def heading(self) -> str:
        """What is to be ticked."""
        ticked = "This week’s are ticked." if self._wanted else "This week needs no new one."
        return f"Sheets to print. {ticked}"

    def body(self) -> ComposeResult:
        """The list; the sheet under the cursor; what all that is ticked comes to."""
        yield self._list
        yield More(self._list)
        yield Static("", id="whole", markup=False)
        yield Static("", id="outcome", markup=False)

    def on_mount(self) -> None:
        """Say what the ticks come to."""
        super().on_mount()
        self._count()

    def ticked(self) -> tuple[str, ...]:
        """What is ticked, in the order of the list."""
        return tuple(name for name in kinds() if name in self._list.selected)

    @on(SelectionList.SelectedChanged)
    def _count(self) -> None:
        picked = self.ticked()
        pages = sum(self._pages[name] for name in picked)
        said = f"{len(picked)} ticked: {pages} {plural(pages, 'page')} of {_NAMES[self._paper]} paper."
        self.query_one("#outcome", Static).update(said)

    @on(SelectionList.SelectionHighlighted)
    def _preview(self) -> None:
        if self._list.highlighted is None:
            return
        name = self._list.get_option_at_index(self._list.highlighted).value
        sheet, pages = kinds()[name], self._pages[name]
        small = f" {SMALL_PIECES}" if sheet.small else ""
        self.query_one("#whole", Static).update(f"{sheet.about} {pages} {plural(pages, 'page')}.{small}")

    def act(self, action: str) -> None:
        """Tick, make the page, say what is on paper, change the paper, or leave."""
        match action:
            case "tick":
                self._list.action_select()
            case "tick_all" if len(self._list.selected) == len(kinds()):
                self._list.deselect_all()
            case "tick_all":
                self._list.select_all()
            case "make_sheets":
                self._make()
            case "have_sheets":
                self._have()
            case "other_paper":
                self._paper = Paper.A4 if self._paper is Paper.LETTER else Paper.LETTER
                self._count()
            case "undo":
                self.work.undo()
                self._renew()
            case "leave":
                self.leave(None)

    def _make(self) -> None:
        """Write the page into a new file in the folder the program was started in."""
        work, picked = self.work, self.ticked()
        if not picked:
            work.said = NOTHING
            return
        today = work.context.today
        sides = [*sides_of(picked, day_of(work.context, today))]
        try:
            path = Path(file_name(today)).absolute()
            keep(path, document(sides, self._paper, TITLE))
        except (NotKept, OSError) as problem:
            work.wrong = str(problem) if isinstance(problem, NotKept) else "There is no such place."
            return
        work.said = f"Written: {clean(str(path))} Print it at 100 %. Done? ‹have_sheets› says so."

    def _have(self) -> None:
        """What is ticked is on paper; where all of it is already, it is no longer."""
        work, picked = self.work, self.ticked()
        if not picked:
            work.said = NOTHING
            return
        missing = bool(not_printed(work.context, picked))
        names = [tick(name, work.context.today) for name in picked]
        work.keep(undoing.PRINTED, lambda: work.context.editor.print_sheets(names, printed=missing))
        work.said = "You have these on paper." if missing else "You have these on paper no longer."
        self._renew()

    def _renew(self) -> None:
        """The list, with what is on paper now."""
        for at, name in enumerate(kinds()):
            self._list.replace_option_prompt_at_index(at, self._row(name))
