"""The memory rule, worked by hand, each case with its arithmetic beside it; and which way spacing goes.

Time is counted in mornings. An item starts with a interval of 4 and has rested since the morning before it
unlocked, so one that unlocks at index 0 has rested 1 morning at index 0 and 4 at index 3.
"""

import datetime as dt
import math
from itertools import pairwise

import pytest

from tests.bank import reference
from tests.engine.made import made
from warmup.engine.curriculum import Curriculum
from warmup.engine.memory import LONGEST, NEW, RETEACH, Day, Knowledge, Record, fold, learn
from warmup.model import Asked, Item, ItemId, LevelId, Mark
from warmup.schoolyear import SchoolYear

FIRST = dt.date(2026, 8, 31)
ITEM = ItemId("knots/one")
KNOT, TWO, GUESSED, ROPE = (
    made("knots/one"),
    made("knots/two"),
    made("knots/three", guess=0.5),
    made("ropes/one"),
)
F, H, N, S = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED
SPACING = reference("pedagogy")["spacing"]


def day(index: int) -> dt.date:
    """The date of a morning: one every day, so that an index is a number of days."""
    return FIRST + dt.timedelta(index)


PLAIN = Curriculum(
    {item.id: item for item in (KNOT, TWO, GUESSED, ROPE)},
    SchoolYear(tuple(range(7)), tuple(map(day, range(400)))),
)
"""Every day a morning, all of it open in week 1."""


def after(*lines: tuple[int, Mark | None], opened: int = 0) -> Record:
    """The item's record after plain marks on these mornings."""
    record = NEW
    for index, mark in lines:
        record = learn(record, [(Asked(day(index), ITEM, mark), index, 0.0)], opened)
    return record


def folded(*lines: tuple[int, Item | ItemId, Mark | None], before: Knowledge | None = None) -> Knowledge:
    """What is known after plain marks: morning, item, mark."""
    asked = [Asked(day(at), item.id if isinstance(item, Item) else item, mark) for at, item, mark in lines]
    return fold(PLAIN, asked, before)


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
    return learn(before, [(Asked(day(index), ITEM, mark, cue, rough, from_memory), index, guess)], 0)


# -- one mark after another, by hand


@pytest.mark.parametrize(
    ("index", "opened", "rested", "chance"),
    [
        (0, 0, 1, 0.960184),  # 1 of 4 mornings; 0.85 ^ (1/4) is the root of 0.921954, the root of 0.85
        (1, 0, 2, 0.921954),  # 2 of 4; 0.921954 * 0.921954 = 0.849999
        (3, 0, 4, 0.85),  # 4 of 4: just due
        (7, 0, 8, 0.7225),  # 8 of 4; 0.85 * 0.85
        (11, 0, 12, 0.614125),  # 12 of 4; 0.85 * 0.85 * 0.85
        (11, 8, 4, 0.85),  # it unlocked at 8 and rested since 7: 4 of 4
        (7, 8, 0, 1.0),  # the morning before it unlocked: 0 of 4
        (2, 8, 0, 1.0),  # before that nothing has rested
    ],
)
def test_a_new_item_rests_from_the_morning_before_it_unlocked(
    index: int, opened: int, rested: int, chance: float
) -> None:
    assert NEW.rested(index, opened) == rested
    assert NEW.chance(index, opened) == pytest.approx(chance, abs=1e-6)


def test_once_marked_an_item_rests_from_its_last_mark() -> None:
    record = Record(interval=6.0, last=10)
    assert record.rested(13, 0) == 3 == record.rested(13, 12), "whenever it unlocked"
    assert record.rested(22, 12) == 12 and record.chance(22, 12) == pytest.approx(0.7225)  # 12 of 6
    assert record.rested(10, 0) == 0 == record.rested(4, 0) and record.chance(10, 0) == 1.0


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


def test_a_cue_counts_as_hesitated() -> None:
    helped = once(3, F, cue=1)
    assert (helped.interval, helped.mark, helped.run) == (4.0, H, 0)
    assert helped == once(3, H) == once(3, H, cue=3)
    assert once(3, N, cue=2) == once(3, N), "a cue makes a not yet no better"


def test_a_rough_day_lowers_nothing() -> None:
    rough = once(3, N, rough=True)
    assert (rough.interval, rough.mark, rough.misses) == (4.0, N, 0)
    twice = once(4, N, before=once(3, N))
    assert once(5, N, before=twice, rough=True).misses == twice.misses == 2, "no reason to teach it again"
    assert once(3, F, rough=True).interval == 12.0  # e = 4: 4 + 8, as on any day
    assert once(3, H, rough=True).interval == 4.0


def test_a_mark_from_memory_weighs_half() -> None:
    assert once(3, F, from_memory=True).interval == 8.0  # 4 + 8/2
    assert once(7, F, from_memory=True).interval == 14.0  # from 4 to 24, half of it: 4 + 20/2
    assert once(3, N, from_memory=True).interval == 3.0  # a quarter off: 4 - 4/4
    assert once(3, H, from_memory=True) == once(3, H)


def test_marks_from_memory_are_halves_where_several_running_are_counted() -> None:
    half = once(3, F, from_memory=True)
    assert half.run == 0.5 and once(4, F, from_memory=True, before=half).run == 1
    missed = once(3, N, from_memory=True)
    assert (missed.misses, once(4, N, before=missed).misses) == (0.5, 1.5)
    assert once(5, H, from_memory=True, before=missed).misses == 0
    assert once(3, N, from_memory=True, rough=True).misses == 0
    six = NEW
    for index in range(6):
        six = once(index, N, from_memory=True, before=six)
        assert (six.misses >= RETEACH) is (index == 5), "six from memory are three on the spot"
    assert isinstance(once(3, F).run, int) and isinstance(once(3, N).misses, int)


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
    assert before.wording == "a"
    record = fold(PLAIN, asked).of(ITEM)
    assert record == before._replace(shown=3, shown_on=day(6), wording="c")
    assert (record.marks, record.last, record.marked_on) == (1, 3, day(3))
    assert after((5, S)) == NEW._replace(shown=1, shown_on=day(5))


def test_runs_and_misses() -> None:
    def counted(*marks: Mark | None) -> tuple[float, float, int, int]:
        record = after(*enumerate(marks))
        return record.run, record.misses, record.marks, record.shown

    assert counted(F, F, F) == (3, 0, 3, 3)
    assert counted(F, F, H) == (0, 0, 3, 3)
    assert counted(N, N, N) == (0, 3, 3, 3)
    assert counted(N, N, H, N) == (0, 1, 4, 4)
    assert counted(F, S, F, None, F) == (3, 0, 3, 5)
    assert counted(N, None, N, S) == (0, 2, 2, 4)
    assert counted(F, N, F) == (1, 0, 3, 3)


def test_each_morning_keeps_what_was_on_screen_and_whether_it_came_easily() -> None:
    lines = [
        Asked(day(0), ITEM, F),
        Asked(day(4), ITEM, F, cue=1),  # helped: marked, but not as come easily
        Asked(day(4), ROPE.id, H),
        Asked(day(5), ITEM, S),  # on screen, no mark that counts
        Asked(day(5), TWO.id, None),
        Asked(day(5), TWO.id, N),
    ]
    days = (
        Day(0, ((ITEM, True),), day(0)),
        Day(4, ((ITEM, False), (ROPE.id, False)), day(4)),
        Day(5, ((ITEM, None), (TWO.id, None), (TWO.id, False)), day(5)),
    )
    assert fold(PLAIN, lines).days == days
    assert [each.easy for each in days] == [(True,), (False, False), (False,)]
    assert fold(PLAIN, lines[4:], fold(PLAIN, lines[:4])).days == days, "one morning in two sessions"


# -- the two layers


def test_a_level_learns_from_all_its_items() -> None:
    """Its record is what one item would have that got all the marks."""
    now = folded((3, KNOT, F), (5, TWO, H), (9, KNOT, N), (9, ROPE, F))
    assert now.of_level(KNOT.level_id) == after((3, F), (5, H), (9, N))
    assert (now.of(KNOT.id), now.of(TWO.id)) == (after((3, F), (9, N)), after((5, H)))
    assert now.of_level(ROPE.level_id) == now.of(ROPE.id) == after((9, F))
    assert now.of_level(LevelId("knots:2")) == NEW == now.of(GUESSED.id)


def test_a_lucky_answer_grows_the_interval_of_its_level_less_as_well() -> None:
    now = folded((3, GUESSED, F))
    assert now.of_level(GUESSED.level_id).interval == 8.0 == now.of(GUESSED.id).interval  # 4 + 8/2


def test_both_layers_count_from_the_week_of_the_item() -> None:
    """The third week begins at 14, so at 17 it has rested 4: 4 + 2*4."""
    late = made("sails/one", week=3)
    now = fold(PLAIN._replace(by_id={late.id: late}), [Asked(day(17), late.id, F)])
    assert now.of(late.id).interval == 12.0 == now.of_level(late.level_id).interval


def test_what_the_plan_no_longer_names_keeps_a_record_and_has_no_level() -> None:
    gone = ItemId("old/one")
    now = folded((0, gone, F), (0, KNOT, F))
    assert now.of(gone).marks == 1 and list(now.levels) == [KNOT.level_id]
    assert now.days == (Day(0, ((gone, True), (ITEM, True)), day(0)),)


# -- the direction of what is published on spacing; tests/references/pedagogy.toml says of whom: mostly adults


def asked_when_due(mornings: int = 144) -> list[int]:
    """The mornings of a year on which an item is due and is asked, if it always comes easily."""
    record, asked = NEW, []
    for index in range(mornings):
        if record.rested(index, 0) >= record.interval:
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
