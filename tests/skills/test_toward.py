"""A level claims a code only where it asks for what the standard says; else it leads toward it."""

import json
from collections.abc import Callable
from typing import Any

import pytest

from tests.bank import reference
from tests.skills.asking import bounds, level_asked
from warmup import skills
from warmup.cli.main import DONE, main
from warmup.model import Prompt
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


def test_what_is_written_is_claimed_only_where_its_other_half_is_asked() -> None:
    """standards.toml: K.CC.A.3 writes a numeral and puts it to a number of things; the second is asked.

    K.G.B.5 builds shapes and draws them; the first is asked.
    """
    asked: dict[str, tuple[str, Callable[[Prompt], bool]]] = {
        "K.CC.A.3": ("numerals", lambda prompt: "lay" in prompt.given),
        "K.G.B.5": ("flat-shapes", lambda prompt: "straws" in prompt.say and "figure" in prompt.given),
    }
    written = [code for code, entry in STANDARDS.items() if entry.get("spoken") == "no"]
    assert set(asked) <= set(written)
    for code in written:
        for skill, level in claiming(code):
            assert code in asked and skill == asked[code][0], (skill, code)
            assert any(map(asked[code][1], level_asked(skill, level.key, 60))), (level.key, code)


def test_what_is_said_of_the_words_to_a_hundred_comes_to_the_whole_count() -> None:
    """K.CC.A.1 (standards.toml): the words from one to one hundred, by ones and by tens.

    A level may ask for a stretch of them, as long as each step of the standard is asked to its end as well:
    by ones from one on in a level of its own, by tens from ten on.
    """
    whole = bounds("K.CC.A.1")
    there = {f"{skill}:{level.key}" for skill, level in claiming("K.CC.A.1")}
    assert there == {
        *(f"count:{key}" for key in ("to-20", "to-39", "to-69", "to-100", "one-to-100")),
        *("by-tens:to-50", "by-tens:to-100", "hundred-chart:to-100"),
    }
    ends: dict[int, set[tuple[int, int]]] = {1: set(), 10: set()}
    for name in there - {"hundred-chart:to-100"}:
        skill, _, key = name.partition(":")
        for prompt in level_asked(skill, key, 60):
            step, first = prompt.given.get("by", 1), prompt.given.get("start", prompt.given.get("over"))
            assert step in whole["steps"] and 1 <= first < prompt.given["end"] <= whole["count_to"], name
            ends[step].add((first, prompt.given["end"]))
    assert (1, whole["count_to"]) in ends[1] and (10, whole["count_to"]) in ends[10]
    assert {(p.given["start"], p.given["end"]) for p in level_asked("count", "one-to-100", 20)} == {
        (1, whole["count_to"])
    }
    shown = level_asked("hundred-chart", "to-100", 60)
    assert all(p.given.get("first", 1) >= 1 and p.given.get("last", 1) <= whole["count_to"] for p in shown)


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
    assert shown["count-back:from-5"] == ([], ["1.OA.C.5"]) and shown["make-ten:all"] == (["K.OA.A.4"], [])
    assert len(shown) == len(LEVELS)
