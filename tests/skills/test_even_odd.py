"""Even and odd: 2.OA.C.3 (references/standards.toml), worked example ex47."""

from num2words import num2words

from tests.skills.asking import asked, bounds, coded, example, sought
from warmup.pictures.pairs import Pairs


def test_seven_socks() -> None:
    """examples.toml, ex47: no, one is left."""
    row = example("ex47")
    for things in ("socks", "kids"):
        p = sought("even-odd/seven-nine", {"number": row["given"], "things": things, "can": True})
        assert p.answer.partition(":")[0] == row["answer"]
        assert row["accept"][0].lower() in p.accept


def test_the_code_keeps_its_bound() -> None:
    """2.OA.C.3: groups of up to twenty."""
    most = bounds("2.OA.C.3")["group_max"]
    for p in coded("even-odd", "2.OA.C.3"):
        assert max(p.given.get("number", 0), p.given.get("high", 0) - 1) <= most
    assert {p.given["number"] for p in asked("even-odd/pair-to-20", 400)} == set(range(11, 21))
    assert {p.given["number"] for p in asked("even-odd/pair-to-10", 400)} == set(range(3, 11))


def test_even_and_odd_come_as_often() -> None:
    for item in ("pair-to-10", "pair-to-20", "name-and-make"):
        prompts = asked(f"even-odd/{item}", 600)
        odd = [p.given["kind"] == "odd" if "kind" in p.given else p.given["number"] % 2 == 1 for p in prompts]
        assert 0.44 < sum(odd) / len(odd) < 0.56, item


def test_pairs_and_what_is_left_make_the_number_again() -> None:
    for item in ("pair-to-10", "seven-nine", "pair-to-20", "eleven", "twelve"):
        for p in asked(f"even-odd/{item}"):
            words = p.answer.rpartition(": ")[2].split()
            left = {"one": 1, "none": 0}[words[3]]
            pairs = next(n for n in range(11) if num2words(n) == words[0])
            assert 2 * pairs + left == p.given["number"]
            assert p.picture == Pairs(pairs, left, p.given["things"], paired=False), "not paired yet"


def test_a_number_to_make_leaves_more_than_one_right() -> None:
    for p in asked("even-odd/name-and-make", 400):
        if "low" in p.given:
            assert len(p.accept) >= 2
            between = {num2words(n) for n in range(p.given["low"] + 1, p.given["high"])}
            assert set(p.accept) <= between


def test_eleven_is_odd_though_its_digits_are_alike_and_twelve_even_though_it_has_a_one() -> None:
    assert all("one left over" in p.answer for p in asked("even-odd/eleven"))
    assert all("none left over" in p.answer for p in asked("even-odd/twelve"))
