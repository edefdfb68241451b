"""The choosing on any items and any knowledge: the limits of a kind morning, judged by code of its own.

The items are made up, thirty-two of eight skills; what is known of them comes from short histories. Each
example draws some of both, a morning, a shape and a number of prompts.
"""

import itertools
from collections import Counter
from collections.abc import Sequence
from random import Random
from typing import NamedTuple

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.engine.made import DAILY, REVIEW, REVIEWS, F, H, N, S, day, is_hard, morning
from warmup.engine.curriculum import Curriculum
from warmup.engine.eligibility import Eligible
from warmup.engine.engine import SURE, choose, surest
from warmup.engine.memory import Knowledge, Record, fold
from warmup.engine.pool import Pool
from warmup.model import (
    Asked,
    Choice,
    Item,
    ItemId,
    Mark,
    Morning,
    Shape,
    Slot,
    SlotKind,
    item_id,
    level_id,
)
from warmup.schoolyear import SchoolYear

STRANDS = {
    "days": "calendar",
    "months": "calendar",
    "steps": "counting",
    "knots": "number",
    "sums": "adding",
    "flats": "shape and space",
    "jugs": "measuring and sorting",
    "tapes": "measuring and sorting",
}
POOL = tuple(
    Item(
        item_id(skill, f"{level}-{name}"),
        skill,
        level,
        level_id(skill, str(level)),
        strand,
        week=1 + (7 * at + 9 * level) % 21,
        misconception=name == "two",
        guess=0.5 if name == "two" else 0.0,
        seconds=(20, 40, 20, 60, 120)[(at + level) % 5],
        ladder=at % 2 == 0,
        hands=name == "one",
        ends=name == "one" and level == 1,
        codes=("K.CC.A.1",) if at % 3 == 0 else (),
    )
    for at, (skill, strand) in enumerate(STRANDS.items())
    for level in (1, 2)
    for name in ("one", "two")
)
LEVELS = sorted({item.level_id for item in POOL})
# How many mornings ago, and the mark it got; 0 is this morning.
PASTS: tuple[tuple[tuple[int, Mark | None], ...], ...] = (
    (),
    ((3, None),),
    ((9, S), (2, S)),
    ((1, F),),
    ((6, F),),
    ((60, F),),
    ((9, F), (3, F)),
    ((40, F), (20, F)),
    ((30, F), (20, F), (2, F)),
    ((4, H), (2, F), (1, F)),
    ((1, H),),
    ((2, H),),
    ((12, F), (5, H)),
    ((30, H),),
    ((1, N),),
    ((6, F), (3, F), (2, N)),
    ((3, N), (2, N), (1, N)),
    ((8, N), (7, F)),
    ((5, F), (0, F)),
    ((5, F), (0, H)),
    ((5, F), (3, F), (0, None)),
    ((17, N), (16, N), (12, F)),  # by half to 1, then 3 * 2 = 6, rested twice: a chance of 0.7225
)
EASY = (3, 4, 6, 7, 8, 9)
"""The places of those whose last mark came easily not long ago."""


# Two of week 21, one before a break, one with none after it, and two of a review week.
MORNINGS = (
    morning(80),
    morning(83, ahead=4),
    morning(82, ahead=15),
    morning(81, ahead=None),
    morning(77),
    morning(79, ahead=4),
)
NAMED = Slot(SlotKind.NAMED, 2, ("knots", "days:1"))
SHAPES = (
    DAILY,
    REVIEW,
    DAILY._replace(seconds=180),
    DAILY._replace(slots=(NAMED, *DAILY.slots)),
    DAILY._replace(slots=DAILY.slots[-2:]),
)
# Long enough in both directions: what was asked before the year's first morning has no index.
YEAR = SchoolYear((0, 1, 2, 3), tuple(map(day, range(144))))
PLAIN = Curriculum({item.id: item for item in POOL}, YEAR, REVIEWS)


class Asking(NamedTuple):
    """All that ``choose`` is given."""

    drawn: tuple[tuple[Item, int], ...]
    knowledge: Knowledge
    morning: Morning
    shape: Shape
    number: int
    since: int
    timely: frozenset[ItemId]

    @property
    def items(self) -> tuple[Item, ...]:
        """The items that may be asked."""
        return tuple(item for item, _ in self.drawn)

    def choose(self, items: Sequence[Item] = (), *, new_family: bool = False) -> tuple[Choice, ...]:
        """What the engine chooses, from the items in another order if they are given."""
        return choose(
            Eligible(tuple(items or self.items), self.timely),
            self.shape,
            self.knowledge,
            self.morning,
            # A new family is one that began this morning.
            self.plan._replace(began=self.morning.index) if new_family else self.plan,
            child="Bean",
            count=self.number,
        )

    @property
    def plan(self) -> Curriculum:
        """The curriculum of a family that began in the week ``since``."""
        return PLAIN._replace(began=4 * (self.since - 1))

    def record(self, item: Item) -> Record:
        """What is known of an item."""
        return self.knowledge.of(item.id)

    def new(self, item: Item) -> bool:
        """Whether it has no mark that counts."""
        return self.record(item).marks == 0

    def hard(self, item: Item) -> bool:
        """By the marks, with code of its own."""
        index = self.morning.index
        lines = [
            (index - ago, each, mark)
            for each, past in self.drawn
            for ago, mark in PASTS[past]
            if mark and mark is not S
        ]
        lines.sort(key=lambda line: line[0])
        return is_hard(item, lines, index, self.since)

    def gives_way(self) -> bool:
        """Whether so little is easy that the limits on hard and first-time prompts give way."""
        pool = Pool(self.items, self.knowledge, self.morning, self.plan, "Bean", self.timely)
        new_family = self.morning.week - self.since < 2
        return new_family or pool.easy() < self.number / 2


def known(pasts: dict[Item, int], at: Morning, since: int) -> Knowledge:
    """What the pasts of the items teach."""
    lines = [
        (at.index - ago, Asked(day(at.index - ago), item.id, mark))
        for item, past in pasts.items()
        for ago, mark in PASTS[past]
    ]
    asked = [line for _, line in sorted(lines, key=lambda pair: pair[0])]
    return fold(PLAIN._replace(began=4 * (since - 1)), asked)


@st.composite
def askings(rng: st.DrawFn) -> Asking:
    """Some of the items on some morning.

    What is past is drawn by a seed: some levels are wholly new, and of the other items a share came easily.
    """
    luck = Random(rng(st.integers(0, 2**32)))
    easy = rng(st.sampled_from([0.6, 0.8, 0.95, 0.3]))
    new = set(luck.sample(LEVELS, rng(st.sampled_from([0, 1, 4]))))
    pasts = {
        item: 0
        if item.level_id in new
        else luck.choice(EASY)
        if luck.random() < easy
        else luck.randrange(len(PASTS))
        for item in luck.sample(POOL, rng(st.sampled_from([32, 31, 30, 28, 24, 20, 16, 12, 8, 4, 2, 1])))
    }
    at = rng(st.sampled_from(MORNINGS))
    since = luck.choice([1, 10, 18])
    return Asking(
        tuple(pasts.items()),
        known(pasts, at, since),
        at,
        rng(st.sampled_from(SHAPES)),
        rng(st.sampled_from([6, 7, 8, 9, 10, 5, 4, 2, 1])),
        since,
        frozenset(item.id for item in luck.sample(list(pasts), luck.randrange(2))),
    )


enough = settings(max_examples=200)


@pytest.mark.slow
@enough
@given(askings())
def test_a_morning_breaks_no_limit(asking: Asking) -> None:
    """Past the first weeks: hard prompts apart and none first, three first times and two ideas at most."""
    chosen = asking.choose()
    hard = [asking.hard(choice.item) for choice in chosen]
    assert [choice.hard for choice in chosen] == hard
    if asking.gives_way():
        return
    assert not any(hard[:1])
    assert not any(one and then for one, then in itertools.pairwise(hard))
    new = [choice.item for choice in chosen if asking.new(choice.item)]
    begun = {item.level_id for item in asking.items if asking.record(item).marks}
    ideas = [item for item in new if item.level_id not in begun]
    assert len(new) <= 3
    assert len({item.level_id for item in ideas}) <= 2
    ideas = [item for item in ideas if item.id not in asking.timely]
    assert asking.morning.next or not ideas, "nothing begins on the last morning"
    opened = [(max(item.week, asking.since) - 1) * 4 for item in ideas]
    if asking.morning.review:
        assert all(item.kindergarten for item in ideas)
        assert all(asking.morning.index - at >= 3 for at in opened), "it waited for a week"


@pytest.mark.slow
@enough
@given(askings(), st.booleans(), st.integers(0, 2**32))
def test_a_morning_is_mixed_and_no_longer_than_it_should_be(
    asking: Asking, new_family: bool, luck: int
) -> None:
    """In the new_family weeks too; and the same whatever order the items come in."""
    chosen = asking.choose(new_family=new_family)
    items = [choice.item for choice in chosen]
    assert len(items) == len(set(items))
    assert set(items) <= set(asking.items)
    assert sum(2 if item.seconds == 120 else 1 for item in items) <= asking.number
    assert 50 + sum(item.seconds + 12 for item in items) <= asking.shape.seconds
    assert items or len(asking.items) < 8 or asking.number < 4, "something is chosen"
    for item in items:
        level = asking.knowledge.of_level(item.level_id)
        assert item.seconds < 120 or level.last is None or asking.morning.index - level.last >= 8
    strands = Counter(item.strand for item in items)
    if asking.shape.slots[-2:] != asking.shape.slots:
        assert strands["calendar"] <= 1
    assert strands["shape and space"] + strands["measuring and sorting"] <= 2
    skills = [item.skill for item in items]
    assert all(one != then for one, then in itertools.pairwise(skills))
    if len({item.skill for item in asking.items}) >= asking.number / 2:
        assert max(Counter(skills).values(), default=0) <= 2
    turned = Random(luck).sample(asking.items, len(asking.items))
    assert asking.choose(turned, new_family=new_family) == chosen


@pytest.mark.slow
@enough
@given(askings(), st.sampled_from([3, 2, 4, 6, 1]))
def test_the_surest_is_never_one_that_is_not_yet(asking: Asking, few: int) -> None:
    """Of a few, so that often none is sure, and sometimes none will do."""
    asking = asking._replace(drawn=asking.drawn[:few])
    one = surest(asking.items, asking.knowledge, asking.morning, asking.plan, child="Bean")
    kind = [
        item
        for item in asking.items
        if asking.record(item).mark is not N and asking.record(item).shown_on != asking.morning.date
    ]
    if one is None:
        assert not [item for item in kind if not item.ladder], "what a ladder has left behind does not come"
        return
    assert one.item in kind and one.why == SURE and one.slot is SlotKind.SURE and isinstance(one.hard, bool)

    def ease(item: Item) -> float:
        """Twice running easily, then once, then what is hard, then what is new."""
        return 0 if asking.new(item) else 1 if asking.hard(item) else min(3, 1 + asking.record(item).run)

    assert ease(one.item) >= max((ease(item) for item in kind if not item.ladder), default=0)


@pytest.mark.slow
@enough
@given(askings())
def test_only_a_sure_one_closes(asking: Asking) -> None:
    chosen = asking.choose()
    for at, choice in enumerate(chosen):
        if choice.slot is SlotKind.SURE:
            assert at == len(chosen) - 1
            assert not asking.new(choice.item) and not asking.hard(choice.item)
            assert asking.record(choice.item).mark is F
        assert (choice.why == "the day itself asks for it") == (choice.item.id in asking.timely)
        assert (choice.why == SURE) == (choice.slot is SlotKind.SURE and choice.item.id not in asking.timely)


@pytest.mark.parametrize("number", [5, 6, 7, 8])
def test_the_judged_mornings_are_not_empty(number: int) -> None:
    """All is known well enough but for a few things: a full morning, with hard ones in it."""
    pasts = dict.fromkeys(POOL, 6) | {POOL[0]: 11, POOL[9]: 14, POOL[18]: 0, POOL[12]: 14, POOL[13]: 0}
    asking = Asking(
        tuple(pasts.items()), known(pasts, MORNINGS[0], 1), MORNINGS[0], DAILY, number, 1, frozenset()
    )
    chosen = asking.choose()
    assert sum(choice.item.places for choice in chosen) == number and not asking.gives_way()
    assert any(choice.hard for choice in chosen)
