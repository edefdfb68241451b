"""Recomputes story answers from ``given``: tries every number in the unknown's place in the equation.

The situations are the rows of the table in tests/references/standards.toml, ``[situations]``.
"""

from typing import Any

from num2words import num2words

_EQUATIONS = {
    "add to, result unknown": lambda g, x: g["start"] + g["came"] == x,
    "take from, result unknown": lambda g, x: x + g["went"] == g["start"],
    "put together, total unknown": lambda g, x: g["one"] + g["other"] == x,
    "add to, change unknown": lambda g, x: g["start"] + x == g["end"],
    "take from, change unknown": lambda g, x: g["end"] + x == g["start"],
    "put together, addend unknown": lambda g, x: g["part"] + x == g["total"],
    "compare, difference unknown": lambda g, x: g["smaller"] + x == g["larger"],
}


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the one number that fits, or the key every pair of parts not told."""
    if given["situation"] == "take apart, both addends unknown":
        total, told = given["total"], given.get("shown")
        want = {
            f"{num2words(a)} and {num2words(b)}"
            for a in range(1, total)
            for b in range(1, total)
            if a + b == total and [a, b] != told
        }
        return None if {answer, *accept} == want and len(accept) == len(want) - 1 else f"{given} wants {want}"
    (fits,) = [x for x in range(21) if _EQUATIONS[given["situation"]](given, x)]
    if answer != num2words(fits):
        return f"{given} wants {fits}"
    return None if (set(accept) == {"none", "nothing"}) == (fits == 0) else f"{accept} for {fits}"
