"""Measuring: the bounds of K.MD.A.1, K.MD.A.2 and 1.MD.A.2 (references/standards.toml)."""

import pytest

from tests.bank import prompts, reference
from tests.mornings import morning
from tests.oracles.measure import HOLLOW
from tests.skills.in_week import asked_in, opening
from warmup import skills
from warmup.model import Prompt
from warmup.pictures.lengths import Lengths
from warmup.randomness import SeededRandom
from warmup.skills.measure import OPENS

STANDARDS = reference("standards")["std"]


def drawn(item: str, count: int = 400) -> list[Prompt]:
    day = morning(school_day=144)
    return [skills.prompt(f"measure/{item}", day, SeededRandom("measure", item, n)) for n in range(count)]


def test_as_many_things_as_the_standard_has() -> None:
    """K.MD.A.2 compares two things."""
    two = STANDARDS["K.MD.A.2"]["bounds"]["objects"]
    assert {len(p.given["lengths"]) for p in drawn("longer", 20) + drawn("ends-not-lined-up", 20)} == {two}


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
    for item in ("longer", "heavier", "find-longer", "find-heavier"):
        more = sum(p.given["asked"] in ("longer", "taller", "heavier") for p in drawn(item))
        assert 150 <= more <= 250, item
    assert 150 <= sum(p.given["by"] == "height" for p in drawn("find-longer")) <= 250
    tops = sum(p.answer == f"the {p.given['forms'][0]} one" for p in drawn("longer"))
    assert 150 <= tops <= 250


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


def test_one_thing_has_several_things_to_measure() -> None:
    """K.MD.A.1: two attributes at least."""
    least = STANDARDS["K.MD.A.1"]["bounds"]["attributes_at_least"]
    things = set()
    for p in drawn("what-to-measure"):
        things.add(p.given["thing"])
        assert p.given["wants"] == least and "two things" in p.say
        assert p.answer.count("how ") >= least and "how heavy it is" in p.answer
        assert ("how much it holds" in p.answer) == (p.given["thing"] in HOLLOW)
        assert p.guess == 0 and p.given["thing"] in p.do and p.given["thing"] in p.say
    assert len(things) >= 10
    assert [level.key for level in skills.SKILLS["measure"].levels if "K.MD.A.1" in level.codes] == [
        "what-to-measure"
    ]


def test_another_thing_is_never_the_one_that_was_told() -> None:
    knowns = set()
    for p in drawn("another-thing-to-measure"):
        knowns.add(p.given["known"])
        assert p.given["known"] not in (p.answer, *p.accept)
        assert " ".join(p.given["known"].split()[:2]) in p.say
    assert knowns == {"how long it is", "how tall it is", "how heavy it is", "how much it holds"}


def test_ribbons_are_short_in_the_week_that_units_open() -> None:
    first = opening("measure:units")
    assert first == OPENS
    for week in (1, first):
        assert max(p.given["long"] for p in asked_in(week, "measure/units")) == 6
        assert max(p.given["long"] for p in asked_in(week, "measure/fallen-clips")) == 7
    assert max(p.given["long"] for p in asked_in(first + 1, "measure/units")) == 10


def test_taller_is_asked_of_what_stands() -> None:
    for p in drawn("find-longer"):
        stands = p.given["by"] == "height"
        assert stands == p.do.startswith("Stand a") and (p.given["asked"] != "taller" or stands)


def test_no_clip_is_laid_before_two_ends_are_lined_up() -> None:
    first, *_, units = skills.SKILLS["measure"].levels
    assert first.misconceptions == ("ends-not-lined-up",)
    assert units.waits_on == ("measure/ends-not-lined-up",)
