"""What years and children cost: pages and printing commands with a journal that grew, over one that did not.

``python -m tests.benchmarks.grown [RUNS]`` makes a family of one child and one year, and one of six children
and ten years, and prints for every page of the menu, for the morning itself and for every command that
prints, how many times longer it takes in the second. It is the processor's time, the least of interleaved
runs, since other programs may be at work. ``check`` reads every row, and can only grow. ``--only`` names what
to measure: ``pages``, ``commands``, or words of one command.
"""

import asyncio
import datetime as dt
import json
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path

from tests.benchmarks import _arguments
from tests.terminal import environment
from tests.year_of_history import write_year
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.session.context import load_family, open_context
from warmup.tui.actions import ACTIONS
from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen
from warmup.tui.offering import PAGES

BOUND = 1.25
COMMANDS = (
    "today", "today --brief", "week", "ready", "year", "days", "why make-ten/seven-three", "past",
    "past {day}", "notes", "notes egg", "report", "report --form html", "report --form csv",
    "report --form json", "report --letter quarter", "report --letter year", "report --summer", "check",
)  # fmt: skip
Times = dict[str, float]


def commands(home: Path) -> Times:
    """The processor's seconds of each command."""
    journal, taken = Journal.open(home, dt.datetime.now, read_only=True), {}
    (day, *_) = journal.past("Pip", dt.date.today())
    journal.shut()
    for words in COMMANDS:
        command = [sys.executable, "-m", "warmup", *words.format(day=day).split()]
        process = subprocess.Popen(
            command, env=environment(home), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
        )
        _, status, used = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
        if process.returncode > 1:
            sys.exit(f"warmup {words}: exit code {process.returncode}")
        taken[words] = used.ru_utime + used.ru_stime
    return taken


def pages(home: Path) -> Times:
    """The same of each page, in a program of its own: each is opened a few times, and the least counts."""
    done = subprocess.run(
        [sys.executable, "-m", "tests.benchmarks.grown", "--pages-of", str(home)], capture_output=True
    )
    if done.returncode:
        sys.exit(done.stderr.decode())
    found: Times = json.loads(done.stdout)
    return found


def pages_of(home: Path) -> Times:
    """Open the morning, and on it each page of the menu that belongs there."""
    places, now = Places(home, home), dt.datetime.now
    family, _ = load_family(places, now().date())
    taken: Times = {}

    def timed(name: str, began: float) -> None:
        taken[name] = min(time.process_time() - began, taken.get(name, 60.0))

    async def live() -> None:
        for _ in range(3):
            began = time.process_time()
            journal = Journal.open(home, now)
            context = open_context(places, family, now().date(), journal, child="Pip")
            app = WarmupApp(context, journal, now)
            async with app.run_test(size=(80, 24)) as pilot:
                timed("the morning", began)
                screen = app.screen
                assert isinstance(screen, MorningScreen)
                screen.work.bounces.stops = lambda *_: False  # type: ignore[method-assign]
                for action in ("", "next"):
                    # First at the opening, then at a prompt.
                    if action:
                        screen.do(action)
                    there = [each.id for each in ACTIONS if each.id in PAGES and screen.belongs(each.id)]
                    for page in there * 3:
                        began = time.process_time()
                        screen.do(page)
                        await pilot.pause()
                        timed(f"page: {page}", began)
                        while app.screen is not screen:
                            app.pop_screen()
                        await pilot.pause()
            journal.shut()

    asyncio.run(live())
    return taken


def homes(folder: Path) -> Iterator[Path]:
    """The family of one child and year, then that of six and ten; of both a morning is begun."""
    for name, children, years in (("one", 1, 1), ("grown", 6, 10)):
        home = folder / name
        home.mkdir()
        marks = write_year(home, dt.date.today(), children=children, years=years)
        print(f"{children} of {years} years: a history of {marks} marks of the first")
        pages(home)
        yield home


def main(runs: int, only: str) -> None:
    """Measure both in turns, and print."""
    measures: list[Callable[[Path], Times]] = []
    if only != "pages":
        measures.append(commands)
    if only != "commands":
        measures.append(pages)
    with tempfile.TemporaryDirectory() as folder:
        both = [*homes(Path(folder))]
        least: list[Times] = [{}, {}]
        for _ in range(runs):
            for home, kept in zip(both, least, strict=True):
                for measure in measures:
                    for name, seconds in measure(home).items():
                        kept[name] = min(seconds, kept.get(name, 60.0))
    one, grown = least
    for name, seconds in one.items():
        if name not in grown:
            continue
        times = grown[name] / seconds
        over = "  OVER" if times > BOUND else ""
        print(f"{name:>26} {seconds * 1000:7.1f} ms {grown[name] * 1000:7.1f} ms {times:6.2f} times{over}")


if __name__ == "__main__":
    asked = _arguments.parser("grown", __doc__)
    asked.add_argument("runs", type=_arguments.positive, nargs="?", default=5, help="how many (5)")
    asked.add_argument("--only", choices=["pages", "commands"], default="", help="measure one of these alone")
    asked.add_argument("--pages-of", type=Path, help="used by the benchmark itself")
    given = asked.parse_args()
    if given.pages_of:
        print(json.dumps(pages_of(given.pages_of)))
    else:
        main(given.runs, given.only)
