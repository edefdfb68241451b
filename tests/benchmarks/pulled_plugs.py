"""The plug pulled at any moment: ``python -m tests.benchmarks.pulled_plugs [COUNT] [SEED]`` (100, 1).

The real program runs under strace (Debian's package), which records its writes and syncs. The record is cut
``COUNT`` times at a seeded step, for a morning of keys and for every command that writes; what was not
synced by then is dropped or torn (``_plugs``). Each time the folder must open clean. The journal must be one
that was there at that step or since the last mark that was acknowledged, and any other file one that was
there at some step before. Once a command has ended all of it must be on the disk. Exit code 1 on loss.
"""

import datetime as dt
import os
import shutil
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Callable, Mapping, Sequence
from contextlib import closing
from pathlib import Path
from random import Random
from typing import NamedTuple

from tests.benchmarks import _arguments, _findings
from tests.benchmarks._plugs import CALLS, Disk, Step, steps
from tests.benchmarks.kills import past_the_opening, position
from tests.terminal import WARMUP, Terminal, environment
from warmup.cli.demo import demo_family, set_up
from warmup.cli.main import DONE
from warmup.config.places import Places
from warmup.journal.journal import Journal

MAY_BE_LOST = ("remembered/", "at-hand.json", "keeping.json")
"""What the guide says may be deleted at any time."""
_JOURNAL = "journal.db"
Files = Mapping[str, bytes]


class Scene(NamedTuple):
    """Something done with the program: its words, what is typed, or a journey of keys."""

    name: str
    words: Sequence[str] = ()
    typed: str = ""
    journey: Callable[[Terminal], list[float]] | None = None


class Recorded(NamedTuple):
    """What came of it: the folder before, each step, and when each mark was acknowledged."""

    before: Files
    steps: tuple[Step, ...]
    acknowledged: tuple[float, ...]


# -- recording


def read(folder: Path) -> dict[str, bytes]:
    """Every file below a folder."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def lay_out(files: Files, folder: Path) -> None:
    """Write the files into an empty folder."""
    shutil.rmtree(folder, ignore_errors=True)
    for path, data in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(data)


def record(scene: Scene, home: Path, trace: Path) -> Recorded:
    """Do it under strace, from the folder as it is."""
    before = read(home)
    strace = (
        "strace",
        "-f",
        "-y",
        "-ttt",
        "-xx",
        "-s",
        "100000000",
        "-o",
        str(trace),
        "-e",
        f"trace={CALLS}",
    )
    command = (*strace, *WARMUP, *(word.format(home=home) for word in scene.words))
    acknowledged: list[float] = []
    if scene.journey:
        with Terminal(command, environment(home)) as terminal:
            acknowledged = scene.journey(terminal)
            code = terminal.finish(30)
    else:
        ran = subprocess.run(
            command, input=scene.typed, env=environment(home), text=True, capture_output=True, check=False
        )
        code = ran.returncode
        if code:
            print(ran.stdout, ran.stderr)
    if code != DONE:
        raise SystemExit(f"{scene.name} ended with {code}")
    done = tuple(steps(trace.read_text("ascii"), home))
    if not done:
        raise SystemExit(f"{scene.name}: strace recorded nothing that was written")
    trace.unlink()
    return Recorded(before, done, tuple(acknowledged))


def key_a_morning(terminal: Terminal) -> list[float]:
    """Mark every prompt and end the program; when each mark was acknowledged by the prompt after it."""
    shown, acknowledged = past_the_opening(terminal), []
    while (at := position(shown)) != 99:
        terminal.press("up" if at % 2 else "s")
        shown = terminal.wait(lambda text, at=at: position(text) in (at + 1, 99), 60)  # type: ignore[misc]
        acknowledged.append(dt.datetime.now().timestamp())
    terminal.press("8")
    return acknowledged


# -- what there is


class State(NamedTuple):
    """A folder read: the rows of its journal, and every other file that may not be lost."""

    rows: tuple[tuple[str, ...], ...]
    files: Mapping[str, bytes]


def state(files: Files, folder: Path) -> tuple[State, list[str]]:
    """What is in a folder of these files once the program has opened it, and what is wrong with it."""
    lay_out(files, folder)
    wrong = []
    if _JOURNAL in files:
        journal = Journal.open(folder, dt.datetime.now)
        if journal.notice:
            wrong.append(journal.notice)
        journal.shut()
        wrong += Journal.examine(folder)
    # A copy of the journal may have been interrupted as well, and is put right when it is opened.
    kept = {
        path: repr(_rows(folder / path)).encode() if path.endswith(".db") else data
        for path, data in files.items()
        if path != _JOURNAL
        and not path.startswith(MAY_BE_LOST)
        and not any(part.startswith(".") for part in Path(path).parts)
        and not path.endswith((".bak", "-journal"))
    }
    return State(_rows(folder / _JOURNAL), kept), wrong


def _rows(journal: Path) -> tuple[tuple[str, ...], ...]:
    if not journal.exists():
        return ()
    with closing(sqlite3.connect(journal)) as base:
        tables = [name for (name,) in base.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        return tuple(
            (table, *map(repr, row))
            for table in sorted(tables)
            for row in base.execute(f"SELECT * FROM {table} ORDER BY 1, 2, 3, 4")
        )


# -- cutting


def cuts(scene: Scene, recorded: Recorded, count: int, rng: Random, folder: Path) -> list[str]:
    """Pull the plug ``count`` times; what is wrong."""
    all_steps, found = recorded.steps, list[str]()
    first, _ = state(recorded.before, folder)
    live, acknowledged = [first], [0]
    disk = Disk(recorded.before)
    for step in all_steps:
        disk.take(step)
        changed = step.call != "sync"
        live.append(state(disk.seen(), folder)[0] if changed else live[-1])
        acknowledged.append(sum(moment <= step.when for moment in recorded.acknowledged))
    last = live[-1]
    for n in range(count):
        at = len(all_steps) if n % 5 == 0 else rng.randrange(len(all_steps) + 1)
        disk = Disk(recorded.before)
        for step in all_steps[:at]:
            disk.take(step)
        ended = at == len(all_steps)
        files = disk.after_the_plug(rng)
        cut, wrong = state(files, folder)
        if ended:
            left = {**files, **disk.seen()}
            wrong += [
                f"{path} is not on the disk as it was left"
                for path in left
                if not path.startswith(MAY_BE_LOST) and files.get(path) != disk.seen().get(path)
            ]
        since = acknowledged.index(acknowledged[at]) if recorded.acknowledged else 0
        if cut.rows not in {each.rows for each in live[len(all_steps) if ended else since : at + 1]}:
            wrong.append(f"the journal is none that was there ({len(cut.rows)} rows)")
        for path in {*first.files, *last.files, *cut.files}:
            if cut.files.get(path) not in {each.files.get(path) for each in live[: at + 1]}:
                wrong.append(f"{path} is not as it was, nor as it is to be")
        found += [f"{scene.name}, step {at} of {len(all_steps)}: {each}" for each in wrong]
    return found


# -- the scenes


def prepare(home: Path, today: dt.date) -> None:
    """An invented family, a journal of another machine, and a calendar of days off."""
    home.mkdir(parents=True)
    set_up(Places(home, home), today)
    (home / "theirs").mkdir()
    shutil.copy(home / _JOURNAL, home / "theirs" / _JOURNAL)
    last = _past(today)
    done = dict(os.environ) | {"WARMUP_HOME": str(home / "theirs")}
    shutil.copy(home / "family.toml", home / "theirs" / "family.toml")
    words = (*WARMUP, "catch-up", last, "--marks", "nnnn", "--replace")
    subprocess.run(words, env=done, check=True, capture_output=True)
    event = "BEGIN:VEVENT\r\nUID:1\r\nDTSTAMP:20260801T000000Z\r\nSUMMARY:No school\r\n"
    day = today + dt.timedelta(7)
    event += f"DTSTART;VALUE=DATE:{day:%Y%m%d}\r\nEND:VEVENT\r\n"
    (home / "days.ics").write_text(
        f"BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//invented//EN\r\n{event}END:VCALENDAR\r\n", newline=""
    )


def _past(today: dt.date) -> str:
    family = demo_family(today)
    day = today - dt.timedelta(1)
    while day.weekday() not in family.weekdays:
        day -= dt.timedelta(1)
    return day.isoformat()


def scenes(today: dt.date) -> Sequence[Scene]:
    """What is done, one after the other, in one folder."""
    return (
        Scene("today --brief", ("today", "--brief")),
        Scene("a morning by keys", journey=key_a_morning),
        Scene("catch-up", ("catch-up", _past(today), "--marks", "wsnw", "--replace")),
        Scene("days --import", ("days", "--import", "{home}/days.ics", "--take", "all", "--plain")),
        Scene("copy", ("copy", "{home}/copy.db")),
        Scene("merge", ("merge", "{home}/theirs/journal.db")),
        Scene("restore", ("restore", "{home}/copy.db"), "yes\n"),
        Scene("report --out", ("report", "--form", "html", "--out", "{home}/report.html")),
        Scene("sheets --out", ("sheets", "all", "--out", "{home}/sheets.html")),
        Scene("export", ("export", "--all", "{home}/whole")),
        Scene("forget", ("forget", "Pip"), "\nPip\n"),
        Scene("import", ("import", "{home}/whole", "--with-forgotten")),
    )


def main(count: int = 100, seed: int = 1) -> int:
    """Record, cut, and print what was found."""
    if not shutil.which("strace"):
        print("It needs strace, Debian's package of that name.", file=sys.stderr)
        return 2
    done, found, today = dict[str, int](), list[str](), dt.date.today()
    with tempfile.TemporaryDirectory() as there:
        folder = Path(there).resolve()
        prepare(folder / "home", today)
        for scene in scenes(today):
            recorded = record(scene, folder / "home", folder / "trace")
            found += cuts(scene, recorded, count, Random(f"{seed}/{scene.name}"), folder / "cut")
            done[f"{scene.name} ({len(recorded.steps)} writes and syncs)"] = count
    total = sum(done.values())
    return _findings.told(("what was done", "plugs pulled"), done, f"{total} plugs pulled", found)


if __name__ == "__main__":
    sys.exit(main(*_arguments.count_and_seed("pulled_plugs", __doc__, "count", 100)))
