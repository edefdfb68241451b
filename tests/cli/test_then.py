"""``warmup then``: sentences, and JSON with what each was worked out of; nothing is written."""

import json
from pathlib import Path

import pytest

from tests.cli.test_brief import AT_EIGHT, run
from tests.household import StandingClock, context_at, grown_easier
from warmup.cli.main import DONE, USAGE
from warmup.session.then_and_now import TOO_LITTLE


def test_the_sentences_and_what_they_were_worked_out_of(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    context = context_at(home, StandingClock(AT_EIGHT))
    grown_easier(context)
    assert context.journal is not None
    context.journal.shut()
    before = (home / "journal.db").read_bytes()
    assert run("then") == DONE
    said = capsys.readouterr().out.splitlines()
    assert len(said) == 4 and said[0].startswith("In October, “Days of the week: today’s name” needed help.")
    assert run("then", "--json") == DONE
    data = json.loads(capsys.readouterr().out)
    assert [each["words"] for each in data] == said
    assert data[0] | {"words": ""} == {
        "level": "weekday:today", "strand": "calendar", "then": "2026-10-05", "was": "not_yet",
        "now": "2027-03-02", "running": 3, "words": "",
    }  # fmt: skip
    assert (home / "journal.db").read_bytes() == before


def test_of_whom_is_said_by_the_nickname(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    context_at(home, StandingClock(AT_EIGHT))
    assert run("then", "--child", "Bean") == DONE and capsys.readouterr().out.strip() == TOO_LITTLE
    assert run("then", "--child", "Nobody") == USAGE
