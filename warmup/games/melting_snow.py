"""A snowman melts a bit at each number, and at the last one lies flat."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

# The lowest and the highest number to begin with.
_TOPS = {"count-back:from-5": (5, 5), "count-back:from-10": (8, 10), "count-back:from-20": (16, 20)}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """A count back to zero, from tall to flat."""
    top = rng.between(*_TOPS[level])
    return Play(
        "Clear some floor to lie down on, and stand up tall together.",
        ("You are snow.", "Melt a bit at each number.", f"Count back from {number_word(top)} to zero."),
        "when all the snow lies flat on the floor",
        "Does each number lead to the one before it, with no start from one?",
        {"begin": top, "end": 0},
        top + 1,
    )


GAME = Game(
    id="melting-snow",
    name="Melting snow",
    needs=(),
    levels=levels(*_TOPS),
    made=made,
    two="They melt side by side and say the numbers by turns.",
)
