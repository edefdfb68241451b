"""A week with nothing new: what then stays closed, when it is offered, and that it can be taken back."""

import datetime as dt
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.household import FAMILY, context_at, lived
from warmup.config.family import load
from warmup.engine.engine import open_items
from warmup.engine.memory import Knowledge, Record
from warmup.model import DayKind, Item, Mark, Morning
from warmup.session.context import Context
from warmup.session.session import begin
from warmup.session.summary import closing, turn_pause, wobbling

Clock = Callable[[], dt.datetime]
MORNING = Morning(dt.date(2027, 2, 1), DayKind.SCHOOL, 20, 25, 3, True, 20)
MONDAY = dt.date(2027, 2, 1)
"""The first morning of week 23, a review week; the Wednesday after it is today here."""
OFFER = "More than a third wobbles. Key y: nothing new for a week."


@pytest.fixture
def context(home: Path, clock: Clock) -> Context:
    """The family on the third morning of a review week, nothing asked yet."""
    family = FAMILY._replace(settled=MONDAY)
    context = context_at(home, clock, family, MONDAY + dt.timedelta(2))
    assert context.morning().review and context.morning(MONDAY).school_day == 89
    return context


rows = st.lists(st.tuples(st.integers(1, 4), st.integers(0, 2)), min_size=1, max_size=12)


@given(rows)
def test_while_paused_just_the_levels_with_a_mark_stay_open(rows: list[tuple[int, int]]) -> None:
    items = [
        Item(f"knots/{n}", "knots", level, f"knots:{level}", "counting", 1)
        for n, (level, _) in enumerate(rows)
    ]
    known = Knowledge(
        {item.id: Record(marks=n, mark=Mark.FLUENT) for item, (_, n) in zip(items, rows, strict=True)}
    )
    begun = {level for level, marked in rows if marked}
    expected = {item.id for item in items if item.level in begun or not begun}
    assert {item.id for item in open_items(items, MORNING, known, paused=True)} == expected
    assert open_items(items, MORNING, known) == tuple(items)


def test_a_level_opened_early_waits_too() -> None:
    one = Item("knots/one", "knots", 1, "knots:one", "counting", 1)
    far = Item("knots/far", "knots", 2, "knots:far", "counting", 36)
    known = Knowledge({one.id: Record(marks=1, mark=Mark.FLUENT)})
    assert open_items([one, far], MORNING, known, opened=["knots:far"]) == (one, far)
    assert open_items([one, far], MORNING, known, opened=["knots:far"], paused=True) == (one,)


def test_a_pause_covers_a_school_week_and_is_kept(context: Context, home: Path) -> None:
    lived(context, MONDAY, {"weekday/today": Mark.FLUENT})
    context.pause(4)
    # Four mornings a week: Thursday, then Monday to Wednesday.
    until = MONDAY + dt.timedelta(9)
    assert load(home / "family.toml").children[0].paused == until == context.paused_until()
    last, after = context.morning(until), context.morning(until + dt.timedelta(1))
    assert {item.level_id for item in context.open_items(last)} == {"weekday:today"}
    assert len({item.level_id for item in context.open_items(after)}) > 20
    context.pause(0)
    assert load(home / "family.toml").children[0].paused is None is context.paused_until()


def test_a_pause_skips_days_off_and_ends_with_the_year(context: Context, home: Path, clock: Clock) -> None:
    holiday = (MONDAY + dt.timedelta(3), MONDAY + dt.timedelta(9))
    off = context_at(home, clock, context.family._replace(off=(holiday,)), context.today)
    off.pause(1)
    assert off.paused_until() == MONDAY + dt.timedelta(10)
    final = context_at(home, clock, context.family, context.year.mornings[-2])
    final.pause(4)
    assert final.paused_until() == context.year.mornings[-1]


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
    assert wobbling(context) is offered


def test_no_other_week_offers_it(context: Context, home: Path, clock: Clock) -> None:
    week_24 = context_at(home, clock, context.family, MONDAY + dt.timedelta(8))
    lived(week_24, MONDAY + dt.timedelta(7), {"month/this": Mark.NOT_YET})
    assert not week_24.morning().review and not wobbling(week_24)


def test_a_rough_day_is_left_out_and_a_cue_is_a_wobble(context: Context, clock: Clock) -> None:
    assert context.journal is not None
    session = begin(context, context.journal, clock)
    session.next_cue()
    session.mark(Mark.FLUENT)
    assert wobbling(context)
    session.toggle_rough()
    assert not wobbling(context)


def test_the_close_offers_it_and_the_same_key_takes_it_back(context: Context, clock: Clock) -> None:
    assert context.journal is not None
    session = begin(context, context.journal, clock)
    assert not closing(session, Knowledge()).pause
    session.mark(Mark.HESITATED)
    assert closing(session, Knowledge()).pause == OFFER
    turn_pause(context)
    assert (
        closing(session, Knowledge()).pause
        == "Nothing new until Wednesday, February 10. Key y takes it back."
    )
    turn_pause(context)
    assert closing(session, Knowledge()).pause == OFFER and context.paused_until() is None


def test_on_the_last_day_of_such_a_week_the_next_can_be_taken(context: Context, clock: Clock) -> None:
    assert context.journal is not None
    context.child = replace(context.child, paused=context.today)
    session = begin(context, context.journal, clock)
    session.mark(Mark.NOT_YET)
    assert context.paused_until() == context.today and closing(session, Knowledge()).pause == OFFER
    turn_pause(context)
    assert context.paused_until() == MONDAY + dt.timedelta(9)
