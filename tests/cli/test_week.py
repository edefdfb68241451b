"""The page of a week on paper and as data, and what to have ready."""

import datetime as dt
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.household import FAMILY, TODAY, context_at, start_fixed
from warmup.cli.main import DONE, UNUSABLE, USAGE, main
from warmup.cli.plain import SMALL_THINGS
from warmup.config.family import Child, Family
from warmup.model import LevelId
from warmup.session.summary import to_have_ready
from warmup.session.week import Weeks

Clock = Callable[[], dt.datetime]
QUARTER, NINETY_NINE = LevelId("coins:quarter"), LevelId("place-value:to-99")


def run(*argv: str, today: dt.date = TODAY) -> int:
    """The exit code of a command on a day; argparse's own exits as codes."""
    try:
        return main(argv, lambda: dt.datetime.combine(today, dt.time(8)))
    except SystemExit as ended:
        return int(ended.code or 0)


@pytest.fixture
def said(capsys: pytest.CaptureFixture[str]) -> Callable[..., list[str]]:
    """The lines that a command prints."""

    def lines(*argv: str, today: dt.date = TODAY) -> list[str]:
        assert run(*argv, today=today) == DONE
        return capsys.readouterr().out.splitlines()

    return lines


Said = Callable[..., list[str]]


def keep(home: Path, clock: Clock, **family: Any) -> Family:
    """Save the family with these of its fields."""
    context = context_at(home, clock, FAMILY._replace(**family))
    return context.family


def test_a_week_is_printed_a_thing_a_line(home: Path, clock: Clock, said: Said) -> None:
    keep(home, clock, off=((dt.date(2027, 3, 9), dt.date(2027, 3, 9)),))
    lines = said("week", "--week", "28")
    assert lines[:2] == ["Week 28 of 36, quarter 4: Bean.", "What is to come may still change."]
    assert "Tuesday, March 9: off." in lines
    assert [line for line in lines if line.endswith(": to come.")] == [
        f"{day}: to come." for day in
        ("Monday, March 8", "Wednesday, March 10", "Thursday, March 11", "Monday, March 15")
    ]  # fmt: skip
    assert any(line.startswith("  New: Coins: a quarter") for line in lines)
    things = [line for line in lines if line.startswith("For ")]
    assert things and all(
        line.endswith(".") and (" have ready: " in line or ", if at hand: " in line) for line in things
    )
    assert any(line.startswith("For Monday, March 8") for line in things), "there are two Mondays"
    assert lines[-1] == SMALL_THINGS


def test_this_week_is_that_of_today_and_a_date_has_its_own(home: Path, clock: Clock, said: Said) -> None:
    keep(home, clock)
    lines = said("week")
    assert lines[0] == "Week 27 of 36, quarter 3, review, this week: Bean."
    assert "Wednesday, March 3: today." in lines and any(line.startswith("  Review: ") for line in lines)
    past = said("week", "--date", "2027-02-24")
    assert past[0] == "Week 26 of 36, quarter 3: Bean." and "Monday, February 22: past." in past
    assert "Opened in that week:" in past and "What is to come may still change." not in past
    assert not [line for line in past if line.startswith("For ")]


def test_a_pause_and_ticks_are_said(home: Path, clock: Clock, said: Said) -> None:
    child = Child("Bean", reads=False, held=(QUARTER,), opened=(NINETY_NINE,), paused=TODAY)
    keep(home, clock, children=(child,))
    lines = said("week", "--week", "28")
    assert "Nothing new until Wednesday, March 3." in lines
    at = lines.index("Held back until it was taught:")
    assert lines[at + 1] == "  New: Coins: a quarter, and coins in order of worth · not taught yet"
    assert any(line.startswith("  New: Place value") and line.endswith(" · taught") for line in said("week"))


def test_of_two_children_the_one_named(home: Path, clock: Clock, said: Said) -> None:
    late = Child("Fig", reads=False, first_day=dt.date(2027, 3, 1), first_week=3)
    keep(home, clock, children=(Child("Bean", reads=False), late))
    assert said("week")[0].endswith("this week: Bean.")
    assert said("week", "--child", "Fig")[0] == "Week 3 of 36, quarter 1, this week: Fig."
    assert said("--child", "Fig", "week")[0].endswith("Fig.")
    assert run("week", "--child", "Nobody") == USAGE == run("ready", "--child", "Nobody")


def test_the_json_is_the_page(home: Path, clock: Clock, said: Said) -> None:
    context = context_at(home, clock)
    data = json.loads("\n".join(said("week", "--week", "29", "--json")))
    page = Weeks(context).page(29)
    assert (data["format"], data["version"], data["child"]) == ("warmup-week", 1, "Bean")
    assert (data["week"], data["quarter"], data["review"], data["this_week"]) == (29, 4, False, False)
    assert [level["level"] for level in data["levels"]] == [row.level for row in page.new]
    assert [day["first"] for day in data["days"]] == [f"2027-03-{day}" for day in (15, 16, 17, 18)]
    wanted = [thing["thing"] for thing in data["gather"] if not thing["picture"]]
    assert wanted == [thing.name for thing in page.things.wanted] and wanted
    this = json.loads("\n".join(said("week", "--json")))
    assert this["this_week"] and this["review"] and any(day["reviewed"] for day in this["days"])


@pytest.mark.parametrize("week", ["0", "37", "-1", "x", "٣", "9" * 5000])
def test_a_week_that_is_none_is_refused(week: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("week", f"--week={week}") == USAGE
    assert "expected a week from 1 to 36" in capsys.readouterr().err
    assert run("week", "--week", "3", "--date", "2027-03-03") == USAGE


def test_ready_names_the_next_school_morning_and_its_things(home: Path, clock: Clock, said: Said) -> None:
    context = context_at(home, clock)
    when, wanted, handy = to_have_ready(context, TODAY + dt.timedelta(1))
    line = " ".join(said("ready")).removesuffix(f" {SMALL_THINGS}")
    assert line == f"For {when} have ready: {wanted}. If at hand, too: {handy}." and when == "Thursday"
    assert all(len(row) <= 72 for row in said("ready"))
    assert said("ready", today=dt.date(2027, 3, 5))[0].startswith("For Monday ")
    start_fixed(context)
    assert said("ready", "--date", "2027-03-03")[:1] == [
        "For today have ready: cereal in a cup. If at hand, too: ten frame, day"
    ]
    assert said("ready", "--date", "2027-03-20")[0].startswith("For Monday, March 22 ")


def test_ready_says_that_nothing_is_needed(
    home: Path, clock: Clock, said: Said, monkeypatch: pytest.MonkeyPatch
) -> None:
    context = context_at(home, clock)
    last = context.year.mornings[-1]
    nothing = ["No school morning is left in this year: nothing is needed."]
    assert said("ready", today=last) == nothing == said("ready", "--date", "2150-01-01")
    for handy, more in (("", ""), ("ten frame", " If at hand: ten frame.")):
        monkeypatch.setattr("warmup.cli.week.to_have_ready", lambda *_, h=handy: ("Thursday", "", h))
        assert said("ready") == [f"For Thursday nothing is needed.{more}"]


def test_neither_writes_anything(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None and context.journal.shut()
    before = {path.name: path.read_bytes() for path in home.rglob("*.*")}
    assert run("week") == run("ready") == run("week", "--json") == DONE
    assert {path.name: path.read_bytes() for path in home.rglob("*.*") if path.name in before} == before


def test_without_a_family_the_defaults_are_taken_and_that_is_said(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("week") == DONE == run("ready")
    printed = capsys.readouterr()
    assert printed.err.count("no family.toml yet") == 2 and "this week" in printed.out
    assert not home.exists()


def test_a_routine_file_that_can_not_be_read_is_named(
    home: Path, clock: Clock, capsys: pytest.CaptureFixture[str]
) -> None:
    keep(home, clock)
    (home / "daily.toml").write_text("format = 1\n[[slot]]\nkind = 'sideways'\n", "utf-8")
    assert run("week", "--week", "28") == UNUSABLE
    assert "daily.toml" in capsys.readouterr().err
