"""Recomputes counts from ``given``, with num2words for the words."""

from functools import cache
from itertools import pairwise
from typing import Any

from num2words import num2words

GAP = "…"


@cache
def _word(number: int) -> str:
    return num2words(number).replace(" and ", " ")


def said(first: int, last: int) -> list[str]:
    return [_word(number) for number in range(first, last + 1)]


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when each form is its count with bits left out only where it says so, and no tens change is."""
    first = given.get("over", 0) + 1
    if "over" in given:
        if len(accept) != 1:
            return f"the number to start at, said or left out, is not accepted: {accept}"
        after, whole = (answer, accept[0]) if given["heard"] else (accept[0], answer)
        forms = {after: said(first, given["end"]), whole: said(first - 1, given["end"])}
    elif accept:
        return f"nothing else is right, not {accept}"
    else:
        forms = {answer: said(first, given["end"])}
    return next((fault for form, words in forms.items() if (fault := _shortened(form, words))), None)


def _shortened(form: str, words: list[str]) -> str | None:
    shown = form.replace(f" {GAP} ", f", {GAP}, ").split(", ")
    if (shown[0], shown[-1]) != (words[0], words[-1]):
        return f"{form!r} does not run from {words[0]} to {words[-1]}"
    places = [words.index(word) if word != GAP else None for word in shown]
    for before, here in pairwise(places):
        if before is not None and here is not None and here != before + 1:
            return f"a number is left out of {form!r} without a mark"
    if [p for p in places if p is not None] != sorted({p for p in places if p is not None}):
        return f"{form!r} is out of order"
    new = [w for w in words[1:] if w.endswith(("ty", "hundred")) and w != words[0]]
    return next((f"{w} is left out of {form!r}" for w in new if w not in shown), None)
