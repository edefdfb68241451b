"""Place value: 1.NBT.B.2 and 1.NBT.B.3 (references/standards.toml), worked example ex37."""

from num2words import num2words

from tests.bank import spelled
from tests.skills.asking import asked, bounds, coded, example, in_week, opens, sought
from warmup import skills
from warmup.model import Prompt
from warmup.pictures.bundles import Bundles


def number(p: Prompt) -> int:
    given = p.given
    if "number" in given:
        return given["number"]
    if "cards" in given:
        return max(map(int, given["cards"]))
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
    tens = set(bounds("1.NBT.B.2.C")["values"])
    assert {number(p) for p in coded("place-value", "1.NBT.B.2.C")} == tens - {10}
    last = skills.SKILLS["place-value"].levels[-1]
    assert (last.codes, last.toward) == ((), ("2.NBT.A.1",))
    assert max(number(p) for p in asked("place-value/digits-and-hundreds", 600)) in range(190, 200)


def test_two_numbers_and_three_keep_the_bounds_of_the_code() -> None:
    """1.NBT.B.3: from 10 to 99."""
    edge = bounds("1.NBT.B.3")
    for item in ("numerals-to-99", "nineteen-twenty-one", "which-is-more"):
        numbers = {int(card) for p in asked(f"place-value/{item}", 400) for card in p.given["cards"]}
        assert edge["min"] <= min(numbers) and max(numbers) <= edge["max"]


def test_no_digit_alone_tells_which_is_more() -> None:
    """The lesser has more ones: 19 beside 21, 13 beside 31 (common practice, no source)."""
    for item in ("nineteen-twenty-one", "which-is-more"):
        for p in asked(f"place-value/{item}", 300):
            less, more = sorted(map(int, p.given["cards"]))
            assert less % 10 > more % 10 and less // 10 < more // 10
            assert not any(num2words(int(card)) in p.watch_for for card in p.given["cards"])
    turned = [
        p.given["cards"][0] == p.given["cards"][1][::-1] for p in asked("place-value/which-is-more", 300)
    ]
    assert 0.4 < sum(turned) / 300 < 0.7


def test_two_numerals_favor_neither_side_nor_the_greater() -> None:
    two = [p for p in asked("place-value/numerals-to-99", 900) if len(p.given["cards"]) == 2]
    first = sum(p.answer == num2words(int(p.given["cards"][0])) for p in two) / len(two)
    more = sum(p.given["ask"] == "more" for p in two) / len(two)
    assert 0.42 < first < 0.58 and 0.42 < more < 0.58
    for p in asked("place-value/numerals-to-99"):
        numbers = [int(card) for card in p.given["cards"]]
        assert len(numbers) == 2 or numbers not in (sorted(numbers), sorted(numbers)[::-1])


def test_whole_tens_begin_with_four_bundles() -> None:
    first = opens("place-value/whole-tens")
    for item in ("whole-tens", "bundle-is-ten"):
        for week, most in ((first + 1, 50), (first + 2, 90)):
            assert max(number(p) for p in asked(f"place-value/{item}", 300, in_week(week))) == most


def test_nobody_says_that_a_bundle_is_ten_where_that_is_the_question() -> None:
    for p in asked("place-value/bundle-is-ten"):
        assert "ten" not in spelled(p.say.lower())
        assert isinstance(p.picture, Bundles) and (p.picture.tens, p.picture.ones) == (p.given["tens"], 0)


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
    for item in ("to-50", "to-99"):
        prompts = asked(f"place-value/{item}", 600)
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
