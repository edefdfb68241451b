"""Recomputes count-on answers from ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the numbers from start to end, but the one heard, and both forms are right."""
    said = [num2words(n) for n in range(given["start"], given["end"] + 1)]
    forms = [", ".join(said), ", ".join(said[1:])]
    if answer != forms[given["heard"]]:
        return f"{given} wants {forms[given['heard']]}"
    return None if {answer, *accept} == set(forms) else "one of the two forms is not accepted"
