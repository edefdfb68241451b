"""A note beside the journal on what of the prompt at hand no row says: how many cues, or the opening again.

It is for the child's window alone, so it may be lost: it is neither synced nor merged, one line overwrites
the other, and a note that does not fit the journal's own position says nothing.
"""

import json
import os
import stat
from contextlib import suppress
from pathlib import Path
from typing import Any, NamedTuple

from warmup.journal.oddities import Key

NAME = "at-hand.json"
OPENING = -1
"""The position of the opening, which comes before the first prompt."""
_LENGTH = 512
"""The bytes of a note: always the same, so that one write replaces the whole of the last."""


class AtHand(NamedTuple):
    """Which session, which of its prompts (or ``OPENING``), and how many of its cues are shown."""

    key: Key
    position: int
    cue: int


def leave_note(folder: Path, at: AtHand | None) -> None:
    """Leave a note, or take away the one there is. A disk that takes none is no error."""
    with suppress(OSError):
        if at is None:
            (folder / NAME).unlink(missing_ok=True)
            return
        note = json.dumps([*at.key, at.position, at.cue]).encode().ljust(_LENGTH)
        if len(note) == _LENGTH:
            file = os.open(folder / NAME, os.O_WRONLY | os.O_CREAT | getattr(os, "O_BINARY", 0), 0o600)
            try:
                os.write(file, note)
            finally:
                os.close(file)


def note_bytes(folder: Path) -> bytes:
    """The note as it lies there; nothing where there is none, or none that can be read."""
    return first_bytes(folder / NAME, _LENGTH)[0]


def first_bytes(path: Path, count: int) -> tuple[bytes, tuple[int, ...]]:
    """So many bytes of a file, and which file it is, how long and of when; nothing for what is no file.

    It is read in as few calls as can be, since it is done all day, and a pipe is not waited for.
    """
    try:
        file = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
    except OSError:
        return b"", ()
    try:
        about = os.fstat(file)
        if stat.S_ISREG(about.st_mode):
            which = about.st_dev, about.st_ino, about.st_size, about.st_mtime_ns
            return os.read(file, count), which
    except OSError:
        pass
    finally:
        os.close(file)
    return b"", ()


def note_in(raw: bytes) -> AtHand | None:
    """What a note says; None for what is none."""
    with suppress(ValueError, TypeError, RecursionError):
        found: Any = json.loads(raw)
        child, date, session, position, cue = found
        numbers = all(type(each) is int for each in (session, position, cue))
        if numbers and isinstance(child, str) and isinstance(date, str):
            return AtHand((child, date, session), position, cue)
    return None
