"""The mitt hides some of the spoons, and the child says how many."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_TURNS = 6
_WHOLE = {
    "parts:split-to-5": (3, 5),
    "parts:hidden-to-5": (3, 5),
    "parts:of-6-and-7": (6, 7),
    "parts:of-8-and-9": (8, 9),
    "make-ten:easy-pairs": (10, 10),
    "make-ten:all": (10, 10),
    "make-ten:in-the-head": (10, 10),
}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """A row of spoons; what is not to be seen is under the mitt."""
    whole = rng.between(*_WHOLE[level])
    return Play(
        f"Lay {number_word(whole)} spoons in a row, with a mitt beside them.",
        ("Shut your eyes.", "The mitt hides some spoons.", "Say how many it hid, then lift it."),
        "after six turns, when the mitt has had enough",
        "Does the child know it from what is left, or count up on fingers?",
        {"whole": whole},
        2 * _TURNS,
    )


GAME = Game(
    id="what-the-mitt-hid",
    name="What the mitt hid",
    needs=("spoons", "mitt"),
    levels=levels(*_WHOLE),
    made=made,
    two="One plays the mitt, the other says how many; then they change.",
)
