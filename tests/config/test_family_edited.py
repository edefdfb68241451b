"""family.toml laid out and edited in any way: each change lands, and nothing else moves."""

import datetime as dt
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from tests.config.families import a_family, quiet, written
from tests.config.layouts import CHANGES, LAYOUTS, alike, by_hand, remarks
from warmup.config.family import Family, load, save
from warmup.config.saving import merged

day = dt.date


@pytest.mark.slow
@quiet
@given(a_family, a_family)
def test_a_family_saved_is_the_family_loaded_whatever_lay_there(
    tmp_path_factory: pytest.TempPathFactory, before: Family, after: Family
) -> None:
    path = tmp_path_factory.getbasetemp() / "family.toml"
    path.unlink(missing_ok=True)
    assert save(path, before) == load(path)
    assert alike(load(path)) == alike(before)
    assert save(path, after) == load(path)
    assert alike(load(path)) == alike(after)


@pytest.mark.slow
@quiet
@given(a_family, a_family, a_family)
def test_only_the_difference_of_two_families_is_laid_over_a_third(
    before: Family, after: Family, disk: Family
) -> None:
    assert merged(before, before, disk) == disk
    assert alike(merged(before, after, before)) == alike(after)
    both = merged(before, after, disk)
    for name in ("first_day", "theme", "pennies", "adult", "weekdays", "known_until"):
        old, new = getattr(before, name), getattr(after, name)
        assert getattr(both, name) == (new if new != old else getattr(disk, name))
    for name in ("off", "yearly_off"):
        old, new, here = ({*getattr(each, name)} for each in (before, after, disk))
        assert {*getattr(both, name)} == (here - (old - new)) | (new - old)


LOST_WITH_ITS_LINE = {
    "not off": {"the feast", "with the trip", "one day", "the picnic", "the fair"},
    "not every year": {"two days", "the picnic"},
    "not taught": {"with eggs", "by us"},
}
"""Remarks that go with the line they stand on, or with the heading of a table that is gone."""


def unknown(value: Any, way: tuple[Any, ...] = ()) -> dict[tuple[Any, ...], Any]:
    """The values at keys the program does not know, by their way."""
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    found = {}
    for key, each in inner:
        if key in ("bus", "shoes", "font", "later", "why", "future"):
            found[(*way, key)] = each
        found |= unknown(each, (*way, key))
    return found


@pytest.mark.slow
@pytest.mark.parametrize("layout", LAYOUTS)
@pytest.mark.parametrize("change", CHANGES)
def test_each_change_lands_in_each_layout_and_remarks_and_unknown_keys_stay(
    layout: str, change: str, tmp_path: Path
) -> None:
    text = LAYOUTS[layout]
    path = written(tmp_path, text)
    before = load(path)
    after = CHANGES[change](before)
    assert save(path, after, before) == load(path) == after
    now = path.read_bytes().decode("utf-8")
    gone = LOST_WITH_ITS_LINE.get(change, set())
    assert [each for each in remarks(text) if each not in gone] == [
        each for each in remarks(now) if each not in gone
    ]
    kept, was = (unknown(tomllib.loads(each.lstrip("\ufeff"))) for each in (now, text))
    assert kept == {way: each for way, each in was.items() if change != "not off" or "days_off" not in way}
    old = [line for line in text.splitlines() if "=" not in line or line.split("=")[0].strip() in now]
    assert len(old) > 3, "hardly a line is the old one"
    if after == before:
        assert now == text, "nothing changed, and the file did"


@pytest.mark.slow
@settings(quiet, max_examples=60)
@given(st.sampled_from(list(LAYOUTS)), st.lists(st.sampled_from(list(CHANGES)), min_size=2, max_size=8))
@example("in one line", ["taught", "not taught"])
def test_changes_one_after_another_land_in_every_layout(
    tmp_path_factory: pytest.TempPathFactory, layout: str, changes: list[str]
) -> None:
    path = written(tmp_path_factory.getbasetemp(), LAYOUTS[layout])
    now = load(path)
    for change in changes:
        wanted = CHANGES[change](now)
        if len({child.journal_name for child in wanted.children}) < len(wanted.children):
            continue
        now = save(path, wanted, now)
        assert alike(now) == alike(load(path)) == alike(wanted), change


def _random_remarks(text: str, where: list[int]) -> str:
    lines = text.split("\n")
    for number, place in enumerate(sorted(where, reverse=True)):
        lines.insert(place % len(lines), f"# remark {number}")
    return "\n".join(lines)


@pytest.mark.slow
@settings(quiet, max_examples=40)
@given(
    a_family, st.lists(st.integers(0, 60), max_size=6, unique=True), st.lists(st.sampled_from(list(CHANGES)))
)
def test_remarks_anywhere_in_any_family_stay_in_their_order(
    tmp_path_factory: pytest.TempPathFactory, family: Family, where: list[int], changes: list[str]
) -> None:
    path = tmp_path_factory.getbasetemp() / "family.toml"
    path.unlink(missing_ok=True)
    save(path, family)
    by_hand(path, _random_remarks(path.read_text("utf-8"), where))
    there = remarks_only(path)
    now = load(path)
    for change in changes:
        wanted = CHANGES[change](now)
        if change in ("renamed", "another child"):
            continue  # the name may be taken
        now = save(path, wanted, now)
        assert alike(load(path)) == alike(wanted)
        assert remarks_only(path) == there, change


def remarks_only(path: Path) -> list[str]:
    return [line for line in path.read_text("utf-8").split("\n") if line.startswith("# ")]


def test_a_remark_above_a_heading_stays_above_it(tmp_path: Path) -> None:
    text = LAYOUTS["with remarks"]
    path = written(tmp_path, text)
    family = load(path)
    for change in ("not taught", "another child", "taught", "held"):
        family = save(path, CHANGES[change](family), family)
    now = path.read_text("utf-8")
    assert "\n\n# The child of the house\n[[child]]\nshoes = 9\n" in now
    assert '\n\n# how it looks\n[preferences]\nfont = "huge"' in now
    assert now.index('nickname = "Lark"') < now.index("# how it looks")
    assert now.index('"count/one"') < now.index('nickname = "Lark"')
