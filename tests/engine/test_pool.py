"""The items of one morning as the child would meet them: likely, overdue, hard, and whose turn it is."""

import math
from collections.abc import Mapping

import pytest

from tests.engine.made import F, H, N, Past, made, today_of
from warmup.engine.pool import Candidate
from warmup.model import Item, Mark

KNOTS, BESIDE = made("knots/one"), made("knots/two")


def candidates(pasts: Mapping[Item, Past], index: int = 72) -> dict[Item, Candidate]:
    """The candidates of a morning by their items."""
    return {c.item: c for c in today_of(pasts, index).pool.all}


def test_the_chance_is_six_parts_the_items_own_and_four_its_levels() -> None:
    """It rested 24 of its 24 mornings (3 * 8); its level 8 since the other's mark, of 24 + 2*16 = 56."""
    found = candidates({KNOTS: ((24, F),), BESIDE: ((8, F),)})
    own, level = 0.85, 0.85 ** (8 / 56)
    assert found[KNOTS].chance == pytest.approx(0.6 * own + 0.4 * level, abs=1e-6)
    # The other: 65 mornings since the year began, so 24 again, 8 of them rested.
    assert found[BESIDE].chance == pytest.approx(0.6 * 0.85 ** (8 / 24) + 0.4 * level, abs=1e-6)
    assert found[KNOTS].overdue == pytest.approx(math.log(found[KNOTS].chance) / math.log(0.85), abs=1e-5)


def test_what_was_never_asked_is_as_likely_as_its_level_and_overdue_since_it_opened() -> None:
    found = candidates({KNOTS: ((8, F),), BESIDE: ()})
    assert found[BESIDE].chance == pytest.approx(0.85 ** (8 / 24), abs=1e-6)
    assert found[BESIDE].overdue == 73 / 4


@pytest.mark.parametrize(
    ("mine", "other", "hard"),
    [
        (((1, F),), (), False),
        (((1, H),), (), False),
        (((1, N),), (), True),
        (((1, N),), ((1, F),), True),
        # Half of 4, rested 4 of 2: 0.85 ** 2.
        (((8, N), (7, H), (4, H)), (), True),
        (((8, N), (7, H), (3, H)), (), False),
        ((), (), True),
        ((), ((1, F),), False),
        ((), ((1, H),), True),
        ((), ((1, N),), True),
        ((), ((60, F),), True),
    ],
)
def test_what_is_hard(mine: Past, other: Past, hard: bool) -> None:
    """Likely to fail, last not yet, or never asked where its level did not come easily the last time."""
    pasts: dict[Item, Past] = {KNOTS: other, BESIDE: mine} if other else {BESIDE: mine}
    assert candidates(pasts)[BESIDE].hard is hard


def test_the_most_pressing_come_first_but_nothing_asked_is_more_than_twice_overdue() -> None:
    items = [made(f"skill{n}/one") for n in range(12)]
    order = [
        c.item for c in today_of({items[0]: ((3, F),), items[1]: ((9, F),), items[2]: ((6, F),)}).pool.all
    ]
    assert order == [items[1], items[2], items[0]]
    weak = dict.fromkeys(items, ((20, N), (19, N), (18, N)))
    pool = today_of({**weak, items[0]: ((40, N), (39, N), (38, N))}).pool.all
    assert all(c.overdue > 2 for c in pool)
    assert pool[0].item != items[0] or pool[0].tie == max(c.tie for c in pool)
    assert [c.tie for c in pool] == sorted((c.tie for c in pool), reverse=True), "alike from there on"


# -- whose turn it is


def rungs(ladder: bool = True, codes: tuple[str, ...] = ()) -> tuple[Item, Item, Item]:
    """Three levels of a skill, one above the other."""
    low, middle, top = (made(f"knots/{n}", level=n, ladder=ladder, codes=codes) for n in (1, 2, 3))
    return low, middle, top


TWICE: Past = ((9, F), (4, F))


def test_two_fluent_marks_running_on_a_rung_retire_those_below() -> None:
    low, middle, top = rungs()
    assert set(candidates({low: ((9, F),), middle: ((9, F),), top: ((4, F),)})) == {low, middle, top}
    assert set(candidates({low: ((9, F),), middle: TWICE, top: ((4, F),)})) == {middle, top}
    assert set(candidates({low: ((9, F),), middle: (), top: TWICE})) == {middle, top}, (
        "never begun, it may begin"
    )
    low, middle, top = rungs(ladder=False)
    assert set(candidates({low: ((9, F),), middle: TWICE, top: TWICE})) == {low, middle, top}


@pytest.mark.parametrize(("mark", "stays"), [(F, False), (H, True), (N, True)])
def test_what_was_stumbled_on_stays_under_a_higher_rung(mark: Mark, stays: bool) -> None:
    low, _, top = rungs()
    assert (low in candidates({low: ((9, mark),), top: TWICE})) is stays


def test_a_rung_with_a_kindergarten_code_stays_until_it_was_asked_five_times() -> None:
    low, _, top = rungs(codes=("K.CC.A.1",))
    for times, stays in ((4, True), (5, False)):
        assert (low in candidates({low: tuple((20 - n, F) for n in range(times)), top: TWICE})) is stays


def test_a_level_begins_with_its_plain_item_whatever_order_they_come_in() -> None:
    for pasts in ({KNOTS: (), BESIDE: ()}, {KNOTS: ((3, None),), BESIDE: ()}):
        assert set(candidates(pasts)) == {KNOTS}
    pool = today_of({KNOTS: (), BESIDE: ()}).pool
    turned = type(pool)((BESIDE, KNOTS), pool.knowledge, pool.morning, pool.curriculum, "Bean")
    assert [c.item for c in turned.all] == [KNOTS]
    assert set(candidates({KNOTS: ((3, F),), BESIDE: ()})) == {KNOTS, BESIDE}
    timely = today_of({KNOTS: (), BESIDE: ()}, timely=[BESIDE.id]).pool.all
    assert {c.item for c in timely} == {KNOTS, BESIDE}, "what the day itself asks for is always there"


def test_a_skill_has_rested_since_any_of_its_levels_was_asked() -> None:
    above, ahead = made("knots/above", level=2), made("ropes/ahead", week=30)
    assert today_of({KNOTS: ((9, F),), above: ((5, H),)}).pool.rests == {"knots": 5}
    assert today_of({KNOTS: ((9, F),), above: ()}).pool.rests == {"knots": 9}
    assert today_of({ahead: ()}).pool.rests["ropes"] > 144, "opened before its week, it tells nothing"


def test_how_many_could_be_easy_is_counted_by_two_of_a_skill() -> None:
    easy = {made(f"knots/{n}"): ((6, F),) for n in range(3)}
    assert today_of(easy).pool.easy() == 2
    assert today_of({**easy, made("ropes/one"): ((6, F),), made("sails/one"): ((6, N),)}).pool.easy() == 3
