"""Process start to painted prompt, with a year of history, against a bare Textual app beside it.

Prints medians of interleaved runs and their ratios, of the time that passed and, since other programs may be
at work, of the processor's; also ``warmup --help`` and ``warmup today --plain`` against a Python that imports
rich, argparse and datetime. A morning is new, goes on after a proper end, or after a kill. With
``--children`` the family has so many, each with a year of history. With ``--against`` another checkout, which
has its own ``.venv``, takes its turn in the same runs, with a year of its own making.
"""

import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from contextlib import closing
from pathlib import Path
from typing import NamedTuple

from tests.benchmarks import _arguments
from tests.terminal import Terminal, environment
from warmup.journal.schema import look_at

BARE = """
from textual.app import App
from textual.widgets import Static
class Bare(App):
    def compose(self):
        yield Static("painted")
Bare().run()
"""
BASE = "import rich.console, argparse, datetime"
WRITE_YEAR = """
import datetime, pathlib, sys
from tests.year_of_history import write_year
more = {name: int(number) for name, number in zip(("children", "years"), sys.argv[2:]) if number != "1"}
print(write_year(pathlib.Path(sys.argv[1]), datetime.date.today(), **more))
"""
FRAMES, RUNS = ("bare", "resumed", "killed", "new"), ("base", "help", "plain")


class Cost(NamedTuple):
    """Seconds: those that passed, and those of the processor."""

    passed: float
    cpu: float


class Installed(NamedTuple):
    """A checkout, the Python of the virtual environment it is installed in, and the home of its family."""

    folder: Path
    python: Path
    home: Path

    def write_year(self, children: int, years: int) -> int:
        """Write years of history of so many children; gives the number of marks of one."""
        command = [str(self.python), "-c", WRITE_YEAR, str(self.home), str(children), str(years)]
        marks = int(subprocess.run(command, cwd=self.folder, capture_output=True, check=True).stdout)
        self._keep("new")
        for name in ("resumed", "killed"):
            self._begin_again("new")
            self._live(name)
            self._keep(name)
        return marks

    @property
    def _warmup(self) -> list[str]:
        """The command the README tells to run."""
        return [str(self.python.with_name("warmup"))]

    def _live(self, name: str) -> None:
        """Begin today's morning, and end it by its own key or by a kill after a mark."""
        with Terminal(self._warmup, environment(self.home)) as terminal:
            terminal.wait("undo")
            if name == "killed":
                before = self._marks()
                terminal.press("right", "up")
                while self._marks() == before:
                    terminal.read()
                # What comes right after a write has its time too.
                terminal.read(0.3)
            else:
                terminal.press("8")
                terminal.finish()

    def _marks(self) -> int:
        with closing(look_at(self.home / "journal.db")) as journal:
            return int(journal.execute("SELECT count(*) FROM marks").fetchone()[0])

    def _keep(self, name: str) -> None:
        shutil.copytree(self.home, self.home.with_name(f"{self.home.name}-{name}"))

    def _begin_again(self, name: str) -> None:
        """Put everything as it was kept under this name."""
        shutil.rmtree(self.home)
        shutil.copytree(self.home.with_name(f"{self.home.name}-{name}"), self.home)

    def turn(self) -> dict[str, Cost]:
        """What each thing measured takes, once."""
        python, home, warmup = [str(self.python), "-c"], self.home, self._warmup
        taken = {"bare": first_frame([*python, BARE], home, "painted")}
        for name in ("resumed", "killed", "new"):
            self._begin_again(name)
            taken[name] = first_frame(warmup, home, "undo")
        self._begin_again("resumed")
        return taken | {
            "base": run_time([*python, BASE], home),
            "help": run_time([*warmup, "--help"], home),
            "plain": run_time([*warmup, "today", "--plain"], home),
        }


def first_frame(command: list[str], home: Path, text: str) -> Cost:
    """From a start until ``text``, at the foot of its frame, is written; it is killed then."""
    with Terminal(command, environment(home)) as terminal:
        passed = terminal.until(text.encode())
    return Cost(passed, terminal.cpu)


def run_time(command: list[str], home: Path) -> Cost:
    """What a command takes from start to end."""
    began = time.perf_counter()
    process = subprocess.Popen(command, env=environment(home), stdout=subprocess.DEVNULL)
    _, process.returncode, used = os.wait4(process.pid, 0)
    assert not process.returncode, command
    return Cost(time.perf_counter() - began, used.ru_utime + used.ru_stime)


def report(turns: list[dict[str, Cost]]) -> None:
    """Print the medians, and what each is of the first of its group."""
    for group in (FRAMES, RUNS):
        middle = {
            name: Cost(*map(statistics.median, zip(*(turn[name] for turn in turns), strict=True)))
            for name in group
        }
        first = middle[group[0]]
        for name, cost in middle.items():
            print(
                f"{name:>8} {cost.passed * 1000:7.1f} ms  {cost.passed / first.passed:5.2f} times"
                f"   cpu {cost.cpu * 1000:7.1f} ms  {cost.cpu / first.cpu:5.2f} times"
            )


def main(rounds: int, against: Path | None, children: int, years: int) -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder:
        measured = [Installed(Path(__file__).parents[2], Path(sys.executable), Path(folder, "this"))]
        if against:
            other = against.absolute()
            measured.append(Installed(other, other / ".venv/bin/python", Path(folder, "other")))
        for each in measured:
            each.home.mkdir()
            print(f"{each.folder}: a history of {each.write_year(children, years)} marks")
            each.turn()
        turns: list[list[dict[str, Cost]]] = [[] for _ in measured]
        for _ in range(rounds):
            for each, taken in zip(measured, turns, strict=True):
                taken.append(each.turn())
        for each, taken in zip(measured, turns, strict=True):
            print(each.folder)
            report(taken)


if __name__ == "__main__":
    asked = _arguments.parser("first_frame", __doc__)
    asked.add_argument("runs", type=_arguments.positive, nargs="?", default=20, help="how many (20)")
    asked.add_argument("--against", metavar="FOLDER", type=Path, help="a checkout to measure as well")
    asked.add_argument("--children", type=_arguments.positive, default=1, help="how many in the family (1)")
    asked.add_argument("--years", type=_arguments.positive, default=1, help="how many lie behind them (1)")
    given = asked.parse_args()
    main(given.runs, given.against, given.children, given.years)
