"""A level moved in the family's own year.toml: its line alone, and what people wrote there stays."""

import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.config.families import quiet
from tests.config.routines import YEAR, own
from warmup.config import plan_saving
from warmup.config.places import Places
from warmup.config.plan import load_plan
from warmup.config.plan_saving import move_level, shipped_week
from warmup.config.toml_file import FileProblem
from warmup.config.writing import Changed, write_atomic
from warmup.model import LevelId
from warmup.skills import levels

SEE, EASY = LevelId("make-ten:see-places"), LevelId("make-ten:easy-pairs")
FREE = [week for week in range(1, 37) if week not in (10, 15)]


def text(places: Places) -> str:
    return (places.config / "year.toml").read_text("utf-8")


def test_the_first_move_makes_a_file_that_says_what_differs_and_no_more(tmp_path: Path) -> None:
    places = Places(tmp_path, tmp_path)
    shipped = load_plan(places)
    move_level(places, SEE, 11)
    said = tomllib.loads(text(places))
    assert said == {"format": 1, "skills": {"make-ten": {"see-places": 11}}}
    assert load_plan(places) == shipped._replace(weeks={**shipped.weeks, SEE: 11})
    move_level(places, EASY, 16)
    move_level(places, SEE, 10)
    assert tomllib.loads(text(places)) == {"format": 1, "skills": {"make-ten": {"easy-pairs": 16}}}
    move_level(places, EASY, 15)
    assert load_plan(places) == shipped and "easy-pairs" not in text(places)
    assert shipped_week(SEE) == 10 and shipped_week(EASY) == 15


WRITTEN = """# Ours.
format = 1   # the form

# Before the winter:
[skills.make-ten]
# she knows it
see-places = 11   # from 10
easy-pairs = 16

# After it:
[skills.coins]
names = 30
"""


def test_what_people_wrote_around_the_line_stays(tmp_path: Path) -> None:
    places = own(tmp_path, "year", WRITTEN)
    move_level(places, SEE, 12)
    assert text(places) == WRITTEN.replace("see-places = 11 ", "see-places = 12 ")
    move_level(places, SEE, 10)
    assert text(places) == WRITTEN.replace("see-places = 11   # from 10\n", "")
    move_level(places, SEE, 12)
    assert text(places) == WRITTEN.replace("see-places = 11   # from 10\n", "").replace(
        "easy-pairs = 16\n", "easy-pairs = 16\nsee-places = 12\n"
    )
    move_level(places, LevelId("count:to-39"), 7)
    assert text(places).endswith("[skills.coins]\nnames = 30\n\n[skills.count]\nto-39 = 7\n")
    move_level(places, LevelId("count:to-39"), 6)
    assert "[skills.count]" not in text(places)
    assert "# After it:\n[skills.coins]\nnames = 30\n" in text(places)


def test_a_whole_copy_is_edited_in_its_line(tmp_path: Path) -> None:
    places = own(tmp_path, "year", YEAR)
    move_level(places, SEE, 11)
    assert text(places) == YEAR.replace("see-places = 10", "see-places = 11")
    move_level(places, SEE, 10)
    assert text(places) == YEAR, "the line stays: a copy that leaves a level out does not ask it"


@settings(quiet, max_examples=30)
@given(st.lists(st.tuples(st.sampled_from(levels()), st.integers(1, 36)), max_size=12))
def test_any_moves_add_up(tmp_path_factory: pytest.TempPathFactory, moves: list[tuple[LevelId, int]]) -> None:
    places = Places(*[tmp_path_factory.mktemp("year")] * 2)
    wanted = load_plan(places)
    shipped = dict(wanted.weeks)
    for level, week in moves:
        move_level(places, level, week)
        wanted = wanted._replace(weeks={**wanted.weeks, level: week})
        assert load_plan(places) == wanted
    differs = {level: week for level, week in wanted.weeks.items() if shipped[level] != week}
    if (places.config / "year.toml").exists():
        said = tomllib.loads(text(places))["skills"]
        assert {f"{s}:{k}": week for s, table in said.items() for k, week in table.items()} == differs
    else:
        assert not differs


@pytest.mark.parametrize(
    "written",
    [
        "[skills]\nmake-ten.see-places = 12\n",
        "[skills]\nmake-ten = {see-places = 12}\n",
        "skills.make-ten.see-places = 12\nprompts = 6\n",
        "skills = {make-ten = {see-places = 12, easy-pairs = 16}}\n",
        "prompts = 6",
    ],
)
@pytest.mark.parametrize("week", FREE[8:12])
def test_any_layout_is_changed(tmp_path: Path, written: str, week: int) -> None:
    places = own(tmp_path, "year", written)
    before = load_plan(places)
    for target in (week, 10, week):
        move_level(places, SEE, target)
        assert load_plan(places) == before._replace(weeks={**before.weeks, SEE: target})


def test_a_level_by_a_name_of_before_gets_a_line_of_its_own(tmp_path: Path) -> None:
    """renames.py: what a name of before says still counts for the levels that have no line of their own."""
    from warmup import renames

    old, (new, *_) = next(
        (old, named)
        for old in renames.LEVELS
        if (named := renames.levels(old)) and old not in levels() and named[0] in levels()
    )
    skill, key = old.split(":")
    places = own(tmp_path, "year", f"[skills.{skill}]\n{key} = 33\n")
    before = load_plan(places)
    assert before.weeks[LevelId(new)] == 33
    move_level(places, LevelId(new), 31)
    assert load_plan(places).weeks == {**before.weeks, LevelId(new): 31}
    home = shipped_week(LevelId(new))
    assert home is not None
    move_level(places, LevelId(new), home)
    assert load_plan(places).weeks == {**before.weeks, LevelId(new): home}


@pytest.mark.parametrize(
    ("written", "says"),
    [
        ("[skills.make-ten]\nsee-place = 3\n", "line 2"),
        ("[skills.make-ten\n", "line 1"),
        ("format = 2\n", "newer version"),
        (b"\xff\xfe", "UTF-8"),
    ],
)
def test_a_file_that_can_t_be_read_is_named_and_left_as_it_is(
    tmp_path: Path, written: str | bytes, says: str
) -> None:
    places = own(tmp_path, "year", written)
    before = (tmp_path / "year.toml").read_bytes()
    with pytest.raises(FileProblem, match=says):
        move_level(places, SEE, 12)
    assert (tmp_path / "year.toml").read_bytes() == before and len(list(tmp_path.iterdir())) == 1


def test_what_somebody_writes_meanwhile_stays(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    places = own(tmp_path, "year", "[skills.make-ten]\neasy-pairs = 16\n")
    write = write_atomic

    def after_another(path: Path, content: str, over: str | None = None) -> None:
        monkeypatch.setattr(plan_saving, "write_atomic", write)
        own(tmp_path, "year", "[skills.make-ten]\neasy-pairs = 17\n")
        write(path, content, over)

    monkeypatch.setattr(plan_saving, "write_atomic", after_another)
    move_level(places, SEE, 12)
    assert tomllib.loads(text(places))["skills"] == {"make-ten": {"easy-pairs": 17, "see-places": 12}}


def test_a_file_that_never_rests_is_left_as_it_is(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    places = own(tmp_path, "year", WRITTEN)

    def changed(path: Path, content: str, over: str | None = None) -> None:
        raise Changed

    monkeypatch.setattr(plan_saving, "write_atomic", changed)
    with pytest.raises(FileProblem, match="keeps changing"):
        move_level(places, SEE, 12)
    assert text(places) == WRITTEN


def test_a_place_that_is_no_folder_is_named(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(FileProblem):
        move_level(Places(tmp_path / "file", tmp_path), SEE, 12)
