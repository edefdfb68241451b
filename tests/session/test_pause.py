"""A week with nothing new: what then stays closed, when it is offered, and that it can be taken back."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.engine.made import YEAR
from tests.household import FAMILY, begun, context_at, lived
from warmup.config.family import load
from warmup.engine.curriculum import curriculum
from warmup.engine.eligibility import Adjustments, open_items
from warmup.engine.memory import Knowledge, fold
from warmup.model import Asked, DayKind, Item, ItemId, LevelId, Mark, Morning
from warmup.session.context import Context
from warmup.session.pausing import pause_end, paused, turn_week, wobbling
from warmup.session.summary import closing

Clock = Callable[[], dt.datetime]
MORNING = Morning(dt.date(2027, 2, 1), DayKind.SCHOOL, 20, 25, 3, True, 20)
PAUSED = Adjustments(paused=MORNING.date)
MONDAY = dt.date(2027, 2, 1)
"""The first morning of week 23, a review week; the Wednesday after it is today here."""
OFFER = "More than a third wobbled."


@pytest.fixture
def context(home: Path, clock: Clock) -> Context:
    """The family on the third morning of a review week, nothing asked yet."""
    family = FAMILY._replace(known_until=MONDAY)
    context = context_at(home, clock, family, MONDAY + dt.timedelta(2))
    assert context.morning().review and context.morning(MONDAY).school_day == 89
    return context


def until(context: Context) -> dt.date | None:
    """The last day without new levels."""
    return paused(context)


def wobbles(context: Context) -> bool:
    """Whether a week with nothing new is offered."""
    return wobbling(context.history(), context.morning(), context.year)


rows = st.lists(st.tuples(st.integers(1, 4), st.integers(0, 2)), min_size=1, max_size=12)


@pytest.mark.slow
@given(rows)
def test_while_paused_just_the_levels_with_a_mark_stay_open(rows: list[tuple[int, int]]) -> None:
    items = [
        Item(ItemId(f"knots/{n}"), "knots", level, LevelId(f"knots:{level}"), "counting", 1)
        for n, (level, _) in enumerate(rows)
    ]
    plan = curriculum(items, YEAR, YEAR.mornings[0])
    lines = [
        Asked(YEAR.mornings[0], item.id, Mark.FLUENT)
        for item, (_, marks) in zip(items, rows, strict=True)
        for _ in range(marks)
    ]
    known = fold(plan, lines)
    begun = {level for level, marked in rows if marked}
    expected = {item.id for item in items if item.level in begun or not begun}
    assert {item.id for item in open_items(plan, MORNING, known, PAUSED)} == expected
    assert open_items(plan, MORNING, known) == tuple(items)


def test_a_level_opened_early_waits_too() -> None:
    one = Item(ItemId("knots/one"), "knots", 1, LevelId("knots:one"), "counting", 1)
    far = Item(ItemId("knots/far"), "knots", 2, LevelId("knots:far"), "counting", 36)
    plan = curriculum([one, far], YEAR, YEAR.mornings[0])
    known = fold(plan, [Asked(YEAR.mornings[0], one.id, Mark.FLUENT)])
    early = Adjustments(early=[far.level_id])
    assert open_items(plan, MORNING, known, early) == (one, far)
    assert open_items(plan, MORNING, known, early._replace(paused=MORNING.date)) == (one,)


def test_a_pause_covers_a_school_week_and_is_kept(context: Context, home: Path) -> None:
    lived(context, MONDAY, {"weekday/today": Mark.FLUENT})
    context.editor.pause(pause_end(context.year, context.today, 4))
    # Four mornings a week: Thursday, then Monday to Wednesday.
    wednesday = MONDAY + dt.timedelta(9)
    assert load(home / "family.toml").children[0].paused == wednesday == until(context)
    last, after = context.morning(wednesday), context.morning(wednesday + dt.timedelta(1))
    assert {item.level_id for item in context.eligible(last).items} == {"weekday:today"}
    assert len({item.level_id for item in context.eligible(after).items}) > 20
    context.editor.pause(None)
    assert load(home / "family.toml").children[0].paused is None is until(context)


def test_a_pause_skips_days_off_and_ends_with_the_year(context: Context, home: Path, clock: Clock) -> None:
    holiday = (MONDAY + dt.timedelta(3), MONDAY + dt.timedelta(9))
    off = context_at(home, clock, context.family._replace(off=(holiday,)), context.today)
    off.editor.pause(pause_end(off.year, off.today, 1))
    assert until(off) == MONDAY + dt.timedelta(10)
    final = context_at(home, clock, context.family, context.year.mornings[-2])
    final.editor.pause(pause_end(final.year, final.today, 4))
    assert until(final) == context.year.mornings[-1]


@pytest.mark.parametrize(
    ("monday", "tuesday", "offered"),
    [
        ({"weekday/today": Mark.FLUENT, "month/this": Mark.FLUENT}, {"by-tens/to-50": Mark.HESITATED}, False),
        ({"weekday/today": Mark.FLUENT, "month/this": Mark.NOT_YET}, {"by-tens/to-50": Mark.HESITATED}, True),
        # One skill wobbles in two places, of three skills: a third, no more.
        (
            {"count-on/across-30": Mark.NOT_YET, "month/this": Mark.FLUENT, "by-tens/to-50": Mark.FLUENT},
            {"count-on/across-30": Mark.FLUENT},
            False,
        ),
        # What came easily later in the week had its wobble all the same.
        ({"month/this": Mark.HESITATED}, {"month/this": Mark.FLUENT, "by-tens/to-50": Mark.FLUENT}, True),
        ({"month/this": Mark.SKIPPED}, {"by-tens/to-50": Mark.FLUENT}, False),
        ({}, {"by-tens/to-50": Mark.SKIPPED}, False),
    ],
)
def test_more_than_a_third_of_the_skills_of_this_review_week(
    context: Context, monday: dict[str, Mark], tuesday: dict[str, Mark], offered: bool
) -> None:
    lived(
        context,
        MONDAY - dt.timedelta(4),
        dict.fromkeys(("clock/o-clock", "make-ten/seven-three"), Mark.NOT_YET),
    )
    lived(context, MONDAY, monday)
    lived(context, MONDAY + dt.timedelta(1), tuesday)
    assert wobbles(context) is offered


def test_no_other_week_offers_it(context: Context, home: Path, clock: Clock) -> None:
    week_24 = context_at(home, clock, context.family, MONDAY + dt.timedelta(8))
    lived(week_24, MONDAY + dt.timedelta(7), {"month/this": Mark.NOT_YET})
    assert not week_24.morning().review and not wobbles(week_24)


def test_a_rough_day_is_left_out_and_a_cue_is_a_wobble(context: Context, clock: Clock) -> None:
    session = begun(context, clock)
    session.next_cue()
    session.mark(Mark.FLUENT)
    assert wobbles(context)
    session.toggle_rough()
    assert not wobbles(context)


def test_the_close_offers_it_and_the_same_key_takes_it_back(context: Context, clock: Clock) -> None:
    session = begun(context, clock)
    assert not closing(session, Knowledge()).pause
    session.mark(Mark.HESITATED)
    assert closing(session, Knowledge()).pause == OFFER
    turn_week(context)
    assert closing(session, Knowledge()).pause == "Nothing new until Wednesday, February 10."
    turn_week(context)
    assert closing(session, Knowledge()).pause == OFFER and until(context) is None


def test_on_the_last_day_of_such_a_week_the_next_can_be_taken(context: Context, clock: Clock) -> None:
    context.editor.pause(context.today)
    session = begun(context, clock)
    session.mark(Mark.NOT_YET)
    assert until(context) == context.today and closing(session, Knowledge()).pause == OFFER
    turn_week(context)
    assert until(context) == MONDAY + dt.timedelta(9)


def test_a_pause_ends_on_a_planned_morning_and_lasts_that_whole_day(context: Context) -> None:
    first, last = YEAR.mornings[0], YEAR.mornings[-1]
    assert pause_end(YEAR, first, 3) == YEAR.mornings[3]
    assert pause_end(YEAR, YEAR.mornings[-2], 3) == last == pause_end(YEAR, last, 3)
    assert paused(context) is None
    context.editor.pause(context.today)
    assert paused(context) == context.today
    context.turn_to(context.today + dt.timedelta(1))
    assert paused(context) is None
