"""Which files and folders the program has put on the disk for good."""

import os
from pathlib import Path

import pytest


def note_syncs(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """The number of every file and folder that is synced from now on, in order; see :func:`number`."""
    found: list[int] = []
    sync = os.fsync

    def noted(handle: int) -> None:
        sync(handle)
        found.append(os.fstat(handle).st_ino)

    monkeypatch.setattr(os, "fsync", noted)
    return found


def number(path: Path) -> int:
    """What the disk knows a file by, whatever it is called."""
    return path.stat().st_ino
