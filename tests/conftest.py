"""The same run everywhere: hypothesis draws the same examples, and no file of the user's is touched."""

import datetime as dt
import gc
import os
import shutil
from collections.abc import Callable, Iterator
from itertools import count
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, settings

from tests.household import StandingClock
from warmup.journal.journal import Journal

settings.register_profile(
    "warmup", derandomize=True, database=None, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("warmup")
# For who only asks whether a test fails: no smaller example is looked for.
settings.register_profile(
    "unshrunk", parent=settings.get_profile("warmup"), phases=(Phase.explicit, Phase.generate)
)

# Every mark is synced to the disk, and there are tens of thousands of them: where memory can be written to
# as a folder and is large enough, the tests' files lie there. Tests that pull a disk away make it themselves.
_IN_MEMORY = Path("/dev/shm")
if os.access(_IN_MEMORY, os.W_OK) and shutil.disk_usage(_IN_MEMORY).free > 2**30:
    os.environ.setdefault("PYTEST_DEBUG_TEMPROOT", str(_IN_MEMORY))

_NUMBERS = count()


def pytest_collection_finish() -> None:
    """Look for no garbage among thousands of tests and their modules, which stay to the end anyway."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(100_000, 50, 1000)


_journals: list[Journal] = []


def _open_and_note(open_one: Callable[..., Journal]) -> Callable[..., Journal]:
    def opened(*given: Any, **named: Any) -> Journal:
        _journals.append(open_one(*given, **named))
        return _journals[-1]

    return opened


# A test may leave a journal open; Python 3.13 complains of a database that nobody closed.
Journal.open = _open_and_note(Journal.open)  # type: ignore[method-assign]


@pytest.fixture(autouse=True)
def home(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A place of its own for every test that opens the program; not there before it does.

    Thousands of tests never do: a folder for each of them would cost a tenth of the suite's time.
    """
    homes = tmp_path_factory.getbasetemp() / "homes"
    homes.mkdir(exist_ok=True)
    place = homes / str(next(_NUMBERS))
    monkeypatch.setenv("WARMUP_HOME", str(place))
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("COLORTERM", "truecolor")
    yield place
    while _journals:
        _journals.pop()._store.shut(lambda: None)


@pytest.fixture
def clock() -> StandingClock:
    """A clock that stands at eight on a school day and goes on a second at every look."""
    return StandingClock(dt.datetime(2026, 11, 25, 8))
