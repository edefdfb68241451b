"""Measuring: the bounds of K.MD.A.2, 1.MD.A.1 and 1.MD.A.2 (references/standards.toml)."""

from collections import Counter

import pytest

from tests.bank import prompts, reference
from tests.mornings import morning
from warmup import skills
from warmup.model import Prompt
from warmup.pictures.lengths import Lengths
from warmup.randomness import SeededRandom

STANDARDS = reference("standards")["std"]


def drawn(item: str, count: int = 400) -> list[Prompt]:
    return [
        skills.prompt(f"measure/{item}", morning(), SeededRandom("measure", item, n)) for n in range(count)
    ]


def test_as_many_things_as_the_standard_has() -> None:
    """K.MD.A.2 compares two things, 1.MD.A.1 orders three."""
    two, three = STANDARDS["K.MD.A.2"]["bounds"]["objects"], STANDARDS["1.MD.A.1"]["bounds"]["objects"]
    assert {len(p.given["lengths"]) for p in drawn("longer", 20) + drawn("ends-not-lined-up", 20)} == {two}
    assert {len(p.given["lengths"]) for p in drawn("order-three", 20)} == {three}
    assert {len(p.given["order"]) for p in drawn("through-a-third", 20)} == {three}


def test_units_run_to_ten_and_leave_neither_end_bare() -> None:
    """1.MD.A.2: equal units, end to end, no gap or overlap; the gaps of fallen clips are what is asked."""
    assert {p.given["long"] for p in drawn("units")} == set(range(3, 11))
    for p in drawn("fallen-clips"):
        assert p.given["missing"] and {0, p.given["long"] - 1}.isdisjoint(p.given["missing"])
    assert {p.given["long"] for p in drawn("fallen-clips")} == set(range(6, 11))


def test_pictures_are_those_of_the_question() -> None:
    for p in prompts("measure", 20):
        if isinstance(p.picture, Lengths):
            assert p.picture.lengths == tuple(p.given.get("lengths", [p.given.get("long")]))


def test_sticking_out_does_not_tell_which_is_longer() -> None:
    """Laid askew, the one that ends further right is the longer one half of the time."""
    longer_ends_last = 0
    for p in drawn("ends-not-lined-up"):
        (a, b), (x, y) = p.given["lengths"], p.given["starts"]
        assert x != y and a + x != b + y
        longer_ends_last += (a + x > b + y) == (a > b)
    assert 150 <= longer_ends_last <= 250


def test_the_big_thing_is_light_and_is_still_the_answer_half_of_the_time() -> None:
    bigs = 0
    for p in drawn("big-is-not-heavy"):
        assert p.given["big"] != p.given[p.given["down"]]
        bigs += p.answer == f"the {p.given['big']}"
    assert 150 <= bigs <= 250


def test_neither_word_nor_place_is_the_safe_answer() -> None:
    for item, one in (("longer", "longer"), ("heavier", "heavier"), ("find-longer", "longer")):
        assert 150 <= sum(p.given["asked"] == one for p in drawn(item)) <= 250
    tops = sum(p.answer == f"the {p.given['forms'][0]} one" for p in drawn("longer"))
    assert 150 <= tops <= 250
    assert len(Counter(p.answer for p in drawn("order-three"))) == 6
    firsts = sum(p.answer == f"the {p.given['order'][0]} one" for p in drawn("through-a-third"))
    assert 150 <= firsts <= 250


def test_finding_has_no_one_answer_and_no_lucky_guess() -> None:
    assert {p.guess for p in drawn("find-longer", 9) + drawn("find-heavier", 9)} == {0.0}
    assert {p.guess for p in drawn("longer", 9) + drawn("heavier", 9)} == {0.5}


@pytest.mark.parametrize("item", ["heavier", "big-is-not-heavy"])
def test_the_see_saw_has_many_pairs(item: str) -> None:
    pairs = {frozenset((p.given["left"], p.given["right"])) for p in drawn(item)}
    assert len(pairs) >= 8 and all(len(pair) == 2 for pair in pairs)


def test_some_clips_are_more_than_one() -> None:
    assert min(len(p.given["missing"]) for p in drawn("fallen-clips")) == 2


def test_what_is_held_is_neither_hot_nor_breaks() -> None:
    things = {p.given["thing"] for item in ("find-longer", "find-heavier") for p in drawn(item)}
    assert len(things) >= 16 and things.isdisjoint({"plate", "cup", "mug", "glass", "bowl", "jar"})
    for p in drawn("find-heavier", 40):
        assert p.do.startswith("Give your child a") and p.given["thing"] in p.do
