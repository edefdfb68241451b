"""A pretend elevator goes up or down ten floors, as the strip falls."""

from warmup.english import number_word
from warmup.games.base import DOT, Game, Play, levels, turns_within
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_TEN, _FAR, _DROPS = 10, 20, 10
_WHOLE_TENS = "by-tens:to-100"
_LEVELS = levels("hundred-chart:ten-more-or-less", _WHOLE_TENS)


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """An elevator that begins in the middle and stops two rides away."""
    start = 10 * rng.between(4, 7) if level == _WHOLE_TENS else 10 * rng.between(3, 6) + rng.between(1, 9)
    return Play(
        f"Stand in a pretend elevator, {DOT}, and drop it before each ride.",
        (
            f"This is floor {number_word(start)}.",
            "Dot up, ride up ten; no dot, ride down ten.",
            "Say the floor.",
        ),
        "when you are twenty floors from the start, or after ten rides",
        "Does only the ten change, with no counting by ones?",
        {"start": start, "step": _TEN, "low": start - _FAR, "high": start + _FAR},
        _DROPS,
    )


def simulate(play: Play, rng: SeededRandom) -> int:
    """The rides until the elevator is far enough, or until there were enough."""
    given = play.given
    return turns_within(given["start"], (given["low"], given["high"]), _TEN, _DROPS, rng)


GAME = Game(
    id="ten-floors",
    name="Ten floors",
    needs=("strips of paper",),
    levels=_LEVELS,
    made=made,
    two="One drops the strip, the other says the floor.",
    simulate=simulate,
)
