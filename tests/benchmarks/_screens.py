"""The programs that the pictures of screens are drawn of: an invented family, some way into its year."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

from tests.config import calendars
from tests.household import (
    FAMILY,
    OPENING,
    TODAY,
    StandingClock,
    context_at,
    grown_easier,
    lived,
    start_fixed,
    start_own,
)
from warmup.cli import days
from warmup.config.family import Child, CountdownRule, Family, default, year_of
from warmup.journal.rows import MORNING
from warmup.model import LevelId, Mark
from warmup.session.past import PastMorning
from warmup.session.whose_turn import in_order
from warmup.tui.app import WarmupApp
from warmup.tui.calendar_days import CalendarApp
from warmup.tui.on_paper import PaperApp
from warmup.tui.practice import PracticeApp

PAST = [day for day in year_of(FAMILY).mornings if day < TODAY]
JULY = dt.date(2027, 7, 5)
_SATURDAY = TODAY + dt.timedelta(3)


def morning(home: Path, clock: StandingClock, family: Family = FAMILY) -> WarmupApp:
    context = context_at(home, clock, family)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def opening(home: Path, clock: StandingClock, family: Family = FAMILY) -> WarmupApp:
    context = context_at(home, clock, family)
    start_fixed(context, OPENING)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def opening_light(home: Path, clock: StandingClock) -> WarmupApp:
    return opening(home, clock, FAMILY._replace(theme="light"))


def light(home: Path, clock: StandingClock) -> WarmupApp:
    return morning(home, clock, FAMILY._replace(theme="light"))


def contrast(home: Path, clock: StandingClock) -> WarmupApp:
    return morning(home, clock, FAMILY._replace(theme="contrast"))


def reader(home: Path, clock: StandingClock) -> WarmupApp:
    return morning(home, clock, FAMILY._replace(children=(Child("Bean", reads=True),)))


def unasked(home: Path, clock: StandingClock) -> WarmupApp:
    return morning(home, clock, FAMILY._replace(children=(Child("Bean"),)))


def away(mornings: int) -> Callable[[Path, StandingClock], WarmupApp]:
    """The program after this many mornings without a warm-up."""
    return lambda home, clock: morning(home, clock, FAMILY._replace(known_until=PAST[-mornings - 1]))


def saturday(home: Path, clock: StandingClock) -> WarmupApp:
    context = context_at(home, clock, FAMILY._replace(known_until=_SATURDAY), _SATURDAY)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def welcome(home: Path, clock: StandingClock) -> WarmupApp:
    context = context_at(home, clock, default(TODAY))
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock, welcome=lambda _family: context)


def resting(home: Path, clock: StandingClock) -> WarmupApp:
    """The program with an item that waits to be taught again after this morning's mark."""
    context = context_at(home, clock)
    for back in (2, 1):
        lived(context, TODAY - dt.timedelta(back), {"make-ten/seven-three": Mark.NOT_YET})
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def own(home: Path, clock: StandingClock) -> WarmupApp:
    """The program at a prompt that the family wrote itself."""
    context = context_at(home, clock)
    start_own(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def own_problem(home: Path, clock: StandingClock) -> WarmupApp:
    """The program with a file of own prompts that can't be used."""
    (home / "own.toml").write_text('[[prompt]]\nsay = "Where do we live?"\nanser = "here"\n', "utf-8")
    return opening(home, clock)


def calendar(home: Path, clock: StandingClock, family: Family = FAMILY) -> CalendarApp:
    context = context_at(home, clock, family, calendars.TODAY)
    return CalendarApp(context, clock, days.offered(calendars.DISTRICT, family, calendars.TODAY, done=False))


def calendar_light(home: Path, clock: StandingClock) -> CalendarApp:
    return calendar(home, clock, FAMILY._replace(theme="light"))


def calendar_contrast(home: Path, clock: StandingClock) -> CalendarApp:
    return calendar(home, clock, FAMILY._replace(theme="contrast"))


def guest(home: Path, clock: StandingClock, name: str = "Grandma") -> WarmupApp:
    """The program as a guest opens it, on an opening."""
    context = context_at(home, clock)
    start_fixed(context, OPENING)
    context.marks_by = name
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock, guest=True)


def nameless(home: Path, clock: StandingClock) -> WarmupApp:
    return guest(home, clock, "")


def on_paper(home: Path, clock: StandingClock, date: dt.date = PAST[-1]) -> WarmupApp:
    context = context_at(home, clock)
    assert context.journal is not None
    return PaperApp(context, context.journal, clock, date)


def on_paper_on_a_sunday(home: Path, clock: StandingClock) -> WarmupApp:
    return on_paper(home, clock, dt.date(2027, 2, 28))


_LIVED = FAMILY._replace(
    off=((dt.date(2026, 12, 21), dt.date(2027, 1, 1)), (dt.date(2026, 9, 7), dt.date(2026, 9, 7))),
    held_weeks=(12,),
    skipped_weeks=(20,),
    extra=(dt.date(2027, 3, 6),),
    countdowns=(CountdownRule("the lake", dt.date(2027, 3, 13)),),
)
"""A year with a break, a holiday, a held and a skipped week, a Saturday and a day to look forward to."""


def year(home: Path, clock: StandingClock) -> WarmupApp:
    return morning(home, clock, _LIVED)


def year_light(home: Path, clock: StandingClock) -> WarmupApp:
    return morning(home, clock, _LIVED._replace(theme="light"))


def report(home: Path, clock: StandingClock, family: Family = FAMILY) -> WarmupApp:
    """The program on the fixed morning, a few mornings after its first ones."""
    context = context_at(home, clock, family)
    for back in (2, 1):
        lived(
            context,
            TODAY - dt.timedelta(back),
            {"make-ten/seven-three": Mark.FLUENT, "count/to-20": Mark.NOT_YET},
        )
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def then(home: Path, clock: StandingClock) -> WarmupApp:
    """The program after some things that were hard in the fall came easily in the winter."""
    context = context_at(home, clock)
    grown_easier(context)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def practice(
    home: Path, clock: StandingClock, family: Family = FAMILY, level: str = "make-ten:all"
) -> WarmupApp:
    context = context_at(home, clock, family)
    assert context.journal is not None
    return PracticeApp(context, context.journal, clock, LevelId(level))


def practice_light(home: Path, clock: StandingClock) -> WarmupApp:
    return practice(home, clock, FAMILY._replace(theme="light"))


def practice_too_early(home: Path, clock: StandingClock) -> WarmupApp:
    return practice(home, clock, level="make-ten:take-from-ten")


def report_light(home: Path, clock: StandingClock) -> WarmupApp:
    return report(home, clock, FAMILY._replace(theme="light"))


def children(home: Path, clock: StandingClock, theme: str = "dark", *, together: bool = True) -> WarmupApp:
    """The program of three children, one of whom rests."""
    kids = (Child("Fern", reads=False), Child("Moss", reads=True), Child("Wren", resting=True, prompts=5))
    context = context_at(home, clock, FAMILY._replace(children=kids, theme=theme))
    order = in_order(context.family, TODAY)
    for child in order:
        start_fixed(context.of(child), OPENING)
    assert context.journal is not None
    return WarmupApp(context.of(order[0]), context.journal, clock, takes_turns=together)


def children_light(home: Path, clock: StandingClock) -> WarmupApp:
    return children(home, clock, "light")


def in_turn(home: Path, clock: StandingClock) -> WarmupApp:
    return children(home, clock, together=False)


def summer(home: Path, clock: StandingClock) -> WarmupApp:
    """The program on a day in July."""
    context = context_at(home, clock, FAMILY._replace(known_until=JULY), JULY)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def told_later(home: Path, clock: StandingClock, family: Family = FAMILY) -> WarmupApp:
    app = morning(home, clock, family)
    app.told_later = lambda: (
        "A second journal lies beside yours: “warmup merge 'journal (2).db'” takes it in.",
        "No weekly copy since November 11. Is the stick in?",
    )
    return app


def told_later_light(home: Path, clock: StandingClock) -> WarmupApp:
    return told_later(home, clock, FAMILY._replace(theme="light"))


def past(home: Path, clock: StandingClock, theme: str = "dark") -> WarmupApp:
    """The program with past mornings, one of them corrected, a note here and there."""
    context = context_at(home, clock, FAMILY._replace(theme=theme))
    asked = ("make-ten/seven-three", "weekday/today", "count-on/across-30", "month/this", "by-tens/to-50")
    for number, day in enumerate(PAST[-14:]):
        lived(context, day, {item: list(Mark)[(number + at) // 3 % 3] for at, item in enumerate(asked)})
    start_fixed(context)
    assert context.journal is not None
    last = PastMorning(context, context.journal, PAST[-1], 1)
    last.correct(0, Mark.NOT_YET)
    last.correct(1, Mark.FLUENT)
    last.write(0, "“Seven and three are ten, like the eggs we had on Sunday!”")
    last.share(0)
    last.write(MORNING, "Slept badly, and wanted the bear to answer first.")
    return WarmupApp(context, context.journal, clock)


def past_light(home: Path, clock: StandingClock) -> WarmupApp:
    return past(home, clock, "light")


def past_contrast(home: Path, clock: StandingClock) -> WarmupApp:
    return past(home, clock, "contrast")
