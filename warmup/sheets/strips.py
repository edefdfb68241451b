"""Marks along measuring strips, in millimeters from where a strip begins."""

from typing import NamedTuple

INCH = 25.4
"""An inch in millimeters, exactly."""


class Tick(NamedTuple):
    """A mark across a strip: where, how much of the strip's width it takes, and the number at it."""

    at: float
    share: float
    number: str = ""


def centimeters(first: int, last: int) -> tuple[Tick, ...]:
    """A mark and a number each whole centimeter, and a short mark between two."""
    return _ticks(first, last, 10.0)


def inches(first: int, last: int) -> tuple[Tick, ...]:
    """A mark and a number each whole inch, and a short mark at each half."""
    return _ticks(first, last, INCH)


def _ticks(first: int, last: int, unit: float) -> tuple[Tick, ...]:
    whole = [Tick((n - first) * unit, 0.5, str(n)) for n in range(first, last + 1)]
    half = [Tick((n - first + 0.5) * unit, 0.25) for n in range(first, last)]
    return tuple(sorted(whole + half))
