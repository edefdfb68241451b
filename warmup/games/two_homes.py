"""Things from about the room find out on which napkin they live."""

from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_THINGS = 6
_PAIRS = ("soft or hard", "long or short", "one color or many colors", "round or with corners")
_BRING = "Bring one thing."
_RULES = {
    "sort:one-rule": (_BRING, "Put it on the napkin where it lives.", "Say why it lives there."),
    "sort:count-groups": (_BRING, "Put it on the napkin where it lives.", "Say how many live there now."),
    "sort:order-groups": (_BRING, "Put it on the napkin where it lives.", "Say which napkin has more."),
}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Two napkins, and one rule that parts everything."""
    pair = rng.pick(_PAIRS)
    return Play(
        f"Lay out two napkins, one for each kind: {pair}; see that nothing sharp is in reach.",
        _RULES[level],
        "when six things have a home; then all go back",
        "Does one rule hold to the end?",
        {"napkins": 2, "things": _THINGS},
        3 * _THINGS,
    )


GAME = Game(
    id="two-homes",
    name="Two homes",
    needs=("napkins",),
    levels=levels(*_RULES),
    made=made,
    two="One brings, the other says where it lives; then they change.",
)
