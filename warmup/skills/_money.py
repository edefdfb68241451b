"""What the money skills share: handfuls of coins, how they are said, and what they come to.

Worth: 31 U.S.C. 5112. Only the four coins a child meets are used; no half dollar, no dollar coin.
"""

from collections.abc import Mapping
from itertools import product

from warmup.english import listed, number_word, plural
from warmup.pictures.facts import CENTS

BY_WORTH = ("penny", "nickel", "dime", "quarter")
"""The coins from the least worth to the most."""

WITHOUT_PENNIES = BY_WORTH[1:]


def kinds(pennies: bool) -> tuple[str, ...]:
    """The coins this family uses, least worth first."""
    return BY_WORTH if pennies else WITHOUT_PENNIES


def counted(count: int, coin: str) -> str:
    """One kind as it is said: "a dime", "three pennies"."""
    number = "a" if count == 1 else number_word(count)
    return f"{number} {plural(count, coin, 'pennies' if coin == 'penny' else '')}"


def parts(handful: Mapping[str, int]) -> list[str]:
    """Each kind in the handful as it is said, most worth first."""
    return [counted(handful[coin], coin) for coin in reversed(BY_WORTH) if handful.get(coin)]


def said(handful: Mapping[str, int]) -> str:
    """The handful as it is said: "two dimes and three pennies"."""
    return listed(parts(handful))


def laid(handful: Mapping[str, int]) -> tuple[str, ...]:
    """Every coin of the handful, most worth first."""
    return tuple(coin for coin in reversed(BY_WORTH) for _ in range(handful.get(coin, 0)))


def cents(handful: Mapping[str, int]) -> int:
    """What the handful comes to."""
    return sum(CENTS[coin] * count for coin, count in handful.items())


def running(handful: Mapping[str, int]) -> str:
    """The count as it goes, a semicolon where the step changes: "10, 20; 21, 22, 23"."""
    total, runs = 0, []
    for coin in reversed(BY_WORTH):
        steps = [total + CENTS[coin] * (n + 1) for n in range(handful.get(coin, 0))]
        if steps:
            runs.append(", ".join(map(str, steps)))
            total = steps[-1]
    return "; ".join(runs)


def handfuls(**counts: range) -> list[dict[str, int]]:
    """Every handful with so many of each kind: ``handfuls(dime=range(1, 5), penny=range(1, 10))``."""
    return [dict(zip(counts, numbers, strict=True)) for numbers in product(*counts.values())]


def fewest(amount: int, coins: tuple[str, ...]) -> list[dict[str, int]]:
    """The handfuls of these coins, most worth first, that make the amount with the fewest coins."""
    ways = _ways(amount, tuple(sorted(coins, key=CENTS.__getitem__, reverse=True)))
    least = min((sum(way.values()) for way in ways), default=0)
    return [way for way in ways if sum(way.values()) == least]


def _ways(amount: int, coins: tuple[str, ...]) -> list[dict[str, int]]:
    if not coins:
        return [{}] if amount == 0 else []
    first, *rest = coins
    return [
        ({first: count} if count else {}) | way
        for count in range(amount // CENTS[first] + 1)
        for way in _ways(amount - count * CENTS[first], tuple(rest))
    ]
