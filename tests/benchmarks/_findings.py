"""How a campaign ends: a table of what was done, a line that sums it up, and what was wrong."""

from collections.abc import Mapping, Sequence

from rich.console import Console
from rich.table import Table

_MOST = 20
"""So many of the things that were wrong are named."""


def told(columns: tuple[str, str], done: Mapping[str, int], summary: str, found: Sequence[str]) -> int:
    """Print it: how often each thing was ``done``, and ``summary`` with the number ``found`` wrong.

    Gives the exit code, 1 where anything was wrong.
    """
    console, table = Console(), Table(*columns)
    for name, times in sorted(done.items()):
        table.add_row(name, str(times))
    console.print(table)
    console.print(f"{summary}, {len(found)} wrong")
    for each in found[:_MOST]:
        console.print(each, markup=False)
    return 1 if found else 0
