"""The catalogue for families who plan ahead, and for anyone who wants to check it."""

import json

import pytest

from warmup import skills
from warmup.cli.main import DONE, main


def test_the_catalogue_lists_every_level_and_item(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["catalogue"]) == DONE
    out = capsys.readouterr().out
    for skill in skills.SKILLS.values():
        assert f"  {skill.id}: {skill.asks}" in out
        for level in skill.levels:
            assert f". {level.key}, week " in out
            assert f"items: {', '.join(level.items)}" in out


def test_the_json_has_what_a_simulation_needs(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["catalogue", "--json"]) == DONE
    data = json.loads(capsys.readouterr().out)
    assert (data["format"], data["version"]) == ("warmup-catalogue", 1)
    assert len(data["skills"]) == len(skills.SKILLS)
    assert [item["id"] for item in data["items"]] == list(skills.item_names())
    levels = {level["key"]: level for skill in data["skills"] for level in skill["levels"]}
    assert len(data["items"]) == sum(
        len(level["items"]) for skill in data["skills"] for level in skill["levels"]
    )
    assert levels and all(1 <= item["week"] <= 36 for item in data["items"])
    ids = {item["id"]: item for item in data["items"]}
    assert (
        ids["make-ten/seven-three"] | {"week": 19, "level": 3, "strand": "adding"}
        == ids["make-ten/seven-three"]
    )
