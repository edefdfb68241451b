"""Neighbors: K.CC.B.4.C, Virginia 2023 K.NS.1.g and h (references/standards.toml), ex23, ex25, ex27."""

import re
from collections import Counter

import pytest
from num2words import num2words

from tests.bank import reference
from tests.skills.asking import asked, bounds, coded, example, level_asked, sought
from warmup.pictures.number_row import NumberRow
from warmup.skills._home import TO_HOLD


def number(word: str) -> int:
    return next(n for n in range(121) if num2words(n) == word)


@pytest.mark.parametrize(
    ("example_id", "item", "step"),
    [("ex23", "both-to-19", 1), ("ex25", "both-to-19", -1), ("ex27", "before-30", -1)],
)
def test_worked_examples(example_id: str, item: str, step: int) -> None:
    """examples.toml: after nineteen, before one, one less than thirty."""
    row = example(example_id)
    p = sought(f"neighbors/{item}", {"number": row["given"], "step": step})
    assert number(p.answer) == row["answer"]
    things = {f"{p.answer if row['answer'] else 'no'} {p.given['things']}"} if "things" in p.given else set()
    also = set(row["accept"]) - {p.answer} if row["answer"] == 0 else set()
    assert set(p.accept) == also | things


def test_every_step_is_the_one_of_the_code() -> None:
    for p in coded("neighbors", "K.CC.B.4.C", 60):
        if "step" in p.given:
            assert abs(p.given["step"]) == bounds("K.CC.B.4.C")["step"]
        else:
            assert p.given["high"] - p.given["low"] == 2


def test_the_levels_to_nineteen_keep_the_published_bounds_for_after_and_before() -> None:
    state = reference("standards")["state"]
    for key in ("after-to-9", "before-to-10", "both-to-19"):
        for p in level_asked("neighbors", key):
            which = "va_number_after" if p.given["step"] > 0 else "va_number_before"
            assert (
                state[which]["bounds"]["given_min"]
                <= p.given["number"]
                <= state[which]["bounds"]["given_max"]
            )


def test_trouble_items_ask_their_own_number() -> None:
    for item, given in (("before-20", (20, -1)), ("before-30", (30, -1)), ("after-39", (39, 1))):
        assert {(p.given["number"], p.given["step"]) for p in asked(f"neighbors/{item}", 40)} == {given}


@pytest.mark.parametrize("item", ["both-to-19", "both-to-50"])
def test_after_and_before_come_equally_often(item: str) -> None:
    found = [p.given["step"] for p in asked(f"neighbors/{item}", 1000)]
    assert 440 < found.count(1) < 560


@pytest.mark.slow
def test_between_reaches_over_the_range_and_its_middle_is_bare() -> None:
    middles: Counter[int] = Counter()
    for p in asked("neighbors/between-to-99", 600):
        assert p.given["low"] >= 10 and p.given["high"] <= 99
        middles[number(p.answer)] += 1
        assert p.picture is not None
        assert p.picture.shows() == (str(p.given["low"]), str(p.given["high"]))
    assert len(middles) > 70 and max(middles.values()) < 25


@pytest.mark.parametrize("key", ["before-to-10", "both-to-19", "both-to-50"])
def test_the_card_is_bare_on_the_side_that_is_asked(key: str) -> None:
    for p in level_asked("neighbors", key, 60):
        assert isinstance(p.picture, NumberRow)
        blank = p.picture.texts.index("?")
        assert blank == (1 if p.given["step"] > 0 else 0)


def test_one_of_a_thing_is_said_as_one() -> None:
    told = [p for p in asked("neighbors/after-to-9", 400) if p.given["number"] == 1 and "Think of" in p.say]
    ones, many = {noun.one for noun in TO_HOLD}, {noun.many for noun in TO_HOLD}
    assert told
    for p in told:
        noun = p.say.removeprefix("Think of one ").partition(".")[0]
        assert noun in ones and noun not in many - ones
        assert p.given["things"] in many and p.accept == (f"two {p.given['things']}",)


def test_how_many_are_left_may_be_said_with_its_thing() -> None:
    told = [p for p in level_asked("neighbors", "before-to-10") if "Take one away" in p.say]
    assert told and all(f"{p.answer} {p.given['things']}" in p.accept for p in told)


def test_between_says_two_numbers_and_only_one_fits() -> None:
    """A riddle or a third thing in the row ("a bare one") would leave the child to guess what is meant."""
    for p in asked("neighbors/between-to-99", 60):
        assert p.say.lower().count(num2words(p.given["low"])) >= 1 and "door" not in p.say
        assert len(re.findall(r"between|skip", p.say)) == 1
