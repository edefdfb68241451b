"""The year in bars of plain signs: mornings by week, levels by month, hesitations by strand.

Solid and open blocks tell two counts apart without color, and each bar has its number beside it.
"""

from collections.abc import Iterator, Sequence
from itertools import dropwhile
from typing import NamedTuple

from warmup.english import MONTHS
from warmup.schoolyear import WEEKS_A_QUARTER
from warmup.session.known import Known, WeekHeld

_HEIGHTS = " ▁▂▃▄▅▆▇"
"""Never a whole row high: the bars of two quarters would touch."""
SOLID, OPEN = "█", "░"
_WIDE = 50
"""From so many columns on there is room for words beside the bars."""
_LONGEST = 36
"""No bar is longer, in columns."""


class Bars(NamedTuple):
    """One plot: what it shows, and its lines."""

    heading: str
    lines: tuple[str, ...]


def plots(known: Known, width: int) -> tuple[Bars, ...]:
    """The three of them, as far as there is something to show, for so many columns."""
    found = (
        Bars("Mornings with a warm-up, by week", tuple(_weeks(known.weeks, width))),
        Bars(f"Levels by month: {SOLID} settled {OPEN} met", tuple(_months(known, width))),
        Bars("How often there was hesitation, by part of math", tuple(_strands(known, width))),
    )
    return tuple(each for each in found if each.lines)


def _weeks(weeks: Sequence[WeekHeld], width: int) -> Iterator[str]:
    """A line a quarter: for each week a column as high as it had mornings, and how many."""
    most = max((week.held for week in weeks), default=0)
    if not most:
        return
    held = {week.week: week.held for week in weeks}
    gap = "  " if width >= _WIDE else " "
    for first in range(1, max(held) + 1, WEEKS_A_QUARTER):
        quarter = [held.get(week) for week in range(first, first + WEEKS_A_QUARTER)]
        columns = [f"{_HEIGHTS[-(-7 * count // most)]}{count}" for count in quarter if count is not None]
        if not columns:
            continue
        before = quarter.index(next(count for count in quarter if count is not None))
        last = first + before + len(columns) - 1
        named = f"weeks {first + before:>2} to {last:>2}" if width >= _WIDE else f"{first + before:>2}"
        yield f"{named}  {(' ' * 2 + gap) * before}{gap.join(columns)}"


def _months(known: Known, width: int) -> Iterator[str]:
    most = max((month.met for month in known.months), default=0)
    if not most:
        return
    digits = len(str(most))
    said = f" {'':{digits}} met, {'':{digits}} settled"
    room = max(4, min(_LONGEST, width - 4 - len(said)))
    # A child who began in the middle of a year has no months before.
    for month in dropwhile(lambda month: not month.met, known.months):
        met, settled = _long(month.met, most, room), _long(month.settled, most, room)
        bar = SOLID * settled + OPEN * (met - settled)
        counts = f"{month.met:>{digits}} met, {month.settled:>{digits}} settled"
        yield f"{MONTHS[month.first.month - 1][:3]} {bar:<{room}} {counts}"


def _strands(known: Known, width: int) -> Iterator[str]:
    """A line a strand: the whole bar is every time it was asked."""
    if not known.strands:
        return
    names = max(len(each.strand.value) for each in known.strands)
    digits = len(str(max(each.asked for each in known.strands)))
    said = f" {'':{digits}} of {'':{digits}} asked"
    room = max(4, min(_LONGEST, width - names - 1 - len(said)))
    for each in known.strands:
        solid = _long(each.hesitated, each.asked, room)
        counts = f"{each.hesitated:>{digits}} of {each.asked:>{digits}} asked"
        yield f"{each.strand.value:<{names}} {SOLID * solid}{OPEN * (room - solid)} {counts}"


def _long(count: int, most: int, room: int) -> int:
    """How long a bar is: in proportion, and never nothing where there is something."""
    return max(bool(count), round(room * count / most))
