"""What the documents say is what the program does."""

import json
import re
import tomllib
from dataclasses import fields
from pathlib import Path

from tests.household import fixed_routine
from warmup.actions import ACTIONS, key_name
from warmup.morning import Morning, Prompt
from warmup.options import parser
from warmup.wire import routine_text

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text("utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")


def keys_table() -> str:
    """The README's table of keys, made from the action table."""
    rows = ["| key | left hand | what it does |", "|---|---|---|"]
    for action in ACTIONS:
        names = [f"`{key_name(key)}`" for key in action.keys]
        left = names[1] if len(names) > 1 else ""
        first = " ".join([names[0], *(f"`{key_name(key)}`" for key in action.more)])
        rows.append(f"| {first} | {left} | **{action.label}**: {action.help} |")
    return "\n".join(rows)


def test_the_table_of_keys_is_the_action_table() -> None:
    kept = README.partition("<!-- keys -->\n")[2].partition("\n<!-- /keys -->")[0]
    assert kept == keys_table()


def test_the_two_commands_stand_where_ci_finds_them() -> None:
    run = "python3 -m venv .venv && .venv/bin/pip install -e '.[test]' && .venv/bin/warmup"
    assert README.count(f"\n{run}\n") == 1
    assert re.findall(r"^python3 -m venv .*pytest$", README, re.M) == [run.replace("/warmup", "/pytest")]


def test_the_job_comes_first_in_one_paragraph() -> None:
    title, job, *_ = README.split("\n\n")
    assert title == "# warmup" and len(job.split()) > 50 and "breakfast" in job


def test_every_command_of_the_readme_is_one() -> None:
    known = {name for action in parser()._actions for name in (getattr(action, "choices", None) or ())}
    assert known >= set(re.findall(r"`warmup ([a-z]+)", README + DEVELOPERS))


def test_the_json_form_is_documented_field_by_field() -> None:
    form = DEVELOPERS.partition("## The JSON of a routine")[2].partition("\n## ")[0]
    data = json.loads(routine_text(fixed_routine()))
    named = {field.name for field in fields(Morning)} | set(Prompt._fields) | set(data) | {"teach_again"}
    assert not [name for name in sorted(named) if f"`{name}`" not in form]


def test_every_file_the_contributors_page_names_is_there() -> None:
    names = re.findall(r"`((?:warmup|tests|routines|\.ci)/[\w./-]+\.(?:py|toml|txt)|\.ci/run)`", DEVELOPERS)
    invented = {name for name in names if "knots" in name}
    assert len(names) > 5
    assert [name for name in sorted(set(names) - invented) if not (ROOT / name).exists()] == []


def test_the_dependencies_are_the_five() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    names = sorted(re.split(r"[<>=; ]", name)[0] for name in project["dependencies"])
    assert names == ["platformdirs", "python-dateutil", "rich", "textual", "tomli-w"]
    assert project["requires-python"] == ">=3.11"


def test_the_safety_words_are_there() -> None:
    for words in (
        "choke",
        "under three",
        "does not test or diagnose",
        "differ from state to state",
        "nickname",
    ):
        assert words in README, words
