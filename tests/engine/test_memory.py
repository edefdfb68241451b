"""The memory rule, worked by hand, each case with its arithmetic beside it; and which way spacing goes.

Time is counted in mornings. An item starts with a interval of 4 and has rested since the morning before it
unlocked, so one that unlocks at index 0 has rested 1 morning at index 0 and 4 at index 3.
"""

import datetime as dt
import math
from itertools import pairwise

import pytest

from tests.bank import reference
from warmup.engine.curriculum import Curriculum, Reviews
from warmup.engine.memory import LONGEST, NEW, Checked, Day, Knowledge, Record, fold, learn
from warmup.model import Asked, ItemId, Mark
from warmup.schoolyear import SchoolYear

FIRST = dt.date(2026, 8, 31)
ITEM = ItemId("knots/one")
TWO, THREE = ItemId("knots/two"), ItemId("knots/three")
ROPE, SAIL = ItemId("ropes/one"), ItemId("sails/one")
F, H, N, S = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED
SPACING = reference("pedagogy")["spacing"]


def day(index: int) -> dt.date:
    """The date of a morning: one every day, so that an index is a number of days."""
    return FIRST + dt.timedelta(index)


PLAIN = Curriculum((), {}, {}, SchoolYear(tuple(range(7)), tuple(map(day, range(400)))))
"""Every day a morning, and no review weeks."""


def after(*lines: tuple[int, Mark | None], opened: int = 0, guess: float = 0.0) -> Record:
    """The item's record after plain marks on these mornings."""
    asked = [Asked(day(index), ITEM, mark) for index, mark in lines]
    return fold(PLAIN._replace(unlocks={ITEM: opened}, guesses={ITEM: guess}), asked).of(ITEM)


def once(
    index: int,
    mark: Mark,
    before: Record = NEW,
    *,
    guess: float = 0.0,
    cue: int = 0,
    rough: bool = False,
    from_memory: bool = False,
) -> Record:
    """The record after one mark with a cue, on a rough day, or from memory."""
    return learn(before, Asked(day(index), ITEM, mark, cue, rough, from_memory), index, 0, guess)


# -- one mark after another, by hand


@pytest.mark.parametrize(
    ("index", "opened", "overdue", "chance"),
    [
        (0, 0, 0.25, 0.960184),  # 1 of 4 mornings; 0.85 ^ (1/4) is the root of 0.921954, the root of 0.85
        (1, 0, 0.5, 0.921954),  # 2 of 4; 0.921954 * 0.921954 = 0.849999
        (3, 0, 1.0, 0.85),  # 4 of 4: just due
        (7, 0, 2.0, 0.7225),  # 8 of 4; 0.85 * 0.85
        (11, 0, 3.0, 0.614125),  # 12 of 4; 0.85 * 0.85 * 0.85
        (11, 8, 1.0, 0.85),  # it unlocked at 8 and rested since 7: 4 of 4
        (7, 8, 0.0, 1.0),  # the morning before it unlocked: 0 of 4
        (2, 8, 0.0, 1.0),  # before that nothing has rested
    ],
)
def test_a_new_item_rests_from_the_morning_before_it_unlocked(
    index: int, opened: int, overdue: float, chance: float
) -> None:
    assert NEW.overdue(index, opened) == overdue
    assert NEW.chance(index, opened) == pytest.approx(chance, abs=1e-6)


def test_once_marked_an_item_rests_from_its_last_mark() -> None:
    record = Record(interval=6.0, last=10)
    assert record.overdue(13, 0) == 0.5  # 3 of 6, whenever it unlocked
    assert record.overdue(22, 12) == 2.0 and record.chance(22, 12) == pytest.approx(0.7225)  # 12 of 6
    assert record.overdue(10, 0) == 0.0 == record.overdue(4, 0) and record.chance(10, 0) == 1.0


@pytest.mark.parametrize(
    ("lines", "interval"),
    [
        ([(0, F)], 6.0),  # e = 1, no more than 4: 4 + 2*1
        ([(3, F)], 12.0),  # e = 4: 4 + 2*4
        ([(4, F)], 15.0),  # e = 5, more than 4: 3 * min(5, 8)
        ([(7, F)], 24.0),  # e = 8: 3 * min(8, 8)
        ([(20, F)], 24.0),  # e = 21: 3 * min(21, 8)
        ([(0, F), (6, F)], 18.0),  # 6, then e = 6: 6 + 12
        ([(0, F), (6, F), (24, F)], 54.0),  # 18, then e = 18: 18 + 36
        ([(0, F), (6, F), (24, F), (78, F)], 72.0),  # 54, then e = 54: 54 + 108 = 162, no more than 72
        ([(0, F), (0, F)], 6.0),  # asked again the same morning, e = 0: 6 + 0
        ([(0, F), (1, F), (2, F)], 10.0),  # day after day: 6 + 2 = 8, 8 + 2 = 10
        ([(0, H)], 4.0),  # stays
        ([(0, H), (2, F)], 8.0),  # back after 2: 4 + 4
        ([(0, H), (9, F)], 24.0),  # e = 9, counted from the hesitated mark: 3 * min(9, 8)
        ([(0, N)], 2.0),  # 4 / 2
        ([(0, N), (1, N)], 1.0),  # 2 / 2
        ([(0, N), (1, N), (2, N)], 1.0),  # 1 / 2, no less than 1
        ([(0, N), (1, F)], 4.0),  # 2, then e = 1: 2 + 2
        ([(0, N), (1, N), (2, F)], 3.0),  # 1, then e = 1: 1 + 2
        ([(0, N), (1, N), (4, F)], 6.0),  # 1, then e = 3: 3 * min(3, 2)
        ([(3, F), (15, N), (16, F)], 8.0),  # 12, 12 / 2 = 6, then e = 1: 6 + 2
        ([(3, F), (15, H), (17, F)], 16.0),  # 12, 12, then e = 2: 12 + 4
    ],
)
def test_the_interval_by_hand(lines: list[tuple[int, Mark]], interval: float) -> None:
    assert after(*lines).interval == interval


def test_an_item_that_unlocks_later_has_not_rested_before() -> None:
    assert after((8, F), opened=8).interval == 6.0  # e = 1: 4 + 2
    assert after((12, F), opened=8).interval == 15.0  # e = 5: 3 * 5
    assert after((5, F), opened=8).interval == 4.0  # asked before its time, e = 0: 4 + 0


@pytest.mark.parametrize(
    ("lines", "due_at"),
    [
        ([(3, F)], None),
        ([(3, H)], 5),  # 3 + 2
        ([(3, N)], 4),  # 3 + 1
        ([(3, H), (5, F)], None),
        ([(3, H), (4, N)], 5),  # 4 + 1
        ([(3, N), (4, H)], 6),  # 4 + 2
        ([(3, N), (4, S), (5, None)], 4),  # what counts for nothing pays nothing back
    ],
)
def test_when_it_is_due_back(lines: list[tuple[int, Mark | None]], due_at: int | None) -> None:
    assert after(*lines).due_at == due_at


def test_a_cue_counts_as_hesitated() -> None:
    helped = once(3, F, cue=1)
    assert (helped.interval, helped.due_at, helped.mark, helped.run) == (4.0, 5, H, 0)
    assert helped == once(3, H) == once(3, H, cue=3)
    assert once(3, N, cue=2) == once(3, N), "a cue makes a not yet no better"


def test_a_rough_day_lowers_nothing() -> None:
    rough = once(3, N, rough=True)
    assert (rough.interval, rough.due_at, rough.misses) == (4.0, 4, 0)  # due all the same
    twice = once(4, N, before=once(3, N))
    assert once(5, N, before=twice, rough=True).misses == twice.misses == 2, "no reason to teach it again"
    assert once(3, F, rough=True).interval == 12.0  # e = 4: 4 + 8, as on any day
    assert once(3, H, rough=True).interval == 4.0


def test_a_mark_from_memory_weighs_half() -> None:
    assert once(3, F, from_memory=True).interval == 8.0  # 4 + 8/2
    assert once(7, F, from_memory=True).interval == 14.0  # from 4 to 24, half of it: 4 + 20/2
    assert once(3, N, from_memory=True).interval == 3.0  # a quarter off: 4 - 4/4
    assert once(3, H, from_memory=True) == once(3, H)
    assert once(3, N, from_memory=True).due_at == 4


def test_a_lucky_answer_grows_the_gap_less() -> None:
    assert once(3, F, guess=0.5).interval == 8.0  # one in two: 4 + 8/2
    assert once(3, F, guess=0.25).interval == 10.0  # one in four: 4 + 8*3/4
    assert once(20, F, guess=0.5).interval == 14.0  # from 4 to 24: 4 + 20/2
    assert once(3, F, guess=0.5, from_memory=True).interval == 6.0  # 4 + 8/4
    assert once(3, N, guess=0.5).interval == 2.0, "no luck in a not yet: 4 / 2"


def test_skipped_and_unmarked_count_as_shown_and_for_nothing_else() -> None:
    asked = [Asked(day(3), ITEM, H, wording="a"), Asked(day(5), ITEM, S, wording="b")]
    asked.append(Asked(day(6), ITEM, None, cue=2, wording="c"))
    before = fold(PLAIN, asked[:1]).of(ITEM)
    record = fold(PLAIN, asked).of(ITEM)
    assert record == before._replace(shown=3, shown_on=day(6), wording="c")
    assert (record.marks, record.last, record.marked_on) == (1, 3, day(3))
    assert after((5, S)) == NEW._replace(shown=1, shown_on=day(5))


def test_runs_and_misses() -> None:
    def counted(*marks: Mark | None) -> tuple[int, int, int, int]:
        record = after(*enumerate(marks))
        return record.run, record.misses, record.marks, record.shown

    assert counted(F, F, F) == (3, 0, 3, 3)
    assert counted(F, F, H) == (0, 0, 3, 3)
    assert counted(N, N, N) == (0, 3, 3, 3)
    assert counted(N, N, H, N) == (0, 1, 4, 4)
    assert counted(F, S, F, None, F) == (3, 0, 3, 5)
    assert counted(N, None, N, S) == (0, 2, 2, 4)
    assert counted(F, N, F) == (1, 0, 3, 3)


def test_the_last_four_mornings() -> None:
    lines = [
        Asked(day(0), ITEM, F),
        Asked(day(1), ITEM, N),
        Asked(day(1), ROPE, F),
        Asked(day(4), ITEM, F, cue=1),  # helped: marked, but not as come easily
        Asked(day(4), ROPE, F),
        Asked(day(4), SAIL, H),
        Asked(day(5), SAIL, S),  # nothing that counts: no morning
        Asked(day(6), SAIL, None),
        Asked(day(8), SAIL, F),
        Asked(day(9), ITEM, F),
        Asked(day(9), TWO, F),
    ]
    four = (Day(day(1), 1, 2), Day(day(4), 1, 3), Day(day(8), 1, 1), Day(day(9), 2, 2))
    assert fold(PLAIN, lines).days == four
    assert fold(PLAIN, lines[:3]).days == (Day(day(0), 1, 1), Day(day(1), 1, 2))
    assert Knowledge().of(ItemId("knots/none")) == NEW


# -- review weeks: four mornings a week and weeks 5 and 10, so week 5 has the mornings 16 to 19

WEEKS = Reviews(4, (5, 10), frozenset({ITEM}))


def checked(*lines: tuple[int, ItemId, Mark | None], cue: int = 0) -> Checked | None:
    """What the last review week said of knots."""
    asked = [Asked(day(index), item, mark, cue) for index, item, mark in lines]
    return fold(PLAIN._replace(reviews=WEEKS), asked).checks.get("knots")


def test_each_morning_of_a_review_week_counts_once_by_its_first_mark() -> None:
    assert checked((15, ITEM, F)) is None, "week 4"
    assert checked((16, ITEM, F)) == Checked(5, (True,), 16, ITEM, True)
    assert checked((16, TWO, N), (16, ITEM, F)) == Checked(5, (False,), 16, TWO, False)
    assert checked((16, ITEM, S), (16, TWO, None), (16, THREE, F)) == Checked(5, (True,), 16, THREE, False)
    assert checked((16, ITEM, F), (18, TWO, H)) == Checked(5, (True, False), 18, TWO, False)
    assert checked((16, ITEM, F), cue=1) == Checked(5, (False,), 16, ITEM, True)
    assert checked((16, ROPE, F)) is None
    every = checked(*((index, ITEM, mark) for index in range(14, 22) for mark in (F, N)))
    assert every == Checked(5, (True,) * 4, 19, ITEM, True, since=2, last_since=21)


def test_later_mornings_are_counted_until_the_next_review_week() -> None:
    first = (16, ITEM, N)
    assert checked(first, (20, ITEM, F), (20, TWO, F), (23, ITEM, S)) == Checked(
        5, (False,), 16, ITEM, True, since=1, last_since=20
    )
    assert checked(first, (20, ITEM, F), (25, ITEM, N)) == Checked(5, (False,), 16, ITEM, True, 2, 25)
    assert checked(first, (20, ITEM, F), (36, TWO, F)) == Checked(10, (True,), 36, TWO, False)


@pytest.mark.parametrize(
    ("then", "since", "last"),
    [
        (((20, F),), 1, 20),  # a second session of that morning
        (((20, F), (21, F), (23, N)), 3, 23),
        (((22, F),), 2, 22),
        ((), 1, 20),
        (((22, S),), 1, 20),
    ],
)
def test_a_morning_known_before_is_counted_once(
    then: tuple[tuple[int, Mark], ...], since: int, last: int
) -> None:
    plan = PLAIN._replace(reviews=WEEKS)
    before = fold(plan, [Asked(day(16), ITEM, N), Asked(day(20), ITEM, F)])
    assert before.checks["knots"] == Checked(5, (False,), 16, ITEM, True, since=1, last_since=20)
    more = [Asked(day(index), TWO, mark) for index, mark in then]
    found = fold(plan, more, before).checks["knots"]
    assert (found.since, found.last_since) == (since, last)


# -- the direction of what is published on spacing; tests/references/pedagogy.toml says of whom: mostly adults


def asked_when_due(mornings: int = 144) -> list[int]:
    """The mornings of a year on which an item is due and is asked, if it always comes easily."""
    record, asked = NEW, []
    for index in range(mornings):
        if record.overdue(index, 0) >= 1:
            record = once(index, F, record)
            asked.append(index)
    return asked


@pytest.mark.parametrize("interval", [1.0, 2.5, 4.0, 10.0, 20.0])
def test_a_success_after_a_longer_rest_grows_the_interval_more(interval: float) -> None:
    """spacing.meta: spread-out study beats massed study (839 assessments); the direction only."""
    assert (
        SPACING["meta"]["assessments"] == 839 and "Spread-out study beats massed" in SPACING["meta"]["claim"]
    )
    grown = [once(rest, F, Record(interval, 0)).interval for rest in range(101)]
    assert grown[0] == interval, "twice at once is massed, and gives nothing"
    # It stops growing where the rest is twice the interval, or the interval as long as it may be.
    until = min(math.ceil(2 * interval), grown.index(LONGEST) if LONGEST in grown else 101)
    assert all(after > before for before, after in pairwise(grown[: until + 1]))
    assert grown[until:] == [min(LONGEST, 6 * interval)] * (101 - until)


def test_the_longer_the_gap_the_longer_the_next_rest() -> None:
    """spacing.ridgeline: the best interval grows with how long it must last, from weeks to a year."""
    share = SPACING["ridgeline"]
    assert share["gap_share_year"] * 365 > share["gap_share_weeks"] * 21, "longer in days: 18 against 4"
    intervals = [1.0, 2.0, 4.0, 8.0, 16.0, 32.0]
    due = [once(round(interval), F, Record(interval, 0)).interval for interval in intervals]
    assert due == [3.0, 6.0, 12.0, 24.0, 48.0, 72.0]  # interval + 2*interval, no more than 72
    asked = asked_when_due()
    # At 3 it has rested 4: 4 + 8 = 12. At 15, 12 + 24 = 36. At 51, 36 + 72 = 108, no more than 72.
    assert asked == [3, 15, 51, 123]
    apart = [later - sooner for sooner, later in pairwise(asked)]
    assert apart == sorted(set(apart)) and apart[-1] > apart[0]


def test_an_item_of_the_year_is_met_twice_at_least_weeks_apart() -> None:
    """spacing.practice_guide: meet key content at least twice, some weeks to some months apart.

    Four mornings make a week, and two weeks are the least that is more than one.
    """
    asked = asked_when_due()
    weeks = [(later - sooner) / 4 for sooner, later in pairwise(asked)]
    assert 1 + sum(each >= 2 for each in weeks) >= SPACING["practice_guide"]["occasions_min"] == 2
    assert weeks == [3, 9, 18], "12, 36 and 72 mornings"
