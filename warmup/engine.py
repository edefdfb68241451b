"""Builds the morning's routine, in two steps.

:func:`choose` knows only items: it picks them by what memory says, for a reason each, and orders them.
:func:`build` asks the skills for the prompts. So the choosing can be measured on any set of items.

A prompt is *hard* when its item was never asked, its last mark was hesitated or not yet, or its
estimated chance is under 0.75. It is *sure* when its last two marks were fluent and its chance is at
least 0.9. An *idea* is the first prompt of a level. These limits are never broken: no skill twice
running, no two hard prompts running, the first prompt not hard, at most two prompts of a skill, three
first-time prompts and two ideas. In a family's first two weeks everything is new, so the limits on
hard and first-time prompts give way then; those on skills do not. They give way as well while fewer
than half of a morning's prompts could be anything but hard: for a family that marks nothing, all stays
new.
"""

from collections.abc import Collection, Iterable, Sequence

from warmup import skills
from warmup.draw import Draw
from warmup.memory import Knowledge, Record
from warmup.morning import Choice, Item, Mark, Morning, Routine, Shape, SlotKind
from warmup.picking import Pick, Picking, Table
from warmup.words import MONTHS, WEEKDAYS

SETTLING_WEEKS = 2


def open_items(
    items: Iterable[Item],
    morning: Morning,
    knowledge: Knowledge,
    held: Collection[str] = (),
    opened: Collection[str] = (),
) -> tuple[Item, ...]:
    """The items that may be asked on this morning.

    A level (``skill:key``) opens when its week has come, the adult does not hold it, and nothing it
    stands on is *not yet*; once asked it stays open. ``opened`` levels come early.
    """
    items = tuple(items)
    shaky = {
        item.level_id for item in items if not item.trouble and knowledge.of(item.id).mark is Mark.NOT_YET
    }
    begun = {item.level_id for item in items if knowledge.of(item.id).marks}
    return tuple(
        item
        for item in items
        if item.level_id not in held
        and (item.week <= morning.week or item.level_id in opened)
        and (item.level_id in begun or not shaky.intersection(item.stands_on))
    )


def choose(
    items: Sequence[Item],
    shape: Shape,
    knowledge: Knowledge,
    morning: Morning,
    *,
    child: str,
    settling: bool = False,
    count: int | None = None,
) -> tuple[Choice, ...]:
    """The items of one morning in their order, each with its reason.

    ``items`` are those open on this morning, in any order; ``count`` overrides the shape's number of
    prompts; ``settling`` says that the family is in its first two weeks. The same arguments give the
    same answer on any machine.
    """
    table = Table(items, knowledge, morning, child)
    count = count or shape.count(morning.week)
    settling = settling or table.easy() < count / 2
    picks = Picking(table, shape, morning, settling, count)
    picks.fill()
    order = picks.ordered()
    return tuple(Choice(p.candidate.item, reason(p, morning), p.slot, p.hard) for p in order)


def reason(pick: Pick, morning: Morning) -> str:
    """Why this one today, looking back, in one sentence for the adult."""
    record = pick.candidate.record
    if pick.slot is SlotKind.SURE:
        return "a sure one to finish"
    if pick.candidate.new:
        return "new this week" if pick.candidate.item.week == morning.week else "not asked before"
    assert record.marked_on is not None and record.last is not None
    when = _when(record, morning)
    rested = morning.index - record.last
    after = f"back after {rested} mornings" if rested != 1 else "back the next morning"
    match record.mark:
        case Mark.HESITATED:
            return f"hesitated {when}; {after}"
        case Mark.NOT_YET:
            return f"not yet {when}; {after}"
        case _:
            return f"came easily {when}" if rested < 4 else f"resting since {when}"


def _when(record: Record, morning: Morning) -> str:
    day = record.marked_on
    assert day is not None
    if (morning.date - day).days < 7:
        return WEEKDAYS[day.weekday()]
    return f"{day.day} {MONTHS[day.month - 1]}"


def build(
    choices: Sequence[Choice],
    morning: Morning,
    knowledge: Knowledge,
    *,
    child: str,
    shape: str,
    sitting: int = 1,
) -> Routine:
    """The routine of these choices: each item asked for its prompt, in other words than last time."""
    prompts = tuple(
        skills.prompt(
            choice.item.id,
            morning,
            Draw(
                child,
                morning.date.isoformat(),
                sitting,
                choice.item.id,
                avoid=knowledge.of(choice.item.id).wording,
            ),
            choice.why,
        )
        for choice in choices
    )
    return Routine(child, morning, shape, prompts)
