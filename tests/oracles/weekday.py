"""Recomputes weekday answers from ``given`` with the standard library's calendar."""

import calendar
import datetime as dt
from typing import Any


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the day so many steps from the day or date given."""
    names = list(calendar.day_name)
    start = (
        dt.date.fromisoformat(given["date"]).isoweekday() - 1
        if "date" in given
        else names.index(given["day"])
    )
    want = names[(start + given["steps"]) % 7]
    return None if answer == want and not accept else f"{given} wants {want}"
