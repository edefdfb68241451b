"""Place value: 1.NBT.B.2 (references/standards.toml), worked example ex37."""

from num2words import num2words

from tests.skills.asking import asked, bounds, coded, example, level_asked, sought
from warmup import skills
from warmup.model import Prompt


def number(p: Prompt) -> int:
    given = p.given
    if "number" in given:
        return given["number"]
    return 100 * given.get("hundreds", 0) + 10 * given["tens"] + given["ones"]


def test_tens_in_forty() -> None:
    """examples.toml, ex37: four."""
    row = example("ex37")
    p = sought("place-value/whole-tens", {"number": row["given"], "count": "tens"})
    assert p.answer == num2words(row["answer"])
    assert "forty" in p.say


def test_the_code_keeps_two_digits_and_ends_before_the_hundreds() -> None:
    """1.NBT.B.2: two-digit numbers; 1.NBT.B.2.C: whole tens."""
    digits = bounds("1.NBT.B.2")["digits"]
    assert all(len(str(number(p))) == digits for p in coded("place-value", "1.NBT.B.2"))
    assert {number(p) for p in asked("place-value/whole-tens")} <= set(bounds("1.NBT.B.2.C")["values"])
    assert skills.SKILLS["place-value"].levels[-1].codes == ()
    assert max(number(p) for p in asked("place-value/digits-and-hundreds", 600)) in range(190, 200)


def test_a_bundle_holds_as_many_as_the_standard_says() -> None:
    """1.NBT.B.2.A: ten ones are a ten."""
    ten = bounds("1.NBT.B.2.A")["ones_in_a_ten"]
    for p in asked("place-value/whole-tens"):
        if "tens" in p.given:
            assert p.answer == num2words(ten * p.given["tens"])


def test_levels_ask_their_whole_range() -> None:
    assert {number(p) for p in asked("place-value/to-50", 600)} == set(range(21, 51))
    assert {number(p) for p in asked("place-value/to-99", 900)} == set(range(51, 100))
    assert {number(p) for p in asked("place-value/forty")} == {40}
    assert {number(p) for p in asked("place-value/thirteen-thirty-one")} == {13, 31}


def test_together_and_apart_come_as_often() -> None:
    for key in ("to-50", "to-99"):
        prompts = level_asked("place-value", key, 600)
        assert 0.44 < sum("tens" in p.given for p in prompts) / len(prompts) < 0.56


def test_ones_left_unbundled_are_right_too() -> None:
    p = sought("place-value/to-50", {"number": 34, "count": "tens and ones"})
    for form in (p.answer, *p.accept[1:]):
        words = form.replace(" and ", " ").split()
        counts = [next(n for n in range(100) if num2words(n) == word) for word in words[::2]]
        assert 10 * counts[0] + counts[1] == 34, form
    assert len(p.accept) == 3


def test_the_key_speaks_the_words_of_the_question() -> None:
    """Bundles asked for are told as bundles; those who tie all up have no ten left loose."""
    for p in asked("place-value/to-50"):
        if p.given.get("count"):
            assert ("bundle" in p.answer) == ("bundle" in p.say), p.say
            loose_tens = [form for form in p.accept if any(f" {num2words(n)} " in form for n in (10, 11, 12))]
            assert not loose_tens or not p.say.startswith("Tie "), p.accept


def test_a_digit_is_worth_its_place() -> None:
    prompts = [p for p in asked("place-value/digits-and-hundreds", 600) if "place" in p.given]
    front = [p for p in prompts if p.given["place"] == "tens"]
    assert 0.42 < len(front) / len(prompts) < 0.58
    for p in prompts:
        tens, ones = list(str(p.given["number"]))
        assert tens != ones and ones != "0", "either digit can be told by its name"
        assert num2words(int(tens if p in front else ones)) in p.say


def test_what_is_missing_to_a_hundred_fills_it() -> None:
    for p in asked("place-value/ten-tens"):
        if "have" in p.given:
            more = next(n for n in range(10) if num2words(n) == p.answer)
            assert 10 * p.given["have"] + 10 * more == 100
        else:
            assert p.answer == num2words(10 * 10)


def test_the_key_holds_the_count_with_its_unit_and_without() -> None:
    """Asked for bundles, a child says "seven" or "seven bundles": both are right."""
    more = [p for p in asked("place-value/ten-tens") if "have" in p.given]
    for p in more:
        unit = "" if p.answer == "one" else "s"
        assert {f"{p.answer} bundle{unit}", f"{p.answer} ten{unit}", f"{p.answer} more"} == set(p.accept)
    for p in asked("place-value/whole-tens"):
        if p.given.get("count") == "tens":
            assert {f"{p.answer} bundles", f"{p.answer} tens"} <= set(p.accept)
    for p in asked("place-value/forty"):
        assert {"four", "four tens"} <= set(p.accept)
        assert ("four bundles" in p.accept) == ("bundles" in p.say)
    for p in asked("place-value/digits-and-hundreds", 300):
        if p.given.get("place") == "tens":
            digit = num2words(p.given["number"] // 10)
            assert {f"{digit} tens", f"{digit} bundles"} <= set(p.accept)


def test_no_number_past_a_hundred_has_one_ten_or_one_one() -> None:
    """The hundred and its parts are then three numbers to say, and no "one one" among them."""
    past = [p.given for p in asked("place-value/digits-and-hundreds", 600) if "hundreds" in p.given]
    assert len(past) > 200
    assert not any(1 in (given["tens"], given["ones"]) for given in past)
