"""A toy in the line lies down, and its place has a name."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_NAPS = 5
_TOYS = {"ordinals:to-fifth": (4, 5), "ordinals:to-tenth": (7, 10)}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """A line of toys behind a chair."""
    toys = rng.between(*_TOYS[level])
    return Play(
        f"Line up {number_word(toys)} toys behind a chair, the first of them next to it.",
        ("Shut your eyes.", "One toy lies down to sleep.", "Open them, and tell its place."),
        "after five naps",
        "Is the place counted from the chair?",
        {"toys": toys, "naps": _NAPS},
        3 * _NAPS,
    )


GAME = Game(
    id="who-is-asleep",
    name="Who is asleep",
    needs=("toys", "chair"),
    levels=levels(*_TOYS),
    made=made,
    two="One puts a toy to sleep, the other tells its place; then they change.",
)
