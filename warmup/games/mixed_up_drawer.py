"""A drawer was mixed up, and each kind gets its own row again."""

from warmup.english import number_word
from warmup.games.base import Game, Play, laying, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_LAST = {
    "sort:one-rule": ("Say what is the same in a row.", "Is each row of one kind?"),
    "sort:count-groups": ("Count each row.", "Is the last number said how many there are?"),
    "sort:order-groups": (
        "Say which row has the fewest.",
        "Is it the number that tells, not how long it looks?",
    ),
}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Spoons, forks and cups in a heap, no two kinds as many."""
    spoons, forks, cups = rng.sample(range(2, 8), 3)
    last, listen = _LAST[level]
    return Play(
        f"Mix {number_word(spoons)} spoons, {number_word(forks)} forks and {number_word(cups)} plastic cups "
        "in a heap on the table.",
        ("The drawer is mixed up.", "Lay each kind in its own row.", last),
        "when the heap is gone and all is put away",
        listen,
        {"spoons": spoons, "forks": forks, "cups": cups},
        laying(spoons + forks + cups) + 6,
    )


GAME = Game(
    id="mixed-up-drawer",
    name="The mixed-up drawer",
    needs=("spoons", "forks", "cups"),
    levels=levels(*_LAST),
    made=made,
    two="Each lays the rows of one kind, and both lay the last.",
)
