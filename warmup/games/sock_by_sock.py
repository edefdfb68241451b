"""A sock goes to and fro, and each toss is one number more."""

from warmup.games._counts import LEVELS, count
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom


def made(level: LevelId, morning: Morning, rng: SeededRandom) -> Play:
    """A count with a sock in the air."""
    setup = "Roll a pair of socks into a ball, and sit across from each other."
    return count(level, morning, rng, setup, "Say one number at each toss.")


GAME = Game(
    id="sock-by-sock",
    name="Sock by sock",
    needs=("socks",),
    levels=levels(*LEVELS),
    made=made,
    two="Sit in a triangle: the sock goes around.",
)
