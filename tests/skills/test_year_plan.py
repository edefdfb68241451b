"""The year that comes along, judged as a whole: what opens when, what it stands on, what waits on what."""

import tomllib
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from tests.bank import reference
from tests.skills.asking import bounds, level_asked
from warmup.skills import SKILLS, levels, locate

YEAR: dict[str, Any] = tomllib.loads(
    (Path(__file__).parents[2] / "routines" / "year.toml").read_text("utf-8")
)
WEEK: dict[str, int] = {
    f"{s}:{key}": week for s, keys in YEAR["skills"].items() for key, week in keys.items()
}
REVIEWS: list[int] = YEAR["review_weeks"]
CLOSED_FROM: int = YEAR["nothing_new_from"]
LEVEL = {f"{skill.id}:{level.key}": level for skill in SKILLS.values() for level in skill.levels}
STANDARDS: dict[str, Any] = reference("standards")["std"]
# The five kinds of prompt a family expects first, by skill or by level.
KINDS = {
    "calendar talk": ("weekday", "month", "date", "school-day"),
    "count on": ("count-on",),
    "the day before and after": ("weekday:tomorrow", "weekday:yesterday", "weekday:around"),
    "coin totals": ("coin-totals",),
    "make ten": ("make-ten",),
}


def test_a_review_comes_every_four_or_five_weeks_and_ends_the_year() -> None:
    assert REVIEWS == [5, 9, 14, 18, 23, 27, 32, 36] and CLOSED_FROM == 34
    gaps = {after - before for before, after in zip([0, *REVIEWS], REVIEWS, strict=False)}
    assert gaps == {4, 5} and REVIEWS[-1] == YEAR["weeks"]


def test_every_level_has_a_week_and_every_week_a_level_but_for_the_quiet_ones() -> None:
    assert set(WEEK) == set(levels()) and 110 <= len(WEEK) <= 130
    quiet = {*REVIEWS, *range(CLOSED_FROM, YEAR["weeks"] + 1)}
    assert set(WEEK.values()) == set(range(1, YEAR["weeks"] + 1)) - quiet


def test_five_new_levels_a_week_at_most_and_six_in_the_first() -> None:
    a_week = Counter(WEEK.values())
    assert a_week.pop(1) <= 6 and max(a_week.values()) <= 5


def test_the_levels_of_a_skill_open_one_after_another() -> None:
    for skill in SKILLS.values():
        weeks = [WEEK[f"{skill.id}:{level.key}"] for level in skill.levels]
        assert weeks == sorted(set(weeks)), skill.id


def test_what_a_level_stands_on_opens_before_it() -> None:
    links = [(name, base) for name, level in LEVEL.items() for base in level.stands_on]
    assert len(links) > 100
    assert [(name, base) for name, base in links if WEEK[base] >= WEEK[name]] == []


def test_what_a_level_waits_on_is_a_misconception_of_a_level_before_it() -> None:
    for name, level in LEVEL.items():
        for item in level.waits_on:
            at = locate(item)
            assert at.name in at.level.misconceptions, (name, item)
            assert WEEK[f"{at.skill.id}:{at.level.key}"] < WEEK[name], (name, item)


def test_each_misconception_makes_a_level_wait() -> None:
    """Else a record of its own would change nothing."""
    own = {
        f"{name.partition(':')[0]}/{item}" for name, level in LEVEL.items() for item in level.misconceptions
    }
    assert own == {item for level in LEVEL.values() for item in level.waits_on} and 35 <= len(own) <= 45


def test_every_kindergarten_code_is_claimed_before_the_last_quarter() -> None:
    claimed: dict[str, int] = {}
    for name, level in LEVEL.items():
        for code in level.codes:
            claimed[code] = min(claimed.get(code, 99), WEEK[name])
    kindergarten = {code for code in STANDARDS if code.startswith("K.")}
    assert kindergarten and kindergarten <= set(claimed)
    assert max(claimed[code] for code in kindergarten) < 28


@pytest.mark.parametrize("kind", KINDS)
def test_the_five_kinds_a_family_expects_are_all_open_by_week_31(kind: str) -> None:
    weeks = [week for name, week in WEEK.items() if {name, name.partition(":")[0]} & set(KINDS[kind])]
    assert weeks and max(weeks) <= 31


def test_adding_comes_early_and_the_whole_count_has_a_level() -> None:
    assert max(WEEK["parts:split-to-5"], WEEK["add-subtract:act-to-5"]) <= 8
    assert WEEK["make-ten:see-places"] <= 12, "adding or make-ten can be asked each morning from then on"
    assert "count:one-to-100" in WEEK


LINE = {"find-to-10": 10, "hops-to-10": 10, "to-20": 20, "to-30": 30}


def test_the_number_line_goes_to_ten_to_twenty_then_to_thirty() -> None:
    assert list(LINE) == list(YEAR["skills"]["number-line"])
    for key, most in LINE.items():
        given = [prompt.given for prompt in level_asked("number-line", key, 60)]
        assert max(n for values in given for n in values.values() if isinstance(n, int)) == most, key


def test_counting_out_reaches_twenty() -> None:
    """K.CC.B.5 (standards.toml)."""
    asked = level_asked("how-many", "count-out-to-20", 100)
    assert max(prompt.given["count"] for prompt in asked) == bounds("K.CC.B.5")["count_out_max"] == 20


LADDERS = {
    **dict.fromkeys(("how-many", "subitize", "compare", "capacity"), "all"),
    **dict.fromkeys(("count", "count-on", "count-back", "numerals"), "all"),
    "flat-shapes": "four-shapes turned-and-thin",
}


@pytest.mark.parametrize("skill", SKILLS)
def test_the_ladders_are_those_whose_higher_rungs_hold_the_lower(skill: str) -> None:
    keys = tuple(level.key for level in SKILLS[skill].levels)
    expected = LADDERS.get(skill, "")
    assert SKILLS[skill].ladder == (keys if expected == "all" else tuple(expected.split()))
