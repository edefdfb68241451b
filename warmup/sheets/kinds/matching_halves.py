"""Figures to cut out and fold: do the halves match?"""

from warmup.english import listed
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.halves import MATCHING, MIXED, Folded, fold_across, upright_half
from warmup.sheets.lines import Drawn, Line, Stroke, Words, closed
from warmup.sheets.paper import ROOM

FIGURE = (94.0, 69.0)
"""The room of a figure, two across and three down."""
_GAP = 4.0
_HALF = (80.0, 41.0)
"""The room of a figure on the page of halves."""
_ORDER = (3, 0, 4, 1, 2)
"""Which right half stands beside each left one: never its own."""
_HOW = "Cut around. Ask first, then fold on the dots. Do the halves match?"
_FIND = "Cut out the halves on the right. Which one finishes each shape?"


def pages(_day: Day) -> tuple[Page, ...]:
    """Six that match, six of which some do, and halves that have lost each other."""
    matching = listed([folded.figure for folded in MIXED if folded.matches()])
    told = Words((ROOM.wide / 2, 3 * (FIGURE[1] + _GAP) + 9.0), f"Here these match: {matching}.", 3.2)
    return (
        Page("they all match", _drawn(MATCHING)),
        Page("some match, some don’t", (*_drawn(MIXED), told)),
        Page("find the other half", tuple(_apart())),
    )


def _drawn(figures: tuple[Folded, ...]) -> tuple[Drawn, ...]:
    drawn: list[Drawn] = []
    wide, high = FIGURE
    for number, folded in enumerate(figures):
        middle = (
            ROOM.wide / 2 + (number % 2 - 0.5) * (wide + _GAP),
            high / 2 + number // 2 * (high + _GAP),
        )
        points = folded.points(middle, wide, high)
        drawn += [closed(points, Line.CUT), Stroke(fold_across(points, folded.line), Line.FOLD)]
    return (*drawn, Words((ROOM.wide / 2, 3 * (high + _GAP) + 4.0), _HOW))


def _apart() -> list[Drawn]:
    """Left halves in a column, and the right ones in another order, to cut out and lay against them."""
    upright = [folded for folded in MATCHING if folded.line == 90.0]
    wide, high = _HALF
    drawn: list[Drawn] = []
    for row, (here, other) in enumerate(zip(upright, (upright[n] for n in _ORDER), strict=True)):
        middle = high / 2 + row * (high + _GAP)
        left = here.points((ROOM.wide * 0.3, middle), wide, high)
        right = other.points((ROOM.wide * 0.65, middle), wide, high)
        drawn.append(closed(upright_half(left, right=False)))
        drawn.append(closed(upright_half(right, right=True), Line.CUT))
    return [*drawn, Words((ROOM.wide / 2, len(upright) * (high + _GAP) + 2.0), _FIND)]


SHEET = Sheet(
    "Fold and match",
    "Cut a figure out and fold it: do the halves match?",
    pages,
    Use(pictures=("fold", "half")),
    small=True,
)
