"""The table of rules: for every row the smallest morning that needs it, and which row goes first."""

from collections.abc import Sequence
from typing import NamedTuple

import pytest

from tests.engine.made import F, H, N, Past, known, made, morning, plan_of
from warmup.engine import engine
from warmup.engine.eligibility import Eligible
from warmup.engine.engine import choose
from warmup.engine.rules import RULES, Rule
from warmup.model import Item, ItemId, Shape, Slot, SlotKind

WEEK_19, PAST_HALF, REVIEW_WEEK, AFTER_IT = 72, 74, 76, 80
"""Indices of mornings: the first of quarter 3, the third of that week, one of a review week, one after it."""
OFTEN: Past = ((5, F), (1, F))
ONCE: Past = ((13, F),)
OLDER = Slot(SlotKind.OLDER, 12)
A, B, C = (made(f"{skill}/one") for skill in ("reefs", "sails", "tides"))


class Example(NamedTuple):
    """A morning on which ``wanted`` is asked by one row of the table alone.

    It was asked the day before, or was never asked, and what stands beside it is older. ``gone`` was asked
    but is not open.
    """

    wanted: Item
    past: Past = OFTEN
    slots: tuple[Slot, ...] = (OLDER,)
    today: int = WEEK_19
    prompts: int = 1
    beside: tuple[Item, ...] = (A,)
    gone: tuple[tuple[Item, Past], ...] = ()
    timely: bool = False
    holding: bool = False


def slots(kind: SlotKind, *only: str, most: int = 12) -> tuple[Slot, ...]:
    """A slot of one kind, and one for what is older."""
    return (Slot(kind, 1, only), Slot(SlotKind.OLDER, most))


KNOTS = made("knots/one")
K = made("knots/one", codes=("K.CC.A.1",), week=18)
GHOST = made("ghosts/one", "counting")
EXAMPLES = {
    "timely": Example(KNOTS, slots=slots(SlotKind.CALENDAR), timely=True),
    "named": Example(KNOTS, slots=slots(SlotKind.NAMED, "knots")),
    "close": Example(KNOTS._replace(ends=True), slots=slots(SlotKind.SURE)),
    "first times": Example(K, (), slots(SlotKind.NEWEST), prompts=3, beside=(A, B, C)),
    "too few": Example(K._replace(week=1), ((2, F),)),
    "weekly": Example(made("count-on/one"), ((6, F), (3, F)), today=PAST_HALF),
    "rested": Example(KNOTS, ((20, F), (14, F))),
    "stumbles": Example(KNOTS, ((1, H),), slots(SlotKind.WOBBLED)),
    "first beyond": Example(
        made("knots/one", week=18), (), slots(SlotKind.NEWEST), prompts=3, beside=(A, B, C)
    ),
    "yearly": Example(made("make-ten/one")),
    "shares": Example(
        made("sums/one", "adding"),
        ((1, F),),
        today=100,
        gone=((GHOST, tuple((ago, F) for ago in range(20, 13, -1))),),
    ),
    "holding": Example(KNOTS, slots=slots(SlotKind.WOBBLED), holding=True),
    "new ways": Example(made("knots/two", week=19), (), gone=((made("knots/one", week=19), ((1, F),)),)),
    "calendar": Example(made("days/one", "calendar"), slots=slots(SlotKind.CALENDAR, most=1), prompts=2),
    "adding": Example(made("sums/one", "adding"), slots=slots(SlotKind.ADDING, most=1), prompts=2),
    "checks": Example(made("knots/one", week=10), slots=slots(SlotKind.CHECK), today=REVIEW_WEEK),
    "after review": Example(KNOTS, ((4, F), (3, H)), slots(SlotKind.WOBBLED), today=AFTER_IT),
    "counting": Example(made("steps/one", "counting"), slots=slots(SlotKind.COUNTING)),
    "older": Example(KNOTS, ((1, F),), beside=(made("tapes/one", "measuring and sorting"),)),
    "any": Example(made("tapes/one", "measuring and sorting"), beside=()),
}


def asked_by(
    rules: Sequence[Rule], patch: pytest.MonkeyPatch, mine: Example, *others: Example
) -> list[ItemId]:
    """What these rules choose where the examples meet, on the morning of the first of them."""
    patch.setattr(engine, "RULES", tuple(rules))
    all_of = (mine, *others)
    pasts = {each.wanted: each.past for each in all_of} | dict.fromkeys(mine.beside, ONCE)
    items = tuple(pasts)
    pasts |= {item: past for each in all_of for item, past in each.gone}
    plan, shape = plan_of(pasts), {slot.kind: slot for each in all_of for slot in each.slots}
    choices = choose(
        Eligible(
            items,
            frozenset(each.wanted.id for each in all_of if each.timely),
            frozenset(each.wanted.id for each in all_of if each.holding),
        ),
        Shape("own", tuple(shape.values()), ((36, mine.prompts),), 480),
        known(plan, pasts, mine.today),
        morning(mine.today),
        plan,
        child="Bean",
        count=mine.prompts,
    )
    return [choice.item.id for choice in choices]


@pytest.mark.parametrize("row", RULES, ids=lambda rule: rule.name)
def test_every_row_asks_something_that_no_other_would(row: Rule, monkeypatch: pytest.MonkeyPatch) -> None:
    example = EXAMPLES[row.name]
    assert example.wanted.id in asked_by(RULES, monkeypatch, example)
    others = [rule for rule in RULES if rule is not row]
    assert example.wanted.id not in asked_by(others, monkeypatch, example)


def test_every_example_is_of_a_row_and_every_row_has_its_own_name() -> None:
    assert [rule.name for rule in RULES] == list(EXAMPLES)


def test_what_comes_weekly_comes_once_a_morning(monkeypatch: pytest.MonkeyPatch) -> None:
    """However much of it there is: the rest of the morning is for what rested."""
    weekly = EXAMPLES["weekly"]
    more = weekly._replace(wanted=made("count-on/two", level=2))
    rested = EXAMPLES["rested"]._replace(past=((21, F), (15, F)))
    ids = asked_by(RULES, monkeypatch, weekly._replace(prompts=3), more, rested)
    assert len(ids) == 3 and sum(item.startswith("count-on") for item in ids) == 1


class Pair(NamedTuple):
    """Two rows of which the earlier asks its own where only one of both finds room."""

    earlier: str
    later: str
    today: int = WEEK_19
    prompts: int = 1
    beside: tuple[Item, ...] = (A,)
    pasts: tuple[Past | None, Past | None] = (None, None)


NOT_YET: Past = ((3, N), (2, N))
PAIRS = (
    Pair("timely", "named"),
    Pair("named", "close"),
    Pair("first times", "too few", prompts=3, beside=(A, B, C), pasts=(None, NOT_YET)),
    Pair("too few", "weekly", PAST_HALF),
    Pair("weekly", "rested", PAST_HALF),
    Pair("rested", "stumbles", beside=(), pasts=(((20, F), (14, F)), ((3, N), (2, N), (1, H)))),
    Pair("stumbles", "first beyond", prompts=3, beside=(A, B), pasts=(NOT_YET, None)),
    Pair("first beyond", "yearly", prompts=3, beside=(A, B, C), pasts=(None, NOT_YET)),
    Pair("yearly", "shares", 100),
    Pair("shares", "holding", 100),
    Pair("holding", "new ways"),
    Pair("after review", "counting", AFTER_IT),
)


def other_skill(example: Example) -> Example:
    """The example with another skill, where the row does not go by its name."""
    if example.wanted.skill != "knots":
        return example
    only = tuple(slot._replace(only=("ropes",) if slot.only else ()) for slot in example.slots)
    gone = tuple((of_ropes(item), past) for item, past in example.gone)
    return example._replace(wanted=of_ropes(example.wanted), slots=only, gone=gone)


def of_ropes(item: Item) -> Item:
    """The item in another skill."""
    name = item.id.replace(item.skill, "ropes")
    return made(name, item.strand, item.week, codes=item.codes, ends=item.ends)


@pytest.mark.parametrize("pair", PAIRS, ids=lambda pair: f"{pair.earlier} before {pair.later}")
def test_of_two_rows_with_room_for_one_the_earlier_asks(pair: Pair, monkeypatch: pytest.MonkeyPatch) -> None:
    """And the other way round in a table with the two rows turned."""
    one, other = EXAMPLES[pair.earlier], other_skill(EXAMPLES[pair.later])
    one, other = (
        each if past is None else each._replace(past=past)
        for each, past in zip((one, other), pair.pasts, strict=True)
    )
    one = one._replace(today=pair.today, prompts=pair.prompts, beside=pair.beside)
    names = [rule.name for rule in RULES]
    at, then = names.index(pair.earlier), names.index(pair.later)
    assert then == at + 1
    turned = [*RULES[:at], RULES[then], RULES[at], *RULES[then + 1 :]]
    for rules, first in ((RULES, True), (turned, False)):
        ids = asked_by(rules, monkeypatch, one, other)
        assert (one.wanted.id in ids, other.wanted.id in ids) == (first, not first)
