"""Every command that writes, killed: ``python -m tests.benchmarks.killed_commands [COUNT] [SEED]`` (50, 1).

Each command of ``pulled_plugs`` is killed COUNT times (SIGKILL) at a seeded moment of the time it takes. Then
the folder must open clean, the journal be one that was there before, at a step of the command, or after it,
and any other file likewise. The same command, done once more, must end well or say in a sentence what is not
as it expects. Exit code 1 where one of these does not hold.
"""

import datetime as dt
import hashlib
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path
from random import Random
from typing import NamedTuple

from tests.benchmarks import _arguments, _findings
from tests.benchmarks._plugs import Disk
from tests.benchmarks.pulled_plugs import (
    Files,
    Recorded,
    Scene,
    State,
    lay_out,
    prepare,
    read,
    record,
    scenes,
    state,
)
from tests.terminal import WARMUP, environment
from warmup.cli.main import DONE, UNUSABLE, USAGE

_MOMENT = re.compile(r"\d{4}-\d\d-\d\d[T ]\d\d:\d\d:\d\d(\.\d+)?")
_ID = re.compile(r"\b[0-9a-f]{16,}\b")


def kills(scene: Scene, recorded: Recorded, count: int, rng: Random, folder: Path) -> list[str]:
    """Kill the command ``count`` times; what is wrong."""
    seen, home, found = seen_in(recorded, folder / "cut"), folder / "killed", list[str]()
    lay_out(recorded.before, home)
    began = time.perf_counter()
    run(scene, home)
    takes = time.perf_counter() - began
    for n in range(count):
        lay_out(recorded.before, home)
        moment = takes * rng.uniform(0.2, 1.1)
        command = (*WARMUP, *(word.format(home=home) for word in scene.words))
        with subprocess.Popen(
            command,
            stdin=subprocess.PIPE,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            env=environment(home),
        ) as process:
            assert process.stdin is not None
            process.stdin.write(scene.typed.encode())
            process.stdin.flush()
            time.sleep(moment)
            process.kill()
        wrong = compared(read(home), seen, folder / "cut")
        code, said = run(scene, home)
        if code not in (DONE, USAGE, UNUSABLE) or "Traceback" in said:
            wrong.append(f"once more it ended with {code}: {said[-200:]}")
        found += [f"{scene.name}, kill {n} after {moment:.3f} s: {each}" for each in wrong]
    return found


class Seen(NamedTuple):
    """What was there at some moment, told by digests: of the journal's rows, and of each file by its path."""

    rows: set[str]
    files: dict[str, set[str]]


def seen_in(recorded: Recorded, folder: Path) -> Seen:
    """What the folder held before the command and after each of its steps."""
    disk, found = Disk(recorded.before), Seen(set(), {})
    for step in (None, *recorded.steps):
        if step is not None:
            disk.take(step)
        if step is None or step.call != "sync":
            now = digests(state(disk.seen(), folder)[0])
            # A file that was not there is told by the digest of nothing.
            for path in {*found.files, *now.files}:
                before = {timeless(None)} if found.rows else set[str]()
                found.files.setdefault(path, before).update(now.files.get(path, {timeless(None)}))
            found.rows.update(now.rows)
    return found


def digests(now: State) -> Seen:
    """The digests of one moment."""
    return Seen({timeless(now.rows)}, {path: {timeless(data)} for path, data in now.files.items()})


def compared(files: Files, seen: Seen, folder: Path) -> list[str]:
    """What is not as it was at any moment of the command."""
    left, wrong = state(files, folder)
    now = digests(left)
    if not now.rows <= seen.rows:
        wrong.append(f"the journal is none that was there ({len(left.rows)} rows)")
    return wrong + [
        f"{path} is not as it was, nor as it is to be"
        for path in sorted({*now.files, *seen.files})
        if not now.files.get(path, {timeless(None)}) <= seen.files.get(path, {timeless(None)})
    ]


def timeless(value: object) -> str:
    """A digest of a value without moments of the clock and random ids, by which rows lie in any order."""
    text = _ID.sub("id", _MOMENT.sub("moment", repr(value)))
    rows = sorted(text.strip("()").split("), ("))
    return hashlib.sha256("\n".join(rows).encode()).hexdigest()


def run(scene: Scene, home: Path) -> tuple[int, str]:
    """Do it to its end: its exit code, and what it complained of."""
    command = (*WARMUP, *(word.format(home=home) for word in scene.words))
    done = subprocess.run(
        command, input=scene.typed, env=environment(home), text=True, capture_output=True, check=False
    )
    return done.returncode, done.stderr


def main(count: int = 50, seed: int = 1) -> int:
    """Kill each command, and print what was found."""
    if not shutil.which("strace"):
        print("It needs strace, Debian's package of that name.", file=sys.stderr)
        return 2
    done, found, today = Counter[str](), list[str](), dt.date.today()
    with tempfile.TemporaryDirectory() as there:
        folder = Path(there).resolve()
        prepare(folder / "home", today)
        for scene in scenes(today):
            recorded = record(scene, folder / "home", folder / "trace")
            if not scene.journey:
                found += kills(scene, recorded, count, Random(f"{seed}/{scene.name}"), folder)
                done[scene.name] = count
    total = sum(done.values())
    return _findings.told(("command", "kills"), done, f"{total} kills", found)


if __name__ == "__main__":
    sys.exit(main(*_arguments.count_and_seed("killed_commands", __doc__, "count", 50)))
