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


def test_what_is_written_is_claimed_only_where_a_numeral_is_put_to_things() -> None:
    """standards.toml: K.CC.A.3 writes a numeral and puts it to a number of things; the second is asked."""
    written = [code for code, entry in STANDARDS.items() if entry.get("spoken") == "no"]
    assert "K.CC.A.3" in written
    for code in written:
        for skill, level in claiming(code):
            assert (skill, code) == ("numerals", "K.CC.A.3")
            assert any("lay" in prompt.given for prompt in level_asked(skill, level.key, 60)), level.key


def test_a_count_that_ends_early_or_starts_late_only_leads_to_the_whole_count() -> None:
    """K.CC.A.1 (standards.toml): the words from one to one hundred, by ones and by tens."""
    whole = bounds("K.CC.A.1")
    for skill, level in claiming("K.CC.A.1"):
        for prompt in level_asked(skill, level.key, 60):
            first, step = prompt.given["start"], prompt.given.get("by", 1)
            assert step in whole["steps"]
            if step == 1:
                assert (first, prompt.given["end"]) == (whole["count_from"], whole["count_to"])
        assert max(p.given["end"] for p in level_asked(skill, level.key, 60)) == whole["count_to"]
    assert _toward("count", "K.CC.A.1") == {"to-20", "to-39", "to-69", "to-100"}
    assert _toward("by-tens", "K.CC.A.1") == {"to-50"}


def _toward(skill: str, code: str) -> set[str]:
    return {level.key for level in skills.SKILLS[skill].levels if code in level.toward}


def test_counting_reaches_the_bounds_of_its_code_and_never_passes_them() -> None:
    """K.CC.B.5 (standards.toml): twenty in a line, array or ring, ten in a scatter, twenty counted out."""
    most = bounds("K.CC.B.5")
    reached = dict.fromkeys(most, 0)
    for skill, level in claiming("K.CC.B.5"):
        for prompt in level_asked(skill, level.key, 200):
            layout = prompt.given.get("layout")
            kind = {"scatter": "scattered_max", None: "count_out_max"}.get(layout, "arranged_max")
            reached[kind] = max(reached[kind], prompt.given.get("count", 0))
    assert all(reached[kind] == most[kind] for kind in ("arranged_max", "scattered_max", "count_out_max"))


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
    assert "to-3, week 1: one to three; toward K.OA.A.3" in text
    assert main(["catalogue", "--json"]) == DONE
    data = json.loads(capsys.readouterr().out)
    shown = {
        f"{skill['id']}:{level['key']}": (level["codes"], level["toward"])
        for skill in data["skills"]
        for level in skill["levels"]
    }
    assert shown["count:to-39"] == ([], ["K.CC.A.1"]) and shown["make-ten:all"] == (["K.OA.A.4"], [])
    assert len(shown) == len(LEVELS)
