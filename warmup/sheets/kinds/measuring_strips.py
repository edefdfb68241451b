"""Strips to measure with, in centimeters and in inches; and ribbons to measure in clips."""

from collections.abc import Sequence

from warmup.english import listed, number_word
from warmup.pictures.shapes import Point, Points
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Line, Stroke, Words, arc, frame, segment
from warmup.sheets.paper import ROOM
from warmup.sheets.strips import INCH, Tick, centimeters, inches

HIGH = 24.0
FLAP = 12.0
CLIP = (32.0, 16.0)
RIBBONS = (4, 6, 3, 5)
"""How many clips long the ribbons are."""
_JOIN = "Glue the second strip onto the end that says glue. Its edge lies on the thin line."


def pages(_day: Day) -> tuple[Page, ...]:
    """Two strips of centimeters that join, two of inches, and ribbons with clips."""
    strips = (
        (centimeters(0, 15), 150.0, "centimeters"),
        (centimeters(15, 30), 150.0, "centimeters"),
        (inches(0, 6), 6 * INCH, "inches"),
        (inches(6, 12), 6 * INCH, "inches"),
    )
    left = (ROOM.wide - 6 * INCH - FLAP) / 2
    drawn: list[Drawn] = []
    for number, (ticks, long, unit) in enumerate(strips):
        drawn += _strip(ticks, (left, number * (HIGH + 8)), long, unit, joins=number % 2 == 0)
    drawn.append(Words((ROOM.wide / 2, len(strips) * (HIGH + 8) + 4.0), _JOIN))
    return Page("centimeters and inches", tuple(drawn)), Page("ribbons and clips", tuple(_ribbons()))


def _strip(
    ticks: Sequence[Tick], corner: tuple[float, float], long: float, unit: str, *, joins: bool
) -> list[Drawn]:
    """A strip whose left edge is its first mark; one that joins has a flap to the right of its last."""
    left, top = corner
    drawn: list[Drawn] = [frame(left, top, long + FLAP * joins, HIGH, Line.CUT)]
    for tick in ticks:
        x = left + tick.at
        drawn.append(segment(x, top, x, top + HIGH * tick.share))
    # The last number of a strip that joins would be half covered: the next strip has it.
    for tick in ticks[:-1] if joins else ticks:
        if tick.number:
            inside = min(max(tick.at, 3.5), long - 3.5)
            drawn.append(Words((left + inside, top + 0.5 * HIGH + 3.5), tick.number, 4.4))
    drawn.append(Words((left + long / 2, top + HIGH - 3), unit, 3.4))
    if joins:
        drawn.append(segment(left + long, top, left + long, top + HIGH, Line.FAINT))
        drawn.append(Words((left + long + FLAP / 2, top + HIGH / 2), "glue", 3.4))
    return drawn


def _ribbons() -> list[Drawn]:
    """Ribbons, then as many clips as the longest takes, twice."""
    drawn: list[Drawn] = []
    long, high = CLIP
    left = (ROOM.wide - max(RIBBONS) * long) / 2
    for number, clips in enumerate(RIBBONS):
        drawn.append(frame(left, number * 24.0, clips * long, high, Line.CUT))
        middle = number * 24.0 + high / 2
        drawn.append(segment(left, middle, left + clips * long, middle, Line.FAINT))
    top, many = len(RIBBONS) * 24.0 + 6, max(RIBBONS)
    drawn.append(frame(left, top, many * long, 2 * high, Line.CUT))
    drawn.append(segment(left, top + high, left + many * long, top + high, Line.CUT))
    drawn += [
        segment(left + n * long, top, left + n * long, top + 2 * high, Line.CUT) for n in range(1, many)
    ]
    for row in (0, 1):
        for number in range(many):
            drawn.append(_clip(left + number * long, top + row * high))
    long_ones = listed([number_word(clips) for clips in RIBBONS], "and")
    drawn.append(
        Words((ROOM.wide / 2, top + 2 * high + 8.0), f"From the top they are {long_ones} clips long.")
    )
    return drawn


def _clip(left: float, top: float) -> Drawn:
    """A bent wire as long as its room: it runs round, and once more inside."""
    (long, high), bend = CLIP, 3.5
    middle = top + high / 2
    right_end, left_end = (left + long - bend, middle), (left + bend, middle)
    inner = (left + bend + 3, middle + 0.8)
    points = (
        (left + long - 10, middle - bend),
        *_bend(left_end, bend, 0.5),
        *_bend(right_end, bend, 0.0),
        *_bend(inner, 2.0, 0.5),
        (left + long - 9, middle + 2.8),
    )
    return Stroke(points)


def _bend(middle: Point, radius: float, begin: float) -> Points:
    """Half a turn against the clock, in twelve straight steps: it is looked at, not measured."""
    return arc(middle, radius, begin, begin + 0.5)[::-15]


SHEET = Sheet(
    "Measuring strips",
    "Centimeters, inches, and ribbons to measure with clips laid end to end.",
    pages,
    Use(("strips of paper",), ("lengths",)),
    small=True,
)
