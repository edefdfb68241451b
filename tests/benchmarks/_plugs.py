"""What a disk holds when the power goes: a recorded trace of a program's writes and syncs, cut anywhere.

A disk keeps what was synced. Of what was written after a file's last sync any part may be there and any may
be missing, down to a sector; names that were made, moved or taken away after their folder's last sync may be
there or not, but in the order in which that was done. This is the strict reading of POSIX ``fsync`` (The
Open Group Base Specifications, issue 7): a sync of a file promises nothing about its name.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from typing import NamedTuple

CALLS = (
    "open,openat,creat,write,pwrite64,writev,pwritev,fsync,fdatasync,sync,rename,renameat,renameat2,ftruncate,"
    "truncate,unlink,unlinkat,link,linkat,symlink,symlinkat,lseek,sendfile,copy_file_range,dup,dup2,dup3"
)
"""What strace is to record; ``strace -f -y -ttt -xx -e trace=...``."""
_SECTOR = 512
_LINE = re.compile(r"(?P<pid>\d+) +(?P<when>[\d.]+) (?P<call>\w+)\((?P<rest>.*)\)\s+= (?P<result>-?\d+)")
_TEXT = re.compile(r'"((?:\\x[0-9a-f]{2})*)"(\.\.\.)?')
_HANDLE = re.compile(r"^(\d+)<((?:\\x[0-9a-f]{2})+)>")
_UNKNOWN = frozenset({"writev", "pwritev", "symlink", "symlinkat", "sendfile"})
_UNKNOWN_COPIES = frozenset({"copy_file_range", "truncate", "creat"})


class Step(NamedTuple):
    """One call that changes or syncs something in the folder: when, what, and with which bytes.

    ``path`` and ``other`` lie below the folder; ``at`` is an offset or a length.
    """

    when: float
    call: str
    path: str
    other: str = ""
    at: int = 0
    data: bytes = b""


def steps(trace: str, folder: Path) -> Iterator[Step]:
    """The calls of a trace that have to do with ``folder``. Raises ValueError at one not known here."""
    positions: dict[str, int] = {}
    appending: set[str] = set()
    lengths: dict[str, int] = {}
    for line in _joined(trace):
        found = _LINE.match(line)
        if not found or int(found["result"]) < 0:
            continue
        texts = [_bytes(text) for text, _ in _TEXT.findall(found["rest"])]
        handle = _HANDLE.match(found["rest"])
        path = _bytes(handle[2]).decode() if handle else ""
        named = [_below(text.decode("utf-8", "replace"), folder) for text in texts[:2]]
        inside = _below(path, folder) if path else ""
        when, call, result = float(found["when"]), found["call"], int(found["result"])
        # The threads of the program share its handles.
        key = handle[1] if handle else ""
        if call in ("open", "openat"):
            if not named or not named[0]:
                continue
            key = str(result)
            positions[key] = 0
            appending.discard(key)
            if "O_APPEND" in found["rest"]:
                appending.add(key)
            if "O_CREAT" in found["rest"]:
                yield Step(when, "create", named[0])
            if "O_TRUNC" in found["rest"]:
                lengths[named[0]] = 0
                yield Step(when, "cut", named[0])
        elif call in ("rename", "renameat", "renameat2") and any(named):
            yield Step(when, "rename", named[0], named[1])
        elif call in ("link", "linkat") and any(named):
            yield Step(when, "link", named[0], named[1])
        elif call in ("unlink", "unlinkat") and named and named[0]:
            yield Step(when, "unlink", named[0])
        elif not inside or inside.endswith(" (deleted)"):
            if call in _UNKNOWN | _UNKNOWN_COPIES and any(named):
                raise ValueError(f"a call that is not replayed here: {call} of {named}")
        elif call == "lseek":
            positions[key] = result
        elif call == "write":
            at = lengths.get(inside, 0) if key in appending else positions.get(key, 0)
            positions[key] = at + result
            lengths[inside] = max(lengths.get(inside, 0), at + result)
            yield Step(when, "write", inside, at=at, data=texts[0][:result])
        elif call == "pwrite64":
            at = int(found["rest"].rsplit(",", 1)[1])
            yield Step(when, "write", inside, at=at, data=texts[0][:result])
        elif call in ("fsync", "fdatasync"):
            yield Step(when, "sync", inside)
        elif call == "ftruncate":
            yield Step(when, "cut", inside, at=int(found["rest"].rsplit(",", 1)[1]))
        elif call in _UNKNOWN | _UNKNOWN_COPIES or call.startswith("dup"):
            raise ValueError(f"a call that is not replayed here: {call} of {inside}")


def _joined(trace: str) -> Iterator[str]:
    """The lines, with a call that another thread interrupted put together again."""
    begun: dict[str, str] = {}
    for line in trace.splitlines():
        pid = line.split(" ", 1)[0]
        if line.endswith("<unfinished ...>"):
            begun[pid] = line.removesuffix("<unfinished ...>").rstrip()
        elif " resumed>" in line and pid in begun:
            yield begun.pop(pid) + line.split(" resumed>", 1)[1]
        else:
            yield line


def _bytes(text: str) -> bytes:
    return bytes.fromhex(text.replace("\\x", ""))


def _below(path: str, folder: Path) -> str:
    """The path below the folder, ``.`` for the folder itself, nothing for what lies elsewhere."""
    whole = str(folder)
    if path == whole:
        return "."
    return path.removeprefix(f"{whole}/") if path.startswith(f"{whole}/") else ""


@dataclass
class _Content:
    """A file without its name: what is safe on the disk, and what was written since."""

    safe: bytes = b""
    waiting: list[Step] = field(default_factory=list)

    def now(self, kept: list[Step] | None = None) -> bytes:
        """The bytes with all that waits written, or with what is ``kept`` of it."""
        data = bytearray(self.safe)
        for step in self.waiting if kept is None else kept:
            if step.call == "cut":
                data[step.at :] = b""
                data.extend(bytes(step.at - len(data)))
            else:
                data.extend(bytes(max(0, step.at - len(data))))
                data[step.at : step.at + len(step.data)] = step.data
        return bytes(data)


class Disk:
    """A folder as the program sees it and as the disk has it, step by step."""

    def __init__(self, before: Mapping[str, bytes]) -> None:
        self._names = {path: _Content(data) for path, data in before.items()}
        self._safe = dict(self._names)
        self._moves: list[Step] = []
        self._made: dict[Step, _Content] = {}

    def take(self, step: Step) -> None:
        """One step further."""
        match step.call:
            case "create" if step.path not in self._names:
                self._names[step.path] = self._made[step] = _Content()
                self._moves.append(step)
            case "rename" | "link" | "unlink":
                _move(self._names, step, self._made)
                self._moves.append(step)
            case "write" | "cut":
                self._names[step.path].waiting.append(step)
            case "sync" if step.path in self._names:
                content = self._names[step.path]
                content.safe, content.waiting = content.now(), []
            case "sync":
                self._sync_folder(step.path)

    def _sync_folder(self, folder: str) -> None:
        """All that was done to names up to the last one in this folder is safe: they are kept in order."""
        last = max(
            (
                at
                for at, move in enumerate(self._moves)
                if folder in (_folder(move.path), _folder(move.other))
            ),
            default=-1,
        )
        for move in self._moves[: last + 1]:
            _move(self._safe, move, self._made)
        del self._moves[: last + 1]

    def seen(self) -> dict[str, bytes]:
        """What a program that was killed here leaves: all of it."""
        return {path: content.now() for path, content in self._names.items()}

    def after_the_plug(self, rng: Random) -> dict[str, bytes]:
        """What the disk may hold when the power goes here."""
        names = dict(self._safe)
        for move in self._moves[: rng.randrange(len(self._moves) + 1)]:
            _move(names, move, self._made)
        share = rng.choice((0.0, 0.5, 1.0))
        return {path: content.now(_kept(content, share, rng)) for path, content in names.items()}


def _kept(content: _Content, share: float, rng: Random) -> list[Step]:
    """Some of what waits, each write whole, gone, or torn at a sector."""
    kept = []
    for step in content.waiting:
        if rng.random() >= share:
            continue
        if step.call == "write" and share < 1 and rng.random() < 0.2:
            whole = len(step.data) // _SECTOR
            kept.append(step._replace(data=step.data[: _SECTOR * rng.randrange(whole + 1)]))
        else:
            kept.append(step)
    return kept


def _move(names: dict[str, _Content], step: Step, made: Mapping[Step, _Content]) -> None:
    """A file's name made, moved or taken away; a folder's move takes along what is in it."""
    match step.call:
        case "create":
            names[step.path] = made[step]
        case "link" if step.path in names:
            names[step.other] = names[step.path]
        case "unlink":
            names.pop(step.path, None)
        case "rename":
            for path in [each for each in names if each == step.path or each.startswith(f"{step.path}/")]:
                to = step.other + path.removeprefix(step.path)
                content = names.pop(path)
                if step.other:
                    names[to] = content


def _folder(path: str) -> str:
    return (path.rpartition("/")[0] or ".") if path else ""
