"""Recomputes number-words answers from ``given``, with inflect for the words."""

from typing import Any

from tests.oracles.english import ENGLISH


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when exactly one card says what the word says, and its place is accepted."""
    spelled = [ENGLISH.number_to_words(int(card), andword="") for card in given["cards"]]
    if spelled.count(given["read"]) != 1 or len(set(spelled)) != 4:
        return f"{given} has no single card for its word"
    place = ENGLISH.number_to_words(ENGLISH.ordinal(spelled.index(given["read"]) + 1))
    want = f"the {place} card from the left"
    return None if answer == given["read"] and accept == (want,) else f"{given} wants {want}"
