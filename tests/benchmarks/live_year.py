"""A whole year of the program's own mornings, for whoever wants to answer them. Nothing is printed.

:func:`live` asks for every morning's marks and goes on with them, through what the app itself uses: its
counts of prompts, its review weeks, what stands on what, its memory. :func:`items` lists what can be asked.
"""

import datetime as dt
import tempfile
from collections import Counter
from collections.abc import Callable, Sequence
from itertools import pairwise
from pathlib import Path
from typing import Any

from warmup import skills
from warmup.config.family import Child, Family
from warmup.config.places import Places
from warmup.config.plan import load_plan
from warmup.engine.memory import Knowledge, fold
from warmup.model import Asked, Item, Mark, Routine
from warmup.session.context import open_context

MORNINGS, A_WEEK = 144, 4
FIRST = dt.date(2026, 8, 31)
Row = dict[str, Any]
Respond = Callable[[dt.date, list[Row]], Sequence[str | None] | None]


def live(
    respond: Respond,
    *,
    child: str = "child",
    days: Sequence[dt.date] | None = None,
    prompts: int | None = None,
) -> None:
    """Live the program's whole year.

    ``days`` are the planned mornings in their order; by default four weekdays a week from a Monday on.
    ``prompts`` replaces the program's own numbers of prompts. For each morning ``respond(date, rows)`` gets
    what is asked, in its order, and gives a mark for each row ("fluent", "hesitated", "not_yet", "skipped",
    or None: unmarked), or None where the morning was not held. What was not yet three times running is taught
    again before the next morning. ValueError for too few marks or an unknown one.
    """
    days = _planned() if days is None else days
    with tempfile.TemporaryDirectory() as folder:
        places = Places(Path(folder), Path(folder))
        context = open_context(places, _family(days, child, prompts), days[0], None, saved=False)
        by_id, known = context.curriculum().by_id, Knowledge()
        for date in days:
            context.turn_to(date)
            context.know(known)
            for item in context.to_teach():
                context.editor.taught(item, date)
            context.know(known)
            routine = context.routine()
            answer = respond(date, [_row(by_id[p.item], p.why, p.seconds, p.guess) for p in routine.prompts])
            if answer is not None:
                known = fold(context.curriculum(), _asked(routine, answer), known)


def _asked(routine: Routine, answer: Sequence[str | None]) -> list[Asked]:
    """The lines of history of a routine and its marks."""
    return [
        Asked(routine.morning.date, prompt.item, Mark(mark) if mark else None, wording=prompt.wording)
        for prompt, mark in zip(routine.prompts, answer, strict=True)
    ]


def items() -> list[Row]:
    """Every item of the year, the lowest level of a skill first."""
    nowhere = Path(__file__).parent / "no family lives here"
    return [
        {
            "id": item.id,
            "level": item.level,
            "level_id": item.level_id,
            "skill": item.skill,
            "strand": item.strand,
            "week": item.week,
            "stands_on": list(item.stands_on),
            "trouble": item.misconception,
            "guess": item.guess,
            "codes": list(item.codes),
        }
        for item in skills.items(load_plan(Places(nowhere, nowhere)))
    ]


def _planned() -> list[dt.date]:
    return [FIRST + dt.timedelta(weeks=n // A_WEEK, days=n % A_WEEK) for n in range(MORNINGS)]


def _family(days: Sequence[dt.date], child: str, prompts: int | None) -> Family:
    """A family whose planned mornings are these days: as many school weekdays as the usual week has."""
    usual = Counter(day.weekday() for day in days).most_common(A_WEEK)
    weekdays = tuple(sorted(weekday for weekday, _ in usual))
    off = [
        (one + dt.timedelta(1), other - dt.timedelta(1))
        for one, other in pairwise(days)
        if (other - one).days > 1
    ]
    return Family(
        first_day=days[0],
        began=days[0],
        children=(Child(child),),
        weekdays=weekdays,
        off=tuple(off),
        extra=tuple(day for day in days if day.weekday() not in weekdays),
        prompts=prompts,
    )


def _row(item: Item, why: str, seconds: int, guess: float) -> Row:
    return {
        "item": item.id,
        "level": item.level,
        "level_id": item.level_id,
        "skill": item.skill,
        "strand": item.strand,
        "codes": list(item.codes),
        "week": item.week,
        "seconds": seconds,
        "guess": guess,
        "why": why,
    }
