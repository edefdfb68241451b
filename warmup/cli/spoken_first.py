"""What a morning in lines asks first: the first form, missed mornings, whether today counts.

And on any question: which date's warm-up it is to be, where midnight has passed.
"""

import datetime as dt
from collections.abc import Callable, Sequence

from warmup.cli.letters import Choice, chosen, not_understood, of_action, question
from warmup.cli.lines import Ended, ask, part, say
from warmup.config.family import Family
from warmup.config.holidays import Holiday
from warmup.config.toml_file import LONGEST_NAME
from warmup.english import date_words
from warmup.session import missed, undoing
from warmup.session.context import Context
from warmup.session.first_form import (
    Form,
    Unclear,
    family_of,
    filled_in,
    holidays,
    known_by,
    outcome,
    week_of,
    weekday_of,
)
from warmup.session.missed import Missed, Talk
from warmup.session.words import (
    COUNTED,
    COUNTS,
    FOR_FUN,
    HELLO,
    NOT_PLANNED,
    PRIVACY,
    READS_TELLS,
    READS_WHY,
    STARTS_COVERED,
    STAYS,
    now_words,
    open_still,
    reads_question,
)
from warmup.tui.doing import said_of_days
from warmup.tui.workspace import GUEST, Workspace


class OtherDate(Exception):
    """The clock says another date than the morning's: the line that was read does nothing but ask."""


def read(work: Workspace, asked: str) -> str:
    """The line that answers a question. Raises Ended, and OtherDate where midnight has passed over it."""
    line = ask(asked)
    if work.midnight.asks(work.context.today):
        raise OtherDate
    return line


def _one_of(line: Callable[[str], str], choices: Sequence[Choice]) -> str:
    """Ask until a line means one of the choices; its id. Leaving raises Ended."""
    while True:
        typed = line(question(choices))
        name = chosen(typed, choices)
        if name == "quit":
            raise Ended
        if name:
            return name
        say(not_understood(typed, choices))


def guest_name(work: Workspace) -> None:
    """Ask a guest without a name for it, once; Enter leaves it. Raises Ended."""
    context = work.context
    if not context.marks_by:
        context.marks_by = ask(f"Your name [{GUEST}]")[:LONGEST_NAME].strip() or GUEST
    say(f"{work.guest_words}.")


# -- which day it is


_DATES = (of_action("today"), of_action("finish"), of_action("quit"))
_COUNT = (of_action("fun"), of_action("count"), of_action("undo"), of_action("quit"))

_READS = (of_action("no_reader"), of_action("reader"), of_action("leave", "later"), of_action("quit"))


def which_date(work: Workspace) -> None:
    """Go over to the new date's morning, or finish the one that is open."""
    midnight, stood = work.midnight, work.context.today
    while midnight.offered is not None:
        now = midnight.offered
        part([now_words(now, stood), open_still(now, stood), STAYS])
        name = _one_of(ask, _DATES)
        if midnight.asks(stood) or midnight.offered is None:
            continue  # Another date still, or the clock was put right: what was said meant neither.
        if name == "today":
            midnight.go()
            work.turn_to(now)
        else:
            midnight.stay()
        return


def whether_it_counts(work: Workspace) -> bool:
    """On a day without school: does it count? Whether it was answered, and nothing taken back instead."""
    part([NOT_PLANNED, COUNTS])
    match _one_of(lambda asked: read(work, asked), _COUNT):
        case "undo":
            work.undo()
            return False
        case "count":
            work.keep(undoing.EXTRA, lambda: work.context.editor.count(work.context.today))
            work.said = COUNTED
        case _:
            work.said = FOR_FUN
    return True


def whether_they_read(work: Workspace) -> bool:
    """Where number words open: does the child read them? Whether it was answered, or left for another day."""
    part([READS_WHY, READS_TELLS, reads_question(work.context)])
    name = _one_of(lambda asked: read(work, asked), _READS)
    if name == "reader":
        work.said = STARTS_COVERED
    if name != "leave":
        work.keep(undoing.READS, lambda: work.context.editor.reads(name == "reader"))
    return name != "leave"


# -- missed mornings


_WEEK = (
    of_action("here"),
    of_action("week_less"),
    of_action("week_more"),
    of_action("by_day"),
    of_action("undo"),
    of_action("help"),
    of_action("quit"),
)
_SCHOOL = Choice("school", ("s",), "school")
_OFF = Choice("off", ("o",), "off")
_DAYS = (
    _SCHOOL,
    _OFF,
    of_action("all_school", letters=("l",)),
    of_action("all_off", letters=("a",)),
    of_action("undo"),
    of_action("help"),
    of_action("quit"),
)
_SETTLED = (of_action("answered"), of_action("undo"), of_action("help"), of_action("quit"))


def missed_mornings(work: Workspace) -> None:
    """Were they school, or off? Of five or more one question about the week first."""
    context = work.context
    talk = missed.begin(Missed(context.family, context.child, context.today, context.unconfirmed_days()))
    before: list[Talk] = []
    part([talk.question])
    while True:
        match name := _one_of(ask, _question(talk)):
            case "undo" if before:
                talk = before.pop()
            case "undo":
                say("Nothing to undo.")
            case "help":
                say(missed.TELLS)
            case "here" | "answered":
                break
            case _:
                before.append(talk)
                talk = _stepped(talk, name)
    off = talk.off
    work.keep(undoing.DAYS, lambda: context.editor.confirm_days(off, context.today))
    work.said = said_of_days(off)
    if work.midnight.asks(context.today):
        raise OtherDate


def _question(talk: Talk) -> Sequence[Choice]:
    """Say how it stands, and give what may be said to that."""
    today = f"Today: {talk.missed.today_words(talk.off)}."
    if talk.asking:
        say(f"{missed.WHERE_NOW} In week {talk.week}? {today}")
        return _WEEK
    if talk.open_still:
        day = talk.missed.days[talk.answers.index(None)]
        say(f"{date_words(day)}: school, or off?")
        return _DAYS
    say(today)
    return _SETTLED


def _stepped(talk: Talk, name: str) -> Talk:
    """The talk after one line."""
    match name:
        case "week_less":
            return talk.step("left", ())
        case "week_more":
            return talk.step("right", ())
        case "school" | "off":
            at = talk.answers.index(None)
            return talk._replace(answers=(*talk.answers[:at], name == "off", *talk.answers[at + 1 :]))
        case _:
            return talk.step(name, ())


# -- the first form


def first_form(context: Context) -> Family:
    """Ask the form's questions, each filled in: Enter takes it as it stands. Raises Ended."""
    today, known = context.today, known_by(context)
    form = filled_in(today, known)
    part([HELLO, PRIVACY, "Enter takes what stands in brackets."])
    form = _name(form, today, known)
    while True:
        form = _dates(form, today)
        form = form._replace(off=_days_off(holidays(form, today)))
        form = form._replace(week=_week(form, today))
        say(outcome(form, today))
        answer = ask("Enter begin, b go through it again")
        if answer.casefold() != "b":
            return family_of(form, today, known)


def _name(form: Form, today: dt.date, known: Family | None) -> Form:
    def check(text: str) -> str:
        family_of(form._replace(nickname=text), today, known)
        return ""

    return form._replace(nickname=_field("Nickname", form.nickname, check))


def _dates(form: Form, today: dt.date) -> Form:
    def with_day(text: str) -> str:
        family_of(form._replace(first_day=text, off=()), today)
        return weekday_of(text, form.weekdays)

    def with_weekdays(text: str) -> str:
        family_of(form._replace(weekdays=text, off=()), today)
        return ""

    form = form._replace(week="", first_day=_field("First school day", form.first_day, with_day))
    return form._replace(weekdays=_field("School weekdays", form.weekdays, with_weekdays))


def _field(label: str, value: str, check: Callable[[str], str]) -> str:
    """One line of the form, asked until it is clear; ``check`` raises Unclear or gives what to say of it."""
    while True:
        text = ask(f"{label} [{value}]") or value
        try:
            say(check(text))
        except Unclear as unclear:
            say(str(unclear))
        else:
            return text


def _days_off(offered: tuple[Holiday, ...]) -> tuple[Holiday, ...]:
    """Those of the days off that are taken: all but the numbers that are typed."""
    if not offered:
        return ()
    say("Days off:")
    say(*(f"{n}. {date_words(each.first)}: {each.name}" for n, each in enumerate(offered, start=1)))
    while True:
        typed = ask("Enter all of them, or the numbers of those you do not take").replace(",", " ").split()
        numbers = [int(word) for word in typed if word.isascii() and word.isdigit() and len(word) < 4]
        if len(numbers) == len(typed) and all(1 <= n <= len(offered) for n in numbers):
            return tuple(each for n, each in enumerate(offered, start=1) if n not in numbers)
        say(f"Numbers from 1 to {len(offered)}, like 2 5.")


def _week(form: Form, today: dt.date) -> str:
    """The week, where it is said to be another than the one the first day gives; else nothing."""
    worked_out = week_of(form, today)

    def check(text: str) -> str:
        family_of(form._replace(week="" if text == worked_out else text), today)
        return ""

    said = _field("Today is in", worked_out, check)
    return "" if said == worked_out else said
