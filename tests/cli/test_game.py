"""A game on the command line, and in a morning in lines."""

import datetime as dt
import io
import json
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, StandingClock, context_at, lived, start_fixed
from warmup.cli import game as command
from warmup.cli import spoken
from warmup.cli.main import DONE, USAGE, main
from warmup.model import Mark
from warmup.session.gaming import NO_GAME, suggestion

Clock = Callable[[], dt.datetime]


def run(*argv: str) -> int:
    return main(["game", *argv], lambda: dt.datetime.combine(TODAY, dt.time(8)))


def test_it_prints_the_game_of_today_the_next_one_and_those_of_a_skill(
    home: Path, clock: Clock, capsys: pytest.CaptureFixture[str]
) -> None:
    context = context_at(home, clock)
    lived(context, TODAY, {"make-ten/seven-three": Mark.NOT_YET})
    found = [suggestion(context, nth) for nth in range(3)]
    for nth, each in enumerate(found):
        assert each is not None and run(*["--another"] * nth, "--child", "Bean") == DONE
        shown = capsys.readouterr().out.splitlines()
        assert shown[0] == f"A two-minute game: {each.game.name}"
        assert f"Say: {' '.join(each.play.rule)}" in shown and shown[1].startswith("For: make ten, ")
    assert run("--skill", "clock") == DONE and "For: clock, " in capsys.readouterr().out
    assert run("--skill", "clocks") == USAGE and 'did you mean "clock"?' in capsys.readouterr().err


def test_the_data_is_documented_field_by_field(
    home: Path, clock: Clock, capsys: pytest.CaptureFixture[str]
) -> None:
    context_at(home, clock, FAMILY)
    assert run("--json") == DONE
    data = json.loads(capsys.readouterr().out)
    named = {*data, *data["game"]}
    assert len(named) > 14 and not [name for name in named if f"``{name}``" not in (command.__doc__ or "")]
    assert data["child"] == "Bean" and data["game"]["players"] == [1, 2]
    assert command.game_data(None, "Bean")["game"] is None and list(command.game_lines(None)) == [NO_GAME]


def test_a_morning_in_lines_offers_it_where_something_wobbled(
    home: Path,
    clock: StandingClock,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None
    monkeypatch.setattr(sys, "stdin", io.StringIO("n\n" + "\n" * 4 + "x\n9\n"))
    spoken.run(context, context.journal, clock)
    shown = capsys.readouterr().out
    first, second = suggestion(context), suggestion(context, 1)
    assert first and second
    assert f"A game for that: {first.game.name}. x says how it goes." in shown
    assert shown.index(f"A two-minute game: {first.game.name}") < shown.index(
        f"A two-minute game: {second.game.name}"
    )
