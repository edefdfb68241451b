"""Builds the morning's routine, in two steps.

:func:`choose` knows only items: it picks them by what memory says, for a reason each, and orders them.
:func:`build` asks the skills for the prompts. So the choosing can be measured on any set of items.
"""

from collections.abc import Callable, Sequence

from warmup import skills
from warmup.engine import review
from warmup.engine.curriculum import Curriculum
from warmup.engine.eligibility import Eligible
from warmup.engine.giveaways import answered, meet
from warmup.engine.memory import Knowledge
from warmup.engine.picking import Pick, Today
from warmup.engine.pool import Candidate, Pool
from warmup.engine.rules import RULES
from warmup.english import WEEKDAYS, date_words, number_word
from warmup.model import Choice, Item, Mark, Morning, Opening, Prompt, Routine, Shape, SlotKind
from warmup.randomness import SeededRandom
from warmup.skills.base import Skill

DRAWS = 20
"""How often a prompt is drawn until nothing it says answers another one of the morning."""
SURE = "a sure one to finish"
"""Why the last prompt of a morning comes, in the adult's words."""
_LONG_WEEKS = 2


def choose(
    eligible: Eligible,
    shape: Shape,
    knowledge: Knowledge,
    morning: Morning,
    curriculum: Curriculum,
    *,
    child: str,
    count: int,
) -> tuple[Choice, ...]:
    """The items of one morning in their order, at most ``count`` prompts of them, each with its reason.

    The ``eligible`` items may come in any order: the same arguments give the same answer on any machine.
    """
    pool = Pool(eligible.items, knowledge, morning, curriculum, child, eligible.timely, eligible.holding)
    gentle = not curriculum.new_family(morning) and 2 * pool.easy() >= count
    today = Today(pool, shape, count, gentle=gentle)
    for rule in RULES:
        today.take(rule.name, rule.slot, rule.most, rule.which(today))
    return tuple(Choice(p.item, reason(p, pool), p.slot, p.candidate.hard) for p in today.ordered())


def surest(
    items: Sequence[Item], knowledge: Knowledge, morning: Morning, curriculum: Curriculum, *, child: str
) -> Choice | None:
    """The one of ``items`` to end a morning with that stops early; None when none will do.

    First what is not hard, the likeliest of it, then what took longer; what was never asked comes last. What
    is not yet is no kind end, and neither is what was on screen today.
    """
    pool = Pool(items, knowledge, morning, curriculum, child)
    able = [c for c in pool.all if c.record.mark is not Mark.NOT_YET and c.record.shown_on != morning.date]
    best = max(
        able, key=lambda c: (not c.new, not c.hard, min(c.record.run, 2), c.chance, c.tie), default=None
    )
    return best and Choice(best.item, SURE, SlotKind.SURE, best.hard)


def reason(pick: Pick, pool: Pool) -> str:
    """Why this one today, looking back, in one sentence for the adult."""
    c, morning = pick.candidate, pool.morning
    if c.item.id in pool.timely:
        return "the day itself asks for it"
    if pick.closes:
        return SURE
    if c.begins:
        return _why_new(c.item, pool)
    if pick.slot is SlotKind.CHECK:
        done = review.checks(pool.knowledge, pool.curriculum, morning.week).get(c.item.skill)
        return "its second check in this review" if done else "a check in this review"
    if c.new:
        # Fifteen left out of a count is no way of asking it, and neither is a story in which some leave.
        return "new: many children slip here" if c.item.misconception else "not asked before"
    return _looking_back(c, morning)


def _why_new(item: Item, pool: Pool) -> str:
    if item.own:
        return "your own, not asked yet"
    if item.week == pool.morning.week:
        return "new this week"
    if item.week < pool.curriculum.since:
        return "from before you began: to see whether it is known"
    return "open, not asked yet"


def _looking_back(c: Candidate, morning: Morning) -> str:
    day, last = c.record.marked_on, c.record.last
    assert day is not None and last is not None
    near = (morning.date - day).days < 7
    when = f"on {WEEKDAYS[day.weekday()] if near else date_words(day, weekday=False)}"
    match c.record.mark:
        case Mark.HESITATED:
            return f"took longer {when}"
        case Mark.NOT_YET:
            return f"not yet {when}"
        case _:
            weeks = (morning.date - day).days // 7
            return (
                f"not met for {number_word(weeks)} weeks" if weeks >= _LONG_WEEKS else f"came easily {when}"
            )


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
    own: Skill | None = None,
    fit: Callable[[Prompt], Prompt | None] | None = None,
) -> Routine:
    """The routine of these choices: each item asked for its prompt, in other words than last time.

    ``beside`` are prompts that stand on the same morning already, ``said`` the opening it began with, ``own``
    is the skill of what the family wrote itself. A prompt that would tell the answer of another, or have its
    own told, is drawn again. ``fit`` gives a prompt as the house can have it, or None where it can't: one it
    refuses in all draws stands as it was drawn.
    """
    prompts: list[Prompt] = []
    for choice in choices:
        wording = knowledge.of(choice.item.id).wording
        seed = (child, morning.date.isoformat(), session, choice.item.id)
        kept: Prompt | None = None
        for again in range(DRAWS):
            rng = SeededRandom(*seed, *([again] if again else []), avoid=wording)
            drawn = skills.prompt(choice.item.id, morning, rng, choice.why, own)
            prompt = fit(drawn) if fit else drawn
            kept = prompt or kept or drawn
            told = prompt and (meet(prompt, (*beside, *prompts)) or (said and answered((said.say,), prompt)))
            if prompt and not told:
                break
        assert kept is not None
        prompts.append(kept)
    return Routine(child, morning, shape, tuple(prompts))
