"""routines/*.toml: a family's own copy wins, and every shape is read with care."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.config.routines import DAILY, known_year, own
from warmup.config import plan, plan_check
from warmup.config.places import Places
from warmup.config.plan import SHAPES, load_plan, load_shape, shapes
from warmup.config.plan_check import check_plan
from warmup.config.toml_file import Document, FileProblem
from warmup.model import LevelId, Plan, Shape, Slot, SlotKind
from warmup.skills import levels

quiet = settings(database=None, derandomize=True, deadline=None, max_examples=100)


def test_the_plan_names_every_level_with_its_week(tmp_path: Path) -> None:
    loaded = load_plan(Places(tmp_path / "none", tmp_path))
    assert set(loaded.weeks) == set(levels())
    assert (
        loaded.weeks[LevelId("make-ten:see-places")] == 10
        and loaded.weeks[LevelId("count-on:within-10")] == 7
    )


SEE_PLACES = "[skills.make-ten]\nsee-places = 3\n"


def test_a_familys_own_year_lies_over_the_one_that_came_along(tmp_path: Path) -> None:
    shipped = load_plan(Places(tmp_path / "none", tmp_path))
    earlier = {**shipped.weeks, LevelId("make-ten:see-places"): 3}
    places = own(tmp_path, "year", SEE_PLACES)
    assert load_plan(places) == shipped._replace(weeks=earlier)
    assert list(load_plan(places).weeks) == list(shipped.weeks), "in the order of the catalogue"
    (problem,) = check_plan(places)
    assert "line 2, skills.make-ten.see-places: expected week 8 or later" in str(problem)
    fewer = own(tmp_path, "year", "format = 1\nprompts = 4\nreview_weeks = [6]")
    assert load_plan(fewer) == shipped._replace(prompts=((36, 4),), reviews=(6,))
    in_week_6 = [level for level, week in shipped.weeks.items() if week == 6]
    assert in_week_6 and len(check_plan(fewer)) == len(in_week_6), "nothing opens in a review week"


@pytest.mark.parametrize(
    ("content", "says"),
    [
        ("", "skills: expected at least one level with its week"),
        ("format = 1", "skills: expected at least one level with its week"),
        (
            "promts = 4",
            'line 1, promts: expected one of format, skills, .*, found "promts"; did you mean "prompts"',
        ),
        ("[skills.make-ten]\nsee-place = 3", "line 2, .*see-place.*see-places"),
        (
            "[skills.make-ten]\nsee-places = 37",
            "line 2, skills.make-ten.see-places: expected a whole number from 1 to 36",
        ),
    ],
)
def test_a_year_that_lies_over_another_is_read_with_care(tmp_path: Path, content: str, says: str) -> None:
    places = own(tmp_path, "year", content)
    with pytest.raises(FileProblem, match=says):
        load_plan(places)
    assert check_plan(places)


def test_a_familys_own_copy_wins(tmp_path: Path) -> None:
    places = own(tmp_path, "year", f"weeks = 36\n{SEE_PLACES}")
    shipped = load_plan(Places(tmp_path / "none", tmp_path))
    assert load_plan(places) == shipped._replace(weeks={LevelId("make-ten:see-places"): 3})
    places = own(
        tmp_path,
        "short",
        'prompts = 2\n[[slot]]\nkind = "named"\nmost = 2\nonly = ["make-ten", "count-on:to-95"]',
    )
    slot = Slot(SlotKind.NAMED, 2, ("make-ten", "count-on:to-95"))
    assert load_shape(places, "short") == Shape("short", (slot,), ((36, 2),), 480, 2)


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

    def parts(shape: Shape) -> dict[str, int]:
        return {slot.kind.value: slot.most for slot in shape.slots}

    usual = {"calendar": 1, "wobbled": 2, "newest": 3, "adding": 1, "older": 10, "sure": 1}
    checks = {"calendar": 1, "wobbled": 2, "newest": 1, "adding": 1, "check": 10, "older": 10, "sure": 1}
    assert parts(daily) == usual and list(parts(daily)) == list(usual)
    assert parts(review) == checks and list(parts(review)) == list(checks)
    assert list(parts(short).items()) == [("calendar", 1), ("wobbled", 1), ("older", 4), ("sure", 1)]
    limits = [(shape.seconds, shape.at_most) for shape in (daily, short, review)]
    assert limits == [(480, 0), (300, 4), (480, 0)]
    assert not any(shape.prompts for shape in (daily, short, review)), "the plan says how many"


def test_how_many_prompts_a_morning_has_by_the_plan(tmp_path: Path) -> None:
    shipped = load_plan(Places(tmp_path / "none", tmp_path))
    weeks = (1, 2, 3, 9, 10, 18, 19, 36)
    assert [shipped.prompts_in(week) for week in weeks] == [5, 5, 6, 6, 7, 7, 8, 8]
    rows = "[skills.make-ten]\nsee-places = 3\n"
    assert load_plan(own(tmp_path, "year", rows)).prompts == shipped.prompts, "an own copy without the key"
    for number in range(4, 11):
        of_its_own = load_plan(own(tmp_path, "year", f"prompts = {number}\n{rows}"))
        assert {of_its_own.prompts_in(week) for week in range(1, 37)} == {number}
    stretches = "prompts = [{ to_week = 4, count = 4 }, { to_week = 20, count = 9 }]\n"
    found = load_plan(own(tmp_path, "year", stretches + rows))
    assert [found.prompts_in(week) for week in (4, 5, 20, 21, 36)] == [4, 9, 9, 9, 9]


@pytest.mark.parametrize("value", ["3", "11", "'six'", "6.0", "true", "[]", "[{ to_week = 36, count = 3 }]"])
def test_a_plan_with_another_number_of_prompts_is_not_used(tmp_path: Path, value: str) -> None:
    places = own(tmp_path, "year", f"format = 1\nprompts = {value}\n[skills.make-ten]\nsee-places = 3\n")
    with pytest.raises(FileProblem, match=r"^year\.toml, line 2, prompts") as caught:
        load_plan(places)
    assert str(caught.value) in [str(problem) for problem in check_plan(places)]


def test_an_own_copy_of_the_form_of_before_counts_for_itself(tmp_path: Path) -> None:
    rest = '[[slot]]\nkind = "counting"\nmost = 1\n[[slot]]\nkind = "sure"\nmost = 1\n'
    stretches = "prompts = [{ to_week = 5, count = 6 }, { to_week = 36, count = 12 }]\n"
    daily = load_shape(own(tmp_path, "daily", f"seconds = 360\n{stretches}{rest}"), "daily")
    assert [daily.prompts_in(week) for week in (1, 5, 6, 36)] == [6, 6, 12, 12]
    assert (daily.seconds, daily.at_most, daily.slots[0].kind) == (360, 0, SlotKind.COUNTING)
    short = load_shape(own(tmp_path, "short", f"prompts = 4\n{rest}"), "short")
    assert short.prompts_in(1) == short.at_most == 4, "short whatever the family's number is"
    short = load_shape(own(tmp_path, "short", f"prompts = 4\nat_most = 3\n{rest}"), "short")
    assert (short.prompts_in(36), short.at_most) == (4, 3)
    assert load_shape(own(tmp_path, "daily", rest), "daily").prompts_in(1) is None
    assert [str(problem) for problem in check_plan(Places(tmp_path, tmp_path))] == []


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
            "most = 10",
            'most = 10\nonly = ["make-ten"]',
            'line 59, slot 5.only: expected no such key: only a slot of kind "named" is held to some skills',
        ),
        (
            'kind = "older"',
            'kind = "newest"',
            'line 57, slot 5.kind: expected each kind once, save named, found "newest" a second time',
        ),
        ("most = 10", "most = 13", "slot 5.most: expected a whole number from 1 to 12, found 13"),
        (
            "most = 10",
            "mots = 10",
            'slot 5.mots: expected one of kind, most, only, found "mots"; did you mean "most"?',
        ),
        ("seconds = 480", "seconds = 5", "seconds: expected a whole number from 60 to 900, found 5"),
        (
            "seconds = 480",
            "prompts = [{ to_week = 5, count = 6 }, { to_week = 5, count = 7 }]",
            "prompts 2.to_week: expected a whole number from 6 to 36, found 5",
        ),
        (
            "seconds = 480",
            "prompts = [{ to_week = 5, count = 0 }]",
            "prompts 1.count: expected a whole number from 1 to 12, found 0",
        ),
        ("seconds = 480", "at_most = 0", "at_most: expected a whole number from 1 to 10, found 0"),
        ("seconds = 480", "at_most = 11", "at_most: expected a whole number from 1 to 10, found 11"),
        ("seconds = 480", "prompts = []", "prompts: expected a number, or at least one stretch of weeks"),
        ("format = 1", "format = 3", "format: expected format = 1"),
        ("[[slot]]", "[[slots]]", "slots: expected one of format, seconds, at_most, prompts, slot"),
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
    "content", ["", "prompts = 44", "prompts = []\n[[slot]]\nkind = 'sure'\nmost = 1", b"\xff\x00"]
)
def test_files_with_no_shape_and_no_year_in_them(tmp_path: Path, content: str | bytes) -> None:
    for name, load in (("daily", lambda p: load_shape(p, "daily")), ("year", load_plan)):
        with pytest.raises(FileProblem):
            load(own(tmp_path, name, content))


@pytest.mark.parametrize(
    "name", ["", "../daily", "family", "year", "own", "Daily", "a\0b", "x" * 50, "monday"]
)
def test_a_shape_that_is_not_there(tmp_path: Path, name: str) -> None:
    with pytest.raises(FileProblem, match=r"There are daily, short, review, tuesday\."):
        load_shape(own(tmp_path, "tuesday", DAILY), name)


def test_a_shape_of_the_familys_own(tmp_path: Path) -> None:
    places = own(tmp_path, "tuesday", DAILY)
    (tmp_path / "own.toml").write_text("[[prompt]]\nsay = 'Who is it?'\nanswer = 'me'\n", "utf-8")
    assert shapes(places) == (*SHAPES, "tuesday") and load_shape(places, "tuesday").name == "tuesday"


WORDS = '=[]{}"\n.,#1 skills make-ten see-places slot kind most only prompts to_week count at_most'


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
@given(st.sampled_from(["format", "seconds", "at_most", "prompts", "slot", "skills", "weeks"]), values)
def test_any_value_in_any_place_gives_values_or_a_problem(key: str, value: object) -> None:
    file = Document(Path("x.toml"), {"prompts": 4, "slot": [{"kind": "sure", "most": 1}], key: value}, "")
    for work in (
        lambda: plan._shape("x", file),
        lambda: plan.weeks_in(file, own=True),
        lambda: plan.plan_prompts(file, own=True),
        lambda: plan_check._check_year(file, own=True),
    ):
        try:
            assert work() is not None
        except FileProblem as found:
            assert str(found)
