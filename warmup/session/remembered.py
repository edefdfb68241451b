"""What a child knew when today began, kept beside the journal: years of marks are folded once.

It holds as long as the journal's past does, and what folding goes by: the items of the plan, the weeks they
open in, and which morning each date is. A test holds it equal to the fold from nothing.
"""

import datetime as dt
import json
from typing import TYPE_CHECKING, Any

from warmup.engine.curriculum import Curriculum
from warmup.engine.memory import Day, Knowledge, Record
from warmup.journal import remembered
from warmup.model import ItemId, LevelId, Mark
from warmup.randomness import digest

if TYPE_CHECKING:
    from warmup.session.context import Context

FORMAT = 2
"""Of the file; another one whenever folding itself changes."""
_MARKS = {mark.value: mark for mark in Mark}


def recall(context: "Context") -> tuple[Knowledge, dt.date] | None:
    """What the child knew when a day began, and that day, today or before; None where nothing kept holds."""
    journal = context.journal
    if journal is None or not journal.as_left:
        return None
    kept = remembered.recall(journal.folder, context.child.journal_name)
    if kept is None:
        return None
    day, text = kept
    try:
        said, key, *rest = json.loads(text)
        if said != FORMAT or key != key_of(context.curriculum()) or day > context.today:
            return None
        if journal.past_of(context.child.journal_name, day) != 0:
            return None
        return _knowledge(*rest), day
    except (ValueError, TypeError, KeyError, IndexError, RecursionError):
        return None


def keep(context: "Context") -> None:
    """Keep what the child knew when today began, where it was asked for and nothing of it changed since."""
    journal, known = context.journal, context.known_before_today
    if journal is None or known is None:
        return
    plain = [FORMAT, key_of(context.curriculum()), *_plain(known)]
    text = json.dumps(plain, ensure_ascii=False, separators=(",", ":"))

    def put() -> None:
        if context.known_before_today is known:
            remembered.keep(journal.folder, context.child.journal_name, context.today, text)

    # Another program that writes meanwhile would take away what is kept before it is there.
    journal.undisturbed(put)


def key_of(curriculum: Curriculum) -> int:
    """A number that is another one where anything differs that folding goes by."""
    year = curriculum.year
    mornings = (day.toordinal() for day in year.mornings)
    items = ((i.id, i.level_id, i.guess, curriculum.opened(i)) for i in curriculum.by_id.values())
    return digest(year.weekdays, year.before, *mornings, *items)


def _plain(known: Knowledge) -> list[Any]:
    """The records by id, then the mornings with their items by number and whether each came easily."""
    number = {item: n for n, item in enumerate(known.items)}
    days = [
        [day.index, day.date.isoformat(), [number[i] * 3 + _EASY.index(easy) for i, easy in day.asked]]
        for day in known.days
    ]
    return [_records(known.items), _records(known.levels), days]


_EASY = (None, False, True)


def _records(records: Any) -> dict[str, list[Any]]:
    return {
        name: [
            r.interval, r.last, r.mark and r.mark.value, r.marked_on and r.marked_on.isoformat(), r.run,
            r.misses, r.marks, r.shown, r.shown_on and r.shown_on.isoformat(), r.wording,
        ]
        for name, r in records.items()
    }  # fmt: skip


def _knowledge(items: dict[str, list[Any]], levels: dict[str, list[Any]], days: list[Any]) -> Knowledge:
    date = dt.date.fromisoformat
    names = [ItemId(name) for name in items]
    pairs = [(name, easy) for name in names for easy in _EASY]
    return Knowledge(
        {ItemId(name): _record(values) for name, values in items.items()},
        {LevelId(name): _record(values) for name, values in levels.items()},
        tuple(Day(index, tuple([pairs[n] for n in asked]), date(day)) for index, day, asked in days),
    )


def _record(values: list[Any]) -> Record:
    interval, last, mark, marked_on, run, misses, marks, shown, shown_on, wording = values
    date = dt.date.fromisoformat
    return Record(
        interval, last, mark and _MARKS[mark], marked_on and date(marked_on), run, misses, marks, shown,
        shown_on and date(shown_on), wording,
    )  # fmt: skip
