"""An invented family with weeks of history, in a temporary place: for looking round, touching nothing.

The real date becomes a school day of week 31: the school weekdays are four that include today, and the
first day lies thirty weeks back. Its own routine file asks for five kinds of prompt by name, so that a
first look shows what there is.
"""

import datetime as dt
from pathlib import Path

from warmup.config import family as families
from warmup.config.family import Child, CountdownRule, Family
from warmup.config.places import Places
from warmup.config.writing import write_toml
from warmup.engine.memory import Knowledge, fold
from warmup.journal.journal import Journal, MarkRow
from warmup.journal.routine_json import routine_text
from warmup.model import Asked, ItemId, Mark, Morning
from warmup.randomness import SeededRandom
from warmup.session.context import Context, open_context

WEEK = 31
WEEKS_OF_HISTORY = 6
NICKNAME = "Pip"
_NAMED = ("date", "weekday:around", "count-on", "coin-totals", "make-ten")


def demo_family(today: dt.date) -> Family:
    """An invented family for whom ``today`` is a school day of week 31."""
    # Four weekdays in a row that include today, beginning on Monday where that will do.
    start = max(0, today.weekday() - 3)
    monday = today - dt.timedelta(today.weekday())
    return Family(
        first_day=monday - dt.timedelta(weeks=WEEK - 1) + dt.timedelta(start),
        began=monday - dt.timedelta(weeks=WEEKS_OF_HISTORY),
        children=(Child(NICKNAME, reads=False),),
        weekdays=tuple(range(start, start + 4)),
        known_until=today - dt.timedelta(1),
        countdowns=(CountdownRule("the kite day", today + dt.timedelta(5)),),
    )


def set_up(places: Places, today: dt.date) -> None:
    """Write the family, its own routine file and its weeks of history into an empty place."""
    family = demo_family(today)
    places.config.mkdir(parents=True, exist_ok=True)
    families.save(places.config / "family.toml", family)
    write_toml(places.config / "daily.toml", _daily())
    write_toml(places.config / "review.toml", _daily())
    write_history(open_context(places, family, today, None), places, family.began)


def write_history(context: Context, places: Places, first: dt.date) -> None:
    """Live through every morning from ``first`` up to yesterday, and keep it in the journal."""
    moment = [dt.datetime.combine(first, dt.time(8))]
    journal = Journal.open(places.data, lambda: moment[0])
    curriculum = context.curriculum()
    known = Knowledge()
    for date in context.year.between(first, context.today):
        moment[0] = dt.datetime.combine(date, dt.time(8, 5))
        context.know(known)
        known = fold(curriculum, _one_morning(context, journal, context.morning(date), moment[0]), known)
    journal.shut()


def _daily() -> dict[str, object]:
    slots = [
        {"kind": "calendar", "most": 3},
        *({"kind": "named", "most": 1, "only": [name]} for name in _NAMED),
        {"kind": "wobbled", "most": 1},
        {"kind": "newest", "most": 2},
        {"kind": "adding", "most": 1},
        {"kind": "older", "most": 9},
        {"kind": "sure", "most": 1},
    ]
    return {"format": 1, "seconds": 480, "prompts": 8, "slot": slots}


def _one_morning(context: Context, journal: Journal, morning: Morning, now: dt.datetime) -> list[Asked]:
    """One morning of the past: the real engine chooses, an invented child answers."""
    routine = context.routine(morning)
    marks = [_answer(prompt.item, morning, context) for prompt in routine.prompts]
    rows = [(prompt.item, prompt.wording) for prompt in routine.prompts]
    kept = [MarkRow(mark=mark, cue=0, adult="", from_memory=False, at=now.isoformat()) for mark in marks]
    journal.start(context.child.journal_name, morning.date, routine.shape, routine_text(routine), rows, kept)
    return [
        Asked(morning.date, prompt.item, mark, wording=prompt.wording)
        for prompt, mark in zip(routine.prompts, marks, strict=True)
    ]


def _answer(item: ItemId, morning: Morning, context: Context) -> Mark:
    """An invented child: mostly fluent, surer of what was asked before."""
    record = context.knowledge().of(item)
    luck = SeededRandom("demo", item, morning.date.isoformat()).below(100)
    easy = 70 + 8 * min(3, record.run)
    if luck < easy:
        return Mark.FLUENT
    return Mark.HESITATED if luck < easy + (100 - easy) * 2 // 3 else Mark.NOT_YET


def temporary(folder: Path) -> Places:
    """Places inside a folder that is thrown away afterward."""
    return Places(folder, folder)
