"""What a family wrote itself among the rest: it is chosen by the same limits, and stands in for nothing."""

import pytest

from tests.engine.made import F, H, N, Past, known, made, morning, plan_of, today_of
from tests.household import fixed_prompts
from warmup.engine import review
from warmup.engine.eligibility import Eligible
from warmup.engine.engine import choose, surest
from warmup.engine.giveaways import is_talk, tells
from warmup.engine.picking import Pick, Today
from warmup.engine.pool import Candidate
from warmup.engine.rules import RULES
from warmup.model import Item, ItemId, Shape, Slot, SlotKind

EASY: Past = ((12, F), (6, F))
DUCK, DOOR = made("own/duck", "counting"), made("own/door", "calendar")
DAYS, SUMS, KNOTS = made("days/one", "calendar"), made("sums/one", "adding"), made("knots/one")
REVIEW_WEEK = 76
TALK = (Slot(SlotKind.CALENDAR, 1), Slot(SlotKind.ADDING, 1), Slot(SlotKind.OLDER, 12))


def picked(today: Today, *items: Item) -> dict[Item, Candidate]:
    """The candidates by item, with these picked."""
    by_item = {c.item: c for c in today.pool.all}
    today.picks += [Pick(by_item[item], "", SlotKind.OLDER, 0) for item in items]
    return by_item


def named(row: str, today: Today) -> list[ItemId]:
    rule = next(each for each in RULES if each.name == row)
    return [c.item.id for c in rule.which(today)]


def test_one_a_morning_also_where_the_morning_has_a_second_warm_up() -> None:
    """On the 72nd morning the one was asked already, or two mornings before."""
    for ago, may in ((0, False), (2, True)):
        today = today_of({DUCK: ((ago, F),), DOOR: ((9, F),), KNOTS: EASY})
        by_item = picked(today)
        assert today.may(by_item[DOOR]) is may and today.may(by_item[KNOTS])


def test_of_the_calendar_it_neither_takes_the_place_of_talk_nor_is_kept_out_by_it() -> None:
    pasts: dict[Item, Past] = {DOOR: EASY, DAYS: EASY, KNOTS: EASY}
    today = today_of(pasts, slots=TALK)
    by_item = picked(today, DOOR)
    assert today.missing() == ["calendar"] and today.may(by_item[DAYS])
    assert named("calendar", today) == ["days/one"]
    other = today_of(pasts, slots=TALK)
    assert other.may(picked(other, DAYS)[DOOR]) and other.missing() == []
    alone = today_of({DOOR: EASY, KNOTS: EASY}, slots=TALK)
    assert alone.missing() == [] and named("calendar", alone) == []


def test_of_adding_it_does_not_take_the_place_of_the_daily_one() -> None:
    own = made("own/piggy", "adding")
    today = today_of({own: EASY, SUMS: EASY}, slots=TALK)
    picked(today, own)
    assert today.missing() == ["adding"] and named("adding", today) == ["sums/one"]


def test_of_shape_or_measuring_it_counts_as_one_of_two() -> None:
    own, jugs = made("own/box", "shape and space"), made("jugs/one", "measuring and sorting")
    tapes = made("tapes/one", "measuring and sorting")
    today = today_of({own: EASY, jugs: EASY, tapes: EASY})
    assert not today.may(picked(today, own, jugs)[tapes])


def test_it_counts_for_its_strand_in_the_year() -> None:
    """The share that counting had of the quarter's prompts: asked once more, and it is less behind."""
    pasts: dict[Item, Past] = {made("steps/one", "counting"): ((3, F),)}
    more = today_of({**pasts, DUCK: ((2, F), (1, F))}, 74)
    assert more.behind["counting"] < today_of(pasts, 74).behind["counting"]


def test_no_check_of_a_review_is_an_own_one() -> None:
    pasts: dict[Item, Past] = {DUCK: ((9, H), (5, N)), KNOTS: EASY}
    assert named("checks", today_of(pasts, REVIEW_WEEK)) == ["knots/one"]
    plan = plan_of(pasts)
    lived = known(plan, {DUCK: ((1, H),), KNOTS: ((1, H),)}, REVIEW_WEEK + 1)
    assert review.checks(lived, plan, REVIEW_WEEK // 4 + 1) == {"knots": (False,)}


def test_what_is_easy_and_own_fills_one_place_however_many_there_are() -> None:
    assert today_of({DUCK: EASY, DOOR: EASY, made("own/cat"): EASY}).pool.easy() == 1
    assert today_of({DUCK: EASY, DOOR: EASY, KNOTS: EASY}).pool.easy() == 2


@pytest.mark.parametrize(
    ("past", "why"),
    [
        ((), "your own, not asked yet"),
        (((20, F),), "not met for five weeks"),
        (((1, N),), "not yet on Thursday"),
    ],
)
def test_why_it_comes(past: Past, why: str) -> None:
    """Also where the family began later than the week it may be asked from: it is none of the program's."""
    pasts: dict[Item, Past] = {DUCK: past}
    plan = plan_of(pasts, began=40)
    shape = Shape("own", (Slot(SlotKind.NEWEST, 1), Slot(SlotKind.OLDER, 2)))
    choices = choose(
        Eligible((DUCK,)), shape, known(plan, pasts, 72), morning(72), plan, child="Bean", count=1
    )
    assert [choice.why for choice in choices] == [why]


def test_it_closes_a_morning_by_the_same_limits_as_others_only() -> None:
    """The last place is for what is quick: an own one has it where nothing else is easy."""
    light, plain = made("knots/one", ends=True), made("ropes/one")
    assert named("close", today_of({DUCK: EASY, light: EASY}))[0] == "knots/one"
    for past, closes in ((EASY, True), (((3, N),), False), ((), False), (((1, H),), False)):
        today = today_of({DUCK: past, plain: EASY})
        assert ("own/duck" in named("close", today)) is closes
    plan = plan_of({DUCK: ((3, N),)})
    sure = surest((DUCK,), known(plan, {DUCK: ((3, N),)}, 72), morning(72), plan, child="Bean")
    assert sure is None


def test_where_no_order_is_kind_the_own_one_goes_before_calendar_talk() -> None:
    """Three hard ones have no order with two easy ones; talk stays where something else can go."""
    pasts: dict[Item, Past] = {DOOR: ((3, N),), DAYS: ((3, N),)}
    for items in ((DOOR, DAYS), (DAYS, DOOR)):
        today = today_of(pasts)
        picked(today, *items)
        today.gentle = True
        easy = today_of({**pasts, KNOTS: EASY})
        picked(easy, *items, KNOTS)
        assert {pick.item.id for pick in easy.ordered()} == {"days/one", "knots/one"}


def test_its_words_are_no_calendar_talk_whatever_its_strand() -> None:
    ten, *_, weekday, _, _ = fixed_prompts()
    own = ten._replace(item=ItemId("own/day"), skill="own", level="day", say=weekday.answer)
    assert is_talk(weekday) and not is_talk(own)
    assert not tells(own, weekday) and not tells(weekday, own)
