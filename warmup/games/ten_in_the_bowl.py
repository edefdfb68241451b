"""Ten stay in the bowl, and some lie beside it: that is a teen number."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_TURNS = 6
_TEN = "The bowl has ten."
# The most beside the bowl, the rule, and what to listen for.
_RULES = {
    "teens:build": (
        5,
        (_TEN, "Put some more beside it.", "Say how many in all."),
        "Does the ten stand, or is it counted again?",
    ),
    "teens:both-ways": (
        9,
        (_TEN, "I say a number.", "Lay beside the bowl what it needs."),
        "Is it the ones that are laid, with the ten left alone?",
    ),
    "teens:in-the-head": (
        9,
        (_TEN, "I show some fingers.", "Say how many that is with the ten."),
        "Is the teen number said without a count?",
    ),
}


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """A bowl of ten, and ones to put beside it."""
    most, rule, listen = _RULES[level]
    return Play(
        f"Put ten paper napkins in a plastic bowl, with {number_word(most)} more in reach.",
        rule,
        "after six numbers",
        listen,
        {"ten": 10, "least": 11, "most": 10 + most},
        2 * _TURNS,
    )


GAME = Game(
    id="ten-in-the-bowl",
    name="Ten in the bowl",
    needs=("napkins", "bowls"),
    levels=levels(*_RULES),
    made=made,
    two="One sets the number, the other says or lays it; then they change.",
)
