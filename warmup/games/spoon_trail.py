"""Spoons lie end to end along a thing, and their number is how long it is."""

from warmup.english import number_word
from warmup.games.base import Game, Play, laying, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_TRAILS = 3


def made(_level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Three things to measure with spoons that are all alike."""
    spoons = rng.between(6, 10)
    return Play(
        f"Take {number_word(spoons)} spoons all alike, and choose three things no longer than their row.",
        ("Guess how many spoons long it is.", "Lay the spoons end to end.", "Count them and tell me."),
        "when all three things are measured",
        "Do the spoons touch, with no gap and none on top?",
        {"spoons": spoons, "things": _TRAILS},
        laying(spoons * _TRAILS),
    )


GAME = Game(
    id="spoon-trail",
    name="Spoon trail",
    needs=("spoons",),
    levels=levels("measure:units"),
    made=made,
    two="One begins at each end, and the trails meet.",
)
