"""One past morning: what was asked and how it went; a mark is corrected, a note written, both undone."""

import datetime as dt
import textwrap
from collections.abc import Callable, Iterator
from typing import ClassVar

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from warmup.english import date_words
from warmup.journal.journal import Changed, NoteRow
from warmup.journal.rows import MORNING
from warmup.model import Mark
from warmup.session.past import Line, PastMorning
from warmup.session.words import BEADS, ELSEWHERE, WHOLE_MORNING, noted_words
from warmup.text import clean, quoted
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More, step
from warmup.tui.page import Page
from warmup.tui.workspace import Workspace

_MARKS = {
    "fluent": Mark.FLUENT,
    "hesitated": Mark.HESITATED,
    "not_yet": Mark.NOT_YET,
    "paper_left": Mark.SKIPPED,
    "paper_none": None,
}
_INDENT = 5
"""The cells before a row's words: its number and its bead."""


class PastMorningScreen(Page[object]):
    """A row a prompt, of as many lines as it needs, and one for the morning as a whole."""

    CSS_PATH: ClassVar = ["page.tcss", "past_morning.tcss"]
    AUTO_FOCUS = "#list"
    ASKS_AT_MIDNIGHT: ClassVar = False
    STATES = (State.PAST_MORNING,)
    FITS_ITS_ROOM = True
    FOOT: ClassVar = {
        **dict.fromkeys(("fluent", "hesitated", "not_yet"), ""),
        "next": "down",
        "back": "up",
        **dict.fromkeys(("note", "share", "undo"), ""),
        "leave": "back",
        "help": "",
    }
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, date: dt.date, session: int) -> None:
        super().__init__(work)
        self._past = PastMorning(work.context, work.journal, date, session)
        self._list = OptionList(id="list", markup=False, compact=True)

    def heading(self) -> str:
        """Which morning it is."""
        week = [f"week {self._past.week}"] if self._past.week else []
        rough = ["rough day"] if self._past.rough else []
        whose = [self.work.context.child.nickname] if self.work.several else []
        return " · ".join([date_words(self._past.date, year=not week), *week, *rough, *whose])

    def body(self) -> ComposeResult:
        """The rows."""
        yield self._list
        yield More(self._list)

    def show(self) -> None:
        """The rows as they stand."""
        super().show()
        if not self._list.is_attached:
            return
        at, lines = self._list.highlighted or 0, self._past.lines
        self._list.clear_options()
        self._list.add_options(
            [Option(self._row(number, line)) for number, line in enumerate(lines, start=1)]
        )
        self._list.add_option(Option(self._whole()))
        self._list.highlighted = min(at, len(lines))

    def _row(self, number: int, line: Line) -> Text:
        said = quoted(line.say) if line.answer else line.say
        parts = [said, *_told(line), *_note(line.note)]
        return self._lines(f"{number:>2} {BEADS[line.kind]} ", parts)

    def _whole(self) -> Text:
        note = self._past.note
        about = WHOLE_MORNING.capitalize()
        return self._lines(" " * _INDENT, [about, *_note(note)] if note else [f"{about}: no note"])

    def _lines(self, lead: str, parts: list[str]) -> Text:
        """The words of a row behind its number, the first of the parts in bold, the others below it."""
        room, indent = max(20, self.room - _INDENT), f"\n{' ' * _INDENT}"
        first, *rest = (indent.join(textwrap.wrap(each, room, break_on_hyphens=False)) for each in parts)
        return Text.assemble((lead + first, "bold"), *(indent + each for each in rest))

    @property
    def _line(self) -> Line | None:
        """The prompt with the cursor; None where it is on the morning as a whole."""
        at = self._list.highlighted or 0
        return self._past.lines[at] if at < len(self._past.lines) else None

    @property
    def _position(self) -> int:
        return self._line.position if self._line else MORNING

    # -- what the keys do

    def act(self, action: str) -> None:
        """Go up and down, correct, write, tick, undo, or leave."""
        match action:
            case "back":
                step(self._list, -1)
            case "next":
                step(self._list, 1)
            case "note":
                self._ask_for_note()
            case "share":
                self._unless_changed(self._share)
            case "undo":
                self._unless_changed(self._undo)
            case "leave":
                self.leave()
            case _:
                self._unless_changed(lambda: self._correct(_MARKS[action]))

    def _unless_changed(self, task: Callable[[], None]) -> bool:
        """Do it; where another window changed the morning meanwhile, show how it stands instead."""
        try:
            task()
        except Changed:
            self._past.read()
            self.work.said = ELSEWHERE
            return False
        return True

    def _correct(self, mark: Mark | None) -> None:
        if self._line is None:
            self.work.said = "That is the morning as a whole: it has no mark."
        else:
            self._past.correct(self._line.position, mark)
            step(self._list, 1)

    def _share(self) -> None:
        match self._past.share(self._position):
            case None:
                self.work.said = "There is no note here."
            case shared:
                self.work.said = "The note may go into reports." if shared else "The note stays with you."

    def _undo(self) -> None:
        undone = self._past.undo()
        self.work.said = f"Undone: {undone.words}." if undone else "Nothing to undo."

    def _ask_for_note(self, typed: str | None = None) -> None:
        from warmup.tui.note import NoteScreen

        line, position = self._line, self._position
        note = self._past.note_at(position)
        text = typed if typed is not None else note.text if note else ""
        about = quoted(line.say) if line else f"{date_words(self._past.date)}, {WHOLE_MORNING}"
        self.open(NoteScreen(self.work, about, text), lambda said: self._keep_note(position, said))

    def _keep_note(self, position: int, typed: str | None) -> None:
        """Keep what was typed. Where another window came before it, it is shown again where things stand."""

        def keep() -> None:
            if self._past.write(position, typed or ""):
                self.work.said = noted_words(typed or "")

        if typed is None:
            return
        kept = True

        def attempt() -> None:
            nonlocal kept
            kept = self._unless_changed(keep)

        self.attempt(attempt)
        if not kept:
            self._ask_for_note(typed)

    @on(OptionList.OptionSelected)
    def _clicked(self) -> None:
        self.show()


def _told(line: Line) -> Iterator[str]:
    """How it went and what it was corrected from, and the answer; then the cues."""
    went = "; ".join([line.went(), *(correction.words() for correction in line.corrections)])
    answer = f" Answer: {line.answer}." if line.answer else ""
    yield f"{went[0].upper()}{went[1:]}.{answer}"
    yield from (f"Cue {number}: {cue}" for number, cue in enumerate(line.cues, start=1))


def _note(note: NoteRow | None) -> Iterator[str]:
    """The note, and whether it goes into reports."""
    if note:
        who = f" ({clean(note.adult)})" if note.adult else ""
        yield f"{'Note, in reports' if note.shared else 'Note'}{who}: {note.text}"
