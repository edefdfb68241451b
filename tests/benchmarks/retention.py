"""How well the engine chooses, on children made of numbers.

``plan(request)`` answers one morning of a simulated year with the real ``engine.choose``: a request is
a dict with ``child``, ``date``, ``day_index``, ``n``, ``unlocked`` (item ids), ``history`` (date, id,
mark) and ``calendar`` (the planned mornings).
"""

import datetime as dt
from typing import Any

from warmup.engine import choose
from warmup.memory import Knowledge, fold
from warmup.morning import Asked, DayKind, Item, Mark, Morning, Shape, Slot, SlotKind

MARKS = {
    "easy": Mark.FLUENT, "fluent": Mark.FLUENT, "hesitated": Mark.HESITATED,
    "notyet": Mark.NOT_YET, "not_yet": Mark.NOT_YET, "skipped": Mark.SKIPPED,
}  # fmt: skip
SHAPE = Shape(
    "daily",
    (
        Slot(SlotKind.CALENDAR, 2),
        Slot(SlotKind.COUNTING, 1),
        Slot(SlotKind.WOBBLED, 1),
        Slot(SlotKind.NEWEST, 2),
        Slot(SlotKind.OLDER, 9),
        Slot(SlotKind.SURE, 1),
    ),
    ((36, 8),),
)
_kept: dict[str, tuple[int, tuple[str, str, str] | None, Knowledge]] = {}
_items: dict[str, Item] = {}


def catalogue(rows: list[dict[str, Any]]) -> None:
    """Tell what the items are: dicts with id, skill, level, strand, week."""
    for r in rows:
        _items[r["id"]] = Item(
            r["id"],
            r["skill"],
            int(r.get("level", 1)),
            f"{r['skill']}:{r.get('level', 1)}",
            r.get("strand", ""),
            int(r["week"]),
            seconds=int(r.get("seconds", 40)),
        )


def plan(request: dict[str, Any]) -> list[str]:
    """The item ids of this morning, in order."""
    calendar = [dt.date.fromisoformat(d) for d in request["calendar"]]
    index = {day: n for n, day in enumerate(calendar)}
    day, now = dt.date.fromisoformat(request["date"]), request["day_index"]
    items = [_items[i] for i in request["unlocked"]]
    opened = {i: 4 * (item.week - 1) for i, item in _items.items()}
    count, last, known = _kept.get(request["child"], (0, None, Knowledge()))
    history = [tuple(row) for row in request["history"]]
    if count > len(history) or (count and history[count - 1] != last):
        count, known = 0, Knowledge()
    new = [Asked(dt.date.fromisoformat(d), i, MARKS[m]) for d, i, m in history[count:]]
    known = fold(new, index.__getitem__, opened, {}, known)
    _kept[request["child"]] = (len(history), history[-1] if history else None, known)
    week = now // 4 + 1
    morning = Morning(
        day,
        DayKind.SCHOOL,
        now + 1,
        week,
        (week - 1) // 9 + 1,
        week % 5 == 0,
        now,
        next=calendar[now + 1] if now + 1 < len(calendar) else None,
    )
    chosen = choose(
        items, SHAPE, known, morning, child=request["child"], settling=week <= 2, count=request["n"]
    )
    return [c.item.id for c in chosen]
