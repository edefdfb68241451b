"""Recomputes clock answers from ``given``, with datetime for what comes later and num2words for the words."""

import datetime as dt
from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the time, the place of the hands, or the time an hour on."""
    now = dt.datetime(2026, 1, 1, given["hour"] % 12, given["minute"])
    match given["do"]:
        case "read":
            wants = spoken(now)
        case "which hand":
            short, long = degrees(now) / 30, now.minute / 5
            assert short != long, "both hands on one number"
            wants = f"the {num2words(int(short))}"
        case "later":
            wants = spoken(now + dt.timedelta(hours=1))
        case "set":
            short = degrees(now)
            assert short % 30 == 0
            wants = (
                "both hands on twelve"
                if short == 0
                else f"the short hand on {num2words(int(short / 30))}, the long hand on twelve"
            )
        case _:
            low, rest = divmod(degrees(now), 30)
            assert rest == 15, "not halfway between two numerals"
            names = [num2words(int(n) % 12 or 12) for n in (low, low + 1)]
            wants = f"halfway between {names[0]} and {names[1]}"
    if answer != wants:
        return f"{given} wants {wants!r}"
    if given["do"] in ("read", "later"):
        then = now + dt.timedelta(hours=given["do"] == "later")
        digits = f"{then.strftime('%I').lstrip('0')}:{then.minute:02}"
        if digits not in accept:
            return f"{digits} is not accepted"
    return None


def spoken(time: dt.datetime) -> str:
    """The time in words, to the half hour."""
    hour = num2words(time.hour % 12 or 12)
    return f"half past {hour}" if time.minute == 30 else f"{hour} o’clock"


def degrees(time: dt.datetime) -> float:
    """Where the hour hand stands, clockwise from twelve: once round in twelve hours."""
    return (time.hour % 12 * 60 + time.minute) * 360 / 720
