"""How the numbers of a level rise with the weeks: small ones first, the whole range once it has been open."""

from warmup.model import Morning


def risen(morning: Morning, opens: int, weeks: int = 2) -> bool:
    """Whether a level that opens in week ``opens`` has been open for ``weeks`` weeks.

    A level that a family opened early begins with its small numbers as well.
    """
    return morning.week >= opens + weeks
