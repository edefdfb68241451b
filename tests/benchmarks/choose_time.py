"""The time to choose one morning, after a year of marks and after ten.

``python -m tests.benchmarks.choose_time [RUNS]``. What is known is folded once and kept, and each morning is
folded on top, so that a long history should cost no more than a short one. Prints medians of runs taken in
turn, in milliseconds, ten years against one, and beside them a loop that tells how busy the machine is.
"""

import datetime as dt
import statistics
import sys
import tempfile
import time
from collections.abc import Callable, Mapping
from functools import partial
from pathlib import Path

from rich.console import Console
from rich.table import Table

from tests.benchmarks import _arguments
from tests.year_of_history import write_year
from warmup.config import family as families
from warmup.config.places import Places
from warmup.engine.eligibility import Eligible
from warmup.engine.engine import choose
from warmup.engine.memory import Knowledge, fold
from warmup.journal.journal import Journal
from warmup.model import Asked, Mark, Morning, Shape
from warmup.randomness import SeededRandom
from warmup.session.context import Context, open_context

TODAY = dt.date(2027, 5, 12)
"""A Wednesday; what day it is should not change the figures."""
WEEKS, YEARS = 35, 10
A_YEAR = dt.timedelta(weeks=52)
CHOOSE_MS, MOST = 10.0, 1.3
"""The target: so many milliseconds after a year, and so many times that after ten."""

Action = Callable[[], object]
Name = tuple[str, str]
LOOP: Name = ("loop", "")


def ten_years(context: Context, history: tuple[Asked, ...]) -> Knowledge:
    """What is known after the same year nine times over, each 52 weeks before the next, and then this one.

    The mornings of a year gone by count on from those of the year before it, so that time keeps its step.
    """
    plan, known = context.curriculum(), Knowledge()
    mornings = plan.year.mornings
    for back in range(YEARS - 1, -1, -1):
        shift = A_YEAR * back
        moved = tuple(date - shift for date in mornings)
        year = plan.year._replace(mornings=moved, before=plan.year.before - back * len(mornings))
        lines = [line._replace(date=line.date - shift) for line in history]
        known = fold(plan._replace(year=year), lines, known)
    return known


def one_more(context: Context, known: Knowledge) -> Action:
    """Folding today, whose marks are drawn, onto what is known."""
    context.know(known)
    rng = SeededRandom("one more")
    marks = [Mark.FLUENT, Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET]
    lines = [Asked(context.today, each.item, rng.pick(marks)) for each in context.routine().prompts]
    return partial(fold, context.curriculum(), lines, known)


def chosen(context: Context, eligible: Eligible, morning: Morning, shape: Shape) -> object:
    """The engine's choice."""
    child, count = context.child.journal_name, context.count(morning, shape)
    return choose(
        eligible, shape, context.knowledge(), morning, context.curriculum(), child=child, count=count
    )


def choosing(context: Context, known: Knowledge) -> Action:
    """Choosing among what is open today."""
    context.know(known)
    morning = context.morning()
    eligible, shape = context.eligible(morning), context.shape(morning)

    def act() -> object:
        context.know(known)
        return chosen(context, eligible, morning, shape)

    return act


def opening_and_choosing(context: Context, known: Knowledge) -> Action:
    """Finding out what is open today, and choosing among it."""
    morning = context.morning()
    shape = context.shape(morning)

    def act() -> object:
        context.know(known)
        return chosen(context, context.eligible(morning), morning, shape)

    return act


def count_up() -> int:
    """Something that always takes the same work: adding up the first hundred thousand numbers."""
    total = 0
    for number in range(100_000):
        total += number
    return total


def medians(actions: Mapping[Name, Action], runs: int) -> dict[Name, float]:
    """The median time of each in milliseconds; they take turns, forth and back,
    so that a slow second slows them alike.
    """
    times: dict[Name, list[float]] = {name: [] for name in actions}
    for run in range(runs + 1):
        for name, act in list(actions.items())[:: 1 if run % 2 else -1]:
            began = time.perf_counter()
            act()
            if run:  # The first is for warming up.
                times[name].append((time.perf_counter() - began) * 1000)
    return {name: statistics.median(found) for name, found in times.items()}


def main(runs: int = 30) -> int:
    """Measure and print; 1 when choosing misses its target."""
    console = Console()
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder)
        count = write_year(home, TODAY, WEEKS)
        journal = Journal.open(home, dt.datetime.now)
        places = Places(home, home)
        context = open_context(places, families.load(home / "family.toml"), TODAY, journal)
        year, ten = context.knowledge(), ten_years(context, context.history())
        morning = context.morning()
        console.print(
            f"{count} marks a year, {count * YEARS} in ten; "
            f"{len(context.eligible(morning).items)} items open "
            f"in week {morning.week}; medians of {runs}"
        )
        table = Table("", "one year, ms", "ten years, ms", "ratio")
        kinds = {
            "choose": choosing,
            "open items and choose": opening_and_choosing,
            "fold one more morning": one_more,
        }
        pasts = {"year": year, "ten": ten}
        actions = {
            (name, past): kinds[name](context, known) for name in kinds for past, known in pasts.items()
        }
        found = medians({**actions, LOOP: count_up}, runs)
        journal.shut()
    for name in kinds:
        one, more = found[name, "year"], found[name, "ten"]
        table.add_row(name, f"{one:.2f}", f"{more:.2f}", f"{more / one:.2f}")
    table.add_row("a loop to 100,000", f"{found[LOOP]:.2f}", "", "")
    console.print(table)
    met = found["choose", "year"] <= CHOOSE_MS and found["choose", "ten"] <= MOST * found["choose", "year"]
    target = f"at most {CHOOSE_MS:g} ms after a year, and {MOST:g} times that after ten"
    console.print(f"choose, {target}: {'met' if met else 'missed'}")
    return 0 if met else 1


if __name__ == "__main__":
    sys.exit(main(_arguments.number("choose_time", __doc__, "runs", 30)))
