"""The weekly copies: where they go, and a note of when one last worked.

The note lies beside the journal as ``keeping.json``. It says nothing that can't be said anew, so it may be
lost, and a disk that takes none is no error.
"""

import datetime as dt
import json
import os
import tempfile
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import NamedTuple

from warmup.config.toml_file import FileProblem, file_bytes
from warmup.text import FIRST_YEAR, LAST_YEAR

NAME = "keeping.json"
_LARGEST = 100_000
"""The largest note that is read, in bytes."""
_MOST = 50
"""How many journals that were taken in a note tells of."""


class Note(NamedTuple):
    """When things last happened; None for what never did.

    ``folder`` is the one the other dates are of: ``since`` it was named, a copy went there last on
    ``copied``. On ``told`` it was last said that there is no such folder. ``taken`` has the journals beside
    ours that were merged: the size in bytes and the change in ns, by name.
    """

    folder: str = ""
    since: dt.date | None = None
    copied: dt.date | None = None
    told: dt.date | None = None
    taken: Mapping[str, tuple[int, int]] = {}


def read_note(data: Path) -> Note:
    """The note in this folder; an empty one for what is none."""
    try:
        found = json.loads(file_bytes(data / NAME, _LARGEST))
        taken = {str(name): (int(size), int(changed)) for name, (size, changed) in found["taken"].items()}
        since, copied, told = (_date(found[key]) for key in ("since", "copied", "told"))
        return Note(str(found["folder"]), since, copied, told, taken)
    except (FileProblem, ValueError, TypeError, KeyError, AttributeError, RecursionError, OverflowError):
        return Note()


def _date(text: object) -> dt.date | None:
    day = None if text is None else dt.date.fromisoformat(str(text))
    return day if day is None or FIRST_YEAR <= day.year <= LAST_YEAR else None


def leave_note(data: Path, note: Note) -> None:
    """Leave the note in this folder, whole or not at all; nothing happens where the folder is not there."""
    said = {
        "folder": note.folder,
        **{key: day and day.isoformat() for key, day in zip(Note._fields[1:4], note[1:4], strict=True)},
        "taken": dict(list(note.taken.items())[-_MOST:]),
    }
    with suppress(OSError):
        handle, name = tempfile.mkstemp(prefix=f".{NAME}-", dir=data)
        try:
            with os.fdopen(handle, "w", encoding="utf-8") as file:
                json.dump(said, file)
            Path(name).replace(data / NAME)
        except OSError:
            Path(name).unlink(missing_ok=True)
            raise


def of_folder(note: Note, folder: str, today: dt.date) -> Note:
    """The note as it is for this folder: one that is named for the first time has no copy yet."""
    return note if note.folder == folder else note._replace(folder=folder, since=today, copied=None)


def copies_folder(words: str) -> Path | None:
    """The folder that family.toml names, if it is there and a whole path; never made."""
    with suppress(OSError, ValueError, RuntimeError):
        folder = Path(words).expanduser()
        if folder.is_absolute() and folder.is_dir():
            return folder
    return None
