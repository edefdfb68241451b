"""What a kind morning never has: for every limit the smallest morning on which it alone says no."""

import datetime as dt
from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, NamedTuple

import pytest

from tests.engine.made import AROUND_SECONDS, BESIDE_SECONDS, F, N, Past, made, today_of
from warmup.engine import picking
from warmup.engine.picking import GENTLE, LIMITS, Pick, Today, find_order
from warmup.engine.pool import Candidate
from warmup.model import Item, Slot, SlotKind

EASY: Past = ((12, F), (6, F))
NOT_YET: Past = ((12, F), (6, N))
FULL = (Slot(SlotKind.CALENDAR, 1), Slot(SlotKind.OLDER, 12))


class Example(NamedTuple):
    """Items picked beside ``next``, which the limit refuses; ``less`` of them, and it does not."""

    picked: dict[Item, Past]
    next: Item
    past: Past = EASY
    less: int = 1
    more: Mapping[str, Any] = MappingProxyType({})


def skills(count: int, past: Past = EASY, **more: Any) -> dict[Item, Past]:
    """So many items of different skills, with the same past."""
    return {made(f"skill{n}/one", **more): past for n in range(count)}


KNOTS = made("knots/one")
EXAMPLES = {
    "_once": Example({KNOTS: EASY}, KNOTS),
    "_two_of_a_skill": Example({made("knots/two"): EASY, made("knots/three"): EASY}, KNOTS),
    "_calendar": Example({made("months/one", "calendar"): EASY}, made("days/one", "calendar")),
    "_things": Example(
        {made("flats/one", "shape and space"): EASY, made("tapes/one", "measuring and sorting"): EASY},
        made("jugs/one", "measuring and sorting"),
    ),
    "_time": Example(
        skills(7),
        KNOTS,
        more={"seconds": 8 * (40 + BESIDE_SECONDS) + AROUND_SECONDS - 1},
    ),
    "_fortnight": Example({}, made("knots/one", seconds=120), ((7, F),), less=0),
    "_one_own": Example({made("own/duck"): EASY}, made("own/door")),
    "_hard": Example(skills(3, NOT_YET), KNOTS, NOT_YET),
    "_first_times": Example(
        {made("skill0/two"): (), made("skill1/two"): (), made("skill2/two"): ()}, made("skill3/two"), ()
    ),
    "_ideas": Example(skills(2, ()), KNOTS, ()),
    "_nothing_new": Example({}, KNOTS, (), less=0, more={"index": 76}),
}


def picked_of(example: Example, less: int = 0) -> tuple[Today, Candidate]:
    """The morning with its picks, ``less`` of them left out, and the candidate beside them."""
    beside = {made(f"skill{n}/one"): EASY for n in range(9)}
    # What is new stands beside a plain item of its level that came easily.
    pasts = {**beside, **example.picked, example.next: example.past}
    today = today_of(pasts, **{"slots": FULL, **example.more})
    by_item = {c.item: c for c in today.pool.all}
    kept = list(example.picked)[: len(example.picked) - less]
    today.picks += [Pick(by_item[item], "", SlotKind.OLDER, 0) for item in kept]
    return today, by_item[example.next]


@pytest.mark.parametrize("limit", (*LIMITS, *GENTLE), ids=lambda limit: limit.__name__)
def test_every_limit_says_no_where_no_other_does(limit: picking.Limit) -> None:
    example = EXAMPLES[limit.__name__]
    today, candidate = picked_of(example)
    assert [each.__name__ for each in (*LIMITS, *GENTLE) if not each(today, candidate)] == [limit.__name__]
    assert not today.may(candidate)
    today.gentle = False
    assert today.may(candidate) is (limit in GENTLE), "those that give way where nearly all is new"
    if example.less:
        fewer, candidate = picked_of(example, example.less)
        assert fewer.may(candidate)


def test_each_limit_has_its_example() -> None:
    assert [limit.__name__ for limit in (*LIMITS, *GENTLE)] == list(EXAMPLES)


@pytest.mark.parametrize(("rested", "may"), [(7, False), (8, True)])
def test_what_counts_as_two_comes_once_a_fortnight(rested: int, may: bool) -> None:
    long = made("knots/one", seconds=120)
    today = today_of({long: ((rested, F),)})
    assert today.may(today.pool.all[0]) is may
    today.take("", SlotKind.OLDER, 1, today.pool.all)
    assert today.left == today.count - 2 * may, "it takes two places"


@pytest.mark.parametrize(("seconds", "fits"), [(50 + 52, True), (50 + 51, False)])
def test_the_ceiling_holds_cues_marks_opening_and_close(seconds: int, fits: bool) -> None:
    """Twelve seconds beside the prompt's own forty, and fifty around all."""
    today = today_of({KNOTS: EASY}, seconds=seconds)
    assert today.may(today.pool.all[0]) is fits


@pytest.mark.parametrize(
    ("week", "code", "index", "begins"),
    [
        (20, "K.CC.A.1", 78, False),
        (20, "K.CC.A.1", 79, True),
        (19, "K.CC.A.1", 75, True),
        (19, "K.CC.A.1", 76, True),
        (20, "K.CC.A.1", 80, True),
        (19, "", 79, False),
    ],
)
def test_in_a_review_week_begins_only_kindergarten_that_waited_a_week(
    week: int, code: str, index: int, begins: bool
) -> None:
    new = made("knots/one", week=week, codes=(code,))
    today = today_of({new: (), **skills(6)}, index)
    assert today.may(next(c for c in today.pool.all if c.item == new)) is begins


def test_nothing_begins_on_the_last_morning_but_what_the_day_asks_for() -> None:
    pasts = {KNOTS: (), **skills(6)}
    for timely in ((), (KNOTS.id,)):
        today = today_of(pasts, timely=timely)
        today.morning = today.morning._replace(next=None)
        new = next(c for c in today.pool.all if c.new)
        assert today.may(new) is bool(timely)
        today.morning = today.morning._replace(next=today.morning.date + dt.timedelta(1))
        assert today.may(new)


# -- room is left for what every morning has


def test_places_are_left_for_calendar_and_adding() -> None:
    days, sums = made("days/one", "calendar"), made("sums/one", "adding")
    today = today_of({days: EASY, sums: EASY, **skills(4)}, count=4)
    today.take("", SlotKind.OLDER, 10, [c for c in today.pool.all if c.item.strand == "number"])
    assert len(today.picks) == 2 and today.missing() == ["calendar", "adding"]
    before = today_of({days: EASY, sums: EASY, **skills(4)}, 40, count=4)
    assert before.missing() == ["calendar"], "adding comes every morning from week 12 on"
    assert today_of({sums: EASY}, 44).missing() == ["adding"] and not today_of(skills(1)).missing()


def test_time_is_left_for_adding_too() -> None:
    """Of four of forty seconds the last does not fit once its time is kept for adding."""
    sums = made("sums/one", "adding", seconds=60)
    shortest = made("sums/two", "adding", seconds=20)
    pasts = {sums: EASY, shortest: EASY, **skills(4)}
    for seconds, number in ((50 + 4 * 52 + 32, 4), (50 + 4 * 52 + 31, 3)):
        today = today_of(pasts, seconds=seconds)
        today.take("", SlotKind.OLDER, 10, [c for c in today.pool.all if c.item.strand == "number"])
        assert len(today.picks) == number
        today.take("", SlotKind.ADDING, 1, today.pool.of_strand("adding"))
        assert len(today.of_strand("adding")) == 1


# -- the order


def ordered(*hard: bool, gentle: bool = True, same: bool = False) -> list[str] | None:
    """The names of the picks in order, the last of them the close."""
    pasts = {
        made(f"skill{0 if same else n}/{n}", level=n + 1): NOT_YET if is_hard else EASY
        for n, is_hard in enumerate(hard)
    }
    pool = {c.item: c for c in today_of(pasts).pool.all}
    slots = [SlotKind.OLDER] * (len(hard) - 1) + [SlotKind.SURE]
    picks = [Pick(pool[item], "", slot, n) for n, (item, slot) in enumerate(zip(pasts, slots, strict=True))]
    order = find_order(picks, gentle=gentle)
    return None if order is None else [pick.item.id[-1] for pick in order]


def test_the_order_keeps_to_the_ranks_where_no_limit_is_broken() -> None:
    assert ordered(False, False, False, False) == ["0", "1", "2", "3"]
    assert ordered(True, False, False, False) == ["1", "0", "2", "3"], "the first is not hard"
    assert ordered(False, True, True, False, False) == ["0", "1", "3", "2", "4"], "no two hard ones running"
    assert ordered(True, True, False, False, False) == ["2", "0", "3", "1", "4"]
    assert ordered(False, True, True, False) is None, "two hard ones need an easy one between"
    assert ordered(True, True, False, gentle=False) == ["0", "1", "2"]
    assert ordered(False, False, same=True) is None, "no skill twice running"


def test_without_an_order_the_last_hard_one_goes() -> None:
    pasts = {KNOTS: NOT_YET, made("ropes/one"): NOT_YET, made("sails/one"): EASY}
    today = today_of(pasts)
    by_item = {c.item: c for c in today.pool.all}
    today.picks += [Pick(by_item[item], "", SlotKind.OLDER, 0) for item in pasts]
    assert [pick.item.id for pick in today.ordered()] == ["sails/one", "knots/one"]


def test_what_counts_as_two_prompts_leaves_less_room_for_hard_ones() -> None:
    """Four prompts in five places: an order has room for one hard one, not for two."""
    long = made("count/all", "counting")._replace(seconds=120)
    today = today_of({long: ((13, F), (9, F)), **skills(4)}, count=5)
    assert today.hard_left() == 2
    (whole,) = (c for c in today.pool.all if c.item == long)
    today.take("any", SlotKind.OLDER, 1, [whole])
    assert today.left == 3 and today.hard_left() == 1


@pytest.mark.parametrize("strand", ["calendar", "adding"])
def test_where_no_order_is_found_what_every_morning_has_goes_last(strand: str) -> None:
    """One easy prompt and two hard ones: one of these has to go, and it is not the later one here."""
    daily = made("days/one", strand)
    today = today_of({KNOTS: EASY, made("ropes/one"): NOT_YET, daily: NOT_YET})
    by_item = {c.item: c for c in today.pool.all}
    kept = (KNOTS, made("ropes/one"), daily)
    today.picks = [Pick(by_item[item], "", SlotKind.OLDER, 0) for item in kept]
    assert [pick.item for pick in today.ordered()] == [KNOTS, daily]
