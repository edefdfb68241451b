"""What the documents say is what the program does."""

import datetime as dt
import json
import re
import tomllib
from pathlib import Path
from typing import Any

import pytest

from tests import rooms
from tests.household import fixed_routine
from tests.tui.hands import BOTH, LEFT, RIGHT
from warmup.cli import catalogue, week
from warmup.cli.letters import chosen
from warmup.cli.options import parser
from warmup.cli.spoken_lines import AT_A_PROMPT
from warmup.config.places import Places
from warmup.config.plan import load_plan
from warmup.guide import topic, topics
from warmup.journal import routine_json
from warmup.journal.routine_json import routine_text
from warmup.model import LevelId, Morning, Prompt
from warmup.session.things import Gather, Thing
from warmup.session.week import Day, Lesson, New, WeekPage, When
from warmup.session.words import HELLO, MEANINGS
from warmup.tui.actions import ACTIONS, key_name
from warmup.tui.morning import MorningScreen

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text("utf-8")
GUIDE = "\n".join(each.whole for each in topics())
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")


def a_week() -> WeekPage:
    """A page with one of everything."""
    day = dt.date(2027, 3, 3)
    level = New(LevelId("make-ten:all"), "Make ten", "all pairs", 25, day, Lesson.UNSAID, asked=False)
    things = Gather((Thing("cup", day),))
    return WeekPage(25, 3, False, 0, (Day(day, day, When.TODAY),), (level,), things)


def keys_table() -> str:
    """The guide's table of the keys of a morning, made from the action table."""
    rows = ["| key | left hand | what it does |", "|---|---|---|"]
    for action in ACTIONS:
        if action.states.isdisjoint(MorningScreen.STATES):
            continue
        right, left = (
            " ".join(f"`{key_name(key)}`" for key in action.every_key if key in hand)
            for hand in (RIGHT | BOTH, LEFT)
        )
        rows.append(f"| {right or 'menu'} | {left} | **{action.label}**: {action.help} |")
    return "\n".join(rows)


def test_the_table_of_keys_is_the_action_table() -> None:
    kept = topic("keys").text.partition("<!-- keys -->\n")[2].partition("\n<!-- /keys -->")[0]
    assert kept == keys_table()


def test_the_letters_of_a_morning_in_lines_are_those_the_guide_names() -> None:
    section = topic("lines").text
    meant = {letter: chosen(letter, AT_A_PROMPT) for letter in re.findall(r"`(.)`", section)}
    marks = {"w": "fluent", "s": "hesitated", "n": "not_yet", "-": "skip"}
    others = {"k": "another", "m": "wind_down", "e": "cue", "p": "stage", ".": "say_again", "?": "help"}
    assert meant == marks | others


def test_the_two_commands_stand_where_ci_finds_them() -> None:
    run = "python3 -m venv .venv && .venv/bin/pip install -e '.[test]' && .venv/bin/warmup"
    assert README.count(f"\n{run}\n") == 1
    assert re.findall(r"^python3 -m venv .*pytest$", README, re.M) == [run.replace("/warmup", "/pytest")]


def test_the_job_comes_first_in_one_paragraph() -> None:
    title, job, *_ = README.split("\n\n")
    assert title == "# warmup" and len(job.split()) > 50 and "breakfast" in job


def test_every_command_of_the_documents_is_one() -> None:
    known = {name for action in parser()._actions for name in (getattr(action, "choices", None) or ())}
    assert known >= set(re.findall(r"`warmup ([a-z][a-z-]*)", README + GUIDE + DEVELOPERS))


def test_the_json_form_is_documented_field_by_field() -> None:
    form = routine_json.__doc__ or ""
    data = json.loads(routine_text(fixed_routine()))
    named = set(Morning._fields) | set(Prompt._fields) | set(data)
    named |= {"teach_again", "not_asked_yet", "closing"}
    assert not [name for name in sorted(named) if f"``{name}``" not in form]


def test_the_catalogue_is_documented_field_by_field() -> None:
    form = catalogue.__doc__ or ""
    data = catalogue.catalogue_data(load_plan(Places(ROOT, ROOT)))
    skill = data["skills"][0]
    named = {*data, *skill, *skill["levels"][0], *data["items"][0]}
    assert len(named) > 20 and [name for name in sorted(named) if f"``{name}``" not in form] == []


def test_the_week_is_documented_field_by_field() -> None:
    form, page = week.__doc__ or "", a_week()
    data = week.week_data(page, "Bean")
    named = {*data, *data["days"][0], *data["levels"][0], *data["gather"][0]}
    assert len(named) > 20 and [name for name in sorted(named) if f"``{name}``" not in form] == []
    said = {f'"{each.value}"' for each in (*When, *Lesson) if each.value}
    assert [value for value in sorted(said) if value not in form] == []


def test_the_contributors_page_is_at_most_200_lines() -> None:
    assert len(DEVELOPERS.splitlines()) <= 200


def test_the_table_of_rooms_is_that_of_the_layers_contract() -> None:
    """``python -m tests.rooms`` writes it."""
    assert rooms.kept() == rooms.table()
    there = {path.stem for path in (ROOT / "warmup").iterdir() if path.suffix == ".py" or path.is_dir()}
    named = {room for layer in rooms.layers() for room in layer}
    assert named == there - {"__init__", "__pycache__"}


def test_the_tests_stand_in_rooms_of_the_same_names() -> None:
    """Beside the rooms of the program there are only those of the checks that belong to no one room."""
    packages = {path.parent.name for path in (ROOT / "warmup").glob("*/__init__.py")}
    beside = {"bank", "benchmarks", "browser", "frames", "journeys", "oracles", "references"}
    tested = {path.name for path in (ROOT / "tests").iterdir() if path.is_dir()} - {"__pycache__"}
    assert tested == packages | beside
    modules = {path.stem for path in (ROOT / "warmup").glob("*.py")} - {"__init__", "__main__"}
    assert {f"test_{name}.py" for name in modules - {"model"}} <= {
        path.name for path in (ROOT / "tests").glob("test_*.py")
    }


def test_every_file_the_contributors_page_names_is_there() -> None:
    names = re.findall(r"`((?:warmup|tests|routines|\.ci)/[\w./-]+\.(?:py|toml|txt)|\.ci/run)`", DEVELOPERS)
    invented = {name for name in names if "knots" in name}
    assert len(names) > 5
    assert [name for name in sorted(set(names) - invented) if not (ROOT / name).exists()] == []


def test_the_dependencies_are_the_seven() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    names = sorted(re.split(r"[<>=; ]", name)[0] for name in project["dependencies"])
    assert names == ["icalendar", "platformdirs", "python-dateutil", "rich", "textual", "tomli-w", "tomlkit"]
    assert project["requires-python"] == ">=3.11"


def readme() -> str:
    """The README as one line, so that a sentence is found however it is wrapped."""
    return " ".join(README.split())


def guide(name: str) -> str:
    """A topic of the guide as one line."""
    return " ".join(topic(name).text.split())


def test_the_readme_has_room_on_three_screens() -> None:
    """Three windows of a browser or an editor with 45 lines each."""
    assert len(README.splitlines()) <= 135


def test_the_coins_of_the_readme_fit_the_cylinder_it_names() -> None:
    """coins.toml: the Mint's diameters and 16 CFR 1501.4. Dollars to 1978 had 38.1 mm (from memory)."""
    file = tomllib.loads((ROOT / "tests/references/coins.toml").read_text("utf-8"))
    wide = [coin["diameter_mm"] for coin in file["coin"].values()]
    assert len(wide) == 6 and max(wide) < 31.75 < 38.1 and "1.25 inches wide" in readme()
    assert "every coin now made for circulation in the United States fits inside" in readme()
    assert "every United States coin" not in readme() and "grapes in quarters, lengthwise" in readme()


def test_what_the_guide_says_of_studies_is_what_they_studied() -> None:
    """pedagogy.toml: Vlach and Sandhofer (36 children, science), Cepeda 2006 (mostly adults), CDC 2022."""
    file = tomllib.loads((ROOT / "tests/references/pedagogy.toml").read_text("utf-8"))
    (children,) = [
        entry for entry in values(file) if entry.get("source", "").startswith("Vlach and Sandhofer")
    ]
    assert f"one experiment with {children['children']} children of five to seven" in guide("science")
    assert "it taught science, not math" in guide("science") and "mostly of adults" in guide("science")
    assert "screen time not counted" in guide("science")


def values(file: dict[str, Any]) -> list[dict[str, Any]]:
    """Every table of a reference file."""
    tables = [each for each in file.values() if isinstance(each, dict)]
    return tables + [inner for each in tables for inner in values(each)]


@pytest.mark.parametrize(
    "where", [guide("morning"), " ".join(f"{mark}: {meaning}" for mark, meaning in MEANINGS)]
)
def test_a_look_at_the_adult_is_no_hesitation_and_five_seconds_count_in_adding_to_five(where: str) -> None:
    assert "ooking up at you is no hesitation" in where
    assert "a look at your face" not in where and "look for help" not in where
    assert where.casefold().count("five seconds") == 1 and "adding to 5" in where


def test_the_same_minutes_are_promised_everywhere() -> None:
    assert "five to eight minutes" in readme() and HELLO.startswith("Five to eight minutes")
    assert "at most eight minutes" in guide("morning")


def test_no_day_is_promised_for_what_comes_back_and_no_factor_is_named() -> None:
    assert "comes back soon" in guide("morning") and "comes back soon" in readme()
    everything = " ".join((README + GUIDE).split())
    assert "again Monday" not in everything and "times as long" not in everything


def test_the_safety_words_are_there() -> None:
    for words in (
        "choke",
        "under three",
        "does not test or diagnose",
        "differ from state to state",
        "nickname",
    ):
        assert words in README and words in topic("safety").text, words
