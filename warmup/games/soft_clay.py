"""The child is clay, and words say where each hand goes."""

from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_MOVES = 6
_LISTEN = {
    "position:place-words": "Above, below, beside, behind: does the word alone move the hand?",
    "position:own-left-right": "Does the child stop to think of left and right? That is fine.",
}


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """A statue that is made with words alone."""
    where = (
        "which hand moves, left or right" if level == "position:own-left-right" else "where your hand goes"
    )
    return Play(
        "Stand side by side and look the same way, and keep your own hands still.",
        ("You are soft clay.", f"I say {where}.", "Hold it there like a statue."),
        "after six moves, when the statue shakes itself loose",
        _LISTEN[level],
        {"moves": _MOVES},
        3 * _MOVES,
    )


GAME = Game(
    id="soft-clay",
    name="Soft clay",
    needs=(),
    levels=levels(*_LISTEN),
    made=made,
    two="One says, the other is the clay; then they change.",
)
