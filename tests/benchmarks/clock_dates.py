"""The whole suite on twenty dates of the clock, so that no test hangs on the day it is run.

Run ``python -m tests.benchmarks.clock_dates [NUMBER]``. It wants ``faketime`` (a Debian package), which
gives every process of a run another clock. Prints pytest's closing line for each date, and exits with 1 when
a run was not green. Late hours are among them: there the date differs between time zones.
"""

import argparse
import datetime as dt
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
FIRST = dt.datetime(2026, 9, 1, 0, 5)
_APART = dt.timedelta(days=20, hours=5, minutes=37)
_ALSO = (
    dt.datetime(2026, 12, 31, 23, 58),
    dt.datetime(2027, 1, 1, 0, 1),
    dt.datetime(2027, 3, 14, 2, 30),
    dt.datetime(2028, 2, 29, 12, 0),
)
"""The ends of a year, a morning on which clocks go forward, and a leap day."""


def moments(number: int) -> list[dt.datetime]:
    """``number`` moments over a year, those with a name among them when there is room."""
    also = _ALSO[: max(0, number - 1)]
    return sorted([*also, *(FIRST + n * _APART for n in range(number - len(also)))])


def run(moment: dt.datetime) -> tuple[bool, str]:
    """Whether the suite is green at this moment, and pytest's closing line."""
    done = subprocess.run(
        ["faketime", f"{moment:%Y-%m-%d %H:%M:%S}", sys.executable, "-m", "pytest", "-p", "no:cacheprovider"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    lines = [line for line in done.stdout.splitlines() if line.strip()]
    failed = [line for line in lines if line.startswith(("FAILED", "ERROR"))]
    return done.returncode == 0, " | ".join([*failed[:5], *lines[-1:]])


def main() -> int:
    """Run the suite at each moment."""
    parser = argparse.ArgumentParser(description="The whole suite on other dates of the clock.")
    parser.add_argument("number", type=int, nargs="?", default=20, help="how many dates (20)")
    number = parser.parse_args().number
    if shutil.which("faketime") is None:
        print("faketime is not installed: nothing was run.", file=sys.stderr)
        return 2
    green = 0
    for moment in moments(number):
        passed, said = run(moment)
        green += passed
        print(f"{moment:%a %Y-%m-%d %H:%M}  {'green' if passed else 'RED  '}  {said}", flush=True)
    print(f"{green} of {number} dates green")
    return 0 if green == number else 1


if __name__ == "__main__":
    sys.exit(main())
