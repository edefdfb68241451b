"""Recomputes even-odd answers from ``given`` by taking two away at a time, with num2words for the words."""

from typing import Any

from num2words import num2words


def _pairs(number: int) -> tuple[int, int]:
    pairs = 0
    while number >= 2:
        number, pairs = number - 2, pairs + 1
    return pairs, number


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the pairs, the kind or the numbers of the kind are right."""
    if "low" in given:
        fits = [n for n in range(given["low"] + 1, given["high"]) if _pairs(n)[1] == (given["kind"] == "odd")]
        said = answer.replace(" or ", ", ").split(", ")
        return None if said == [num2words(n) for n in fits] else f"{given} wants {fits}"
    pairs, left = _pairs(given["number"])
    if "things" in given:
        made = f"{num2words(pairs)} {'pair' if pairs == 1 else 'pairs'}"
        want = f"{made} and {'one' if left else 'none'} left over"
        want = f"{'no' if left else 'yes'}: {want}" if given["can"] else want
    else:
        want = "odd" if left else "even"
    return None if answer == want else f"{given} wants {want}"
