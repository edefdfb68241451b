"""Capacity: K.MD.A.2 (references/standards.toml) and what no ounce is for (references/capacity.toml)."""

import re

import pytest

from tests.bank import prompts, reference
from tests.mornings import morning
from tests.skills.in_week import asked_in, opening
from warmup import skills
from warmup.english import number_word
from warmup.model import Prompt
from warmup.pictures.jars import Jars
from warmup.randomness import SeededRandom
from warmup.skills.capacity import OPENS


def drawn(item: str, count: int = 400) -> list[Prompt]:
    day = morning(school_day=144)
    return [skills.prompt(f"capacity/{item}", day, SeededRandom("capacity", item, n)) for n in range(count)]


def test_nothing_but_cups_is_poured() -> None:
    """capacity.toml, liquid and trap.fluid_ounce: an ounce is a weight too; the rest is past kindergarten."""
    units = {row[part] for row in reference("capacity")["liquid"]["rows"] for part in ("one", "of")} - {"cup"}
    said = [p.say for p in prompts("capacity", 20)]
    assert {"pint", "quart", "gallon", "fluid ounce"} <= units
    assert not [say for say in said for unit in (*units, "ounce") if re.search(rf"\b{unit}s?\b", say)]


def test_cupfuls_stay_within_ten() -> None:
    words = {number_word(n) for n in range(1, 11)}
    for item in ("cups-in-jar", "cups-to-fill"):
        assert {p.answer for p in drawn(item)} <= words
    assert {p.given["takes"] for p in drawn("cups-to-fill")} == set(range(5, 11))


def jars(p: Prompt) -> Jars:
    assert isinstance(p.picture, Jars)
    return p.picture


def test_two_containers_are_compared() -> None:
    """K.MD.A.2: two things and one measure."""
    bounds = reference("standards")["std"]["K.MD.A.2"]["bounds"]
    for item in ("tall-and-thin", "full-is-not-more"):
        assert {len(jars(p).sizes) for p in drawn(item, 20)} == {bounds["objects"]}


@pytest.mark.parametrize(
    ("item", "sign"),
    [("tall-and-thin", "the tall jar"), ("full-is-not-more", "the full jar")],
)
def test_neither_is_the_safe_answer(item: str, sign: str) -> None:
    hits = sum(p.answer == sign for p in drawn(item))
    assert 150 <= hits <= 250


def test_the_tall_jar_holds_more_as_often_as_less() -> None:
    more = sum((p.answer == "the tall jar") == (p.given["asked"] == "more") for p in drawn("tall-and-thin"))
    assert 150 <= more <= 250


def test_every_place_and_level_of_water_comes_up() -> None:
    assert len({p.answer for p in drawn("find-jar", 60)}) == 3
    assert {p.answer for p in drawn("how-full", 60)} == {"empty", "half full", "full"}
    for p in drawn("find-jar", 60):
        assert jars(p).fills[p.given["fills"].index(p.given["asked"])] == p.given["asked"]


def test_the_picture_shows_what_is_counted() -> None:
    for p in drawn("cups-in-jar", 60):
        assert (jars(p).fills, jars(p).parts) == ((p.given["cups"],), p.given["takes"])


def test_pouring_is_done_and_water_decides() -> None:
    """No story of a pour: two vessels, and the answer is what the water does at the rim."""
    for p in drawn("pour"):
        one, two, more = p.given["one"], p.given["two"], p.given["asked"] == "more"
        assert f"empty {one}" in p.do and f"empty {two}" in p.do and p.seconds == 60
        assert one in p.say and two in p.say and "pour" in p.say.lower()
        ends = dict(part.removeprefix("if ").split(", the ") for part in p.answer.split("; "))
        # Room left: the second takes all of the first and more.
        assert ends["there is room left"] == (two if more else one)
        assert ends["some runs over"] == (one if more else two)


def test_a_child_is_handed_nothing_hot_and_nothing_that_breaks() -> None:
    for item in ("fill-it", "pour", "cups-to-fill"):
        for p in drawn(item, 100):
            told = f"{p.do} {p.say} {p.table}".replace("plastic bowl", "")
            assert not re.search(r"\b(pots?|pans?|mugs?|jars?|glass(es)?|jugs?)\b", told), told


def test_what_the_adult_fills_first_is_no_slip_to_watch_for() -> None:
    for p in drawn("fill-it", 60):
        assert "tray" in p.do and "tray" not in p.watch_for


def test_no_cue_says_the_first_sound_of_how_full() -> None:
    assert not any("…" in cue.text or "sound" in cue.text for p in drawn("how-full", 60) for cue in p.cues)


def test_more_cups_are_counted_once_the_level_has_been_open() -> None:
    first = opening("capacity:cupfuls")
    assert first == OPENS
    for item, most in (("cups-in-jar", 8), ("cups-to-fill", 10)):
        for week in (1, first, first + 1):
            assert {p.given["takes"] for p in asked_in(week, f"capacity/{item}")} == {5, 6}
        assert max(p.given["takes"] for p in asked_in(first + 2, f"capacity/{item}")) == most


def test_height_alone_has_a_record_of_its_own_and_makes_cupfuls_wait() -> None:
    full, pour, cups = skills.SKILLS["capacity"].levels
    assert pour.misconceptions == ("tall-and-thin",) and cups.waits_on == ("capacity/tall-and-thin",)
    assert pour.codes == ("K.MD.A.2",) and not full.codes and not cups.codes
