"""Recomputes how-many answers from ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the size of the set, the number asked for, or what is left of it."""
    if item == "zero":
        want = num2words(given["start"] - given["away"])
        missing = {"none", "nothing"} - set(accept)
        return f"{given} wants {want} and {missing}" if answer != want or missing else None
    count = num2words(given["count"])
    if item.startswith("count-out"):
        return (
            None if answer.split()[0] == count and given["what"][:3] in answer else f"{given} wants {count}"
        )
    return None if answer == count and not accept else f"{given} wants {count}"
