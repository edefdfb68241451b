"""What the tests of the command line share."""

import io
import sys

import pytest

from tests.cli.typed_morning import Run
from tests.household import StandingClock
from warmup.cli import spoken
from warmup.session.context import Context


@pytest.fixture
def typed(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Run:
    """Types lines into a morning, and gives the lines that it says."""

    def run(context: Context, clock: StandingClock, *lines: str) -> list[str]:
        assert context.journal is not None
        monkeypatch.setattr(sys, "stdin", io.StringIO("".join(f"{line}\n" for line in lines)))
        capsys.readouterr()
        spoken.run(context, context.journal, clock)
        return capsys.readouterr().out.splitlines()

    return run
