"""Circles cut into equal shares from the middle out. In millimeters."""

from warmup.pictures.shapes import Point, Points
from warmup.sheets.lines import away

SHARES = (1, 2, 3, 4)
"""Into how many shares: a whole, halves, thirds, fourths (1.G.A.3 of the Common Core State Standards)."""
NAMES = {1: "one whole", 2: "one half", 3: "one third", 4: "one fourth"}


def slice_middle(middle: Point, radius: float, shares: int, number: int) -> Point:
    """Where a name has room on a slice: three fifths of the way out; in the middle of the whole."""
    if shares == 1:
        return middle
    return away(middle, 0.6 * radius, (number + 0.5) / shares)


def cuts_out(middle: Point, radius: float, shares: int) -> tuple[Points, ...]:
    """Lines from the middle out to where the shares meet."""
    if shares == 1:
        return ()
    return tuple((middle, away(middle, radius, n / shares)) for n in range(shares))
