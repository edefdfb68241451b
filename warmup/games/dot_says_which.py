"""The strip says what to look for, and the child finds it."""

from warmup.games.base import DOT, Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_THINGS = 6
_CLEAR = "Choose a room with nothing sharp in reach"
# What to start from, the rule, and what to listen for.
_RULES = {
    "measure:longer": (
        "take a spoon",
        ("Drop the strip.", "Dot up, find something longer; no dot, shorter.", "Show me, side by side."),
        "Are both held with their ends lined up?",
    ),
    "measure:heavier": (
        "take a book",
        ("Drop the strip.", "Dot up, find something heavier; no dot, lighter.", "Lift both and tell."),
        "Do hands tell it, and not how big a thing looks?",
    ),
    "measure:what-to-measure": (
        "take a book for the first thing",
        (
            "Bring a thing, drop the strip.",
            "What could we measure of it?",
            "Dot up, show how; no dot, I do.",
        ),
        "How long, how heavy, how much it holds: is there more than one way?",
    ),
}


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """Six things found about the room."""
    take, rule, listen = _RULES[level]
    return Play(
        f"{_CLEAR}, {take}, and {DOT}.",
        rule,
        "when six things lie on the table; then all go back",
        listen,
        {"things": _THINGS},
        3 * _THINGS,
    )


GAME = Game(
    id="dot-says-which",
    name="The dot says which",
    needs=("spoons", "book", "strips of paper"),
    levels=levels(*_RULES),
    made=made,
    two="One drops the strip, the other finds; then they change.",
    spared=(
        ("measure:longer", ("book",)),
        ("measure:heavier", ("spoons",)),
        ("measure:what-to-measure", ("spoons",)),
    ),
)
