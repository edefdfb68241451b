"""One or two leave the bowl each turn, and the child says how many are left."""

from warmup.english import number_word
from warmup.games.base import DOT, Game, Play, levels, turns_along
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

# The fewest and the most napkins to begin with.
_BEGIN = {
    "count-back:from-5": (5, 5),
    "count-back:from-10": (8, 10),
    "count-back:from-20": (15, 20),
    "neighbors:before-to-10": (8, 10),
    "add-subtract:take-to-5": (5, 5),
    "add-subtract:one-or-two": (9, 10),
    "make-ten:take-from-ten": (10, 10),
}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """A bowl of napkins that empties by itself, as the strip falls."""
    begin = rng.between(*_BEGIN[level])
    return Play(
        f"Put {number_word(begin)} paper napkins in a plastic bowl, and {DOT}.",
        ("Drop the strip.", "Dot up, take two; no dot, take one.", "Say how many are left."),
        "when the bowl is empty; the last one may go alone",
        "Does the child count back, or count what is left all over again?",
        {"begin": begin, "most": 2, "fewest": 1},
        begin,
    )


def simulate(play: Play, rng: SeededRandom) -> int:
    """The turns until the bowl is empty."""
    return turns_along(play.given["begin"], lambda: 2 if rng.coin() else 1)


GAME = Game(
    id="clear-the-bowl",
    name="Clear the bowl",
    needs=("napkins", "bowls", "strips of paper"),
    levels=levels(*_BEGIN),
    made=made,
    two="One drops and takes, the other says how many are left; then they change.",
    simulate=simulate,
)
