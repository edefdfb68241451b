"""Numbers are taped to the floor, and a hop is one number on or back."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels, turns_along
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

# The first and the last number on the floor, and the longest hop.
_FLOOR = {
    "number-line:find-to-10": (0, 10, 0),
    "number-line:hops-to-10": (0, 10, 3),
    "number-line:to-20": (10, 20, 3),
    "number-line:to-30": (20, 30, 5),
}
_FINDS = 6


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """A floor of eleven numbers, hopped along from one end to the other."""
    low, high, hop = _FLOOR[level]
    low_word, high_word = number_word(low), number_word(high)
    floor = f"Tape strips of paper with {low_word} to {high_word} to the floor"
    if not hop:
        return Play(
            f"{floor} by one edge, in order, all but the first and the last face down.",
            ("I say a number.", "Stand on the strip where it lives.", "Turn it up and see."),
            "when six strips are face up",
            "Does the child look from the near end, or always count from zero?",
            {"low": low, "high": high, "finds": _FINDS},
            2 * _FINDS,
        )
    back = rng.coin()
    start, end = (high_word, low_word) if back else (low_word, high_word)
    return Play(
        f"{floor} in order, and put strips with one to {number_word(hop)} in a cloth bag, where each goes "
        "back after its hop.",
        (
            f"Start on {start}, and pick a strip.",
            f"Say where so many hops {'back ' if back else ''}take you.",
            "Then hop there.",
        ),
        f"when you stand on {end}; the last hops may be fewer",
        "Is the strip you stand on left out of the count?",
        {"low": low, "high": high, "hop": hop},
        high - low,
    )


def simulate(play: Play, rng: SeededRandom) -> int:
    """The picks until the far end; where nothing is drawn, the strips that are found."""
    if "hop" not in play.given:
        return play.turns
    given = play.given
    return turns_along(given["high"] - given["low"], lambda: rng.between(1, given["hop"]))


GAME = Game(
    id="kitchen-hops",
    name="Kitchen hops",
    needs=("strips of paper", "tape", "bag"),
    levels=levels(*_FLOOR),
    made=made,
    two="One picks, the other says the strip and hops; then they change.",
    simulate=simulate,
    spared=(("number-line:find-to-10", ("bag",)),),
)
