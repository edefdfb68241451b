"""Recomputes month answers from ``given`` with the standard library's calendar and num2words."""

import calendar
from typing import Any

from num2words import num2words

NAMES = list(calendar.month_name)[1:]


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the month, the months or their number, whichever the prompt asks for."""
    want, also = _want(item, given)
    return None if (answer, accept) == (want, also) else f"{given} wants {want} and {also}"


def _want(item: str, given: dict[str, Any]) -> tuple[str, tuple[str, ...]]:
    if item == "this":
        return NAMES[int(given["date"][5:7]) - 1], ()
    if item in ("in-order", "august-september"):
        end = NAMES.index(given["said"][-1]) + 1
        rest = NAMES[end : end + given["more"]]
        pair = (", ".join(rest),) if len(rest) > 1 else ()
        rows = [", ".join([*given["said"][start:], *rest]) for start in range(len(given["said"]))]
        return " and ".join(rest), tuple(dict.fromkeys((*pair, rows[-1], rows[0])))
    if item == "twelve-months":
        number = num2words(NAMES.index(given["last"]) - NAMES.index(given["first"]) + 1)
        return number, (f"{number} months",)
    return NAMES[(NAMES.index(given["month"]) + given["steps"]) % 12], ()
