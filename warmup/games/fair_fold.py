"""A napkin is folded, fair or not fair, and an edge tells."""

from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_FOLDS = 4
_PARTS = {
    "equal-shares:halves": (2, "Fold the napkin in two, fair or not."),
    "equal-shares:quarters": (4, "Fold the napkin in four, fair or not."),
}


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """A paper napkin to fold by turns."""
    parts, fold = _PARTS[level]
    return Play(
        "Give the child a paper napkin, and turn your back.",
        (fold, "I guess which it is.", "Show me how you know."),
        "after four folds; then the napkin goes to the table",
        "Are all the parts the same size, and is that shown edge on edge?",
        {"parts": parts, "folds": _FOLDS},
        4 * _FOLDS,
    )


GAME = Game(
    id="fair-fold",
    name="Fair or not",
    needs=("napkins",),
    levels=levels(*_PARTS),
    made=made,
    two="One folds, the other says fair or not fair; then they change.",
)
