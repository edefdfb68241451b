"""What opens when: what waits for what, a start in the middle of the year, and the day that asks itself."""

import datetime as dt
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import pytest

from tests.benchmarks.year_aloud import family
from tests.engine.made import F, H, N, Past, known, made, morning, plan_of
from warmup import skills
from warmup.config.family import CountdownRule
from warmup.config.places import Places
from warmup.engine.eligibility import (
    SAMPLES,
    Adjustments,
    eligible,
    holds,
    missed,
    open_items,
    sampled,
    to_teach,
)
from warmup.engine.memory import Knowledge, Record, fold
from warmup.model import Asked, Item, ItemId, LevelId, Mark, Routine, level_id
from warmup.session.context import Context, open_context

JANUARY = dt.date(2027, 1, 11)
OLD = tuple(Item(ItemId(f"knots/{n}"), "knots", 1, LevelId("knots:one"), "number", 3) for n in range(4))
NEW = Item(ItemId("ropes/one"), "ropes", 1, LevelId("ropes:one"), "number", 20)


def marked(easy: int, shaky: int = 0) -> Knowledge:
    """What is known when the first items of the old level came easily and the next ones did not."""
    records = {item.id: Record(marks=1, run=1, mark=F) for item in OLD[:easy]}
    records |= {item.id: Record(marks=1, mark=H) for item in OLD[easy : easy + shaky]}
    return Knowledge(records)


@pytest.mark.parametrize(
    ("there", "left"),
    [
        (marked(0), OLD[:SAMPLES]),
        (marked(1), OLD[:SAMPLES]),
        (marked(2), OLD[:SAMPLES]),
        (marked(1, 1), OLD),
        (marked(0, 1), OLD[:SAMPLES]),
        (marked(3), OLD[:3]),
    ],
)
def test_two_prompts_tell_whether_an_earlier_level_is_known(there: Knowledge, left: tuple[Item, ...]) -> None:
    assert sampled((*OLD, NEW), there, since=19) == (*left, NEW)
    assert sampled((*OLD, NEW), there, since=1) == (*OLD, NEW)


# -- what waits for what

BASE = made("knots/one")
SLIP = made("knots/slip", misconception=True)
BOATS = made("boats/one", week=10, stands_on=(level_id("knots", "1"),))
"""It opens at 36, on the first morning of week 10."""
WARY = made("boats/one", week=10, waits_on=(SLIP.id,))
CODED = BOATS._replace(codes=("K.CC.A.1",))


def opens(new: Item, index: int, pasts: Mapping[Item, Past], adjustments: Adjustments | None = None) -> bool:
    """Whether an item beside these is open on a morning."""
    plan = plan_of((*pasts, new))
    now = known(plan, pasts, index)
    return new in open_items(plan, morning(index), now, adjustments or Adjustments())


@pytest.mark.parametrize(
    ("marks", "open_"),
    [((), True), ((N,), True), ((N, N), False), ((N, N, H), True), ((F, N, N), False), ((N, F, N), True)],
)
def test_what_stands_on_a_shaky_level_waits(marks: Sequence[Mark], open_: bool) -> None:
    """Two not yet running of one item make it shaky; anything else in between, and it is not."""
    past = [(len(marks) - n + 3, mark) for n, mark in enumerate(marks)]
    assert opens(BOATS, 60, {BASE: past}) is open_
    assert opens(WARY, 60, {BASE: past, SLIP: ()}), "it waits on the slip alone"
    assert opens(BOATS, 60, {BASE: ((3, F),), SLIP: past}), "a slip makes no level shaky"
    assert opens(WARY, 60, {BASE: ((3, F),), SLIP: past}) is open_


TWICE: Past = ((3, N), (2, N))


@pytest.mark.parametrize(("index", "open_"), [(35, False), (36, False), (39, False), (40, True)])
def test_a_level_with_a_kindergarten_code_waits_for_four_mornings_at_most(index: int, open_: bool) -> None:
    assert opens(CODED, index, {BASE: TWICE}) is open_
    assert opens(CODED, index, {BASE: ((3, F),)}) is (index >= 36)
    assert not opens(BOATS, index + 60, {BASE: TWICE}), "any other waits as long as it takes"


def test_what_is_held_or_opened_early_or_begun() -> None:
    early, held = Adjustments(early=[BOATS.level_id]), Adjustments(held=[BOATS.level_id])
    assert opens(BOATS, 8, {BASE: ((3, F),)}, early) and not opens(BOATS, 8, {BASE: ((3, F),)})
    assert not opens(BOATS, 8, {BASE: TWICE}, early), "early, and waits all the same"
    assert not opens(BOATS, 60, {BASE: ((3, F),)}, held)
    beside = BOATS._replace(id=ItemId("boats/two"))
    assert opens(BOATS, 60, {BASE: TWICE, beside: ((9, F),)}), "a level once begun stays open"
    assert opens(BOATS, 8, {beside: ((5, F),)}), "where a new plan gives it a later week, too"
    assert not opens(BOATS, 60, {beside: ((9, F),)}, held)


def test_the_shaky_ones_that_a_level_waits_for_are_named() -> None:
    def holding(index: int, pasts: Mapping[Item, Past], *waiting: Item) -> frozenset[str]:
        plan = plan_of((*pasts, *waiting))
        return frozenset(holds(plan, morning(index), known(plan, pasts, index), tuple(pasts)))

    assert holding(60, {BASE: TWICE, SLIP: TWICE}, BOATS) == {BASE.id}
    assert holding(60, {BASE: TWICE, SLIP: TWICE}, WARY) == {SLIP.id}
    assert not holding(35, {BASE: TWICE, SLIP: TWICE}, BOATS), "its week has not come"
    assert not holding(60, {BASE: ((3, F),), SLIP: TWICE}, BOATS)
    begun = {BASE: TWICE, BOATS: ((9, F),)}
    assert not holding(60, begun), "it does not wait"


def at_context(first: dt.date, **change: Any) -> Context:
    """The invented year's family, begun on ``first``."""
    there = family("Bean")._replace(began=first, **change)
    return open_context(Places(Path("nowhere"), Path("nowhere")), there, first, None, saved=False)


def live(context: Context, days: int) -> list[Routine]:
    """The first mornings of a child to whom everything comes easily."""
    now, routines = Knowledge(), []
    for day in [day for day in context.year.mornings if day >= context.today][:days]:
        context.today = day
        context.know(now)
        routine = context.routine()
        lines = [Asked(day, prompt.item, Mark.FLUENT, wording=prompt.wording) for prompt in routine.prompts]
        now = fold(context.curriculum(), lines, now)
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
    whys = {prompt.why for routine in lived for prompt in routine.prompts}
    assert "from before you began: to see whether it is known" in whys
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
    under = {name for name, item in early.items() if item.ladder and item.level <= top.get(item.skill, 0)}
    assert len(under | sampled_levels) > 0.5 * len(early)


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


def test_a_pause_holds_back_what_the_day_itself_asks_for_until_its_level_has_begun() -> None:
    context = at_context(dt.date(2026, 8, 31))
    plan, day = context.curriculum(), context.year.mornings[99]
    item, other = ItemId("school-day/to-the-hundredth"), ItemId("school-day/count")
    begun = fold(plan, [Asked(context.year.mornings[0], other, Mark.FLUENT)])
    known_it = fold(plan, [Asked(context.year.mornings[90], item, Mark.FLUENT)], begun)

    def asks(now: Knowledge, paused: dt.date | None) -> bool:
        able = eligible(plan, context.morning(day), now, Adjustments(paused=paused))
        return item in {each.id for each in able.items}

    assert asks(begun, None) and asks(begun, context.year.mornings[98]), "a pause that is over"
    assert not asks(begun, day) and asks(known_it, day)


def test_three_not_yet_running_rest_until_taught_again_the_newest_first() -> None:
    """An item is taught again rather than asked a fourth time; README, "Marks"."""
    first, later, twice = made("knots/one"), made("ropes/one"), made("sails/one")
    pasts: dict[Item, Past] = {
        first: ((9, N), (8, N), (7, N)),
        later: ((5, N), (4, N), (3, N)),
        twice: ((2, N), (1, N)),
    }
    plan = plan_of(pasts)
    now = known(plan, pasts, 40)
    assert missed((first, later, twice), now, ()) == (later.id, first.id)
    assert missed((later, first, twice), now, [later.level_id]) == (first.id,)
    assert [item.id for item in open_items(plan, morning(40), now)] == [twice.id]
    taught = Adjustments(taught={first.id: morning(40).date})
    assert to_teach(plan.items, now, taught) == (later.id,)
