"""One level as the adult sees it: how it stands, when it comes again, what it leads to, and its history."""

import datetime as dt
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from warmup import skills
from warmup.engine.eligibility import rests
from warmup.engine.memory import Knowledge
from warmup.english import WEEKDAYS, date_words
from warmup.journal.routine_json import words_in
from warmup.model import Asked, ItemId, LevelId, Mark, item_id, skill_and_key
from warmup.session.context import Context
from warmup.session.known import Known, KnownLevel, Slip, Stand
from warmup.session.practiced import Practiced, practiced
from warmup.session.settling import SETTLED_MEANS, asked, counted, known_today, level_of
from warmup.session.story import morning_at
from warmup.skills.base import Level
from warmup.text import clean

MOST = 30
"""So many of its questions are told; those before them are counted."""
ROUNDS = 5
"""So many practice rounds are told."""
EARLIER = "Asked in an earlier school year, and not yet in this one."
NOT_MET = "Not met yet: no warm-up has asked it."
ANY_MORNING = "It may come any morning, when there is room."
AFTER_THE_YEAR = "It comes after this year’s last morning."
AGAIN_AFTER_THE_YEAR = "It comes again after this year’s last morning."
ANY_MORNING_AGAIN = "It may come again any morning, when there is room."


@dataclass(frozen=True)
class Told:
    """One question of a level: when it was asked, its words or at least its item's, its mark as it counts.

    ``besides`` is what else there is to say of how it went: "with cue 2, from memory".
    """

    on: dt.date
    say: str
    mark: Mark | None
    besides: str


@dataclass(frozen=True)
class LevelStory:
    """All that is told of a level.

    ``codes`` are those of the standards that it exercises, ``toward`` those it only leads to. ``history`` has
    its last questions, the latest first, and ``before`` counts those before them. ``rounds`` are its last
    practice rounds, the latest first.
    """

    level: KnownLevel
    stands: str
    next: str
    codes: tuple[str, ...]
    toward: tuple[str, ...]
    slips: tuple[Slip, ...]
    history: tuple[Told, ...]
    before: int
    rounds: tuple[Practiced, ...] = ()


def level_story(context: Context, found: Known, name: LevelId) -> LevelStory:
    """The story of one of the levels that ``found`` has. StopIteration for another."""
    at = next(level for level in found.levels if level.id == name)
    history = asked(context.history(context.today + dt.timedelta(1)))
    lines = [line for line in history if level_of(line) == name]
    level = skills.plain(name).level
    return LevelStory(
        level=at,
        stands=_stands(at),
        next=_next(context, at, level, known_today(context)),
        codes=level.codes,
        toward=level.toward,
        slips=tuple(slip for slip in found.slips if slip.level == name),
        history=tuple(_told(context, lines[-MOST:])),
        before=max(0, len(lines) - MOST),
        rounds=practiced(context, name)[: -ROUNDS - 1 : -1],
    )


# -- how it stands, and when it comes


def _stands(at: KnownLevel) -> str:
    """How it stands, in a sentence or two: exactly what is counted, and no more."""
    if at.stand is Stand.NOT_MET:
        return NOT_MET
    if at.first is None:
        return EARLIER
    first = date_words(at.first, weekday=False, year=True)
    since = f"Asked {number_words(at.times)} this school year, first on {first}."
    match at.stand:
        case Stand.SETTLED if at.settled:
            return (
                f"Settled since {date_words(at.settled, weekday=False, year=True)}. {SETTLED_MEANS} {since}"
            )
        case Stand.REVISIT:
            return f"Worth revisiting: {at.why}. {since}"
        case _:
            return f"Growing. {since}"


def number_words(times: int) -> str:
    """How often: "once", "12 times"."""
    return "once" if times == 1 else f"{times} times"


def _next(context: Context, at: KnownLevel, level: Level, known: Knowledge) -> str:
    """When it comes, or comes again, by the day: a place in the queue, and no promise."""
    if at.id in context.child.held:
        return "It is held back as not taught yet."
    week = context.plan.weeks.get(at.id)
    if week is None:
        return "It is not in this year’s plan."
    skill, _ = skill_and_key(at.id)
    items = [item_id(skill, name) for name in level.items]
    if at.stand is Stand.NOT_MET:
        return _opens(context, week, items)
    return _again(context, items, known)


def _opens(context: Context, week: int, items: Sequence[ItemId]) -> str:
    """When a level comes that was never asked."""
    morning = context.morning()
    if {item.id for item in context.eligible(morning).items}.intersection(items):
        return ANY_MORNING
    if week <= morning.week:
        return "It comes as soon as what it stands on allows, or a day that asks for it."
    day = morning_at(context, context.year.begins(week))
    return f"It opens about {_day(context, day)}, in week {week}." if day else AFTER_THE_YEAR


def _again(context: Context, items: Sequence[ItemId], known: Knowledge) -> str:
    """When the first of its items has rested."""
    taught = dict(context.child.taught)
    met = [item for item in items if known.of(item).shown]
    awake = [known.of(item) for item in met if not rests(known.of(item), taught.get(item))]
    if not awake:
        return "It rests until you say that it was taught again."
    due = [record.last + round(record.interval) for record in awake if record.last is not None]
    day = morning_at(context, min(due)) if due else context.today
    if day is None:
        return AGAIN_AFTER_THE_YEAR
    return ANY_MORNING_AGAIN if day <= context.today else f"It comes again about {_day(context, day)}."


def _day(context: Context, day: dt.date) -> str:
    """A day to come: within a week by its name alone."""
    return WEEKDAYS[day.weekday()] if 0 < (day - context.today).days < 7 else date_words(day)


# -- what was asked


def _told(context: Context, lines: Sequence[Asked]) -> Iterator[Told]:
    """These questions, the latest first, each with its words as they were said where they can be read."""
    said = _words(context, {line.date for line in lines})
    for line in reversed(lines):
        words = said[line.date, line.item]
        say = clean(words.pop()) if words else skills.locate(line.item).words()
        yield Told(line.date, say, counted(line), besides(line))


def _words(context: Context, dates: Iterable[dt.date]) -> dict[tuple[dt.date, ItemId], list[str]]:
    """What was said for each item on these dates, in order of time."""
    found = defaultdict[tuple[dt.date, ItemId], list[str]](list)
    for date in dates if context.journal else ():
        assert context.journal is not None
        for row in context.journal.sessions_of(context.child.journal_name, date):
            for words in words_in(row.routine):
                if words is not None:
                    found[date, ItemId(words.item)].append(words.say)
    return found


def besides(line: Asked) -> str:
    """What there is to say of how it went besides the mark: "with cue 2, from memory"."""
    cue = [f"with cue {line.cue}"] if line.cue else []
    memory = ["from memory"] if line.from_memory else []
    rough = ["on a rough day"] if line.rough else []
    return ", ".join([*cue, *memory, *rough])


def earlier_words(story: LevelStory) -> str:
    """How often it was asked before the questions that are told."""
    return f"Before that it was asked {number_words(story.before)}."
