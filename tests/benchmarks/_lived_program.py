"""The real program at a laptop of one family: its folder, its mornings by keys, and its commands."""

import contextlib
import datetime as dt
import json
import re
import sqlite3
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Callable, Sequence
from contextlib import closing
from pathlib import Path
from typing import Any, NamedTuple

from tests.benchmarks._dated import MARK, PARTED
from tests.terminal import KEYS, Terminal, environment

DATED = (sys.executable, "-m", "tests.benchmarks._dated")
COLUMNS, ROWS, SCRIPT = 100, 30, 55
"""The terminal, and the column from which on the words for the adult stand."""
ROOM = COLUMNS - SCRIPT - 2
"""What a line of these words holds."""
_NOW = """
    SELECT position, routine FROM sittings WHERE child = ? AND date = ? ORDER BY sitting DESC LIMIT 1
"""
_ENTRY = re.compile(r"^\S.*?\S {2,}\S")
"""A line of the menu that can be chosen: a name, and what it does."""
ANSWERED = 3.0
"""For so many seconds a key is waited for; one that changes nothing on screen takes them all."""
_AT = re.compile(r"(\d+) of (\d+)\s*$", re.MULTILINE)
OPENING = "nothing is asked yet"
CLOSES = "That was today’s warm-up.", "Today’s warm-up is done.", "That was the last school day of the year:"


class Printed(NamedTuple):
    """What a command printed, and its exit code."""

    text: str
    code: int

    def data(self) -> Any:
        """It as JSON."""
        return json.loads(self.text)


class Now(NamedTuple):
    """Where the journal says a morning stands: the position, its prompt, and the whole routine."""

    position: int
    prompt: dict[str, Any]
    routine: dict[str, Any]


class Laptop:
    """A folder with one family's files, and the commands given there."""

    def __init__(self, home: Path) -> None:
        self.home = home
        home.mkdir(parents=True, exist_ok=True)

    @property
    def journal(self) -> Path:
        """The journal's file."""
        return self.home / "journal.db"

    def commands(self, moment: dt.datetime, *lines: Sequence[str]) -> list[Printed]:
        """Give these command lines one after the other; AssertionError where one ends badly."""
        words = [word for line in lines for word in (*line, PARTED)]
        done = subprocess.run(
            [*DATED, moment.isoformat(), *words],
            env=environment(self.home, COLUMNS="100"),
            capture_output=True,
            text=True,
            stdin=subprocess.DEVNULL,
        )
        texts = done.stdout.split(MARK)
        told = f"{lines} at {moment}: {done.stderr[-600:]}"
        assert not done.stderr and len(texts) == 2 * len(lines) + 1, told
        found = [Printed(text, int(code)) for text, code in zip(texts[::2], texts[1::2], strict=False)]
        assert not any(each.code for each in found), told
        return found

    def rows(self, question: str, *given: object) -> list[tuple[Any, ...]]:
        """Ask the journal by SQL, without the program."""
        with closing(sqlite3.connect(f"file:{self.journal}?mode=ro", uri=True)) as db:
            return db.execute(question, given).fetchall()

    def now(self, child: str, day: dt.date) -> Now | None:
        """Where a child's morning stands; None past its last prompt, or before it was begun."""
        rows = self.rows(_NOW, child, f"{day}")
        if not rows:
            return None
        position, routine = rows[0][0], json.loads(rows[0][1])
        prompts = routine["prompts"]
        return Now(position, prompts[position], routine) if position < len(prompts) else None


class Screen:
    """The program on a laptop's screen: typed at, waited for and read."""

    def __init__(self, laptop: Laptop, moment: dt.datetime, *words: str) -> None:
        self.laptop, self.day = laptop, moment.date()
        self.terminal = Terminal(
            (*DATED, moment.isoformat(), *words), environment(laptop.home), COLUMNS, ROWS
        )

    def __enter__(self) -> "Screen":
        return self

    def __exit__(self, *_: object) -> None:
        self.terminal.kill()

    def wait(self, until: Callable[[str], bool] | str) -> str:
        """Wait for a text, or for what satisfies a test."""
        return self.terminal.wait(until, 30.0)

    def press(self, *keys: str) -> None:
        """Press keys one after the other, each when the screen shows the one before and stands still."""
        for key in keys:
            before, end = len(self.terminal.written), time.perf_counter() + ANSWERED
            self.terminal.press(key)
            while len(self.terminal.written) == before and time.perf_counter() < end:
                if not self.terminal.read():
                    return
            self.settle()

    def settle(self, quiet: float = 0.02) -> str:
        """Read until nothing more comes for a moment."""
        while True:
            before = len(self.terminal.written)
            if not self.terminal.read(quiet) or len(self.terminal.written) == before:
                return self.terminal.text()

    def script(self) -> str:
        """The words on the adult's side, in one line."""
        lines = (line[SCRIPT:].strip() for line in self.terminal.screen.display)
        return " ".join(" ".join(lines).split())

    def at(self) -> tuple[int, int]:
        """The number of the prompt on screen and how many there are; zeros where there is none."""
        found = _AT.search("\n".join(self.terminal.text().splitlines()[:4]))
        return (int(found[1]), int(found[2])) if found else (0, 0)

    def closed(self) -> bool:
        """Whether the close is on screen."""
        script = self.script()
        return any(words in script for words in CLOSES)

    def bar(self) -> str:
        """The line under the cursor of a list: the one row on another ground."""
        grounds = [self.terminal.screen.buffer[row][8].bg for row in range(ROWS)]
        often = Counter(grounds)
        rows = [self.terminal.screen.display[row].strip() for row in range(ROWS) if often[grounds[row]] == 1]
        return rows[0] if len(rows) == 1 else ""

    def choose(self, label: str) -> None:
        """Open a page of the menu by its name: from the nearer end of the list, in one burst of keys."""
        self.press(".")
        lines = [line.strip() for line in self.wait("Menu").splitlines()]
        at = next((row for row, line in enumerate(lines) if line.startswith(label)), len(lines))
        end, step = ("\x1b[H", "down") if at < ROWS // 2 else ("\x1b[F", "up")
        self.terminal.press(end)
        self.settle()
        self.wait(lambda _text: bool(self.bar()) and (step == "down" or self.bar().startswith("quit")))
        rows = range(at) if step == "down" else range(at + 1, len(lines))
        self.press("".join(KEYS[step] for row in rows if _ENTRY.search(lines[row])))
        self._step_to(label)
        self.press("enter")

    def _step_to(self, label: str) -> None:
        """See the bar arrive on a line of the menu; where it stops elsewhere, go on from there."""
        for _ in range(ROWS):
            with contextlib.suppress(AssertionError):
                self.terminal.wait(lambda _text: self.bar().startswith(label), 1.0)
                return
            lines = [line.strip() for line in self.terminal.screen.display]
            there = next((row for row, line in enumerate(lines) if line.startswith(label)), ROWS)
            bar = self.bar()
            self.press("down" if bar and lines.index(bar) < there else "up")
        raise AssertionError(f"the menu has no {label!r}:\n{self.terminal.text()}")

    def back(self) -> str:
        """Leave a page for the one before."""
        self.press("\x7f")
        return self.settle()
