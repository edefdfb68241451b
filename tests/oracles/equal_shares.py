"""Recomputes equal-shares answers from ``given``: areas are measured on a fine raster of the whole."""

from collections import Counter
from fractions import Fraction
from math import atan2, degrees
from typing import Any

FINE = 240


def _part(given: dict[str, Any], x: float, y: float) -> object:
    """Which part the spot (x, y) of the unit square (of a circle or a rectangle) lies in."""
    whole, parts = sum(given["parts"]), given["parts"]
    bounds = [sum(parts[: k + 1]) / whole for k in range(len(parts))]
    match given["cut"]:
        case "slices":
            return next(
                k for k, end in enumerate(bounds) if degrees(atan2(x - 0.5, 0.5 - y)) % 360 < 360 * end
            )
        case "strips":
            return next(k for k, end in enumerate(bounds) if x < end)
        case "cross":
            return x < bounds[0], y < bounds[0]
        case _:
            return (x < y, x < 1 - y) if len(parts) == 4 else (x < y)


def measured(given: dict[str, Any]) -> list[float]:
    """The share of each part, as counted on the raster."""
    spots = [((i + 0.5) / FINE, (j + 0.5) / FINE) for i in range(FINE) for j in range(FINE)]
    if given["whole"] == "circle":
        spots = [(x, y) for x, y in spots if (x - 0.5) ** 2 + (y - 0.5) ** 2 < 0.25]
    count = Counter(_part(given, x, y) for x, y in spots)
    return [number / len(spots) for number in count.values()]


_SEEN: dict[str, bool] = {}


def _equal(given: dict[str, Any]) -> bool:
    key = str(sorted(given.items()))
    if key not in _SEEN:
        sizes = measured(given)
        # A row of spots on the cut itself goes to one side: two spots' width of slack.
        _SEEN[key] = len(sizes) == given["count"] and max(sizes) - min(sizes) < 4 / FINE
    return _SEEN[key]


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer fits the areas, or the fractions."""
    match item:
        case "halves-or-not" | "quarters-or-not":
            want = "yes" if _equal(given) else "no"
        case "make-halves" | "make-quarters":
            word = {2: "two", 4: "four"}[given["count"]]
            want = f"{word} parts, all the same size; nothing left over"
        case "about-halves":
            half = Fraction(1, 2)
            want = {
                "how many": {Fraction(2): "two"}[1 / half],
                "left": {half: "one half"}[1 - half],
                "name": {Fraction(1): "a half"}[half + half],
            }[given["ask"]]
        case _:
            bigger = Fraction(1, 2) > Fraction(1, 4)
            want = "a half" if bigger == given["more"] else "a quarter"
    return None if answer == want else f"{given} wants {want!r}"
