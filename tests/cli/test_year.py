"""``warmup year``: the year in lines and as JSON, which write nothing."""

import datetime as dt
import json
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY
from warmup import skills
from warmup.cli import year as printed
from warmup.cli.main import DONE, USAGE, main
from warmup.config.family import Child, CountdownRule, save
from warmup.model import level_id
from warmup.session.words import SMALL_THINGS, has_small_things

LIVED = FAMILY._replace(
    children=(Child("Bean"), Child("Fern", first_day=dt.date(2027, 1, 11))),
    off=((dt.date(2026, 12, 21), dt.date(2027, 1, 1)),),
    held_weeks=(12,),
    skipped_weeks=(20,),
    countdowns=(CountdownRule("the lake", dt.date(2027, 6, 4)), CountdownRule("tea", yearly="May 2")),
)


def clock() -> dt.datetime:
    return dt.datetime.combine(TODAY, dt.time(8))


@pytest.fixture(autouse=True)
def family(home: Path) -> Path:
    home.mkdir()
    save(home / "family.toml", LIVED)
    return home


def test_the_lines_name_every_week_level_and_what_to_look_forward_to(
    family: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["year"], clock) == DONE
    out = capsys.readouterr().out
    lines = out.splitlines()
    assert lines[:2] == [
        "Today is Wednesday, March 3, 2027. School day 99, week 25.",
        "The last day is Thursday, May 20, 2027.",
    ]
    assert [line for line in lines if line.startswith("Quarter")] == [f"Quarter {n}" for n in (1, 2, 3, 4)]
    assert "  Week 25 · Mar 1 to Mar 4 · 5 new (now)" in lines and out.count("(now)") == 1
    assert "  Week 12 again · Nov 23 to Nov 26 · nothing new" in lines
    assert (
        "  Week 20 · skipped · 5 new" in lines
        and "  Week 15 · Dec 14 to Dec 17 · 8 days off · 5 new" in lines
    )
    assert "  Week 16 · Jan 4 to Jan 7 · 5 new" in lines
    assert has_small_things(*(line for line in lines if "To have ready: " in line))
    assert lines.count(SMALL_THINGS) == 1
    assert lines[-1] == "To look forward to: the lake (June 4, 2027) and tea (May 2)."
    for skill in skills.SKILLS.values():
        for level in skill.levels:
            assert sum(line.startswith(f"    {skill.title}: {level.label} (") for line in lines) == 1
    assert sorted(path.name for path in family.iterdir()) == ["family.toml"]


def test_the_json_says_each_morning_and_day_off_once(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["year", "--json"], clock) == DONE
    data = json.loads(capsys.readouterr().out)
    assert (data["format"], data["version"], data["child"]) == ("warmup-year", 1, "Bean")
    weeks = data["weeks"]
    mornings = [date for week in weeks for date in week["mornings"]]
    assert mornings == sorted(set(mornings)) and len(mornings) == 4 * 36
    assert (data["first_day"], data["last_day"]) == (mornings[0], mornings[-1])
    assert len([date for week in weeks for date in week["off"]]) == 8
    assert {week["state"] for week in weeks} == {"past", "now", "to come", "skipped"}
    assert [week["again"] for week in weeks if week["week"] == 12] == [0, 1]
    levels = [level["level"] for week in weeks for level in week["levels"]]
    known = {level_id(skill.id, level.key) for skill in skills.SKILLS.values() for level in skill.levels}
    assert len(levels) == len(known) and {*levels} == known


def test_the_json_is_documented_field_by_field() -> None:
    form = printed.__doc__ or ""
    named = {
        *("format", "version", "child", "today", "first_day", "last_day", "weeks", "week", "quarter"),
        *("state", "again", "review", "mornings", "off", "levels", "level", "name"),
    }
    assert [name for name in sorted(named) if f"``{name}``" not in form] == []


def test_the_fields_of_the_json_are_those(capsys: pytest.CaptureFixture[str]) -> None:
    main(["year", "--json"], clock)
    data = json.loads(capsys.readouterr().out)
    week = data["weeks"][0]
    assert {*data} == {"format", "version", "child", "today", "first_day", "last_day", "weeks"}
    assert {*week} == {"week", "quarter", "state", "again", "review", "mornings", "off", "levels"}
    assert {*week["levels"][0]} == {"level", "name", "state"}


def test_another_child_has_its_own_year(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["year", "--child", "Fern"], clock) == DONE
    assert "School day 31, week 8." in capsys.readouterr().out
    assert main(["year", "--child", "Moss"], clock) == USAGE
