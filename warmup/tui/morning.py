"""The morning: one screen whose mode changes, since a pushed screen would cost a blink."""

import datetime as dt
from collections.abc import Callable
from enum import Enum

from rich.text import Text
from textual import events
from textual.app import ComposeResult
from textual.screen import Screen

from warmup.config.toml_file import FileProblem
from warmup.english import number_word
from warmup.journal.journal import Changed, Journal
from warmup.model import Mark
from warmup.pictures import Picture
from warmup.session import undoing
from warmup.session.context import CHOSEN_ANEW, Clock, Context
from warmup.session.session import Session, begin, resume
from warmup.session.summary import Closing, closing, turn_pause
from warmup.session.undoing import CannotUndo, Undone
from warmup.tui import pages
from warmup.tui.doing import said_of_days, said_of_marking, said_of_the_day
from warmup.tui.guards import Bounces, Midnight
from warmup.tui.pages import Notice
from warmup.tui.panes import ScriptPane, Stage
from warmup.tui.script import Script
from warmup.tui.unlocked import UnlockedList

NARROW = 72
"""Under this many columns the script is a strip below the stage."""
UNUSABLE = 3
"""The exit code for a file that can't be used as it is (see ``cli``)."""
NOT_SAVED = "Not being saved ({}). Tried again at each mark."

ELSEWHERE = "Changed in another window: this is where it stands."
NOTHING_BEHIND = "There is no page behind this one. Key q leaves."
_MARKS = {
    "fluent": Mark.FLUENT,
    "hesitated": Mark.HESITATED,
    "not_yet": Mark.NOT_YET,
    "skip": Mark.SKIPPED,
}


class Mode(Enum):
    """What the morning shows."""

    DAYS = "days"
    COUNTS = "counts"
    PROMPT = "prompt"
    CLOSE = "close"
    HELP = "help"
    UNLOCKED = "unlocked"
    TURNED = "turned"


class MorningScreen(Screen[object]):
    """Stage and script, and what each key does in each mode."""

    AUTO_FOCUS = None

    def __init__(
        self,
        context: Context,
        journal: Journal,
        clock: Clock,
        notices: tuple[str, ...] = (),
        turn_theme: Callable[[], None] = lambda: None,
        aside: str = "",
    ) -> None:
        super().__init__()
        self.turn_theme, self.aside = turn_theme, aside
        self.context, self.journal, self.clock, self.notices = context, journal, clock, notices
        self.stage, self.script = Stage(), ScriptPane(self.page)
        self._room: tuple[int | str, int | str] | None = None
        self.session: Session | None = None
        self.cursor = self._end = 0
        self.said = self.wrong = ""
        self._ending: Closing | None = None
        self._list = UnlockedList(context, self._keep)
        self._bounces, self._midnight = Bounces(clock), Midnight(clock)
        self._days_undone = False
        self.mode = self._first_mode()

    def compose(self) -> ComposeResult:
        """The two panes, in the shape the terminal gives them from the start: a second layout costs time."""
        yield self.stage
        yield self.script
        self._shape(self.app.size.width, self.app.size.height)

    def on_mount(self) -> None:
        """Begin or go on with the sitting, unless there is something to ask of missed mornings first.

        A routine file that can't be read ends the program, with the sentence that says so.
        """
        try:
            self._enter(self.mode)
        except FileProblem as problem:
            self.app.exit(None, UNUSABLE, Text(f"warmup: {problem}"))

    def on_resize(self, event: events.Resize) -> None:
        """The script goes below the stage on a narrow terminal."""
        self._shape(event.size.width, event.size.height)

    # -- modes

    def _first_mode(self) -> Mode:
        return Mode.DAYS if self.context.unsettled() else self._second_mode()

    def _second_mode(self) -> Mode:
        planned = self.context.morning().is_school
        started = self.journal.sessions_of(self.context.child.record, self.context.today)
        return Mode.PROMPT if planned or started else Mode.COUNTS

    def _ask_of_days(self) -> None:
        """Ask whether missed mornings were school or off, on a screen of its own, then begin."""
        from warmup.session.missed import Missed
        from warmup.tui.days import DaysScreen

        missed = Missed(self.context.family, self.context.today, self.context.unsettled())
        self.app.push_screen(DaysScreen(missed, self.turn_theme), self._settle)

    def _settle(self, off: tuple[dt.date, ...] | None) -> None:
        """Keep what was said of the missed mornings and go on, unless midnight has passed over it."""
        self._keep(undoing.DAYS, lambda: self.context.settle(off or ()))
        # The key that ended it was pressed elsewhere: should it bounce, it must do nothing here.
        self._bounces.stops("accept", list_shown=False)
        self.said = said_of_days(off or ())
        self._enter(Mode.TURNED if self._midnight.asks(self.context.today) else self._second_mode())

    def _enter(self, mode: Mode) -> None:
        if mode in (Mode.PROMPT, Mode.CLOSE) and self.session is None:
            self._sit()
        if mode is Mode.PROMPT and self.session is not None and self.session.at_close:
            mode = Mode.CLOSE
        if mode is Mode.CLOSE and self.session is not None:
            self._ending = closing(self.session, self.context.knew_before_today())
        if mode is Mode.UNLOCKED and self.mode is not mode:
            self.context.forget()
            self._list = UnlockedList(self.context, self._keep)
        if mode is not self.mode:
            self._bounces.opened_a_page()
        self.mode = mode
        self._show()
        if mode is Mode.DAYS:
            self._ask_of_days()

    def _sit(self) -> None:
        """Go on with the day's sitting, or begin it."""
        context, journal, clock = self.context, self.journal, self.clock
        if context.chosen_anew(context.today):
            self.notices = (*self.notices, CHOSEN_ANEW)
        self.session = resume(context, journal, clock) or begin(context, journal, clock)
        if self._days_undone:
            # What day it is was said anew: as long as nothing is marked, its prompts are chosen for that.
            self._days_undone = False
            self.session.choose_again()

    def _home(self) -> Mode:
        """The page to go back to from one that was opened on the way."""
        if self._midnight.offered:
            return Mode.TURNED
        return Mode.PROMPT if self.session else self._first_mode()

    def _show(self) -> None:
        self.set_class(self._words_only(), "words")
        if self.mode is not Mode.PROMPT:
            self.set_class(False, "picture")
        self._shape(self.app.size.width, self.app.size.height)
        self.stage.show(self._picture(), over=self.mode is Mode.CLOSE)
        self.script.show()

    def _words_only(self) -> bool:
        """Whether the adult's words take the whole screen."""
        return self.mode not in (Mode.PROMPT, Mode.CLOSE)

    def _shape(self, width: int, height: int) -> None:
        """Give the panes their room: side by side, or the script as a strip below on a narrow terminal."""
        narrow = width < NARROW
        self.set_class(narrow, "narrow")
        beside = not narrow and not self._words_only()
        below = narrow and not self._words_only()
        room = (
            min(76, max(40, width * 9 // 20)) if beside else "100%",
            max(12, height * (4 if self.mode is Mode.CLOSE else 3) // 5) if below else "100%",
        )
        if room != self._room:
            self._room = room
            self.script.styles.width, self.script.styles.height = room

    def _picture(self) -> Picture | None:
        """The picture for the stage: the last model a cue brought in, else the question's own."""
        if self.mode is not Mode.PROMPT or self.session is None or self.session.prompt is None:
            return None
        prompt = self.session.prompt
        shown = [cue.picture for cue in prompt.cues[: self.session.cue] if cue.picture]
        return shown[-1] if shown else prompt.picture

    # -- the page of each mode

    def page(self, width: int, height: int) -> Script:
        """The script's page for this mode at this size."""
        name = self.context.child.nickname if len(self.context.family.children) > 1 else ""
        match self.mode:
            case Mode.PROMPT if self.session and self.session.prompt:
                covered = not self.context.family.answers_shown
                return pages.prompt_page(self.session, width, self._notices(), covered=covered, name=name)
            case Mode.CLOSE if self.session and self._ending:
                return pages.close_page(self.session, self._ending, width, self._notices(), name)
            case Mode.HELP:
                self._end = pages.help_end(width, height)
                self.cursor = min(self.cursor, self._end)
                return pages.help_page(width, height, self.cursor)
            case Mode.UNLOCKED:
                return self._list.page(width, height, self._notices())
            case Mode.TURNED if self._midnight.offered:
                return pages.turned_page(self._midnight.offered, self.context.today, width)
            case Mode.COUNTS:
                return pages.counts_page(self.context.morning(), width, self._notices())
            case _:
                return Script(width)

    def _notices(self) -> tuple[Notice, ...]:
        """Standing lines: trouble with the disk first, then what the last key had to say."""
        saving = "" if self.journal.saving else NOT_SAVED.format(self.journal.trouble)
        loud = [Notice(line, loud=True) for line in (saving, self.context.unsaved, *self.notices, self.wrong)]
        lines = (*loud, Notice(self.aside), Notice(self.said))
        return tuple(line for line in lines if line.text)

    # -- what the keys do

    def do(self, action: str) -> None:
        """Do one action of the table in the mode the screen is in; a file it can't read is said, no more."""
        if self._bounces.stops(action, list_shown=self.mode in (Mode.HELP, Mode.UNLOCKED)):
            return
        self.said = self.wrong = ""
        if action != "quit" and self._midnight.asks(self.context.today):
            self._enter(Mode.TURNED)
            return
        try:
            self._do(action)
        except FileProblem as problem:
            self.wrong = str(problem)
            self._show()
        except Changed:
            self.said, self.session = ELSEWHERE, None
            self._enter(Mode.PROMPT)
        except CannotUndo:
            self.said = undoing.NO_LONGER
            self._show()

    def _do(self, action: str) -> None:
        match action, self.mode:
            case "quit", _:
                self.app.exit()
            case "theme", _:
                self.turn_theme()
                self._show()
            case "fluent" | "hesitated", Mode.HELP:
                self.cursor = max(0, self.cursor + (1 if action == "hesitated" else -1))
                self._show()
            case "help" | "leave", Mode.HELP:
                self._enter(self._home())
            case "help", _:
                self.cursor = 0
                self._enter(Mode.HELP)
            case _, Mode.COUNTS:
                self._do_counts(action)
            case _, Mode.PROMPT:
                self._do_prompt(action)
            case _, Mode.CLOSE:
                self._do_close(action)
            case _, Mode.UNLOCKED:
                self._do_unlocked(action)
            case _, Mode.TURNED:
                self._do_turned(action)
            case _, Mode.HELP:
                self._enter(self._home())

    def _do_prompt(self, action: str) -> None:
        session = self.session
        assert session is not None
        match action:
            case "fluent" | "hesitated" | "not_yet" | "skip":
                self.said = said_of_marking(session, _MARKS[action])
            case "next" | "accept":
                session.next()
            case "leave" if self.has_class("picture"):
                self.remove_class("picture")
            case "back" | "leave":
                session.back()
            case "undo":
                self._undo(session.undo())
                return
            case "cue":
                session.next_cue()
            case "cover":
                self.context.prefer(answers_shown=not self.context.family.answers_shown)
            case "stage":
                self.toggle_class("picture")
            case "easy":
                self.said = "That key is for the close: then what has no mark came easily too."
            case "unlocked":
                self._enter(Mode.UNLOCKED)
                return
            case _:
                self.said = said_of_the_day(session, action)
        self._enter(Mode.PROMPT)

    def _do_close(self, action: str) -> None:
        session = self.session
        assert session is not None
        match action:
            case "accept":
                session.close()
                self.app.exit(0, 0)
                return
            case "easy":
                count = session.others_easy()
                self.said = (
                    f"Marked came easily: {number_word(count)}." if count else "Nothing is without a mark."
                )
            case "fluent" if session.unmarked:
                self.said = "Key t says that those came easily too."
            case "back" | "leave":
                session.back()
            case "undo":
                self._undo(session.undo())
                return
            case "rough":
                self.said = said_of_the_day(session, action)
            case "short" if session.closed:
                self.context.forget()
                self.session = begin(self.context, self.journal, self.clock, shape="short")
            case "hold" if self._ending and self._ending.pause:
                self._keep(undoing.PAUSE, lambda: turn_pause(self.context))
                self.said = "" if self.context.paused_until() else "New things may come again."
            case "unlocked":
                self._enter(Mode.UNLOCKED)
                return
        self._enter(Mode.PROMPT)

    def _do_counts(self, action: str) -> None:
        match action:
            case "fluent":
                self._keep(undoing.EXTRA, self.context.count_today)
                self.said = "Today counts as a school day."
            case "accept" | "next":
                self.said = "Just for fun: today does not count."
            case "undo":
                self._undo(undoing.undo_day(self.context, self.journal))
                return
            case "leave":
                self.said = NOTHING_BEHIND
                self._show()
                return
            case _:
                return
        self._enter(Mode.PROMPT)

    def _do_unlocked(self, action: str) -> None:
        match action:
            case "fluent":
                self._list.move(-1)
            case "hesitated":
                self._list.move(1)
            case "hold":
                self.said = self._list.choose()
            case "undo" if self.session:
                self._undo(self.session.undo(), Mode.UNLOCKED)
                return
            case "unlocked" | "accept" | "back" | "next" | "leave":
                self._enter(self._home())
                return
        self._show()

    def _do_turned(self, action: str) -> None:
        now = self._midnight.offered
        match action:
            case "accept" if now:
                self._midnight.go()
                self.context.turn_to(now)
                self.session = None
                self._enter(self._first_mode())
            case "back" | "leave":
                self._midnight.stay()
                self._enter(self._home())
            case _ if now is None:
                # The clock was put right again meanwhile.
                self._enter(self._home())

    # -- what is kept, and taken back

    def _keep(self, what: str, work: Callable[[], None], **said: object) -> None:
        """Do what changes the family, so that it can be taken back."""
        if self.session is not None:
            self.session.family_action(what, work, **said)
        else:
            undoing.logged(self.context, self.journal, what, work, said)

    def _undo(self, undone: Undone | None, mode: Mode = Mode.PROMPT) -> None:
        """Say what was taken back, and show the page where it was done."""
        self.said = f"Undone: {undone.words}." if undone else "Nothing to undo."
        if undone and undone.what in (undoing.DAYS, undoing.EXTRA):
            self.session, self._days_undone = None, True
            mode = Mode.DAYS if self.context.unsettled() else Mode.COUNTS
        elif self.session is None:
            mode = self.mode
        self._enter(mode)
