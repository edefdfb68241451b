"""What the year plan makes of a family's year: when items unlock, when the family began, when it settles."""

import datetime as dt

import pytest

from warmup import skills
from warmup.engine.curriculum import curriculum
from warmup.engine.eligibility import Eligible
from warmup.model import Item, ItemId, LevelId, item_id, level_id, skill_and_key, skill_and_name
from warmup.schoolyear import school_year

FIRST = dt.date(2026, 8, 31)
YEAR = school_year(FIRST, (0, 1, 2))
ONE = Item(ItemId("knots/one"), "knots", 1, LevelId("knots:one"), "number", 1, guess=0.5)
TWO = Item(ItemId("knots/two"), "knots", 2, LevelId("knots:two"), "number", 4, hands=True)


def test_items_unlock_on_the_first_morning_of_their_week() -> None:
    plan = curriculum((ONE, TWO), YEAR, FIRST, (5, 9))
    assert (plan.opened(ONE), plan.opened(TWO)) == (0, 9), "three weeks of three mornings"
    assert plan.items == (ONE, TWO) and plan.by_id == {ONE.id: ONE, TWO.id: TWO}
    assert plan.reviews == (5, 9)


def test_what_came_before_the_family_began_unlocks_with_it() -> None:
    plan = curriculum((ONE, TWO), YEAR, YEAR.mornings[7])
    assert plan.since == 3
    assert (plan.opened(ONE), plan.opened(TWO)) == (6, 9), "the first morning of its first week"


@pytest.mark.parametrize(("began", "since"), [(0, 1), (2, 1), (3, 2), (5, 2), (6, 3)])
def test_a_family_settles_for_two_weeks_from_the_morning_it_began(began: int, since: int) -> None:
    plan = curriculum((ONE,), YEAR, YEAR.mornings[began])
    assert (plan.began, plan.since) == (began, since)
    new = [plan.new_family(YEAR.morning(date)) for date in YEAR.mornings[began : began + 8]]
    assert new == [True] * 6 + [False] * 2


def test_one_left_out_leaves_the_others_and_what_the_day_asks_for() -> None:
    both = Eligible((ONE, TWO), frozenset({TWO.id}))
    assert both.without(ONE.id) == Eligible((TWO,), frozenset({TWO.id}))


def test_every_id_is_made_of_the_two_parts_it_comes_apart_into() -> None:
    assert item_id("knots", "one") == ONE.id and level_id("knots", "one") == ONE.level_id
    for item in skills.item_names():
        place = skills.locate(item)
        assert item_id(*skill_and_name(item)) == item == place.id
        assert skill_and_name(item) == (place.skill.id, place.name)
    for level in skills.levels():
        assert level_id(*skill_and_key(level)) == level
