"""Recomputes the parts of a whole from ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the key holds every right answer and no other."""
    whole = given["whole"]
    if "seen" in given:
        part = whole - given["seen"]
        return _same({num2words(part)} | ({"none", "nothing"} if part == 0 else set()), answer, accept)
    if "left" in given:
        if given["left"] + given["right"] != whole:
            return f"{given} is no pair"
        one, other = num2words(given["right"]), num2words(given["left"])
        forms = {f"{one} and {other}"} | ({f"{one} red and {other} blue"} if given["colors"] else set())
        return _same(forms | {f"{one} and {other} make {num2words(whole)}"}, answer, accept)
    told = set(given.get("shown", ()))
    pairs = {(a, b) for a in range(whole + 1) for b in range(whole + 1) if a + b == whole and a not in told}
    return _same({f"{num2words(a)} and {num2words(b)}" for a, b in pairs}, answer, accept)


def _same(want: set[str], answer: str, accept: tuple[str, ...]) -> str | None:
    key = [answer, *accept]
    return None if sorted(key) == sorted(want) else f"the key should be {sorted(want)}, not {key}"
