"""Recomputes ordinals answers from ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def _word(number: int) -> str:
    return num2words(number, to="ordinal")


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the place, or the name in that place."""
    if "front" in given and "name" in given:
        count, front, name = given["count"], given["front"], given["name"]
        line = list(range(1, count + 1)) if front == "left" else list(range(count, 0, -1))
        # Where the figure of that name stands, counted from the left of the picture.
        rank = count if name == "last" else [_word(n) for n in range(1, count + 1)].index(name) + 1
        left = line.index(rank) + 1
        ends = {f"the {_word(left)} from the left", f"the {_word(count + 1 - left)} from the right"}
        return None if {answer, *accept} == ends else f"{given} wants {ends}"
    want = _word(given["place"]) if "front" in given else given["names"][given["place"] - 1]
    return None if answer == want else f"{given} wants {want}"
