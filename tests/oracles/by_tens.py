"""Recomputes skip counts from ``given`` by adding on, with num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer goes from start to end by tens."""
    return skipped(given, answer, accept, 10)


def skipped(given: dict[str, Any], answer: str, accept: tuple[str, ...], by: int) -> str | None:
    """None when the answer goes from start to end by ``by``, and what the adult has said may be left out."""
    if given["by"] != by or given["start"] % by:
        return f"{given} is not by {by}"
    number, said = given["start"], []
    while number != given["end"]:
        said.append(num2words(number))
        number += given["by"]
        if not 0 <= number <= 100:
            return f"{given} never arrives"
    said.append(num2words(number))
    forms = [", ".join(said[left:]) for left in range(max(1, given["heard"]) + 1)]
    if answer != forms.pop(given["heard"]):
        return f"{given} wants another answer than {answer}"
    return None if list(accept) == forms else f"accepts {accept}"
