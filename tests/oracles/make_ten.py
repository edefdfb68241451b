"""Recomputes make-ten answers from ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the partner of ``have`` in ten."""
    want = num2words(given["make"] - given["have"])
    return None if answer == want and 0 <= given["have"] <= 10 else f"{given} wants {want}"
