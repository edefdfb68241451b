"""Ordinals: words.toml for the words, worked example ex33, and the end of the line that is first."""

from tests.bank import reference
from tests.oracles.english import ENGLISH
from tests.skills.asking import asked, example, in_week, level_asked, opens, sought
from warmup.english import ordinal_word
from warmup.model import Prompt
from warmup.pictures.toy_line import ToyLine


def test_the_third_day_of_a_week_from_monday() -> None:
    """examples.toml, ex33: Wednesday, and only when the words say that Monday is the first."""
    row = example("ex33")
    for n in range(3000):
        (p,) = asked_at("ordinals/to-tenth", n)
        if p.given.get("names", ("",))[0] == "Monday":
            break
    assert "Monday" in p.say
    names = p.given["names"]
    assert names[:5] == row["given"].split()
    assert names[2] == row["answer"]
    assert p.answer == names[p.given["place"] - 1]


def asked_at(item: str, n: int) -> list[Prompt]:
    return asked(item, n + 1)[-1:]


def test_the_first_stands_at_the_door() -> None:
    """Which end is first is seen, on either side as often."""
    for item in ("to-third", "which-end"):
        prompts = asked(f"ordinals/{item}", 400)
        assert 0.42 < sum(p.given["front"] == "left" for p in prompts) / 400 < 0.58
        for p in prompts:
            assert p.picture == ToyLine(p.given["count"], p.given["front"])
            assert p.given["front"] in p.answer
    p = sought("ordinals/to-third", {"name": "last", "count": 5, "front": "left"})
    assert p.answer == "the fifth from the left" and p.accept == ("the first from the right",)


def test_first_second_third_and_last_are_all_asked() -> None:
    names = {p.given["name"] for p in asked("ordinals/to-third", 300)}
    assert {"first", "second", "third", "last"} <= names


def test_places_keep_to_their_level_and_rise() -> None:
    """Head Start Early Learning Outcomes Framework, at 60 months: ordinals to tenth (pedagogy.toml)."""
    most = reference("pedagogy")["benchmark"]["headstart_60m"]["ordinals_to"]
    assert {p.given["place"] for p in asked("ordinals/to-tenth", 300)} == set(range(4, most + 1))
    first = opens("ordinals/to-tenth")
    assert max(p.given["place"] for p in asked("ordinals/to-tenth", 300, in_week(first + 1))) == 8
    assert {p.given["place"] for p in asked("ordinals/fifth")} == {4, 5}
    assert max(p.given["place"] for p in level_asked("ordinals", "to-fifth")) == 5


def test_the_words_are_those_of_the_list() -> None:
    """words.toml, ordinal rows; inflect for the same words."""
    for row in reference("words")["ordinal"]["rows"]:
        assert ordinal_word(row["n"]) == row["word"] == ENGLISH.number_to_words(ENGLISH.ordinal(row["n"]))


def test_fifth_is_said_for_a_hat_and_found_by_its_word() -> None:
    """The word bends in the middle: it is heard in one half of the prompts and wanted in the other."""
    prompts = asked("ordinals/fifth", 300)
    said = [p for p in prompts if p.answer in ("fourth", "fifth")]
    assert 0.4 < len(said) / 300 < 0.6
    assert all(p.answer not in p.say for p in said)
    assert all(p.given["name"] in p.say for p in prompts if p not in said)


def test_a_hat_is_found_by_counting_from_the_door() -> None:
    hats = [p for p in level_asked("ordinals", "to-tenth") if "front" in p.given]
    assert len(hats) > 50
    for p in hats:
        assert p.picture == ToyLine(p.given["count"], p.given["front"], (p.given["place"],))
        assert p.given["place"] <= p.given["count"] <= 10


def test_a_week_is_started_where_the_words_say() -> None:
    """Sunday is no more the first day than Monday is: the words choose, and never say which one is."""
    days = [
        p for p in asked("ordinals/to-tenth", 400) if p.given.get("names", ("",))[0] in ("Monday", "Sunday")
    ]
    assert {p.given["names"][0] for p in days} == {"Monday", "Sunday"}
    assert not any("the first day" in p.say for p in days)
    assert all(p.given["names"][0] in p.say for p in days)
