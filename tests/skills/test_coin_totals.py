"""Coin totals: references/coins.toml (totals, ways), examples.toml, and the bounds of 2.MD.C.8."""

from collections import Counter
from typing import Any

import pytest

from tests.bank import prompts, recomputed, reference
from tests.mornings import morning
from tests.skills.in_week import opening
from warmup import skills
from warmup.english import number_word
from warmup.model import Prompt
from warmup.pictures.coins import Coins
from warmup.randomness import SeededRandom
from warmup.skills._money import BY_WORTH, cents, fewest, handfuls, running, said
from warmup.skills.coin_totals import _HANDFULS, FEWEST_OPENS, OPENS

COINS = reference("coins")
ROWS = COINS["totals"]["rows"]
ITEMS = [name for level in skills.SKILLS["coin-totals"].levels for name in level.items]
EXAMPLES = {e["id"]: e for e in reference("examples")["example"]}


def handful(row: dict[str, Any]) -> dict[str, int]:
    """A row of the table, without the coins it has none of."""
    named = {"quarter": "quarters", "dime": "dimes", "nickel": "nickels", "penny": "pennies"}
    return {coin: row[many] for coin, many in named.items() if row.get(many)}


def drawn(item: str, *, pennies: bool = True, count: int = 60, week: int = 36) -> list[Prompt]:
    day = morning(pennies=pennies, school_day=4 * week)
    return [skills.prompt(f"coin-totals/{item}", day, SeededRandom("totals", item, n)) for n in range(count)]


@pytest.mark.parametrize("row", ROWS)
def test_totals_and_fewest_coins_agree_with_the_table(row: dict[str, Any]) -> None:
    """coins.toml, totals: worths of 31 U.S.C. 5112, fewest coins by exhaustive search."""
    held = handful(row)
    assert cents(held) == row["cents"]
    assert sum(fewest(row["cents"], BY_WORTH)[0].values()) == row["fewest_coins"]
    assert running(held).replace("; ", ", ").split(", ")[-1] == str(row["cents"])


def test_the_rows_within_fifty_cents_are_asked() -> None:
    """Every row of two coins or more to 50 cents; one coin alone is asked in `coins`."""
    asked = [{coin: n for coin, n in h.items() if n} for held in _HANDFULS.values() for h in held]
    for row in ROWS:
        if row["coins"] > 1 and row["cents"] <= 50:
            assert handful(row) in asked, row


def test_number_of_handfuls_for_an_amount() -> None:
    """coins.toml, ways_pndq: dynamic program and brute force."""
    for key, ways in COINS["ways_pndq"].items():
        if key.startswith("cents_") and (amount := int(key[6:])) <= 50:
            counts = (range(amount // worth + 1) if worth > 1 else range(amount + 1) for worth in (25, 10, 5))
            bigger = handfuls(**dict(zip(("quarter", "dime", "nickel"), counts, strict=True)))
            assert sum(cents(h) <= amount for h in bigger) == ways


def test_worked_examples() -> None:
    """examples.toml ex49, ex51, ex55."""
    for id in ("ex49", "ex51"):
        given = EXAMPLES[id]["given"]
        assert cents(handful(given)) == EXAMPLES[id]["answer"]
    assert [said(way) for way in fewest(EXAMPLES["ex55"]["given"], BY_WORTH)] == [EXAMPLES["ex55"]["answer"]]
    asked = {p.given["cents"]: p.answer for p in drawn("fewest-coins", count=300)}
    assert asked[EXAMPLES["ex55"]["given"]] == EXAMPLES["ex55"]["answer"]


def test_the_number_of_coins_is_never_the_number_of_cents() -> None:
    for item, held in _HANDFULS.items():
        for h in held:
            assert (sum(h.values()) == cents(h)) == (item == "pennies"), h


@pytest.mark.parametrize(
    ("level", "most"),
    [("nickel-and-pennies", 10), ("one-kind", 50), ("dimes-and-pennies", 49), ("three-kinds", 50)],
)
def test_levels_keep_to_their_ceiling(level: str, most: int) -> None:
    words = {number_word(n) for n in range(most + 1)}
    for p in prompts("coin-totals", 40):
        if p.level == level and "coins" in p.given:
            assert p.answer in words


def test_totals_spread_over_the_range() -> None:
    for item, held in _HANDFULS.items():
        seen = Counter(p.answer for p in drawn(item, count=400))
        assert len(seen) == len({cents(h) for h in held}), item


@pytest.mark.parametrize("item", ITEMS)
def test_a_family_without_pennies_holds_none(item: str) -> None:
    if not skills.askable(f"coin-totals/{item}", morning(pennies=False)):
        assert item in ("pennies", "nickel-and-pennies", "dimes-and-pennies")
        return
    for p in drawn(item, pennies=False):
        assert "penn" not in " ".join((p.say, p.answer, *(cue.text for cue in p.cues)))
        assert isinstance(p.picture, Coins)
        assert "penny" not in p.picture.names
        assert recomputed(p) is None


def test_the_worth_of_each_coin_can_be_seen() -> None:
    """National Research Council (2009), p. 147: not loose nickels and dimes alone."""
    for p in prompts("coin-totals", 20):
        assert any(getattr(picture, "worth", False) for picture in (p.picture, p.cues[1].picture))


def test_totals_stand_on_worth_and_wait_for_what_spoils_them() -> None:
    first, one_kind, dimes, _ = skills.SKILLS["coin-totals"].levels
    assert first.variants[0] == "nickel-and-pennies"
    assert first.stands_on == ("coins:worth", "count-on:within-10"), "no counting by fives yet"
    assert set(one_kind.waits_on) == {"by-fives/15-to-20", "coins/dime-or-many"}
    assert set(dimes.waits_on) == {"count-on/across-30", "coins/dime-or-nickel"}


@pytest.mark.parametrize("item", OPENS)
def test_totals_rise_once_a_level_has_been_open(item: str) -> None:
    level = skills.locate(f"coin-totals/{item}").level.key
    first = opening(f"coin-totals:{level}")
    assert OPENS[item] == first
    most = max(cents(h) for h in _HANDFULS[item])
    for week in (1, first, first + 1):
        held = [p.given["coins"] for p in drawn(item, week=week, count=300)]
        assert max(map(cents, held)) < most and len({cents(h) for h in held}) >= 2
    assert max(cents(p.given["coins"]) for p in drawn(item, week=first + 2, count=300)) == most


@pytest.mark.parametrize("item", OPENS)
def test_a_family_without_pennies_has_something_to_count_from_the_first_week(item: str) -> None:
    if skills.askable(f"coin-totals/{item}", morning(pennies=False)):
        assert len({p.answer for p in drawn(item, pennies=False, week=OPENS[item])}) >= 2


@pytest.mark.parametrize("pennies", [True, False])
def test_the_fewest_coins_make_small_amounts_first(pennies: bool) -> None:
    first = opening("coin-totals:three-kinds")
    assert first == FEWEST_OPENS
    for week in (1, first, first + 1):
        amounts = {p.given["cents"] for p in drawn("fewest-coins", pennies=pennies, week=week)}
        assert max(amounts) <= 30 and len(amounts) >= 3
    late = drawn("fewest-coins", pennies=pennies, week=first + 2, count=300)
    assert max(p.given["cents"] for p in late) > 40
