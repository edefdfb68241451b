"""Files written whole or not at all, each with the version before kept beside it."""

import contextlib
import os
import re
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, TypeVar

from warmup.config.toml_file import FileProblem, reason

QUICK = 3600
"""Seconds within which one save after another leaves the ``.bak`` as it is."""
STRAY = 86_400
"""Seconds after which a temporary file is a leftover: the program that made it was killed."""
_RANDOM = "[a-z0-9_]{8}"


NO_CHANGE = "Nothing was changed."
_TRIES = 5
T = TypeVar("T")


class Changed(Exception):
    """Somebody else wrote the file between reading and writing: read it again."""


def read_again(path: Path, change: Callable[[], T]) -> T:
    """What comes of a change of a file, which is begun again where somebody else wrote it meanwhile."""
    for _ in range(_TRIES):
        with contextlib.suppress(Changed):
            return change()
    raise FileProblem(path, None, "", "a file that rests for a moment", "one that keeps changing", NO_CHANGE)


def write_toml(path: Path, data: Mapping[str, Any]) -> None:
    """Put ``data`` at ``path`` as TOML, as :func:`write_atomic` does; for files nobody edits by hand."""
    import tomli_w

    try:
        content = tomli_w.dumps(data)
    except (ValueError, TypeError) as error:
        raise _refused(path, error) from None
    write_atomic(path, content)


def write_atomic(path: Path, content: str, over: str | None = None) -> None:
    """Put ``content`` at ``path``, whole or not at all; the version before stays as ``<name>.bak``.

    A file this program wrote itself within the last hour does not push an older version out of the
    ``.bak``: what somebody wrote by hand outlives many quick saves there. The file gets mode 0600, a folder
    made for it 0700. Raises ``Changed`` where ``over`` is given and is not the text that is there now, and
    ``FileProblem`` when it can't be written; the file that was there is then still there.
    """
    try:
        target = path.resolve()
        target.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        _replace(target, content.encode(), over)
    except (OSError, ValueError, RuntimeError) as error:
        raise _refused(path, error) from None


def copy_beside(path: Path, name: str) -> Path:
    """Put a copy of a file beside it under another name; gives its path. FileProblem where that can't be."""
    copy = path.with_name(name)
    try:
        content = path.read_bytes()
        _move(_temporary(copy, content), copy)
        if copy.read_bytes() != content:
            raise OSError("the copy is not like the file")
    except OSError as error:
        raise _refused(copy, error) from None
    return copy


def _refused(path: Path, error: Exception) -> FileProblem:
    return FileProblem(path, None, "", "a file that can be written", reason(error) or "an error", NO_CHANGE)


def _replace(target: Path, content: bytes, over: str | None) -> None:
    before, backup = _stat(target), target.with_name(f"{target.name}.bak")
    name = _temporary(target, content)
    try:
        # The version before may be the only good one, so it is safe on the disk first.
        if before is not None and not _left_by_us(before, backup, name):
            other = _temporary(backup, target.read_bytes())
            _move(other, backup)
        if over is not None and _text(target) != over:
            raise Changed
        _move(name, target)
    except BaseException:
        name.unlink(missing_ok=True)
        raise
    # A stamp both files bear says that the newer one was written here, not by hand.
    with contextlib.suppress(OSError):
        stamp = target.stat().st_mtime_ns
        os.utime(backup, ns=(stamp, stamp))
    sync_folder(target.parent)


def sync_folder(folder: Path) -> None:
    """Have the names in a folder on the disk, where a folder can be told so; OSError where that fails."""
    if hasattr(os, "O_DIRECTORY"):
        handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _stat(path: Path) -> os.stat_result | None:
    try:
        return path.stat()
    except FileNotFoundError:
        return None


def _left_by_us(before: os.stat_result, backup: Path, new: Path) -> bool:
    """Whether the file is as this program left it a short while ago, by the clock of the disk."""
    kept = _stat(backup)
    since = new.stat().st_mtime - before.st_mtime
    return kept is not None and kept.st_mtime_ns == before.st_mtime_ns and 0 <= since < QUICK


def _text(path: Path) -> str | None:
    try:
        return path.read_bytes().decode("utf-8-sig", "replace")
    except FileNotFoundError:
        return None


def _temporary(target: Path, content: bytes) -> Path:
    """A file of this content beside the target, on the disk."""
    import tempfile

    handle, name = tempfile.mkstemp(prefix=f".{target.name[:40]}-", dir=target.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
    return Path(name)


def _move(name: Path, target: Path) -> None:
    try:
        name.replace(target)
    except BaseException:
        name.unlink(missing_ok=True)
        raise


def outdate_backup(path: Path) -> None:
    """Let the version before be the one that is there now, since nothing of the one before may stay.

    Raises ``FileProblem`` where it can't be written.
    """
    try:
        target = path.resolve()
        backup = target.with_name(f"{target.name}.bak")
        if _stat(backup) is not None:
            _move(_temporary(backup, target.read_bytes()), backup)
    except (OSError, ValueError, RuntimeError) as error:
        raise _refused(path.with_name(f"{path.name}.bak"), error) from None


def sweep(path: Path, now: float) -> None:
    """Take away what a killed program left of writing ``path``: its own temporary files, a day old.

    ``now`` in seconds of the system's clock. What can't be looked at or taken away stays.
    """
    ours = re.compile(rf"\.{re.escape(path.name)}(\.bak)?-{_RANDOM}")
    with contextlib.suppress(OSError, RuntimeError), os.scandir(path.resolve().parent) as entries:
        for entry in entries:
            if ours.fullmatch(entry.name) and entry.is_file(follow_symlinks=False):
                with contextlib.suppress(OSError):
                    if now - entry.stat(follow_symlinks=False).st_mtime > STRAY:
                        Path(entry.path).unlink()
