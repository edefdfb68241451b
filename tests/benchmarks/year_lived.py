"""A school year lived by keys in the real program: ``python -m tests.benchmarks.year_lived [WEEKS] [SEED]``.

Three invented families (a quick child, whom another joins in January; an average one, whose two adults have
a laptop each and merge weekly; a wobbly one with a long stretch in bed), up to 36 weeks of four mornings
(36, 1). Each morning is a process of its own in a pseudo-terminal, with the clock passed in. Some mornings
are missed; settings are changed; sheets, reports and letters are made each quarter. At each week's end every
figure on the pages and in the commands is compared with a count made by plain SQL, ``calendar`` and
``datetime``.

Prints what was compared and how often, and each difference. Exit code 1 on a difference or a crash. With
``--keep FOLDER`` the families' files stay there, to be read.
"""

import contextlib
import datetime as dt
import sys
import tempfile
import time
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

from rich.console import Console
from rich.table import Table

from tests.benchmarks import _arguments
from tests.benchmarks._lived_checks import Evening
from tests.benchmarks._lived_compare import Compared
from tests.benchmarks._lived_house import House, Machine, houses
from tests.benchmarks._lived_jobs import Jobs
from tests.benchmarks._lived_morning import Lived
from tests.benchmarks._lived_program import Screen

_MOST = 40
"""So many of the differences are named."""


def live(house: House, weeks: int, compared: Compared) -> None:
    """Live a family's year, or its first weeks."""
    jobs = Jobs(house, compared)
    for day, machine in house.days():
        if house.truth.week(day) > weeks:
            break
        last = house.last_of_week(day)
        _morning(house, machine, day, jobs, compared, last=last)
        if last:
            _evening(house, day, jobs, compared)
    jobs.at_the_end()


def _morning(
    house: House, machine: Machine, day: dt.date, jobs: Jobs, compared: Compared, *, last: bool
) -> None:
    """The morning of each child, one after the other, in one window."""
    moment = dt.datetime.combine(day, dt.time(7, 40)) + dt.timedelta(minutes=int(40 * house.luck(day, "at")))
    with Screen(machine.laptop, moment) as screen:
        lived = Lived(house, machine, screen, compared)
        done = 0
        while done < len(house.children):
            lived.arrive()
            lived.opening()
            lived.prompts()
            lived.close()
            machine.held.add(day)
            compared.done["mornings"] += 1
            if last:
                Evening(house, machine, lived.child, day, compared, jobs.plain).pages(screen)
            done += 1
            if done == len(house.children):
                # Another child may join here, whose first morning comes right after.
                jobs.at_the_close(machine, screen, day, last=last)
            screen.press("enter" if done == len(house.children) else "right")
        jobs.after(day)
        compared.same("exit code", screen.terminal.finish(), 0, f"{house.name} {day}")


def _evening(house: House, day: dt.date, jobs: Jobs, compared: Compared) -> None:
    """The end of a week: two laptops are merged, and every figure is compared at each."""
    jobs.in_the_evening(day)
    for machine in house.machines:
        for child in house.children:
            if child.joined is None or child.joined <= day:
                evening = Evening(house, machine, child, day, compared, jobs.plain)
                evening.log()
                evening.commands()
    jobs.days_off_come_up()


def one(house: House, weeks: int) -> Compared:
    """Live one family's year; where it breaks off, that is a difference."""
    compared = Compared()
    try:
        live(house, weeks, compared)
    except (AssertionError, OSError) as error:
        compared.wrong.append(f"{house.name}: the year broke off: {error}")
    return compared


def run(folder: Path, weeks: int, seed: int) -> Compared:
    """Live the year of every family, side by side, with their files in ``folder``."""
    families = houses(folder, seed)
    with ProcessPoolExecutor(len(families)) as pool:
        lived = pool.map(one, families, [weeks] * len(families))
    return sum(lived, Compared())


def told(compared: Compared, seconds: float) -> int:
    """Print the table; the exit code."""
    console, table = Console(), Table("what was compared", "times")
    for what, times in sorted(compared.times.items()):
        table.add_row(what, str(times))
    console.print(table)
    done = ", ".join(f"{times} {what}" for what, times in sorted(compared.done.items()))
    console.print(f"{done}, {sum(compared.times.values())} comparisons in {seconds:.0f} s, "
                  f"{len(compared.wrong)} wrong")  # fmt: skip
    for each in compared.wrong[:_MOST]:
        console.print(each, markup=False)
    return 1 if compared.wrong else 0


@contextlib.contextmanager
def _folder(keep: Path | None) -> Iterator[Path]:
    if keep is not None:
        yield keep
        return
    with tempfile.TemporaryDirectory() as folder:
        yield Path(folder)


def main() -> int:
    """Take the command line, live the year and tell of it."""
    asked = _arguments.parser("year_lived", __doc__)
    asked.add_argument("weeks", type=_arguments.positive, nargs="?", default=36, help="how many (36)")
    asked.add_argument("seed", type=_arguments.positive, nargs="?", default=1, help="another seed (1)")
    asked.add_argument("--keep", type=Path, metavar="FOLDER", help="leave the families' files there")
    given = asked.parse_args()
    began = time.perf_counter()
    with _folder(given.keep) as folder:
        compared = run(folder, given.weeks, given.seed)
    return told(compared, time.perf_counter() - began)


if __name__ == "__main__":
    sys.exit(main())
