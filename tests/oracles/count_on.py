"""Recomputes count-on answers from ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is every number from start to end, and the bare continuation is accepted."""
    said = [num2words(n) for n in range(given["start"], given["end"] + 1)]
    if answer != ", ".join(said):
        return f"{given} wants {said}"
    return None if ", ".join(said[1:]) in accept else "the count without its start is not accepted"
