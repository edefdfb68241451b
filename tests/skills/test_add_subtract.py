"""Sums and differences: K.OA.A.2, K.OA.A.5 and 1.OA.C.6 (references/standards.toml), ex43, printed facts."""

from collections import Counter

import pytest
from num2words import num2words

from tests.skills.asking import asked, bounds, coded, example, in_week, level_asked, opens, printed, sought

SIGN = {"+": 1, "-": -1}


def largest(given: dict[str, object]) -> int:
    """The total of a sum, the number a difference starts from."""
    first, second = int(str(given["first"])), int(str(given["second"]))
    return first + second if given["op"] == "+" else first


@pytest.mark.parametrize(
    ("code", "bound"), [("K.OA.A.5", "fluent_within"), ("K.OA.A.2", "within"), ("1.OA.C.6", "fluent_within")]
)
def test_totals_reach_the_bound_of_the_code_and_stay_in_it(code: str, bound: str) -> None:
    assert max(largest(dict(p.given)) for p in coded("add-subtract", code)) == bounds(code)[bound]


def test_acting_stays_within_five_and_has_something_to_hold() -> None:
    """K.OA.A.1, and the first level's own range."""
    for p in level_asked("add-subtract", "act-to-5"):
        assert largest(dict(p.given)) <= 5
        assert p.table or any(word in p.say for word in ("finger", "Jump"))


def test_four_take_away_four() -> None:
    """examples.toml, ex43."""
    row = example("ex43")
    p = sought("add-subtract/take-all", {"first": row["given"]["a"], "second": row["given"]["b"]})
    assert p.answer == num2words(row["answer"])
    assert set(row["accept"]) == set(p.accept)


@pytest.mark.parametrize(
    ("item", "fact"),
    [
        ("act-add", "5 = 2 + 3"),
        ("head-add-5", "5 = 4 + 1"),
        ("objects-add", "5 + 2 = 7"),
        ("objects-take", "7 - 2 = 5"),
        ("head-take-10", "10 - 8 = 2"),
    ],
)
def test_printed_facts(item: str, fact: str) -> None:
    """CCSSM, as each row of examples.toml, printed, names."""
    row = printed(fact)
    p = sought(f"add-subtract/{item}", {"first": row["a"], "second": row["b"], "op": row["op"]})
    assert p.answer == num2words(row["result"])


def test_trouble_items_ask_their_own_fact_and_the_plain_ones_never_do() -> None:
    def facts(item: str) -> set[tuple[int, str, int]]:
        return {(p.given["first"], p.given["op"], p.given["second"]) for p in asked(f"add-subtract/{item}")}

    assert facts("five-minus-four") == {(5, "-", 4)}
    assert facts("two-plus-seven") == {(2, "+", n) for n in (5, 6, 7, 8)}
    assert facts("take-all-or-none") == {(n, "-", m) for n in (2, 3, 4, 5) for m in (0, n)}
    assert all(first == second for first, _, second in facts("take-all"))
    assert facts("take-none") == {(n, "-", 0) for n in range(2, 11)}
    assert (5, "-", 4) not in facts("head-take-5") | facts("mixed-5")
    plain = ("act-add", "act-take", "head-add-5", "head-take-5", "mixed-5", "objects-add", "objects-take")
    for item in (*plain, "on-one-or-two", "back-one-or-two"):
        assert all(first and second and first + SIGN[op] * second for first, op, second in facts(item))


def test_sums_and_differences_are_mixed_half_and_half() -> None:
    ways = [p.given["op"] == "+" for p in asked("add-subtract/mixed-5", 600)]
    assert 0.42 < sum(ways) / 600 < 0.58
    ends = [p.given["second"] == 0 for p in asked("add-subtract/take-all-or-none", 600)]
    assert 0.42 < sum(ends) / 600 < 0.58


def test_one_or_two_more_or_less_starts_from_the_larger_number() -> None:
    """1.OA.C.5: two more by counting on two (standards.toml); the smaller number first is its own item."""
    for item in ("on-one-or-two", "back-one-or-two"):
        for p in asked(f"add-subtract/{item}"):
            assert p.given["second"] in (1, 2) and p.given["first"] >= p.given["second"]
    assert all(p.given["first"] < p.given["second"] for p in asked("add-subtract/two-plus-seven"))


@pytest.mark.parametrize(
    ("item", "early", "late"),
    [("act-add", 4, 5), ("act-take", 4, 5), ("take-all", 4, 5), ("head-add-5", 4, 5), ("head-take-5", 4, 5)]
    + [(item, 8, 10) for item in ("objects-add", "objects-take", "take-none", "head-add-10", "head-take-10")]
    + [("on-one-or-two", 7, 10), ("back-one-or-two", 7, 10)],
)
def test_totals_begin_small(item: str, early: int, late: int) -> None:
    first = opens(f"add-subtract/{item}")
    for week, most in ((first + 1, early), (first + 2, late)):
        prompts = asked(f"add-subtract/{item}", 200, in_week(week))
        assert max(largest(dict(p.given)) for p in prompts) == most


def test_nothing_is_eaten_or_given_away_as_zero() -> None:
    """Zero is a number's name; of things there are none."""
    for p in asked("add-subtract/take-all-or-none"):
        assert not any(slip in p.say for slip in ("ate zero", "away zero. How", "lost zero")), p.say


def test_every_fact_to_five_comes_up() -> None:
    """In the weeks after the level opens, and later all but the first of them."""
    every = {(a, b) for a in range(1, 5) for b in range(1, 5) if a + b <= 5}
    new, old = asked("add-subtract/head-add-5", 400, in_week(11)), asked("add-subtract/head-add-5", 400)
    sums, later = ({(p.given["first"], p.given["second"]) for p in some} for some in (new, old))
    assert sums | later == every and later == every - {(1, 1)}


@pytest.mark.parametrize("item", ["act-add", "act-take", "head-add-5", "head-take-5", "mixed-5"])
def test_one_and_one_is_for_those_who_begin(item: str) -> None:
    """In spring it teaches nothing, and drawn by its total it came as often as all sums of five."""
    name = f"add-subtract/{item}"
    for week in range(opens(name) + 2, 37, 3):
        assert min(largest(dict(p.given)) for p in asked(name, 100, in_week(week))) == 3
    assert min(largest(dict(p.given)) for p in asked(name, 100, in_week(opens(name)))) == 2


def test_no_answer_is_a_good_guess() -> None:
    for item, share in (
        ("head-add-5", 0.4),
        ("head-take-5", 0.4),
        ("objects-take", 0.25),
        ("head-add-10", 0.3),
    ):
        answers = Counter(p.answer for p in asked(f"add-subtract/{item}", 600))
        assert max(answers.values()) / 600 < share


def test_the_head_needs_nothing_on_the_table_and_no_picture() -> None:
    for key in ("add-to-5", "take-to-5", "mixed-to-5", "one-or-two", "head-to-10"):
        assert all(p.picture is None and not p.table for p in level_asked("add-subtract", key, 40))


def test_one_block_is_no_stack_and_nothing_is_taken_from_one_thing() -> None:
    """What no parent says: "Stack one block", "Take one away" from a single spoon."""
    for item in ("act-add", "objects-add", "act-take", "take-all", "objects-take", "take-none"):
        for p in asked(f"add-subtract/{item}"):
            assert "tack" not in p.say
            assert p.given["op"] == "+" or p.given["first"] > 1
