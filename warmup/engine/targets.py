"""What a year's prompts are shared out over: by strand and quarter, and what comes how often.

The shares are our own, no source: the weight lies on number, and adding rises through the year.
"""

from collections.abc import Mapping
from typing import NamedTuple

from warmup.model import Item, Strand

SHARES: Mapping[str, tuple[float, ...]] = {
    #                       quarter 1, 2, 3, 4: percent of its prompts
    Strand.CALENDAR.value: (15.5, 12.5, 11.0, 10.0),
    Strand.COUNTING.value: (22.0, 18.5, 15.5, 15.0),
    Strand.NUMBER.value: (28.5, 22.0, 19.0, 16.0),
    Strand.ADDING.value: (10.0, 24.0, 28.5, 32.0),
    Strand.SHAPE.value: (12.5, 10.5, 9.0, 9.5),
    Strand.TIME_MONEY.value: (0.0, 4.0, 9.5, 10.0),
    Strand.MEASURING.value: (11.5, 8.5, 7.5, 7.5),
}
NUMBER_WORK = (Strand.COUNTING.value, Strand.NUMBER.value, Strand.ADDING.value)
NUMBER_SHARE = 61.0
"""The percent of the year's prompts, at least, that are number work: counting, number and adding."""
DAILY_ADDING_FROM = 12
"""From this week on every morning has something of adding."""


class Often(NamedTuple):
    """What comes on a set number of mornings: of a skill, of some of its levels, or of a code."""

    skill: str = ""
    levels: tuple[str, ...] = ()
    code: str = ""

    def holds(self, item: Item) -> bool:
        """Whether the item is one of these."""
        return item.skill == self.skill or item.level_id in self.levels or self.code in item.codes


WEEKLY = (
    Often("count-on"),
    Often(levels=("weekday:tomorrow", "weekday:yesterday", "weekday:around")),
    Often("coin-totals"),
    Often("make-ten"),
)
"""What comes at least once a week from the week it is open; calendar talk comes every morning."""
YEARLY = ((Often(code="K.OA.A.5"), 42), (Often("make-ten"), 42))
"""What comes so often in a year: the one aim of fluency in kindergarten, and the partners of ten."""
