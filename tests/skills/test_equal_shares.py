"""Equal shares: 1.G.A.3 (references/standards.toml)."""

from collections import Counter

import pytest

from tests.oracles.equal_shares import measured
from tests.skills.asking import asked, bounds, level_asked
from warmup import skills
from warmup.pictures.shares import Shares
from warmup.skills.equal_shares import areas


def test_only_two_and_four_shares_of_circles_and_rectangles() -> None:
    """1.G.A.3: two and four equal shares; a square is a rectangle."""
    allowed = set(bounds("1.G.A.3")["equal_shares"])
    asked_for = {
        p.given["count"]
        for key in ("halves", "quarters")
        for p in level_asked("equal-shares", key)
        if "count" in p.given
    }
    assert asked_for == allowed
    wholes = {
        p.given["whole"]
        for item in ("halves-or-not", "quarters-or-not")
        for p in asked(f"equal-shares/{item}")
    }
    assert wholes == {"circle", "rectangle", "square"}


@pytest.mark.parametrize("item", ["halves-or-not", "quarters-or-not"])
def test_areas_agree_with_a_fine_raster(item: str) -> None:
    """A circle's strips by the formula of the segment, against spots counted."""
    cuts = {
        (p.given["whole"], p.given["cut"], tuple(p.given["parts"])) for p in asked(f"equal-shares/{item}")
    }
    assert len(cuts) >= 8
    for whole, cut, parts in cuts:
        counted = measured({"whole": whole, "cut": cut, "parts": list(parts)})
        assert sorted(areas(whole, cut, parts)) == pytest.approx(sorted(counted), abs=0.01)
        assert sum(areas(whole, cut, parts)) == pytest.approx(1)


def test_strips_of_a_circle_as_wide_as_each_other_are_no_quarters() -> None:
    strips = [
        p
        for p in asked("equal-shares/quarters-or-not", 400)
        if (p.given["whole"], p.given["cut"]) == ("circle", "strips")
    ]
    assert strips and {p.answer for p in strips} == {"no"}
    assert all(set(p.given["parts"]) == {1} for p in strips)


def test_three_equal_parts_are_no_quarters() -> None:
    thirds = [p for p in asked("equal-shares/quarters-or-not", 400) if p.given["parts"] == [1, 1, 1]]
    assert thirds and {p.answer for p in thirds} == {"no"}


@pytest.mark.parametrize(
    ("item", "answers"),
    [
        ("halves-or-not", {"yes", "no"}),
        ("quarters-or-not", {"yes", "no"}),
        ("quarter-or-half", {"a half", "a quarter"}),
    ],
)
def test_two_way_answers_come_alike_and_own_up_to_it(item: str, answers: set[str]) -> None:
    prompts = asked(f"equal-shares/{item}", 400)
    found = Counter(p.answer for p in prompts)
    assert set(found) == answers and max(found.values()) < 250
    assert all(p.guess == 0.5 for p in prompts)


def test_neither_name_comes_first_more_often() -> None:
    """Saying the last word heard must not pay."""
    last = Counter(
        p.say.rstrip("?").endswith(p.answer.split()[-1]) for p in asked("equal-shares/quarter-or-half", 400)
    )
    assert 150 < last[True] < 250


def test_the_picture_is_the_whole_that_was_given() -> None:
    for item in ("halves-or-not", "quarters-or-not"):
        for p in asked(f"equal-shares/{item}"):
            assert isinstance(p.picture, Shares)
            seen = (p.picture.whole, p.picture.cut, list(p.picture.parts))
            assert seen == (p.given["whole"], p.given["cut"], p.given["parts"])


def test_what_is_left_is_not_told_in_the_question() -> None:
    """ "Give away half. How much is left?" holds its own answer."""
    for p in asked("equal-shares/about-halves"):
        if p.given["ask"] in ("left", "name"):
            assert "half" not in p.say and "halves" not in p.say
            assert "half" not in p.watch_for.lower()
        if p.given["ask"] == "left":
            assert "you take one" in p.say or "I take one" in p.say or "yours" in p.say, p.say
            assert {"half", "one part", "the other part"} <= set(p.accept)


def test_shares_are_made_of_something_that_lies_there() -> None:
    for item in ("make-halves", "make-quarters"):
        for p in asked(f"equal-shares/{item}"):
            assert p.do and (p.given["thing"] in p.do or p.given["thing"] == "sheet")


def test_halves_are_made_before_they_are_judged_and_quarters_wait_for_that() -> None:
    halves, quarters = skills.SKILLS["equal-shares"].levels
    assert halves.variants[0] == "make-halves" and halves.misconceptions == ("halves-or-not",)
    assert quarters.waits_on == ("equal-shares/halves-or-not",)
    assert halves.codes == quarters.codes == ("1.G.A.3",)
