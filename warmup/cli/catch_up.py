"""The marks of a morning that was done on paper, typed in as a line of letters."""

import contextlib
import datetime as dt
from collections.abc import Iterator, Mapping
from types import SimpleNamespace

from warmup.cli.letters import Choice, chosen, not_understood, question
from warmup.cli.lines import Ended, ask, say, take_any_bytes
from warmup.cli.plain import day_words
from warmup.cli.printing import Refused
from warmup.english import date_words, number_word, plural
from warmup.journal.journal import Changed, Journal
from warmup.model import DayKind, Mark
from warmup.session import undoing
from warmup.session.context import Clock, Context
from warmup.session.on_paper import (
    LETTERS_TOLD,
    PaperSession,
    Unread,
    can_count,
    count,
    paper_session,
    read_letters,
    routine_on,
    trial,
)
from warmup.session.stored import stored
from warmup.session.undoing import CannotUndo
from warmup.session.words import COUNTS
from warmup.text import quoted

NOT_PLANNED = "No school was planned that day."
_BUSY = "the morning was changed in another window just now; nothing was done, so try once more"
_COUNT = (Choice("fun", ("n", ""), "no, just for fun"), Choice("count", ("y",), "yes, it counts"))


def check(arguments: SimpleNamespace, context: Context, *, saved: bool) -> None:
    """Refused where there is no such morning: no family yet, a date ahead, or before the first day."""
    date, day = arguments.date, date_words(arguments.date, year=True)
    if not saved:
        raise Refused("there is no family.toml yet; run warmup in a terminal to set it up")
    if date > context.today:
        raise Refused(f"{day} is still ahead; its marks can be typed in once it is here")
    first = context.child.first_day or context.family.first_day
    if date < first:
        raise Refused(f"{day} is before the first school day, {date_words(first, year=True)}")
    if arguments.counts and context.year.kind(date) is DayKind.AFTER:
        raise Refused(f"the school year was over by {day}, so that morning can't count; leave out --counts")


def run(arguments: SimpleNamespace, context: Context, journal: Journal, clock: Clock) -> None:
    """Take the letters, or ask for them, or take back what was last done. Refused in a sentence."""
    try:
        if arguments.undo:
            _undo(context, journal, clock, arguments.date)
        elif arguments.marks is not None:
            _type_in(arguments, context, journal, clock)
        else:
            _ask(arguments, context, journal, clock)
    except Changed:
        raise Refused(_BUSY) from None
    except Unread as unread:
        raise Refused(str(unread)) from None


def _type_in(arguments: SimpleNamespace, context: Context, journal: Journal, clock: Clock) -> None:
    """Keep a line of letters; nothing changes where it can't be taken."""
    date, counts = arguments.date, arguments.counts and can_count(context, arguments.date)
    attempt = trial(context)
    if counts:
        attempt.editor.count(date)
    marks = read_letters(arguments.marks, len(routine_on(attempt, date).prompts))
    if counts:
        count(context, journal, date)
    session = paper_session(context, journal, clock, date)
    _keep(session, marks, replace=arguments.replace)


def _keep(session: PaperSession, marks: Mapping[int, Mark], *, replace: bool) -> None:
    """Keep the marks, of prompts that have one already only with ``replace``, and say what is kept."""
    stay = [at for at, mark in marks.items() if session.mark_at(at) not in (None, mark) and not replace]
    new = {at: mark for at, mark in marks.items() if at not in stay and session.mark_at(at) is not mark}
    session.put(new)
    say(_head(session), *_rows(session))
    much = f"{number_word(len(new))} {plural(len(new), 'mark')}" if new else "nothing new"
    say(f"Kept from memory: {much}.")
    if stay:
        which = f"{number_word(len(stay)).capitalize()} had another mark already"
        say(f"{which}, and that stays; --replace changes it too.")
    if new:
        say(f"To take it back: warmup catch-up {session.morning.date} --undo")


def _head(session: PaperSession) -> str:
    morning = session.morning
    which = day_words(morning) if morning.is_school else NOT_PLANNED
    return f"{date_words(morning.date, year=True)}. {which}"


def _rows(session: PaperSession) -> Iterator[str]:
    for at, prompt in enumerate(session.prompts):
        mark = session.mark_at(at)
        how = undoing.MARK_WORDS[mark].capitalize() if mark else "No mark"
        yield f"{at + 1}. {quoted(prompt.say)} {how}."


def _undo(context: Context, journal: Journal, clock: Clock, date: dt.date) -> None:
    if not stored(journal, context.child.journal_name, date):
        raise Refused(f"nothing is kept of {date_words(date, year=True)}")
    try:
        undone = paper_session(context, journal, clock, date).undo()
    except CannotUndo:
        raise Refused("the morning has changed since, so this can't be undone") from None
    say(f"Undone: {undone.words}." if undone else "Nothing to undo.")


def _ask(arguments: SimpleNamespace, context: Context, journal: Journal, clock: Clock) -> None:
    """List the prompts and ask for the letters; leaving changes nothing."""
    date = arguments.date
    take_any_bytes()
    with contextlib.suppress(Ended, KeyboardInterrupt):
        if can_count(context, date) and (arguments.counts or _asked_to_count()):
            count(context, journal, date)
        session = paper_session(context, journal, clock, date)
        say(_head(session), *_rows(session))
        say(f"A letter a prompt: {LETTERS_TOLD}. Enter alone changes nothing.")
        while line := ask("Letters"):
            try:
                marks = read_letters(line, len(session.prompts))
            except Unread as unread:
                say(str(unread))
            else:
                _keep(session, marks, replace=arguments.replace)
                return


def _asked_to_count() -> bool:
    say(NOT_PLANNED, COUNTS)
    while True:
        line = ask(question(_COUNT))
        if name := chosen(line, _COUNT):
            return name == "count"
        say(not_understood(line, _COUNT))
