"""family.toml written by hand, read, and saved again: nothing is lost, whatever stood there."""

import datetime as dt
import tomllib
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.config.families import EXAMPLE, FAMILY, complaint, quiet, written
from warmup.config import family as families
from warmup.config.family import Child, Family, load, save, warnings
from warmup.config.toml_file import Document, FileProblem
from warmup.model import ItemId

day = dt.date


@pytest.mark.slow
@quiet
@given(
    st.binary(max_size=300)
    | st.text(st.sampled_from('=[]{}"\n.,# school child nickname first_day 2026-08-31')).map(str.encode)
)
def test_any_bytes_give_a_family_or_a_problem(
    tmp_path_factory: pytest.TempPathFactory, content: bytes
) -> None:
    try:
        assert isinstance(load(written(tmp_path_factory.getbasetemp(), content)), Family)
    except FileProblem as found:
        assert str(found)


values = st.recursive(
    st.booleans() | st.integers() | st.dates() | st.text(st.characters(codec="utf-8"), max_size=5),
    lambda inner: (
        st.lists(inner, max_size=2)
        | st.dictionaries(st.sampled_from(["a", "from", "nickname"]), inner, max_size=2)
    ),
    max_leaves=3,
)
WAYS = [
    ("format",), ("school",), ("child",), ("countdown",), ("preferences",),
    *(("school", key) for key in tomllib.loads(EXAMPLE)["school"]),
    ("school", "days_off", 1, "from"), ("child", 0), ("child", 0, "nickname"), ("child", 0, "held"),
    ("child", 0, "paused"), ("child", 0, "taught"), ("child", 0, "taught", "make-ten/seven-three"),
    ("countdown", 0), ("countdown", 1, "yearly"), ("preferences", "theme"), ("preferences", "pennies"),
]  # fmt: skip


@pytest.mark.slow
@settings(quiet, max_examples=300)
@given(st.sampled_from(WAYS), values)
def test_any_value_in_any_place_gives_a_family_or_a_problem(
    way: tuple[str | int, ...], value: object
) -> None:
    data = tomllib.loads(EXAMPLE)
    data["child"][0]["taught"] = {"make-ten/seven-three": day(2026, 12, 3)}
    at: Any = data
    for key in way[:-1]:
        at = at[key]
    at[way[-1]] = value
    try:
        assert isinstance(families.parse(Document(Path("family.toml"), data, "")), Family)
    except FileProblem as found:
        assert str(found)


def test_keys_unknown_here_survive_a_save(tmp_path: Path) -> None:
    more = EXAMPLE.replace("to = 2027-01-01", 'to = 2027-01-01, why = "snow"').replace(
        '[[child]]\nnickname = "Bean"',
        'color = "blue"\n[[child]]\nnickname = "Pip"\nshoes = 9\n[[child]]\nnickname = "Bean"\nhat = true',
    )
    path = written(tmp_path, f'future = [1, 2]\n{more}font = "huge"\n[later]\nx = 1\n')
    family = load(path)
    pip, bean = family.children
    save(
        path,
        family._replace(children=(replace(pip, nickname="Pippa"), replace(bean, held=())), theme="light"),
    )
    data = tomllib.loads(path.read_text())
    assert data["future"] == [1, 2] and data["later"] == {"x": 1}
    assert data["school"]["color"] == "blue" and data["preferences"]["font"] == "huge"
    assert data["school"]["days_off"][1]["why"] == "snow"
    pippa = {"nickname": "Pippa", "record": "Pip", "shoes": 9}
    assert data["child"] == [pippa, {"nickname": "Bean", "hat": True, "held": []}]
    save(path, load(path)._replace(children=(bean, Child("Lark"))))
    bean_then = {"nickname": "Bean", "hat": True, "held": ["coins:worth"]}
    assert tomllib.loads(path.read_text())["child"] == [bean_then, {"nickname": "Lark", "record": "Lark"}]


def test_what_was_taught_again_is_a_table_under_its_child(tmp_path: Path) -> None:
    rows = (ItemId("make-ten/seven-three"), day(2026, 12, 3)), (ItemId("knots/one"), day(2026, 12, 1))
    path = written(tmp_path, EXAMPLE)
    bean = replace(load(path).children[0], taught=rows)
    save(path, FAMILY._replace(children=(bean, Child("Pip", taught=rows[:1], paused=day(2026, 12, 3)))))
    text = path.read_text()
    assert text.count('\n[child.taught]\n"make-ten/seven-three" = 2026-12-03\n') == 2
    assert "\npaused = 2026-12-03\n" in text and load(path).children[1].paused == day(2026, 12, 3)
    assert [child.taught for child in load(path).children] == [rows, rows[:1]]
    assert [warning for warning in warnings(load(path)) if "taught" in warning] == [
        'Bean has "knots/one" taught again, and there is no such item.'
    ]
    save(path, load(path)._replace(children=(replace(bean, taught=()), Child("Pip"))))
    assert "taught" not in path.read_text()


def test_two_children_never_share_a_record(tmp_path: Path) -> None:
    said = complaint(
        tmp_path, 'nickname = "Bean"', 'nickname = "Bean"\n[[child]]\nnickname = "Pip"\nrecord = "Bean"'
    )
    assert "line 15, child 2.record: expected a record no other child has" in said


def test_a_file_that_cannot_be_read_is_never_written_over(tmp_path: Path) -> None:
    for content in (b"\xff\xfe", b"[school", b"format = 2", EXAMPLE.replace("Bean", "").encode()):
        path = written(tmp_path, content)
        with pytest.raises(FileProblem):
            save(path, FAMILY)
        assert path.read_bytes() == content and [p.name for p in tmp_path.iterdir()] == ["family.toml"]


def test_a_family_that_would_not_load_again_is_not_saved(tmp_path: Path) -> None:
    path = tmp_path / "family.toml"
    for nickname in ("", "x" * 41, "\x07"):
        with pytest.raises(FileProblem, match=r"child 1\.nickname"):
            save(path, FAMILY._replace(children=(Child(nickname),)))
    with pytest.raises(FileProblem, match=r"first_day"):
        save(path, FAMILY._replace(first_day=day(1, 1, 1)))
    assert not path.exists()


@pytest.mark.parametrize("number", range(4, 11))
def test_every_number_of_prompts_is_kept_and_taken_out_again(tmp_path: Path, number: int) -> None:
    path = written(tmp_path, EXAMPLE)
    assert load(path).prompts is None
    asked = save(path, FAMILY._replace(prompts=number), FAMILY)
    assert load(path) == asked and asked.prompts == number and f"\nprompts = {number}\n" in path.read_text()
    assert save(path, FAMILY, asked) == FAMILY and path.read_text() == EXAMPLE
