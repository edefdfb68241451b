"""Knocks under the table are counted, and so many jumps come back."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_ROUNDS = 4
_KNOCKS = {"how-many:line-to-5": (3, 5), "how-many:count-out-to-10": (5, 8)}


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """Four times some slow knocks."""
    low, high = _KNOCKS[level]
    return Play(
        f"Sit at the table, and knock slowly, {number_word(low)} to {number_word(high)} times at each turn.",
        ("I knock on the table.", "Count the knocks, then jump so many.", "So how many were there?"),
        "after four knocks and jumps",
        "Is the last number said again as how many there were?",
        {"low": low, "high": high},
        4 * _ROUNDS,
    )


GAME = Game(
    id="knocks",
    name="Knocks and jumps",
    needs=(),
    levels=levels(*_KNOCKS),
    made=made,
    two="One knocks, the other jumps; then they change.",
)
