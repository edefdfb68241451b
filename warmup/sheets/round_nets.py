"""Nets of a can and of a party hat: a wall that rolls up, its rim cut into teeth, and round ends apart.

Lengths are in millimeters, on the paper x runs right and y down. A round end touches its wall in a single
point, where a hinge would tear: so ends are cut out apart, and the teeth are folded in and glued behind them.
Curves are drawn as short straight lines, which stray from them by less than a hundredth of a millimeter.
"""

from itertools import pairwise
from math import cos, hypot, pi, sin
from typing import NamedTuple

from warmup.pictures.shapes import Point, Points
from warmup.sheets.nets import tab

TEETH = 16
"""Round a rim: each is then about a child's finger wide."""
TOOTH = 7.0
"""How deep a tooth is."""
_TOOTH_LEAN = 15.0
"""How far a tooth's sides lean in: folded over, the teeth then lie side by side."""
_STEPS = 240


class RoundNet(NamedTuple):
    """A wall with its two ``seam`` sides (from the one end to the other), a tab on the first, and its ends.

    ``rims`` are the edges that meet an end, drawn along the wall; ``teeth`` stand on them.
    """

    name: str
    radius: float
    high: float
    wall: Points
    seam: tuple[tuple[Point, Point], tuple[Point, Point]]
    rims: tuple[Points, ...]
    teeth: tuple[Points, ...]
    ends: tuple[Points, ...]

    @property
    def tabs(self) -> tuple[Points, ...]:
        """The tab of the wall's seam, then the teeth."""
        return (tab(*self.seam[0]), *self.teeth)

    @property
    def faces(self) -> tuple[Points, ...]:
        """The wall, then the ends."""
        return (self.wall, *self.ends)

    def cuts(self) -> tuple[Points, ...]:
        """The lines to cut along."""
        return (*self.tabs, self.seam[1], *((*end, end[0]) for end in self.ends))

    def folds(self) -> tuple[Points, ...]:
        """The lines to fold along: where the tab and the teeth hang on."""
        return (self.seam[0], *self.rims)


def cylinder(radius: float, high: float) -> RoundNet:
    """A can: a rectangle as long as it is round, and two circles below it."""
    long = 2 * pi * radius
    marks = [long * n / TEETH for n in range(TEETH + 1)]
    top = tuple((x, 0.0) for x in marks)
    bottom = tuple((x, high) for x in reversed(marks))
    teeth = tuple(
        tab(start, end, TOOTH, _TOOTH_LEAN) for rim in (top, bottom) for start, end in pairwise(rim)
    )
    below = high + TOOTH + 4.0 + radius
    ends = tuple(_circle((long - radius - away, below), radius) for away in (0.0, 2 * radius + 6.0))
    corners = ((0.0, 0.0), (long, 0.0), (long, high), (0.0, high))
    seam = ((corners[3], corners[0]), (corners[1], corners[2]))
    return RoundNet("cylinder", radius, high, corners, seam, (top, bottom), teeth, ends)


def cone(radius: float, high: float) -> RoundNet:
    """A party hat: a slice of a circle, its arc as long as its base is round, and the base below it."""
    slant = hypot(radius, high)
    whole = 2 * pi * radius / slant
    begin = pi / 2 + whole / 2

    def at(share: float) -> Point:
        """On the arc, from its left end (0) to its right one (1); the tip is at (0, 0)."""
        turn = begin - whole * share
        return slant * cos(turn), slant * sin(turn)

    arc = tuple(at(n / _STEPS) for n in range(_STEPS + 1))
    marks = [at(n / TEETH) for n in range(TEETH + 1)]
    # Going round clockwise the arc runs from right to left.
    teeth = tuple(tab(end, start, TOOTH, _TOOTH_LEAN) for start, end in pairwise(marks))
    tip = (0.0, 0.0)
    base = _circle((0.0, slant + TOOTH + 4.0 + radius), radius)
    return RoundNet(
        "cone", radius, high, (tip, *reversed(arc)), ((arc[0], tip), (tip, arc[-1])), (arc,), teeth, (base,)
    )


def _circle(middle: Point, radius: float) -> Points:
    turns = [2 * pi * n / _STEPS for n in range(_STEPS)]
    return tuple((middle[0] + radius * cos(turn), middle[1] + radius * sin(turn)) for turn in turns)


ROLLED = (cylinder(25.0, 60.0), cone(25.0, 60.0))
"""Those to roll up: as large as the ones to fold."""
