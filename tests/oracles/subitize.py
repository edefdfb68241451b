"""Recomputes subitize answers from the groups in ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is all the groups together."""
    want = num2words(sum(given["groups"]))
    return None if answer == want and not accept else f"{given} wants {want}"
