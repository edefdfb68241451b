"""What is asked in lines before the first prompt: form, missed mornings, a day without school, midnight."""

import datetime as dt
import io
import sys
from pathlib import Path

import pytest

from tests.cli.typed_morning import PAST, Run, fixed, marks
from tests.household import FAMILY, TODAY, StandingClock, context_at
from warmup.cli.main import DONE, main
from warmup.config.family import Child, load
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.session.context import Context
from warmup.session.words import COUNTS, FOR_FUN, HELLO, NOT_PLANNED, READS


def test_a_first_run_asks_the_form_in_lines(
    home: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    lines = [
        "Fern",
        "soon",
        "8/24/2026",
        "Mun",
        "Mon Wed",
        "99",
        "1",
        "week 12",
        "b",
        "",
        "",
        "",
        "",
        "",
        "",
        "w",
    ]
    monkeypatch.setattr(sys, "stdin", io.StringIO("\n".join(lines)))
    assert main(["--plain"], lambda: dt.datetime(2026, 11, 25, 8)) == DONE
    said = capsys.readouterr().out.splitlines()
    assert HELLO in said and "The first school day like 2026-08-31 or 8/31/2026." in said
    assert "School weekdays like Mon Tue Wed Thu; not “Mun”." in said
    assert any(line.startswith("Numbers from 1 to ") for line in said)
    family = load(home / "family.toml")
    assert family.children[0].nickname == "Fern" and family.weekdays == (0, 2)
    journal = Journal.open(home, dt.datetime.now)
    assert [line.mark for line in journal.history("Fern")] == [Mark.FLUENT, None]


@pytest.mark.parametrize("lines", [[], ["Fern"], ["Fern", "", "", "", ""]])
def test_a_form_that_is_left_keeps_nothing(
    lines: list[str], home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "stdin", io.StringIO("".join(f"{line}\n" for line in lines)))
    assert main(["--plain"], lambda: dt.datetime(2026, 11, 25, 8)) == DONE
    assert not (home / "family.toml").exists()


def away(home: Path, clock: StandingClock, count: int) -> Context:
    """The fixed morning after so many mornings without a warm-up."""
    return fixed(home, clock, known_until=PAST[-count - 1])


def test_a_few_missed_mornings_are_asked_day_by_day(home: Path, clock: StandingClock, typed: Run) -> None:
    context = away(home, clock, 3)
    said = typed(context, clock, "s", "x", "u", "o", "s", "off", "?", "", "q")
    assert "No warm-up on these mornings: school, or off?" in said
    assert any(line.startswith("Days off: ") for line in said) and not context.unconfirmed_days()
    assert {day for day, _ in load(home / "family.toml").off} == {PAST[-3], PAST[-1]}
    assert "Prompt 1 of 5." in said


def test_many_missed_mornings_are_one_question(home: Path, clock: StandingClock, typed: Run) -> None:
    context = away(home, clock, 9)
    week = context.morning().week
    said = typed(context, clock, "w", "w", "a", "", "q")
    assert "9 mornings have no warm-up." in said
    assert context.morning().week == week - 1 and not context.unconfirmed_days()
    other = away(home, clock, 6)
    said = typed(other, clock, "d", "all school", "", "q")
    assert "All were school days." in said and other.morning().week == week


@pytest.mark.parametrize(("line", "kind"), [("w", True), ("", False)])
def test_a_day_without_school_asks_whether_it_counts(
    line: str, kind: bool, home: Path, clock: StandingClock, typed: Run
) -> None:
    saturday = dt.date(2027, 3, 6)
    context = context_at(home, clock, FAMILY._replace(known_until=saturday - dt.timedelta(1)), saturday)
    said = typed(context, clock, "huh", line, "q")
    assert NOT_PLANNED in said and COUNTS in said and context.morning().is_school is kind
    assert any(line.startswith("Prompt 1 of ") or line.startswith("Opening") for line in said)


def test_reading_is_asked_about_right_after_a_day_without_school(
    home: Path, clock: StandingClock, typed: Run
) -> None:
    """And neither question comes again: on the screen they stand in the same order."""
    saturday = dt.date(2027, 3, 6)
    family = FAMILY._replace(known_until=saturday - dt.timedelta(1), children=(Child("Bean"),))
    context = context_at(home, clock, family, saturday)
    said = typed(context, clock, "", "w", "", "q")
    assert said.index(COUNTS) < said.index(FOR_FUN) < said.index(READS)
    assert said.count(COUNTS) == said.count(READS) == 1
    assert context.child.reads and any(line.startswith("Prompt 1 of ") for line in said)


def test_past_midnight_a_line_does_nothing_but_ask(
    home: Path, clock: StandingClock, typed: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    context = fixed(home, clock)
    typed(context, clock, "w", "q")
    clock.turn_to(TODAY + dt.timedelta(1))
    said = typed(context, clock, "w", "a", "s", "q")
    assert "It is Thursday now." in said and "Yesterday’s warm-up is still open." in said
    assert marks(context, clock)[:3] == [Mark.FLUENT, Mark.HESITATED, None]
