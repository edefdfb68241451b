"""Mutated files of every kind the program reads: ``python -m tests.benchmarks.mutated_files [COUNT] [SEED]``.

A family that has all of them (``_everything``) gets one of COUNT files (10,000) with faults such as editors,
mails, disks and people make (``_faults``), or something else in the place of a file. Commands that read it
must take it or refuse it in one sentence that names the file and, in text, the line or the key; with no
traceback, nothing that a terminal obeys, within 2 seconds of the processor and 1 GB. What prints changes no
file; what writes leaves the mutated file as it was, in its place or set aside, and loses no mark that could
be read. A share of the files is opened on the screen. Exit code 1 where one of these fails.
"""

import asyncio
import contextlib
import datetime as dt
import os
import resource
import shutil
import signal
import stat
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator, Mapping
from pathlib import Path
from random import Random
from types import FrameType
from typing import NamedTuple

from tests.benchmarks import _arguments, _faults, _findings
from tests.benchmarks._everything import NOW, Ran, at_home, run, set_up
from tests.benchmarks._file_kinds import KINDS, READING, WRITING, Kind, Words
from tests.benchmarks._privileges import obey_permissions
from tests.household import StandingClock
from tests.tui.frame import frame
from tests.tui.settling import settle_by_the_loop
from warmup.cli.main import DONE, UNUSABLE, USAGE, WRONG
from warmup.cli.opening import opened
from warmup.config.places import Places
from warmup.config.toml_file import FileProblem
from warmup.journal import schema
from warmup.journal.journal import JournalProblem
from warmup.journal.watching import Watch
from warmup.tui.app import WarmupApp

SECONDS, MEMORY, HANGS = 2, 1 << 30, 20
"""What a command may take of the processor and of memory; after how long on the clock it is said to hang."""
LONGEST = 700
"""The longest sentence, in characters."""
_SHOWN = 50
"""One file in so many is opened on the screen as well."""
_MARKED = (
    "SELECT p.child, p.date, p.item FROM prompts p JOIN marks USING (child, date, sitting, position) "
    "WHERE mark IN ('fluent', 'hesitated', 'not_yet', 'skipped') AND cue IN (0, 1, 2, 3) "
    "AND at GLOB '20[0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9]*[0-9]+00:00' "
    "AND length(at) = 32 "
    "AND typeof(item) = 'text' AND item NOT GLOB '*[^a-z0-9/-]*' AND length(item) < 60 "
    "AND p.child IN ('Pip', 'Pip1') AND p.date GLOB '202[0-9]-[01][0-9]-[0-3][0-9]' AND p.sitting IN (1, 2)"
)
"""The marks of a journal that make sense: a damaged one may hold others."""
_LOOKED_AT = 1_000_000
"""What is compared of a file, in bytes: some are all holes."""


class Hangs(BaseException):
    """A command that does not end."""


class Outcome(NamedTuple):
    """What became of one mutated file: what each command did, and what is wrong with that."""

    did: tuple[str, ...]
    wrong: tuple[str, ...]


def outcome(whole: Path, folder: Path, kind: str, seed: int) -> Outcome:
    """Copy the family with everything into ``folder``, put faults into one file, and give it to commands."""
    about, luck = KINDS[kind], Random(f"{kind} {seed}")
    shutil.copytree(whole, folder, symlinks=True)
    family = folder / "home" / "family.toml"
    family.write_text(family.read_text("utf-8").replace(str(whole), str(folder)), "utf-8")
    if kind == "year.toml, whole":
        shutil.copyfile(folder / "whole-year.toml", folder / "home" / "year.toml")
    path = _chosen(folder, about, luck)
    fault = mutate(path, kind, luck)
    trial = Trial(folder, path, fault, about)
    for words in _commands(about, luck):
        trial.command(words)
    if about.own and seed % _SHOWN == 0:
        trial.on_screen(luck)
    for each in (folder / "home", path):
        with contextlib.suppress(OSError):
            each.chmod(0o700)
    return Outcome(tuple(trial.did), tuple(f"{each} [{path.name}: {fault}]" for each in trial.wrong))


def _chosen(folder: Path, about: Kind, luck: Random) -> Path:
    """One of the files of a kind; one that is not there yet is made."""
    path = folder / luck.choice(about.paths)
    if "*" in path.name:
        path = luck.choice(sorted(path.parent.glob(path.name)))
    if not path.exists():
        path.parent.mkdir(exist_ok=True)
        path.write_bytes((folder / "home" / "journal.db").read_bytes() if path.suffix != ".json" else b"[1]")
    return path


def mutate(path: Path, kind: str, luck: Random) -> str:
    """Put faults into a file, or something else in its place; gives what."""
    if path.is_dir() or luck.random() < 0.12:
        return _faults.place(path, luck).value
    if path.suffix == ".db":
        _faults.journal(path, luck)
        return "a journal’s"
    path.write_bytes(_faults.text(path.read_bytes(), luck))
    return "in the text"


def _commands(about: Kind, luck: Random) -> Iterator[Words]:
    yield from about.first
    if about.own:
        yield luck.choice(READING)
        if luck.random() < 0.4:
            yield luck.choice(WRITING)


class Trial:
    """One mutated file, and what the program makes of it."""

    def __init__(self, folder: Path, path: Path, fault: str, about: Kind, now: dt.datetime = NOW) -> None:
        self._folder, self._path, self._fault, self._about, self._now = folder, path, fault, about, now
        self._home = folder / "home"
        self._mutated = _content(path)
        self.did, self.wrong = list[str](), list[str]()

    def command(self, words: Words) -> None:
        """Run a command, and look at what it says and does."""
        before, marks, began = contents(self._folder), self._marks(), time.process_time()
        name = " ".join(words) or "warmup"
        try:
            with _time_is_up(), contextlib.chdir(self._folder):
                ran = run(self._home, *self._filled(words), typed=_typed(words), now=self._now)
        except Hangs:
            self.wrong.append(f"{name}: hangs")
            return
        except Exception as error:
            self.wrong.append(f"{name}: {type(error).__name__} {error}"[:300])
            return
        took = time.process_time() - began
        self.did.append(f"{words[0] if words else 'warmup'} {ran.code}")
        found = [f"took {took:.1f} s"] if took > SECONDS else []
        found += [*self._said(ran, words), *self._files(ran, words, before, marks)]
        self.wrong += [f"{name}: {each}" for each in found]

    def _filled(self, words: Words) -> list[str]:
        folder = self._folder
        names = {
            "FILE": self._path, "EXPORT": folder / "export", "COPIES": folder / "copies" / "by-hand.db",
            "OTHER": folder / "other", "OTHERS": folder / "other" / "journal.db", "OUT": folder / "out",
            "PAGE": folder / "page.html", "GOOD": folder / "days.ics",
        }  # fmt: skip
        return [str(names.get(word, word)) for word in words]

    def _said(self, ran: Ran, words: Words) -> Iterator[str]:
        """What is wrong with what it said."""
        lines = ran.err.splitlines()
        if ran.code not in {DONE, UNUSABLE, USAGE, *([WRONG] * (words[:1] == ("check",)))}:
            yield f"exit code {ran.code}: {lines}"
        if not all(line.startswith("warmup: ") for line in lines):
            yield f"more than sentences: {lines}"
        for line in (ran.out + "\n" + ran.err).splitlines():
            if not line.isprintable():
                yield f"what a terminal obeys: {line!r}"
        if max(map(len, lines), default=0) > LONGEST:
            yield f"a long sentence: {max(lines, key=len)[:200]}"
        if ran.code == UNUSABLE:
            yield from self._sentence(lines[-1] if lines else "")

    def _sentence(self, line: str) -> Iterator[str]:
        """What is wrong with the sentence that refuses: it names a file, and where in a text."""
        names = {
            str(self._folder),
            self._path.name,
            self._path.parent.name,
            "WARMUP_HOME",
            "clock:",
            "family.toml",
            "journal.db",
        }
        if self._fault != "in the text" and self._path.name in ("home", "settings"):
            # Of a folder that may not be read, the file is named that was wanted.
            names |= {"own.toml", "year.toml", "daily.toml"}
        if not any(name in line for name in names):
            yield f"no file is named: {line}"
        in_text = self._fault == "in the text" and self._path.suffix in (".toml", ".ics", ".csv")
        if in_text and not ("expected" in line and "found" in line):
            yield f"it does not say what was expected: {line}"
        if not line.endswith((".", "?", "!")):
            yield f"no whole sentence: {line}"

    def _marks(self, path: Path | None = None) -> set[tuple[object, ...]] | None:
        """The marks in a journal, the family's own; None where it can't be read as a whole."""
        path = path or self._home / "journal.db"
        try:
            if not stat.S_ISREG(path.lstat().st_mode):
                return None
            # Of what lies beside it, SQLite itself would wait for a pipe.
            with contextlib.closing(schema.look_at(path)) as db:
                return {*db.execute(_MARKED)}
        except Exception:
            return None

    def _files(
        self, ran: Ran, words: Words, before: Mapping[str, object], marks: set[tuple[object, ...]] | None
    ) -> Iterator[str]:
        """What is wrong with the files afterward."""
        after = contents(self._folder)
        changed = sorted(name for name in before if after.get(name) != before[name])
        if words in READING or words == ("days", "--import", "FILE"):
            if after != before:
                yield f"it prints, and changed {changed or sorted(after.keys() - before.keys())}"
            return
        theirs = [name for name in changed if name.endswith((".toml", ".ics", ".csv", ".bak"))]
        if ran.code in (UNUSABLE, USAGE) and theirs and not ran.out:
            yield f"it refused, and changed {theirs}"
        mutated = str(self._path.relative_to(self._folder))
        outside = not mutated.startswith(("home/", "copies/")) or mutated.endswith(".toml")
        meant = words[:1] in (("forget",), ("days",)) or "--printed" in words
        if outside and mutated in changed and not (meant and ran.code == DONE):
            yield "the mutated file was changed"
        aside = self._home / f"journal-before-{self._now:%Y-%m-%d}.db"
        now = self._marks(aside if words[:1] == ("restore",) and aside.exists() else None)
        lost = marks - (now or set()) if marks else set()
        if lost and words[:1] not in (("forget",), ("catch-up",)):
            yield f"marks are gone: {sorted(lost, key=str)[:3]}"
        whole = marks is not None or not (self._about.journal and self._about.own)
        kept = not self._mutated or self._mutated in after.values()
        if not whole and isinstance(self._mutated, bytes) and not kept:
            yield "the damaged journal was not kept"

    def on_screen(self, luck: Random) -> None:
        """Open it on the screen, go to pages, mark, and look at it from the child's window."""
        keys = [
            *["right", "up", "down", "up"],
            "full_stop",
            *["down"] * luck.randrange(24),
            "enter",
            "down",
            "escape",
        ]
        before = {name: each for name, each in contents(self._folder).items() if name.endswith(".toml")}
        try:
            with _time_is_up(), at_home(self._home, ""):
                asyncio.run(self._show(keys))
                Watch(self._home, NOW).look(NOW.date())
        except (FileProblem, JournalProblem, OSError) as problem:
            self.did.append("screen 3")
            self.wrong += [f"screen: {each}" for each in self._said(Ran(3, "", f"warmup: {problem}"), ())]
        except (Exception, Hangs) as error:
            self.wrong.append(f"screen: {type(error).__name__} {error} {error.__cause__ or ''}"[:300])
        else:
            self.did.append("screen 0")
        for name, each in contents(self._folder).items():
            if name in before and each != before[name] and name != "home/family.toml":
                self.wrong.append(f"screen: {name} was changed")

    async def _show(self, keys: list[str]) -> None:
        clock = StandingClock(NOW)
        with opened(Places(self._home, self._home), "", clock) as (context, journal, welcome):
            app = WarmupApp(context, journal, clock, (journal.notice,), welcome)
            async with app.run_test(size=(100, 30)) as pilot:
                for key in keys:
                    await pilot.press(key)
                    await pilot.pause()
                    for line in frame(app).splitlines():
                        if not line.isprintable():
                            self.wrong.append(f"screen: what a terminal obeys: {line!r}")


def _typed(words: Words) -> str:
    """What the adult types: marks to the end of a morning, or that it is meant."""
    return "yes\n" * 3 if words[:1] in (("restore",), ("forget",)) else "\n" + "w\ns\n" * 12


def _content(path: Path) -> object:
    """What lies there: the bytes of a file, where a link goes, or what else it is."""
    try:
        mode = path.lstat().st_mode
        if stat.S_ISLNK(mode):
            return path.readlink()
        if not stat.S_ISREG(mode):
            return stat.S_IFMT(mode)
        if not mode & 0o400:
            return mode
        with path.open("rb") as file:
            return file.read(_LOOKED_AT)
    except OSError as error:
        return error.errno


def contents(folder: Path) -> dict[str, object]:
    """What lies in a folder and those in it, by the way to it; locks and stamps of SQLite's left out."""
    found = {}
    for place, folders, files in os.walk(folder):
        for name in (*folders, *files):
            if not name.endswith(("-journal", "-wal", "-shm", ".aside")):
                path = Path(place, name)
                found[str(path.relative_to(folder))] = _content(path)
    return found


@contextlib.contextmanager
def _time_is_up() -> Iterator[None]:
    """Hangs where it takes too long by the clock."""

    def stop(_number: int, _frame: FrameType | None) -> None:
        raise Hangs

    before = signal.signal(signal.SIGALRM, stop)
    signal.alarm(HANGS)
    try:
        yield
    finally:
        signal.alarm(0)
        signal.signal(signal.SIGALRM, before)


def main(count: int, seed: int) -> int:
    """Mutate COUNT files and print what became of them."""
    obey_permissions()
    settle_by_the_loop(setattr)
    resource.setrlimit(resource.RLIMIT_AS, (3 * MEMORY, resource.RLIM_INFINITY))
    did, wrong = Counter[str](), list[str]()
    began, names = time.monotonic(), list(KINDS)
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as name, contextlib.chdir(name):
        whole = Path(name, "whole")
        whole.mkdir()
        set_up(whole)
        for number in range(count):
            kind, place = names[number % len(names)], Path(name, "one")
            found = outcome(whole, place, kind, seed * 1_000_000 + number)
            shutil.rmtree(place, ignore_errors=True)
            did.update(f"{kind}: {code}" for code in {each.rpartition(" ")[2] for each in found.did})
            wrong += [f"{kind} {seed * 1_000_000 + number}: {each}" for each in found.wrong]
            if found.wrong:
                print(wrong[-1], file=sys.stderr, flush=True)
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
    if most > MEMORY >> 20:
        wrong.append(f"{most} MB of memory at most")
    summary = f"{count} files in {time.monotonic() - began:.0f} s, at most {most} MB"
    return _findings.told(("kind: exit code", "files"), did, summary, wrong)


if __name__ == "__main__":
    sys.exit(main(*_arguments.count_and_seed("mutated_files", __doc__, "count", 10_000)))
