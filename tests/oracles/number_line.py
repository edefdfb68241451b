"""Recomputes places and landings on a number line from ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the key names the number hidden or landed on, or every way to tell where a number lives."""
    if "find" in given:
        want = {_told(given["find"] - n, n) for n in given["named"]}
        return None if {answer, *accept} == want and given["find"] not in given["named"] else f"wants {want}"
    if "hidden" in given:
        inside = given["first"] <= given["hidden"] <= given["last"]
        return None if inside and answer == num2words(given["hidden"]) else f"{given} hides something else"
    at = given["start"]
    for _ in range(abs(given["hops"])):
        at += 1 if given["hops"] > 0 else -1
    return None if at >= 0 and answer == num2words(at) and not accept else f"{given} lands on {at}"


def _told(steps: int, base: int) -> str:
    far = "a step" if abs(steps) == 1 else f"{num2words(abs(steps))} steps"
    return f"{far} {'after' if steps > 0 else 'before'} {num2words(base)}"
