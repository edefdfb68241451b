"""Recomputes numerals answers from ``given``, with num2words for numbers and ordinals."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the numeral shown is named or laid out, or the place of the card said is told."""
    if "lay" in given:
        want = (
            f"{num2words(int(given['read']))} {given['lay'][: -1 if given['read'] == '1' else None]} laid out"
        )
    elif "read" in given:
        want = num2words(int(given["read"]))
    else:
        cards = given["cards"]
        if cards.count(str(given["find"])) != 1 or len(set(cards)) != len(cards):
            return f"{cards} do not hold {given['find']} once"
        want = f"the {num2words(cards.index(str(given['find'])) + 1, to='ordinal')} card from the left"
    return None if answer == want.replace("one hundred and ", "one hundred ") else f"{given} wants {want}"
