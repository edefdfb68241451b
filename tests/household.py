"""An invented family with a morning that is always the same, for the tests of sessions and screens."""

import datetime as dt
from collections.abc import Callable, Mapping
from pathlib import Path

from warmup import skills
from warmup.config import family as families
from warmup.config.family import Child, Family, year_of
from warmup.config.places import Places
from warmup.journal.journal import NOT_BEGUN, Journal, MarkRow
from warmup.journal.routine_json import routine_text
from warmup.model import Cue, ItemId, Mark, Opening, Prompt, Routine
from warmup.pictures.hundred_chart import HundredChart
from warmup.pictures.ten_frame import TenFrame
from warmup.randomness import SeededRandom
from warmup.session.context import Context, open_context
from warmup.session.session import Session, begin
from warmup.skills.own import OwnPrompt, own

TODAY = dt.date(2027, 3, 3)
FAMILY = Family(
    first_day=dt.date(2026, 8, 31),
    began=dt.date(2026, 8, 31),
    children=(Child("Bean", reads=False),),
    known_until=TODAY - dt.timedelta(1),
)
Clock = Callable[[], dt.datetime]


class StandingClock:
    """A clock that goes on a second at every look."""

    def __init__(self, moment: dt.datetime) -> None:
        self.moment = moment

    def __call__(self) -> dt.datetime:
        self.moment += dt.timedelta(seconds=1)
        return self.moment

    def turn_to(self, day: dt.date) -> None:
        """Eight o'clock on this day, unless it is that day already."""
        if self.moment.date() != day:
            self.moment = dt.datetime.combine(day, dt.time(8))


def context_at(home: Path, clock: Clock, family: Family = FAMILY, today: dt.date = TODAY) -> Context:
    """A context whose files lie in ``home``; a clock of a test says the context's day."""
    if isinstance(clock, StandingClock):
        clock.turn_to(today)
    places = Places(home, home)
    families.save(home / "family.toml", family)
    return open_context(places, family, today, Journal.open(home, clock))


def without_reviews(context: Context) -> Context:
    """The context in a year that has no review weeks: today would lie in one."""
    context.plan = context.plan._replace(reviews=())
    return context


def fixed_prompts() -> tuple[Prompt, ...]:
    """Five prompts written out here, so that no change of a skill moves a screen that shows them."""
    ten = Prompt(
        skill="make-ten",
        level="all",
        item=ItemId("make-ten/seven-three"),
        say="The ten frame has seven in it. How many more fill it?",
        wording="b",
        answer="three",
        accept=(),
        working="7 + 3 = 10",
        cues=(
            Cue("Show me seven on your fingers."),
            Cue("Look at the fingers still folded.", TenFrame(7)),
            Cue("Touch the first folded finger together, and let the child go on."),
        ),
        watch_for="Answering two or four: one off. Fingers settle it.",
        table="ten frame",
        seconds=20,
        guess=0.0,
        given={"have": 7, "make": 10},
        picture=TenFrame(7),
        why="hesitated Tuesday; back after 2 mornings",
    )
    on = ten._replace(
        skill="count-on",
        level="to-50",
        item=ItemId("count-on/across-30"),
        say="Start at twenty-eight. Count on to thirty-two.",
        answer="twenty-eight, twenty-nine, thirty, thirty-one, thirty-two",
        working="28, 29, 30 … 32: past the 29 the tens change",
        cues=(
            Cue("Say the start with me."),
            Cue("A finger on twenty-eight in the chart.", HundredChart(21, 40, (), (28,))),
            Cue("Begin together and fall silent."),
        ),
        picture=None,
        table="cereal in a cup",
        why="came easily February 3; back after 17 mornings",
        given={"start": 28, "end": 32},
    )
    more = tuple(
        skills.prompt(item, year_of(FAMILY).morning(TODAY), SeededRandom("household", item), "new this week")
        for item in ("weekday/today", "by-tens/to-50", "month/this")
    )
    return (ten, on, *more)


def fixed_routine() -> Routine:
    """The fixed prompts as the routine of the day."""
    return Routine("Bean", year_of(FAMILY).morning(TODAY), "daily", fixed_prompts())


OPENING = Opening(
    "Today is Wednesday, March third. School day one hundred seven: add a straw.", "straws and bands"
)


OWN = OwnPrompt(
    "our-street",
    "If you are lost, what do you tell a grown-up who helps you? Say the number of our house and our street.",
    "Forty-two, then Pear Tree Lane, and [b]Mill Town[/b] after that",
    ("Picture our front door.",),
    watch_for="The number turned round. Say it as two words: forty, two.",
    table="a letter with our address",
    accept=("42 Pear Tree Lane",),
)
"""A long one that a family wrote itself, with signs in it that some programs obey."""


def start_own(context: Context, mine: OwnPrompt = OWN) -> None:
    """Put the fixed routine into the journal with a prompt of the family's own before the others."""
    made = own([mine])
    prompt = skills.prompt(
        made.items[0].id,
        year_of(FAMILY).morning(TODAY),
        SeededRandom(1),
        "came easily February 3",
        made.skill,
    )
    start_fixed(context, before=(prompt,))


def start_fixed(context: Context, opening: Opening | None = None, before: tuple[Prompt, ...] = ()) -> None:
    """Put the fixed routine into the journal as today's, not begun, with other prompts ``before`` its own."""
    routine = fixed_routine()
    routine = routine._replace(opening=opening, prompts=(*before, *routine.prompts))
    assert context.journal is not None
    rows = [(prompt.item, prompt.wording) for prompt in routine.prompts]
    text, furthest = routine_text(routine), NOT_BEGUN if opening else 0
    context.journal.start(context.child.journal_name, TODAY, "daily", text, rows, furthest=furthest)


def begun(context: Context, clock: Clock) -> Session:
    """Today's session, begun and at its first prompt."""
    assert context.journal is not None
    session = begin(context, context.journal, clock)
    if session.at_opening:
        session.next()
    return session


def lived(context: Context, day: dt.date, marks: Mapping[str, Mark]) -> None:
    """Put a closed morning of an earlier day into the journal, with these marks by item."""
    assert context.journal is not None
    morning = context.morning(day)
    prompts = tuple(skills.prompt(item, morning, SeededRandom("lived", item)) for item in marks)
    kept = [
        MarkRow(mark=mark, cue=0, adult="", from_memory=False, at=f"{day}T08:00:00")
        for mark in marks.values()
    ]
    context.journal.start(
        context.child.journal_name,
        day,
        "daily",
        routine_text(Routine(context.child.journal_name, morning, "daily", prompts)),
        [(prompt.item, prompt.wording) for prompt in prompts],
        kept,
    )
    context.forget()


def grown_easier(context: Context) -> None:
    """Mornings on which five things were hard in the fall, and came easily in the winter."""
    items = ("count-back/from-5", "weekday/today", "make-ten/see-places", "coins/name-it", "subitize/to-3")
    for day, marks in (
        (dt.date(2026, 10, 5), (Mark.HESITATED, Mark.NOT_YET, Mark.NOT_YET, Mark.HESITATED, Mark.FLUENT)),
        (dt.date(2027, 1, 12), (Mark.FLUENT,) * 5),
        (dt.date(2027, 2, 23), (Mark.FLUENT,) * 5),
        (dt.date(2027, 3, 2), (Mark.FLUENT,) * 2),
    ):
        lived(context, day, dict(zip(items, marks, strict=False)))
