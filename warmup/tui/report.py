"""A report before it leaves: the whole of it, to be read, and a key to put it into a file."""

from collections.abc import Iterable
from typing import ClassVar

from textual.binding import BindingType
from textual.widget import Widget

from warmup.report import text_form
from warmup.report.asking import Form, Made, Wanted, make
from warmup.session.context import Clock, Context
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lines import Lines
from warmup.tui.one_page import OnePage
from warmup.tui.reading import Reading
from warmup.tui.report_file import FileScreen
from warmup.tui.script import Line, Span
from warmup.tui.workspace import Notice, Workspace

TELLS = "Nothing leaves before you say so."


class ReportScreen(Reading):
    """The report as text, as wide as there is room; what a file of it is by itself is its ``form``."""

    CSS_PATH: ClassVar = ["page.tcss", "reading.tcss", "report.tcss"]
    ASKS_AT_MIDNIGHT: ClassVar = False
    STATES = (State.REPORT,)
    FOOT: ClassVar = {"file": "", "leave": "back", "line_down": "", "line_up": "", "help": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, wanted: Wanted, form: Form = Form.HTML) -> None:
        work.context.forget()
        self._made: Made = make(work.context, wanted)
        self._form = form
        self._laid_out: tuple[int, list[Line]] = (0, [])
        super().__init__(work)

    def heading(self) -> str:
        """What is to be read, and that it stays here."""
        return f"A look at it first. {TELLS}"

    def content(self) -> Iterable[Widget]:
        """The report."""
        yield Lines(self._lines, id="report")

    def _lines(self, width: int) -> list[Line]:
        if self._laid_out[0] != width:
            lines: list[Line] = [(Span(line),) for line in text_form.lines(self._made.document, width)]
            self._laid_out = width, lines
        return self._laid_out[1]

    def act(self, action: str) -> None:
        """Ask for a file, or as on any page that is read."""
        if action == "file":
            self.open(FileScreen(self.work, self._made, self._form), self._written)
        else:
            super().act(action)

    def _written(self, said: str | None) -> None:
        self.work.said = said or ""
        self.show()


class _Looking(Workspace):
    """The page alone: the journal is only read, so there is nothing to say of its being saved."""

    def notices(self) -> tuple[Notice, ...]:
        """What the last key had to say."""
        lines = Notice(self.wrong, loud=True), Notice(self.said)
        return tuple(line for line in lines if line.text)


class ReportApp(OnePage):
    """The page alone."""

    WORK: ClassVar = _Looking

    def __init__(self, context: Context, clock: Clock, wanted: Wanted, form: Form = Form.HTML) -> None:
        super().__init__(context, clock)
        self._wanted, self._form = wanted, form

    def page(self) -> ReportScreen:
        """The report."""
        return ReportScreen(self.work, self._wanted, self._form)


def preview(context: Context, clock: Clock, wanted: Wanted, form: Form | None) -> None:
    """Show the page in this terminal."""
    ReportApp(context, clock, wanted, form or Form.HTML).show_it()
