"""Recomputes coin totals from ``given``, with the worths of references/coins.toml and num2words."""

from typing import Any

from num2words import num2words

from tests.oracles.coins import COIN
from tests.oracles.english import ENGLISH


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the total; or, for the fewest coins, the one smallest handful there is."""
    if item == "fewest-coins":
        return _fewest(given, answer)
    total = sum(COIN[name]["cents"] * count for name, count in given["coins"].items())
    if total == sum(given["coins"].values()) and list(given["coins"]) != ["penny"]:
        return f"{given}: the number of coins is the number of cents"
    return None if answer == num2words(total) else f"{given} wants {num2words(total)}"


def _fewest(given: dict[str, Any], answer: str) -> str | None:
    """By walking through every sum in growing numbers of coins."""
    sums: dict[int, set[tuple[str, ...]]] = {0: {()}}
    for _ in range(given["cents"]):
        larger: dict[int, set[tuple[str, ...]]] = {}
        for total, hands in sums.items():
            for hand in hands:
                for name in given["kinds"]:
                    larger.setdefault(total + COIN[name]["cents"], set()).add(tuple(sorted((*hand, name))))
        if given["cents"] in larger:
            hands = larger[given["cents"]]
            if len(hands) != 1:
                return f"{given} can be made as well with {hands}"
            wants = _said(next(iter(hands)))
            return None if answer == wants else f"{given} wants {wants}"
        sums = larger
    return f"{given} cannot be made"


def _said(hand: tuple[str, ...]) -> str:
    kinds = sorted(set(hand), key=lambda name: -COIN[name]["cents"])
    parts = [
        f"a {name}"
        if hand.count(name) == 1
        else f"{num2words(hand.count(name))} {ENGLISH.plural(name, hand.count(name))}"
        for name in kinds
    ]
    return ENGLISH.join(parts, final_sep="")
