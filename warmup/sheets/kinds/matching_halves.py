"""Figures to cut out and fold: do the halves match?"""

from warmup.english import listed
from warmup.sheets.base import Day, Page, Sheet
from warmup.sheets.halves import MATCHING, MIXED, Folded, fold_across
from warmup.sheets.lines import Drawn, Line, Stroke, Words, closed
from warmup.sheets.paper import ROOM

FIGURE = (94.0, 69.0)
"""The room of a figure, two across and three down."""
_GAP = 4.0
_HOW = "Cut around. Ask first, then fold on the dots. Do the halves match?"


def pages(_day: Day) -> tuple[Page, ...]:
    """Six that match, then six of which some do."""
    matching = listed([folded.figure for folded in MIXED if folded.matches()])
    told = Words((ROOM.wide / 2, 3 * (FIGURE[1] + _GAP) + 9.0), f"Here these match: {matching}.", 3.2)
    return (
        Page("they all match", _drawn(MATCHING)),
        Page("some match, some don’t", (*_drawn(MIXED), told)),
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


SHEET = Sheet("Fold and match", "Cut a figure out and fold it: do the halves match?", pages)
