"""Review weeks: two checks for each skill that was touched since the last one, and what comes of them.

In a review week nothing is new. A skill's checks fall on different mornings, in other words, one with
things on the table and one without where there is the choice. Two that come easily: the skill rests.
One: it comes twice a week for two weeks. None: a step down, hands on, on three mornings, and what
depends on it waits. A skill that was not checked twice stays open.
"""

from collections.abc import Iterator, Mapping
from enum import Enum

from warmup.engine.memory import Checked, Knowledge
from warmup.engine.pool import Candidate, Pool
from warmup.model import Morning

CHECKS = 2
SETTLED_FOR = 5
PARTLY_FOR = 2
"""How many weeks a skill rests after two easy checks, and is asked twice a week after one."""
AGAIN_ON = 3
"""On how many mornings a skill comes a step down after no easy check."""


class Outcome(Enum):
    """What a review said of a skill."""

    SETTLED = "settled"
    PARTLY = "came once out of two"
    AGAIN = "a step down"
    OPEN = "once more to check"


def outcome(checked: Checked) -> Outcome:
    """The outcome of a skill's checks so far."""
    if len(checked.marks) < CHECKS:
        return Outcome.OPEN
    easy = sum(checked.marks[:CHECKS])
    return Outcome.SETTLED if easy == CHECKS else Outcome.PARTLY if easy else Outcome.AGAIN


def review_summary(knowledge: Knowledge, week: int, titles: Mapping[str, str]) -> str:
    """What the review of a week says so far, for the adult; empty when nothing was checked in it."""
    found: dict[Outcome, list[str]] = {each: [] for each in Outcome}
    for skill, checked in knowledge.checks.items():
        if checked.week == week:
            found[outcome(checked)].append(titles.get(skill, skill).lower())
    parts = [f"{each.value}: {', '.join(sorted(names))}" for each, names in found.items() if names]
    return f"{'; '.join(parts)}." if parts else ""


def _weeks_since(checked: Checked, morning: Morning) -> int:
    """How many weeks the review lies back: 0 within its own week."""
    return morning.week - checked.week


def settled(pool: Pool) -> frozenset[str]:
    """The skills that rest after their last review."""
    return frozenset(
        skill
        for skill, checked in pool.knowledge.checks.items()
        if outcome(checked) is Outcome.SETTLED and _weeks_since(checked, pool.morning) <= SETTLED_FOR
    )


def step_down(knowledge: Knowledge) -> frozenset[str]:
    """The skills that neither check came easily of and that were not asked on three mornings since."""
    return frozenset(
        skill
        for skill, checked in knowledge.checks.items()
        if outcome(checked) is Outcome.AGAIN and checked.since < AGAIN_ON
    )


def checks(pool: Pool) -> list[Candidate]:
    """One item a skill for the checks of this morning: what wobbled first, then what rested longest."""
    morning = pool.morning
    last_review = pool.knowledge.reviews.last_before(morning.week) * morning.mornings_a_week
    found: list[tuple[int, Candidate]] = []
    for skill in pool.rests:
        touched = [c for c in pool.of_skill(skill) if (c.record.last or 0) >= last_review and not c.new]
        checked = pool.knowledge.checks.get(skill)
        done = checked if checked and checked.week == morning.week else None
        if not touched or (done and (len(done.marks) >= CHECKS or done.last == morning.index)):
            continue
        top = max(c.item.level for c in touched)
        best = [c for c in touched if c.item.level == top]
        if done:
            best.sort(key=lambda c: (c.item.hands is done.hands, c.item.id == done.item))
        found.append((len(done.marks) if done else 0, best[0]))
    # Second checks wait for the second half of the week, and then go first: one alone says little.
    half = 2 * (morning.index % morning.mornings_a_week) >= morning.mornings_a_week
    found.sort(key=lambda pair: (-pair[0] if half else pair[0], pair[1].feels, -pair[1].overdue, pair[1].tie))
    return [candidate for _, candidate in found]


def steps_down(pool: Pool) -> list[Candidate]:
    """An easier item of each skill that neither check came easily of, hands on where there is one."""
    found = []
    for skill in sorted(step_down(pool.knowledge)):
        checked, asked = pool.knowledge.checks[skill], [c for c in pool.of_skill(skill) if not c.new]
        if asked and pool.rests[skill] > 0 and 0 < _weeks_since(checked, pool.morning) <= PARTLY_FOR:
            top = max(c.item.level for c in asked)
            below = [c for c in asked if c.item.level in (top - 1, top)]
            found.append(min(below, key=lambda c: (c.item.level, c.hard, not c.item.hands)))
    return sorted(found, key=lambda c: (c.hard, c.tie))


def twice_a_week(pool: Pool) -> Iterator[Candidate]:
    """An item of each skill that came easily once out of two and has rested for two mornings."""
    for skill, checked in sorted(pool.knowledge.checks.items()):
        partly = outcome(checked) is Outcome.PARTLY
        recent = 0 < _weeks_since(checked, pool.morning) <= PARTLY_FOR
        if partly and recent and pool.rests.get(skill, 0) >= 2:
            yield from sorted((c for c in pool.of_skill(skill) if not c.new), key=lambda c: c.hard)[:1]


def words(candidate: Candidate, pool: Pool) -> str:
    """Why an item comes for a review's sake, for the adult."""
    checked = pool.knowledge.checks.get(candidate.item.skill)
    if checked is None or pool.morning.review:
        second = checked is not None and checked.week == pool.morning.week
        return "its second check in this review" if second else "a check in this review"
    if outcome(checked) is Outcome.PARTLY:
        return "came easily once out of two in the review: twice a week for now"
    hands = ", hands on" if candidate.item.hands else ""
    return f"came easily neither time in the review: an easier one{hands}"
