"""The morning: opening, prompts and close, one screen, since a pushed screen would cost a blink."""

import datetime as dt
from typing import TYPE_CHECKING, ClassVar

from rich.text import Text
from textual import events
from textual.app import ComposeResult
from textual.binding import BindingType

from warmup.config.toml_file import FileProblem
from warmup.pictures import Picture
from warmup.session import undoing
from warmup.session.pausing import paused, turn_week
from warmup.session.session import Session, begin
from warmup.tui import pages
from warmup.tui.actions import Action, State, actions_of
from warmup.tui.doing import AT_A_PROMPT, AT_THE_CLOSE, AT_THE_OPENING, said_of_days
from warmup.tui.key_screen import KeyScreen, bindings
from warmup.tui.panes import ScriptPane, Stage
from warmup.tui.script import Script
from warmup.tui.workspace import Workspace

if TYPE_CHECKING:
    from warmup.session.summary import Closing

NARROW = 72
"""Under this many columns the script is a strip below the stage."""
STRIP, STAGE = 12, 3
"""The rows the script wants as a strip, and the fewest above it that are worth a stage."""
UNUSABLE = 3
"""The exit code for a file that can't be used as it is (see ``cli``)."""


class MorningScreen(KeyScreen[object]):
    """Stage and script, and what each key does."""

    AUTO_FOCUS = None
    STATES = (State.PROMPT, State.OPENING, State.CLOSE)
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        work.start_over = self.start_over
        self.stage, self.script = Stage(), ScriptPane(self.page)
        self._room: tuple[int | str, int | str] | None = None
        self._ending: Closing | None = None
        self._shown = State.PROMPT

    @property
    def session(self) -> Session | None:
        """The session, once nothing has to be asked before it."""
        return self.work.session

    @property
    def state(self) -> State:
        """The opening, a prompt, or the close."""
        if self.session and self.session.at_opening:
            return State.OPENING
        return State.CLOSE if self.session and self.session.at_close else State.PROMPT

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
        """Ask of missed mornings, then whether today counts, then the prompts."""
        if self.work.context.unconfirmed_days():
            self._ask_of_days()
        elif self.session is None and self.work.asks_whether_it_counts():
            self._ask_whether_it_counts()
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
            self.work.sit()
            self.show()

        self.open(CountsScreen(self.work), lambda counts: self.attempt(lambda: answered(counts)))

    def day_chosen(self, goes: bool | None) -> None:
        """Where the question stood between the missed mornings and the prompts, they come next."""
        super().day_chosen(goes)
        if not goes and self.session is None:
            self.attempt(self._begin)

    # -- what is on screen

    def show(self) -> None:
        """The opening, the prompt, or the close."""
        state = self.state
        if state is not self._shown:
            self._shown = state
            self.work.bounces.opened_a_page()
        if self.session is not None and state is State.CLOSE:
            from warmup.session.summary import closing

            self.set_class(False, "picture")
            self._ending = closing(self.session, self.work.context.knew_before_today())
        self._shape(self.app.size.width, self.app.size.height)
        self.stage.show(self._picture(), over=state is State.CLOSE)
        self.script.show()

    def _shape(self, width: int, height: int) -> None:
        """Give the panes their room: side by side, or the script as a strip below on a narrow terminal.

        Where too few rows are left above such a strip the script is alone, as it is without a session.
        """
        narrow = width < NARROW
        alone = self.session is None or (narrow and height < STRIP + STAGE)
        self.set_class(narrow, "narrow")
        self.set_class(alone, "words")
        room = (
            "100%" if narrow or alone else min(76, max(40, width * 9 // 20)),
            max(STRIP, height * (4 if self._shown is State.CLOSE else 3) // 5)
            if narrow and not alone
            else "100%",
        )
        if room != self._room:
            self._room = room
            self.script.styles.width, self.script.styles.height = room

    def _picture(self) -> Picture | None:
        """The picture for the stage: the last model a cue brought in, else the question's own."""
        if self.session is None or self.session.prompt is None:
            return None
        prompt = self.session.prompt
        shown = [cue.picture for cue in prompt.cues[: self.session.cue] if cue.picture]
        return shown[-1] if shown else prompt.picture

    def page(self, width: int, height: int) -> Script:
        """The script's page at this size."""
        family, session, notices = self.work.context.family, self.session, self.work.notices()
        name = self.work.context.child.nickname if len(family.children) > 1 else ""
        if session and session.at_opening:
            return pages.opening_page(session, width, notices, name)
        if session and session.prompt:
            return pages.prompt_page(session, width, notices, covered=not family.answers_shown, name=name)
        if session and self._ending:
            return pages.close_page(session, self._ending, width, notices, name)
        return pages.empty_page(width, notices)

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
            case "unlocked":
                self._open_unlocked()
            case "menu":
                self._open_menu()
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
            self.work.context.editor.prefer(answers_shown=not self.work.context.family.answers_shown)
        else:
            self.work.said = AT_A_PROMPT[action](session)

    def _at_the_close(self, session: Session, action: str) -> None:
        work = self.work
        if action == "accept":
            session.close()
            self.app.exit(0, 0)
        elif action == "short" and session.closed:
            work.context.forget()
            work.session = begin(work.context, work.journal, work.clock, shape="short")
        elif action == "hold" and self._ending and self._ending.pause:
            work.keep(undoing.PAUSE, lambda: turn_week(work.context))
            work.said = "" if work.context.child.paused else "New things may come again."
        elif action in AT_THE_CLOSE:
            work.said = AT_THE_CLOSE[action](session)

    def _open_unlocked(self) -> None:
        from warmup.tui.unlocked import UnlockedScreen

        self.open(UnlockedScreen(self.work))

    def _open_menu(self) -> None:
        from warmup.tui.menu import MenuScreen

        def picked(action: str | None) -> None:
            if action:
                self.attempt(lambda: self.perform(action))

        self.open(MenuScreen(self.work, self._in_menu()), picked)

    def _in_menu(self) -> tuple[Action, ...]:
        """What can be picked by name just now, as it is called just now."""
        found = [action for action in actions_of((self.state,)) if action.in_menu]
        until = paused(self.work.context)
        offered = {
            "known": "they know it already",
            "new": "new things again" if until else "nothing new until I say",
        }
        if self.state is State.CLOSE:
            week = self._ending and self._ending.pause and not until
            offered |= {
                "short": "another short one" if self.session and self.session.closed else "",
                "hold": "nothing new for a week" if week else "",
            }
        named = [action._replace(label=offered.get(action.id, action.label)) for action in found]
        return tuple(action for action in named if action.label)
