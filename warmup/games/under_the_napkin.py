"""Spoons are seen for a moment, and fingers say how many there were."""

from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_PEEKS = 6
# How many spoons, the fewest and the most, how they lie, and what to listen for.
_SPOONS = {
    "subitize:to-3": ("one to three", 1, 3, "", "Is the number there at once, with no counting?"),
    "subitize:four-and-five": ("four or five", 4, 5, "", "Is the number there at once, with no counting?"),
    "subitize:five-and-some": ("six to nine", 6, 9, ", five of them in a row", "Is the five seen whole?"),
    "subitize:two-groups": (
        "five to nine",
        5,
        9,
        ", in two groups",
        "Are both groups seen before they are put together?",
    ),
    "how-many:line-to-5": (
        "two to five",
        2,
        5,
        ", in a line",
        "Does a last look settle it: one word for each spoon?",
    ),
}


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """Some spoons under a napkin, another number each time."""
    many, low, high, how, listen = _SPOONS[level]
    return Play(
        f"Hide {many} spoons under a napkin{how}, another number each time.",
        ("I lift the napkin and put it back.", "Show how many on your fingers.", "Then we look."),
        "after six peeks",
        listen,
        {"low": low, "high": high},
        2 * _PEEKS,
    )


GAME = Game(
    id="under-the-napkin",
    name="Under the napkin",
    needs=("spoons", "napkins"),
    levels=levels(*_SPOONS),
    made=made,
    two="One hides, the other shows fingers; then they change.",
)
