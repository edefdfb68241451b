"""The rows of the table one by one: which candidates each names, in which order, and how many it may take."""

from collections.abc import Iterator, Mapping
from typing import Never

import pytest

from tests.engine.made import F, H, N, Past, made, today_of
from warmup.engine.memory import Day
from warmup.engine.picking import Today
from warmup.engine.rules import RULES, wobbled_lately
from warmup.model import Item, Mark, SlotKind

EASY: Past = ((12, F), (6, F))


def named(row: str, pasts: Mapping[Item, Past], index: int = 72) -> list[str]:
    """The skills of the candidates that a row names."""
    return named_on(row, today_of(pasts, index))


def named_on(row: str, today: Today) -> list[str]:
    """The skills of the candidates that a row names on this morning."""
    rule = next(each for each in RULES if each.name == row)
    return [c.item.skill for c in rule.which(today)]


def taken(row: str, today: Today) -> int:
    """How many a row takes."""
    rule = next(each for each in RULES if each.name == row)
    today.take(rule.name, rule.slot, rule.most, rule.which(today))
    return len(today.picks)


def test_the_close_is_the_most_overdue_of_what_is_likely_and_light() -> None:
    """Then the likeliest of all, the light ones first; nothing new, hard or stumbled on."""
    pasts: dict[Item, Past] = {
        made("knots/one", ends=True): ((12, F), (2, F)),
        made("ropes/one", ends=True): ((12, F), (6, F)),
        made("sails/one", ends=True): ((26, F),),
        made("winds/one"): ((1, F),),
        made("tides/one", ends=True): ((1, H),),
        made("sands/one", ends=True): ((1, N),),
        made("gulls/one", ends=True): (),
    }
    found = named("close", pasts)
    assert found[:2] == ["ropes", "knots"], "of 26 mornings out of 24 the chance is under 0.85"
    assert found[2:] == ["knots", "ropes", "sails", "winds"]


def test_the_level_asked_least_of_its_part_of_the_year_comes_first() -> None:
    least, more = made("knots/one", codes=("K.CC.A.1",)), made("ropes/one", codes=("K.CC.A.1",))
    for order in ((least, more), (more, least)):
        pasts: dict[Item, Past] = {item: ((9, F),) if item == least else ((20, F), (15, F)) for item in order}
        assert named("too few", pasts) == ["knots", "ropes"]


def test_a_level_asked_five_times_is_never_behind() -> None:
    five, four = ([(12 * n, F) for n in range(number, 0, -1)] for number in (5, 4))
    item = made("knots/one", codes=("K.CC.A.1",))
    assert named("too few", {item: five}, 143) == [], "the year's last morning"
    assert named("too few", {item: four}, 143) == ["knots"]


def test_what_waits_longest_begins_first_and_what_rested_longest_comes_first() -> None:
    new: dict[Item, Past] = {made("ropes/one", week=17): (), made("knots/one", week=16): ()}
    new[made("sails/one", week=18)] = ()
    assert named("first beyond", new) == ["knots", "ropes", "sails"]
    early = made("tides/one", week=30)
    assert named("first beyond", {**new, early: ()})[0] == "tides", "the adult opened it before its week"
    rested: dict[Item, Past] = {
        made("ropes/one"): ((16, N),),
        made("knots/one"): ((30, F), (20, F)),
        made("sails/one"): ((13, F),),
    }
    assert named("rested", rested) == ["knots", "ropes"]


@pytest.mark.parametrize(
    ("marks", "lately"),
    [
        ((F, F, F, H), False),
        ((F, F, H, N), True),
        ((H, H, F, F, F, H), False),
        ((H, F, F, F, F), False),
        ((F, F, H), False),
        ((F, H), True),
    ],
)
def test_a_third_wobbled_in_the_last_four_mornings(marks: tuple[Mark, ...], lately: bool) -> None:
    past = [(len(marks) - n, mark) for n, mark in enumerate(marks)]
    assert wobbled_lately(today_of({made("knots/one"): past})) is lately


def test_how_many_of_new_levels_and_of_the_strands_behind_come() -> None:
    coded = {made(f"skill{n}/one", week=18, codes=("K.CC.A.1",)): () for n in range(3)}
    plain = {made(f"skill{n}/one", week=18): () for n in range(3)}
    assert taken("first times", today_of(coded, gentle=False)) == 2
    assert taken("first beyond", today_of(plain, gentle=False)) == 2
    pasts: dict[Item, Past] = {made(f"skill{n}/one"): ((1, F),) for n in range(5)}
    pasts[made("steps/one", "counting")] = [(n, F) for n in range(35, 0, -1) for _ in range(3)]
    assert taken("shares", today_of(pasts, 107, count=4)) == 2
    ways: dict[Item, Past] = {made(f"skill{n}/two"): () for n in range(3)}
    ways |= {made(f"skill{n}/one"): ((1, F),) for n in range(3)}
    assert taken("new ways", today_of(ways, gentle=False)) == 1


def test_one_comes_after_a_review() -> None:
    """On the first morning of week 21: two skills of which one check in week 20 did not come easily."""
    pasts: dict[Item, Past] = {made(f"skill{n}/one"): ((4, F), (3, H)) for n in range(3)}
    pasts |= {made(f"other{n}/one"): ((1, F),) for n in range(8)}
    today = today_of(pasts, 80, gentle=False)
    assert named_on("after review", today)[:3] == ["skill0", "skill1", "skill2"]
    assert taken("after review", today) == 1


def test_a_strand_is_behind_by_more_than_2_4_points_of_a_quarters_prompts() -> None:
    """Of a quarter's 36 prompts number has 19 in 100: of 9 so far 171, of 10 190; 100 were asked."""
    for asked, behind in ((7, False), (8, True)):
        pasts: dict[Item, Past] = {made("steps/one", "counting"): [(n, F) for n in range(asked - 1, -1, -1)]}
        pasts[made("knots/one")] = ((40, F), (14, F))
        today = today_of(pasts, 107, count=1)
        points = (19 * (asked + 2) - 100) / 36
        assert today.behind["number"] == pytest.approx(points)
        assert ("knots" in named_on("shares", today)) is behind is (points > 2.4)


@pytest.mark.parametrize(("asked", "behind"), [(21, True), (22, False)])
def test_the_partners_of_ten_keep_up_with_42_a_year(asked: int, behind: bool) -> None:
    """On the 73rd morning of 144: 42 * 73 / 144 is 21.3."""
    last_year = range(110, 80, -1)
    pasts: dict[Item, Past] = {made("make-ten/one"): [(n, F) for n in (*last_year, *range(asked, 0, -1))]}
    assert named("yearly", pasts) == ["make-ten"] * behind


class Days(tuple[Day, ...]):
    """Mornings that are looked at from the newest on, and none of an earlier year but the first met."""

    def __iter__(self) -> Never:
        raise AssertionError("all years were gone through")

    def __reversed__(self) -> Iterator[Day]:
        for at in range(len(self) - 1, -1, -1):
            yield self[at]
            assert self[at].index >= 0, "an earlier year was gone through"


def test_no_row_takes_longer_as_the_years_go_by() -> None:
    pasts: dict[Item, Past] = {made("make-ten/one"): [(n, F) for n in range(600, 0, -3)]}
    today = today_of(pasts | {made(f"skill{n}/one"): ((n + 1, N),) for n in range(3)})
    today.pool.knowledge = today.pool.knowledge._replace(days=Days(today.pool.knowledge.days))
    assert today.pool.knowledge.days[0].index < -500
    for rule in RULES:
        list(rule.which(today))


def test_two_of_a_skill_unless_too_few_skills_are_open_to_fill_the_morning() -> None:
    pasts = {made(f"knots/{n}", level=n + 1): EASY for n in range(4)}
    assert today_of(pasts).of_a_skill == 8 and today_of(pasts, count=2).of_a_skill == 2
    assert today_of({**pasts, made("ropes/one"): EASY, made("sails/one"): EASY}, count=8).of_a_skill == 3
    assert today_of({made(f"skill{n}/one"): EASY for n in range(9)}).of_a_skill == 2


def test_picks_stand_where_the_file_has_their_slots_and_calendar_talk_first_whatever_asked_it() -> None:
    days, sums, knots = made("days/one", "calendar"), made("sums/one", "adding"), made("knots/one")
    today = today_of({days: EASY, sums: EASY, knots: EASY})
    by_item = {c.item: c for c in today.pool.all}
    for item, slot in ((knots, SlotKind.OLDER), (sums, SlotKind.ADDING), (days, SlotKind.OLDER)):
        today.take("", slot, 1, [by_item[item]])
    assert [pick.item for pick in today.ordered()] == [days, sums, knots]
