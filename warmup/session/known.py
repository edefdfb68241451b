"""What a child knows, level by level, for the adult: what is settled, growing, or worth a second look.

One pass over the child's history, and what memory has folded of it. No score: only what was asked, how it
went, and when.
"""

import datetime as dt
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from enum import Enum
from typing import NamedTuple

from warmup import skills
from warmup.engine.eligibility import SHAKY, to_teach
from warmup.engine.memory import Knowledge
from warmup.english import date_words
from warmup.model import WOBBLES, Asked, DayKind, ItemId, LevelId, Mark, Prompt, Strand, item_id, level_id
from warmup.randomness import SeededRandom
from warmup.session.context import Context
from warmup.session.settling import asked, counted, known_today, reviewed, settled_on, year_so_far
from warmup.session.stored import stored
from warmup.session.summary import at_the_table
from warmup.skills.base import Level, Skill
from warmup.text import clean

STRIP = 6
"""How many of its last marks stand beside a level."""


class Stand(Enum):
    """How a level stands with the child, what to look at first named first."""

    REVISIT = "worth revisiting"
    GROWING = "growing"
    SETTLED = "settled"
    NOT_MET = "not met yet"


class KnownLevel(NamedTuple):
    """A level: what it is called, how it stands, and the last marks of its questions, the latest last.

    Of this school year: ``first`` is the date it was first asked and ``settled`` that of the review which
    first found it settled, None where there is none; ``times`` says how often it was asked, ``why`` what
    makes it worth revisiting. What was marked in an earlier year alone is met, and growing.
    """

    id: LevelId
    strand: Strand
    title: str
    label: str
    stand: Stand
    first: dt.date | None = None
    settled: dt.date | None = None
    marks: tuple[Mark | None, ...] = ()
    times: int = 0
    why: str = ""

    def words(self) -> str:
        """What it is called: "make ten, all"."""
        return f"{self.title.lower()}, {self.label}"

    def note(self) -> str:
        """What there is to say of it beside its marks; mostly nothing."""
        if self.stand is Stand.SETTLED and self.settled:
            return f"since {short(self.settled)}"
        return self.why


class Slip(NamedTuple):
    """A misconception that is open: its last mark that counts wobbled. What was asked, and what to do.

    What can't be read any more is empty.
    """

    item: ItemId
    level: LevelId
    title: str
    named: str
    mark: Mark
    on: dt.date
    say: str
    watch_for: str
    to_do: str


class WeekHeld(NamedTuple):
    """A week of the lessons: on how many mornings there was a warm-up."""

    week: int
    held: int


class Month(NamedTuple):
    """How many levels were met, and how many had settled, by the end of a month or by today."""

    first: dt.date
    met: int
    settled: int


class OfStrand(NamedTuple):
    """How many questions of a strand were asked this school year, and at how many the child hesitated."""

    strand: Strand
    asked: int
    hesitated: int


@dataclass(frozen=True)
class Known:
    """All of it, of one child on one day."""

    child: str
    today: dt.date
    levels: tuple[KnownLevel, ...]
    slips: tuple[Slip, ...]
    weeks: tuple[WeekHeld, ...]
    months: tuple[Month, ...]
    strands: tuple[OfStrand, ...]

    def standing(self, stand: Stand) -> tuple[KnownLevel, ...]:
        """The levels that stand so, strand after strand."""
        order = list(Strand)
        found = [level for level in self.levels if level.stand is stand]
        return tuple(sorted(found, key=lambda level: order.index(level.strand)))


def known(context: Context) -> Known:
    """What the context's child knows today."""
    history, knowledge = asked(year_so_far(context)), known_today(context)
    traces = _traces(history)
    settled = settled_on(reviewed(context, knowledge, context.today))
    levels = tuple(_levels(context, traces, settled, knowledge))
    begins = context.year.mornings[0] if context.year.mornings else context.today
    return Known(
        child=clean(context.child.nickname),
        today=context.today,
        levels=levels,
        slips=tuple(_slips(context, traces)),
        weeks=tuple(_weeks(context)),
        months=tuple(_months(begins, context.today, levels)),
        strands=tuple(_strands(context, history)),
    )


def short(day: dt.date) -> str:
    """A date of this school year, short: "Oct 1"."""
    return date_words(day, weekday=False, short=True)


# -- levels


@dataclass
class _Trace:
    """What the history says of one item: its first date, its marks, each with the place of its line.

    ``last`` is its last mark that counts, and when that was.
    """

    first: dt.date
    marks: list[tuple[int, Mark | None]] = field(default_factory=list)
    last: tuple[dt.date, Mark] | None = None

    @property
    def wobbled(self) -> tuple[dt.date, Mark] | None:
        """The last mark that counts, where it wobbled."""
        return self.last if self.last and self.last[1] in WOBBLES else None


class _Unsteady(NamedTuple):
    """The items that rest until they are taught again, and those that are shaky, of whatever level."""

    resting: frozenset[ItemId]
    shaky: frozenset[ItemId]


def _traces(history: Iterable[Asked]) -> dict[ItemId, _Trace]:
    """The items that were asked, in one pass. On a rough day what wobbled lowers nothing."""
    found = dict[ItemId, _Trace]()
    for place, line in enumerate(history):
        trace = found.get(line.item)
        if trace is None:
            trace = found[line.item] = _Trace(line.date)
        mark = counted(line)
        trace.marks.append((place, mark))
        if mark is not None and not (line.rough and mark in WOBBLES):
            trace.last = line.date, mark
    return found


def _levels(
    context: Context,
    traces: Mapping[ItemId, _Trace],
    settled: Mapping[LevelId, dt.date],
    knowledge: Knowledge,
) -> Iterator[KnownLevel]:
    """Those of the plan and those that were met besides, in the order of the catalogue."""
    resting = frozenset(to_teach(context.curriculum().items, knowledge, context.adjustments))
    shaky = frozenset(item for item in traces if knowledge.of(item).misses >= SHAKY)
    for skill in (*skills.SKILLS.values(), *([context.own.skill] if context.own else [])):
        for level in skill.levels:
            ref = level_id(skill.id, level.key)
            there = {
                name: traces[item] for name in level.items if (item := item_id(skill.id, name)) in traces
            }
            met = bool(there) or knowledge.of_level(ref).marks > 0
            if not met and ref not in context.plan.weeks:
                continue
            found = _level(context, skill, level, there, settled.get(ref), _Unsteady(resting, shaky))
            yield found if there or not met else found._replace(stand=Stand.GROWING)


def _level(
    context: Context,
    skill: Skill,
    level: Level,
    there: Mapping[str, _Trace],
    settled: dt.date | None,
    unsteady: _Unsteady,
) -> KnownLevel:
    plain = [(item_id(skill.id, name), there[name]) for name in level.variants if name in there]
    why = _why(plain, settled, unsteady)
    marks = sorted((each for trace in there.values() for each in trace.marks), key=lambda each: each[0])
    ref = level_id(skill.id, level.key)
    return KnownLevel(
        id=ref,
        strand=strand_of(context, skill, level),
        title=skill.title,
        label=clean(level.label),
        stand=_stand(met=bool(there), revisit=bool(why), settled=settled is not None),
        first=min((trace.first for trace in there.values()), default=None),
        settled=settled,
        marks=tuple(mark for _, mark in marks[-STRIP:]),
        times=len(marks),
        why=why,
    )


def strand_of(context: Context, skill: Skill, level: Level) -> Strand:
    """The strand of a level: each of a family's own prompts may have one of its own."""
    if skill.private and (item := context.curriculum().by_id.get(item_id(skill.id, level.items[0]))):
        return Strand(item.strand)
    return skill.strand


def _stand(*, met: bool, revisit: bool, settled: bool) -> Stand:
    if not met:
        return Stand.NOT_MET
    if revisit:
        return Stand.REVISIT
    return Stand.SETTLED if settled else Stand.GROWING


def _why(plain: Sequence[tuple[ItemId, _Trace]], settled: dt.date | None, unsteady: _Unsteady) -> str:
    """What makes a level worth revisiting: an item of it that is shaky, or that wobbled once it had settled.

    A misconception stands for itself, and makes no level shaky.
    """
    since = [each for _, trace in plain if settled and (each := trace.wobbled) and each[0] >= settled]
    had = [f"settled {short(settled)}"] if settled else []
    if any(item in unsteady.resting for item, _ in plain):
        return "; ".join([*had, "waits to be taught again"])
    if any(item in unsteady.shaky for item, _ in plain):
        return "; ".join([*had, "not yet twice in a row"])
    if not since:
        return ""
    went = "hesitated" if max(since, key=lambda each: each[0])[1] is Mark.HESITATED else "not yet"
    return "; ".join([*had, f"{went} since"])


# -- misconceptions


def _slips(context: Context, traces: Mapping[ItemId, _Trace]) -> Iterator[Slip]:
    """Those that are open, the latest first."""
    wobbled = [
        (*last, item) for item, trace in traces.items() if _is_misconception(item) and (last := trace.wobbled)
    ]
    for on, mark, item in sorted(wobbled, key=lambda each: (-each[0].toordinal(), each[2])):
        at, prompt = skills.locate(item), prompt_of(context, item, on)
        yield Slip(
            item,
            at.level_id,
            at.skill.title.lower(),
            f"{at.skill.title.lower()}, {at.level.label}",
            mark,
            on,
            clean(prompt.say) if prompt else "",
            clean(prompt.watch_for) if prompt else "",
            clean(at_the_table(prompt)) if prompt else "",
        )


def _is_misconception(item: ItemId) -> bool:
    at = skills.locate(item)
    return at.name in at.level.misconceptions


def prompt_of(context: Context, item: ItemId, on: dt.date) -> Prompt | None:
    """An item's prompt as it was asked on a date, else as it would be; None where neither can be told."""
    kept = reversed(stored(context.journal, context.child.journal_name, on))
    prompts: Iterator[Prompt] = (prompt for _, routine in kept for prompt in routine.prompts)
    if found := next((prompt for prompt in prompts if prompt.item == item), None):
        return found
    morning = context.morning(on)
    if not skills.askable(item, morning):
        return None
    return skills.prompt(item, morning, SeededRandom("known", item), own=context.own_skill)


# -- over the year


def _weeks(context: Context) -> Iterator[WeekHeld]:
    """The weeks from the child's first one up to today's. A day outside the family's year lies in none."""
    year, today = context.year, context.morning()
    if context.journal is None or not year.mornings or today.kind is DayKind.BEFORE:
        return
    dates = context.journal.dates_of(context.child.journal_name, year.mornings[0])
    outside = (DayKind.BEFORE, DayKind.AFTER)
    weeks = [context.year.morning(day).week for day in dates if context.year.kind(day) not in outside]
    held = Counter(weeks)
    for week in range(min((context.curriculum().since, *weeks)), today.week + 1):
        yield WeekHeld(week, held[week])


def _months(begins: dt.date, today: dt.date, levels: Sequence[KnownLevel]) -> Iterator[Month]:
    """From the month in which the year began up to today's."""
    month = begins.replace(day=1)
    while month <= today:
        after = (month + dt.timedelta(31)).replace(day=1)
        met = sum(level.stand is not Stand.NOT_MET and (level.first or begins) < after for level in levels)
        yield Month(month, met, sum(level.settled is not None and level.settled < after for level in levels))
        month = after


def _strands(context: Context, lines: Iterable[Asked]) -> Iterator[OfStrand]:
    """Every strand of which something was asked, in their order."""
    strands = dict[ItemId, Strand]()
    times, hesitated = Counter[Strand](), Counter[Strand]()
    for line in lines:
        if line.item not in strands:
            at = skills.locate(line.item)
            strands[line.item] = strand_of(context, at.skill, at.level)
        times[strands[line.item]] += 1
        hesitated[strands[line.item]] += counted(line) is Mark.HESITATED
    return (OfStrand(strand, times[strand], hesitated[strand]) for strand in Strand if times[strand])
