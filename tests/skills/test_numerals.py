"""Numerals: the bounds of K.CC.A.3 and 1.NBT.A.1 (references/standards.toml), the pairs mixed up."""

from collections import Counter

import pytest
from num2words import num2words

from tests.bank import reference, spelled
from tests.skills.asking import asked, bounds, coded, in_week, level_asked, opens
from warmup.model import Prompt
from warmup.pictures.number_row import NumberRow
from warmup.pictures.numeral import Numeral


def number(p: Prompt) -> int:
    return p.given["find"] if "find" in p.given else int(p.given["read"])


def test_codes_keep_their_bounds() -> None:
    """K.CC.A.3: numerals from 0 to 20; 1.NBT.A.1: to 120."""
    early = bounds("K.CC.A.3")
    assert {number(p) for p in coded("numerals", "K.CC.A.3", 400)} == set(
        range(early["write_min"], early["write_max"] + 1)
    )
    assert max(number(p) for p in coded("numerals", "1.NBT.A.1")) <= bounds("1.NBT.A.1")["count_to"]


@pytest.mark.slow
def test_a_level_asks_its_whole_range() -> None:
    for item, want in (("to-5", range(6)), ("to-10", range(6, 11)), ("to-20", range(11, 21))):
        assert {number(p) for p in asked(f"numerals/{item}", 300)} == set(want)
    assert {number(p) for p in asked("numerals/to-50", 600)} == set(range(21, 51))
    assert {number(p) for p in asked("numerals/to-100", 1000)} == set(range(51, 101))


def test_the_teens_begin_low() -> None:
    first = opens("numerals/to-20")
    for week, most in ((first + 1, 15), (first + 2, 20)):
        assert {number(p) for p in asked("numerals/to-20", 300, in_week(week))} == set(range(11, most + 1))


def test_a_numeral_is_put_to_a_set_up_to_twenty() -> None:
    """K.CC.A.3: a numeral stands for a number of things, zero for none of them (standards.toml)."""
    for item in ("to-5", "to-10", "to-20"):
        prompts = asked(f"numerals/{item}", 300)
        laid = [p for p in prompts if "lay" in p.given]
        assert 0.2 < len(laid) / len(prompts) < 0.45
        for p in laid:
            assert p.picture == Numeral(p.given["read"]) and p.given["lay"] in p.table
            assert p.answer.startswith(f"{num2words(number(p))} ")
            assert ("none" in p.accept) == (number(p) == 0)
    early = bounds("K.CC.A.3")
    put = {number(p) for p in coded("numerals", "K.CC.A.3", 600) if "lay" in p.given}
    assert put == set(range(early["write_min"], early["write_max"] + 1))


def test_a_teen_lies_beside_its_digits_turned_around() -> None:
    """Fourteen and 41: the ones are heard first (pedagogy.toml, trouble.teens)."""
    prompts = asked("numerals/one-four-or-four-one", 300)
    assert {number(p) for p in prompts} == {13, 14, 16, 17, 18, 19}
    found = [p for p in prompts if "cards" in p.given]
    assert found and all(str(number(p))[::-1] in p.given["cards"] for p in found)


def test_what_is_to_be_read_stands_alone_and_what_is_said_lies_among_four() -> None:
    for key in ("to-5", "to-10", "to-20", "to-100"):
        prompts = level_asked("numerals", key)
        for p in prompts:
            if "read" in p.given:
                assert p.picture == Numeral(p.given["read"])
                assert not set(spelled(num2words(number(p)))) & set(spelled(p.say.lower()))
            else:
                assert p.picture == NumberRow(tuple(p.given["cards"]))
                assert len(set(p.given["cards"])) == 4
                assert num2words(number(p)) in p.say
        found = sum("cards" in p.given for p in prompts)
        read = len(prompts) - found - sum("lay" in p.given for p in prompts)
        assert 0.4 < read / (read + found) < 0.6


def test_no_card_is_where_the_answer_mostly_lies() -> None:
    places = Counter(
        p.answer
        for key in ("to-5", "to-100")
        for p in level_asked("numerals", key, 400)
        if "cards" in p.given
    )
    assert len(places) == 4
    assert max(places.values()) / sum(places.values()) < 0.32


def test_the_two_that_are_mixed_up_lie_side_by_side() -> None:
    """Six and nine, 12 and 21, 13 and 31, 15 and 50: common practice, no source."""
    for item, pair in (
        ("six-nine", {6, 9}),
        ("twelve-twenty-one", {12, 21}),
        ("thirteen-thirty-one", {13, 31}),
        ("fifteen-fifty", {15, 50}),
    ):
        prompts = asked(f"numerals/{item}", 400)
        assert {number(p) for p in prompts} == pair
        assert 0.4 < sum(number(p) == min(pair) for p in prompts) / len(prompts) < 0.6
        assert all(pair <= {int(c) for c in p.given["cards"]} for p in prompts if "cards" in p.given)


def test_teens_are_laid_beside_the_tens_that_sound_alike() -> None:
    """words.toml, teen_ty: thirteen and thirty, fourteen and forty, and so on."""
    pairs = {frozenset(pair) for pair in reference("words")["teen_ty"]["pairs"]}
    found = set()
    for item in ("fifteen-fifty", "teens-and-tens"):
        for p in asked(f"numerals/{item}", 300):
            if "cards" in p.given:
                both = [pair for pair in pairs if pair <= {int(c) for c in p.given["cards"]}]
                assert any(number(p) in pair for pair in both), p.given
                found.update(both)
    assert found == {frozenset(pair) for pair in ((15, 50), (16, 60), (17, 70), (18, 80), (19, 90))}


def test_the_numeral_0_is_read_as_zero() -> None:
    """None is how many there are; the numeral has a name (K.CC.A.3, standards.toml)."""
    zeros = [p for p in asked("numerals/to-5", 300) if p.given.get("read") == "0" and "lay" not in p.given]
    assert len(zeros) > 10
    assert all((p.answer, p.accept) == ("zero", ("oh",)) for p in zeros)
    assert not any("page" in p.say for p in zeros), "no book has a page zero"


def test_no_cue_leaves_a_single_card() -> None:
    """Cards are traced and looked at, never covered one after another."""
    for key in ("to-5", "to-10", "to-20", "to-100"):
        for p in level_asked("numerals", key, 60):
            assert not any("Cover" in cue.text or "cards start" in cue.text for cue in p.cues)
