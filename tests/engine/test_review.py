"""Review weeks: two checks for each of a few skills, what comes of them, and the two weeks after."""

import datetime as dt
from collections.abc import Sequence

import pytest

from tests.engine.made import FIRST, REVIEW, F, H, N, Past, S, day, made, morning, plan_of, today_of
from warmup.engine.eligibility import Eligible
from warmup.engine.engine import choose
from warmup.engine.memory import Knowledge, fold
from warmup.engine.review import CHECKS, MOST_SKILLS, Outcome, checks, moved, outcome, review_summary
from warmup.engine.rules import RULES
from warmup.model import Asked, Item, Mark
from warmup.schoolyear import school_year

SKILLS = ("knots", "ropes", "sails", "winds", "tides", "shells", "sands", "gulls", "crabs", "stars")
ITEMS = tuple(made(f"{skill}/{name}") for skill in SKILLS for name in ("one", "two"))
PLAN = plan_of(ITEMS)
ONE, TWO, ROPE = ITEMS[0], ITEMS[1], ITEMS[2]
Line = tuple[int, Item, Mark | None]


def knows(lines: Sequence[Line], cue: int = 0) -> Knowledge:
    """What these marks teach: morning index, item, mark."""
    return fold(PLAN, [Asked(day(index), item.id, mark, cue) for index, item, mark in lines])


@pytest.mark.parametrize(
    ("marks", "expected"),
    [
        ((), Outcome.OPEN),
        ((True,), Outcome.OPEN),
        ((False,), Outcome.OPEN),
        ((True, True), Outcome.SETTLED),
        ((True, False), Outcome.PARTLY),
        ((False, True), Outcome.PARTLY),
        ((False, False), Outcome.AGAIN),
        ((False, False, True), Outcome.AGAIN),
        ((True, True, False), Outcome.SETTLED),
    ],
)
def test_two_checks_make_an_outcome(marks: tuple[bool, ...], expected: Outcome) -> None:
    assert outcome(marks) is expected


def test_each_morning_of_the_week_counts_once_by_the_first_mark_of_a_skill() -> None:
    """Week 5 has the mornings 16 to 19."""

    def of_knots(*lines: Line, cue: int = 0) -> tuple[bool, ...] | None:
        return checks(knows(lines, cue), PLAN, 5).get("knots")

    assert of_knots((15, ONE, F), (20, ONE, F)) is None, "the weeks beside it"
    assert of_knots((16, ONE, F)) == (True,) == of_knots((19, ONE, F))
    assert of_knots((16, TWO, N), (16, ONE, F)) == (False,)
    assert of_knots((16, ONE, S), (16, TWO, None), (16, TWO, F)) == (True,)
    assert of_knots((16, ONE, F), (18, TWO, H)) == (True, False)
    assert of_knots((16, ONE, F), cue=1) == (False,)
    assert of_knots((16, ROPE, F)) is None


def played(mark: Mark) -> tuple[Knowledge, list[list[Item]]]:
    """Week 5 played through: what is known after it, and the items of each of its mornings."""
    lines: list[Line] = [(8 + n % 4 + 4 * (n % 2), item, F) for n, item in enumerate(ITEMS)]
    asked = []
    for index in range(16, 20):
        now = knows(sorted(lines, key=lambda line: line[0]))
        there = morning(index)
        chosen = choose(Eligible(ITEMS), REVIEW, now, there, PLAN, child="Bean", count=6)
        asked.append([choice.item for choice in chosen])
        lines += [(index, item, mark) for item in asked[-1]]
    return knows(sorted(lines, key=lambda line: line[0])), asked


@pytest.mark.parametrize("mark", [F, H])
def test_a_review_week_checks_eight_skills_twice_on_different_mornings(mark: Mark) -> None:
    now, asked = played(mark)
    done = checks(now, PLAN, 5)
    twice = [skill for skill, marks in done.items() if len(marks) >= CHECKS]
    assert len(twice) >= MOST_SKILLS == 8
    assert {outcome(done[skill]) for skill in twice} == {Outcome.SETTLED if mark is F else Outcome.AGAIN}
    assert all(len(items) == 6 for items in asked)


def test_no_ninth_skill_is_checked_while_eight_are() -> None:
    """The rule by itself: in the first half of the week first checks go first, then the second ones do."""

    def row(index: int, done: int) -> list[str]:
        past: dict[Item, Past] = dict.fromkeys(ITEMS[::2], ((30, F),))
        past |= dict.fromkeys(ITEMS[: 2 * done : 2], ((30, F), (index - 16, F)))
        rule = next(each for each in RULES if each.name == "checks")
        return [c.item.skill for c in rule.which(today_of(past, index))]

    assert set(row(17, 0)) == set(row(17, 0)[:8]) and len(row(17, 0)) == 8
    assert len(row(17, 3)) == 5 + 3 and set(row(17, 3)[-3:]) == set(SKILLS[:3])
    assert set(row(18, 3)[:3]) == set(SKILLS[:3]) and len(row(18, 3)) == 8
    assert set(row(18, 8)) == set(SKILLS[:8]) == set(row(17, 8))
    assert not row(20, 3), "no review week"


def test_shaky_skills_are_checked_first_and_then_the_newest() -> None:
    old, new, shaky = made("knots/one"), made("ropes/one", week=3), made("sails/one")
    pasts: dict[Item, Past] = {old: ((6, F),), new: ((4, F),), shaky: ((4, H),), made("winds/one"): ()}
    rule = next(each for each in RULES if each.name == "checks")
    assert [c.item for c in rule.which(today_of(pasts, 16))] == [shaky, new, old], "none that never began"


# -- the two weeks after


def after(index: int, *marks: Mark, rested: int = 3) -> list[Item]:
    """What the rule after a review names: knots were checked on the first mornings of week 5."""
    hard, easy = made("knots/two", level=2, hands=True), made("knots/one")
    beside = made("knots/by-eye")
    pasts: dict[Item, Past] = {
        hard: tuple((index - 16 - n, mark) for n, mark in enumerate(marks)),
        easy: ((index - 12, F), (rested, F)) if rested < index - 20 else ((index - 12, F),),
        beside._replace(hands=True): ((index - 13, F),),
    }
    rule = next(each for each in RULES if each.name == "after review")
    return [c.item for c in rule.which(today_of(pasts, index))]


def test_what_did_not_settle_comes_again_for_two_weeks() -> None:
    assert not after(20, F, F) and not after(20, N), "settled, or checked once"
    assert after(20, F, H) and after(27, F, H) and not after(28, F, H)
    assert not after(18, F, H), "the week itself"
    assert not after(24, F, N, rested=1) and after(24, F, N, rested=2), "twice a week"


def test_where_neither_check_came_easily_the_easier_things_come_first_hands_on() -> None:
    assert [item.id for item in after(20, H, N)] == ["knots/by-eye", "knots/one", "knots/two"]
    assert next(item.id for item in after(20, F, N)) == "knots/one", "else the most pressing"


def test_the_review_is_told_by_its_outcomes() -> None:
    titles = {skill: skill.capitalize() for skill in SKILLS}
    lines: list[Line] = [(16, ONE, F), (16, ROPE, N), (17, TWO, F), (18, ITEMS[4], F), (19, ITEMS[4], H)]
    now = knows(lines)
    told = "settled: knots; came once out of two: sails; once more to check: ropes."
    assert review_summary(now, PLAN, 5, titles) == told
    assert review_summary(now, PLAN, 10, titles) == ""
    assert review_summary(knows([(16, ONE, H), (17, ONE, H)]), PLAN, 5, {}) == "easier first: knots."


MISSED = school_year(FIRST, (0, 1, 2, 3))


def held_in(weeks: dict[int, int]) -> list[dt.date]:
    """Warm-ups on so many mornings of each week."""
    return [MISSED.mornings[(week - 1) * 4 + n] for week, count in weeks.items() for n in range(count)]


@pytest.mark.parametrize(
    ("weeks", "first", "today", "expected"),
    [
        ({4: 4, 5: 4, 6: 4}, 0, 24, (5, 9, 14)),
        ({4: 4, 5: 2, 6: 4}, 0, 24, (5, 9, 14)),  # both checks had a morning
        ({4: 4, 5: 1}, 0, 19, (5, 9, 14)),  # its last morning has not gone by
        ({4: 4, 5: 1}, 0, 20, (6, 9, 14)),
        ({4: 4}, 0, 24, (7, 9, 14)),  # the week after was missed as well
        ({4: 4}, 0, 32, (8, 9, 14)),  # and it never runs into the next one
        ({4: 4}, 16, 20, (6, 9, 14)),
        ({4: 4}, 17, 20, (5, 9, 14)),  # the child began in the middle of that week
    ],
)
def test_a_review_week_that_was_missed_comes_a_week_later(
    weeks: dict[int, int], first: int, today: int, expected: tuple[int, ...]
) -> None:
    assert moved((5, 9, 14), MISSED, held_in(weeks), first, today) == expected


def test_a_review_moves_past_a_held_week_as_one_and_never_past_the_last() -> None:
    year = school_year(FIRST, (0, 1, 2, 3), held=(5,))
    once = [FIRST]
    assert moved((5,), year, once, 0, 20) == (5,), "its second week is to come"
    assert moved((5,), year, once, 0, 24) == (6,)
    assert moved((36,), MISSED, once, 0, 144) == (36,)
    assert moved((5,), MISSED, [], 0, 24) == (5,), "nobody missed it who had not begun"
