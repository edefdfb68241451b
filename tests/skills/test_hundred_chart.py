"""The hundred chart: K.CC.A.1 and 1.NBT.C.5 (references/standards.toml), ex31."""

import re
from collections import Counter

import pytest
from num2words import num2words

from tests.skills.asking import asked, bounds, coded, example, in_week, level_asked, opens, sought
from warmup.pictures.hundred_chart import HundredChart


def number(word: str) -> int:
    return next(n for n in range(121) if num2words(n) == word)


def test_ten_more_than_forty_seven() -> None:
    """examples.toml, ex31."""
    row = example("ex31")
    p = sought("hundred-chart/ten-more", {"number": row["given"], "step": 10})
    assert number(p.answer) == row["answer"]


def test_ten_more_or_less_keeps_the_code_and_the_chart() -> None:
    bound = bounds("1.NBT.C.5")
    for p in coded("hundred-chart", "1.NBT.C.5", 300):
        assert abs(p.given["step"]) == bound["step"]
        assert bound["given_min"] <= p.given["number"] <= bound["given_max"]
        assert 1 <= p.given["number"] + p.given["step"] <= 100
        assert p.picture is None, "in the head; the chart comes with the cue"
    assert sought("hundred-chart/ten-more", {"number": bound["given_min"]}).answer == "twenty"
    assert sought("hundred-chart/ten-less", {"number": bound["given_max"]}).answer == "eighty-nine"


@pytest.mark.slow
def test_no_number_lies_past_the_code() -> None:
    found = coded("hundred-chart", "K.CC.A.1")
    for p in found:
        assert isinstance(p.picture, HundredChart)
        assert number(p.answer) <= p.picture.last <= bounds("K.CC.A.1")["count_to"]
    assert max(number(p.answer) for p in found) == bounds("K.CC.A.1")["count_to"] - 1


@pytest.mark.slow
def test_only_the_number_asked_for_is_bare() -> None:
    for p in level_asked("hundred-chart", "to-100"):
        assert isinstance(p.picture, HundredChart)
        assert p.picture.hidden == (number(p.answer),)
        assert p.picture.pointed == ()


def test_at_the_end_of_a_row_the_next_number_starts_the_row_below() -> None:
    ends = Counter(p.given["row_end"] for p in asked("hundred-chart/end-of-row", 400))
    assert set(ends) == {10, 20, 30, 40} and min(ends.values()) > 60
    assert sought("hundred-chart/end-of-row", {"row_end": 30}).answer == "thirty-one"


def test_down_is_not_plus_one() -> None:
    for p in asked("hundred-chart/one-down"):
        assert number(p.answer) != p.given["above"] + 1
        assert (number(p.answer) - p.given["above"]) == 10


@pytest.mark.slow
@pytest.mark.parametrize(("item", "low"), [("hidden-to-50", 11), ("hidden-to-100", 12)])
def test_hidden_numbers_spread_over_the_chart(item: str, low: int) -> None:
    found = Counter(number(p.answer) for p in asked(f"hundred-chart/{item}", 1000))
    limit = int(item.rpartition("-")[2])
    assert len(found) >= 0.85 * (limit - low)
    assert max(found) >= limit - 5 and low <= min(found) <= low + 4


def test_charts_reach_higher_with_the_weeks() -> None:
    found = {}
    first = opens("hundred-chart/hidden-to-100")
    for week in range(first, first + 5):
        prompts = asked("hundred-chart/hidden-to-100", 200, in_week(week))
        found[week] = max(p.given["last"] for p in prompts)
        assert all(p.given["last"] - p.given["first"] == 49 for p in prompts)
    assert list(found.values()) == sorted(found.values()) and (found[first], found[first + 4]) == (70, 100)


def test_row_and_column_may_be_read_off_either_way() -> None:
    places = Counter(
        (p.given["row_start"], p.given["column"]) for p in asked("hundred-chart/row-and-column", 800)
    )
    assert {row % 10 for row, _ in places} == {1}
    assert len(places) > 60


def test_the_cue_walks_up_to_the_card_and_leaves_the_landing() -> None:
    for item in ("hidden-to-50", "hidden-to-100", "ten-more", "ten-less", "end-of-row"):
        for p in asked(f"hundred-chart/{item}", 60):
            said = p.cues[2].text.replace("…", " ").replace("”", " ").replace(",", " ").split()
            assert p.answer not in said


def test_the_way_to_a_square_is_told_by_one_number() -> None:
    """A row named by its start and a column by its top were two numbers and a riddle."""
    for p in asked("hundred-chart/row-and-column"):
        told = [n for n in (p.given["row_start"], p.given["column"]) if num2words(n) in spelled_out(p.say)]
        assert len(told) == 1 and "empty square" in p.say


def test_ten_more_is_asked_of_numbers_alone() -> None:
    for item in ("ten-more", "ten-less"):
        for p in asked(f"hundred-chart/{item}", 60):
            assert not re.search(r"page|frog|turn", p.say.lower()) and " ten" in p.say


def spelled_out(say: str) -> list[str]:
    """The words of a prompt, hyphenated number words whole."""
    return re.findall(r"[a-z]+(?:-[a-z]+)?", say.lower())
