"""Which game a child has: for what wobbled, the same all day, and recorded nowhere."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, begun, context_at, lived, start_fixed
from warmup.config.family import Child
from warmup.engine.memory import Knowledge
from warmup.engine.things import NAMES
from warmup.model import LevelId, Mark
from warmup.session.context import Context
from warmup.session.gaming import for_that, for_whom, suggestion, told, week_games, wobbled_today
from warmup.session.summary import closing
from warmup.session.words import SMALL_THINGS

Clock = Callable[[], dt.datetime]
PAIRS, ACROSS = LevelId("make-ten:all"), LevelId("count-on:to-50")
SEVEN, THIRTY = "make-ten/seven-three", "count-on/across-30"
YESTERDAY = TODAY - dt.timedelta(1)


def level(context: Context, nth: int = 0, skill: str = "") -> LevelId:
    """The level that a suggested game is for."""
    found = suggestion(context, nth, skill)
    assert found is not None
    return found.level


def test_where_a_house_has_nothing_for_what_wobbled_the_close_is_silent_and_the_page_is_not(
    home: Path, clock: Clock
) -> None:
    bare = context_at(home, clock, FAMILY._replace(without=NAMES))
    lived(bare, TODAY, {"sort/put-together": Mark.NOT_YET})
    assert wobbled_today(bare) == ("sort:one-rule",) and not for_that(bare)
    found = suggestion(bare)
    assert found is not None and found.game.needs == ()
    assert suggestion(bare, skill="sort") is None


@pytest.mark.slow
def test_the_close_has_a_game_only_for_what_wobbled_today(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    lived(context, YESTERDAY, {THIRTY: Mark.NOT_YET})
    start_fixed(context)
    session = begun(context, clock)
    session.mark(Mark.FLUENT)
    assert not closing(session, Knowledge()).game, "what wobbled yesterday is no reason"
    session.mark(Mark.HESITATED)
    game = closing(session, Knowledge()).game
    assert game == for_that(context) != "" and not closing(session, Knowledge(), guest=True).game
    assert level(context) == ACROSS


def test_not_yet_comes_before_hesitated_and_both_before_what_wobbled_earlier(
    home: Path, clock: Clock
) -> None:
    context = context_at(home, clock)
    lived(context, YESTERDAY, {"weekday/today": Mark.NOT_YET})
    assert level(context) == "weekday:today" and wobbled_today(context) == ()
    lived(context, TODAY, {THIRTY: Mark.HESITATED, SEVEN: Mark.NOT_YET, "month/this": Mark.FLUENT})
    assert wobbled_today(context) == (PAIRS, ACROSS) and level(context) == PAIRS
    assert level(context, skill="count-on") == ACROSS
    assert level(context, skill="weekday") == "weekday:today", "it wobbled last in that skill"


def test_where_nothing_wobbled_it_is_what_opened_last(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    lived(context, TODAY, {SEVEN: Mark.FLUENT})
    weeks = context.plan.weeks
    opened = [weeks[each] for each in weeks if weeks[each] <= context.morning().week]
    assert weeks[level(context)] == max(opened)
    ahead = max(weeks, key=lambda each: weeks[each])
    skill = ahead.partition(":")[0]
    assert weeks[level(context, skill=skill)] <= context.morning().week
    held = context_at(home, clock, FAMILY._replace(children=(Child("Bean", held=(level(context),)),)))
    assert level(held) != level(context)


def test_a_child_s_games_are_the_same_all_day_and_another_goes_around(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    lived(context, YESTERDAY, {SEVEN: Mark.NOT_YET})
    lived(context, TODAY, {THIRTY: Mark.NOT_YET})
    shown = [suggestion(context, nth) for nth in range(8)]
    assert shown == [suggestion(context, nth) for nth in range(8)]
    ids = [each.game.id for each in shown if each]
    around = len({*ids})
    assert 2 <= around < 8 and ids[: 8 - around] == ids[around:]
    assert len({*map(str, shown)}) > around, "the second time around it has other numbers"
    orders = set()
    for day in range(12):
        context.turn_to(TODAY + dt.timedelta(day))
        found = [suggestion(context, nth, "make-ten") for nth in range(3)]
        orders.add(tuple(each.game.id for each in found if each))
    assert len(orders) > 1, "another day has another order"


def test_nothing_is_recorded_and_a_toddler_gets_no_small_things(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    assert context.journal is not None
    before = context.journal.path.read_bytes() if context.journal.path.exists() else b""
    coins = [found for nth in range(4) if (found := suggestion(context, nth, "coins"))]
    small = [each for each in coins if each.small_things]
    assert small and ("Take care", SMALL_THINGS) in list(told(small[0]))
    assert before == (context.journal.path.read_bytes() if context.journal.path.exists() else b"")
    house = context_at(home, clock, FAMILY._replace(toddler=True))
    with_toddler = [found for nth in range(6) if (found := suggestion(house, nth, "coins"))]
    assert with_toddler and not any(each.small_things for each in with_toddler)


def test_a_week_has_four_games_that_stay_all_week_the_wobbles_first(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    lived(context, YESTERDAY, {SEVEN: Mark.NOT_YET, THIRTY: Mark.HESITATED})
    week = week_games(context)
    assert [each.level for each in week[:2]] == [PAIRS, ACROSS]
    assert len(week) == len({each.game.id for each in week}) == 4
    context.turn_to(TODAY + dt.timedelta(1))
    assert week_games(context) == week or context.morning().week != context.morning(TODAY).week
    assert len(week_games(context, 2)) == 2


def test_of_several_children_it_is_for_the_one_who_wobbled(home: Path, clock: Clock) -> None:
    family = FAMILY._replace(children=(Child("Fern", reads=False), Child("Moss", reads=False)))
    fern = context_at(home, clock, family)
    moss = fern.of(family.children[1])
    assert for_whom([fern, moss]) is fern
    lived(moss, TODAY, {SEVEN: Mark.NOT_YET})
    assert for_whom([fern, moss]) is moss
