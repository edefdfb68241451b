"""Compare: K.CC.C.6 and K.CC.C.7 (references/standards.toml), worked example ex45."""

from collections import Counter

from num2words import num2words

from tests.skills.asking import asked, bounds, coded, example, in_week, level_asked, opens, sought
from warmup.pictures.two_sets import TwoSets


def test_six_or_nine() -> None:
    """examples.toml, ex45: which is more, six or nine?"""
    row = example("ex45")
    cards = [str(row["given"]["a"]), str(row["given"]["b"])]
    p = sought("compare/numerals-to-10", {"cards": cards, "ask": "more"})
    assert p.answer == num2words(row["answer"])
    assert "six" in p.say.lower() and "nine" in p.say


def test_codes_keep_their_bounds() -> None:
    """K.CC.C.6: groups to ten; K.CC.C.7: numerals from 1 to 10."""
    most = bounds("K.CC.C.6")["group_max"]
    for p in coded("compare", "K.CC.C.6"):
        sizes = (p.given["top"], p.given["bottom"]) if "top" in p.given else (p.given["mine"],)
        assert max(sizes) <= most
        if "mine" in p.given:
            assert min(p.given["mine"], p.given["mine"] + p.given["step"]) >= 2, "nothing to count"
            assert p.given["mine"] + p.given["step"] <= most
            assert not p.given["step"] or "than" in p.say or "yours with" in p.say, "one more than what?"
    edge = bounds("K.CC.C.7")
    numbers = {int(card) for p in coded("compare", "K.CC.C.7", 400) for card in p.given["cards"]}
    assert edge["min"] == min(numbers) and max(numbers) == edge["max"]


def test_sets_and_numerals_begin_small() -> None:
    for item, early, late in (("sets-to-10", 6, 10), ("spread", 5, 9), ("fewer", 6, 10)):
        first = opens(f"compare/{item}")
        for week, most in ((first + 1, early), (first + 2, late)):
            given = [p.given for p in asked(f"compare/{item}", 400, in_week(week))]
            assert max(g.get("mine", 0) or max(g["top"], g["bottom"]) for g in given) == most
    first = opens("compare/numerals-to-10")
    for week, most in ((first + 1, 5), (first + 2, 10)):
        prompts = asked("compare/numerals-to-10", 300, in_week(week))
        assert {int(card) for p in prompts for card in p.given["cards"]} == set(range(1, most + 1))


def test_the_first_level_stays_within_five() -> None:
    for p in level_asked("compare", "match-to-5"):
        assert max(p.given["mine"], p.given["mine"] + p.given["step"]) <= 5
        assert p.picture == TwoSets(p.given["mine"], 0), "the other tray is for the child to fill"


def test_more_fewer_top_and_bottom_come_as_often() -> None:
    prompts = [p for p in level_asked("compare", "sets-to-10", 600) if "top" in p.given]
    answers = Counter(p.answer for p in prompts)
    assert set(answers) == {"the top tray", "the bottom tray", "the same"}
    assert max(answers.values()) / sum(answers.values()) < 0.42
    plain = Counter(p.given["ask"] for p in asked("compare/sets-to-10", 600))
    assert 0.42 < plain["more"] / 600 < 0.58


def test_two_numerals_favor_neither_side_nor_the_greater() -> None:
    for key in ("numerals-to-10",):
        two = [p for p in level_asked("compare", key, 600) if len(p.given["cards"]) == 2]
        first = sum(p.answer == num2words(int(p.given["cards"][0])) for p in two) / len(two)
        more = sum(p.given["ask"] == "more" for p in two) / len(two)
        assert 0.42 < first < 0.58 and 0.42 < more < 0.58, key


def test_the_wide_row_never_holds_more() -> None:
    """A longer row looks like more: common practice, no source."""
    prompts = asked("compare/spread", 300)
    wide = [(p.given[p.given["spread"]], min(p.given["top"], p.given["bottom"])) for p in prompts]
    assert all(spread == least for spread, least in wide)
    assert 0.4 < sum(p.given["spread"] == "top" for p in prompts) / 300 < 0.6


def test_three_cards_never_lie_in_order() -> None:
    for key in ("numerals-to-10",):
        for p in level_asked("compare", key):
            numbers = [int(card) for card in p.given["cards"]]
            if len(numbers) == 3:
                assert numbers not in (sorted(numbers), sorted(numbers)[::-1])
                assert p.answer.count(",") == 2


def test_what_the_picture_shows_as_rings_is_called_rings() -> None:
    for item in ("match-to-5", "equal-to-5", "fewer", "sets-to-10", "spread"):
        for p in asked(f"compare/{item}"):
            assert "my row" in p.say or "rings" in p.say, p.say
            if "mine" in p.given:
                assert f"my {p.given['thing']}" not in p.say
                assert p.given["thing"] in p.do and p.given["thing"] in p.table, "what is laid out is at hand"
