"""Strips of paper are letters, and the child is the mail carrier."""

from warmup.english import listed, number_word
from warmup.games.base import Game, Play, levels, numbered
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

# The lowest and the highest number, how many letters there are, and whether they are written in words.
_LETTERS = {
    "numerals:to-5": (0, 5, 5, False),
    "numerals:to-10": (4, 10, 6, False),
    "numerals:to-20": (11, 20, 6, False),
    "numerals:to-100": (21, 100, 6, False),
    "number-words:to-ten": (0, 10, 5, True),
    "number-words:to-twenty": (8, 20, 5, True),
}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Five or six letters about the room."""
    low, high, count, words = _LETTERS[level]
    numbers = rng.sample(range(low, high + 1), count)
    written = [number_word(number) if words else str(number) for number in numbers]
    what = "the words " if words else ""
    return Play(
        f"Write {what}{listed(written)} on strips of paper, lay them about the room, "
        "and set out a plastic bowl.",
        ("I say a number.", "Find its letter, and read it to me.", "Then mail it in the bowl."),
        "when every letter is mailed",
        "Is the whole word read, and not its first letter alone?"
        if words
        else "Is it found by looking, or by reading all in order?",
        numbered("letter", numbers),
        3 * count,
    )


GAME = Game(
    id="number-mail",
    name="Number mail",
    needs=("strips of paper", "bowls"),
    levels=levels(*_LETTERS),
    made=made,
    two="One finds the letter, the other reads it; then they change.",
)
