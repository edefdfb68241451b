"""From a key to the next prompt wholly painted: ``python -m tests.benchmarks.key_time [MORNINGS]``.

At 80x24 and at 160x45, with a year of history. The last byte of a frame is the one after which nothing
comes for 40 ms. One fsync is measured beside it, in the same folder, and a bare app that repaints one
line at a key.
"""

import datetime as dt
import os
import select
import sqlite3
import statistics
import sys
import tempfile
import time
from pathlib import Path

from tests.benchmarks import _arguments
from tests.terminal import KEYS, WARMUP, Terminal, environment
from tests.year_of_history import write_year

BARE = """
from textual.app import App
from textual.widgets import Static
class Bare(App):
    count = 0
    def compose(self):
        yield Static("0", id="only")
    def on_key(self):
        self.count += 1
        self.query_one("#only").update(str(self.count))
Bare().run()
"""
QUIET = 0.04
MARKS = ("up", "down", "n", "up", "down", "up", "right")


def begin_again(home: Path) -> None:
    """Take today's session out of the journal, so that the next start has to choose a morning."""
    with sqlite3.connect(home / "journal.db") as journal:
        for table in ("marks", "prompts", "sittings"):
            journal.execute(f"DELETE FROM {table} WHERE date = ?", (dt.date.today().isoformat(),))
    journal.close()


def answered(terminal: Terminal, key: str) -> float:
    """Seconds from writing a key to the last byte of what it brings."""
    began = last = time.perf_counter()
    os.write(terminal._fd, KEYS.get(key, key).encode())
    while True:
        ready, _, _ = select.select([terminal._fd], [], [], 1.0 if last == began else QUIET)
        if not ready:
            return last - began
        os.read(terminal._fd, 1 << 20)
        last = time.perf_counter()


def fsync_time(home: Path, count: int = 50) -> float:
    """Seconds of one fsync of a page, the median of several."""
    times = []
    with (home / "fsync").open("wb") as file:
        for _ in range(count):
            file.write(b"x" * 4096)
            began = time.perf_counter()
            file.flush()
            os.fsync(file.fileno())
            times.append(time.perf_counter() - began)
    return statistics.median(times)


def main(mornings: int = 6) -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder)
        write_year(home, dt.date.today())
        for size in ((80, 24), (160, 45)):
            times: list[float] = []
            bare: list[float] = []
            for _ in range(mornings):
                begin_again(home)
                with Terminal(WARMUP, environment(home), *size) as terminal:
                    terminal.until(b"undo")
                    time.sleep(0.3)
                    # From the opening to the first prompt.
                    answered(terminal, "right")
                    times += [
                        answered(terminal, key) for key in ("up", "down", "n", "up", "down", "up", "right")
                    ]
                with Terminal([sys.executable, "-c", BARE], environment(home), *size) as terminal:
                    terminal.until(b"0")
                    time.sleep(0.3)
                    bare += [answered(terminal, "x") for _ in range(7)]
            for name, found in (("bare", bare), ("warmup", times)):
                found.sort()
                middle, late = statistics.median(found), found[int(len(found) * 0.95)]
                told = f"median {middle * 1000:5.1f} ms, 95 in 100 under {late * 1000:5.1f} ms"
                print(f"{size[0]:>4}x{size[1]} {name:>8} {told}")
        print(f"   fsync median {fsync_time(home) * 1000:5.2f} ms")


if __name__ == "__main__":
    main(_arguments.number("key_time", __doc__, "mornings", 6))
