"""Where things are: K.G.A.1 (references/standards.toml); left and right, common practice, no source."""

from collections import Counter

import pytest

from tests.skills.asking import asked, bounds, coded
from warmup import skills
from warmup.pictures.facts import THINGS
from warmup.pictures.scene import Scene


def test_every_place_word_of_the_standard_is_asked_with_its_code() -> None:
    said = " ".join(p.say + " " + " ".join((p.answer, *p.accept)) for p in coded("position", "K.G.A.1"))
    assert all(word in said for word in bounds("K.G.A.1")["place_words"])
    assert {level.key for level in skills.SKILLS["position"].levels if level.codes} == {"place-words"}


def test_the_first_level_is_done_and_not_guessed() -> None:
    for item in ("place", "between"):
        for p in asked(f"position/{item}"):
            assert p.guess < 0.1 and "?" not in p.say and p.picture is None


def test_what_has_no_face_is_placed_as_the_child_sees_it() -> None:
    for p in asked("position/place", 400):
        if p.given["where"] in ("behind", "in front of"):
            assert ("child" in p.answer) != p.given["has_a_face"]


def test_below_is_asked_only_of_what_has_room_below() -> None:
    low = {p.given["landmark"] for p in asked("position/place", 400) if p.given["where"] == "below"}
    assert low == {"chair", "table", "shelf"}


def test_all_six_places_are_shown_and_no_toy_twice() -> None:
    places: Counter[str] = Counter()
    for p in asked("position/tell-where", 600):
        assert isinstance(p.picture, Scene)
        toys = [toy for row in p.picture.rows for toy in row] + [p.picture.behind] * bool(p.picture.behind)
        assert len(set(toys)) == len(toys) and set(toys) <= set(THINGS)
        places[p.answer.partition(" the ")[0]] += 1
    assert set(places) == {"above", "below", "behind", "in front of", "beside", "between"}
    assert max(places.values()) < 2 * min(places.values())


@pytest.mark.parametrize("item", ["own-side", "to-one-side", "set-left-or-right", "name-the-neighbor"])
def test_left_comes_as_often_as_right_and_the_side_is_told(item: str) -> None:
    sides: Counter[str] = Counter()
    for p in asked(f"position/{item}", 400):
        side = p.given["side"]
        sides[side] += 1
        assert p.guess == 0.5
        if item in ("own-side", "to-one-side"):
            assert f"own {side}" in p.answer and f"your {side} as well" in p.answer, "side by side"
    assert 150 < sides["left"] < 250


def test_the_hand_always_crosses_the_middle() -> None:
    for p in asked("position/across-the-middle"):
        assert {p.given["side"], p.given["hand"]} == {"left", "right"}
        assert "left" in p.say.lower() and "right" in p.say.lower()


def test_things_of_a_kitchen_are_placed_and_none_of_them_breaks() -> None:
    for item in ("place", "between", "set-left-or-right", "make-a-row"):
        for p in asked(f"position/{item}"):
            named = {str(value) for key, value in p.given.items() if key not in ("names", "side", "start")}
            assert named.isdisjoint({"pot", "bowl", "plate", "glass", "jar", "bear"})


def test_a_bear_in_a_picture_is_not_asked_about() -> None:
    """It would be mixed up with the family's stuffed animal."""
    for item in ("tell-where", "name-the-neighbor"):
        for p in asked(f"position/{item}"):
            assert isinstance(p.picture, Scene) and "bear" not in p.say
            assert "bear" not in {p.picture.behind, *(toy for row in p.picture.rows for toy in row)}


def test_all_that_is_true_of_a_place_is_a_right_answer() -> None:
    for p in asked("position/tell-where", 400):
        where = p.answer.partition(" the ")[0]
        if where == "between":
            assert {"in the middle", *(f"next to the {toy}" for toy in p.given["rows"][0][::2])} <= {
                *p.accept
            }
        if where in ("above", "below"):
            assert f"on the {'top' if where == 'above' else 'bottom'} shelf" in p.accept
        if where == "beside":
            left = p.given["rows"][0][0] == p.given["thing"]
            assert any(text.startswith("left of" if left else "right of") for text in p.accept)


@pytest.mark.parametrize("item", ["own-side", "to-one-side", "set-left-or-right", "make-a-row"])
def test_whoever_asks_about_sides_is_told_where_to_be_first(item: str) -> None:
    for p in asked(f"position/{item}"):
        assert p.do.startswith(("Stand beside your child", "Sit beside your child"))
        assert "Sit " not in p.watch_for and "Turn to" not in p.watch_for
