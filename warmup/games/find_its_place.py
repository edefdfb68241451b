"""Numbers come out of a bag one by one, and a row grows in order."""

from warmup.english import listed
from warmup.games.base import Game, Play, levels, numbered
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_STRIPS = 6
_NUMBERS = {
    "compare:numerals-to-10": (1, 10),
    "numerals:to-10": (1, 10),
    "numerals:to-20": (8, 20),
    "numerals:to-100": (21, 100),
    "place-value:to-99": (11, 99),
}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Six numbers, all different."""
    low, high = _NUMBERS[level]
    numbers = sorted(rng.sample(range(low, high + 1), _STRIPS))
    return Play(
        f"Write {listed([str(number) for number in numbers])} on strips of paper, and put them "
        "in a cloth bag.",
        ("Pick a strip and read it.", "Put it where it goes in the row.", "Tell me how you know."),
        "when all six lie in order",
        "Is it the tens that decide?" if low > 9 else "Which number is more, and how is it known?",
        numbered("number", numbers),
        2 * _STRIPS,
    )


GAME = Game(
    id="find-its-place",
    name="Find its place",
    needs=("strips of paper", "bag"),
    levels=levels(*_NUMBERS),
    made=made,
    two="They pick by turns, and put the strip in the row together.",
)
