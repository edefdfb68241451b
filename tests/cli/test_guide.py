"""``warmup guide``: the list, a topic for a reader and for a pipe, and no other."""

import datetime as dt

import pytest

from warmup.cli import main as cli
from warmup.cli.main import DONE, USAGE, main
from warmup.guide import topic, topics


def run(*argv: str) -> int:
    return main(argv, lambda: dt.datetime(2027, 3, 3, 8))


def test_it_lists_its_topics(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("guide") == DONE
    said = capsys.readouterr().out
    assert all(each.name in said and each.about in said for each in topics())
    assert max(map(len, said.splitlines())) <= 80


def test_a_pipe_gets_the_topic_as_it_is_written(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("guide", "Hard-Days") == DONE
    assert capsys.readouterr().out == topic("hard-days").whole


def test_a_terminal_gets_it_laid_out(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cli, "_on_a_terminal", lambda: True)
    monkeypatch.setenv("COLUMNS", "200")
    assert run("guide", "morning") == DONE
    said = capsys.readouterr().out
    assert "**" not in said and "| mark |" not in said and "not yet" in said
    assert max(map(len, said.splitlines())) <= 88


def test_what_it_does_not_have_is_refused_with_what_it_has(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("guide", "[b]snacks") == USAGE
    said = capsys.readouterr().err
    assert "[b]snacks" in said and "hard-days" in said and "Traceback" not in said
