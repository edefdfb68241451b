"""Counts what a report tells. A question counts as asked when it was on screen and not left that day."""

import datetime as dt
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence

from warmup import skills
from warmup.engine.memory import fold
from warmup.engine.review import CHECKS
from warmup.model import Asked, ItemId, LevelId, Mark, Prompt, Strand, is_own, item_id
from warmup.report.facts import Attendance, LevelMet, Material, Month, Note, Report, Reviewed, Shared, Topic
from warmup.session.context import Context
from warmup.session.settling import Review, asked, counted, level_of, reviewed, settled_on
from warmup.session.stored import stored
from warmup.text import clean, visible

_AMOUNT = re.compile(r"^(?:\d+|an?) | or the like$")
"""What differs from one question to the next: how many of a thing are wanted."""
_PATH = re.compile(r"(?:^|[\s\"'(“‘])(?:~|\.{1,2})?[\\/]\S|[A-Za-z]:[\\/]|\.(?:toml|db|json)\b")
"""What looks like the way to a file."""


def gather(context: Context, first: dt.date, last: dt.date, notes: Iterable[Shared] = ()) -> Report:
    """The report of the context's child, from ``first`` to ``last``, and no further than today.

    ``notes`` are those that were ticked as shared, of whatever dates. An empty report is one like any other.
    """
    last, mornings = min(last, context.today), context.year.mornings
    after = last + dt.timedelta(1)
    lines = [line for line in asked(context.history(after, first)) if not is_own(line.item)]
    prompts = _prompts(context, {line.date for line in lines})
    year = context.history(after, mornings[0]) if mornings else ()
    reviews = tuple(reviewed(context, fold(context.curriculum(), year), last))
    written = tuple(_written(first, last, notes))
    return Report(
        child=clean(context.child.nickname),
        first=first,
        last=last,
        made=context.today,
        attendance=_attendance(context, first, last, _seconds(lines, prompts)),
        topics=tuple(_topics(lines)),
        materials=tuple(_materials(context, lines, prompts)),
        levels=tuple(_levels(context, first, lines, settled_on(reviews))),
        reviews=tuple(told(review) for review in reviews if review.until >= first),
        notes=tuple(note for note in written if fit_to_leave(note.text, context)),
        left_out=sum(not fit_to_leave(note.text, context) for note in written),
    )


def fit_to_leave(text: str, context: Context) -> bool:
    """Whether a text that somebody wrote names neither another child nor a file."""
    others = (each.nickname for each in context.family.children if each.nickname != context.child.nickname)
    named = "|".join(re.escape(clean(name)) for name in others)
    return not _PATH.search(text) and not (named and re.search(rf"(?<!\w)(?:{named})(?!\w)", text, re.I))


# -- days and minutes


def _attendance(context: Context, first: dt.date, last: dt.date, seconds: Counter[dt.date]) -> Attendance:
    journal, until = context.journal, context.family.known_until
    dates = journal.dates_of(context.child.journal_name, first) if journal else set[dt.date]()
    held = tuple(sorted(day for day in dates if first <= day <= last))
    begin = max(first, context.began)
    planned = context.year.between(begin, last + dt.timedelta(1))
    confirmed = tuple(day for day in planned if day in dates or (until is not None and day <= until))
    # Nobody could have said anything of today yet.
    unsaid = tuple(day for day in planned if day not in confirmed and day < context.today)
    return Attendance(held, confirmed, unsaid, tuple(_months(held, confirmed, seconds)))


def _months(
    held: Sequence[dt.date], confirmed: Sequence[dt.date], seconds: Counter[dt.date]
) -> Iterator[Month]:
    for first in sorted({day.replace(day=1) for day in (*held, *confirmed, *seconds)}):
        yield Month(
            first,
            sum(day.replace(day=1) == first for day in confirmed),
            sum(day.replace(day=1) == first for day in held),
            sum(count for day, count in seconds.items() if day.replace(day=1) == first),
        )


def _prompts(context: Context, dates: Iterable[dt.date]) -> dict[tuple[dt.date, ItemId], Prompt]:
    """The prompts of these dates as they were asked, as far as the journal can tell."""
    return {
        (date, prompt.item): prompt
        for date in sorted(dates)
        for _, routine in stored(context.journal, context.child.journal_name, date)
        for prompt in routine.prompts
    }


def _seconds(lines: Iterable[Asked], prompts: dict[tuple[dt.date, ItemId], Prompt]) -> Counter[dt.date]:
    """How many seconds the questions of each date take at most."""
    found = Counter[dt.date]()
    for line in lines:
        prompt = prompts.get((line.date, line.item))
        at = skills.locate(line.item)
        found[line.date] += prompt.seconds if prompt else at.level.seconds_of(at.name)
    return found


# -- what was asked


def _topics(lines: Sequence[Asked]) -> Iterator[Topic]:
    questions = Counter(skills.locate(line.item).skill.id for line in lines)
    days = Counter(skill for skill, _ in {(skills.locate(each.item).skill.id, each.date) for each in lines})
    found = [skills.SKILLS[skill] for skill in skills.SKILLS if skill in questions]
    for skill in sorted(found, key=lambda each: list(Strand).index(each.strand)):
        yield Topic(skill.strand.value, skill.title, questions[skill.id], days[skill.id])


def _materials(
    context: Context, lines: Sequence[Asked], prompts: dict[tuple[dt.date, ItemId], Prompt]
) -> Iterator[Material]:
    """Things by how often they were wanted; what a damaged journal could have slipped in is left out."""
    wanted = set[tuple[str, dt.date]]()
    for line in lines:
        prompt = prompts.get((line.date, line.item))
        table = prompt.table if prompt else skills.locate(line.item).level.table
        wanted |= {(_AMOUNT.sub("", thing), line.date) for thing in clean(table).split(", ") if thing}
    days = Counter(name for name, _ in wanted)
    for name in sorted(days, key=lambda each: (-days[each], each)):
        if name and fit_to_leave(name, context):
            yield Material(name, days[name])


def _levels(
    context: Context,
    first: dt.date,
    lines: Sequence[Asked],
    settled: Mapping[LevelId, dt.date],
) -> Iterator[LevelMet]:
    """The levels that these ``lines`` ask, of days from ``first`` on, by older marks too."""
    journal, child = context.journal, context.child.journal_name
    questions = Counter(map(level_of, lines))
    places = {at.level_id: at for at in (skills.locate(line.item) for line in lines)}
    levels = {item_id(at.skill.id, name): level for level, at in places.items() for name in at.level.items}
    firsts = {level_of(line): line.date for line in reversed(lines)}
    came = {line.item: counted(line) is Mark.FLUENT for line in lines if line.mark is not None}
    if journal is not None:
        # Years may lie before: of those only the firsts and the lasts are read.
        firsts |= journal.first_shown(child, first, levels)
        came |= journal.came_easily(child, first, levels.keys() - came.keys())
    easy: dict[LevelId, list[bool]] = {}
    for item, easily in came.items():
        easy.setdefault(levels[item], []).append(easily)
    for level in skills.levels():
        if level in questions:
            at = places[level]
            yield LevelMet(
                id=level,
                words=f"{at.skill.title.lower()}, {at.level.label}",
                codes=at.level.codes,
                toward=at.level.toward,
                first=firsts[level],
                settled=settled.get(level),
                questions=questions[level],
                easy=all(easy[level]) if level in easy else None,
            )


# -- reviews


def told(review: Review) -> Reviewed:
    """A review as it stands in a report."""
    dates = tuple(check.date for check in review.checks[:CHECKS])
    return Reviewed(review.week, skills.SKILLS[review.skill].title, review.outcome, dates)


# -- notes


def _written(first: dt.date, last: dt.date, notes: Iterable[Shared]) -> Iterator[Note]:
    for note in sorted(notes, key=lambda each: each.date):
        if first <= note.date <= last and visible(clean(note.text)):
            yield Note(note.date, clean(note.text))
