"""Process start to painted prompt, with a year of history, against a bare Textual app beside it.

Run ``python -m tests.benchmarks.first_frame``. Prints medians of interleaved runs and their ratios; also
``warmup --help`` and ``warmup today --plain`` against a Python that imports rich, argparse and datetime.
"""

import datetime as dt
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from tests.benchmarks import _arguments
from tests.terminal import Terminal, environment
from tests.year_of_history import write_year

BARE = """
from textual.app import App
from textual.widgets import Static
class Bare(App):
    def compose(self):
        yield Static("painted")
Bare().run()
"""


def first_frame(command: list[str], home: Path, text: str) -> float:
    """Seconds from the start of the process until ``text``, at the foot of its frame, is written."""
    with Terminal(command, environment(home)) as terminal:
        return terminal.until(text.encode())


def begin_again(home: Path) -> None:
    """Take today's session out of the journal, so that the next start has to choose a morning."""
    with sqlite3.connect(home / "journal.db") as journal:
        for table in ("marks", "prompts", "sittings"):
            journal.execute(f"DELETE FROM {table} WHERE date = ?", (dt.date.today().isoformat(),))
    journal.close()


def run_time(command: list[str], home: Path) -> float:
    """Seconds a command takes from start to end."""
    began = time.perf_counter()
    subprocess.run(command, env=environment(home), stdout=subprocess.DEVNULL, check=True)
    return time.perf_counter() - began


def main(rounds: int = 20) -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder)
        marks = write_year(home, dt.date.today())
        print(f"history: {marks} marks")
        # The command the README tells to run.
        python, warmup = [sys.executable, "-c"], [str(Path(sys.executable).with_name("warmup"))]
        frames: dict[str, list[float]] = {"bare": [], "resumed": [], "new": []}
        base = [*python, "import rich.console, argparse, datetime"]
        runs: dict[str, list[float]] = {"base": [], "help": [], "plain": []}
        first_frame(warmup, home, "quit")
        for _ in range(rounds):
            frames["bare"].append(first_frame([*python, BARE], home, "painted"))
            frames["resumed"].append(first_frame(warmup, home, "quit"))
            begin_again(home)
            frames["new"].append(first_frame(warmup, home, "quit"))
            runs["base"].append(run_time(base, home))
            runs["help"].append(run_time([*warmup, "--help"], home))
            runs["plain"].append(run_time([*warmup, "today", "--plain"], home))
        for group in (frames, runs):
            middle = {name: statistics.median(times) for name, times in group.items()}
            first = next(iter(middle.values()))
            for name, seconds in middle.items():
                print(f"{name:>8} {seconds * 1000:7.1f} ms  {seconds / first:5.2f} times")


if __name__ == "__main__":
    main(_arguments.number("first_frame", __doc__, "runs", 20))
