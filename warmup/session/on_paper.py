"""A morning done on paper: which prompts it had, and its marks typed in later.

What was printed and what is typed in must be the same prompts. So a brief of today is kept as today's
session, of which no prompt is on screen yet; a date without a session has the routine that was to be chosen
that morning, from the history before it. What the adult says of the child's levels is taken as it is now.
"""

import datetime as dt
from collections.abc import Mapping

from warmup.config.editor import FamilyEditor, KeptFamily
from warmup.journal.journal import Change, Changed, Journal, MarkRow
from warmup.model import DayKind, Mark, Routine
from warmup.session import undoing
from warmup.session.context import Clock, Context
from warmup.session.session import Session, keep
from warmup.session.stored import current, stored
from warmup.session.undoing import Before
from warmup.text import clean, shown

PAST = 8
"""So many mornings back are offered without a date."""
LETTERS: Mapping[str, Mark | None] = {
    "w": Mark.FLUENT,
    "s": Mark.HESITATED,
    "n": Mark.NOT_YET,
    "-": Mark.SKIPPED,
    ".": None,
}
"""The letter of each mark, those of a morning in lines; a full stop stands for a prompt without one."""
LETTERS_TOLD = "w came easily, s hesitated, n not yet, - left, . no mark"


class Unread(ValueError):
    """A line of letters that can't be taken: a sentence that says where."""


def read_letters(line: str, prompts: int) -> dict[int, Mark]:
    """The marks of a line of letters by position, one letter a prompt; spaces are ignored.

    Fewer letters than ``prompts`` leave the last ones without a mark. Unread for more, and for any other.
    """
    letters = [letter for letter in clean(line) if not letter.isspace()]
    for at, letter in enumerate(letters, start=1):
        if letter.lower() not in LETTERS:
            raise Unread(f"Letter {at} of {shown(line)} is {shown(letter)}; there is {LETTERS_TOLD}.")
    if len(letters) > prompts:
        much = f"{len(letters)} letters for {prompts} prompts"
        raise Unread(f"{shown(line)} has {much}; letter {prompts + 1} is one too many.")
    marks = ((at, LETTERS[letter.lower()]) for at, letter in enumerate(letters))
    return {at: mark for at, mark in marks if mark is not None}


def at(context: Context, date: dt.date) -> Context:
    """The context as it was on a past morning; of today and a date ahead it is as it is now."""
    return context.as_of(date) if date < context.today else context


def routine_on(context: Context, date: dt.date) -> Routine:
    """The routine of a date, kept nowhere: that of the session it has, else the one it would have had."""
    found = current(stored(context.journal, context.child.journal_name, date))
    if found:
        return found[1]
    then = at(context, date)
    return then.routine(then.morning(date))


def not_kept(context: Context) -> str:
    """Why a brief of today is not kept as today's session, in a sentence; empty where it is.

    What must be asked first might make another morning of it; a session that is there was asked of before.
    """
    if current(stored(context.journal, context.child.journal_name, context.today)):
        return ""
    if context.unconfirmed_days():
        return "There are mornings without a warm-up: open warmup first and say whether they were school."
    if can_count(context, context.today):
        return "Today is no school day: open warmup first and say whether it counts."
    return ""


def kept_today(context: Context, journal: Journal) -> Routine:
    """Today's routine, kept as today's session where there is none yet."""
    found = current(stored(journal, context.child.journal_name, context.today))
    if found:
        return found[1]
    try:
        return keep(context, journal, begun=False)[1]
    except Changed:
        return kept_today(context, journal)


def trial(context: Context) -> Context:
    """The same family and child, to try something out on: what it changes is in no file."""
    nowhere = KeptFamily(context.places.config / "family.toml", context.family, saves=False)
    return context.with_editor(FamilyEditor(nowhere, context.child), context.today)


def can_count(context: Context, date: dt.date) -> bool:
    """Whether a date is no school morning and might be one."""
    return context.year.kind(date) in (DayKind.WEEKEND, DayKind.DAY_OFF)


def count(context: Context, journal: Journal, date: dt.date) -> None:
    """A date that was not planned counts as a school morning; its session's undo takes that back as well."""
    then = context.as_of(date)
    undoing.logged(then, journal, undoing.COUNTS, lambda: context.editor.count(date), {})


def past_mornings(context: Context) -> tuple[tuple[dt.date, int], ...]:
    """The last planned mornings before today, the latest first, and how many marks each has."""
    days = context.year.between(dt.date.min, context.today)[-PAST:]
    history = context.history(since=days[0]) if days else ()
    return tuple(
        (day, sum(line.date == day and line.mark is not None for line in history)) for day in days[::-1]
    )


class PaperSession(Session):
    """A morning that was done on paper: its marks are from memory, and nothing of it is on screen."""

    FROM_MEMORY = True

    def put(self, marks: Mapping[int, Mark | None], what: str = undoing.PAPER) -> None:
        """Mark prompts by position, None for no mark, all in one action; those up to the last were shown.

        A morning of the past is over with that, and today's where each prompt has a mark.
        """
        if not marks:
            return
        rows = {at: self._row(mark, 0) for at, mark in marks.items()}
        whole = {at: self.mark_at(at) for at in range(len(self.prompts))} | dict(marks)
        left = [at for at, mark in whole.items() if mark is None]
        last = max((at for at, mark in whole.items() if mark is not None), default=-1)
        over = self.morning.date < self.clock().date() or not left
        end = len(self.prompts) if over else last + 1
        change = Change(marks=rows, position=end, shown=max(self.furthest, last), closed=over or None)
        was: dict[int, MarkRow | None] = {at: self.marks.get(at) for at in marks}
        before = Before(self.position, self.furthest, was, closed=self.closed if over else None)
        position = next(iter(marks)) if len(marks) == 1 else None
        only = next(iter(marks.values()))
        said = {"mark": only.value if only else ""} if what == undoing.MARK else {}
        self._act(what, change, before, position, **said)

    def note_at_hand(self) -> None:
        """Nothing of it is at hand for the child's window."""


def paper_session(context: Context, journal: Journal, clock: Clock, date: dt.date) -> PaperSession:
    """The session of a date, to type marks into; one is begun and kept where there is none."""
    then = context.as_of(date)
    found = current(stored(journal, context.child.journal_name, date))
    if found is None:
        try:
            keep(then, journal, begun=False)
        except Changed:
            return paper_session(context, journal, clock, date)
        return paper_session(context, journal, clock, date)
    row, routine = found
    journal.keep_in_mind(context.child.journal_name, date, row.session)
    position = min(row.position, len(routine.prompts))
    session = PaperSession(then, journal, clock, row.session, routine, position)
    session.refresh()
    return session
