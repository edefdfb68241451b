"""The child stands as a clock, and arms are its hands."""

from warmup.english import listed, number_word
from warmup.games.base import Game, Play, levels, numbered
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_TIMES = 3
_HALF = "clock:half-past"
_LEVELS = levels("clock:o-clock", "clock:set-and-hour-later", _HALF)
_FIST = "The arm with the fist is the short hand."


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Three times to show with both arms."""
    hours = rng.sample(range(1, 13), _TIMES)
    names = [
        f"half past {number_word(hour)}" if level == _HALF and at < 2 else f"{number_word(hour)} o’clock"
        for at, hour in enumerate(hours)
    ]
    last = (
        "Show the time I say."
        if level != "clock:set-and-hour-later"
        else "Show the time, then an hour later."
    )
    return Play(
        f"Stand behind the child with room for arms, and say {listed(names, 'and then')}.",
        ("You are the clock.", _FIST, last),
        "when the clock has shown the last time",
        "Does the short hand tell the hour?" if level != _HALF else "Does the long hand point straight down?",
        numbered("hour", hours),
        6 * _TIMES,
    )


GAME = Game(
    id="arms-of-the-clock",
    name="Arms of the clock",
    needs=(),
    levels=_LEVELS,
    made=made,
    two="One is the long hand, the other the short hand.",
)
