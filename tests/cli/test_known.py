"""What the child knows, printed: in lines, as JSON, and nothing is written."""

import json
from pathlib import Path

import pytest

from tests.cli.test_brief import AT_EIGHT, run
from tests.household import FAMILY, StandingClock, context_at, lived
from warmup.cli.main import DONE, USAGE
from warmup.config.family import Child, year_of
from warmup.model import Mark

DAYS = year_of(FAMILY).mornings
F, H, N = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET


@pytest.fixture
def at_home(home: Path) -> Path:
    """A family of two; one child has four mornings."""
    family = FAMILY._replace(children=(Child("[b]Bean", reads=False), Child("Wren", reads=False)))
    context = context_at(home, StandingClock(AT_EIGHT), family)
    for at, mark in ((16, F), (17, F), (60, H)):
        lived(context, DAYS[at], {"count/to-39": mark, "weekday/today": F})
    lived(context, DAYS[61], {"count/across-30": N})
    assert context.journal is not None
    context.journal.shut()
    return home


def out(capsys: pytest.CaptureFixture[str]) -> list[str]:
    said, err = capsys.readouterr()
    assert err == "" and all(line.isprintable() for line in said.splitlines())
    return said.splitlines()


def test_what_matters_stands_first_in_words(at_home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = (at_home / "journal.db").read_bytes()
    assert run("known", "--child", "[b]Bean") == DONE
    lines = out(capsys)
    assert lines[0] == "What [b]Bean knows on Wednesday, March 3, 2027."
    heads = [line.partition(".")[0] for line in lines if line[:1].isupper() and ": " in line]
    assert heads[:3] == ["Worth revisiting: 1", "Slips that are open: 1", "Growing: 0"]
    assert "    count, to thirty-nine: settled Sep 29; hesitated since ●●◐○" in lines
    assert "    days of the week, today’s name: since Sep 29 ●●●" in lines
    slip = next(line for line in lines if line.startswith("  ○ count, to thirty-nine: "))
    assert "At the table: " in slip and "It came up on " in slip
    assert any("2 met, 2 settled" in line for line in lines)
    assert (at_home / "journal.db").read_bytes() == before


def test_json_has_all_of_it_as_its_docstring_says(at_home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("known", "--child", "[b]Bean", "--json") == DONE
    data = json.loads("\n".join(out(capsys)))
    assert (data["format"], data["version"], data["child"], data["today"]) == (
        "warmup-known", 1, "[b]Bean", "2027-03-03"
    )  # fmt: skip
    level = next(each for each in data["levels"] if each["level"] == "count:to-39")
    assert level == {
        "level": "count:to-39", "strand": "counting", "title": "Count", "label": "to thirty-nine",
        "stand": "worth revisiting", "first": f"{DAYS[16]}", "settled": f"{DAYS[17]}", "times": 4,
        "marks": ["fluent", "fluent", "hesitated", "not_yet"], "why": "settled Sep 29; hesitated since",
    }  # fmt: skip
    assert [(slip["item"], slip["mark"], slip["on"]) for slip in data["slips"]] == [
        ("count/across-30", "not_yet", f"{DAYS[61]}")
    ]
    assert {"week": 5, "held": 2} in data["weeks"] and data["months"][-1]["met"] == 2
    assert {"strand": "counting", "asked": 4, "hesitated": 1} in data["strands"]


def test_another_child_knows_nothing_of_it(at_home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("known", "--child", "Wren", "--json") == DONE
    data = json.loads("\n".join(out(capsys)))
    assert {level["stand"] for level in data["levels"]} == {"not met yet"} and data["slips"] == []
    assert run("known", "--child", "Nobody") == USAGE
