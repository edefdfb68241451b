"""Numbers live in a street of paper strips, and each has a neighbor."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_STREET = 6
# The lowest and the highest number that a street may have.
_NUMBERS = {
    "neighbors:after-to-10": (1, 10),
    "neighbors:before-to-10": (1, 10),
    "neighbors:both-to-20": (8, 20),
    "neighbors:to-99": (26, 99),
    "hundred-chart:to-100": (21, 100),
    "number-line:find-to-10": (0, 10),
}
_WHO = {
    "neighbors:after-to-10": "Say who lives just after.",
    "neighbors:before-to-10": "Say who lives just before.",
}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """A street of six numbers in a row, face down."""
    low, high = _NUMBERS[level]
    first = rng.between(low, high - _STREET + 1)
    last = first + _STREET - 1
    who = _WHO.get(level, "Say who lives next door.")
    return Play(
        f"Write the numbers from {number_word(first)} to {number_word(last)} on strips of paper, and lay "
        "them face down in order.",
        ("Turn one strip up.", who, "Turn that one up and see."),
        "when the whole street is face up",
        "Is the neighbor said, or does the child count up from the first?",
        {"first": first, "last": last},
        _STREET,
    )


GAME = Game(
    id="next-door",
    name="Who lives next door",
    needs=("strips of paper",),
    levels=levels(*_NUMBERS),
    made=made,
    two="One turns a strip up, the other says the neighbor.",
)
