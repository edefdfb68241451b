"""What the close of a morning says: what went well, what comes back or is taught again, what to lay out."""

import datetime as dt
from collections.abc import Sequence
from typing import NamedTuple

from warmup import skills
from warmup.engine.memory import Knowledge
from warmup.english import WEEKDAYS, date_words, number_word
from warmup.model import WOBBLES, ItemId, LevelId, Mark, Morning, Prompt
from warmup.session.context import Context
from warmup.session.pausing import paused, until_words, week_of_history, wobbling
from warmup.session.session import Session
from warmup.session.stored import stored
from warmup.session.story import not_yet_running
from warmup.session.things import gather

MANY_WOBBLED = "More than a third wobbled."


class Row(NamedTuple):
    """A prompt that was shown: its place, its mark, its words, and what comes of it ("soon")."""

    at: int
    mark: Mark | None
    say: str
    note: str = ""


class Closing(NamedTuple):
    """The close's lines, each empty when there is nothing to say. No score.

    ``rows`` are the prompts that were shown. ``well`` says what went well, of the prompt at ``well_at``; -1
    where it is of the morning as a whole. ``table`` is what the next morning wants, ``handy`` what its
    pictures can stand in for, ``next_day`` when that is. ``again`` names what today's marks put to rest
    until it is taught again, ``models`` what to do for it at the table, a line an item. ``pause`` offers a
    week with nothing new, or says until when there is none. ``review`` says in a review week whether it is
    over, ``quarter`` which quarter is done with this morning, ``year`` on the year's last what became of it.
    ``game`` names a two-minute game for what wobbled today.
    """

    rows: tuple[Row, ...]
    well: str
    well_at: int
    next_day: str
    table: str
    handy: str = ""
    again: str = ""
    models: tuple[str, ...] = ()
    pause: str = ""
    review: str = ""
    quarter: str = ""
    year: str = ""
    game: str = ""


def closing(session: Session, before: Knowledge, *, guest: bool = False) -> Closing:
    """The close of a session; ``before`` is what was known when the morning began.

    What the family's own adult is to do or to decide is not said to a ``guest``.
    """
    from warmup.session.gaming import for_that
    from warmup.session.year_end import year_end

    session.context.forget()
    resting = _resting(session)
    whole = Closing(
        _rows(session, resting),
        *_well(session, before),
        *_table(session.context),
        _again(resting, session.context),
        tuple(_model(prompt, alone=len(resting) == 1) for prompt in resting),
        _pause(session.context),
        _review(session.context),
        _quarter(session.morning, session.context),
        year_end(session.context, session.morning),
        for_that(session.context),
    )
    return whole._replace(again="", models=(), pause="", review="", game="") if guest else whole


def item_label(prompt: Prompt) -> str:
    """What a prompt asked, in a few words for the adult: "count on, within ten"."""
    return level_label(skills.locate(prompt.item).level_id)


def level_label(level: LevelId) -> str:
    """A level in the same words. KeyError for one that no skill has."""
    return skills.plain(level).words()


def _well(session: Session, before: Knowledge) -> tuple[str, int]:
    """What is best worth saying, and of which prompt: what used to wobble, what was new, the furthest on."""
    easy = [(at, p) for at, p in enumerate(session.prompts) if _easy(session, at)]
    wobbled = [at for at, p in easy if before.of(p.item).mark in WOBBLES]
    new = [at for at, p in easy if not before.of(p.item).marks]
    if wobbled:
        return "Last time it took longer; today it came.", wobbled[0]
    if new:
        return "It was new, and it came easily.", new[0]
    if easy:
        return "It came easily.", max(easy, key=lambda each: skills.locate(each[1].item).number)[0]
    if session.furthest < 0:
        return "You sat down together.", -1
    return "You sat down together and talked math.", -1


def _easy(session: Session, at: int) -> bool:
    row = session.marks.get(at)
    return bool(row and row.mark is Mark.FLUENT and not row.cue)


def _rows(session: Session, resting: Sequence[Prompt]) -> tuple[Row, ...]:
    """The prompts that were shown. What comes back comes soon: no day is promised."""
    shown = enumerate(session.prompts[: session.furthest + 1])
    return tuple(Row(at, session.mark_at(at), p.say, _note(session, at, resting)) for at, p in shown)


def _note(session: Session, at: int, resting: Sequence[Prompt]) -> str:
    if session.prompts[at] in resting:
        return "teach again"
    match session.mark_at(at):
        case Mark.HESITATED | Mark.NOT_YET:
            return "soon"
        case Mark.SKIPPED:
            return "left"
        case _:
            return ""


def _resting(session: Session) -> list[Prompt]:
    """The prompts whose mark today was the not yet that puts their item to rest."""
    rest = set(session.context.to_teach())
    return [
        p for at, p in enumerate(session.prompts) if p.item in rest and session.mark_at(at) is Mark.NOT_YET
    ]


def _again(resting: Sequence[Prompt], context: Context) -> str:
    if not resting:
        return ""
    names = "; ".join(skills.locate(prompt.item).words() for prompt in resting)
    fewest = min(_not_yet_running(context, prompt.item) for prompt in resting)
    times = number_word(fewest).capitalize()
    they, say = ("it rests", "it was taught") if len(resting) == 1 else ("they rest", "they were taught")
    return f"{names}. {times} times not yet: {they} until you say {say}."


def _not_yet_running(context: Context, item: ItemId) -> int:
    return not_yet_running(context.history(item=item))


def _model(prompt: Prompt, *, alone: bool) -> str:
    skill = "" if alone else f"{skills.locate(prompt.item).skill.title}: "
    return f"{skill}{at_the_table(prompt)}"


def at_the_table(prompt: Prompt) -> str:
    """What to do at the table: the second cue, which brings in a model, and what it wants."""
    ready = f" Have ready: {prompt.table}." if prompt.table else ""
    return f"{prompt.cues[1].text}{ready}"


def _pause(context: Context) -> str:
    until = paused(context)
    if until and until > context.today:
        return until_words(until)
    return MANY_WOBBLED if wobbling(week_of_history(context), context.morning(), context.year) else ""


def _review(context: Context) -> str:
    morning = context.morning()
    if not morning.review:
        return ""
    after = morning.next
    goes_on = after is not None and context.morning(after).week == morning.week
    return "Review week." if goes_on else "Review week is over."


def _quarter(morning: Morning, context: Context) -> str:
    """What the close says on the last morning of a quarter; that of the year has words of its own."""
    after = morning.next
    if not morning.is_school or after is None or context.morning(after).quarter == morning.quarter:
        return ""
    return f"Quarter {number_word(morning.quarter)} is done: {number_word(morning.school_day)} school days."


def _table(context: Context) -> tuple[str, str, str]:
    """The next school morning and what it is likely to want."""
    after = context.morning().next
    return to_have_ready(context, after) if after else ("", "", "")


def to_have_ready(context: Context, day: dt.date) -> tuple[str, str, str]:
    """A morning, and what it wants: by its routine where that was begun, else by the one it would have."""
    begun = stored(context.journal, context.child.journal_name, day)
    routine = begun[-1][1] if begun else context.routine(context.morning(day))
    wanted, handy = (", ".join(things) for things in materials(routine.prompts))
    away = (day - context.today).days
    when = "today" if not away else WEEKDAYS[day.weekday()] if 0 < away < 7 else date_words(day)
    return when, wanted, handy


def materials(prompts: Sequence[Prompt]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What lies on the table for these prompts: what must, and what a picture can stand in for."""
    wanted, handy = gather({dt.date.min: prompts})
    return tuple(thing.name for thing in wanted), tuple(thing.name for thing in handy)
