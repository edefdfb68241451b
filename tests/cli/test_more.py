"""The help is short: the everyday commands; the others stand under ``warmup more``."""

import re
from importlib import import_module
from pathlib import Path

import pytest

from warmup.cli.commands import COMMANDS, printed_by
from warmup.cli.main import DONE, KEEPING, USAGE, main
from warmup.guide import topics

README = Path(__file__).parents[2] / "README.md"


def said(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str]:
    try:
        code = main(words)
    except SystemExit as ended:
        code = int(ended.code or 0)
    return code, capsys.readouterr().out


def test_the_help_has_the_everyday_commands_and_more_has_the_others(
    capsys: pytest.CaptureFixture[str], home: Path
) -> None:
    code, shown = said(capsys, "--help")
    listed = {line.split()[0] for line in shown.partition("commands:")[2].splitlines() if line.strip()}
    assert code == DONE and "opens today's morning" in shown and "Exit codes" in shown
    code, others = said(capsys, "more")
    assert code == DONE and not home.exists()
    for command in COMMANDS:
        assert (command.name in listed) is command.everyday
        assert (f"\n  {command.name} " in others) is not command.everyday
        code, own = said(capsys, command.name, "--help")
        assert code == DONE and f"usage: warmup {command.name}" in own
    assert sum(command.everyday for command in COMMANDS) <= 6
    assert len(shown.splitlines()) <= 32


def test_a_command_says_what_prints_it_or_has_its_case_in_main() -> None:
    for command in COMMANDS:
        if command.printed:
            module, function = printed_by(command.name)
            assert callable(getattr(import_module(f"warmup.cli.{module}"), function)), command.name
        else:
            assert command.name in KEEPING | {"stage", "check", "guide"}, f"{command.name}: nothing does it"


def test_the_guide_tells_of_every_command() -> None:
    told = "\n".join([*(each.text for each in topics()), README.read_text("utf-8")])
    missing = [each.name for each in COMMANDS if not re.search(rf"`warmup {each.name}\b", told)]
    assert not missing, f"no topic of warmup/guide tells of: {', '.join(missing)}"


def test_every_command_is_understood_listed_or_not(capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, "knit")[0] == USAGE
    assert said(capsys, "why")[0] == USAGE, "it wants an item"
    assert said(capsys, "check", "--keys", "--settings")[0] == USAGE
