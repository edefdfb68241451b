"""``warmup check`` on routines/*.toml: what came along is in order, and every slip has its line."""

import re
from pathlib import Path

import pytest

from tests.config.routines import known_year, own
from warmup.config.places import Places
from warmup.config.plan import load_plan, load_shape
from warmup.config.plan_check import check_plan
from warmup.config.toml_file import FileProblem
from warmup.skills import SKILLS


def slips(folder: Path, old: str, new: str) -> list[str]:
    """What is said of a year in which ``new`` stands for ``old``, beyond what was said before."""
    year = known_year()
    assert old in year
    before = {(p.key, p.expected) for p in check_plan(own(folder, "year", year))}
    after = check_plan(own(folder, "year", year.replace(old, new, 1)))
    return [str(p) for p in after if (p.key, p.expected) not in before]


def test_the_files_that_came_along_are_in_order(tmp_path: Path) -> None:
    assert [str(p) for p in check_plan(Places(tmp_path, tmp_path))] == []


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        (
            "[skills.make-ten]",
            "[skills.make-tne]",
            'expected the name of a skill, found "make-tne"; did you mean "make-ten"?',
        ),
        (
            "see-places",
            "see-place",
            'skills.make-ten.see-place: expected a level of "make-ten", found "see-place"; did you mean',
        ),
        (
            "see-places = 10",
            "see-places = 0",
            "skills.make-ten.see-places: expected a whole number from 1 to 36, found 0",
        ),
        ("see-places = 10", "see-places = 37", "found 37"),
        ("see-places = 10", "see-places = 1.5", "found 1.5"),
        (
            "see-places = 10",
            "see-places = 14",
            "expected a week in which something new may come, found 14, a review week",
        ),
        ("see-places = 10", "see-places = 35", "found 35, and nothing new comes from week 34 on"),
        (
            "see-places = 10",
            "see-places = 16",
            "easy-pairs: expected week 16 or later (it stands on make-ten:see-places), found 15",
        ),
        ("see-places = 10\n", "", "expected a week, because make-ten:easy-pairs stands on it, found nothing"),
        ("see-places = 10", "see-places = 1", "at most 5 new levels a week (6 in week 1), found 7 in week 1"),
        ("see-places = 10", "see-places = 4", "at most 5 new levels a week (6 in week 1), found 6 in week 4"),
        (
            "[5, 9, 14,",
            "[5, 9, 9,",
            "line 19, review_weeks 3: expected a whole number from 10 to 36, found 9",
        ),
        ("[5, 9, 14,", "[5, 9, 37,", "review_weeks 3: expected a whole number from 10 to 36, found 37"),
        ("[5, 9, 14, 18, 23, 27, 32, 36]", "5", "review_weeks: expected a list in square brackets, found 5"),
        ("from = 34", "from = 1", "nothing_new_from: expected a whole number from 2 to 36, found 1"),
        ("from = 34", "from = 33", "count.to-120: expected a week in which something new may come, found 33"),
        ("weeks = 36", "weeks = 40", "line 17, weeks: expected 36, which can't be changed, found 40"),
        ("count = 5", "count = 3", "line 22, prompts 1.count: expected a whole number from 4 to 10, found 3"),
        (
            "count = 8",
            "count = 11",
            "line 25, prompts 4.count: expected a whole number from 4 to 10, found 11",
        ),
        ("to_week = 9", "to_week = 2", "prompts 2.to_week: expected a whole number from 3 to 36, found 2"),
        ("{ to_week = 2, count = 5 }", "{ to_week = 2 }", "prompts 1.count: expected a whole number from 4"),
        ("prompts = [", "prompts = 3\nothers = [", "prompts: expected a whole number from 4 to 10, found 3"),
        ("prompts = [", "prompts = []\nothers = [", "prompts: expected a number, or at least one stretch"),
        ("format = 1", "format = 2", "expected format = 1"),
        ("[skills.make-ten]", "[skills]\nmake-ten = 1\n[later]", "expected a table, found 1"),
    ],
)
def test_every_slip_in_the_year_has_its_sentence(tmp_path: Path, old: str, new: str, words: str) -> None:
    found = slips(tmp_path, old, new)
    assert any(words in said for said in found), found
    assert all(said.startswith("year.toml, line ") for said in found)


def test_a_year_of_the_older_form_means_the_review_weeks_that_came_along(tmp_path: Path) -> None:
    """It said "every fifth week"; the weeks of the shipped file are meant, and nothing is said."""
    old = r"\nreview_weeks = .*\nnothing_new_from = .*\nprompts = \[(\n .*)*\n\]\n"
    year = re.sub(old, "\nreview_every = 5\n", known_year())
    assert "prompts = [" not in year
    assert "review_weeks" not in year.partition("[skills.")[0].replace("`review_weeks`", "")
    places = own(tmp_path, "year", year)
    assert load_plan(places) == load_plan(Places(tmp_path / "none", tmp_path))
    assert [str(problem) for problem in check_plan(places)] == []
    places = own(tmp_path, "year", year.replace("every = 5", "every = 6"))
    assert "review_every: expected 5, which can't be changed, found 6" in str(check_plan(places)[0])
    places = own(tmp_path, "year", year.replace("see-places = 10", "see-places = 14"))
    assert check_plan(places) == [], "a review week today; when the file was written it was none"


def test_a_family_may_have_other_review_weeks(tmp_path: Path) -> None:
    year = re.sub(r"review_weeks = .*", "review_weeks = [5, 10]", known_year())
    places = own(tmp_path, "year", year)
    assert load_plan(places).reviews == (5, 10) and load_plan(places).nothing_new_from == 34
    said = [str(problem) for problem in check_plan(places)]
    assert said and all("found 10, a review week" in each for each in said)
    loose = own(tmp_path, "year", year.replace("[5, 10]", "[]"))
    assert load_plan(loose).reviews == () and check_plan(loose) == []


def test_a_level_stands_on_no_later_one_of_another_skill(tmp_path: Path) -> None:
    stand = [
        (f"{s.id}:{level.key}", base)
        for s in SKILLS.values()
        for level in s.levels
        for base in level.stands_on
    ]
    assert stand
    weeks = load_plan(Places(tmp_path / "none", tmp_path)).weeks
    level, base = next((level, base) for level, base in stand if base in weeks)
    skill, key = base.split(":")
    year = re.sub(rf"(\[skills\.{skill}\][^\[]*?\n{key} = )[0-9]+", r"\g<1>34", known_year())
    said = [str(p) for p in check_plan(own(tmp_path, "year", year))]
    assert any(
        f"{level.replace(':', '.')}: expected week 34 or later (it stands on {base})" in s for s in said
    ), said


def test_a_family_may_leave_out_what_nothing_stands_on(tmp_path: Path) -> None:
    top = "make-ten:take-from-ten"
    assert not any(top in level.stands_on for s in SKILLS.values() for level in s.levels)
    assert slips(tmp_path, "take-from-ten = 28\n", "") == []


def test_a_folder_in_place_of_the_file(tmp_path: Path) -> None:
    (tmp_path / "daily.toml").mkdir()
    places = Places(tmp_path, tmp_path)
    with pytest.raises(FileProblem, match="found a folder"):
        load_shape(places, "daily")
    assert any("a folder" in str(p) for p in check_plan(places))
