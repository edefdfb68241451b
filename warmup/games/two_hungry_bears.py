"""Two bears get spoons by turns, and an odd one stays in the hand."""

from warmup.english import number_word
from warmup.games.base import Game, Play, laying, levels, numbered
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_ROUNDS = 3


def made(_level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Three handfuls of spoons for two bears, pretend ones will do."""
    first = rng.between(5, 8)
    numbers = (first, first + rng.between(1, 2), first + 3)
    listed = ", then ".join(map(number_word, numbers))
    return Play(
        f"Set two places for pretend bears, and hand out {listed} spoons.",
        ("Give one to each bear, again and again.", "Is a spoon left over?", "Say even or odd."),
        "when the bears were served three times",
        "Even when none is left over: is that how it is told?",
        numbered("spoons", numbers),
        laying(sum(numbers)) + _ROUNDS,
    )


GAME = Game(
    id="two-hungry-bears",
    name="Two hungry bears",
    needs=("spoons",),
    levels=levels("even-odd:pair-to-20"),
    made=made,
    two="The children are the bears, and you hand out.",
)
