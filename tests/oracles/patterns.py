"""Recomputes pattern answers from ``given``: tries every part of up to four pieces against what is shown."""

from typing import Any

from num2words import num2words


def parts(shown: list[str], longest: int) -> list[list[str]]:
    """Every part of up to ``longest`` pieces that what is shown allows; "?" where it leaves a piece open."""
    found: list[list[str]] = []
    for length in range(1, longest + 1):
        part = ["?"] * length
        fits = True
        for place, piece in enumerate(shown):
            if piece == "?":
                continue
            fits = fits and part[place % length] in ("?", piece)
            part[place % length] = piece
        if fits:
            found.append(part)
    return found


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when every part of up to three pieces that fits gives this one answer."""
    shown = given["shown"]
    fitting = parts(shown, 3)
    if not fitting:
        return f"{shown} does not repeat"
    if given.get("ask") == "length":
        return _one({num2words(len(fitting[0]))}, answer)
    if given.get("ask") == "part":
        shortest = fitting[0]
        turned = {", ".join(shortest[n:] + shortest[:n]) for n in range(len(shortest))}
        return None if {answer, *accept} == turned and answer == ", ".join(shortest) else f"wants {turned}"
    if "?" in shown:
        return _one({part[shown.index("?") % len(part)] for part in fitting}, answer)
    ends = range(len(shown), len(shown) + given["want"])
    return _one({", ".join(part[n % len(part)] for n in ends) for part in fitting}, answer)


def _one(allowed: set[str], answer: str) -> str | None:
    return None if allowed == {answer} else f"what is shown allows {allowed}"
