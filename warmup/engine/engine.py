"""Builds the morning's routine, in two steps.

:func:`choose` knows only items: it picks them by what memory says, for a reason each, and orders them.
:func:`build` asks the skills for the prompts. So the choosing can be measured on any set of items.

A prompt is *hard* when its item was never asked, its last mark was hesitated or not yet, or its
estimated chance is under 0.75. It is *sure* when its last two marks were fluent and its chance is at
least 0.9. An *idea* is the first prompt of a level. These limits are never broken: no skill twice
running, no two hard prompts running, the first prompt not hard, at most two prompts of a skill and one of
a calendar skill, three
first-time prompts and two ideas. In a family's first two weeks everything is new, so the limits on
hard and first-time prompts give way then; those on skills do not. They give way as well while fewer
than half of a morning's prompts could be anything but hard: for a family that marks nothing, all stays
new.
"""

import datetime as dt
from collections.abc import Collection, Iterable, Mapping, Sequence
from types import MappingProxyType

from warmup import skills
from warmup.engine import review
from warmup.engine.giveaways import meet
from warmup.engine.memory import RETEACH, Knowledge, Record
from warmup.engine.picking import Pick, Picking
from warmup.engine.pool import Pool
from warmup.english import WEEKDAYS, date_words
from warmup.model import Choice, Item, Mark, Morning, Prompt, Routine, Shape, SlotKind
from warmup.randomness import SeededRandom

SETTLING_WEEKS = 2
DRAWS = 12
"""How often a prompt is drawn until nothing it says answers another one of the morning."""
SAMPLES = 2
"""How many prompts tell whether a level from before the family began is known."""
SURE = "a sure one to finish"
"""Why the last prompt of a morning comes, in the adult's words."""
_NONE: Mapping[str, dt.date] = MappingProxyType({})


def open_items(
    items: Iterable[Item],
    morning: Morning,
    knowledge: Knowledge,
    held: Collection[str] = (),
    opened: Collection[str] = (),
    taught: Mapping[str, dt.date] = _NONE,
    paused: bool = False,
) -> tuple[Item, ...]:
    """The items that may be asked on this morning.

    A level (``skill:key``) opens when its week has come, the adult does not hold it, and nothing it
    stands on is *not yet*, by its last mark or by a review; once asked it stays open, also where a
    new plan gives it a later week. ``opened`` levels come early. An item that rests until it is
    taught again is not open; ``taught`` gives the dates on which that was done, by item. While
    ``paused`` no level opens of which nothing has a mark yet, unless nothing at all has one.
    """
    items = tuple(items)
    shaky = {
        item.level_id
        for item in items
        if not item.misconception and knowledge.of(item.id).mark is Mark.NOT_YET
    }
    begun = {item.level_id for item in items if knowledge.of(item.id).marks}
    # What stands on a skill that a review found shaky waits while the skill is a step down.
    again = review.step_down(knowledge)
    shaky |= {item.level_id for item in items if item.skill in again}
    return tuple(
        item
        for item in items
        if item.level_id not in held
        and (item.week <= morning.week or item.level_id in opened or item.level_id in begun)
        and (item.level_id in begun or not shaky.intersection(item.stands_on))
        and (item.level_id in begun or not (paused and begun))
        and not rests(knowledge.of(item.id), taught.get(item.id))
    )


def sampled(items: Sequence[Item], knowledge: Knowledge, since: int) -> tuple[Item, ...]:
    """The items without those that two samples have shown to be known.

    A level from before the week the family began (``since``) is unknown, not new: two prompts sample it.
    Two that come easily, and the rest of the level is taken as known; else all of it is open.
    """
    asked: dict[str, list[bool]] = {}
    first: dict[str, list[str]] = {}
    for item in items:
        if item.week < since:
            record = knowledge.of(item.id)
            first.setdefault(item.level_id, []).append(item.id)
            asked.setdefault(item.level_id, []).extend([record.run > 0] if record.marks else [])

    def wanted(item: Item) -> bool:
        if item.week >= since or knowledge.of(item.id).marks:
            return True
        went = asked[item.level_id]
        return item.id in first[item.level_id][:SAMPLES] if len(went) < SAMPLES else not all(went)

    return tuple(item for item in items if wanted(item))


def rests(record: Record, taught: dt.date | None) -> bool:
    """Whether an item waits to be taught again: ``RETEACH`` not yet running, and not taught since.

    ``taught`` is the last date on which it was. That of the last mark will do: a warm-up comes before
    the day's lesson. A further not yet on a later date puts the item to rest again.
    """
    if record.misses < RETEACH:
        return False
    return taught is None or record.marked_on is None or taught < record.marked_on


def choose(
    items: Sequence[Item],
    shape: Shape,
    knowledge: Knowledge,
    morning: Morning,
    *,
    child: str,
    settling: bool = False,
    count: int | None = None,
    since: int = 1,
    timely: Collection[str] = (),
) -> tuple[Choice, ...]:
    """The items of one morning in their order, each with its reason.

    ``items`` are those open on this morning, in any order; ``count`` overrides the shape's number of
    prompts; ``settling`` says that the family is in its first two weeks, ``since`` in which week of
    the year it began, and ``timely`` names the items the day itself asks for. The same arguments give
    the same answer on any machine.
    """
    pool = Pool(items, knowledge, morning, child, since, timely)
    count = count or shape.prompts_in(morning.week)
    settling = settling or pool.easy() < count / 2
    picks = Picking(pool, shape, morning, settling, count)
    picks.fill()
    picks.be_kind()
    order = picks.ordered()
    return tuple(Choice(p.candidate.item, reason(p, pool), p.slot, p.hard) for p in order)


def surest(items: Sequence[Item], knowledge: Knowledge, morning: Morning, *, child: str) -> Choice | None:
    """The one of ``items`` to end a morning with that stops early; None when none will do."""
    best = Pool(items, knowledge, morning, child).surest()
    return best and Choice(best.item, SURE, SlotKind.SURE, best.hard)


def reason(pick: Pick, pool: Pool) -> str:
    """Why this one today, looking back, in one sentence for the adult."""
    record, morning = pick.candidate.record, pool.morning
    if pick.candidate.item.id in pool.timely:
        return "the day itself asks for it"
    if pick.closes and not pick.hard:
        return SURE
    if pick.candidate.new:
        return _why_new(pick.candidate.item, pool)
    assert record.marked_on is not None
    when = _when(record, morning)
    rested = pick.candidate.rested(morning.index)
    after = f"back after {rested} mornings" if rested != 1 else "back the next morning"
    if pick.slot in (SlotKind.CHECK, SlotKind.AFTER):
        return review.words(pick.candidate, pool)
    match record.mark:
        case Mark.HESITATED:
            return f"hesitated {when}; {after}"
        case Mark.NOT_YET:
            return f"not yet {when}; {after}"
        case _:
            return f"came easily {when}" if rested < 4 else f"came easily {when}; {after}"


def _why_new(item: Item, pool: Pool) -> str:
    if item.week == pool.morning.week:
        return "new this week"
    return (
        "from before you began: to see whether it is known" if item.week < pool.since else "not asked before"
    )


def _when(record: Record, morning: Morning) -> str:
    day = record.marked_on
    assert day is not None
    if (morning.date - day).days < 7:
        return WEEKDAYS[day.weekday()]
    return date_words(day, weekday=False)


def build(
    choices: Sequence[Choice],
    morning: Morning,
    knowledge: Knowledge,
    *,
    child: str,
    shape: str,
    session: int = 1,
    beside: Sequence[Prompt] = (),
) -> Routine:
    """The routine of these choices: each item asked for its prompt, in other words than last time.

    ``beside`` are prompts that stand on the same morning already. A prompt that would tell the answer of
    another, or have its own told, is drawn again.
    """
    prompts: list[Prompt] = []
    for choice in choices:
        wording = knowledge.of(choice.item.id).wording
        seed = (child, morning.date.isoformat(), session, choice.item.id)
        for again in range(DRAWS):
            rng = SeededRandom(*seed, *([again] if again else []), avoid=wording)
            prompt = skills.prompt(choice.item.id, morning, rng, choice.why)
            if not meet(prompt, (*beside, *prompts)):
                break
        prompts.append(prompt)
    return Routine(child, morning, shape, tuple(prompts))
