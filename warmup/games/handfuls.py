"""Each takes a handful of spoons, and two rows lie side by side."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_ROUNDS = 4
_SPOONS = {"compare:match-to-5": (5, 5), "compare:sets-to-10": (8, 10)}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """A bag of spoons for two rows."""
    spoons = rng.between(*_SPOONS[level])
    return Play(
        f"Put {number_word(spoons)} spoons in a cloth bag, and sit side by side.",
        (
            "Each of us takes a handful.",
            "Lay yours beside mine, in pairs.",
            "Say which has more, or the same.",
        ),
        "after four handfuls, when all spoons are back in the bag",
        "Is it decided by the pairs, and not by how long a row looks?",
        {"spoons": spoons},
        4 * _ROUNDS,
    )


GAME = Game(
    id="handfuls",
    name="Handfuls",
    needs=("spoons", "bag"),
    levels=levels(*_SPOONS),
    made=made,
    two="The children lay the two rows, and you ask.",
)
