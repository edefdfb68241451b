"""Recomputes answers about dates from ``given`` with date ordinals and num2words."""

import calendar
import datetime as dt
from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the number, the date or the count, and both ways to say a number are taken."""
    if "to" in given:
        days = (
            dt.date.fromisoformat(given["to"]).toordinal() - dt.date.fromisoformat(given["from"]).toordinal()
        )
        noun = f"{num2words(days)} {'sleep' if days == 1 else 'sleeps'}"
        return None if answer == num2words(days) and noun in accept else f"{given} wants {days}"
    start = dt.date.fromisoformat(given.get("date") or given["from"])
    day = dt.date.fromordinal(start.toordinal() + given.get("steps", 0))
    month, number, place = (
        calendar.month_name[day.month],
        num2words(day.day),
        num2words(day.day, to="ordinal"),
    )
    match item:
        case "say-number":
            right = answer == number and place in accept
        case "find-number":
            name = calendar.day_name[calendar.weekday(day.year, day.month, day.day)]
            right = answer == f"the first empty square, under {name}"
        case _:
            right = answer == f"{month} {place}" and f"{month} {number}" in accept
    return None if right else f"{given} wants {month} {place}"
