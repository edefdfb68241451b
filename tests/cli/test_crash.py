"""A mistake of the program ends it with one sentence and an exit code, and shows nothing of the family's."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, context_at
from warmup.cli import main as cli
from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen

Clock = Callable[[], dt.datetime]


def _breaks(_screen: MorningScreen) -> None:
    nickname = "Hazelnut"
    raise RuntimeError(nickname)


async def test_a_crash_on_screen_prints_nothing_of_textuals_and_is_raised_for_the_command_line(
    home: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(MorningScreen, "on_mount", _breaks)
    context = context_at(home, clock)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    with pytest.raises(RuntimeError):
        async with app.run_test():
            pass
    said = capsys.readouterr()
    assert not app._exit_renderables and "locals" not in said.out + said.err
    with pytest.raises(RuntimeError):
        app.ended()


def test_the_command_line_says_it_in_a_sentence_without_a_traceback(
    home: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def run(_app: WarmupApp) -> None:
        _app._handle_exception(RuntimeError("Hazelnut"))

    context_at(home, clock, FAMILY)
    monkeypatch.setattr(cli, "_on_a_terminal", lambda: True)
    monkeypatch.setattr(WarmupApp, "run", run)
    monkeypatch.setattr(WarmupApp, "_close_messages_no_wait", lambda _app: None)
    assert cli.main([], clock) == cli.MISTAKE == 4
    said = capsys.readouterr()
    assert said.out == "" and said.err.count("\n") == 1 and "RuntimeError in quiet_app.py, line " in said.err
    assert "Traceback" not in said.err and "Hazelnut" not in said.err
    monkeypatch.setenv("WARMUP_TRACEBACK", "1")
    with pytest.raises(RuntimeError):
        cli.main([], clock)


@pytest.mark.parametrize("words", [["today"], ["catalogue"], ["why", "make-ten/seven-three"]])
def test_so_do_the_commands_that_print(
    words: list[str], clock: Clock, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def load_plan(_places: object) -> None:
        raise RuntimeError("Hazelnut")

    monkeypatch.setattr("warmup.config.plan.load_plan", load_plan)
    monkeypatch.setattr("warmup.session.context.load_plan", load_plan)
    assert cli.main(words, clock) == cli.MISTAKE
    said = capsys.readouterr().err
    assert "Hazelnut" not in said and "Traceback" not in said and "a mistake in the program" in said
