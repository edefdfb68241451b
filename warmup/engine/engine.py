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

from collections.abc import Sequence

from warmup import skills
from warmup.engine import review
from warmup.engine.curriculum import Curriculum
from warmup.engine.eligibility import Eligible
from warmup.engine.giveaways import answered, meet
from warmup.engine.memory import Knowledge, Record
from warmup.engine.picking import Pick, Picking
from warmup.engine.pool import Pool
from warmup.english import WEEKDAYS, date_words
from warmup.model import Choice, Item, Mark, Morning, Opening, Prompt, Routine, Shape, SlotKind
from warmup.randomness import SeededRandom

DRAWS = 12
"""How often a prompt is drawn until nothing it says answers another one of the morning."""
SURE = "a sure one to finish"
"""Why the last prompt of a morning comes, in the adult's words."""


def choose(
    eligible: Eligible,
    shape: Shape,
    knowledge: Knowledge,
    morning: Morning,
    curriculum: Curriculum,
    *,
    child: str,
) -> tuple[Choice, ...]:
    """The items of one morning in their order, each with its reason.

    The ``eligible`` items may come in any order: the same arguments give the same answer on any machine.
    """
    pool = Pool(eligible.items, knowledge, morning, child, curriculum.since, eligible.timely)
    count = shape.prompts_in(morning.week)
    new_family = curriculum.new_family(morning) or pool.easy() < count / 2
    picks = Picking(pool, shape, morning, new_family, count)
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
    said: Opening | None = None,
) -> Routine:
    """The routine of these choices: each item asked for its prompt, in other words than last time.

    ``beside`` are prompts that stand on the same morning already, ``said`` the opening it began with. A
    prompt that would tell the answer of another, or have its own told, is drawn again.
    """
    prompts: list[Prompt] = []
    for choice in choices:
        wording = knowledge.of(choice.item.id).wording
        seed = (child, morning.date.isoformat(), session, choice.item.id)
        for again in range(DRAWS):
            rng = SeededRandom(*seed, *([again] if again else []), avoid=wording)
            prompt = skills.prompt(choice.item.id, morning, rng, choice.why)
            if not meet(prompt, (*beside, *prompts)) and not (said and answered((said.say,), prompt)):
                break
        prompts.append(prompt)
    return Routine(child, morning, shape, tuple(prompts))
