"""Sheets to print: what there is, how much paper it takes, and one page made of what is ticked."""

from pathlib import Path
from typing import ClassVar

from textual.binding import BindingType
from textual.content import Content

from warmup.english import plural
from warmup.report.keeping import NotKept, keep, unused
from warmup.session import undoing
from warmup.session.context import Context
from warmup.sheets.base import SMALL_PIECES
from warmup.sheets.html import document
from warmup.sheets.kinds import kinds
from warmup.sheets.making import TITLE, day_of, file_name, sides_of
from warmup.sheets.needed import not_printed, this_week, tick
from warmup.sheets.paper import Paper
from warmup.text import clean
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.page import LOW
from warmup.tui.ticking import TickingPage
from warmup.tui.workspace import Workspace

_NAMES = {Paper.LETTER: "Letter", Paper.A4: "A4"}
NOTHING = "Nothing is checked."
ON_PAPER = "on paper"


class SheetsScreen(TickingPage[None, str]):
    """Ticked from the start is what this week uses and the house does not have on paper."""

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

    def __init__(self, work: Workspace) -> None:
        self._paper = Paper.LETTER
        context = work.context
        day = day_of(context, context.today)
        self._pages = {name: len([*sheet.pages(day)]) for name, sheet in kinds().items()}
        self._wanted = wanted = frozenset(not_printed(context, this_week(context)))
        super().__init__(work, ((_row(context, name), name, name in wanted) for name in kinds()))

    def heading(self) -> str:
        """What is to be checked: for this week, and after its last morning for the next."""
        return f"Sheets: {'those checked come up next' if self._wanted else 'no new one is needed'}."

    def whole(self, value: str) -> str:
        """What the sheet is for, and its paper; where rows are few, of small pieces the warning alone."""
        sheet, pages = kinds()[value], self._pages[value]
        if sheet.small and self.app.size.height < LOW:
            return SMALL_PIECES
        small = f" {SMALL_PIECES}" if sheet.small else ""
        return f"{sheet.about} {pages} {plural(pages, 'page')}.{small}"

    def outcome(self) -> str:
        """How much paper all that is ticked comes to."""
        picked = self.ticked()
        pages = sum(self._pages[name] for name in picked)
        return f"{len(picked)} checked: {pages} {plural(pages, 'page')} of {_NAMES[self._paper]} paper."

    def act(self, action: str) -> None:
        """Make the page, say what is on paper, change the paper, or as on any page with a list to tick."""
        match action:
            case "make_sheets":
                self._make()
            case "have_sheets":
                self._have()
            case "other_paper":
                self._paper = Paper.A4 if self._paper is Paper.LETTER else Paper.LETTER
                self.say_what_comes_of_it()
            case "undo":
                self.work.undo()
                self._renew()
            case _:
                super().act(action)

    def _make(self) -> None:
        """Write the page into a new file in the folder the program was started in."""
        work, picked = self.work, self.ticked()
        if not picked:
            work.said = NOTHING
            return
        today = work.context.today
        sides = [*sides_of(picked, day_of(work.context, today))]
        try:
            path = unused(Path(file_name(today)).absolute())
            keep(path, document(sides, self._paper, TITLE))
        except (NotKept, OSError) as problem:
            work.wrong = str(problem) if isinstance(problem, NotKept) else "There is no such place."
            return
        work.said = f"Written: {clean(str(path))} Print it at 100 %. Done? ‹have_sheets› says so."

    def _have(self) -> None:
        """What is checked is on paper; where all of it is already, it is no longer."""
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
            self._list.replace_option_prompt_at_index(at, _row(self.work.context, name))


def _row(context: Context, name: str) -> Content:
    had = "" if not_printed(context, (name,)) else ON_PAPER
    return Content(f"{kinds()[name].title:<30}{had}")
