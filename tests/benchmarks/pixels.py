"""True pixels: from a key to the last byte of the next picture, with them and without; or random keys.

    python -m tests.benchmarks.pixels [steps] [--keys N] [--seed N]

The steps (60) go through prompts of every kind that has a picture, half a second apart, at two sizes, in a
terminal that says it is kitty and has cells of 10 by 20 pixels; what comes within a fifth of a second after
the byte before belongs to the key. With ``--keys`` so many random keys are pressed instead, in a program
without a terminal: one placement at most, and that of the picture whose cells show, or none.
"""

import asyncio
import datetime as dt
import os
import select
import statistics
import tempfile
import time
from pathlib import Path
from random import Random

from tests.benchmarks import _arguments
from tests.benchmarks._stays import Stays
from tests.benchmarks.random_input import KEYS, OFTEN, SIZES
from tests.benchmarks.stage_lag import morning_in
from tests.household import TODAY, StandingClock, context_at
from tests.terminal import KEYS as NAMED
from tests.terminal import WARMUP, Terminal, environment
from tests.tui.showing import Shown

WITH = {"TERM": "xterm-kitty", "KITTY_WINDOW_ID": "1"}
AFTER, BETWEEN = 0.2, 0.3
PLACED = b"a=T,f=100"


def answered(terminal: Terminal, key: str) -> tuple[float, bool]:
    """Seconds from writing a key to the last byte of what it brings, and whether a picture came."""
    began = last = time.perf_counter()
    os.write(terminal._fd, NAMED[key].encode())
    seen = b""
    while True:
        ready, _, _ = select.select([terminal._fd], [], [], 1.0 if last == began else AFTER)
        if not ready:
            return last - began, PLACED in seen
        seen += os.read(terminal._fd, 1 << 20)
        last = time.perf_counter()


def measure(home: Path, steps: int, size: tuple[int, int], more: dict[str, str]) -> str:
    """What is told of so many steps through a morning."""
    session = morning_in(home, steps)
    session.journal.shut()
    with Terminal(WARMUP, environment(home, **more), *size, cell=(10, 20)) as terminal:
        terminal.until(b"undo")
        time.sleep(2)
        found = []
        for _ in range(steps - 1):
            answered_in, came = answered(terminal, "right")
            found.append((answered_in * 1000, came))
            time.sleep(BETWEEN)
    times = sorted(each for each, _ in found)
    late = times[int(len(times) * 0.95)]
    told = (
        f"median {statistics.median(times):5.1f} ms, 95 in 100 under {late:5.1f} ms, {times[-1]:5.1f} at most"
    )
    return f"{told}; {sum(came for _, came in found)} pictures in {len(found)} steps"


async def press(home: Path, day: dt.date, keys: int, chance: Random) -> int:
    """Press random keys on one day; gives how many pictures came."""
    clock = StandingClock(dt.datetime.combine(day, dt.time(8)))
    context = context_at(home, clock, today=day)
    assert context.journal is not None
    app = Stays(context, context.journal, clock)
    async with app.run_test(size=chance.choice(SIZES[1:])) as pilot:
        terminal = Shown(app)
        for number in range(keys):
            if chance.random() < 0.02:
                await pilot.resize_terminal(*chance.choice(SIZES))
            key = chance.choice(OFTEN if chance.random() < 0.6 else KEYS)
            await pilot.press(key)
            await terminal.settles(pilot)
            assert terminal.is_right(), f"after {number} keys, the last {key}, on {app.screen}"
            assert terminal.graphics.most <= 1
    assert not terminal.graphics.placements
    context.journal.shut()
    return terminal.graphics.came


def main(steps: int, keys: int, seed: int) -> None:
    """Measure, or press keys, and print."""
    with tempfile.TemporaryDirectory() as folder:
        if keys:
            chance, came = Random(seed), 0
            for number, begun in enumerate(range(0, keys, 250)):
                home = Path(folder, str(number))
                home.mkdir()
                came += asyncio.run(press(home, TODAY, min(250, keys - begun), chance))
            print(f"{keys} keys, {came} pictures: one at most, and none that does not belong")
            return
        for size in ((80, 24), (160, 45)):
            for name, more in (("without", {}), ("with", WITH)):
                told = measure(Path(folder, f"{name}{size[0]}"), steps, size, more)
                print(f"{size[0]:>4}x{size[1]} {name:>8}: {told}", flush=True)


if __name__ == "__main__":
    asked = _arguments.parser("pixels", __doc__)
    asked.add_argument("steps", type=_arguments.positive, nargs="?", default=60, help="how many (60)")
    asked.add_argument(
        "--keys", type=_arguments.positive, default=0, help="press so many random ones instead"
    )
    asked.add_argument("--seed", type=_arguments.positive, default=1, help="which ones (1)")
    given = asked.parse_args()
    main(given.steps, given.keys, given.seed)
