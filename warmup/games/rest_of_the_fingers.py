"""Some fingers are up, and other hands put up the rest."""

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
    "make-ten:see-places": (10, 10),
    "make-ten:easy-pairs": (10, 10),
    "make-ten:all": (10, 10),
    "make-ten:in-the-head": (10, 10),
}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Four hands that make one number together."""
    whole = rng.between(*_WHOLE[level])
    return Play(
        "Sit across from each other, with all hands in your laps.",
        (
            f"We need {number_word(whole)} fingers.",
            "I put some of mine up.",
            "You put up the rest and say them.",
        ),
        "after six turns",
        "Is it one look, a count on from your fingers, or a count of all?",
        {"whole": whole},
        2 * _TURNS,
    )


GAME = Game(
    id="rest-of-the-fingers",
    name="The rest of the fingers",
    needs=(),
    levels=levels(*_WHOLE),
    made=made,
    two="The children play it with each other, and you watch.",
)
