"""The morning: opening, prompts and close, one screen, since a pushed screen would cost a blink."""

import datetime as dt
from typing import ClassVar

from rich.text import Text
from textual import events
from textual.app import ComposeResult
from textual.binding import BindingType

from warmup.config.toml_file import FileProblem
from warmup.pictures import Picture
from warmup.session import undoing
from warmup.session.pausing import turn_week
from warmup.session.session import Session, begin
from warmup.session.words import asks_whether_they_read
from warmup.tui import pages
from warmup.tui.actions import State
from warmup.tui.doing import AT_A_PROMPT, AT_THE_CLOSE, AT_THE_OPENING, said_of_days
from warmup.tui.key_screen import bindings
from warmup.tui.offering import PAGES, Offering
from warmup.tui.paint import Look
from warmup.tui.panes import ScriptPane, Stage
from warmup.tui.parts import Seen, View
from warmup.tui.script import Script
from warmup.tui.workspace import Workspace

NARROW = 72
"""Under this many columns the script is a strip below the stage."""
STAGE, MOST_STAGE, STRIP = 9, 11, 9
"""The rows of a stage above such a strip, at least and when its picture asks for more; and of the strip."""
EARLY = dt.timedelta(weeks=2)
"""For so long after a family began, and in the first two weeks of lessons, a line says how to ask."""
UNUSABLE = 3
"""The exit code for a file that can't be used as it is (see ``cli``)."""


class MorningScreen(Offering):
    """Stage and script, and what each key does."""

    AUTO_FOCUS = None
    STATES = (State.PROMPT, State.OPENING, State.CLOSE)
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        work.start_over = self.start_over
        self.stage, self.script = Stage(self._clicked_picture), ScriptPane(self.page)
        self._room: tuple[int | str, int | str] | None = None
        self._stage_room = 0, 0
        self._left_unsaid = False
        self._shown = State.PROMPT

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Two keys do something else at the close than at a prompt."""
        return action != "do" or self.belongs(str(parameters[0]))

    def compose(self) -> ComposeResult:
        """The two panes, in the shape the terminal gives them from the start: a second layout costs time."""
        yield self.stage
        yield self.script
        self._shape(self.app.size.width, self.app.size.height)

    def on_mount(self) -> None:
        """Begin or go on with the session, unless there is something to ask first.

        A routine file that can't be read ends the program, with the sentence that says so.
        """
        try:
            self._begin()
        except FileProblem as problem:
            self.app.exit(None, UNUSABLE, Text(f"warmup: {problem}"))

    def on_resize(self, event: events.Resize) -> None:
        """The script goes below the stage on a narrow terminal."""
        self._shape(event.size.width, event.size.height)

    # -- what comes before the first prompt

    def start_over(self) -> None:
        """Come back from whatever is on top, and ask again what must be asked first."""
        while self.app.screen is not self:
            self.app.pop_screen()
        self._begin()

    def _begin(self) -> None:
        """Ask of missed mornings, then whether today counts, then the prompts; a guest has these at once."""
        if self.work.guest:
            self.session or self.work.sit()
        elif self.work.context.unconfirmed_days():
            self._ask_of_days()
        elif self.session is None and self.work.asks_whether_it_counts():
            self._ask_whether_it_counts()
        elif self.session is None and self._asks_whether_they_read():
            self._ask_whether_they_read()
        elif self.session is None:
            self.work.sit()
        self.show()

    def _ask_of_days(self) -> None:
        from warmup.tui.days import DaysScreen

        self.open(DaysScreen(self.work), lambda off: self.attempt(lambda: self._settle(off or ())))

    def _settle(self, off: tuple[dt.date, ...]) -> None:
        """Keep what was said of the missed mornings and go on, unless midnight has passed over it."""
        work = self.work
        work.keep(undoing.DAYS, lambda: work.context.editor.confirm_days(off, work.context.today))
        work.said = said_of_days(off)
        if work.midnight.asks(work.context.today):
            self.ask_which_day()
        else:
            self._begin()

    def _ask_whether_it_counts(self) -> None:
        from warmup.tui.counts import CountsScreen

        def answered(_counts: bool | None) -> None:
            if self._asks_whether_they_read():
                self._ask_whether_they_read()
            else:
                self.work.sit()
            self.show()

        self.open(CountsScreen(self.work), lambda counts: self.attempt(lambda: answered(counts)))

    def _asks_whether_they_read(self) -> bool:
        return asks_whether_they_read(self.work.context) and not self._left_unsaid

    def _ask_whether_they_read(self) -> None:
        from warmup.tui.reads import ReadsScreen

        def answered(said: bool | None) -> None:
            self._left_unsaid = not said
            self.work.sit()
            self.show()

        self.open(ReadsScreen(self.work), lambda said: self.attempt(lambda: answered(said)))

    def day_chosen(self, goes: bool | None) -> None:
        """Where the question stood between the missed mornings and the prompts, they come next."""
        super().day_chosen(goes)
        if not goes and self.session is None:
            self.attempt(self._begin)

    # -- what is on screen

    def show(self) -> None:
        """The opening, the prompt, or the close."""
        state, look = self.state, Look(self.work.context.family.theme)
        if self.app.theme != look.theme:
            self.app.theme = look.theme
        if state is not self._shown:
            self._shown = state
            self.work.bounces.opened_a_page()
        if self.session is not None and state is State.CLOSE:
            from warmup.session.summary import closing

            self.set_class(False, "picture")
            known = self.work.context.knew_before_today()
            self.ending = closing(self.session, known, guest=self.work.guest)
        self._shape(self.app.size.width, self.app.size.height)
        self.stage.show(self._picture(), over=state is State.CLOSE)
        self.script.show()

    def _shape(self, width: int, height: int) -> None:
        """Give the panes their room: side by side, or the script as a strip below on a narrow terminal.

        Where too few rows are left for both the script is alone, as it is without a session.
        """
        narrow = width < NARROW
        alone = self.session is None or (narrow and (self._shown is State.CLOSE or height < STAGE + STRIP))
        self.set_class(narrow, "narrow")
        self.set_class(alone, "words")
        if alone:
            self._stage_room = 0, 0
        elif narrow:
            self._stage_room = width, self._stage_rows(height)
        else:
            self._stage_room = width - min(76, max(40, width * 9 // 20)), height
        columns, rows = self._stage_room
        room: tuple[int | str, int | str] = (
            "100%" if narrow or alone else width - columns,
            height - rows if narrow and not alone else "100%",
        )
        if room != self._room:
            self._room = room
            self.script.styles.width, self.script.styles.height = room

    def _stage_rows(self, height: int) -> int:
        """How many rows the stage above the strip has: what its picture asks for, within bounds."""
        picture, usual = self._picture(), max(STAGE, height * 2 // 5)
        width = self.app.size.width
        fitting = (
            rows for rows in range(usual, MOST_STAGE + 1) if picture is None or picture.fits(width, rows)
        )
        return next(fitting, usual)

    def _seen(self) -> Seen:
        """Where the picture of the prompt is to be seen."""
        picture = self._picture()
        if picture is None or picture.fits(*self._stage_room):
            return Seen.STAGE
        return Seen.ALONE if picture.fits(*self.app.size) else Seen.NOWHERE

    def _picture(self) -> Picture | None:
        """The picture for the stage: the last model a cue brought in, else the question's own."""
        if self.session is None or self.session.prompt is None:
            return None
        return self.session.prompt.picture_after(self.session.cue)

    def page(self, width: int, height: int) -> Script:
        """The script's page at this size."""
        family, session, work = self.work.context.family, self.session, self.work
        name = work.context.child.nickname if len(family.children) > 1 else ""
        view = View(
            width, height, work.hand, work.notices(), name, work.covered, self._seen(), work.guest_words
        )
        if session and session.at_opening:
            first = session.morning.date == self.work.context.began
            return pages.opening_page(session, view, first=first)
        if session and session.prompt:
            early = session.morning.week <= 2 or session.morning.date - self.work.context.began < EARLY
            return pages.prompt_page(session, view, early=early)
        if session and self.ending:
            from warmup.tui.close import close_page

            return close_page(session, self.ending, view)
        return pages.empty_page(view)

    # -- what the keys do

    def act(self, action: str) -> None:
        """Do one action at the opening, at a prompt or at the close."""
        session = self.session
        if session is None:
            self._begin()
            return
        match action:
            case "undo":
                self.work.undo()
            case _ if action in PAGES:
                self.open_page(action, session)
            case _ if self.state is State.OPENING:
                self.work.said = AT_THE_OPENING[action](session)
            case _ if self.state is State.CLOSE:
                self._at_the_close(session, action)
            case _:
                self._at_a_prompt(session, action)

    def _at_a_prompt(self, session: Session, action: str) -> None:
        if action == "stage":
            self.toggle_class("picture")
        elif action == "leave" and self.has_class("picture"):
            self.remove_class("picture")
        elif action == "cover":
            self.work.turn_cover()
        else:
            self.work.said = AT_A_PROMPT[action](session)

    def _at_the_close(self, session: Session, action: str) -> None:
        work = self.work
        if action == "accept":
            session.close()
            self.app.exit(0, 0)
        elif action == "again":
            work.context.forget()
            work.session = begin(work.context, work.journal, work.clock, shape="short")
        elif action == "pause":
            work.keep(undoing.PAUSE, lambda: turn_week(work.context))
            work.said = "" if work.context.child.paused else "New things may come again."
        else:
            work.said = AT_THE_CLOSE[action](session)

    def _clicked_picture(self) -> None:
        """A way back for the mouse where the picture has the whole screen."""
        if self.has_class("picture"):
            self.do("stage")

    def action_bead(self, at: int) -> None:
        """A click on a bead: go to its prompt, or to the opening where it is -1."""
        session = self.session
        if session is None or self.work.bounces.stops("next"):
            return

        def go() -> None:
            self.work.said = "" if session.go_to(at) else "That one comes later."

        self.guarded(go)
