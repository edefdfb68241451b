"""The child's window beside a morning: ``python -m tests.benchmarks.stage_lag [MINUTES]`` (5).

200 steps through prompts of every kind that has a picture, at two sizes: from the step, which is on disk when
it returns, to the last byte that the window paints (nothing comes for 40 ms after). The steps fall anywhere
between two looks. Then the share of one core that the window takes over so many minutes, with a step every
twenty seconds as at breakfast, and of a bare Textual app that only waits. One fsync is measured beside it.
"""

import datetime as dt
import os
import select
import statistics
import sys
import tempfile
import time
from pathlib import Path
from random import Random

from tests.benchmarks import _arguments
from tests.benchmarks.first_frame import BARE
from tests.benchmarks.key_time import QUIET, fsync_time
from tests.household import FAMILY
from tests.terminal import WARMUP, Terminal, environment
from warmup import skills
from warmup.config.family import save, year_of
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.journal.routine_json import routine_text
from warmup.model import Prompt, Routine
from warmup.randomness import SeededRandom
from warmup.session.context import open_context
from warmup.session.session import Session, begin

PROMPTS, BETWEEN = 200, 20
"""The steps whose lag is measured; the seconds between two steps of a morning at breakfast."""
SIZES = ((80, 24), (160, 45))


def with_pictures(today: dt.date, count: int) -> tuple[Prompt, ...]:
    """So many prompts, no two neighbors of which have the same picture."""
    morning = year_of(FAMILY).morning(today)
    found: list[Prompt] = []
    while len(found) < count:
        for item in sorted(skills.item_names()):
            if skills.askable(item, morning) and len(found) < count:
                prompt = skills.prompt(item, morning, SeededRandom("stage", item, len(found)))
                if prompt.picture and (not found or prompt.picture != found[-1].picture):
                    found.append(prompt._replace(do=""))
    return tuple(found)


def morning_in(home: Path, count: int) -> Session:
    """A session of so many such prompts, at its first."""
    today, places = dt.date.today(), Places(home, home)
    home.mkdir(exist_ok=True)
    save(home / "family.toml", FAMILY)
    journal = Journal.open(home, dt.datetime.now)
    context = open_context(places, FAMILY, today, journal)
    prompts = with_pictures(today, count)
    routine = Routine(context.child.journal_name, context.morning(), "daily", prompts)
    rows = [(prompt.item, prompt.wording) for prompt in prompts]
    journal.start(context.child.journal_name, today, "daily", routine_text(routine), rows)
    return begin(context, journal, dt.datetime.now)


def step(session: Session) -> None:
    """To the next prompt, and from the last one back."""
    session.next() if session.position < len(session.prompts) - 1 else session.back()


def drain(terminal: Terminal, seconds: float) -> float | None:
    """When the last byte came, once none has come for QUIET; None where none comes within ``seconds``."""
    last = None
    while True:
        ready, _, _ = select.select([terminal._fd], [], [], seconds if last is None else QUIET)
        if not ready:
            return last
        os.read(terminal._fd, 1 << 20)
        last = time.perf_counter()


def lags(home: Path, columns: int, rows: int) -> list[float]:
    """Seconds from each step to the last byte of the picture it brings."""
    session, rng, found = morning_in(home, PROMPTS), Random(1), list[float]()
    with Terminal([*WARMUP, "stage"], environment(home), columns, rows) as terminal:
        time.sleep(1)
        drain(terminal, 1)
        for _ in range(PROMPTS):
            time.sleep(rng.random() * 0.1)
            began = time.perf_counter()
            step(session)
            last = drain(terminal, 2)
            # Two pictures too large for this terminal are one quiet picture, and nothing new comes.
            if last is not None:
                found.append(last - began)
    session.journal.shut()
    return sorted(found)


def cpu_seconds(terminal: Terminal) -> float:
    """The processor time a program has taken, its own and the system's for it."""
    fields = Path(f"/proc/{terminal.pid}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def share(command: list[str], home: Path, seconds: float, session: Session | None = None) -> float:
    """The share of one core over so many seconds; a step every twenty where a session is given."""
    with Terminal(command, environment(home)) as terminal:
        time.sleep(1.5)
        drain(terminal, 0.5)
        began, used = time.perf_counter(), cpu_seconds(terminal)
        while time.perf_counter() < began + seconds:
            if session is not None:
                step(session)
            drain(terminal, 1)
            time.sleep(min(BETWEEN, seconds))
        return (cpu_seconds(terminal) - used) / (time.perf_counter() - began)


def main(minutes: int) -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder:
        for columns, rows in SIZES:
            found = lags(Path(folder, f"{columns}"), columns, rows)
            middle, late = statistics.median(found), found[int(len(found) * 0.95)]
            print(
                f"{columns:>5}x{rows}: {len(found)} steps seen of {PROMPTS}, median {middle * 1000:.0f} ms, "
                f"95 in 100 under {late * 1000:.0f} ms, the longest {found[-1] * 1000:.0f} ms"
            )
        print(f"   fsync median {fsync_time(Path(folder)) * 1000:.2f} ms")
        home = Path(folder, "cpu")
        session = morning_in(home, 8)
        stage = share([*WARMUP, "stage"], home, minutes * 60, session)
        bare = share([sys.executable, "-c", BARE], home, 30)
        print(f"  stage over {minutes} min: {stage:.2%} of a core; a bare app that waits: {bare:.2%}")


if __name__ == "__main__":
    main(_arguments.number("stage_lag", __doc__, "minutes", 5))
