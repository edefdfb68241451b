"""The real program killed while marks are keyed: ``python -m tests.benchmarks.kills [COUNT]`` (200).

A mark is acknowledged once the next prompt is painted. After each kill (SIGKILL, at a seeded random moment)
the journal must open clean and hold every acknowledged mark, and the morning must come back where it
was left. This does not prove power cuts; ``synchronous=FULL`` is asserted for those in tests/edges.
Exit code 1 on loss.
"""

import datetime as dt
import sys
import tempfile
import time
from functools import partial
from pathlib import Path
from random import Random

from rich.console import Console
from rich.progress import track
from rich.table import Table

from tests.benchmarks import _arguments
from tests.terminal import WARMUP, Terminal, environment
from warmup.config import family as families
from warmup.config.family import Child, default
from warmup.journal.journal import Journal
from warmup.model import Mark

KEYS = {"up": Mark.FLUENT, "down": Mark.HESITATED, "n": Mark.NOT_YET}


def prepare(home: Path) -> None:
    """A family for whom today is a school day."""
    today = dt.date.today()
    family = default(today)
    home.mkdir(parents=True, exist_ok=True)
    extra = () if today.weekday() in family.weekdays else (today,)
    families.save(home / "family.toml", family._replace(extra=extra, children=(Child("Bean", reads=False),)))


def one_life(home: Path, rng: Random) -> dict[int, Mark]:
    """Start the program, key marks until it is killed; the acknowledged marks by position."""
    acknowledged: dict[int, Mark] = {}
    key = ""
    end = time.perf_counter() + 0.25 + rng.random() * 0.9
    with Terminal(WARMUP, environment(home)) as terminal:
        shown = past_the_opening(terminal)
        while time.perf_counter() < end and "without a mark" not in shown and "warm-up" not in shown:
            at = position(shown)
            # The same key again, as soon as the next prompt is painted, would be taken for a bounce.
            key = rng.choice([each for each in KEYS if each != key])
            terminal.press(key)
            if rng.random() < 0.25:
                # Killed with a key on its way: that mark may be there or not.
                time.sleep(rng.random() * 0.02)
                break
            shown = terminal.wait(partial(_went_on, at))
            acknowledged[at] = KEYS[key]
        terminal.kill()
    return acknowledged


def past_the_opening(terminal: Terminal) -> str:
    """The first screen with a prompt, or the close; what came before it is left by a key."""
    if "nothing is asked yet" in terminal.wait(
        lambda text: position(text) >= 0 or "nothing is asked yet" in text
    ):
        terminal.press("right")
    return terminal.wait(lambda text: position(text) >= 0)


def _went_on(at: int, text: str) -> bool:
    """Whether the prompt after ``at``, or the close, is on screen."""
    return position(text) in (at + 1, 99)


def position(text: str) -> int:
    """The prompt on screen, from 0; past the last one at the close."""
    if "That was today" in text or "is done" in text:
        return 99
    line = next((line for line in text.splitlines() if " of " in line and "[" in line), "")
    return int(line.split(" of ")[0].split()[-1]) - 1 if line else -1


def check(home: Path, marks: dict[int, Mark]) -> list[str]:
    """What is wrong with the journal after a kill."""
    journal = Journal.open(home, dt.datetime.now)
    child = families.load(home / "family.toml").children[0].journal_name
    wrong = [journal.notice] if journal.notice else []
    wrong += Journal.examine(home)
    sessions = journal.sessions_of(child, dt.date.today())
    if marks and not sessions:
        wrong.append("the session is gone")
    if sessions:
        kept = journal.marks_of(child, dt.date.today(), sessions[-1].session)
        wrong += [
            f"mark {at} is lost" for at, mark in marks.items() if at not in kept or kept[at].mark is not mark
        ]
        if marks and sessions[-1].position < max(marks) + 1:
            wrong.append("the morning went back")
    journal.shut()
    return wrong


def resumes(home: Path) -> list[str]:
    """Start it again and see that it stands where the journal says."""
    journal = Journal.open(home, dt.datetime.now)
    child = families.load(home / "family.toml").children[0].journal_name
    row = next(reversed(journal.sessions_of(child, dt.date.today())), None)
    journal.shut()
    with Terminal(WARMUP, environment(home)) as terminal:
        shown = past_the_opening(terminal)
        if row is None:
            return []
        last = shown.count("·") == 0 and position(shown) == 99
        return (
            []
            if position(shown) in (row.position, 99) or last
            else [f"resumed at {position(shown)}, not {row.position}"]
        )


def main(count: int = 200) -> int:
    """Kill and check; print the table."""
    console, rng = Console(), Random(20261125)
    lost: list[str] = []
    marked = 0
    with tempfile.TemporaryDirectory() as folder:
        number = 0
        marks: dict[int, Mark] = {}
        home = Path(folder) / "0"
        prepare(home)
        for n in track(range(count), "Killing", console=console):
            marks |= one_life(home, rng)
            marked += len(marks)
            wrong = check(home, marks) + (resumes(home) if n % 4 == 0 else [])
            lost += [f"kill {n}: {each}" for each in wrong]
            if len(marks) >= 5:
                number, marks = number + 1, {}
                home = Path(folder) / str(number)
                prepare(home)
    table = Table("kills", "marks checked", "lost or broken")
    table.add_row(str(count), str(marked), str(len(lost)))
    console.print(table)
    for each in lost[:20]:
        console.print(each, markup=False)
    return 1 if lost else 0


if __name__ == "__main__":
    sys.exit(main(_arguments.number("kills", __doc__, "count", 200)))
