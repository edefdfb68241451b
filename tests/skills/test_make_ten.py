"""Make ten: K.OA.A.4 and K.OA.A.2 (references/standards.toml), worked example ex39, printed facts."""

import re
from collections import Counter

from num2words import num2words

from tests.skills.asking import asked, bounds, coded, example, in_week, level_asked, opens, printed, sought
from warmup import skills
from warmup.pictures.ten_frame import TenFrame


def test_the_given_numbers_keep_the_bounds_of_their_codes() -> None:
    """K.OA.A.4: from one to nine, and ten is the target. K.OA.A.2: totals no bigger than ten."""
    four, two = bounds("K.OA.A.4"), bounds("K.OA.A.2")
    to_nine = [p.given for p in coded("make-ten", "K.OA.A.4")]
    assert {given["have"] for given in to_nine} == set(range(four["given_min"], four["given_max"] + 1))
    assert {given["make"] for given in to_nine} == {four["target"]}
    taken = [p.given for p in coded("make-ten", "K.OA.A.2", 400)]
    assert {given["from"] for given in taken} == {two["within"]}
    assert {given["away"] for given in taken} == set(range(1, 10))


def test_nine_wants_one_more() -> None:
    """examples.toml, ex39."""
    row = example("ex39")
    assert sought("make-ten/easy-pairs", {"have": row["given"]}).answer == num2words(row["answer"])


def test_eight_and_two_and_five_and_five() -> None:
    """CCSSM 1.OA.B.4 asks what makes ten with eight; NRC (2009), Box 5-7, prints 10 = 5 + 5."""
    row = printed("10 - 8 = 2")
    assert sought("make-ten/eight-two", {"have": row["b"]}).answer == num2words(row["result"])
    taken = sought("make-ten/take-from-ten", {"from": row["a"], "away": row["b"]})
    assert taken.answer == num2words(row["result"])
    assert "10 = 5 + 5" in printed("6 = 5 + 1")["fact"]
    assert sought("make-ten/see-places", {"have": 5}).answer == "five"


def test_what_is_seen_is_what_is_said_and_the_last_level_is_spoken() -> None:
    for item in ("see-places", "easy-pairs", "eight-two", "all", "seven-three", "six-four"):
        assert all(p.picture == TenFrame(p.given["have"]) for p in asked(f"make-ten/{item}", 40))
    for item in ("in-the-head", "three-and-what", "take-from-ten"):
        assert all(p.picture is None for p in asked(f"make-ten/{item}", 40))


def test_neither_number_of_a_pair_is_the_safe_one() -> None:
    for item, pair in (("eight-two", {2, 8}), ("seven-three", {3, 7}), ("six-four", {4, 6})):
        have = Counter(p.given["have"] for p in asked(f"make-ten/{item}", 600))
        assert set(have) == pair
        assert 0.4 < min(have.values()) / 600 < 0.6


def test_few_places_are_empty_and_little_is_taken_while_it_is_new() -> None:
    """Up to five empty places; from ten what the easy pairs tell; then any."""
    for item, name, early in (
        ("see-places", "have", {5, 6, 7, 8, 9}),
        ("take-from-ten", "away", {1, 2, 5, 8, 9}),
    ):
        first = opens(f"make-ten/{item}")
        for week, want in ((first + 1, early), (first + 2, set(range(2 if name == "have" else 1, 10)))):
            assert {p.given[name] for p in asked(f"make-ten/{item}", 300, in_week(week))} == want


def test_a_pair_with_its_own_record_is_not_asked_by_the_plain_item_of_its_level() -> None:
    assert {p.given["have"] for p in asked("make-ten/easy-pairs")} == {1, 5, 9}
    assert 3 not in {p.given["have"] for p in asked("make-ten/in-the-head", 400)}


def test_ten_frame_and_partner_are_the_words() -> None:
    """The trade's terms; and nobody is asked how far it is from one number to another."""
    for level in skills.SKILLS["make-ten"].levels:
        for p in level_asked("make-ten", level.key, 60):
            texts = " ".join((p.say, p.watch_for, p.table, *(cue.text for cue in p.cues)))
            assert not re.search(r"\btray|friend|How far|Zero is", texts), texts
