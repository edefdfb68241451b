"""How long a month is: what the skill `month` asks at its last level.

Lengths are the Gregorian calendar's: a year is a leap year when four divides it, but of the centuries
only every fourth (the rule of 1582, as ISO 8601 uses it).
"""

import datetime as dt

from warmup import pictures
from warmup.english import MONTHS, number_word
from warmup.model import Cue
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._calendar import month_days
from warmup.skills.base import Draft

# The months in two heaps, besides the long pair and the short month, which have items of their own.
_THIRTY = ("April", "June", "September", "November")
_THIRTY_ONE = ("January", "March", "May", "October", "December")


def any_month(today: dt.date, rng: SeededRandom, watch_for: str) -> Draft:
    """How many days a month has; thirty as often as thirty-one."""
    month = rng.pick(_THIRTY if rng.coin() else _THIRTY_ONE)
    say = rng.phrasing(
        f"How many days are there in {month}?",
        f"{month} starts on number one. On which number does it end?",
        f"Count the days in {month}. How many are there?",
    )
    return _days(today.year, month, say, watch_for)


def february(today: dt.date, rng: SeededRandom, watch_for: str) -> Draft:
    """Half of the time this year's February, else that of a year of the other kind."""
    year = today.year
    leap = month_days(year, 2) == 29
    if rng.coin():
        gone = today.month > 2
        say = rng.phrasing(
            f"How many days {'did' if gone else 'does'} February have this year?",
            f"Think of February this year. On which number {'did' if gone else 'does'} it end?",
            "Count the days in February this year. How many are there?",
        )
        return _days(year, "February", say, watch_for)
    other = next(later for later in range(year, year + 9) if (month_days(later, 2) == 29) is not leap)
    return _days(other, "February", _common_year(rng) if leap else _leap_year(rng), watch_for)


def _leap_year(rng: SeededRandom) -> Phrasing:
    return rng.phrasing(
        "How many days does February have in a leap year?",
        "February gets one more day in a leap year. How many days then?",
        "Pretend it is a leap year. On which number does February end?",
    )


def _common_year(rng: SeededRandom) -> Phrasing:
    return rng.phrasing(
        "Next year is not a leap year. How many days will February have?",
        "Most years are not leap years. How many days does February have then?",
        "Pretend it’s not a leap year. How many days does February have?",
    )


def _days(year: int, month: str, say: Phrasing, watch_for: str) -> Draft:
    number = MONTHS.index(month) + 1
    days = month_days(year, number)
    return Draft(
        say=say,
        answer=number_word(days),
        accept=(f"{number_word(days)} days",),
        working=_why(year, month, days),
        cues=(*_way_in(year, number), _last_numbers(year, number)),
        watch_for=watch_for,
        given={"asks": "days", "month": number, "year": year},
    )


def _way_in(year: int, month: int) -> tuple[Cue, Cue]:
    """Fists and their knuckles; for February its full weeks."""
    if month == 2:
        return (
            Cue("It is the shortest of all. A leap year lends it a day."),
            Cue(
                "Touch the end of each week: seven, fourteen, twenty-one. Any days past the next?",
                pictures.MonthCalendar(year, month, pointed=(7, 14, 21)),
            ),
        )
    fists = "Touch a knuckle for January, a dip for February"
    return (
        Cue("Look at your fists. Is it up on a knuckle or down in a dip?"),
        Cue(
            f"{fists}, and so on up to {MONTHS[month - 1]}." if month > 2 else f"{fists}. Knuckles are long."
        ),
    )


def _why(year: int, month: str, days: int) -> str:
    if month == "February":
        kind = "a leap year" if days == 29 else "no leap year"
        return f"February {year}: {days} days, for {year} is {kind}"
    return f"{month} has {days} days in every year"


def _last_numbers(year: int, month: int) -> Cue:
    """Count on from a number short of the end."""
    start = month_days(year, month) - 3
    row = f"{number_word(start - 1)}, {number_word(start)}"
    return Cue(
        f"Count the last squares of its page: “{row}…” The child keeps going.",
        pictures.MonthCalendar(year, month, pointed=(start,)),
    )


def long_pair(today: dt.date, rng: SeededRandom, watch_for: str) -> Draft:
    """July and August: how long one of them is, or which month is its match."""
    month = rng.pick(("July", "August"))
    if rng.coin():
        say = rng.phrasing(
            f"{month} starts on number one. On which number does it end?",
            f"Find {month} on your fist. How many days does it have?",
            f"Count the days in {month}. How many are there?",
        )
        return _days(today.year, month, say, watch_for)
    number = MONTHS.index(month)
    near = range(number - 1, number + 2)
    lengths = ", ".join(f"{MONTHS[at]} {month_days(today.year, at + 1)}" for at in near)
    match = next(MONTHS[at] for at in near if at != number and _as_long(today.year, at, number))
    return Draft(
        say=rng.phrasing(
            f"Which month next to {month} is just as long?",
            f"Which month beside {month} has as many days?",
            f"A month next to {month} is just as long. Which one?",
        ),
        answer=match,
        working=lengths,
        cues=(
            Cue(f"Which months stand next to {month}, before it and after?"),
            Cue("Look at two fists side by side. Where do two knuckles meet?"),
            Cue("Touch knuckle and dip from January on together. Stop where two knuckles meet."),
        ),
        watch_for=watch_for,
        given={"asks": "match", "month": number + 1, "year": today.year},
    )


def _as_long(year: int, one: int, other: int) -> bool:
    return month_days(year, one + 1) == month_days(year, other + 1)
