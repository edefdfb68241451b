"""Socks come out of a bag and find their partners."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_HANDFULS = 4
_BY_TWOS = "by-twos:to-20"


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Handfuls that are even or odd, or pairs to be counted by twos."""
    if level == _BY_TWOS:
        pairs = rng.between(6, 10)
        return Play(
            f"Put {number_word(pairs)} pairs of socks in a cloth bag.",
            ("Pull out a pair and lay it down.", "Count all the socks by twos."),
            "when the bag is empty",
            "Does the count go on by twos past ten?",
            {"pairs": pairs, "socks": 2 * pairs},
            2 * pairs,
        )
    socks = 2 * rng.between(6, 8)
    return Play(
        f"Put {number_word(socks)} socks in a cloth bag.",
        ("Take a handful and pair the socks.", "Is a sock left over?", "Say even or odd."),
        "after four handfuls, when all socks are back in the bag",
        "Is it the sock left over that tells, and not how many there are?",
        {"socks": socks},
        4 * _HANDFULS,
    )


GAME = Game(
    id="sock-partners",
    name="Sock partners",
    needs=("socks", "bag"),
    levels=levels("even-odd:pair-to-20", _BY_TWOS),
    made=made,
)
