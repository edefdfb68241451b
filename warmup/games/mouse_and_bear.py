"""A mouse whispers a number, and a bear says the next one out loud."""

from warmup.english import number_word
from warmup.games._counts import LEVELS, count
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom


def made(level: LevelId, morning: Morning, rng: SeededRandom) -> Play:
    """A count in two voices; the child is the bear."""
    row = count(level, morning, rng)
    last = number_word(row.last)
    return Play(
        "Sit close: you are a mouse that whispers, and the child is a bear.",
        (row.told, "I whisper, you growl the next.", f"Stop at {last}."),
        f"when you have said {last} together",
        row.listen,
        row.given,
        row.numbers,
    )


GAME = Game(
    id="mouse-and-bear",
    name="Mouse and bear",
    needs=(),
    levels=levels(*LEVELS),
    made=made,
    two="One is the mouse, the other the bear; then they change.",
)
