"""A clock lies on the table: strips for its numbers, a fork and a spoon for its hands."""

from warmup.english import listed, number_word
from warmup.games.base import Game, Play, levels, numbered
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_TIMES = 3
_HALF, _LATER = "clock:half-past", "clock:set-and-hour-later"


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Three times to lay."""
    hours = rng.sample(range(1, 13), _TIMES)
    names = [
        f"half past {number_word(hour)}" if level == _HALF and at != 1 else f"{number_word(hour)} o’clock"
        for at, hour in enumerate(hours)
    ]
    last = "Then lay an hour later." if level == _LATER else "Tell what we do then."
    return Play(
        f"Lay strips of paper with 1 to 12 in a ring, and say {listed(names, 'and then')}.",
        ("The fork is the long hand, the spoon the short.", "Lay the time I say.", last),
        "when the last time lies on the table",
        "Is the spoon halfway to the next number?"
        if level == _HALF
        else "Is it the spoon that tells the hour?",
        numbered("hour", hours),
        6 * _TIMES,
    )


GAME = Game(
    id="spoon-clock",
    name="The spoon clock",
    needs=("strips of paper", "spoons", "forks"),
    levels=levels("clock:o-clock", _LATER, _HALF),
    made=made,
    two="One lays the fork, the other the spoon.",
)
