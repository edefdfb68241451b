"""The program on another date: ``python -m tests.benchmarks._dated MOMENT [WORDS ...]``, as ``warmup WORDS``.

MOMENT is a local date and time. The clock goes on from there at PACE times its speed: a morning of five
minutes is keyed in a quarter of one, and no key that an adult would have meant counts as a bounce. Several
command lines are parted by ``+``; each then ends with its exit code between two marks.
"""

import datetime as dt
import sys
import time
from collections.abc import Callable, Sequence
from itertools import groupby

from warmup.cli.main import main

PACE = 20
PARTED, MARK = "+", "\x1e"


def clock(moment: dt.datetime) -> Callable[[], dt.datetime]:
    """A clock that says this moment now."""
    began = time.monotonic()
    return lambda: moment + dt.timedelta(seconds=PACE * (time.monotonic() - began))


def run(words: Sequence[str]) -> int:
    """Run the command lines; the exit code of one alone, or the worst."""
    now = clock(dt.datetime.fromisoformat(words[0]))
    if PARTED not in words:
        return main(words[1:], now)
    codes = []
    for parting, line in groupby(words[1:], PARTED.__eq__):
        if not parting:
            codes.append(main(list(line), now))
            print(f"{MARK}{codes[-1]}{MARK}", end="", flush=True)
    return max(codes)


if __name__ == "__main__":
    sys.exit(run(sys.argv[1:]))
