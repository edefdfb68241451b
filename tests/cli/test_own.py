"""What a family wrote itself, on the command line: asked, told of, listed, checked, and said in lines."""

import datetime as dt
import io
import json
import sys
from pathlib import Path

import pytest

from tests.cli.test_cli import run
from tests.household import FAMILY, TODAY, StandingClock, context_at
from warmup.cli import spoken
from warmup.cli.main import DONE, UNUSABLE, USAGE, WRONG, main

OWN = """\
[[prompt]]
name = "front-door"
say = "What [b]number[/b] is on our door?"
answer = "forty-two"
watch_for = "Turning it round."

[[prompt]]
name = "duck"
say = "Finish: one little duck…"
answer = "two little ducks"
table = "a duck"
strand = "calendar"
week = 9
"""
BAD = OWN.replace("week = 9", "week = 99")
PROBLEM = (
    "own.toml, line 13, prompt 2.week: expected a whole number from 1 to 36, found 99. "
    "Fix that line; until then none of your own prompts is asked."
)
FAMILY_FILE = 'school.first_day = 2026-08-31\n[[child]]\nnickname = "Bean"\nheld = ["own:gone"]\n'


@pytest.fixture(autouse=True)
def place(home: Path) -> Path:
    """A family with two prompts of its own, one of which is held back and gone."""
    home.mkdir()
    (home / "family.toml").write_text(FAMILY_FILE, "utf-8")
    (home / "own.toml").write_text(OWN, "utf-8")
    return home


def out_of(capsys: pytest.CaptureFixture[str], *argv: str, code: int = DONE) -> str:
    assert run(*argv) == code
    return capsys.readouterr().out


def test_ask_prints_its_words_as_they_stand(capsys: pytest.CaptureFixture[str]) -> None:
    said = out_of(capsys, "ask", "own", "--count", "3")
    first, second, third = said.split("\n\n")
    assert (
        "Your own, front door.\nSay: What [b]number[/b] is on our door?\nAnswer: forty-two\nCue 1:" in first
    )
    assert "Watch for: Turning it round." in first and "Working" not in said
    assert "Watch for" not in second and "Finish: one little duck…" in second and "front door" in third
    assert "Answer" not in out_of(capsys, "ask", "own", "--no-answers")
    assert "Your own, duck." in out_of(capsys, "ask", "own", "--item", "own/duck")
    assert "Your own, duck." in out_of(capsys, "ask", "own", "--level", "2")
    (prompt,) = json.loads(out_of(capsys, "ask", "own", "--json"))["prompts"]
    assert (prompt["item"], prompt["level"], prompt["say"]) == (
        "own/front-door",
        "front-door",
        "What [b]number[/b] is on our door?",
    )
    run("ask", "own", "--item", "goose")
    assert "there is front-door, duck" in capsys.readouterr().err


def test_without_a_file_ask_says_where_it_would_stand(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for text in (None, "# nothing yet\n"):
        (home / "own.toml").unlink() if text is None else (home / "own.toml").write_text(text, "utf-8")
        assert run("ask", "own") == USAGE
        said = capsys.readouterr().err
        assert "no prompts of your own yet" in said and str(home / "own.toml") in said


def test_why_tells_the_story_of_one(capsys: pytest.CaptureFixture[str]) -> None:
    assert out_of(capsys, "why", "own/duck") == (
        "Your own, duck: own/duck. Its level opens in week 9.\nIt was not asked yet.\n"
    )
    assert run("why", "own/duk") == USAGE
    assert "no item 'own/duk'; did you mean \"own/duck\"?" in capsys.readouterr().err


def test_today_asks_one_in_lines_and_in_json(capsys: pytest.CaptureFixture[str]) -> None:
    said = out_of(capsys, "today", "--date", "2026-09-01")
    assert said.count(": Your own, front door.\nSay: What [b]number[/b] is on our door?") == 1
    assert "Why today: your own, not asked yet" in said
    data = json.loads(out_of(capsys, "today", "--date", "2026-09-01", "--json"))
    assert [each["level"] for each in data["prompts"] if each["skill"] == "own"] == ["front-door"]
    assert "own:front-door" in data["not_asked_yet"]


def test_the_catalogue_has_them_last_and_only_where_there_are_some(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    said = out_of(capsys, "catalogue")
    tail = "    front-door, week 1: counting\n    duck, week 9: calendar\n"
    assert said.endswith(f"Your own prompts\n  own: what you wrote yourselves\n{tail}")
    with_own = json.loads(out_of(capsys, "catalogue", "--json"))
    (home / "own.toml").unlink()
    assert "own" not in {line.split(":")[0].strip() for line in out_of(capsys, "catalogue").splitlines()}
    without = json.loads(out_of(capsys, "catalogue", "--json"))
    assert with_own["skills"][:-1] == without["skills"] and with_own["items"][:-2] == without["items"]
    assert [(each["key"], each["week"], each["table"]) for each in with_own["skills"][-1]["levels"]] == [
        ("front-door", 1, ""),
        ("duck", 9, "a duck"),
    ]


def test_check_names_the_file_and_what_is_wrong_with_it(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    said = out_of(capsys, "check")
    assert f"Your own prompts: {home / 'own.toml'}\n" in said and "own routine" not in said
    assert said.endswith("Everything can be read.\n"), "a held one that is gone is no finding"
    (home / "own.toml").write_text(BAD, "utf-8")
    assert out_of(capsys, "check", code=WRONG).splitlines()[-1] == PROBLEM
    assert (home / "own.toml").read_text("utf-8") == BAD
    (home / "own.toml").unlink()
    assert "own.toml" not in out_of(capsys, "check")


@pytest.mark.parametrize("argv", ["today", "today --json", "catalogue", "why make-ten/seven-three"])
def test_a_bad_file_stops_no_other_command(argv: str, home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (home / "own.toml").write_text(BAD, "utf-8")
    assert run(*argv.split()) == DONE
    out, err = capsys.readouterr()
    assert err == f"warmup: {PROBLEM}\n" and out and "front" not in out
    assert run("ask", "own") == UNUSABLE
    assert capsys.readouterr().err == f"warmup: {PROBLEM}\n"


@pytest.mark.parametrize("bad", [False, True])
def test_a_morning_in_lines(
    bad: bool,
    home: Path,
    clock: StandingClock,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    """It asks the one, or says once what is wrong and asks all else."""
    if bad:
        (home / "own.toml").write_text(BAD, "utf-8")
    context = context_at(home, clock, FAMILY)
    assert context.journal is not None and context.today == TODAY
    monkeypatch.setattr(sys, "stdin", io.StringIO("d\n" + "w\n" * 8 + "t\n\n"))
    spoken.run(context, context.journal, clock)
    lines = capsys.readouterr().out.splitlines()
    asked = [
        line
        for line in lines
        if line in ("Say: What [b]number[/b] is on our door?", "Say: Finish: one little duck…")
    ]
    assert len(asked) == (not bad) and lines.count(PROBLEM) == bad


def test_a_morning_begun_before_its_file_was_lost_is_printed_still(
    home: Path, clock: StandingClock, capsys: pytest.CaptureFixture[str]
) -> None:
    context = context_at(home, clock, FAMILY)
    assert context.journal is not None
    from warmup.session.session import begin

    begun = begin(context, context.journal, clock)
    context.journal.shut()
    (home / "own.toml").unlink()
    assert main(["today"], lambda: dt.datetime.combine(TODAY, dt.time(9))) == DONE
    out, err = capsys.readouterr()
    assert err == "" and all(f"Say: {prompt.say}" in out for prompt in begun.prompts)
    assert out.count(": Your own, ") == 1


def test_the_year_has_its_levels(capsys: pytest.CaptureFixture[str]) -> None:
    said = out_of(capsys, "year")
    assert "    Your own: front door (" in said and "    Your own: duck (" in said
