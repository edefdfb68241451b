"""A whole morning in lines, as ``warmup --plain`` runs it: what the screen shows and does.

Every mark goes through the same session as on the screen, and is on disk before the next line is printed.
"""

import contextlib
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from warmup.cli import spoken_first, spoken_lines
from warmup.cli.letters import Choice, chosen, lettered, not_understood, question
from warmup.cli.lines import Ended, part, say, take_any_bytes
from warmup.config.family import Family
from warmup.config.toml_file import FileProblem
from warmup.journal.journal import Changed, Journal
from warmup.model import Mark
from warmup.session import undoing
from warmup.session.context import Clock, Context
from warmup.session.session import Session
from warmup.session.undoing import CannotUndo
from warmup.session.words import ELSEWHERE
from warmup.tui.actions import FOR_GUESTS
from warmup.tui.doing import AT_A_PROMPT, at_the_close, at_the_opening, turn_pauses
from warmup.tui.workspace import Workspace

if TYPE_CHECKING:
    from warmup.session.summary import Closing

_MARKS = {
    "fluent": Mark.FLUENT,
    "hesitated": Mark.HESITATED,
    "not_yet": Mark.NOT_YET,
    "skip": Mark.SKIPPED,
}


def run(
    context: Context,
    journal: Journal,
    clock: Clock,
    welcome: Callable[[Family], Context] | None = None,
    aside: str = "",
    *,
    guest: bool = False,
    takes_turns: bool = False,
) -> None:
    """The morning of this family and child; after the first form where ``welcome`` makes a context of it.

    It ends with the morning, when the adult leaves, or with the input. FileProblem where there is no morning
    without a file that can't be read.
    """
    take_any_bytes()
    say(aside)
    with contextlib.suppress(Ended, KeyboardInterrupt):
        if welcome is not None:
            context = welcome(spoken_first.first_form(context))
        work = Workspace(
            context, journal, clock, notices=(journal.notice,), guest=guest, takes_turns=takes_turns
        )
        if guest:
            spoken_first.guest_name(work)
        SpokenMorning(work).run()


class SpokenMorning:
    """One adult who types lines, with one child's morning."""

    def __init__(self, work: Workspace) -> None:
        self.work = work
        self._stands: tuple[object, ...] = ()
        self._begun = self._over = self._day_said = False
        self._left_unsaid: set[str] = set()
        self._endings: tuple[Closing, ...] = ()
        self._loud: list[str] = []
        self._games = 0

    def run(self) -> None:
        """Ask and answer until the morning is closed. Ended where the adult leaves before."""
        while not self._over:
            self._attempt(self._step)

    def _attempt(self, task: Callable[[], None]) -> None:
        """Do something, and say what came of it or what keeps it from being done."""
        work = self.work
        work.said = work.wrong = ""
        try:
            task()
        except spoken_first.OtherDate:
            spoken_first.which_date(work)
            self._stands = ()
        except Changed:
            work.said = ELSEWHERE
            work.leave_session()
        except CannotUndo:
            work.said = undoing.NO_LONGER
        except FileProblem as problem:
            if work.session is None:
                raise
            work.wrong = str(problem)
        self._tell_trouble()
        say(lettered(work.said))

    def _tell_trouble(self, *, again: bool = False) -> None:
        """What is lost or not saved: when that is news, or once more."""
        loud = [notice.text for notice in self.work.notices() if notice.loud]
        if again or loud != self._loud:
            say(*loud)
        self._loud = loud

    def _step(self) -> None:
        """The next question: what must be asked before the first prompt, else where the morning stands."""
        work = self.work
        if work.guest:
            self._at(work.session or work.sit())
        elif work.context.unconfirmed_days():
            spoken_first.missed_mornings(work)
        elif work.session is None and not self._day_said and work.asks_whether_it_counts():
            self._day_said = spoken_first.whether_it_counts(work)
        elif work.session is None and work.reader_to_ask(self._left_unsaid):
            if not spoken_first.whether_they_read(work):
                self._left_unsaid.add(work.context.child.journal_name)
        else:
            self._day_said = False
            self._at(work.session or work.sit())

    # -- the morning

    def _at(self, session: Session) -> None:
        """Say where it stands, where that is news, and do what the next line says."""
        opening = session.routine.opening if session.at_opening else None
        whose = session.context.child.journal_name
        stands = whose, session.number, opening, session.position, session.items
        if stands != self._stands:
            self._stands = stands
            self._say_all(session)
        choices = self._choices(session)
        named = [choice for choice in choices if choice.id in spoken_lines.FIRST]
        line = spoken_first.read(self.work, question(named))
        name = chosen(line, choices)
        if name:
            self._do(session, name, choices)
        else:
            say(not_understood(line, named))

    def _say_all(self, session: Session) -> None:
        if not self._begun:
            self._begun = True
            if self.work.together:
                self.work.together.gather()
            part(spoken_lines.beginning(self.work.sessions))
        if session.at_close:
            from warmup.session.summary import closing

            self._endings = tuple(
                closing(each, each.context.knew_before_today(), guest=self.work.guest)
                for each in self.work.sessions
            )
            part(spoken_lines.close_lines(self.work.sessions, self._endings))
        else:
            whose = session.context.child.nickname if self.work.together else ""
            standing = spoken_lines.standing(session, covered=self.work.covered, whose=whose)
            part(line for line in standing if not (self.work.guest and line == spoken_lines.STOPS))
        self._tell_trouble(again=True)

    def _choices(self, session: Session) -> tuple[Choice, ...]:
        choices = self._all_choices(session)
        if self.work.guest:
            return tuple(each for each in choices if each.id in FOR_GUESTS or each is spoken_lines.AGAIN)
        return choices

    def _all_choices(self, session: Session) -> tuple[Choice, ...]:
        if session.at_opening:
            return spoken_lines.AT_THE_OPENING
        if session.at_close and self._endings:
            after = self.work.next_child()
            return spoken_lines.at_the_close(self.work.sessions, self._endings, after)
        return spoken_lines.AT_A_PROMPT_TOGETHER if self.work.together else spoken_lines.AT_A_PROMPT

    def _do(self, session: Session, name: str, choices: Sequence[Choice]) -> None:
        """Do one thing: what is the same everywhere, else what it is where the morning stands."""
        match name:
            case "quit":
                raise Ended
            case "help":
                part(spoken_lines.help_lines(choices, marks=session.prompt is not None))
            case "say_again":
                self._stands = ()
            case "undo":
                self._stands = ()
                self.work.undo()
            case "unlocked":
                from warmup.cli.spoken_unlocked import what_may_be_asked

                what_may_be_asked(self.work)
            case "note":
                from warmup.cli.spoken_note import write_note

                write_note(self.work, session)
            case "week":
                from warmup.cli.spoken_week import a_week

                a_week(self.work)
            case "wind_down":
                stops = session.prompt is not None
                self._one_of(session, spoken_lines.WIND_DOWN if stops else spoken_lines.FROM_THE_OPENING)
            case _ if session.at_opening:
                self.work.said = at_the_opening(name, self.work)
            case _ if session.at_close:
                self._at_the_close(session, name)
            case _:
                self._at_a_prompt(session, name)
        self.work.settle()

    def _at_a_prompt(self, session: Session, name: str) -> None:
        match name:
            case "cue":
                before = session.cue
                session.next_cue()
                say(*spoken_lines.newest_cue(session, before))
            case "cover":
                self.work.turn_cover()
                say(*spoken_lines.answer(session, covered=self.work.covered))
            case "stage":
                say(*spoken_lines.more_about(session, covered=self.work.covered))
            case "another":
                self._one_of(session, spoken_lines.ANOTHER)
            case _ if name in _MARKS:
                session.mark(_MARKS[name])
                marked = f"{undoing.MARK_WORDS[_MARKS[name]].capitalize()}."
                whose = f"{session.context.child.nickname}: " if self.work.together else ""
                self.work.said = f"{whose}{marked}"
            case "back":
                self.work.back()
            case _:
                self.work.said = AT_A_PROMPT[name](session)

    def _one_of(self, session: Session, choices: tuple[Choice, ...]) -> None:
        """Ask for one of a few; back leaves the prompt as it is, and so does a line that means none."""
        line = spoken_first.read(self.work, question(choices))
        name = chosen(line, choices)
        if not name:
            say(not_understood(line, choices))
        elif name != "back":
            opening = session.at_opening
            self.work.said = at_the_opening(name, self.work) if opening else AT_A_PROMPT[name](session)

    def _at_the_close(self, session: Session, name: str) -> None:
        work = self.work
        self._stands = ()
        match name:
            case "accept":
                work.for_all(Session.close)
                self._over = True
            case "next_child":
                child = work.next_child()
                work.for_all(Session.close)
                if child:
                    work.turn_to_child(child)
                    self._begun = False
            case "again":
                work.sit_again()
            case "play":
                from warmup.cli.game import game_lines
                from warmup.session.gaming import for_whom, suggestion

                part(game_lines(suggestion(for_whom([each.context for each in work.sessions]), self._games)))
                self._games += 1
            case "review":
                part(spoken_lines.review_lines(session))
            case "pause":
                both = zip(work.sessions, self._endings, strict=True)
                turn_pauses([each for each, ending in both if ending.pause])
            case _:
                work.said = at_the_close(name, work)
