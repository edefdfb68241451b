"""Process start to painted prompt, with a year of history, against a bare Textual app beside it.

Prints medians of interleaved runs and their ratios; also ``warmup --help`` and ``warmup today --plain``
against a Python that imports rich, argparse and datetime. With ``--children`` the family has so many, each
with a year of history. With ``--against`` another checkout, which has its own ``.venv``, takes its turn in
the same runs, with a year of its own making.
"""

import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import NamedTuple

from tests.benchmarks import _arguments
from tests.terminal import Terminal, environment

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
FRAMES, RUNS = ("bare", "resumed", "new"), ("base", "help", "plain")


class Installed(NamedTuple):
    """A checkout, the Python of the virtual environment it is installed in, and the home of its family."""

    folder: Path
    python: Path
    home: Path

    def write_year(self, children: int, years: int) -> int:
        """Write years of history of so many children; gives the number of marks of one."""
        command = [str(self.python), "-c", WRITE_YEAR, str(self.home), str(children), str(years)]
        marks = int(subprocess.run(command, cwd=self.folder, capture_output=True, check=True).stdout)
        shutil.copytree(self.home, self._yesterday)
        return marks

    @property
    def _yesterday(self) -> Path:
        return self.home.with_name(f"{self.home.name}-yesterday")

    def begin_again(self) -> None:
        """Put everything as it was when the program ended yesterday: the next start chooses a morning."""
        shutil.rmtree(self.home)
        shutil.copytree(self._yesterday, self.home)

    def turn(self) -> dict[str, float]:
        """Seconds that each thing measured takes, once."""
        python, home = [str(self.python), "-c"], self.home
        # The command the README tells to run.
        warmup = [str(self.python.with_name("warmup"))]
        seconds = {
            "bare": first_frame([*python, BARE], home, "painted"),
            "resumed": first_frame(warmup, home, "undo"),
        }
        self.begin_again()
        return seconds | {
            "new": first_frame(warmup, home, "undo"),
            "base": run_time([*python, BASE], home),
            "help": run_time([*warmup, "--help"], home),
            "plain": run_time([*warmup, "today", "--plain"], home),
        }


def first_frame(command: list[str], home: Path, text: str) -> float:
    """Seconds from the start of the process until ``text``, at the foot of its frame, is written.

    The program is then ended by its own key, as on any morning; the bare app has none.
    """
    with Terminal(command, environment(home)) as terminal:
        seconds = terminal.until(text.encode())
        if text != "painted":
            terminal.press("8")
            terminal.finish()
        return seconds


def run_time(command: list[str], home: Path) -> float:
    """Seconds a command takes from start to end."""
    began = time.perf_counter()
    subprocess.run(command, env=environment(home), stdout=subprocess.DEVNULL, check=True)
    return time.perf_counter() - began


def report(turns: list[dict[str, float]]) -> None:
    """Print the medians, and what each is of the first of its group."""
    for group in (FRAMES, RUNS):
        middle = {name: statistics.median(turn[name] for turn in turns) for name in group}
        for name, seconds in middle.items():
            print(f"{name:>8} {seconds * 1000:7.1f} ms  {seconds / middle[group[0]]:5.2f} times")


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
        turns: list[list[dict[str, float]]] = [[] for _ in measured]
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
