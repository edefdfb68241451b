"""What opens when: a start in the middle of the year is sampled, and the day itself may ask."""

import datetime as dt
from pathlib import Path
from typing import Any

import pytest

from tests.benchmarks.year_aloud import family
from warmup import skills
from warmup.config.family import CountdownRule
from warmup.config.places import Places
from warmup.engine.curriculum import curriculum
from warmup.engine.eligibility import SAMPLES, Adjustments, Eligible, open_items, sampled
from warmup.engine.engine import choose
from warmup.engine.memory import Knowledge, Record, fold
from warmup.engine.pool import Pool
from warmup.model import Asked, DayKind, Item, ItemId, LevelId, Mark, Morning, Routine, Shape, Slot, SlotKind
from warmup.schoolyear import SchoolYear
from warmup.session.context import Context, open_context

JANUARY = dt.date(2027, 1, 11)
OLD = tuple(Item(ItemId(f"knots/{n}"), "knots", 1, LevelId("knots:one"), "number", 3) for n in range(4))
NEW = Item(ItemId("ropes/one"), "ropes", 1, LevelId("ropes:one"), "number", 20)


def marked(easy: int, shaky: int = 0) -> Knowledge:
    """What is known when the first items of the old level came easily and the next ones did not."""
    records = {item.id: Record(marks=1, run=1, mark=Mark.FLUENT) for item in OLD[:easy]}
    records |= {item.id: Record(marks=1, mark=Mark.HESITATED) for item in OLD[easy : easy + shaky]}
    return Knowledge(records)


@pytest.mark.parametrize(
    ("known", "left"),
    [
        (marked(0), OLD[:SAMPLES]),
        (marked(1), OLD[:SAMPLES]),
        (marked(2), OLD[:SAMPLES]),
        (marked(1, 1), OLD),
        (marked(0, 1), OLD[:SAMPLES]),
        (marked(3), OLD[:3]),
    ],
)
def test_two_prompts_tell_whether_an_earlier_level_is_known(known: Knowledge, left: tuple[Item, ...]) -> None:
    assert sampled((*OLD, NEW), known, since=19) == (*left, NEW)
    assert sampled((*OLD, NEW), known, since=1) == (*OLD, NEW)


def test_a_ladder_from_before_the_start_is_sampled_from_its_top() -> None:
    """Fluency there retires the rungs below; in a year begun with us the lowest comes first."""
    rungs = tuple(
        Item(ItemId(f"knots/{n}"), "knots", n, LevelId(f"knots:{n}"), "number", 3 * n, ladder=True)
        for n in (1, 2, 3)
    )
    shape = Shape("new", (Slot(SlotKind.NEWEST, 1),), ((36, 1),))
    morning = Morning(JANUARY, DayKind.SCHOOL, 73, 19, 3, False, 72, next=JANUARY + dt.timedelta(1))
    year = SchoolYear((0, 1, 2, 3), (JANUARY, JANUARY + dt.timedelta(1)), 72)
    plan = curriculum(rungs, year, JANUARY)
    assert plan.since == 19 and plan.new_family(morning)
    for since, first in ((19, "knots/3"), (1, "knots/1")):
        before = plan._replace(began=4 * (since - 1))
        chosen = choose(Eligible(rungs), shape, Knowledge(), morning, before, child="Bean")
        assert [choice.item.id for choice in chosen] == [first]


def test_a_rung_that_was_not_yet_stays_under_one_that_comes_easily() -> None:
    """Else it would never be asked again, and what stands on its level would wait all year."""
    low, high = (
        Item(ItemId(f"knots/{n}"), "knots", n, LevelId(f"knots:{n}"), "number", n, ladder=True)
        for n in (1, 2)
    )
    morning = Morning(JANUARY, DayKind.SCHOOL, 73, 19, 3, False, 72)
    sure = Record(marks=2, run=2, mark=Mark.FLUENT, last=60)
    for mark, left in ((Mark.NOT_YET, {low, high}), (Mark.HESITATED, {high}), (Mark.FLUENT, {high})):
        known = Knowledge({low.id: Record(marks=1, mark=mark, last=50), high.id: sure})
        assert {candidate.item for candidate in Pool((low, high), known, morning, "Bean").all} == left


BEGUN = Item(ItemId("knots/begun"), "knots", 2, LevelId("knots:two"), "number", 30)
BESIDE = Item(ItemId("knots/beside"), "knots", 2, LevelId("knots:two"), "number", 30)
AHEAD = Item(ItemId("ropes/ahead"), "ropes", 1, LevelId("ropes:one"), "number", 30)


def test_a_level_that_has_begun_stays_open_when_a_new_plan_gives_it_a_later_week() -> None:
    """All of the level, unless it is held; a level not begun waits for its week."""
    morning = Morning(JANUARY, DayKind.SCHOOL, 73, 19, 3, False, 72)
    known = Knowledge({BEGUN.id: Record(marks=1, mark=Mark.FLUENT, last=60)})
    items = (BEGUN, BESIDE, AHEAD)
    assert open_items(items, morning, known) == (BEGUN, BESIDE)
    assert open_items(items, morning, known, Adjustments(held=[LevelId("knots:two")])) == ()
    assert open_items(items, morning, Knowledge()) == ()


def test_what_is_open_before_its_week_does_not_hide_how_long_its_skill_has_rested() -> None:
    morning = Morning(JANUARY, DayKind.SCHOOL, 73, 19, 3, False, 72)
    known = Knowledge({BEGUN.id: Record(marks=1, mark=Mark.FLUENT, last=60)})
    assert Pool((BEGUN, BESIDE), known, morning, "Bean").rests == {"knots": 12}
    assert Pool((AHEAD,), known, morning, "Bean").rests["ropes"] > 144
    today = Knowledge({BEGUN.id: Record(marks=1, mark=Mark.FLUENT, last=72)})
    assert Pool((BEGUN, BESIDE), today, morning, "Bean").rests == {"knots": 0}


def at_context(first: dt.date, **change: Any) -> Context:
    """The invented year's family, begun on ``first``."""
    there = family("Bean")._replace(began=first, **change)
    return open_context(Places(Path("nowhere"), Path("nowhere")), there, first, None, saved=False)


def live(context: Context, days: int) -> list[Routine]:
    """The first mornings of a child to whom everything comes easily."""
    known, routines = Knowledge(), []
    for day in [day for day in context.year.mornings if day >= context.today][:days]:
        context.today = day
        context.know(known)
        routine = context.routine()
        lines = [Asked(day, prompt.item, Mark.FLUENT, wording=prompt.wording) for prompt in routine.prompts]
        known = fold(context.curriculum(), lines, known)
        routines.append(routine)
    return routines


@pytest.mark.slow
def test_a_start_in_january_asks_what_is_new_and_samples_what_came_before() -> None:
    context = at_context(JANUARY)
    assert context.curriculum().since == context.morning(JANUARY).week > 15
    weeks = {item.id: item.week for item in context.curriculum().items}
    first: dict[str, list[str]] = {}
    for item in context.curriculum().items:
        first.setdefault(item.level_id, []).append(item.id)
    sampled_first = {name for names in first.values() for name in names[:SAMPLES]}
    lived = live(context, 30)
    asked = [prompt.item for routine in lived for prompt in routine.prompts]
    # What the day itself asked for once is known of, and comes again.
    timely = {
        prompt.item
        for routine in lived
        for prompt in routine.prompts
        if skills.timely(prompt.item, routine.morning)
    }
    assert {item for item in asked if weeks[item] < context.curriculum().since} <= sampled_first | timely
    assert any(weeks[item] >= context.curriculum().since for item in asked[:80])
    early = {
        item.level_id: item for item in context.curriculum().items if item.week < context.curriculum().since
    }
    sampled_levels = {name for name in early if set(first[name]) & set(asked)}
    # A rung under one that came easily is known by it.
    top: dict[str, int] = {}
    for name in sampled_levels:
        top[early[name].skill] = max(top.get(early[name].skill, 0), early[name].level)
    known = {name for name, item in early.items() if item.ladder and item.level <= top.get(item.skill, 0)}
    assert len(known | sampled_levels) > 0.5 * len(early)


def first_of(context: Context, day: dt.date) -> dict[str, str]:
    """What is asked on a date and why, by item."""
    context.today = day
    return {prompt.item: prompt.why for prompt in context.routine().prompts}


def test_the_day_itself_asks() -> None:
    """The first, the hundredth and the last school day, a day that matters, and a new month."""
    birthday = CountdownRule("your birthday", dt.date(2027, 2, 9))
    context = at_context(dt.date(2026, 8, 31), countdowns=(birthday,))
    days = context.year.mornings
    why = "the day itself asks for it"
    assert first_of(context, days[0])["school-day/count"] == why
    assert first_of(context, days[99])["school-day/to-the-hundredth"] == why
    assert first_of(context, days[-1])["school-day/count"] == why
    assert first_of(context, dt.date(2027, 2, 9))["date/full"] == why
    assert first_of(context, dt.date(2026, 10, 1))["month/this"] == why
    quiet = first_of(context, dt.date(2026, 10, 7))
    assert why not in quiet.values()
