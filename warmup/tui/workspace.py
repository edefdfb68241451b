"""What all screens of a morning share: the context, the session, the lines to say, and the two guards."""

import datetime as dt
from collections.abc import Callable, Collection, Sequence
from typing import TYPE_CHECKING, NamedTuple, TypeVar

from warmup.config.family import Child, Family
from warmup.journal.journal import Journal
from warmup.model import DayKind, ItemId
from warmup.session import undoing
from warmup.session.context import Clock, Context
from warmup.session.session import Session, begin, resume
from warmup.session.stored import CHOSEN_ANEW, chosen_anew
from warmup.session.undoing import Undone
from warmup.session.words import NEW_YEAR_KEPT, asks_whether_they_read, own_words
from warmup.tui.actions import Hand
from warmup.tui.guards import Bounces, Midnight

if TYPE_CHECKING:
    from warmup.session.together import Together
    from warmup.session.year_changes import Found

Result = TypeVar("Result")
GUEST = "guest"
"""Who marks where a guest gives no name."""
NOT_SAVED = "Not being saved ({}). Tried again at each mark."


class Notice(NamedTuple):
    """A line above the keys; a ``loud`` one is about something lost or not saved."""

    text: str
    loud: bool = False


class Workspace:
    """One adult at the keys, with one child's morning, or with the morning of several.

    ``notices`` stand on every screen, and more quietly ``aside``. ``said`` is what the last key had to say,
    and ``wrong`` what a file that it needed has wrong. A ``guest`` is asked nothing of the family.
    ``takes_turns`` says that the children's prompts are to take turns, where several have not been today.
    """

    def __init__(
        self,
        context: Context,
        journal: Journal,
        clock: Clock,
        turn_theme: Callable[[], None] = lambda: None,
        notices: tuple[str, ...] = (),
        aside: str = "",
        *,
        guest: bool = False,
        takes_turns: bool = False,
    ) -> None:
        self.guest = guest
        self._context, self.journal, self.clock = context, journal, clock
        self.turn_theme, self._notices, self._aside = turn_theme, notices, aside
        self.takes_turns = takes_turns
        self._session: Session | None = None
        self.together: Together | None = None
        self._uncovered: ItemId | None = None
        self.hand = Hand.RIGHT
        """The hand used last: its keys are named."""
        self.said = self.wrong = ""
        self.told_later: tuple[str, ...] = ()
        """Lines that stand quietly, found once the first frame was out."""
        self.bounces, self.midnight = Bounces(clock), Midnight(clock)
        self.start_over: Callable[[], None] = lambda: None
        """Goes back to the morning from whatever is on screen, and asks again what must be asked first."""
        self._day_undone = ""

    @property
    def context(self) -> Context:
        """The context of the child at hand."""
        return self.together.at_hand.context if self.together else self._context

    @property
    def session(self) -> Session | None:
        """The session at hand; None while something has to be asked before it."""
        return self.together.at_hand if self.together else self._session

    @property
    def sessions(self) -> tuple[Session, ...]:
        """The sessions of this morning: several where prompts take turns."""
        if self.together:
            return self.together.sessions
        return (self._session,) if self._session else ()

    def leave_session(self) -> None:
        """Go on from what the journal says: something else changed it, or it is another morning's."""
        self._session = self.together = None

    def notices(self) -> tuple[Notice, ...]:
        """Standing lines: trouble with the disk first, then what the last key had to say."""
        saving = "" if self.journal.saving else NOT_SAVED.format(self.journal.trouble)
        loud = (saving, self.context.editor.unsaved, *self._notices, self.wrong)
        own = own_words(self.context.own_problem)
        later = map(Notice, self.told_later)
        quiet = (Notice(own), Notice(self._aside), *later, Notice(self.said))
        lines = (*(Notice(line, loud=True) for line in loud), *quiet)
        return tuple(line for line in lines if line.text)

    @property
    def guest_words(self) -> str:
        """Who the guest is, "Guest: Grandma"; empty where the family's own adult is at the keys."""
        name = self.context.marks_by
        return "" if not self.guest else f"Guest: {name}" if name not in ("", GUEST) else "Guest"

    @property
    def covered(self) -> bool:
        """Whether the answer is covered: for who reads, until it is asked for."""
        if self.context.child.reads and self.session and self.session.prompt:
            return self.session.prompt.item != self._uncovered
        return not self.context.family.answers_shown

    def turn_cover(self) -> None:
        """Cover the answer or uncover it: of this prompt for who reads, else from now on."""
        covered = self.covered
        if self.context.child.reads and self.session and self.session.prompt:
            self._uncovered = self.session.prompt.item if covered else None
        else:
            self.context.editor.prefer(answers_shown=covered)

    # -- whose morning it is

    @property
    def several(self) -> bool:
        """Whether the family has several children, so that it is said whose morning it is."""
        return len(self.context.family.children) > 1

    def members(self) -> tuple[Child, ...]:
        """Whose prompts would take turns: who has not been today, or everybody where all have."""
        from warmup.session.whose_turn import in_order, still_to_come

        family, today = self._context.family, self._context.today
        return still_to_come(family, self.journal, today) or in_order(family, today)

    def next_child(self) -> Child | None:
        """Who comes after the child at hand; None where everybody has been, or all take turns."""
        if self.together or not self.several:
            return None
        from warmup.session.whose_turn import still_to_come

        mine, family = self.context.child.journal_name, self.context.family
        to_come = still_to_come(family, self.journal, self.context.today)
        return next((child for child in to_come if child.journal_name != mine), None)

    def others(self) -> tuple[Child, ...]:
        """The children who have mornings, but for the one whose morning it is; all where they take turns."""
        if not self.several:
            return ()
        from warmup.session.whose_turn import in_order

        mine = "" if self.together else self.context.child.journal_name
        order = in_order(self.context.family, self.context.today)
        return tuple(child for child in order if child.journal_name != mine)

    def see_who_is_there(self) -> None:
        """Children came, went or rest: go on with the child at hand, or with the first where it is gone."""
        family, mine = self._context.family, self.context.child.journal_name
        gone = all(each.journal_name != mine for each in family.children)
        if not gone and not self.together:
            return
        if gone:
            from warmup.session.whose_turn import first_to_come

            first = first_to_come(family, self.journal, self._context.today)
            self._context = self._context.of(first)
        self.leave_session()
        self.start_over()

    def turn_to_child(self, child: Child) -> None:
        """It is this child's morning now, and nobody else's."""
        self._context = self.context.of(child)
        self.takes_turns = False
        self.leave_session()

    def turn_together(self, *, together: bool) -> None:
        """Let prompts take turns from here on, or no longer: the first child in order is at hand then."""
        self.takes_turns = together
        first = self.sessions[0].context if self.sessions else self._context
        self._context = first
        self.leave_session()

    def turn_to(self, today: dt.date) -> None:
        """It is another day now, and the turn of whoever comes first on it."""
        context = self._context
        context.turn_to(today)
        if self.several:
            from warmup.session.whose_turn import first_to_come

            self._context = context.of(first_to_come(context.family, self.journal, today))
        self.leave_session()

    def reader_to_ask(self, left: Collection[str]) -> bool:
        """Turn to a child of whom it is to be asked whether it reads, but to none ``left`` for another day.

        Whether there is one.
        """
        children = self.members() if self.takes_turns else (self._context.child,)
        for child in children:
            context = self._context if child == self._context.child else self._context.of(child)
            if child.journal_name not in left and asks_whether_they_read(context):
                self._context = context
                return True
        return False

    # -- the morning

    def asks_whether_it_counts(self) -> bool:
        """Whether today was no planned morning, and nothing was said of it yet or that was taken back.

        Before the year's first day and after its last nothing counts.
        """
        if self.context.morning().kind not in (DayKind.WEEKEND, DayKind.DAY_OFF):
            return False
        family, today = self.context.family, self.context.today
        begun = any(self.journal.sessions_of(child.journal_name, today) for child in family.children)
        return not begun or self._day_undone == undoing.EXTRA

    def sit(self) -> Session:
        """Go on with the day's session, or begin it; with those of several children where they take turns."""
        members = self.members() if self.takes_turns else ()
        contexts = [self._context]
        if len(members) > 1:
            mine = self._context.child.journal_name
            contexts = [
                self._context if child.journal_name == mine else self._context.of(child) for child in members
            ]
        if len(contexts) > 1:
            self._sit_together(contexts)
        else:
            self._sit_alone()
        if self._day_undone:
            # What day it is was said anew: as long as nothing is marked, its prompts are chosen for that.
            self._day_undone = ""
            for session in self.sessions:
                if not session.choose_again():
                    session.fit_house()
        assert self.session is not None
        return self.session

    def _sit_alone(self) -> None:
        context = self._context
        self._session = resume(context, self.journal, self.clock)
        if self._session is None:
            self._look_at([context])
            self._session = begin(context, self.journal, self.clock)

    def _sit_together(self, contexts: Sequence[Context], shape: str = "") -> None:
        from warmup.session.together import Together

        if not shape:
            self._look_at(contexts)
        self.together = Together(contexts, self.journal, self.clock, shape=shape)

    def _look_at(self, contexts: Sequence[Context]) -> None:
        """Say it where what was chosen for one of these children can't be read any more."""
        if any(chosen_anew(self.journal, each.child.journal_name, each.today) for each in contexts):
            self._notices = (*self._notices, CHOSEN_ANEW)

    def sit_again(self) -> None:
        """Begin a second, short warm-up."""
        if self.together:
            contexts = [session.context for session in self.together.sessions]
            for context in contexts:
                context.forget()
            self._sit_together(contexts, "short")
        else:
            self._context.forget()
            self._session = begin(self._context, self.journal, self.clock, shape="short")

    def settle(self) -> None:
        """Where prompts take turns, bring up the one whose turn it now is."""
        if self.together:
            self.together.settle()

    def for_all(self, work: Callable[[Session], Result]) -> list[Result]:
        """Do the same to the session of every child of this morning; one undo takes it back."""
        if self.together:
            return self.together.all_as_one(work)
        return [work(session) for session in self.sessions]

    def back(self) -> None:
        """Go back one prompt."""
        if self.together:
            self.together.back()
        elif self._session:
            self._session.back()

    def go_to(self, bead: int) -> bool:
        """Go where a bead leads: to a prompt of the child at hand, at the close to one of any; else False."""
        if self.together and self.together.at_hand.at_close:
            return self.together.go_to_turn(bead)
        if self.together:
            return self.together.go_to(bead)
        return self._session is not None and self._session.go_to(bead)

    @property
    def can_undo(self) -> bool:
        """Whether there is an action of this morning to take back."""
        return any(session.can_undo for session in self.sessions)

    def keep(self, what: str, work: Callable[[], None], **said: object) -> None:
        """Do what changes the family, so that it can be taken back."""
        if self.session is not None:
            self.session.family_action(what, work, **said)
        else:
            undoing.logged(self.context, self.journal, what, work, said)

    def change(self, found: "Found") -> None:
        """Make a change of the year, so that it can be taken back, and say what came of it."""
        from warmup.session.year_changes import make

        self.said = make(self.context, found, self.keep)

    def follow_the_year(self) -> None:
        """Choose the prompts again where today is another school day or week now, unless one is marked."""
        session = self.session
        if session is None:
            return
        was, now = session.morning, self.context.morning()
        if (was.school_day, was.week, was.kind) != (now.school_day, now.week, now.kind):
            session.choose_again()

    def undo(self) -> None:
        """Take back the last thing done and say so; what was said of the day is then asked again."""
        undone: Undone | None
        if self.guest and self._is_the_family_s():
            undone = None
        elif self.together is not None:
            undone = self.together.undo()
        elif self._session is not None:
            undone = self._session.undo()
        else:
            undone = undoing.undo_day(self.context, self.journal)
        self.settle()
        self.said = f"Undone: {undone.words}." if undone else "Nothing to undo."
        if undone and undone.what in (undoing.DAYS, undoing.EXTRA, undoing.CALENDAR, undoing.SETTINGS):
            self._day_undone = undone.what
            self.leave_session()
            self.start_over()
        elif undone and undone.what in (undoing.WEEKS, undoing.OFF, undoing.SCHOOL, undoing.NEW_YEAR):
            self.follow_the_year()

    def renew(self, family: Family) -> None:
        """Keep a new school year, so that it can be taken back."""
        context = self.context
        self.keep(undoing.NEW_YEAR, lambda: context.editor.change(family))
        self.said = "" if context.editor.unsaved else NEW_YEAR_KEPT
        self.follow_the_year()

    def take_settings(self, family: Family) -> None:
        """Keep changed settings, so that they can be taken back as one, and say which they were.

        Where a morning is chosen by them, today's is chosen anew while nothing is marked; later what this
        house lacks is not asked.
        """
        from warmup.session.settings_form import changed, chosen_anew

        context, before = self.context, self.context.family
        self.keep(undoing.SETTINGS, lambda: context.editor.change(family))
        said = changed(before, context.family)
        if chosen_anew(before, context.family):
            self._day_undone = undoing.SETTINGS
            self.leave_session()
            self.start_over()
        self.said = "" if context.editor.unsaved else said

    def _is_the_family_s(self) -> bool:
        """Whether what undo would take back changed the family, which a guest does not."""
        child, session = self.context.child.journal_name, self.session
        row = undoing.newest(self.journal, child, self.context.today, session.number if session else 0)
        before = undoing.before_of(row) if row else None
        return before is not None and bool(before.family or before.moved)
