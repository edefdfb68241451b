"""The same run everywhere: hypothesis draws the same examples, and no file of the user's is touched."""

import datetime as dt
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

settings.register_profile(
    "warmup", derandomize=True, database=None, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("warmup")


@pytest.fixture(autouse=True)
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A place of its own for every test that opens the program."""
    place = tmp_path / "home"
    monkeypatch.setenv("WARMUP_HOME", str(place))
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("COLORTERM", "truecolor")
    return place


@pytest.fixture
def clock() -> Iterator[Callable[[], dt.datetime]]:
    """A clock that stands at eight on a school day and goes on a second at every look."""
    moment = dt.datetime(2026, 11, 25, 8)

    def look() -> dt.datetime:
        nonlocal moment
        moment += dt.timedelta(seconds=1)
        return moment

    yield look
