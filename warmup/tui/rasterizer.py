"""The picture of a stage as PNG, rasterized by a process of its own (:mod:`warmup.tui.raster`)."""

import subprocess
import sys
from contextlib import suppress
from functools import partial
from pathlib import Path
from typing import NamedTuple

from warmup.pictures.svg import fitted
from warmup.tui.paint import color_of
from warmup.tui.panes import Painted
from warmup.tui.raster import LENGTH

_MOST = 1_500_000
"""The pixels of the largest raster, common practice, no source: a larger place gets it enlarged."""
_FAILURES = 3
"""So many processes that end by themselves, and no other is started."""


class Job(NamedTuple):
    """A picture at its place on a stage, and the pixels of one cell across and down."""

    painted: Painted
    cell: tuple[int, int]

    def svg(self) -> str:
        """What paper gets, in the colors of the stage's cells and as many pixels as these have."""
        painted = self.painted
        wide, high = painted.columns * self.cell[0], painted.rows * self.cell[1]
        less = min(1.0, (_MOST / (wide * high)) ** 0.5)
        sketch = painted.picture.sketch(painted.columns, painted.rows)
        return fitted(sketch, partial(color_of, look=painted.look), int(wide * less), int(high * less))


class Rasterizer:
    """One process, started at the first job and again after it was ended; one job at a time."""

    def __init__(self) -> None:
        self._process: subprocess.Popen[bytes] | None = None
        self._failures = 0

    def __call__(self, job: Job) -> bytes | None:
        """The PNG; None where there is none, or the process has gone."""
        if self._failures >= _FAILURES:
            return None
        process = self._process
        try:
            process = self._process = process or _started()
            return _answer(process, job.svg().encode())
        except Exception:
            # The cells show the picture already: whatever is wrong, they are enough.
            if process is self._process:
                self._failures += 1
                self.end()
            return None

    def end(self) -> None:
        """End the process; a job that waits for it gets None."""
        process, self._process = self._process, None
        if process is not None:
            process.kill()
            with process, suppress(OSError):
                # What was not sent yet finds nobody there.
                process.stdin and process.stdin.close()


def _started() -> subprocess.Popen[bytes]:
    # Nothing of the folder the program was started in is taken for a module.
    command = [sys.executable, "-P", str(Path(__file__).with_name("raster.py"))]
    pipe, null = subprocess.PIPE, subprocess.DEVNULL
    return subprocess.Popen(command, stdin=pipe, stdout=pipe, stderr=null, start_new_session=True)


def _answer(process: subprocess.Popen[bytes], document: bytes) -> bytes | None:
    assert process.stdin and process.stdout
    process.stdin.write(LENGTH.pack(len(document)) + document)
    process.stdin.flush()
    (length,) = LENGTH.unpack(process.stdout.read(LENGTH.size))
    return process.stdout.read(length) or None
