"""Counting by tens, fives and twos: K.CC.A.1, 2.NBT.A.2, 2.OA.C.3 (references/standards.toml), ex29."""

import pytest

from tests.skills.asking import asked, bounds, coded, example, level_asked, sought
from warmup import skills
from warmup.pictures.bundles import Bundles
from warmup.pictures.hands import Hands
from warmup.pictures.pairs import Pairs

ACROSS = {
    "by-tens/past-90": (90, 100),
    "by-fives/15-to-20": (15, 20),
    "by-fives/45-to-50": (45, 50),
    "by-twos/8-to-10": (8, 10),
    "by-twos/12-to-14": (12, 14),
    "by-twos/18-to-20": (18, 20),
}


def levels(skill: str) -> dict[str, tuple[str, ...]]:
    return {level.key: level.codes for level in skills.SKILLS[skill].levels}


def test_by_tens_keeps_to_one_hundred_and_its_steps() -> None:
    for code, limit in (("K.CC.A.1", "count_to"), ("2.NBT.A.2", "within")):
        for p in coded("by-tens", code, 100):
            assert p.given["by"] in bounds(code)["steps"]
            assert p.given["start"] < p.given["end"] <= bounds(code)[limit]
    assert max(p.given["end"] for p in coded("by-tens", "K.CC.A.1")) == 100


def test_by_fives_steps_as_its_code_says() -> None:
    assert all(codes == ("2.NBT.A.2",) for codes in levels("by-fives").values())
    for p in coded("by-fives", "2.NBT.A.2", 100):
        assert p.given["by"] in bounds("2.NBT.A.2")["steps"]
        assert p.given["end"] <= 100


def test_by_twos_goes_as_far_as_its_code() -> None:
    """2.NBT.A.2 of the national text names no twos, so it is never given."""
    assert 2 not in bounds("2.NBT.A.2")["steps"]
    assert levels("by-twos") == {"to-20": ("2.OA.C.3",)}
    found = coded("by-twos", "2.OA.C.3")
    assert max(p.given["end"] for p in found) == bounds("2.OA.C.3")["group_max"]
    assert max(p.given["end"] for p in asked("by-twos/to-10")) == 10


def test_count_by_fives_to_fifty() -> None:
    """examples.toml, ex29."""
    row = example("ex29")
    p = sought("by-fives/to-50", {"start": row["given"]["step"], "end": row["given"]["to"]})
    assert p.working == ", ".join(map(str, row["answer"]))


@pytest.mark.parametrize("item", ACROSS)
def test_trouble_items_lead_over_their_place_and_the_cue_stops_short(item: str) -> None:
    before, after = ACROSS[item]
    for p in asked(item, 80):
        assert p.given["start"] < before and after <= p.given["end"]
        words = max((p.answer, *p.accept), key=len).split(", ")
        assert words[(after - p.given["start"]) // p.given["by"]] not in p.cues[2].text


@pytest.mark.parametrize(
    ("skill", "key", "limit"),
    [
        *(("by-tens", "to-50", 50), ("by-tens", "to-100", 100)),
        *(("by-fives", "to-25", 25), ("by-fives", "to-50", 50), ("by-twos", "to-20", 20)),
    ],
)
def test_a_level_reaches_its_name_and_no_further(skill: str, key: str, limit: int) -> None:
    assert max(p.given["end"] for p in level_asked(skill, key)) == limit


def test_the_picture_holds_what_is_counted() -> None:
    for p in level_asked("by-tens", "to-50", 40):
        assert isinstance(p.picture, Bundles) and (10 * p.picture.tens, p.picture.ones) == (p.given["end"], 0)
    for p in level_asked("by-fives", "to-50", 40):
        assert isinstance(p.picture, Hands) and 5 * p.picture.number == p.given["end"]
    for p in level_asked("by-twos", "to-20", 40):
        assert isinstance(p.picture, Pairs) and p.picture.paired
        assert 2 * p.picture.pairs + p.picture.left_over == p.given["end"]


@pytest.mark.parametrize("skill", ["by-tens", "by-fives", "by-twos"])
def test_the_adult_begins_a_long_count_only_and_what_was_said_may_be_left_out(skill: str) -> None:
    begun = 0
    for level in skills.SKILLS[skill].levels:
        for p in level_asked(skill, level.key, 80):
            words, heard = max((p.answer, *p.accept), key=len).split(", "), p.given["heard"]
            forms = [", ".join(words[left:]) for left in range(max(1, heard) + 1)]
            assert p.answer == forms[heard] and {p.answer, *p.accept} == set(forms)
            assert heard == (2 if "Keep going" in p.say else 1 if p.say.startswith("I say") else 0)
            if heard == 2:
                begun += 1
                assert p.say.startswith(f"{words[0].capitalize()}, {words[1]}. Keep going by ")
                assert len(words) >= 5 and p.say.endswith(f" {words[-1]}.")
    assert begun > 10
