"""Review weeks: two checks for each skill, what comes of them, and what the engine makes of it."""

import datetime as dt
from collections.abc import Sequence

import pytest

from warmup.engine import review
from warmup.engine.curriculum import Reviews, curriculum
from warmup.engine.eligibility import Eligible, open_items
from warmup.engine.engine import choose
from warmup.engine.memory import Checked, Knowledge, fold
from warmup.engine.pool import Pool
from warmup.engine.review import Outcome
from warmup.model import (
    Asked,
    Choice,
    DayKind,
    Item,
    ItemId,
    LevelId,
    Mark,
    Morning,
    Shape,
    Slot,
    SlotKind,
    item_id,
    level_id,
)
from warmup.schoolyear import SchoolYear

FIRST = dt.date(2026, 8, 31)
REVIEWS = (5, 10, 15, 20, 25)
SKILLS = ("knots", "ropes", "sails", "winds", "tides", "shells", "sands", "gulls", "crabs", "stars")
ITEMS = tuple(
    Item(item_id(skill, name), skill, level, level_id(skill, str(level)), "number", 1, hands=hands)
    for skill in SKILLS
    for level, names in ((1, ("one", "two")), (2, ("three", "four")))
    for name, hands in zip(names, (True, False), strict=True)
)
SHAPE = Shape(
    "review", (Slot(SlotKind.CHECK, 9), Slot(SlotKind.OLDER, 9), Slot(SlotKind.SURE, 1)), ((36, 8),)
)


def day(index: int) -> dt.date:
    """The date of a morning: Monday to Thursday from the first on."""
    return FIRST + dt.timedelta(index // 4 * 7 + index % 4)


YEAR = SchoolYear((0, 1, 2, 3), tuple(map(day, range(144))))
PLAN = curriculum(ITEMS, YEAR, FIRST, REVIEWS)


def morning(index: int) -> Morning:
    """One of four mornings a week."""
    week = index // 4 + 1
    return Morning(day(index), DayKind.SCHOOL, index + 1, week, (week - 1) // 9 + 1, week in REVIEWS, index)


def known(lines: Sequence[tuple[int, ItemId, Mark]]) -> Knowledge:
    """What these marks teach: morning index, item, mark."""
    asked = [Asked(day(index), item, mark) for index, item, mark in sorted(lines, key=lambda line: line[0])]
    return fold(PLAN._replace(guesses={}, unlocks={}), asked)


def chosen_from(items: Sequence[Item], shape: Shape, now: Knowledge, index: int) -> tuple[Choice, ...]:
    """What the engine chooses on a morning."""
    return choose(Eligible(tuple(items)), shape, now, morning(index), PLAN, child="Bean")


def taught(mark: Mark = Mark.FLUENT) -> list[tuple[int, ItemId, Mark]]:
    """Every item marked twice in weeks 3 and 4."""
    return [(n % 4 + at, item.id, mark) for n, item in enumerate(ITEMS) for at in (8, 12)]


def played(easy: bool) -> tuple[list[tuple[int, ItemId, Mark]], list[list[Item]]]:
    """Week 5 played through: all marks so far, and the items of each of its mornings."""
    lines, asked = taught(), []
    for index in range(16, 20):
        chosen = chosen_from(ITEMS, SHAPE, known(lines), index)
        asked.append([choice.item for choice in chosen])
        lines += [(index, item.id, Mark.FLUENT if easy else Mark.HESITATED) for item in asked[-1]]
    return lines, asked


def test_a_review_week_checks_each_skill_twice_on_different_mornings_with_things_and_without() -> None:
    lines, asked = played(easy=True)
    checks = known(lines).checks
    assert {skill for skill, checked in checks.items() if len(checked.marks) >= review.CHECKS} == set(SKILLS)
    for skill in SKILLS:
        mornings = [[item for item in items if item.skill == skill] for items in asked]
        first, second = [items[0] for items in mornings if items][:2]
        assert first.id != second.id and first.hands is not second.hands, skill
        assert first.level == second.level == 2
    assert all(review.outcome(checked) is Outcome.SETTLED for checked in checks.values())


@pytest.mark.parametrize(
    ("marks", "expected"),
    [
        ((), Outcome.OPEN),
        ((True,), Outcome.OPEN),
        ((True, True), Outcome.SETTLED),
        ((True, False), Outcome.PARTLY),
        ((False, True), Outcome.PARTLY),
        ((False, False), Outcome.AGAIN),
        ((False, False, True), Outcome.AGAIN),
    ],
)
def test_two_checks_make_an_outcome(marks: tuple[bool, ...], expected: Outcome) -> None:
    assert review.outcome(Checked(5, marks, 17, ItemId("knots/one"), True)) is expected


def checked_twice(one: Mark, other: Mark) -> list[tuple[int, ItemId, Mark]]:
    """The marks of weeks 3 to 5 in which "knots" was checked twice."""
    return [*taught(), (16, item_id("knots", "three"), one), (18, item_id("knots", "four"), other)]


def test_a_settled_skill_rests_longer_than_any_other() -> None:
    lines = checked_twice(Mark.FLUENT, Mark.FLUENT)
    lines += [(index, item_id(skill, "one"), Mark.FLUENT) for index in range(20, 32) for skill in SKILLS[1:]]
    table = Pool(ITEMS, known(lines), morning(32), "Bean")
    assert review.settled(table) == {"knots"} and table.rests["knots"] == 14
    assert not review.settled(Pool(ITEMS, known(lines), morning(4 * (5 + review.SETTLED_FOR)), "Bean"))
    chosen = chosen_from(ITEMS, SHAPE._replace(slots=SHAPE.slots[1:]), known(lines), 32)
    assert "knots" not in {choice.item.skill for choice in chosen}


def test_what_came_once_comes_twice_a_week_for_two_weeks() -> None:
    lines = checked_twice(Mark.FLUENT, Mark.HESITATED)
    shape = SHAPE._replace(slots=SHAPE.slots[1:])
    on = []
    for index in range(20, 28):
        chosen = chosen_from(ITEMS, shape, known(lines), index)
        lines += [(index, choice.item.id, Mark.FLUENT) for choice in chosen]
        on += [index // 4] if any(choice.item.skill == "knots" for choice in chosen) else []
    assert on.count(5) >= 2 and on.count(6) >= 2
    said = "came easily once out of two in the review: twice a week for now"
    assert said in {choice.why for choice in chosen_at(20, checked_twice(Mark.FLUENT, Mark.HESITATED))}
    assert said not in {choice.why for choice in chosen_at(28, lines)}


def chosen_at(index: int, lines: Sequence[tuple[int, ItemId, Mark]]) -> tuple[Choice, ...]:
    """An ordinary morning after these marks."""
    shape = SHAPE._replace(slots=SHAPE.slots[1:])
    return chosen_from(ITEMS, shape, known(lines), index)


def test_what_came_neither_time_goes_a_step_down_hands_on_and_what_stands_on_it_waits() -> None:
    lines = checked_twice(Mark.HESITATED, Mark.NOT_YET)
    above = Item(
        ItemId("knots/five"), "knots", 3, LevelId("knots:3"), "number", 6, stands_on=(LevelId("knots:2"),)
    )
    beside = Item(
        ItemId("boats/one"), "boats", 1, LevelId("boats:1"), "number", 6, stands_on=(LevelId("knots:1"),)
    )
    items = (*ITEMS, above, beside)
    shape = SHAPE._replace(slots=SHAPE.slots[1:])
    downs = []
    for index in range(20, 28):
        now = known(lines)
        waits = "knots" in review.step_down(now)
        able = open_items(items, morning(index), now)
        assert (above in able or beside in able) is not waits, index
        chosen = chosen_from(able, shape, now, index)
        lines += [(index, choice.item.id, Mark.FLUENT) for choice in chosen]
        downs += [choice.item for choice in chosen if choice.item.skill == "knots" and waits]
    assert len({item.id for item in downs}) >= 1
    assert len(downs) >= review.AGAIN_ON
    assert downs[0].level == 1 and downs[0].hands
    assert "knots" not in review.step_down(known(lines))


def test_the_review_is_told_by_its_outcomes() -> None:
    titles = {skill: skill.capitalize() for skill in SKILLS}
    now = known([*checked_twice(Mark.FLUENT, Mark.FLUENT), (16, item_id("ropes", "one"), Mark.NOT_YET)])
    assert review.review_summary(now, 5, titles) == "settled: knots; once more to check: ropes."
    assert review.review_summary(now, 10, titles) == ""


def test_nothing_is_checked_without_review_weeks() -> None:
    asked = [Asked(day(16), ItemId("knots/one"), Mark.FLUENT)]
    assert not fold(PLAN._replace(reviews=None), asked).checks


def test_what_was_touched_is_looked_up_from_the_last_review_week_of_the_list() -> None:
    """Weeks need not lie evenly: from week 5 to 9 it is four, and nothing before the first."""
    weeks = Reviews(4, (5, 9, 14))
    assert [weeks.last_before(week) for week in (1, 5, 6, 9, 10, 14, 20)] == [0, 0, 5, 5, 9, 9, 14]
    touched = ((19, item_id("knots", "one")), (20, item_id("ropes", "one")))
    asked = [Asked(day(index), item, Mark.FLUENT) for index, item in touched]
    now = fold(PLAN._replace(reviews=weeks), asked)
    table = Pool(ITEMS, now, morning(32), "Bean")
    assert [candidate.item.skill for candidate in review.checks(table)] == ["ropes"]
    assert now.checks.keys() == {"knots"}


# -- one morning by itself


def checks_at(index: int, *lines: tuple[int, ItemId, Mark]) -> list[str]:
    """The items for the checks of a morning, after two easy weeks and these marks."""
    table = Pool(ITEMS, known([*taught(), *lines]), morning(index), "Bean")
    return [candidate.item.id for candidate in review.checks(table)]


def test_a_skill_is_checked_once_a_morning() -> None:
    checked = (17, ItemId("knots/three"), Mark.FLUENT)
    assert not [item for item in checks_at(17, checked) if item.startswith("knots/")], "a second session"
    assert [item for item in checks_at(18, checked) if item.startswith("knots/")]
    assert len(checks_at(17)) == len(SKILLS)


@pytest.mark.parametrize("hands", [True, False])
def test_the_second_check_has_things_on_the_table_where_the_first_had_none(hands: bool) -> None:
    """Though another one like the first has rested longer."""
    first, like_it, other = (
        Item(item_id("knots", name), "knots", 1, level_id("knots", "1"), "number", 1, hands=with_things)
        for name, with_things in (("one", hands), ("two", hands), ("three", not hands))
    )
    marks = [(16, first.id), (9, like_it.id), (14, other.id)]
    lines = [(index, item, Mark.FLUENT) for index, item in marks]
    asked = [Asked(day(index), item, mark) for index, item, mark in sorted(lines)]
    three = (first, like_it, other)
    plan = curriculum(three, YEAR, FIRST, REVIEWS)._replace(guesses={}, unlocks={})
    table = Pool(three, fold(plan, asked), morning(18), "Bean")
    assert table.all[0].item == like_it
    assert [candidate.item for candidate in review.checks(table)] == [other]


@pytest.mark.parametrize(("rested", "comes"), [(1, False), (2, True), (3, True)])
def test_what_comes_twice_a_week_has_rested_for_two_mornings(rested: int, comes: bool) -> None:
    knowledge = known([*taught(), (22 - rested, ItemId("knots/one"), Mark.FLUENT)])
    partly = Checked(5, (True, False), 18, ItemId("knots/three"), True)
    knowledge = knowledge._replace(checks={"knots": partly})
    found = [each.item.skill for each in review.twice_a_week(Pool(ITEMS, knowledge, morning(22), "Bean"))]
    assert found == ["knots"] * comes
