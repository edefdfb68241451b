"""Circles and strips in equal shares: halves, thirds, fourths."""

from warmup.pictures.shapes import Point
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Line, Ring, Stroke, Words, frame, segment
from warmup.sheets.paper import ROOM
from warmup.sheets.shares import NAMES, SHARES, cuts_out, slice_middle

RADIUS = 46.0
STRIP = (180.0, 32.0)


def pages(_day: Day) -> tuple[Page, ...]:
    """Four circles, then four strips, each in its number of shares."""
    circles: list[Drawn] = []
    strips: list[Drawn] = []
    across, left = ROOM.wide / 2, (ROOM.wide - STRIP[0]) / 2
    for number, shares in enumerate(SHARES):
        middle = (across + (number % 2 * 2 - 1) * (RADIUS + 2), RADIUS + number // 2 * (2 * RADIUS + 8))
        circles += _circle(middle, shares)
        strips += _strip(left, number * (STRIP[1] + 8), shares)
    return Page("circles", tuple(circles)), Page("strips", tuple(strips))


def _circle(middle: Point, shares: int) -> list[Drawn]:
    cuts = [Stroke(points, Line.CUT) for points in cuts_out(middle, RADIUS, shares)]
    names = [Words(slice_middle(middle, RADIUS, shares, n), NAMES[shares], 4.5) for n in range(shares)]
    return [Ring(middle, RADIUS, Line.CUT), *cuts, *names]


def _strip(left: float, top: float, shares: int) -> list[Drawn]:
    wide, high = STRIP
    marks = [left + wide * n / shares for n in range(shares)]
    cuts = [segment(x, top, x, top + high, Line.CUT) for x in marks[1:]]
    names = [Words((x + wide / shares / 2, top + high / 2), NAMES[shares], 4.5) for x in marks]
    return [frame(left, top, wide, high, Line.CUT), *cuts, *names]


SHEET = Sheet(
    "Equal shares",
    "One whole, halves, thirds and fourths, to cut and lay on each other.",
    pages,
    Use(pictures=("shares",)),
)
