"""A row with a pattern has one thing in it that does not belong."""

from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_ROWS = 4
# The parts that a row repeats.
_PARTS = {
    "patterns:two-part": ("spoon, fork", "fork, spoon"),
    "patterns:three-part": ("spoon, spoon, fork", "spoon, fork, fork", "spoon, fork, napkin"),
    "patterns:name-the-part": ("fork, fork, spoon", "napkin, fork, spoon", "spoon, fork, fork"),
}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """A part that repeats three times, with one slip in it."""
    part = rng.pick(_PARTS[level])
    last = "Mend it, and say the part." if level == "patterns:name-the-part" else "Mend it."
    return Play(
        f"Lay this three times in a row, with one thing wrong: {part}; choose a new part each time.",
        ("Something silly is in this row.", "Say the row aloud and find it.", last),
        "when four rows are mended",
        "Is the row said as a part that comes again and again?",
        {"times": 3, "rows": _ROWS},
        4 * _ROWS,
    )


GAME = Game(
    id="silly-fork",
    name="The silly fork",
    needs=("forks", "spoons", "napkins"),
    levels=levels(*_PARTS),
    made=made,
    two="One lays a row with a slip in it, the other mends it; then they change.",
    spared=(("patterns:two-part", ("napkins",)),),
)
