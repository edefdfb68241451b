"""Parts: K.OA.A.3 (references/standards.toml), worked example ex41, facts printed in that standard."""

from tests.bank import spelled
from tests.skills.asking import asked, bounds, example, in_week, level_asked, opens, printed, sought
from warmup import skills
from warmup.pictures.counters import Counters

WORD = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
SPLITS = ("split-to-5", "split-6-7", "split-8-9")


def pairs(key: tuple[str, ...]) -> set[tuple[int, ...]]:
    return {tuple(map(WORD.index, form.split(" and "))) for form in key}


def test_all_ways_to_split_five() -> None:
    """examples.toml, ex41: a part of zero counts, and a pair turned round is the same pair."""
    row = example("ex41")
    p = next(p for p in asked("parts/split-to-5") if p.given == {"whole": row["given"]})
    key = pairs((p.answer, *p.accept))
    assert {tuple(sorted(pair)) for pair in key} == {tuple(pair) for pair in row["answer"]}
    assert len(key) == 6, "either part may be told first"


def test_the_facts_the_standard_prints_are_right_ways() -> None:
    """CCSSM K.OA.A.3 prints 5 = 2 + 3 and 5 = 4 + 1."""
    p = sought("parts/split-to-5", {"whole": 5})
    for fact in ("5 = 2 + 3", "5 = 4 + 1"):
        row = printed(fact)
        told = p.given.get("shown", ())
        assert (row["a"], row["b"]) in pairs((p.answer, *p.accept)) or row["a"] in told


def test_wholes_stay_in_their_level_and_the_code() -> None:
    """K.OA.A.3: numbers up to ten, in more ways than one."""
    bound = bounds("K.OA.A.3")
    want = {"split-to-5": {3, 4, 5}, "hidden-to-5": {3, 4, 5}, "of-6-and-7": {6, 7}, "of-8-and-9": {8, 9}}
    for level in skills.SKILLS["parts"].levels:
        wholes = {p.given["whole"] for p in level_asked("parts", level.key)}
        assert wholes == want[level.key]
        assert max(wholes) <= bound["max"]
    for item in SPLITS:
        for p in asked(f"parts/{item}"):
            told = 1 if "shown" in p.given else 0
            ways = {tuple(sorted(pair)) for pair in pairs((p.answer, *p.accept))}
            assert len(ways) + told >= bound["ways_at_least"]


def test_a_new_way_is_neither_the_old_one_nor_that_one_turned() -> None:
    for item in ("another-way", *SPLITS):
        new = [p for p in asked(f"parts/{item}") if "shown" in p.given]
        if item in ("another-way", "split-6-7"):
            assert len(new) == (200 if item == "another-way" else 0), "another way of six has its own item"
        else:
            assert 60 < len(new) < 140, "as often as a free split, but for three"
        for p in new:
            shown = tuple(p.given["shown"])
            key = pairs((p.answer, *p.accept))
            assert shown not in key and shown[::-1] not in key
            assert 0 not in next(iter(pairs((p.answer,)))), "the example is two real parts"


def test_three_and_four_come_before_five() -> None:
    for item in ("split-to-5", "turned-pair", "hidden-to-5"):
        first = opens(f"parts/{item}")
        for week, wholes in ((first + 1, {3, 4}), (first + 2, {3, 4, 5})):
            assert {p.given["whole"] for p in asked(f"parts/{item}", 200, in_week(week))} == wholes


def test_a_pair_turned_round_has_two_different_parts() -> None:
    sides = [p.given["left"] > p.given["right"] for p in asked("parts/turned-pair", 600)]
    assert all(p.given["left"] != p.given["right"] for p in asked("parts/turned-pair"))
    assert 0.4 < sum(sides) / 600 < 0.6


def test_only_its_own_item_hides_nothing_or_all() -> None:
    """pedagogy.toml, trouble.zero: zero stays out of the other pools."""
    for item in ("hidden-to-5", "hidden-6-7", "hidden-8-9"):
        assert all(0 < p.given["seen"] < p.given["whole"] for p in asked(f"parts/{item}"))
    ends = [p.given["seen"] == 0 for p in asked("parts/part-of-zero", 600)]
    assert 0.4 < sum(ends) / 600 < 0.6
    assert all(p.given["seen"] in (0, p.given["whole"]) for p in asked("parts/part-of-zero"))


def test_the_picture_shows_what_is_seen_and_no_more() -> None:
    for item in ("hidden-to-5", "hidden-6-7", "hidden-8-9"):
        assert all(p.picture == Counters(p.given["seen"], what="counters") for p in asked(f"parts/{item}"))
    assert all(p.picture is None for item in SPLITS for p in asked(f"parts/{item}"))


def test_a_pair_turned_around_is_told_whole() -> None:
    """The pair and its whole are three numbers said; the parts the other way around are the answer."""
    for p in asked("parts/turned-pair"):
        left, right = WORD[p.given["left"]], WORD[p.given["right"]]
        assert p.answer == f"{right} and {left}"
        assert sum(word.lower() in WORD for word in spelled(p.say)) == 3
        assert not any(p.answer in cue.text for cue in p.cues)


def test_what_the_adult_hides_is_laid_out_first() -> None:
    """The words "You see two" need two to be seen: that is what to do, before anything is said."""
    hidden = [p for item in ("hidden-to-5", "hidden-6-7", "hidden-8-9") for p in asked(f"parts/{item}")]
    assert all(bool(p.do) == (p.say.startswith(("I have", "The bag has"))) for p in hidden)
    assert all(WORD[p.given["whole"]] in p.do for p in hidden if p.do)
