"""Number lines to twenty and to thirty, in strips that are glued end to end."""

from collections.abc import Iterator

from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Line, Words, frame, segment
from warmup.sheets.paper import ROOM

STEP = 17.0
"""From one number to the next in millimeters: a toy's hop."""
HIGH, FLAP, _BEFORE = 34.0, 12.0, 8.0
TENS = 10


def _pages(_day: Day) -> Iterator[Page]:
    strips = [(first, last) for last in (20, 30) for first in range(0, last, TENS)]
    yield Page("", tuple(part for n, (first, last) in enumerate(strips) for part in strip(first, last, n)))


def strip(first: int, last: int, number: int) -> Iterator[Drawn]:
    """Ten steps of the line; but for the last strip a flap, over which the next one is glued."""
    ends = first + TENS == last
    before = _BEFORE if first == 0 else 0.0
    after = _BEFORE if ends else FLAP
    wide, top = before + TENS * STEP + after, number * (HIGH + 8)
    left = (ROOM.wide - (_BEFORE + TENS * STEP + FLAP)) / 2 + _BEFORE - before
    yield frame(left, top, wide, HIGH, Line.CUT)
    begin, line = left + before, top + 0.4 * HIGH
    yield segment(begin, line, begin + TENS * STEP, line)
    for n in range(TENS + 1):
        at = begin + n * STEP
        # The number on the flap is on the next strip, at its very edge.
        last_here = n == TENS and not ends
        yield segment(at, line - 3, at, line + 3, Line.FAINT if last_here else Line.DRAWN)
        if not last_here:
            # The first of a strip that is glued on stands a little inside its edge.
            inside = 5.0 if n == 0 and first else 0.0
            yield Words((at + inside, line + 10), str(first + n), 8.0)
    if not ends:
        yield Words((begin + TENS * STEP + FLAP / 2, top + HIGH - 4), "glue", 3.0)


SHEET = Sheet(
    "Number lines",
    "To hop along with a toy, to twenty and to thirty.",
    _pages,
    Use(("tape on the floor",), ("number-line",)),
)
