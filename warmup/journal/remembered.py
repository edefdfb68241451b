"""What was worked out of a journal, kept beside it, and whether it still holds.

A journal that is as this program left it need not be looked over again, nor its years of marks folded. So
after each of its writes the program leaves a stamp of the file, and at its end what it knows of each child. A
write of a day that this goes over takes it away, before the stamp says again that all holds: a program that
is killed between leaves a stamp that does not fit. All of it may be lost or deleted: then it is worked out
anew. A child's name is in none of it.
"""

import datetime as dt
import json
import os
from contextlib import suppress
from pathlib import Path
from typing import NamedTuple
from zlib import crc32

from warmup.journal.at_hand import first_bytes
from warmup.randomness import digest

FOLDER = "remembered"
"""The folder beside the journal."""
_STAMP = "journal.json"
_LARGEST = 16_000_000
"""No file here is larger, in bytes."""
_HEAD = 40
"""The bytes of a line at the head of a file: the sum, then the day."""


class Stamp(NamedTuple):
    """A journal's file at one moment: SQLite's count of its changes, its size, and its time in ns.

    The count is in the header at byte 24 (https://www.sqlite.org/fileformat2.html, 1.3.6), big-endian.
    """

    changes: int
    size: int
    modified: int


def stamp_of(path: Path) -> Stamp | None:
    """The stamp of a journal; None where there is none, or a write of it was cut short."""
    try:
        beside = path.with_name(f"{path.name}-journal")
        if beside.exists() and beside.stat().st_size:
            return None
        with path.open("rb") as file:
            header, about = file.read(28), os.fstat(file.fileno())
    except OSError:
        return None
    return Stamp(int.from_bytes(header[24:28], "big"), about.st_size, about.st_mtime_ns)


def as_left(path: Path) -> bool:
    """Whether the journal is as it was when its stamp was left."""
    found = _read(path.parent / FOLDER / _STAMP)
    now = stamp_of(path) if found else None
    with suppress(ValueError, RecursionError):
        return now is not None and found is not None and json.loads(found) == list(now)
    return False


def leave_stamp(path: Path) -> None:
    """Say that the journal is whole, and that what is kept of its children holds. Raises OSError."""
    now = stamp_of(path)
    if now is not None:
        _write(path.parent / FOLDER / _STAMP, json.dumps(now))


def recall(folder: Path, child: str) -> tuple[dt.date, str] | None:
    """What was kept of a child, and the day before which all days are in it.

    None where nothing was kept, or not all of it is there.
    """
    day, _, text = (_read(_place(folder, child)) or "").partition("\n")
    with suppress(ValueError):
        return dt.date.fromisoformat(day), text
    return None


def keep(folder: Path, child: str, until: dt.date, text: str) -> None:
    """Keep a text of a child's days before this one. A disk that takes none is no error."""
    with suppress(OSError):
        _write(_place(folder, child), f"{until.isoformat()}\n{text}")


def outdate(folder: Path, child: str, day: dt.date) -> None:
    """A day of a child's changed: take away what was kept of that day as well. Raises OSError."""
    place = _place(folder, child)
    try:
        _, head, *_ = first_bytes(place, 2 * _HEAD)[0].split(b"\n", 2)
        until = dt.date.fromisoformat(head.decode("ascii"))
    except ValueError:
        until = dt.date.max
    if until > day:
        place.unlink(missing_ok=True)


def clear(folder: Path) -> None:
    """Take away all that was kept, and the stamp. Raises OSError."""
    with suppress(FileNotFoundError):
        for place in (folder / FOLDER).iterdir():
            place.unlink(missing_ok=True)


def forget(folder: Path) -> None:
    """Take it all away, as far as the disk lets it."""
    with suppress(OSError):
        clear(folder)


def _place(folder: Path, child: str) -> Path:
    return folder / FOLDER / f"child-{digest('remembered', child):016x}.json"


def _read(path: Path) -> str | None:
    """The text of a file of ours: its first line is a sum over the rest."""
    head, _, body = first_bytes(path, _LARGEST)[0].partition(b"\n")
    return body.decode("utf-8", "replace") if head == b"%08x" % crc32(body) else None


def _write(path: Path, text: str) -> None:
    """Put a text in the place of the one before, whole or not at all."""
    path.parent.mkdir(mode=0o700, exist_ok=True)
    body = text.encode()
    beside = path.with_name(f"{path.name}.{os.getpid()}")
    try:
        with os.fdopen(os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600), "wb") as file:
            file.write(b"%08x\n" % crc32(body) + body)
        beside.replace(path)
    except OSError:
        with suppress(OSError):
            beside.unlink(missing_ok=True)
        raise
