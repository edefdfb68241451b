"""Counting from one: K.CC.A.1 and 1.NBT.A.1 (references/standards.toml), tens changes of words.toml."""

import re
from itertools import pairwise
from typing import Any

import pytest

from tests.bank import reference
from tests.mornings import morning
from tests.oracles.english import ENGLISH
from tests.skills.asking import asked, bounds, coded, in_week, level_asked, opens
from warmup import skills
from warmup.randomness import SeededRandom
from warmup.skills._counting import in_figures, in_words, steps, tens_change
from warmup.skills._number import chart_rows

ITEMS = {
    "past-15": (14, 16),
    "across-30": (29, 30),
    "across-40": (39, 40),
    "past-99": (99, 100),
    "across-100": (100, 101),
}


def numbers_said(say: str) -> list[int]:
    """The numbers a prompt says, in order."""
    words = reference("words")["cardinal"]["words"]
    longest_first = "|".join(sorted(words, key=len, reverse=True))
    return [words.index(word) for word in re.findall(rf"\b(?:{longest_first})\b", say.lower())]


def childs_part(given: dict[str, int]) -> range:
    return range(given.get("over", 0) + 1, given["end"] + 1)


@pytest.mark.parametrize("code", ["K.CC.A.1", "1.NBT.A.1"])
def test_the_count_reaches_the_bound_of_its_code_and_stays_in_it(code: str) -> None:
    assert max(p.given["end"] for p in coded("count", code)) == bounds(code)["count_to"]


@pytest.mark.parametrize("key", ["to-20", "to-39", "to-69", "to-100", "to-120"])
def test_a_level_reaches_its_name_and_no_further(key: str) -> None:
    ends = [p.given["end"] for p in level_asked("count", key)]
    assert max(ends) == int(key.removeprefix("to-"))


def test_a_whole_count_starts_at_one_and_the_childs_part_fits_a_minute() -> None:
    """At about a number a second: common practice, no source."""
    for key in ("to-20", "to-39", "to-69", "to-100", "to-120"):
        for p in level_asked("count", key, 60):
            assert p.given.get("start", 1) == 1 and ("start" in p.given) == (key in ("to-20", "to-39"))
            assert len(childs_part(dict(p.given))) + 3 <= p.seconds


def test_the_whole_count_runs_from_one_to_the_codes_bound_in_two_minutes() -> None:
    """K.CC.A.1 is the whole count; at about a number a second: common practice, no source."""
    (level,) = (level for level in skills.SKILLS["count"].levels if level.key == "one-to-100")
    for p in level_asked("count", "one-to-100", 60):
        assert dict(p.given) == {"start": 1, "end": bounds("K.CC.A.1")["count_to"]}
        assert level.seconds == p.seconds == 120 > len(childs_part(dict(p.given)))
        said = numbers_said(p.say.removesuffix("Clap at each new ten."))
        assert said in ([1, 100], [100]), "the child begins at one, and nobody helps along"
    assert all(skills.askable("count/one-to-100", morning(school_day=day)) for day in range(1, 145))


@pytest.mark.parametrize(
    ("item", "low", "high"),
    [("to-20", 13, 20), ("to-39", 23, 29), ("across-30", 33, 39), ("to-69", 59, 69), ("to-100", 80, 100)],
)
def test_the_numbers_of_a_level_rise_in_the_four_weeks_after_it_opens(item: str, low: int, high: int) -> None:
    first = opens(f"count/{item}")
    tops = [
        max(p.given["end"] for p in asked(f"count/{item}", 400, in_week(week)))
        for week in range(first, first + 6)
    ]
    assert tops == sorted(tops) and tops[0] == low and tops[3] < tops[4] == tops[5] == high


def test_of_a_stretch_the_adult_says_one_or_two_numbers_and_the_stop() -> None:
    ways = set()
    for key in ("to-69", "to-100", "to-120"):
        for p in level_asked("count", key, 60):
            over, end = p.given["over"], p.given["end"]
            said = numbers_said(p.say)
            assert said in ([over, end], [over - 1, over, end]), p.say
            ways.add((len(said), "eep going" in p.say))
    assert (3, True) in ways
    worked = {p.say for p in asked("count/across-40", 600) if p.answer.endswith("forty-five")}
    assert "Thirty-four, thirty-five. Keep going to forty-five." in worked


def test_the_familys_animal_sleeps_and_no_other() -> None:
    at = morning()._replace(animal="Hoppy")
    says = [skills.prompt("count/to-20", at, SeededRandom("animal", n)).say for n in range(200)]
    told = [say for say in says if "Hoppy" in say]
    assert told and not any("bear" in say.lower() for say in says)
    assert all(say.startswith("Hoppy is asleep.") and say.endswith("to wake Hoppy up.") for say in told)


@pytest.mark.parametrize("item", ITEMS)
def test_trouble_items_lead_across_their_place_and_the_cue_stops_short_of_it(item: str) -> None:
    before, after = ITEMS[item]
    for p in asked(f"count/{item}", 60):
        part = childs_part(dict(p.given))
        assert part[0] <= before and after <= part[-1]
        assert f"{in_words([after])}…" not in p.cues[2].text


@pytest.mark.slow
@pytest.mark.parametrize(
    "row", reference("words")["decade_crossing"]["rows"], ids=lambda row: str(row["last"])
)
def test_each_change_of_the_tens_is_asked_and_shown_in_the_answer(row: dict[str, Any]) -> None:
    """NRC (2009), p. 143, in words.toml: the places, and the word that is said in error."""
    crossing = [
        p
        for key in ("to-39", "to-69", "to-100", "to-120")
        for p in level_asked("count", key)
        if row["last"] in childs_part(dict(p.given)) and row["next"] <= p.given["end"]
    ]
    assert crossing
    for p in crossing:
        assert f"{row['word']}, {row['next_word']}" in p.answer
        assert row["slip"] not in p.answer


def test_a_long_stretch_is_shortened_and_keeps_what_matters() -> None:
    assert in_words(steps(1, 5)) == "one, two, three, four, five"
    assert in_figures(steps(1, 33)) == "1, 2 … 19, 20 … 29, 30 … 33"
    assert in_figures(steps(1, 18), keep=(14, 15, 16)) == "1, 2 … 14, 15, 16 … 18"
    assert in_figures(steps(33, 28, -1)) == "33, 32, 31, 30, 29, 28"
    assert tens_change(steps(27, 32)) == ": past the 29 the tens change"
    assert tens_change(steps(30, 34)) == ""


def test_the_chart_brought_in_holds_whole_rows() -> None:
    for low, high in ((1, 9), (29, 31), (30, 30), (91, 101), (0, 3)):
        chart = chart_rows(low, high)
        assert chart.first % 10 == 1 and chart.last % 10 == 0
        assert chart.first <= max(1, low) and high <= chart.last
        assert chart.last - chart.first < high - low + 20


def test_number_words_agree_with_two_libraries_and_the_table() -> None:
    """num2words and inflect, with the traps words.toml notes: US speech has no "and" after hundred."""
    from num2words import num2words

    table = reference("words")["cardinal"]["words"]
    for number in range(121):
        said = in_words([number])
        assert said == table[number] == num2words(number).replace(" and ", " ")
        assert said == ENGLISH.number_to_words(number, andword="")


@pytest.mark.slow
@pytest.mark.parametrize("key", ["to-20", "to-39", "to-69", "to-100", "to-120"])
def test_stops_spread_over_the_range(key: str) -> None:
    plain = [p.given["end"] for p in asked(f"count/{key}", 600)]
    ends = sorted(set(plain))
    assert all(after - before == 1 for before, after in pairwise(ends))
    assert max(plain.count(end) for end in ends) < 0.2 * len(plain)
