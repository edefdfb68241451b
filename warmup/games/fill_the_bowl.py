"""One or two go into the bowl each turn, until all are in."""

from warmup.english import number_word
from warmup.games.base import DOT, Game, Play, levels, turns_along
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

# How many go in, and whether the child says how many are still missing.
_ALL = {
    "add-subtract:act-to-5": (5, False),
    "add-subtract:add-to-5": (5, False),
    "add-subtract:things-to-10": (10, False),
    "add-subtract:one-or-two": (10, False),
    "count-on:within-10": (10, False),
    "neighbors:after-to-10": (10, False),
    "make-ten:see-places": (10, True),
    "make-ten:easy-pairs": (10, True),
    "make-ten:all": (10, True),
}


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """A bowl that fills by itself, as the strip falls."""
    count, missing = _ALL[level]
    whole = number_word(count)
    say = f"Say how many more make {whole}." if missing else "Say how many are in now."
    listen = (
        "Is the partner known, or are all counted again?"
        if missing
        else "Does the child go on from what is in, or begin again at one?"
    )
    return Play(
        f"Lay {whole} spoons beside a plastic bowl, and {DOT}.",
        ("Drop the strip.", "Dot up, put two in; no dot, put one in.", say),
        f"when all {whole} are in; the last one may go alone",
        listen,
        {"all": count, "most": 2, "fewest": 1},
        count,
    )


def simulate(play: Play, rng: SeededRandom) -> int:
    """The turns until all are in."""
    return turns_along(play.given["all"], lambda: 2 if rng.coin() else 1)


GAME = Game(
    id="fill-the-bowl",
    name="Fill the bowl",
    needs=("spoons", "bowls", "strips of paper"),
    levels=levels(*_ALL),
    made=made,
    two="One drops, the other puts in; both say how many.",
    simulate=simulate,
)
