"""Recomputes teens answers from ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when ten and some more make the number, both ways, or the right card is told."""
    if "more" in given:
        want = num2words(given["ten"] + given["more"])
    elif "build" in given:
        want = f"ten and {num2words(given['build'] - given['ten'])} more"
    elif "cards" in given:
        want = (
            f"the {num2words(given['cards'].index(str(given['find'])) + 1, to='ordinal')} card from the left"
        )
    else:
        want = num2words(given["number"] - given["ten"])
    return None if answer == want else f"{given} wants {want}"
