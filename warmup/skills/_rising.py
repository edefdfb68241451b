"""How the numbers of a level rise with the weeks: small ones first, the whole range once it has been open.

At one step where there are few numbers (``risen``), and little by little where there are many (``grown``).
"""

from warmup.model import Morning

_WEEKS_TO_THE_TOP = 4


def risen(morning: Morning, opens: int, weeks: int = 2) -> bool:
    """Whether a level that opens in week ``opens`` has been open for ``weeks`` weeks.

    A level that a family opened early begins with its small numbers as well.
    """
    return morning.week >= opens + weeks


def grown(low: int, high: int, week: int, opens: int) -> int:
    """How high the numbers of a level go in a week of the year, between ``low`` and ``high``.

    A third of the way in the week it opens, and earlier for a family that is ahead; all the way four weeks
    later.
    """
    weeks = max(0, min(week - opens, _WEEKS_TO_THE_TOP))
    return low + (high - low) * (weeks + 2) // (_WEEKS_TO_THE_TOP + 2)
