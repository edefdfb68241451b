"""Small worlds for the engine's tests: made-up items, mornings four a week, and what a child knows of them.

A ``past`` is written backward: (how many mornings ago, mark). :func:`chance` and :func:`is_hard` work the
memory rule out again from the marks, by code of their own.
"""

import datetime as dt
from collections.abc import Collection, Iterable, Mapping, Sequence
from typing import Any

from warmup.engine.curriculum import Curriculum, curriculum
from warmup.engine.memory import Knowledge, fold
from warmup.engine.picking import Today
from warmup.engine.pool import Pool
from warmup.model import (
    Asked,
    DayKind,
    Item,
    ItemId,
    Mark,
    Morning,
    Shape,
    Slot,
    SlotKind,
    item_id,
    level_id,
)
from warmup.schoolyear import SchoolYear

FIRST = dt.date(2026, 8, 31)
REVIEWS = (5, 10, 15, 20, 25)
F, H, N, S = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED
BESIDE_SECONDS, AROUND_SECONDS = 12, 50
"""What a prompt takes beside its own seconds, and a morning around its prompts."""
Past = Sequence[tuple[int, Mark | None]]


def day(index: int) -> dt.date:
    """The date of a morning: Monday to Thursday from the first on."""
    return FIRST + dt.timedelta(index // 4 * 7 + index % 4)


YEAR = SchoolYear((0, 1, 2, 3), tuple(map(day, range(144))))
DAILY = Shape(
    "daily",
    (
        Slot(SlotKind.CALENDAR, 1),
        Slot(SlotKind.WOBBLED, 2),
        Slot(SlotKind.NEWEST, 3),
        Slot(SlotKind.ADDING, 1),
        Slot(SlotKind.OLDER, 10),
        Slot(SlotKind.SURE, 1),
    ),
    ((36, 8),),
    480,
)
REVIEW = DAILY._replace(
    name="review",
    slots=(*DAILY.slots[:2], Slot(SlotKind.NEWEST, 1), Slot(SlotKind.CHECK, 10), *DAILY.slots[3:]),
)


def morning(index: int, *, ahead: int | None = 1) -> Morning:
    """One of four mornings a week; the next is so many days ahead, or there is none."""
    week = index // 4 + 1
    after = None if ahead is None else day(index) + dt.timedelta(ahead)
    quarter = (week - 1) // 9 + 1
    return Morning(
        day(index),
        DayKind.SCHOOL,
        index + 1,
        week,
        quarter,
        week in REVIEWS,
        index,
        previous=None,
        next=after,
    )


def made(name: str, strand: str = "number", week: int = 1, level: int = 1, **more: Any) -> Item:
    """The item ``skill/name`` of a level of this number."""
    skill, _, own = name.partition("/")
    return Item(item_id(skill, own), skill, level, level_id(skill, str(level)), strand, week, **more)


def plan_of(items: Iterable[Item], began: int = 0) -> Curriculum:
    """The curriculum of the items, for a family that began on the morning with this index."""
    return curriculum(items, YEAR, day(began), REVIEWS)


def known(plan: Curriculum, pasts: Mapping[Item, Past], index: int) -> Knowledge:
    """What these pasts teach by the morning with this index."""
    lines = [(index - ago, item.id, mark) for item, past in pasts.items() for ago, mark in past]
    lines.sort(key=lambda line: line[0])
    return fold(plan, [Asked(day(at), item, mark) for at, item, mark in lines])


def today_of(
    pasts: Mapping[Item, Past],
    index: int = 72,
    *,
    slots: Sequence[Slot] = DAILY.slots,
    count: int = 8,
    seconds: int = 480,
    gentle: bool = True,
    timely: Collection[ItemId] = (),
    holding: Collection[ItemId] = (),
) -> Today:
    """A morning of these items on which nothing is picked yet."""
    plan = plan_of(pasts)
    pool = Pool(tuple(pasts), known(plan, pasts, index), morning(index), plan, "Bean", timely, holding)
    return Today(pool, Shape("own", tuple(slots), ((36, count),), seconds), count, gentle=gentle)


# -- the memory rule again


def chance(lines: Iterable[tuple[int, Mark, float]], opened: int, index: int) -> float:
    """The chance by (morning, mark, guess), oldest first, of plain marks."""
    interval, last = 4.0, opened - 1
    for at, mark, guess in lines:
        rested, last = max(0, at - last), at
        if mark is F:
            most = interval + 2 * rested if rested <= interval else 3 * min(rested, 2 * interval)
            interval = min(72.0, interval + (most - interval) * (1 - guess))
        elif mark is N:
            interval = max(1.0, interval / 2)
    return float(0.85 ** (max(0, index - last) / interval))


Line = tuple[int, Item, Mark]
"""A mark that counts: the index of its morning, the item, how it went."""


def is_hard(item: Item, past: Sequence[Line], index: int, since: int = 1) -> bool:
    """Whether an item is hard, by all marks so far in order of time."""
    opened = (max(item.week, since) - 1) * 4
    of_level = [(at, mark, other.guess) for at, other, mark in past if other.level_id == item.level_id]
    mine = [(at, mark, item.guess) for at, other, mark in past if other == item]
    likely = chance(of_level, opened, index)
    if not mine:
        return round(likely, 6) < 0.75 or not of_level or of_level[-1][1] is not F
    likely = 0.6 * chance(mine, opened, index) + 0.4 * likely
    return mine[-1][1] is N or round(likely, 6) < 0.75
