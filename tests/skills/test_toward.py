"""A level claims a code only where it asks for what the standard says; else it leads toward it."""

import json
from typing import Any

import pytest

from tests.bank import reference
from tests.skills.asking import bounds, level_asked
from warmup import skills
from warmup.cli.main import DONE, main
from warmup.skills import Level

STANDARDS: dict[str, Any] = reference("standards")["std"]
LEVELS = [(skill.id, level) for skill in skills.SKILLS.values() for level in skill.levels]


def claiming(code: str) -> list[tuple[str, Level]]:
    """The levels that say they exercise a code."""
    return [(skill, level) for skill, level in LEVELS if code in level.codes]


def leading(skill: str) -> set[str]:
    """The codes that levels of a skill lead toward."""
    return {code for level in skills.SKILLS[skill].levels for code in level.toward}


def test_no_level_both_claims_a_code_and_only_leads_to_it() -> None:
    assert [level.key for _, level in LEVELS if set(level.codes) & set(level.toward)] == []


def test_what_is_written_or_built_is_claimed_by_no_spoken_level() -> None:
    """standards.toml: K.CC.A.3 is writing numerals, and no prompt asks for that; reading leads toward it."""
    written = [code for code, entry in STANDARDS.items() if entry.get("spoken") == "no"]
    assert "K.CC.A.3" in written
    assert [(code, skill) for code in written for skill, _ in claiming(code)] == []
    assert leading("numerals") == {"K.CC.A.3"}


def test_a_count_that_ends_early_or_starts_late_only_leads_to_the_whole_count() -> None:
    """K.CC.A.1 (standards.toml): the words from one to one hundred, by ones and by tens."""
    whole = bounds("K.CC.A.1")
    for skill, level in claiming("K.CC.A.1"):
        for prompt in level_asked(skill, level.key, 60):
            first, step = prompt.given["start"], prompt.given.get("by", 1)
            assert step in whole["steps"]
            ends = first, prompt.given["end"]
            assert step != 1 or ends == (whole["count_from"], whole["count_to"]), level.key
        assert max(p.given["end"] for p in level_asked(skill, level.key, 60)) == whole["count_to"]
    assert _toward("count", "K.CC.A.1") == {"to-20", "to-39", "to-69", "to-100"}
    assert _toward("by-tens", "K.CC.A.1") == {"to-50"}


def _toward(skill: str, code: str) -> set[str]:
    return {level.key for level in skills.SKILLS[skill].levels if code in level.toward}


def test_counting_out_to_ten_only_leads_to_counting_out_to_twenty() -> None:
    """K.CC.B.5 (standards.toml): twenty in a line, array or ring, ten in a scatter, twenty counted out."""
    most = bounds("K.CC.B.5")
    limit = {"count-out": "count_out_max", "scatter": "scattered_max"}
    for skill, level in claiming("K.CC.B.5"):
        prompts = level_asked(skill, level.key, 200)
        for name in level.items:
            counts = [p.given["count"] for p in prompts if p.item == f"{skill}/{name}"]
            assert max(counts) == most[limit.get(name, "arranged_max")], name
    assert _toward("how-many", "K.CC.B.5") == {"line-to-5", "count-out-to-10"}


@pytest.mark.parametrize(
    ("skill", "code"),
    [
        ("count-back", "1.OA.C.5"),
        ("subitize", "K.OA.A.3"),
        ("place-value", "2.NBT.A.1"),
        ("symmetry", "4.G.A.3"),
        ("coins", "2.MD.C.8"),
    ],
)
def test_what_only_leads_there_says_so(skill: str, code: str) -> None:
    """Naming a coin solves no problem about money; folding is no line of symmetry of a drawn figure."""
    assert leading(skill) == {code} and skill not in {name for name, _ in claiming(code)}


def test_the_catalogue_says_toward_in_text_and_in_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["catalogue"]) == DONE
    text = capsys.readouterr().out
    assert "line-to-5, week 1: a line to five; K.CC.B.4; toward K.CC.B.5" in text
    assert main(["catalogue", "--json"]) == DONE
    data = json.loads(capsys.readouterr().out)
    shown = {
        f"{skill['id']}:{level['key']}": (level["codes"], level["toward"])
        for skill in data["skills"]
        for level in skill["levels"]
    }
    assert shown["count:to-39"] == ([], ["K.CC.A.1"]) and shown["make-ten:all"] == (["K.OA.A.4"], [])
    assert len(shown) == len(LEVELS)
