"""Recomputes neighbors from ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is a step from the number, or the one whole number between two."""
    if "low" in given:
        inside = [n for n in range(101) if given["low"] < n < given["high"]]
        if len(inside) != 1:
            return f"{given}: {len(inside)} numbers lie between"
        want = inside[0]
    else:
        want = given["number"] + given["step"]
    if answer != num2words(want):
        return f"{given} wants {num2words(want)}"
    right = {"none", "nothing"} if want == 0 else set()
    if "things" in given:
        right.add(f"{num2words(want) if want else 'no'} {given['things']}")
    return None if set(accept) == right else f"accepts {accept}"
