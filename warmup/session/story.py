"""An item's whole story: when it was asked, how it went, how long it rests now and when it is due."""

import datetime as dt
from collections.abc import Iterator, Sequence
from itertools import takewhile

from warmup import skills
from warmup.engine.eligibility import rests
from warmup.engine.memory import Knowledge, Record, fold
from warmup.english import date_words, number_word, plural
from warmup.model import Asked, Mark
from warmup.session.context import Context
from warmup.session.practiced import Practiced, practiced
from warmup.session.undoing import mark_words


def story(context: Context, name: str) -> Iterator[str]:
    """The story of an item, a line at a time. KeyError for an item no skill has."""
    at = skills.locate(name)
    item, level = at.id, at.level_id
    week = context.plan.weeks.get(level)
    opens = f"opens in week {week}" if week else "is not in the year plan"
    if at.skill.private and not week:
        yield f"{at.skill.title}, {at.level.label}: {item}. It is none of your own prompts now."
        return
    yield f"{at.skill.title}, {at.level.label}: {item}. Its level {opens}."
    if level in context.child.held:
        yield "Its level is held back as not taught yet."
    rounds = practiced(context, level)
    history = context.history(item=item)
    if not history:
        yield "It was not asked yet."
        yield from map(_practiced, rounds)
        return
    known, curriculum = Knowledge(), context.curriculum()
    for line in history:
        before = known.of(item)
        known = fold(curriculum, (line,), known)
        yield f"{date_words(line.date, year=True)}: {_told(line, before, known.of(item))}."
    yield from map(_practiced, rounds)
    taught = dict(context.child.taught).get(item)
    if taught:
        yield f"It was taught again on {date_words(taught, year=True)}."
    if rests(known.of(item), taught):
        times = number_word(not_yet_running(history)).capitalize()
        yield f"{times} times not yet in a row: it rests until you say it was taught again (key l)."
        return
    yield _due(context, known.of(item))


def _practiced(round_: Practiced) -> str:
    """A practice round of its level: it changed nothing of what is told here."""
    return f"{date_words(round_.date, year=True)}, {round_.words()}."


def not_yet_running(history: Sequence[Asked]) -> int:
    """How many of an item's last marks are not yet, each whole; those of a rough day count not."""
    marked = [line for line in history if line.marked]
    running = takewhile(lambda line: line.mark is Mark.NOT_YET, reversed(marked))
    return sum(not line.rough for line in running)


def _told(line: Asked, before: Record, after: Record) -> str:
    words = mark_words(line.mark) if line.mark else "no mark"
    if line.cue:
        words += f" with cue {line.cue}"
    if line.from_memory:
        words += ", entered from memory"
    if line.rough:
        words += ", on a rough day"
    if after.interval != before.interval:
        return f"{words}; it rests {mornings(after.interval)} from here, {mornings(before.interval)} before"
    return words


def _due(context: Context, record: Record) -> str:
    """How long it rests, and when it would be due: a place in the queue, no promise."""
    rests = f"It rests {mornings(record.interval)} at a time"
    if record.last is None:
        return f"{rests}; it has no mark yet."
    day = morning_at(context, record.last + round(record.interval))
    if day is None:
        return f"{rests}; it is due after this year's last morning."
    if day <= context.today:
        return f"{rests}; it has been due since {date_words(day)} and comes when there is room."
    return f"{rests}; it is due about {date_words(day)}."


def mornings(interval: float) -> str:
    """An interval for people: "4 mornings"."""
    count = max(1, round(interval))
    return f"{count} {plural(count, 'morning')}"


def morning_at(context: Context, index: int) -> dt.date | None:
    """The date of the planned morning with this index; None past the year's end."""
    at = index - context.year.before
    return context.year.mornings[max(0, at)] if at < len(context.year.mornings) else None
