"""Ordinals: words.toml for the words, worked example ex33, and the end of the line that is first."""

from tests.bank import reference
from tests.oracles.english import ENGLISH
from tests.skills.asking import asked, example, level_asked, sought
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


def test_places_keep_to_their_level() -> None:
    """Head Start Early Learning Outcomes Framework, at 60 months: ordinals to tenth (pedagogy.toml)."""
    most = reference("pedagogy")["benchmark"]["headstart_60m"]["ordinals_to"]
    assert max(p.given["place"] for p in level_asked("ordinals", "to-tenth")) == most
    assert {p.given["place"] for p in asked("ordinals/to-tenth", 300)} == {4, 6, 7, 8, 9, 10}
    assert {p.given["place"] for p in asked("ordinals/fifth")} == {5}


def test_the_days_of_a_month_from_the_eleventh_on() -> None:
    """words.toml, ordinal rows; inflect for the same words."""
    rows = {row["n"]: row["word"] for row in reference("words")["ordinal"]["rows"]}
    days = {p.answer for p in asked("ordinals/to-31st", 600)}
    assert days == {rows[n] for n in range(11, 32) if n not in (12, 21)}
    for n, word in rows.items():
        assert ordinal_word(n) == word == ENGLISH.number_to_words(ENGLISH.ordinal(n))
    assert {p.answer for p in asked("ordinals/twenty-first")} == {rows[21]}
    assert {p.answer for p in asked("ordinals/twelfth")} == {rows[12], "December"}


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
