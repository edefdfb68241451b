"""A bear sleeps a day or a month away, and the child says when it wakes."""

from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_SLEEPS = 5
_DAYS = ("weekday:today", "weekday:tomorrow", "weekday:yesterday", "weekday:around")
_MONTHS = ("month:this", "month:order", "month:around")
_DATE = "date:number"


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """Five sleeps, from wherever the adult likes."""
    unit = "month" if level in _MONTHS else "date" if level == _DATE else "day"
    sleeps = "month" if level in _MONTHS else "night"
    if level == "weekday:yesterday":
        told, asked = "you wake", f"Say the {unit} you went to sleep."
    else:
        told, asked = "you go to sleep", f"Wake up and say the {unit}."
    return Play(
        f"Make a den under the table, and choose another {unit} for each sleep.",
        (f"Bear, sleep one {sleeps}.", f"I say the {unit} {told}.", asked),
        "after five sleeps, when the bear is wide awake",
        "Is the name there, or does the child say the whole row from the first?",
        {"sleeps": _SLEEPS},
        3 * _SLEEPS,
    )


GAME = Game(
    id="sleepy-bear",
    name="The sleepy bear",
    needs=(),
    levels=levels(*_DAYS, *_MONTHS, _DATE),
    made=made,
    two="One sleeps, the other says when; then they change.",
)
