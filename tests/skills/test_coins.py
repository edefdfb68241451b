"""Coins: the United States Mint's table and the state bounds in references/coins.toml and standards.toml."""

from collections import Counter

import pytest

from tests.bank import prompts, recomputed, reference
from tests.mornings import morning
from warmup import skills
from warmup.model import Prompt
from warmup.pictures.coins import Coins
from warmup.randomness import SeededRandom

COINS = reference("coins")
ITEMS = [name for level in skills.SKILLS["coins"].levels for name in level.items]


def drawn(item: str, *, pennies: bool = True, count: int = 60) -> list[Prompt]:
    day = morning(pennies=pennies)
    return [skills.prompt(f"coins/{item}", day, SeededRandom("coins", item, n)) for n in range(count)]


def pictures_of(p: Prompt) -> list[Coins]:
    """What the question and its cues show: coins, or nothing."""
    found = [picture for picture in (p.picture, *(cue.picture for cue in p.cues)) if picture is not None]
    assert all(isinstance(picture, Coins) for picture in found)
    return [picture for picture in found if isinstance(picture, Coins)]


def test_worth_is_what_the_table_says() -> None:
    """31 U.S.C. 5112 and Virginia K.7 (coins.toml, equals)."""
    equals = COINS["equals"]
    for p in [*drawn("worth"), *drawn("dime-worth"), *drawn("quarter-worth")]:
        coin, unit = p.given["coin"], p.given["unit"]
        table = equals["nickels_in"] if unit == "nickel" else {"penny": 1, **equals["pennies_in"]}
        words = {1: "one", 2: "two", 5: "five", 10: "ten", 25: "twenty-five"}
        assert p.answer == words[table[coin]]


def test_how_many_nickels_make_a_dime() -> None:
    """examples.toml, ex53."""
    example = next(e for e in reference("examples")["example"] if e["id"] == "ex53")
    asked = [p for p in drawn("dime-worth") if p.given["unit"] == "nickel"]
    assert asked and {p.answer for p in asked} == {"two"} and example["answer"] == 2


def test_the_dime_buys_more_though_it_is_smaller() -> None:
    """National Research Council (2009), p. 147 (coins.toml, trap.dime): small is not cheap."""
    trap = COINS["trap"]["dime"]
    for p in drawn("dime-or-nickel"):
        order = trap["value_order"] if "buys" in p.given["asked"] else trap["size_order"]
        dime_last = order.index("dime") > order.index("nickel")
        wants_last = p.given["asked"] in ("buys more", "is bigger")
        assert (p.answer == "a dime") == (dime_last == wants_last)


def test_order_of_worth_is_never_the_order_of_size() -> None:
    order = COINS["order"]
    for p in drawn("line-up"):
        said = p.answer.split(", ")
        assert sorted(said, key=order["everyday_by_value"].index) in (said, said[::-1])
        assert sorted(said, key=order["everyday_by_diameter"].index) not in (said, said[::-1])


def test_neither_answer_is_the_safe_one() -> None:
    """Fewer coins win as often as more coins, the dime as often as the nickel, by independent draws."""
    for item in ("nickel-or-pennies", "dime-or-many", "quarter-or-many"):
        ones = Counter(p.answer == f"a {p.given['one']}" for p in drawn(item, count=600))
        assert 240 <= ones[True] <= 360, item
    dimes = sum(p.answer == "a dime" for p in drawn("dime-or-nickel", count=600))
    assert 240 <= dimes <= 360
    firsts = sum(p.answer == f"a {p.given['coins'][0]}" for p in drawn("dime-or-nickel", count=600))
    assert 240 <= firsts <= 360


@pytest.mark.parametrize("item", ITEMS)
def test_a_family_without_pennies_is_not_asked_about_pennies(item: str) -> None:
    day = morning(pennies=False)
    if not skills.askable(f"coins/{item}", day):
        assert item in ("fill-a-nickel", "nickel-or-pennies")
        return
    for p in drawn(item, pennies=False):
        told = " ".join((p.say, p.answer, p.working, p.watch_for, *(cue.text for cue in p.cues)))
        assert "penn" not in told
        assert not any("penny" in picture.names for picture in pictures_of(p))
        assert recomputed(p) is None


def test_every_level_can_be_asked_without_pennies() -> None:
    day = morning(pennies=False)
    for level in skills.SKILLS["coins"].levels:
        assert any(skills.askable(f"coins/{item}", day) for item in level.items)


def test_only_the_four_coins_that_kindergarten_meets() -> None:
    """Texas K.4 and Virginia K.7 (standards.toml): penny, nickel, dime, quarter; no half dollar or dollar."""
    bounds = reference("standards")["state"]["va_coins"]["bounds"]
    for p in prompts("coins", 30):
        assert all(set(picture.names) <= set(bounds) for picture in pictures_of(p))
        assert "dollar" not in p.say + p.answer and "this year" not in p.say


def test_no_cue_begins_a_coin_s_name() -> None:
    for pennies in (True, False):
        assert not any("…" in cue.text for p in drawn("name-it", pennies=pennies) for cue in p.cues)


def test_taking_one_coin_away_leaves_a_choice() -> None:
    for p in [*drawn("find-it"), *drawn("find-it", pennies=False)]:
        assert "Push one that is not it away" in p.cues[2].text and len(p.given["coins"]) - 1 >= 2


def test_a_family_s_own_animal_wants_the_coin() -> None:
    day = morning()._replace(animal="Hoppy")
    says = [skills.prompt("coins/find-it", day, SeededRandom("animal", n)).say for n in range(40)]
    assert any("Hoppy" in say for say in says) and not any("Bear" in say for say in says)


def test_no_level_asks_totals_and_so_each_only_leads_to_their_code() -> None:
    """2.MD.C.8 is money stories (references/standards.toml): a name or a worth is not one yet."""
    for level in skills.SKILLS["coins"].levels:
        assert level.toward == ("2.MD.C.8",) and not level.codes


def test_the_small_dime_that_buys_more_has_records_of_its_own() -> None:
    _, worth, _ = skills.SKILLS["coins"].levels
    assert worth.misconceptions == ("dime-or-nickel", "dime-or-many")
    held = {p.given["coin"] for item in ("worth", "dime-worth") for p in drawn(item)}
    assert held == {"penny", "nickel", "dime"}, "the quarter comes later"
