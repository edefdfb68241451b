"""Three things on the table have a price, and strips of paper pay for them."""

from collections.abc import Sequence

from warmup.english import listed
from warmup.games.base import Game, Play, levels, numbered
from warmup.model import LevelId, Morning
from warmup.pictures.facts import CENTS
from warmup.randomness import SeededRandom

_COINS = {cents: f"a {coin}" for coin, cents in CENTS.items()}
"""Each by its worth in cents."""
_NAMED: dict[str, Sequence[int]] = {"coins:worth": (1, 5, 10), "coins:quarter": (5, 10, 25)}
_OF_PENNIES = "coin-totals:nickel-and-pennies"
_TOTALS: dict[str, tuple[Sequence[int], Sequence[int]]] = {
    _OF_PENNIES: ((1, 5), range(4, 10)),
    "coin-totals:one-kind": ((5, 10), range(10, 26, 5)),
    "coin-totals:dimes-and-pennies": ((1, 5, 10), range(11, 50)),
    "coin-totals:three-kinds": ((1, 5, 10, 25), range(26, 51)),
}
"""What the strips are worth, and what a thing may cost, in cents."""
_COUNT = 3


def made(level: LevelId, morning: Morning, rng: SeededRandom) -> Play:
    """Prices that are all different, one coin or some strips each; in fives where a family has no pennies."""
    if level in _NAMED:
        return _one_coin(level, morning, rng)
    worth, costs = _TOTALS[level]
    if not morning.pennies and level != _OF_PENNIES:
        worth, costs = ([cents for cents in each if cents % 5 == 0] for each in (worth, costs))
    prices = rng.sample(costs, _COUNT)
    return Play(
        f"Write {_cents(worth)} on strips of paper, some of each; sell three spoons for {_cents(prices)}.",
        ("The strips are your money.", "Choose a spoon.", "Lay what it costs, and count it for me."),
        "when all the spoons are sold",
        "Does the count begin with the strip that is worth the most?",
        numbered("price", prices),
        5 * _COUNT,
    )


def _one_coin(level: LevelId, morning: Morning, rng: SeededRandom) -> Play:
    """Prices by the names of coins; no penny where the family leaves pennies out."""
    coins = rng.shuffled([cents for cents in _NAMED[level] if cents > 1 or morning.pennies])
    return Play(
        f"Write {_cents(sorted(coins))} on strips of paper, and sell spoons for "
        f"{listed([_COINS[cents] for cents in coins])}.",
        ("I say what a spoon costs.", "Pay with the strip that is worth the same.", "Say how many cents."),
        "when all the spoons are sold",
        "Is the worth known by the name of the coin?",
        numbered("price", coins),
        4 * len(coins),
    )


def _cents(amounts: Sequence[int]) -> str:
    return listed([f"{cents}¢" for cents in amounts])


GAME = Game(
    id="paper-prices",
    name="Paper prices",
    needs=("strips of paper", "spoons"),
    levels=levels(*_NAMED, *_TOTALS),
    made=made,
    two="One sells, the other buys; then they change.",
)
