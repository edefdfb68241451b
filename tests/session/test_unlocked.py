"""Which levels may be asked by now, and which of them are open and were never asked."""

import datetime as dt
import json
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.widgets import OptionList

from tests.household import FAMILY, TODAY, context_at, lived, start_fixed
from tests.mornings import morning
from tests.tui.frame import frame
from warmup.cli.main import DONE, main
from warmup.config.family import Child
from warmup.model import LevelId, Mark, Plan, level_id
from warmup.session.context import Context
from warmup.session.turning import NOT_ASKED
from warmup.session.unlocked import Unlocked, unlocked, unlocked_levels
from warmup.tui.app import WarmupApp

Clock = Callable[[], dt.datetime]
PAIRS = LevelId("make-ten:all")
SEVEN = "make-ten/seven-three"
BEFORE = TODAY - dt.timedelta(1)


def moved(home: Path, clock: Clock, child: Child | None = None) -> Context:
    """The family in week 27; a level of an earlier week has moved to week 30."""
    context = context_at(home, clock, FAMILY._replace(children=(child or Child("Bean"),)))
    assert context.plan.weeks[PAIRS] < context.morning().week == 27
    context.plan = context.plan._replace(weeks={**context.plan.weeks, PAIRS: 30})
    return context


def of(context: Context, level: LevelId = PAIRS) -> Unlocked | None:
    """The level as it stands in the list, if it does."""
    return next((row for row in unlocked_levels(context, context.morning()) if row.level == level), None)


def test_a_level_begun_and_moved_to_a_later_week_is_open_and_listed(home: Path, clock: Clock) -> None:
    context = moved(home, clock)
    assert of(context) is None, "its week lies ahead, and nothing of it was asked"
    lived(context, BEFORE, {SEVEN: Mark.FLUENT})
    assert of(context) == Unlocked(PAIRS, "Make ten", "all pairs", 30, held=False, fresh=False)
    assert SEVEN in {item.id for item in context.eligible(context.morning()).items}


def test_one_opened_early_is_listed_and_fresh_until_it_is_asked(home: Path, clock: Clock) -> None:
    context = moved(home, clock, Child("Bean", opened=(PAIRS,)))
    row = of(context)
    assert row is not None and row.fresh
    lived(context, BEFORE, {SEVEN: Mark.SKIPPED})
    row = of(context)
    assert row is not None and not row.fresh, "it was on screen"


def test_what_is_held_or_waits_is_not_open(home: Path, clock: Clock) -> None:
    held = of(moved(home, clock, Child("Bean", held=(PAIRS,))))
    assert held is not None and held.held and not held.fresh
    context = context_at(home, clock)
    morning = context.morning()
    open_now = {item.level_id for item in context.eligible(morning).items}
    rows = unlocked_levels(context, morning)
    assert {row.level for row in rows if row.fresh} == {row.level for row in rows} & open_now
    past = next(row for row in rows if row.level == "school-day:to-the-hundredth")
    assert not past.fresh, "the hundredth day is over"


async def test_the_page_says_so_beside_the_levels_and_below_the_list(home: Path, clock: Clock) -> None:
    for size, beside in (((80, 24), True), ((60, 20), False), ((40, 12), False)):
        context = context_at(home, clock)
        start_fixed(context)
        assert context.journal is not None
        app = WarmupApp(context, context.journal, clock)
        async with app.run_test(size=size) as pilot:
            await pilot.press("l")
            await pilot.pause()
            first, *_ = app.screen.query_one(OptionList).options
            assert (NOT_ASKED in str(first.prompt)) is beside
            below = next(line for line in frame(app).splitlines() if "hold it back" in line)
            assert NOT_ASKED in below
            assert (NOT_ASKED in frame(app).partition("hold it back")[0]) is beside


def test_today_names_what_is_open_and_not_asked_yet(
    home: Path, clock: Clock, capsys: pytest.CaptureFixture[str]
) -> None:
    context = context_at(home, clock)
    lived(context, BEFORE, {SEVEN: Mark.FLUENT})
    fresh = [row.level for row in unlocked_levels(context, context.morning()) if row.fresh]
    assert main(["today", "--json"], lambda: dt.datetime.combine(TODAY, dt.time(8))) == DONE
    assert json.loads(capsys.readouterr().out)["not_asked_yet"] == fresh and PAIRS not in fresh
    assert main(["today"], lambda: dt.datetime.combine(TODAY, dt.time(8))) == DONE
    (line,) = [
        line for line in capsys.readouterr().out.splitlines() if line.startswith("Open, not asked yet:")
    ]
    assert "place value" in line and "all pairs" not in line


def test_what_a_quarter_has_unlocked_is_of_its_own_weeks_up_to_this_one() -> None:
    weeks = {level_id("knots", str(week)): week for week in (9, 10, 12, 13, 18, 19)}
    week_12 = morning(school_day=45)
    assert (week_12.week, week_12.quarter) == (12, 2)
    assert unlocked(Plan(weeks, ((36, 8),)), week_12) == {"knots:10", "knots:12"}
