"""Recomputes make-ten answers from ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the partner of ``have`` in ten, or what is left when some of ten go."""
    if "away" in given:
        left = next(n for n in range(11) if n + given["away"] == given["from"])
        return (
            None if answer == num2words(left) and given["from"] == 10 and not accept else f"{given}: {left}"
        )
    want = num2words(given["make"] - given["have"])
    return None if answer == want and 1 <= given["have"] <= 9 else f"{given} wants {want}"
