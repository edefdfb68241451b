"""Journals opened and shut for a test, and a disk that is full when the test says so."""

import datetime as dt
import sqlite3
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.journal.journals import STILL, Hand
from warmup.journal import schema
from warmup.journal.journal import Journal


@pytest.fixture
def hand(tmp_path: Path) -> Iterator[Hand]:
    """Opens journals and shuts them in the end."""
    held: list[Journal] = []

    def open_one(
        folder: Path = tmp_path,
        now: Callable[[], dt.datetime] = STILL,
        *,
        read_only: bool = False,
        window: str = "",
    ) -> Journal:
        held.append(Journal.open(folder, now, read_only=read_only, window=window))
        return held[-1]

    yield open_one
    for journal in held:
        journal.shut()


@pytest.fixture
def full(monkeypatch: pytest.MonkeyPatch) -> Callable[[bool], None]:
    """Makes every journal opened from now on as large as it may be, or not.

    A small file system is not to be had in a test, so SQLite's own ceiling stands in for the full disk:
    the error, and when it comes, are those of a full disk.
    """
    real, is_full = schema.connect, [False]

    def connect(path: Path, wait: int) -> sqlite3.Connection:
        connection = real(path, wait)
        if is_full[0]:
            (pages,) = connection.execute("PRAGMA page_count").fetchone()
            connection.execute(f"PRAGMA max_page_count = {max(1, pages)}")
        return connection

    def switch(on: bool) -> None:
        is_full[0] = on

    monkeypatch.setattr(schema, "connect", connect)
    return switch
