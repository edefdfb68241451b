"""A spoon goes into the cup or comes out, as the strip falls."""

from warmup.english import number_word
from warmup.games.base import DOT, Game, Play, levels, turns_within
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_MOST, _DROPS = 5, 20


def made(_level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """A cup with two or three spoons that in the end is empty or full."""
    begin = rng.between(2, 3)
    return Play(
        f"Stand {number_word(begin)} spoons in a plastic cup, lay three more beside it, and {DOT}.",
        ("Drop the strip.", "Dot up, put one in; no dot, take one out.", "Say how many are in."),
        "when the cup is empty or holds five, or after twenty drops",
        "Is the new number said before anybody counts?",
        {"begin": begin, "most": _MOST, "step": 1},
        _DROPS,
    )


def simulate(play: Play, rng: SeededRandom) -> int:
    """The drops until the cup is empty or full."""
    return turns_within(play.given["begin"], (0, _MOST), 1, _DROPS, rng)


GAME = Game(
    id="in-or-out",
    name="In or out",
    needs=("spoons", "cups", "strips of paper"),
    levels=levels("add-subtract:mixed-to-5", "add-subtract:add-to-5", "add-subtract:take-to-5"),
    made=made,
    two="One drops the strip, the other moves the spoon; then they change.",
    simulate=simulate,
)
