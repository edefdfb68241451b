"""A mouse whispers a number, and a bear says the next one out loud."""

from warmup.games._counts import LEVELS, count
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom


def made(level: LevelId, morning: Morning, rng: SeededRandom) -> Play:
    """A count in two voices; the child is the bear."""
    setup = "Sit close: you are a mouse that whispers, and the child is a bear."
    return count(level, morning, rng, setup, "I whisper, you growl the next.")


GAME = Game(
    id="mouse-and-bear",
    name="Mouse and bear",
    needs=(),
    levels=levels(*LEVELS),
    made=made,
    two="One is the mouse, the other the bear; then they change.",
)
