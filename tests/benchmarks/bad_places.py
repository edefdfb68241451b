"""Full disks, folders that take no writing and clocks that jump: ``python -m tests.benchmarks.bad_places``.

Every command that writes, and some that print, of a family that has every kind of file (``_everything``);
then a morning in the app. On a small file system that is full but for 0 to 128 KB, one mounted for reading
alone, in a closed folder, and by clocks from year 1 to 9999, each must do its work or refuse in one sentence,
and no mark that was kept may be lost; the app goes on, says that it can't save, and has saved all marks once
there is room. Needs root on Linux, to mount; LEFT OUT says what was not tried. Exit code 1 where something
fails.
"""

import asyncio
import contextlib
import datetime as dt
import gc
import os
import shutil
import subprocess
import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import NamedTuple

from tests.benchmarks import _arguments, _findings
from tests.benchmarks._everything import NOW, at_home, set_up
from tests.benchmarks._file_kinds import KINDS, READING, WRITING
from tests.benchmarks._privileges import obey_permissions
from tests.benchmarks._stays import marks_on_disk
from tests.benchmarks.mutated_files import Trial
from tests.household import StandingClock
from tests.tui.frame import frame
from tests.tui.settling import settle_by_the_loop
from warmup.cli.opening import opened
from warmup.config.places import Places
from warmup.config.toml_file import FileProblem
from warmup.journal.journal import Journal, JournalProblem
from warmup.session.words import ELSEWHERE
from warmup.text import CLOCK_YEARS
from warmup.tui.app import WarmupApp

SIZE = "4m"
LEFT = (0, 4, 16, 48, 128)
"""The room left on a full disk, in KB."""
MOMENTS = (
    *(dt.datetime(2025, 11, 25, 8), dt.datetime(2036, 11, 25, 8), dt.datetime(1970, 1, 1)),
    *(dt.datetime(2038, 1, 19, 3, 14, 8), dt.datetime(2040, 2, 29, 8), dt.datetime(2999, 12, 31, 23, 59)),
    *(dt.datetime(1, 1, 1), dt.datetime(9999, 12, 31, 23)),
)
"""What the clock may say after it was set wrong; the family's mornings are of November 2026."""
COMMANDS = (
    *WRITING, ("merge", "OTHER"), ("restore", "OTHERS"), ("import", "EXPORT"), ("report", "--out", "PAGE"),
    *READING[:12], ("check",),
)  # fmt: skip
KEYS, LATER = ("right", "up", "down", "n"), ("up", "down")
"""A morning's first keys, the opening and marks; and marks once there is room."""


class Bad(NamedTuple):
    """A bad place: what it is called, and how a folder is made into one, until it is left."""

    name: str
    made: Callable[[Path], contextlib.AbstractContextManager[None]]
    now: dt.datetime = NOW


@contextlib.contextmanager
def full(folder: Path, left: int) -> Iterator[None]:
    """Fill the disk the folder is on, but for so many KB."""
    filler = folder / "filler"
    with contextlib.suppress(OSError), filler.open("wb", buffering=0) as file:
        while True:
            file.write(bytes(1024))
    os.truncate(filler, max(0, filler.stat().st_size - left * 1024))
    try:
        yield
    finally:
        filler.unlink()


@contextlib.contextmanager
def read_only(folder: Path) -> Iterator[None]:
    """Let the disk the folder is on take no writing."""
    gc.collect()  # What an error left open to be written keeps the disk as it is.
    subprocess.run(["mount", "-o", "remount,ro", folder], check=True)
    try:
        yield
    finally:
        subprocess.run(["mount", "-o", "remount,rw", folder], check=True)


@contextlib.contextmanager
def closed(folder: Path, *, files: bool) -> Iterator[None]:
    """Let nothing be made in the family's folder, nor its ``files`` be written."""
    inside = [folder / "home", *(folder / "home").rglob("*")]
    modes = [(path, path.stat().st_mode) for path in inside if path.is_dir() or files]
    for path, mode in modes:
        path.chmod(mode & ~0o222)
    try:
        yield
    finally:
        for path, mode in modes:
            path.chmod(mode)


@contextlib.contextmanager
def as_it_is(_folder: Path) -> Iterator[None]:
    """Nothing is bad about the place."""
    yield


BAD = (
    *(Bad(f"full but for {left} KB", partial(full, left=left)) for left in LEFT),
    Bad("mounted for reading", read_only),
    Bad("a closed folder", partial(closed, files=False)),
    Bad("closed files", partial(closed, files=True)),
    *(Bad(f"clock at {moment:%Y-%m-%d}", as_it_is, moment) for moment in MOMENTS),
)  # fmt: skip


@contextlib.contextmanager
def small_disk(folder: Path) -> Iterator[None]:
    """A small file system in this folder."""
    subprocess.run(["mount", "-t", "tmpfs", "-o", f"size={SIZE}", "tmpfs", folder], check=True)
    try:
        yield
    finally:
        subprocess.run(["umount", "-l", folder], check=True)


def commands(whole: Path, disk: Path, bad: Bad, did: Counter[str]) -> Iterator[str]:
    """Give every command the family in this place; what is wrong with what it does."""
    for words in COMMANDS:
        folder = fresh(whole, disk)
        trial = Trial(folder, folder / "home" / "journal.db", bad.name, KINDS["the journal"], bad.now)
        # Reading the files before it must not fail for want of room.
        with bad.made(folder):
            trial.command(words)
        did.update(f"{bad.name}: {each.rpartition(' ')[2]}" for each in trial.did)
        yield from (f"{bad.name}: {each}" for each in trial.wrong)


def fresh(whole: Path, disk: Path) -> Path:
    """The family as it was set up, on the disk."""
    for path in disk.iterdir():
        shutil.rmtree(path) if path.is_dir() else path.unlink()
    shutil.copytree(whole, disk, dirs_exist_ok=True)
    return disk


def morning(whole: Path, disk: Path, bad: Bad) -> Iterator[str]:
    """Mark a morning in the app in this place, then once more where all is well; what is wrong with that."""
    home = fresh(whole, disk) / "home"
    before = marks_on_disk(home / "journal.db")
    try:
        with at_home(home, ""):
            yield from asyncio.run(_keyed(home, bad, disk))
    except (FileProblem, JournalProblem) as problem:
        if "\n" in str(problem) or not str(problem).endswith((".", "!")):
            yield f"no sentence: {problem}"
    except Exception as error:
        yield f"{type(error).__name__} {error} {error.__cause__ or ''}"[:300]
    after = marks_on_disk(home / "journal.db")
    if before.keys() - after.keys():
        yield "marks are gone"


async def _keyed(home: Path, bad: Bad, disk: Path) -> list[str]:
    # A clock that makes no sense opens no morning, and jumps within one.
    clock, wrong = StandingClock(bad.now if bad.now.year in CLOCK_YEARS else NOW), list[str]()
    with contextlib.ExitStack() as stack:
        place = stack.enter_context(contextlib.ExitStack())
        place.enter_context(bad.made(disk))
        context, journal, welcome = stack.enter_context(opened(Places(home, home), "Bean", clock))
        child, day = context.child.journal_name, context.today
        app = WarmupApp(context, journal, clock, (journal.notice,), welcome)
        async with app.run_test(size=(100, 30)) as pilot:
            made = 0
            for key in (*KEYS, "ROOM", *LATER):
                if key == "ROOM":
                    if not journal.saving and "Not being saved" not in " ".join(frame(app).split()):
                        wrong.append(f"it does not say that nothing is saved:\n{frame(app)}")
                    place.close()
                    clock.moment = bad.now
                    continue
                was = len(journal.actions_of(child, day))
                await pilot.press(key)
                await pilot.pause()
                made += len(journal.actions_of(child, day)) - was
                if ELSEWHERE in frame(app):
                    wrong.append(f"it says that somebody else wrote, at {key}")
            if not journal.saving:
                wrong.append("it does not save though there is room")
            if app.return_code is not None:
                wrong.append("the app ended")
        reads_on = bad.now == NOW or bad.now.year not in CLOCK_YEARS
        if reads_on and made < len(KEYS) - 1 + len(LATER):
            wrong.append(f"{made} marks were made")
    reread = Journal.open(home, clock, read_only=True)
    kept = sum(len(reread.marks_of(child, day, row.session)) for row in reread.sessions_of(child, day))
    if kept != made:
        wrong.append(f"{made} marks were made and {kept} kept")
    return wrong


def main() -> int:
    """Try every command and a morning in every bad place, and print what came of it."""
    obey_permissions()
    settle_by_the_loop(setattr)
    did, wrong = Counter[str](), list[str]()
    mounts = sys.platform == "linux" and os.geteuid() == 0
    with tempfile.TemporaryDirectory() as name, contextlib.ExitStack() as stack:
        whole, disk = Path(name, "whole"), Path(name, "disk")
        whole.mkdir()
        disk.mkdir()
        if mounts:
            stack.enter_context(small_disk(disk))
        # Its files name the folder for copies by its whole path.
        set_up(disk)
        shutil.copytree(disk, whole, dirs_exist_ok=True)
        for bad in BAD if mounts else BAD[len(LEFT) + 1 :]:
            wrong += commands(whole, disk, bad, did)
            wrong += [f"{bad.name}: the app: {each}" for each in morning(whole, disk, bad)]
    print(*wrong[20:], sep="\n", file=sys.stderr)
    if not mounts:
        print("LEFT OUT: only root on Linux can mount a small disk, so none was filled or made read-only")
    summary = f"{did.total()} commands in {len({each.partition(': ')[0] for each in did})} bad places"
    return _findings.told(("place: exit code", "commands"), did, summary, wrong)


if __name__ == "__main__":
    _arguments.parser("bad_places", __doc__).parse_args()
    sys.exit(main())
