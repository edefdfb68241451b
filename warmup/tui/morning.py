"""The morning: opening, prompts and close, one screen, since a pushed screen would cost a blink."""

import datetime as dt
from collections.abc import Iterator
from typing import TYPE_CHECKING, ClassVar

from rich.text import Text
from textual import events
from textual.app import ComposeResult
from textual.binding import BindingType

from warmup.config.toml_file import FileProblem
from warmup.english import listed
from warmup.pictures import Picture
from warmup.session import remembered, undoing
from warmup.session.session import Session
from warmup.tui import pages
from warmup.tui.actions import State
from warmup.tui.doing import AT_A_PROMPT, at_the_close, at_the_opening, said_of_days, turn_pauses
from warmup.tui.key_screen import bindings
from warmup.tui.offering import PAGES, Offering
from warmup.tui.paint import Look
from warmup.tui.panes import ScriptPane, Stage
from warmup.tui.parts import Seen, View
from warmup.tui.script import Script
from warmup.tui.workspace import Workspace

if TYPE_CHECKING:
    from warmup.tui.close import Part

NARROW = 72
"""Under this many columns the script is a strip below the stage."""
STAGE, MOST_STAGE, STRIP = 9, 11, 9
"""The rows of a stage above such a strip, at least and when its picture asks for more; and of the strip."""
EARLY = dt.timedelta(weeks=2)
"""For so long after a family began, and in the first two weeks of lessons, a line says how to ask."""
UNUSABLE = 3
"""The exit code for a file that can't be used as it is (see ``cli``)."""


def stage_room(width: int, height: int, picture: Picture | None) -> tuple[int, int]:
    """The columns and rows of the stage: beside the script, or above it, where its picture has a say."""
    if width >= NARROW:
        return width - min(76, max(40, width * 9 // 20)), height
    usual = max(STAGE, height * 2 // 5)
    fitting = (rows for rows in range(usual, MOST_STAGE + 1) if picture is None or picture.fits(width, rows))
    return width, next(fitting, usual)


def seen(picture: Picture | None, room: tuple[int, int], size: tuple[int, int]) -> Seen:
    """Where a picture is to be seen, on a stage of this room in a terminal of this size."""
    if picture is None or picture.fits(*room):
        return Seen.STAGE
    return Seen.ALONE if picture.fits(*size) else Seen.NOWHERE


class MorningScreen(Offering):
    """Stage and script, and what each key does."""

    DEFAULT_CLASSES = "panes"
    AUTO_FOCUS = None
    STATES = (State.PROMPT, State.OPENING, State.CLOSE)
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        work.start_over = self.start_over
        self.stage, self.script = Stage(self._clicked_picture, self._coming), ScriptPane(self.page)
        self._room: tuple[int | str, int | str] | None = None
        self._stage_room = 0, 0
        self._left_unsaid: set[str] = set()
        self._shown = State.PROMPT

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Two keys do something else at the close than at a prompt."""
        return action != "do" or self.belongs(str(parameters[0]))

    def compose(self) -> ComposeResult:
        """The two panes, in the shape the terminal gives them from the start: a second layout costs time."""
        yield self.stage
        yield self.script
        self._shape(self.app.size.width, self.app.size.height, alone=False)

    def on_mount(self) -> None:
        """Begin or go on with the session, unless there is something to ask first.

        A routine file that can't be read ends the program, with the sentence that says so.
        """
        self.work.journal.hold()
        self.call_after_refresh(self._painted)
        try:
            self._begin()
        except FileProblem as problem:
            self.app.exit(None, UNUSABLE, Text(f"warmup: {problem}"))

    def _painted(self) -> None:
        """The first frame is out: what it did not wait for comes now."""
        self.work.journal.settle()
        for session in self.work.sessions:
            if session.context.folded_anew:
                remembered.keep(session.context)
        if not self.work.journal.saving:
            self.show()

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
        elif self.session is None:
            self._ask_or_sit()
        self.show()

    def _ask_or_sit(self) -> None:
        if self.work.reader_to_ask(self._left_unsaid):
            self._ask_whether_they_read()
        else:
            self.work.sit()

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
            self._ask_or_sit()
            self.show()

        self.open(CountsScreen(self.work), lambda counts: self.attempt(lambda: answered(counts)))

    def _ask_whether_they_read(self) -> None:
        from warmup.tui.reads import ReadsScreen

        def answered(said: bool | None) -> None:
            if not said:
                self._left_unsaid.add(self.work.context.child.journal_name)
            self._ask_or_sit()
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
            self.endings = tuple(
                closing(each, each.context.knew_before_today(), guest=self.work.guest)
                for each in self.work.sessions
            )
        self._shape(self.app.size.width, self.app.size.height)
        self.stage.show(self._picture(), over=state is State.CLOSE)
        self.script.show()

    def _shape(self, width: int, height: int, *, alone: bool | None = None) -> None:
        """Give the panes their room: side by side, or the script as a strip below on a narrow terminal.

        Where too few rows are left for both the script is ``alone``, as it is without a session.
        """
        narrow = width < NARROW
        if alone is None:
            alone = self.session is None
        alone = alone or (narrow and (self._shown is State.CLOSE or height < STAGE + STRIP))
        self.set_class(narrow, "narrow")
        self.set_class(alone, "words")
        if alone:
            self._stage_room = 0, 0
        else:
            self._stage_room = stage_room(width, height, self._picture())
        columns, rows = self._stage_room
        room: tuple[int | str, int | str] = (
            "100%" if narrow or alone else width - columns,
            height - rows if narrow and not alone else "100%",
        )
        if room != self._room:
            self._room = room
            self.script.styles.width, self.script.styles.height = room

    def _seen(self) -> Seen:
        """Where the picture of the prompt is to be seen."""
        return seen(self._picture(), self._stage_room, self.app.size)

    def _picture(self) -> Picture | None:
        """The picture for the stage: the last model a cue brought in, else the question's own."""
        if self.session is None or self.session.prompt is None:
            return None
        return self.session.prompt.picture_after(self.session.cue)

    def _coming(self) -> Iterator[Picture]:
        """The pictures that the next keys may bring."""
        from warmup.session.on_stage import soon

        session, together = self.session, self.work.together
        if session is None:
            return iter(())
        at = -1 if session.at_opening else together.at if together else session.position
        prompts = [turn.prompt for turn in together.turns] if together else session.prompts
        return soon(prompts, at, session.cue)

    def page(self, width: int, height: int) -> Script:
        """The script's page at this size."""
        session, work = self.session, self.work
        name, guest = self._whose(), work.guest_words
        view = View(width, height, work.hand, work.notices(), name, work.covered, self._seen(), guest)
        if work.together:
            view = view._replace(turns=work.together.turns, at=work.together.at)
        if session and session.at_opening:
            first = session.morning.date == self.work.context.began
            return pages.opening_page(session, view, first=first)
        if session and session.prompt:
            early = session.morning.week <= 2 or session.morning.date - self.work.context.began < EARLY
            return pages.prompt_page(session, view, early=early)
        if session and self.endings:
            from warmup.tui.close import close_page

            after = work.next_child()
            return close_page(self._parts(), view._replace(next_name=after.nickname if after else ""))
        return pages.empty_page(view)

    def _parts(self) -> "tuple[Part, ...]":
        """What the close says of each child, with the places its prompts have among all."""
        from warmup.tui.close import Part

        sessions, turns = self.work.sessions, self.work.together.turns if self.work.together else ()
        return tuple(
            Part(
                session,
                ending,
                session.context.child.nickname if turns else "",
                tuple(at for at, turn in enumerate(turns) if turn.session is session),
            )
            for session, ending in zip(sessions, self.endings, strict=True)
        )

    def _whose(self) -> str:
        """Whose morning it is, where there are several children: all of them at what is common to all."""
        work = self.work
        if work.together and self.state is not State.PROMPT:
            return listed(tuple(each.child.nickname for each in work.together.contexts))
        return work.context.child.nickname if work.several else ""

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
            case "together":
                self.work.turn_together(together=not self.work.together)
                self._begin()
            case _ if self.state is State.OPENING:
                self.work.said = at_the_opening(action, self.work)
            case _ if self.state is State.CLOSE:
                self._at_the_close(action)
            case _:
                self._at_a_prompt(session, action)
        self.work.settle()

    def _at_a_prompt(self, session: Session, action: str) -> None:
        if action == "stage":
            self.toggle_class("picture")
        elif action == "leave" and self.has_class("picture"):
            self.remove_class("picture")
        elif action == "cover":
            self.work.turn_cover()
        elif action in ("back", "leave"):
            self.work.back()
        else:
            said = AT_A_PROMPT[action](session)
            # The next prompt on screen is another child's: whom the line is about must be said.
            named = self.work.together and action in ("fluent", "hesitated", "not_yet", "skip")
            self.work.said = f"{session.context.child.nickname}: {said}" if named else said

    def _at_the_close(self, action: str) -> None:
        work = self.work
        match action:
            case "accept":
                work.for_all(Session.close)
                self.app.exit(0, 0)
            case "next_child":
                self._go_on_with_next()
            case "again":
                work.sit_again()
            case "pause":
                offered = [part.session for part in self._parts() if part.closing.pause]
                work.said = turn_pauses(offered)
            case _:
                work.said = at_the_close(action, work)

    def _go_on_with_next(self) -> None:
        """Done with this child: on with the one who comes next."""
        child = self.work.next_child()
        self.work.for_all(Session.close)
        if child:
            self.work.turn_to_child(child)
            self._begin()

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
            self.work.said = "" if self.work.go_to(at) else "That one comes later."
            self.work.settle()

        self.guarded(go)
