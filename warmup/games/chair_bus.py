"""Toys ride a bus that is a chair, and at each stop some get on or off."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_STOPS = 5
_ADDS = "Is the new number said before all are counted again?"
_TELLS = "Is the story told in order: who rode, what happened, who rides now?"
_RIDE = ("At each stop I say who gets on or off.", "You move them.", "Say how many ride now.")
_SECRET = ("Shut your eyes at the stop.", "Some toys get on or off.", "Say how many, and tell the story.")
# The most that ride, the rule, and what to listen for.
_BUS = {
    "add-subtract:act-to-5": (5, _RIDE, _ADDS),
    "add-subtract:things-to-10": (10, _RIDE, _ADDS),
    "stories:act-to-5": (5, _RIDE, _TELLS),
    "stories:to-10": (10, _RIDE, _TELLS),
    "stories:both-parts": (9, _SECRET, _TELLS),
    "stories:change-and-compare": (10, _SECRET, _TELLS),
}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """A bus with some seats taken and room for more."""
    most, rule, listen = _BUS[level]
    begin = rng.between(2, most - 2)
    return Play(
        f"Make a bus of a chair, seat {number_word(begin)} toys on it, and let no more than "
        f"{number_word(most)} ride.",
        rule,
        "at the fifth stop, when all get off",
        listen,
        {"begin": begin, "most": most, "stops": _STOPS},
        3 * _STOPS,
    )


GAME = Game(
    id="chair-bus",
    name="The chair bus",
    needs=("toys", "chair"),
    levels=levels(*_BUS),
    made=made,
    two="One drives and calls the stops, the other moves the toys.",
)
