"""Fingers tell a coin before it is seen."""

from warmup.english import listed
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.pictures.facts import CENTS
from warmup.randomness import SeededRandom

_RULES = {
    "coins:names": ("Reach in without a look.", "Feel one coin.", "Say its name before it comes out."),
    "coins:worth": ("Reach in without a look.", "Name the coin you feel.", "Say what it is worth."),
    "coins:quarter": ("Reach in without a look.", "Name the coin you feel.", "Say what it is worth."),
}


def made(level: LevelId, morning: Morning, _rng: SeededRandom) -> Play:
    """One coin of each kind; no quarter where only the worth of the others is taught."""
    left_out = {"quarter"} if level == "coins:worth" else set()
    if not morning.pennies:
        left_out |= {"penny"}
    coins = [coin for coin in CENTS if coin not in left_out]
    return Play(
        f"Put {listed([f'a {coin}' for coin in coins])} into a mitt, and fill it once more when it is empty.",
        _RULES[level],
        "when the mitt was empty twice and all coins are put away",
        "Do size and edge tell it? A dime is the smallest, and its edge is rough.",
        {coin: CENTS[coin] for coin in coins},
        4 * len(coins),
    )


GAME = Game(
    id="coin-in-the-mitt",
    name="A coin in the mitt",
    needs=("coins", "mitt"),
    levels=levels(*_RULES),
    made=made,
)
