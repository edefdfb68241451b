"""Recomputes ordinals answers from ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def _word(number: int) -> str:
    return num2words(number, to="ordinal")


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the place, the name in that place, or the ordinal next to another."""
    if "front" in given and "name" in given:
        count, front, name = given["count"], given["front"], given["name"]
        line = list(range(1, count + 1)) if front == "left" else list(range(count, 0, -1))
        # Where the figure of that name stands, counted from the left of the picture.
        rank = count if name == "last" else [_word(n) for n in range(1, count + 1)].index(name) + 1
        left = line.index(rank) + 1
        ends = {f"the {_word(left)} from the left", f"the {_word(count + 1 - left)} from the right"}
        return None if {answer, *accept} == ends else f"{given} wants {ends}"
    if "front" in given:
        want = _word(given["place"])
    elif "names" in given:
        want = given["names"][given["place"] - 1]
    elif "side" in given:
        want = _word(given["other"] + (1 if given["side"] == "after" else -1))
    else:
        want = _word(given["number"])
    return None if answer == want else f"{given} wants {want}"
