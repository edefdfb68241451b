"""Recomputes number-words answers from ``given``, with inflect for the words."""

from typing import Any

import inflect

# Its hints ask for numbers.Number, which no type checker takes an int for.
_ENGINE: Any = inflect.engine()


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when exactly one card says what the word says, and its place is accepted."""
    spelled = [_ENGINE.number_to_words(int(card), andword="") for card in given["cards"]]
    if spelled.count(given["read"]) != 1 or len(set(spelled)) != 4:
        return f"{given} has no single card for its word"
    place = _ENGINE.number_to_words(_ENGINE.ordinal(spelled.index(given["read"]) + 1))
    want = f"the {place} card from the left"
    return None if answer == given["read"] and accept == (want,) else f"{given} wants {want}"
