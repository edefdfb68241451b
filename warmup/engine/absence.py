"""Coming back after days without a warm-up: for three mornings nothing is new, and more may be forgotten.

Planned mornings that became days off are no time to memory, since nothing was taught on them; a child at home
with a fever forgets all the same. Why there was none is never asked.
"""

from itertools import islice, pairwise
from typing import NamedTuple

from warmup.engine.curriculum import Curriculum
from warmup.engine.memory import Knowledge
from warmup.model import Morning

AWAY = 5
"""From so many school weekdays without a warm-up on a child was away."""
BACK_FOR = 3
"""So many mornings after that bring nothing new."""
_HABIT = 6
"""Away more than once in so many warm-ups: the family comes seldom, and nobody was away."""


class Absence(NamedTuple):
    """What a child comes back from: 0 school weekdays for none.

    What was last marked before ``since``, the index of the first morning back, rested for ``uncounted``
    mornings more than were planned.
    """

    days: int = 0
    since: int = 0
    uncounted: int = 0


NONE = Absence()


def absence(curriculum: Curriculum, knowledge: Knowledge, morning: Morning) -> Absence:
    """The absence of which this is one of the first mornings back; ``NONE`` on any other.

    After a few warm-ups there is too little to come back to.
    """
    year = curriculum.year
    before = (day.date for day in reversed(knowledge.days) if day.date < morning.date)
    dates = [morning.date, *islice(before, _HABIT)]
    if len(dates) <= _HABIT:
        return NONE
    found: list[tuple[int, Absence]] = []
    for back, (first, last) in enumerate(pairwise(dates)):
        days = year.weekdays_after(last, first)
        if days >= AWAY:
            since = year.index_of(first)
            planned = since - year.index_of(last) - 1
            found.append((back, Absence(days, since, max(0, days - planned))))
    if len(found) == 1 and found[0][0] < BACK_FOR:
        return found[0][1]
    return NONE
