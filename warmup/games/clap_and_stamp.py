"""A pattern is heard and felt, and goes on when one voice falls silent."""

from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_ROWS = 4
# The parts that are done again and again.
_PARTS = {
    "patterns:two-part": ("clap, stamp", "stamp, nod"),
    "patterns:three-part": ("clap, clap, stamp", "clap, stamp, stamp", "clap, stamp, nod"),
    "patterns:name-the-part": ("stamp, clap, clap", "nod, clap, stamp", "stamp, stamp, clap"),
}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """A part for hands and feet."""
    part = rng.pick(_PARTS[level])
    last = "Then say the part." if level == "patterns:name-the-part" else "Then make a new one for me."
    return Play(
        f"Stand up, and begin with this, again and again: {part}.",
        ("Join in when you know it.", "I stop, and you go on alone.", last),
        "after four patterns",
        "Does the part stay whole when you fall silent?",
        {"patterns": _ROWS},
        4 * _ROWS,
    )


GAME = Game(
    id="clap-and-stamp",
    name="Clap and stamp",
    needs=(),
    levels=levels(*_PARTS),
    made=made,
    two="One begins, the other goes on; then they change.",
)
