"""routines/*.toml: what came along is in order, a family's own copy wins, and every slip has its line."""

import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from warmup.config import plan
from warmup.config.places import Places, routines_folder
from warmup.config.plan import SHAPES, check_plan, load_plan, load_shape, shapes
from warmup.config.toml_file import Document, FileProblem
from warmup.model import LevelId, Plan, Shape, Slot, SlotKind
from warmup.skills import SKILLS, levels

quiet = settings(database=None, derandomize=True, deadline=None, max_examples=100)
YEAR = (routines_folder() / "year.toml").read_text(encoding="utf-8")
DAILY = (routines_folder() / "daily.toml").read_text(encoding="utf-8")


def own(folder: Path, name: str, content: str | bytes) -> Places:
    (folder / f"{name}.toml").write_bytes(content.encode() if isinstance(content, str) else content)
    return Places(folder, folder)


def known_year() -> str:
    """The year that came along, less the skills that are not there."""
    head, *tables = re.split(r"^(?=\[skills\.)", YEAR, flags=re.MULTILINE)
    return head + "".join(t for t in tables if t[len("[skills.") :].partition("]")[0] in SKILLS)


def slips(folder: Path, old: str, new: str) -> list[str]:
    """What is said of a year in which ``new`` stands for ``old``, beyond what was said before."""
    year = known_year()
    assert old in year
    before = {(p.key, p.expected) for p in check_plan(own(folder, "year", year))}
    after = check_plan(own(folder, "year", year.replace(old, new, 1)))
    return [str(p) for p in after if (p.key, p.expected) not in before]


def test_the_files_that_came_along_are_in_order(tmp_path: Path) -> None:
    assert [str(p) for p in check_plan(Places(tmp_path, tmp_path))] == []


def test_the_plan_names_every_level_with_its_week(tmp_path: Path) -> None:
    loaded = load_plan(Places(tmp_path / "none", tmp_path))
    assert set(loaded.weeks) == set(levels())
    assert (
        loaded.weeks[LevelId("make-ten:see-places")] == 10
        and loaded.weeks[LevelId("count-on:within-10")] == 7
    )


def test_a_familys_own_copy_wins(tmp_path: Path) -> None:
    places = own(tmp_path, "year", "format = 1\n[skills.make-ten]\nsee-places = 3\n")
    shipped = load_plan(Places(tmp_path / "none", tmp_path))
    assert load_plan(places) == shipped._replace(weeks={LevelId("make-ten:see-places"): 3})
    places = own(
        tmp_path,
        "short",
        'prompts = 2\n[[slot]]\nkind = "named"\nmost = 2\nonly = ["make-ten", "count-on:to-95"]',
    )
    slot = Slot(SlotKind.NAMED, 2, ("make-ten", "count-on:to-95"))
    assert load_shape(places, "short") == Shape("short", (slot,), ((36, 2),), 360)


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
            "line 13, review_weeks 3: expected a whole number from 10 to 36, found 9",
        ),
        ("[5, 9, 14,", "[5, 9, 37,", "review_weeks 3: expected a whole number from 10 to 36, found 37"),
        ("[5, 9, 14, 18, 23, 27, 32, 36]", "5", "review_weeks: expected a list in square brackets, found 5"),
        ("from = 34", "from = 1", "nothing_new_from: expected a whole number from 2 to 36, found 1"),
        ("from = 34", "from = 33", "count.to-120: expected a week in which something new may come, found 33"),
        ("weeks = 36", "weeks = 40", "line 11, weeks: expected 36, which can't be changed, found 40"),
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
    year = re.sub(r"review_weeks.*\nnothing_new_from.*\n", "review_every = 5\n", known_year())
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


def test_an_unknown_level_stops_the_own_copy_only(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    strange = known_year().replace("see-places", "see-place")
    with pytest.raises(FileProblem, match=r"see-place.*delete your copy"):
        load_plan(own(tmp_path, "year", strange))
    shipped = tmp_path / "shipped"
    shipped.mkdir()
    (shipped / "year.toml").write_text(strange, encoding="utf-8")
    monkeypatch.setattr(plan, "routines_folder", lambda: shipped)
    weeks = load_plan(Places(tmp_path / "none", tmp_path)).weeks
    assert "make-ten:see-place" not in weeks and weeks[LevelId("make-ten:easy-pairs")] == 15


def test_the_shapes_that_came_along(tmp_path: Path) -> None:
    daily, short, review = (load_shape(Places(tmp_path, tmp_path), name) for name in SHAPES)
    kinds = [slot.kind.value for slot in daily.slots]
    assert kinds == ["calendar", "counting", "wobbled", "newest", "older", "sure"]
    assert [daily.prompts_in(week) for week in (1, 5, 6, 9, 10, 18, 19, 36)] == [6, 6, 7, 7, 8, 8, 9, 9]
    assert daily.seconds == 360 and short.prompts_in(1) == short.prompts_in(36) == 4
    assert SlotKind.NEWEST not in [slot.kind for slot in (*short.slots, *review.slots)]


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ('kind = "older"', 'kind = "oldr"', 'slot 5.kind: expected "calendar" or "counting"'),
        (
            'kind = "older"',
            'kind = "named"',
            "slot 5.only: expected the skills or levels this slot is for, found nothing",
        ),
        (
            'kind = "older"',
            'kind = "named"\nonly = ["make-tne"]',
            'slot 5.only 1: expected a skill or a level, found "make-tne"; did you mean',
        ),
        (
            "most = 9",
            'most = 9\nonly = ["make-ten"]',
            'line 53, slot 5.only: expected no such key: only a slot of kind "named" is held to some skills',
        ),
        (
            'kind = "older"',
            'kind = "newest"',
            'line 51, slot 5.kind: expected each kind once, save named, found "newest" a second time',
        ),
        ("most = 9", "most = 13", "slot 5.most: expected a whole number from 1 to 12, found 13"),
        (
            "most = 9",
            "mots = 9",
            'slot 5.mots: expected one of kind, most, only, found "mots"; did you mean "most"?',
        ),
        ("seconds = 360", "seconds = 5", "seconds: expected a whole number from 60 to 900, found 5"),
        ("to_week = 9", "to_week = 5", "prompts 2.to_week: expected a whole number from 6 to 36, found 5"),
        ("count = 7", "count = 0", "prompts 2.count: expected a whole number from 1 to 12, found 0"),
        ("format = 1", "format = 3", "format: expected format = 1"),
        ("[[slot]]", "[[slots]]", "slots: expected one of format, seconds, prompts, slot"),
    ],
)
def test_every_slip_in_a_shape_has_its_sentence(tmp_path: Path, old: str, new: str, words: str) -> None:
    assert old in DAILY
    places = own(
        tmp_path, "daily", DAILY.replace(old, new) if old == "[[slot]]" else DAILY.replace(old, new, 1)
    )
    with pytest.raises(FileProblem) as caught:
        load_shape(places, "daily")
    assert words in str(caught.value) and str(caught.value).startswith("daily.toml, line ")
    assert str(caught.value) in [str(p) for p in check_plan(places)]


@pytest.mark.parametrize(
    "content", ["", "prompts = 4", "prompts = []\n[[slot]]\nkind = 'sure'\nmost = 1", b"\xff\x00"]
)
def test_files_with_no_shape_and_no_year_in_them(tmp_path: Path, content: str | bytes) -> None:
    for name, load in (("daily", lambda p: load_shape(p, "daily")), ("year", load_plan)):
        with pytest.raises(FileProblem):
            load(own(tmp_path, name, content))


@pytest.mark.parametrize("name", ["", "../daily", "family", "year", "Daily", "a\0b", "x" * 50, "monday"])
def test_a_shape_that_is_not_there(tmp_path: Path, name: str) -> None:
    with pytest.raises(FileProblem, match=r"There are daily, short, review, tuesday\."):
        load_shape(own(tmp_path, "tuesday", DAILY), name)


def test_a_shape_of_the_familys_own(tmp_path: Path) -> None:
    places = own(tmp_path, "tuesday", DAILY)
    assert shapes(places) == (*SHAPES, "tuesday") and load_shape(places, "tuesday").name == "tuesday"


def test_a_folder_in_place_of_the_file(tmp_path: Path) -> None:
    (tmp_path / "daily.toml").mkdir()
    places = Places(tmp_path, tmp_path)
    with pytest.raises(FileProblem, match="found a folder"):
        load_shape(places, "daily")
    assert any("a folder" in str(p) for p in check_plan(places))


WORDS = '=[]{}"\n.,#1 skills make-ten see-places slot kind most only prompts to_week count'


@pytest.mark.slow
@quiet
@given(st.binary(max_size=200) | st.text(st.sampled_from(WORDS), max_size=200).map(str.encode))
def test_any_bytes_give_values_or_a_problem(tmp_path_factory: pytest.TempPathFactory, content: bytes) -> None:
    folder = tmp_path_factory.getbasetemp()
    for name, load in (("daily", lambda p: load_shape(p, "daily")), ("year", load_plan)):
        places = own(folder, name, content)
        try:
            assert isinstance(load(places), Plan | Shape)
        except FileProblem as found:
            assert str(found)
        assert all(str(p) for p in check_plan(places))
        (folder / f"{name}.toml").unlink()


values = st.recursive(
    st.booleans() | st.integers() | st.dates() | st.floats() | st.text(max_size=5),
    lambda inner: (
        st.lists(inner, max_size=2) | st.dictionaries(st.sampled_from(["kind", "to_week", "make-ten"]), inner)
    ),
    max_leaves=3,
)


@pytest.mark.slow
@quiet
@given(st.sampled_from(["format", "seconds", "prompts", "slot", "skills", "weeks"]), values)
def test_any_value_in_any_place_gives_values_or_a_problem(key: str, value: object) -> None:
    file = Document(Path("x.toml"), {"prompts": 4, "slot": [{"kind": "sure", "most": 1}], key: value}, "")
    for work in (
        lambda: plan._shape("x", file),
        lambda: plan._weeks(file, own=True),
        lambda: plan._check_year(file, own=True),
    ):
        try:
            assert work() is not None
        except FileProblem as found:
            assert str(found)
