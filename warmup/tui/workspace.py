"""What all screens of a morning share: the context, the session, the lines to say, and the two guards."""

from collections.abc import Callable
from typing import NamedTuple

from warmup.config.family import Family
from warmup.journal.journal import Journal
from warmup.model import DayKind, ItemId
from warmup.session import undoing
from warmup.session.context import Clock, Context
from warmup.session.session import Session, begin, resume
from warmup.session.stored import CHOSEN_ANEW, chosen_anew
from warmup.session.undoing import Undone
from warmup.session.words import own_words
from warmup.tui.guards import Bounces, Midnight
from warmup.tui.hands import Hand

GUEST = "guest"
"""Who marks where a guest gives no name."""
NOT_SAVED = "Not being saved ({}). Tried again at each mark."


class Notice(NamedTuple):
    """A line above the keys; a ``loud`` one is about something lost or not saved."""

    text: str
    loud: bool = False


class Workspace:
    """One adult at the keys, with one child's morning.

    ``notices`` stand on every screen, and more quietly ``aside``. ``said`` is what the last key had to say,
    and ``wrong`` what a file that it needed has wrong. A ``guest`` is asked nothing of the family.
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
    ) -> None:
        self.guest = guest
        self.context, self.journal, self.clock = context, journal, clock
        self.turn_theme, self._notices, self._aside = turn_theme, notices, aside
        self.session: Session | None = None
        self._uncovered: ItemId | None = None
        self.hand = Hand.RIGHT
        """The hand used last: its keys are named."""
        self.said = self.wrong = ""
        self.bounces, self.midnight = Bounces(clock), Midnight(clock)
        self.start_over: Callable[[], None] = lambda: None
        """Goes back to the morning from whatever is on screen, and asks again what must be asked first."""
        self._day_undone = ""

    def notices(self) -> tuple[Notice, ...]:
        """Standing lines: trouble with the disk first, then what the last key had to say."""
        saving = "" if self.journal.saving else NOT_SAVED.format(self.journal.trouble)
        loud = (saving, self.context.editor.unsaved, *self._notices, self.wrong)
        own = own_words(self.context.own_problem)
        quiet = (Notice(own), Notice(self._aside), Notice(self.said))
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

    def asks_whether_it_counts(self) -> bool:
        """Whether today was no planned morning, and nothing was said of it yet or that was taken back.

        Before the year's first day and after its last nothing counts.
        """
        if self.context.morning().kind not in (DayKind.WEEKEND, DayKind.DAY_OFF):
            return False
        begun = self.journal.sessions_of(self.context.child.journal_name, self.context.today)
        return not begun or self._day_undone == undoing.EXTRA

    def sit(self) -> Session:
        """Go on with the day's session, or begin it."""
        context, journal, clock = self.context, self.journal, self.clock
        self.session = resume(context, journal, clock)
        if self.session is None:
            if chosen_anew(journal, context.child.journal_name, context.today):
                self._notices = (*self._notices, CHOSEN_ANEW)
            self.session = begin(context, journal, clock)
        if self._day_undone:
            # What day it is was said anew: as long as nothing is marked, its prompts are chosen for that.
            self._day_undone = ""
            if not self.session.choose_again():
                self.session.fit_house()
        return self.session

    def keep(self, what: str, work: Callable[[], None], **said: object) -> None:
        """Do what changes the family, so that it can be taken back."""
        if self.session is not None:
            self.session.family_action(what, work, **said)
        else:
            undoing.logged(self.context, self.journal, what, work, said)

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
        if self.guest and self._is_the_family_s():
            undone: Undone | None = None
        elif self.session is not None:
            undone = self.session.undo()
        else:
            undone = undoing.undo_day(self.context, self.journal)
        self.said = f"Undone: {undone.words}." if undone else "Nothing to undo."
        if undone and undone.what in (undoing.DAYS, undoing.EXTRA, undoing.CALENDAR, undoing.SETTINGS):
            self.session, self._day_undone = None, undone.what
            self.start_over()
        elif undone and undone.what in (undoing.WEEKS, undoing.OFF, undoing.SCHOOL):
            self.follow_the_year()

    def settle(self, family: Family) -> None:
        """Keep changed settings, so that they can be taken back as one, and say which they were.

        Where a morning is chosen by them, today's is chosen anew while nothing is marked; later what this
        house lacks is not asked.
        """
        from warmup.session.settings_form import changed, chosen_anew

        context, before = self.context, self.context.family
        self.keep(undoing.SETTINGS, lambda: context.editor.change(family))
        said = changed(before, context.family)
        if chosen_anew(before, context.family):
            self.session, self._day_undone = None, undoing.SETTINGS
            self.start_over()
        self.said = "" if context.editor.unsaved else said

    def _is_the_family_s(self) -> bool:
        """Whether what undo would take back changed the family, which a guest does not."""
        child, session = self.context.child.journal_name, self.session
        row = undoing.newest(self.journal, child, self.context.today, session.number if session else 0)
        before = undoing.before_of(row) if row else None
        return before is not None and bool(before.family or before.moved)
