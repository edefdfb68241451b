"""Where a report is to be kept: one line for the file. Over one that is there nothing is written unasked."""

from pathlib import Path
from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import Input, Static

from warmup.report.asking import Form, Made, ending
from warmup.report.keeping import NotKept, is_there, keep
from warmup.text import clean, visible
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.page import Page
from warmup.tui.workspace import Workspace

ASKS = "Into which file?"
TELLS = (
    "The ending says what it is: .html a page to print, .txt plain text, .csv a table, .json for programs."
)
ONCE = "There is a file of that name already. Enter again, and you are asked once more."
TWICE = "What is in that file now will be gone. Enter writes over it; another name keeps both."
LONGEST = 400


class FileScreen(Page[str]):
    """The line. Its result is what to say of what was written; None where the page was left."""

    CSS_PATH: ClassVar = ["page.tcss", "report_file.tcss"]
    AUTO_FOCUS = "#file"
    ASKS_AT_MIDNIGHT: ClassVar = False
    STATES = (State.FILE,)
    FOOT: ClassVar = dict.fromkeys(("write", "no_file", "form_help"), "")
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, made: Made, form: Form) -> None:
        super().__init__(work)
        self._made, self._form = made, form
        self._asked = 0

    def heading(self) -> str:
        """What is asked."""
        return ASKS

    def body(self) -> ComposeResult:
        """The line, with a name in it; what its ending means."""
        yield Input(
            self._made.name(self._form), id="file", max_length=LONGEST, select_on_focus=False, compact=True
        )
        yield Static(TELLS, id="tells", markup=False)

    @on(Input.Changed)
    def _another_name(self) -> None:
        """Another name is asked of anew."""
        self._asked = 0

    def act(self, action: str) -> None:
        """Write it, leave, or tell of the keys."""
        match action:
            case "write":
                self._write(self.query_one("#file", Input).value)
            case "no_file":
                self.leave(None)
            case "form_help":
                self.open_help()

    def _write(self, typed: str) -> None:
        work = self.work
        if not visible(clean(typed)):
            work.said = "A file needs a name."
            return
        try:
            path = Path(typed.strip()).expanduser().absolute()
            if is_there(path) and not path.is_dir() and self._asked < 2:
                work.said = (ONCE, TWICE)[self._asked]
                self._asked += 1
                return
            keep(path, self._made.text(ending(path) or self._form), over=self._asked == 2)
        except (NotKept, OSError, RuntimeError) as problem:
            self._asked = 0
            work.wrong = str(problem) if isinstance(problem, NotKept) else "There is no such place."
            return
        self.leave(f"Written: {clean(str(path))}")
