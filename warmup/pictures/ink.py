"""Inks, and what can be mixed of them: colors by what they mean, which the screen's theme resolves."""

from collections.abc import Mapping
from enum import IntEnum
from math import hypot
from typing import NamedTuple


class Ink(IntEnum):
    """What a color means; the screen's theme gives each its own."""

    GROUND = 0
    """The stage itself."""
    INK = 1
    """Words, numerals, outlines."""
    FIRST = 2
    """What we count: always solid."""
    SECOND = 3
    """A second kind, told apart by its form as well."""
    SOFT = 4
    """Grid lines, empty places, things that only help."""
    TILE = 5
    """A chart's lighter squares."""
    TILE_ALT = 6
    """A chart's darker squares: the checkerboard."""
    HOLE = 7
    """The square whose number or name is asked for."""
    COPPER = 8
    """A penny."""
    SILVER = 9
    """A nickel, a dime, a quarter."""
    LIGHT = 10
    """Where light falls on a solid of the first ink."""
    SHADOW = 11
    """Where such a solid turns away from the light."""

    # A number's own hash: that of an enumeration's member is worked out anew, in Python, at each look-up.
    __hash__ = int.__hash__


PARTS = 64
"""A mix is counted in so many parts."""

Mix = Ink | tuple[tuple[Ink, int], ...]
"""One ink, or several in ascending order with their parts, :data:`PARTS` in all."""


def parts_of(mix: Mix) -> tuple[tuple[Ink, int], ...]:
    """The inks of a mix and their parts."""
    return ((mix, PARTS),) if isinstance(mix, Ink) else mix


def mixed(weights: Mapping[Ink, float]) -> Mix:
    """The mix of inks by weights above 0, in any unit; traces under a 32nd are left out."""
    whole = sum(weights.values())
    parts = {ink: round(PARTS * weight / whole) for ink, weight in sorted(weights.items())}
    parts = {ink: count for ink, count in parts.items() if count > PARTS // 32}
    most = max(parts, key=parts.__getitem__)
    if len(parts) == 1:
        return most
    parts[most] += PARTS - sum(parts.values())
    return tuple(parts.items())


def between(one: Mix, other: Mix, share: float) -> Mix:
    """``one`` with a ``share`` (0 to 1) of ``other`` in its place."""
    weights: dict[Ink, float] = {}
    for mix, part in ((one, 1 - share), (other, share)):
        for ink, count in parts_of(mix):
            weights[ink] = weights.get(ink, 0.0) + part * count
    return mixed({ink: weight for ink, weight in weights.items() if weight > 0})


def heaviest(mix: Mix) -> Ink:
    """The ink there is most of, the last named of those alike."""
    return mix if isinstance(mix, Ink) else max(mix, key=lambda part: (part[1], part[0]))[0]


class Shade(NamedTuple):
    """Mixes that pass into each other from ``start`` to ``end``, or out from ``start`` in a circle.

    ``stops`` are shares of the way, ascending from 0 to 1, each with its mix. In a circle ``end`` is any
    point of the rim.
    """

    stops: tuple[tuple[float, Mix], ...]
    start: tuple[float, float]
    end: tuple[float, float]
    circle: bool = False

    def at(self, share: float) -> Mix:
        """The mix so far along the way."""
        for (low, one), (high, other) in zip(self.stops, self.stops[1:], strict=False):
            if share <= high:
                return between(one, other, max(0.0, share - low) / (high - low))
        return self.stops[-1][1]

    def along(self, x: float, y: float, step: float, count: int) -> list[float]:
        """How far along the way ``count`` points lie, from (x, y) on to the right in steps."""
        (x0, y0), (x1, y1) = self.start, self.end
        dx, dy = x1 - x0, y1 - y0
        if self.circle:
            far = hypot(dx, dy)
            return [hypot(x + n * step - x0, y - y0) / far for n in range(count)]
        square = dx * dx + dy * dy
        first, each = ((x - x0) * dx + (y - y0) * dy) / square, step * dx / square
        return [first + n * each for n in range(count)]
