"""A sock goes to and fro, and each toss is one number more."""

from warmup.english import number_word
from warmup.games._counts import LEVELS, count
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom


def made(level: LevelId, morning: Morning, rng: SeededRandom) -> Play:
    """A count with a sock in the air."""
    row = count(level, morning, rng)
    last = number_word(row.last)
    return Play(
        "Roll a pair of socks into a ball, and sit across from each other.",
        (row.told, "Say one number at each toss.", f"Stop at {last}."),
        f"when you have said {last} together",
        row.listen,
        row.given,
        row.numbers,
    )


GAME = Game(
    id="sock-by-sock",
    name="Sock by sock",
    needs=("socks",),
    levels=levels(*LEVELS),
    made=made,
    two="Sit in a triangle: the sock goes around.",
)
