"""A sock flies, and words say where it lies."""

from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_TOSSES = 6
_SIDES = ("Toss the sock over your head.", "Turn around and look.", "Is it on your left or your right?")
_RULES = {
    "position:place-words": ("Toss the sock over your head.", "Turn around and look.",
                             "Say where it is, with no pointing."),
    "position:own-left-right": _SIDES,
    "position:same-view": ("Toss the sock at the box.", "Stand beside me.",
                           "Is it to the left or right of the box?"),
}  # fmt: skip
_LISTEN = {
    "position:place-words": "Under, behind, beside: is there a word for it, with no “over there”?",
    "position:own-left-right": "Does the child move a hand first? That helps.",
    "position:same-view": "Do you both look the same way, so that left is left for both?",
}


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """A sock, a chair and a box in a clear place."""
    return Play(
        "Clear some floor, with a chair and a box on it, and stand close by.",
        _RULES[level],
        "after six tosses",
        _LISTEN[level],
        {"tosses": _TOSSES},
        3 * _TOSSES,
    )


GAME = Game(
    id="where-it-landed",
    name="Where it landed",
    needs=("socks", "chair", "box"),
    levels=levels(*_RULES),
    made=made,
    two="One tosses, the other tells where; then they change.",
)
