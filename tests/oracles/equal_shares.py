"""Recomputes equal-shares answers from ``given``: areas are measured on a fine raster of the whole."""

from bisect import bisect_right
from collections import Counter
from collections.abc import Callable
from fractions import Fraction
from functools import cache
from itertools import accumulate
from math import atan2, hypot, pi
from typing import Any

FINE = 240


Spot = tuple[float, float]


@cache
def _spots(whole: str) -> tuple[Spot, ...]:
    """The raster of the unit square, or of the circle in it."""
    square = [((i + 0.5) / FINE, (j + 0.5) / FINE) for i in range(FINE) for j in range(FINE)]
    return tuple(s for s in square if whole != "circle" or hypot(s[0] - 0.5, s[1] - 0.5) < 0.5)


def _part(given: dict[str, Any]) -> Callable[[Spot], object]:
    """Tells which part a spot lies in."""
    parts = given["parts"]
    ends = [end / sum(parts) for end in accumulate(parts)]
    match given["cut"]:
        case "slices":
            return lambda s: bisect_right(ends, atan2(s[0] - 0.5, 0.5 - s[1]) / (2 * pi) % 1)
        case "strips":
            return lambda s: bisect_right(ends, s[0])
        case "cross":
            return lambda s: (s[0] < ends[0], s[1] < ends[0])
        case _ if len(parts) == 4:
            return lambda s: (s[0] < s[1], s[0] < 1 - s[1])
        case _:
            return lambda s: s[0] < s[1]


def measured(given: dict[str, Any]) -> list[float]:
    """The share of each part, as counted on the raster."""
    spots = _spots(given["whole"])
    return [number / len(spots) for number in Counter(map(_part(given), spots)).values()]


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
