"""A foot is a measure, and two arms are a balance."""

from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_THINGS = 5
# The setup, the rule, and what to listen for.
_RULES = {
    "measure:longer": (
        "Sit on the floor with five things around you, nothing sharp.",
        ("Guess: longer than your foot, or shorter?", "Hold your foot beside it.", "Say which it is."),
        "Do heel and thing begin at the same place?",
    ),
    "measure:heavier": (
        "Stand up with five things in reach, nothing sharp, and hand over two at a time.",
        ("Your arms are a balance.", "The heavy side goes down.", "Say which thing is heavier."),
        "Do the arms tell it, and not how big a thing looks?",
    ),
}


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """Five things, measured with what everybody has along."""
    setup, rule, listen = _RULES[level]
    return Play(setup, rule, "when all five things had a turn", listen, {"things": _THINGS}, 4 * _THINGS)


GAME = Game(
    id="arms-and-feet",
    name="Arms and feet",
    needs=(),
    levels=levels(*_RULES),
    made=made,
    two="One guesses, the other measures; then they change.",
)
