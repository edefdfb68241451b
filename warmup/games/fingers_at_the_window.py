"""Fingers look over the edge of the table and are gone again."""

from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_LOOKS = 6
# How many fingers, the fewest and the most, and how they are shown.
_FINGERS = {
    "subitize:to-3": ("one to three", 1, 3, "of one hand"),
    "subitize:four-and-five": ("four or five", 4, 5, "of both hands"),
    "subitize:five-and-some": ("six to nine", 6, 9, "with one whole hand among them"),
    "subitize:two-groups": ("five to nine", 5, 9, "some on each hand"),
}


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """Fingers to be seen as long as one breath."""
    many, low, high, how = _FINGERS[level]
    return Play(
        f"Kneel behind the table, and show {many} fingers, {how}, for one breath.",
        ("Some fingers look in at the window.", "Then they are gone.", "Say how many you saw."),
        "after six looks",
        "Is the number there at once, with no counting?",
        {"low": low, "high": high},
        2 * _LOOKS,
    )


GAME = Game(
    id="fingers-at-the-window",
    name="Fingers at the window",
    needs=(),
    levels=levels(*_FINGERS),
    made=made,
    two="One shows, the other says how many; then they change.",
)
