"""Neighbors: K.CC.B.4.C, Virginia 2023 K.NS.1.g and h (references/standards.toml), ex23, ex25, ex27."""

import re
from collections import Counter

import pytest
from num2words import num2words

from tests.bank import reference
from tests.skills.asking import asked, bounds, coded, example, in_week, level_asked, opens, sought
from warmup import skills
from warmup.pictures.number_row import NumberRow
from warmup.skills._home import TO_HOLD


def number(word: str) -> int:
    return next(n for n in range(121) if num2words(n) == word)


@pytest.mark.parametrize(
    ("example_id", "item", "step"),
    [("ex23", "both-to-19", 1), ("ex25", "one-less", -1), ("ex27", "before-30", -1)],
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


def test_the_levels_to_twenty_keep_the_published_bounds_for_after_and_before() -> None:
    state = reference("standards")["state"]
    for key in ("after-to-10", "before-to-10", "both-to-20"):
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


@pytest.mark.parametrize("key", ["before-to-10", "both-to-20", "to-99"])
def test_the_card_is_bare_on_the_side_that_is_asked(key: str) -> None:
    for p in level_asked("neighbors", key, 60):
        if p.item == "neighbors/between-to-99":
            continue
        assert isinstance(p.picture, NumberRow)
        blank = p.picture.texts.index("?")
        assert blank == (1 if p.given["step"] > 0 else 0)


def test_one_of_a_thing_is_said_as_one() -> None:
    told = [p for p in asked("neighbors/one-more", 400) if p.given["number"] == 1 and "Think of" in p.say]
    ones, many = {noun.one for noun in TO_HOLD}, {noun.many for noun in TO_HOLD}
    assert told
    for p in told:
        noun = p.say.removeprefix("Think of one ").partition(".")[0]
        assert noun in ones and noun not in many - ones
        assert p.given["things"] in many and p.accept == (f"two {p.given['things']}",)


def test_how_many_are_left_may_be_said_with_its_thing() -> None:
    told = [p for p in asked("neighbors/one-less", 300) if "things" in p.given and p.answer != "zero"]
    assert len({p.wording for p in told}) == 3
    assert all(f"{p.answer} {p.given['things']}" in p.accept for p in told)


def test_one_more_is_asked_of_numbers_things_and_fingers_and_stays_in_ten() -> None:
    """K.CC.B.4.C: the next number word is one more, which is another question than what comes next."""
    for item, words, step in (("one-more", "more", 1), ("one-less", "less|away|down", -1)):
        found = asked(f"neighbors/{item}", 300)
        assert {p.given["step"] for p in found} == {step}
        assert all(re.search(words, p.say) for p in found)
        numbers = {n for p in found for n in (p.given["number"], p.given["number"] + step)}
        assert min(numbers) == (1 if step > 0 else 0) and max(numbers) == 10
        assert any("fingers" in p.say for p in found) and any(p.accept == () for p in found)
    for item, words in (("after-to-9", "one more"), ("before-to-10", "one less")):
        assert not any(words in p.say for p in asked(f"neighbors/{item}"))


def test_before_has_no_code_where_it_is_asked_alone() -> None:
    """The standard speaks of one more only."""
    levels = {level.key: level.codes for level in skills.SKILLS["neighbors"].levels}
    assert levels.pop("before-to-10") == () and set(levels.values()) == {("K.CC.B.4.C",)}


def test_twenty_is_left_to_the_misconception() -> None:
    given = {(p.given["number"], p.given["step"]) for p in asked("neighbors/both-to-19", 400)}
    assert (20, -1) not in given and {n for n, _ in given} == set(range(10, 20))


@pytest.mark.parametrize(
    ("item", "low", "high"),
    [("after-to-9", 3, 9), ("one-more", 3, 9), ("one-less", 4, 10), ("both-to-19", 13, 19)],
)
def test_numbers_rise_in_the_four_weeks_after_the_level_opens(item: str, low: int, high: int) -> None:
    first = opens(f"neighbors/{item}")
    tops = [
        max(p.given["number"] for p in asked(f"neighbors/{item}", 400, in_week(week)))
        for week in range(first, first + 6)
    ]
    assert tops == sorted(tops) and tops[0] == low and tops[3] < tops[4] == tops[5] == high


def test_between_says_two_numbers_and_only_one_fits() -> None:
    """A riddle or a third thing in the row ("a bare one") would leave the child to guess what is meant."""
    for p in asked("neighbors/between-to-99", 60):
        assert p.say.lower().count(num2words(p.given["low"])) >= 1 and "door" not in p.say
        assert len(re.findall(r"between|skip", p.say)) == 1
