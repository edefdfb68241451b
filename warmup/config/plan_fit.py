"""Which levels of a year plan do not fit their week: quiet and crowded weeks, and the order of levels."""

from collections import Counter
from collections.abc import Collection, Iterator, Mapping
from enum import Enum
from typing import NamedTuple

from warmup.model import LevelId, level_id
from warmup.schoolyear import WEEKS
from warmup.skills import SKILLS

A_WEEK, IN_WEEK_1 = 5, 6
"""How many levels may open in a week, and in the first (common practice, no source)."""


class Fault(Enum):
    """Why a level does not fit its week."""

    REVIEW = "a review week"
    NOTHING_NEW = "too late in the year for something new"
    CROWDED = "too many new levels"
    ORDER = "before what it stands on"


class Misfit(NamedTuple):
    """A level and why it does not fit its week.

    ``base`` and ``base_week`` say what it stands on, for ``ORDER``; ``opens`` how many open that week, for
    ``CROWDED``: there the level is the last of them.
    """

    level: LevelId
    week: int
    fault: Fault
    base: LevelId | None = None
    base_week: int = 0
    opens: int = 0


def most_in(week: int) -> int:
    """How many levels may open in this week."""
    return IN_WEEK_1 if week == 1 else A_WEEK


def misfits(weeks: Mapping[LevelId, int], reviews: Collection[int], last: int) -> Iterator[Misfit]:
    """Every level that does not fit. In ``reviews`` and from the week ``last`` on nothing opens."""
    for level, week in weeks.items():
        if week in reviews or week >= last:
            yield Misfit(level, week, Fault.REVIEW if week in reviews else Fault.NOTHING_NEW)
    for week, count in sorted(Counter(weeks.values()).items()):
        if count > most_in(week):
            yield Misfit(
                [name for name, at in weeks.items() if at == week][-1], week, Fault.CROWDED, opens=count
            )
    for name, base in standing():
        if weeks.get(base, 0) > weeks.get(name, WEEKS):
            yield Misfit(name, weeks[name], Fault.ORDER, base, weeks[base])


def standing() -> Iterator[tuple[LevelId, LevelId]]:
    """Every level with each one that it stands on."""
    for skill in SKILLS.values():
        for level in skill.levels:
            for base in level.stands_on:
                yield level_id(skill.id, level.key), LevelId(base)
