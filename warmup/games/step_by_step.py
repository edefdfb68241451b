"""Each step is a day or a month, on or back as the strip falls."""

from warmup.english import MONTHS, WEEKDAYS, ordinal_word
from warmup.games.base import DOT, Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_STEPS, _WALKS, _FARTHEST = 8, 3, 6
_UNTIL = "date:within-a-week"
_DATE = "date:number"
_DAYS = ("weekday:today", "weekday:tomorrow", "weekday:yesterday", "weekday:around")
_MONTHS = ("month:this", "month:order", "month:around")
_LISTEN = "Is the name there, or does the child say the whole row from the first?"


def made(level: LevelId, morning: Morning, rng: SeededRandom) -> Play:
    """A walk of eight steps from today, or from a date in the middle of the month."""
    day, month = WEEKDAYS[morning.date.weekday()], MONTHS[morning.date.month - 1]
    if level == _UNTIL:
        return _until(morning, rng)
    if level == _DATE:
        # From here eight steps either way stay within the shortest month.
        number = rng.between(9, 20)
        start, what, given = f"the {ordinal_word(number)}", "date", {"date": number, "steps": _STEPS}
    elif level in _MONTHS:
        start, what, given = month, "month", {"steps": _STEPS}
    else:
        start, what, given = day, "day", {"steps": _STEPS}
    return Play(
        f"{DOT.capitalize()}, and drop it before each step.",
        (f"You stand on {start}.", "Dot up, step ahead; no dot, step back.", f"Say the {what} you are on."),
        "after eight steps",
        _LISTEN,
        given,
        2 * _STEPS,
    )


def _until(morning: Morning, rng: SeededRandom) -> Play:
    """Steps to a day of the coming week."""
    steps = rng.between(3, _FARTHEST)
    at = morning.date.weekday()
    return Play(
        f"Clear some floor, and choose {WEEKDAYS[(at + steps) % 7]} first, then other days of the week.",
        (
            f"You stand on {WEEKDAYS[at]}.",
            "Say how many steps to the day I name.",
            "Walk them and say each day.",
        ),
        "after three walks",
        "Is today left out of the count?",
        {"steps": steps},
        _WALKS * _FARTHEST,
    )


GAME = Game(
    id="step-by-step",
    name="Step by step",
    needs=("strips of paper",),
    levels=levels(*_DAYS, *_MONTHS, _DATE, _UNTIL),
    made=made,
    two="They walk side by side and take turns to say it.",
    spared=((_UNTIL, ("strips of paper",)),),
)
