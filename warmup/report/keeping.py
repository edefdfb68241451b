"""Puts a report into a file: whole or not at all, and over nothing that is there unless that is wanted."""

import os
import tempfile
from itertools import chain, count
from pathlib import Path

from warmup.config.writing import sync_folder
from warmup.text import clean


class NotKept(Exception):
    """Nothing was written; the sentence says which file, why, and what to do."""


def is_there(path: Path) -> bool:
    """Whether anything is at this place, a link to nothing included."""
    return os.path.lexists(path)


def unused(path: Path) -> Path:
    """This place where nothing is, or else the next of its name: "sheets-2.html" after "sheets.html"."""
    named = chain([path], (path.with_stem(f"{path.stem}-{n}") for n in count(2)))
    return next(each for each in named if not is_there(each))


def keep(path: Path, text: str, *, over: bool = False) -> None:
    """Write a text to a new file, or ``over`` the one that is there. NotKept where that can't be done."""
    name = clean(str(path))
    if not is_there(path.parent):
        raise NotKept(f"{name}: there is no such folder. Make it first, or name another.")
    if path.is_dir():
        raise NotKept(f"{name} is a folder: name a file in it.")
    try:
        if not over:
            # Whoever makes a file of this name meanwhile keeps it.
            path.open("xb").close()
        try:
            _replace(path, text.encode("utf-8"))
        except BaseException:
            if not over:
                path.unlink(missing_ok=True)
            raise
    except FileExistsError:
        raise NotKept(f"{name}: there is a file of that name already, and it stays: name another.") from None
    except ValueError:
        raise NotKept(f"{name} can’t be the name of a file: name another.") from None
    except OSError as error:
        why = clean(error.strerror or str(error))
        raise NotKept(f"{name}: could not be written ({why}). Name another place.") from None


def _replace(path: Path, content: bytes) -> None:
    handle, beside = tempfile.mkstemp(prefix=".warmup-", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        # A link stays one: what it leads to is replaced.
        Path(beside).replace(path.resolve())
        sync_folder(path.resolve().parent)
    except BaseException:
        Path(beside).unlink(missing_ok=True)
        raise
