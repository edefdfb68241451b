"""Past mornings and notes printed: in lines, as JSON, and searched; nothing is written."""

import datetime as dt
import json
import re
from pathlib import Path

import pytest

from tests.cli.test_brief import AT_EIGHT, run
from tests.household import FAMILY, TODAY, StandingClock, context_at, lived
from warmup.cli import past as past_command
from warmup.cli.main import DONE, USAGE
from warmup.config import family as families
from warmup.config.family import Child, year_of
from warmup.journal.rows import MORNING
from warmup.model import ItemId, Mark
from warmup.session.past import PastMorning

DAYS = [day for day in year_of(FAMILY).mornings if day < TODAY]
DAY = DAYS[-1]
F, H, N, S = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED
SEVEN, TODAY_IS = ItemId("make-ten/seven-three"), ItemId("weekday/today")


@pytest.fixture
def at_home(home: Path) -> Path:
    """A family with two mornings, a correction and three notes."""
    context = context_at(home, StandingClock(AT_EIGHT))
    context.marks_by = "Jo"
    lived(context, DAYS[-5], {SEVEN: S})
    lived(context, DAY, {SEVEN: H, TODAY_IS: F})
    assert context.journal is not None
    morning = PastMorning(context, context.journal, DAY, 1)
    morning.correct(0, N)
    morning.write(0, "Like an egg carton, [b]she\x1b[31m said.")
    morning.write(MORNING, "Slept badly.")
    morning.share(MORNING)
    PastMorning(context, context.journal, DAYS[-5], 1).write(0, "Eggs!")
    context.journal.shut()
    return home


def out(capsys: pytest.CaptureFixture[str]) -> list[str]:
    said, err = capsys.readouterr()
    assert err == "" and all(line.isprintable() for line in said.splitlines())
    return said.splitlines()


def test_the_years_before_come_when_they_are_asked_for(
    at_home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    context = context_at(at_home, StandingClock(AT_EIGHT))
    lived(context, DAYS[0] - dt.timedelta(200), {SEVEN: F})
    assert context.journal is not None
    context.journal.shut()
    assert run("past") == DONE
    *lines, last = out(capsys)
    assert "2027" in lines[-1] and last == "The years before: warmup past --all."
    assert run("past", "--all") == DONE
    assert out(capsys) == [*lines, "2026", "Thursday, February 12, 2026: one asked, one came easily."]


def test_the_list_stands_by_week_the_latest_first(at_home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = (at_home / "journal.db").read_bytes()
    assert run("past") == DONE
    assert out(capsys) == [
        "Week 27",
        "Tuesday, March 2, 2027: two asked, one came easily, one not yet; two notes.",
        "Week 26",
        "Tuesday, February 23, 2027: one asked, one left; one note.",
    ]
    assert (at_home / "journal.db").read_bytes() == before


def test_a_morning_is_told_whole(at_home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("past", str(DAY)) == DONE
    lines = out(capsys)
    assert lines[0] == "Tuesday, March 2, 2027, week 27." and lines[2].startswith("1. “")
    assert lines[3:6] == [
        "Answer: three",
        "It went: not yet, Jo; corrected on March 3: was hesitated.",
        "Note: Like an egg carton, [b]she[31m said. (Jo)",
    ]
    assert lines[-1] == "The morning as a whole: Slept badly. (Jo, in reports)"


def test_json_has_all_of_it_as_its_docstring_says(at_home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("past", "--json") == DONE
    listed = json.loads("\n".join(out(capsys)))
    assert [(each["date"], each["marks"], each["notes"], each["week"]) for each in listed] == [
        (f"{DAY}", ["not_yet", "fluent"], 2, 27), (f"{DAYS[-5]}", ["skipped"], 1, 26)
    ]  # fmt: skip
    assert run("past", str(DAY), "--json") == DONE
    (morning,) = json.loads("\n".join(out(capsys)))
    first = morning["prompts"][0]
    assert first["corrections"] == [{"on": "2027-03-03", "was": "hesitated"}] and first["mark"] == "not_yet"
    assert morning["note"]["shared"] is True and first["note"]["shared"] is False
    assert run("notes", "egg", "--json") == DONE
    found = json.loads("\n".join(out(capsys)))
    assert [each["date"] for each in found] == [f"{DAY}", f"{DAYS[-5]}"]
    named = {*listed[0], *morning, *first, *first["corrections"][0], *first["note"], *found[0]}
    form = past_command.__doc__ or ""
    assert len(named) > 18 and [name for name in sorted(named) if f"``{name}``" not in form] == []


@pytest.mark.parametrize(
    ("words", "found"),
    [([], 3), (["EGG"], 2), (["egg", "CARTON"], 1), (["egg carton"], 1), (["badly"], 1), (["[b]she"], 1)],
)
def test_notes_are_searched(
    at_home: Path, capsys: pytest.CaptureFixture[str], words: list[str], found: int
) -> None:
    assert run("notes", *words) == DONE
    lines = out(capsys)
    assert len(lines) == found and all(re.match(r"\w+day, \w+ \d+, 2027: ", line) for line in lines)


@pytest.mark.usefixtures("at_home")
def test_a_note_stands_behind_what_was_asked(capsys: pytest.CaptureFixture[str]) -> None:
    run("notes", "carton")
    (line,) = out(capsys)
    assert line.startswith("Tuesday, March 2, 2027: “") and line.endswith(
        "” Like an egg carton, [b]she[31m said. (Jo)"
    )
    run("notes", "no", "such")
    assert out(capsys) == ["No note has these words."]


@pytest.mark.usefixtures("at_home")
def test_what_there_is_not_is_a_sentence(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("past", "2026-10-01") == USAGE
    said, err = capsys.readouterr()
    assert said == "" and err == "warmup: nothing is kept of Thursday, October 1, 2026\n"
    assert run("past", "--child", "Nobody") == USAGE and "no child called" in capsys.readouterr().err


def test_without_a_journal_there_is_nothing_yet(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    home.mkdir()
    families.save(home / "family.toml", FAMILY)
    for command, says in (
        ("past", "No warm-up is kept from before today."),
        ("notes", "There is no note yet."),
    ):
        assert run(command) == DONE and out(capsys) == [says]
        assert run(command, "--json") == DONE and out(capsys) == ["[]"]
    assert run("past", f"{DAY}") == USAGE and not (home / "journal.db").exists()


def test_each_child_has_its_own(at_home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    families.save(at_home / "family.toml", FAMILY._replace(children=(*FAMILY.children, Child("Pip"))))
    assert run("notes", "--child", "Pip") == DONE and out(capsys) == ["There is no note yet."]
    assert run("notes", "--child", "Bean") == DONE and len(out(capsys)) == 3
    assert dt.date(2027, 3, 3) == TODAY
