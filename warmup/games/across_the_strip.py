"""What lies on one side of the strip lies on the other too, flipped."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_PIECES = {"symmetry:fold": 3, "symmetry:finish-the-half": 5}


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """A row that grows on both sides of a strip of paper."""
    pieces = _PIECES[level]
    return Play(
        "Lay a strip of paper up the middle of the table, with spoons and forks in reach.",
        (
            "I lay one thing on my side.",
            "You lay its match on yours.",
            "Would they meet if the table folded?",
        ),
        f"when {number_word(pieces)} things lie on each side",
        "Is the match flipped over the strip, or only slid across?",
        {"pieces": pieces},
        4 * pieces,
    )


GAME = Game(
    id="across-the-strip",
    name="Across the strip",
    needs=("strips of paper", "spoons", "forks"),
    levels=levels(*_PIECES),
    made=made,
    two="They sit across from each other, with the strip between.",
)
