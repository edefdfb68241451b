"""family.toml edited by hand and by several windows at once: each change lands, and nothing else moves."""

import datetime as dt
import os
import tomllib
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.edges.families import EXAMPLE, FAMILY, a_family, quiet, written
from tests.household import desk_at
from warmup import writing
from warmup.desk import Desk
from warmup.documents import FileProblem
from warmup.family import Child, CountdownRule, Family, load, save
from warmup.saving import merged

day = dt.date


def by_hand(path: Path, text: str) -> None:
    """Write the file as an editor does, a while after the program did."""
    path.write_text(text, "utf-8")
    os.utime(path, (path.stat().st_atime, path.stat().st_mtime + 5))


def alike(family: Family) -> tuple[Any, ...]:
    """The family without the order of what has none."""
    children = [
        (c.record, c.nickname, {*c.held}, {*c.opened}, dict(c.taught), c.paused)
        for c in sorted(family.children, key=lambda child: child.record)
    ]
    loose = {"off": {*family.off}, "extra": {*family.extra}, "countdowns": {*family.countdowns}}
    return (children, *family._replace(children=(), off=(), extra=(), countdowns=()), loose)


@quiet
@given(a_family, a_family)
def test_a_family_saved_is_the_family_loaded_whatever_lay_there(
    tmp_path_factory: pytest.TempPathFactory, before: Family, after: Family
) -> None:
    path = tmp_path_factory.getbasetemp() / "family.toml"
    path.unlink(missing_ok=True)
    assert save(path, before) == load(path) == before
    assert save(path, after) == load(path)
    assert alike(load(path)) == alike(after)


@quiet
@given(a_family, a_family, a_family)
def test_only_the_difference_of_two_families_is_laid_over_a_third(
    before: Family, after: Family, disk: Family
) -> None:
    assert merged(before, before, disk) == disk
    assert alike(merged(before, after, before)) == alike(after)
    both = merged(before, after, disk)
    for name in ("first_day", "theme", "pennies", "adult", "weekdays", "settled"):
        old, new = getattr(before, name), getattr(after, name)
        assert getattr(both, name) == (new if new != old else getattr(disk, name))
    gone, come = {*before.off} - {*after.off}, {*after.off} - {*before.off}
    assert {*both.off} == ({*disk.off} - gone) | come


LAYOUTS = {
    "plain": EXAMPLE,
    "with remarks": """# Our family
format = 1   # leave this

[school]  # Monday to Thursday
weekdays = ["Monday", "Tuesday", "Wednesday", "Thursday"]  # no Fridays
first_day = 2026-08-31
  days_off = [
    2026-11-26,  # the feast
    # the long one
    {from = 2026-12-21, to = 2027-01-01, why = "winter"},  # with the trip

  ] # and no more
bus = "yellow"
began = 2026-11-25 # in November

# The child of the house
[[child]]
shoes = 9
nickname = "Bean" # not a real name
held = ["coins:dime"] # not yet
# what was taught again

[child.taught] # by us
"make-ten/seven-three" = 2026-12-03 # with eggs

# how it looks
[preferences]
font = "huge" # for the couch
theme = "dark"
# the end
""",
    "dotted": """
school.first_day = 2026-08-31 # first
school.weekdays = ["Monday"]
preferences.theme = "dark"
preferences.font = "huge"
child = [{nickname = "Bean", held = ["coins:dime"], shoes = 9}]
countdown = [{name = "the lake", date = 2027-06-04}] # soon
""",
    "in one line": """
school = {first_day = 2026-08-31, days_off = [2026-11-26], bus = "yellow"}
preferences = {theme = "dark"} # the look
[[child]]
nickname = "Bean"
taught = {"make-ten/seven-three" = 2026-12-03} # with eggs
[later]
x = 1""",
    "tables of days": """
[[child]]
nickname = "Bean" # she
[[child]]
nickname = "Pip" # he
record = "Pipkin"
taught.one = 2026-12-03
[school]
first_day = "2026-08-31"
# the feast
[[school.days_off]] # one day
from = 2026-11-26
to = 2026-11-26
why = "feast"
# the end of it
[preferences]
answers = "Covered"
""",
    "of windows": '\ufeff[school]\r\nfirst_day = 2026-08-31 # first\r\n\r\n# her\r\n[[child]]\r\nnickname = "Bean"\r\n',
}
TODAY = day(2027, 3, 3)


def _child(family: Family, **changes: Any) -> Family:
    return family._replace(children=(replace(family.children[0], **changes), *family.children[1:]))


CHANGES: dict[str, Callable[[Family], Family]] = {
    "light": lambda f: f._replace(theme="light"),
    "covered": lambda f: f._replace(answers_shown=not f.answers_shown),
    "an adult": lambda f: f._replace(adult="Dad", animal="Moose", pennies=False),
    "settled": lambda f: f._replace(settled=TODAY),
    "off": lambda f: f._replace(off=(*f.off, (TODAY, TODAY), (TODAY, TODAY + dt.timedelta(3)))),
    "not off": lambda f: f._replace(off=()),
    "extra": lambda f: f._replace(extra=(*f.extra, TODAY)),
    "held": lambda f: _child(f, held=(*f.children[0].held, "count:to-20")),
    "not held": lambda f: _child(f, held=()),
    "opened": lambda f: _child(f, opened=("count:to-20",)),
    "taught": lambda f: _child(f, taught=(*f.children[0].taught, ("count/one", TODAY))),
    "not taught": lambda f: _child(f, taught=()),
    "paused": lambda f: _child(f, paused=TODAY),
    "renamed": lambda f: _child(f, nickname="Beanie"),
    "another child": lambda f: f._replace(children=(*f.children, Child("Lark", taught=(("a/b", TODAY),)))),
    "a countdown": lambda f: f._replace(countdowns=(*f.countdowns, CountdownRule("the hill", date=TODAY))),
    "another week": lambda f: f._replace(first_week=7, weekdays=(1, 4)),
}
LOST_WITH_ITS_LINE = {
    "not off": {"the feast", "with the trip", "one day"},
    "not taught": {"with eggs", "by us"},
}
"""Remarks that go with the line they stand on, or with the heading of a table that is gone."""


def remarks(text: str) -> list[str]:
    """Every comment of a text, in its order; no value in these files holds a #."""
    return [line.partition("#")[2].strip() for line in text.splitlines() if "#" in line]


def unknown(value: Any, way: tuple[Any, ...] = ()) -> dict[tuple[Any, ...], Any]:
    """The values at keys the program does not know, by their way."""
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    found = {}
    for key, each in inner:
        if key in ("bus", "shoes", "font", "later", "why", "future"):
            found[(*way, key)] = each
        found |= unknown(each, (*way, key))
    return found


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


@settings(quiet, max_examples=200)
@given(st.sampled_from(list(LAYOUTS)), st.lists(st.sampled_from(list(CHANGES)), min_size=2, max_size=8))
def test_changes_one_after_another_land_in_every_layout(
    tmp_path_factory: pytest.TempPathFactory, layout: str, changes: list[str]
) -> None:
    path = written(tmp_path_factory.getbasetemp(), LAYOUTS[layout])
    now = load(path)
    for change in changes:
        wanted = CHANGES[change](now)
        if len({child.record for child in wanted.children}) < len(wanted.children):
            continue
        now = save(path, wanted, now)
        assert alike(now) == alike(load(path)) == alike(wanted), change


def _random_remarks(text: str, where: list[int]) -> str:
    lines = text.split("\n")
    for number, place in enumerate(sorted(where, reverse=True)):
        lines.insert(place % len(lines), f"# remark {number}")
    return "\n".join(lines)


@settings(quiet, max_examples=120)
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


# -- two windows


LEVELS = ("coins:dime", "count:to-20", "make-ten:all")
OPS = st.one_of(
    st.tuples(st.just("hold"), st.sampled_from(LEVELS), st.booleans()),
    st.tuples(st.just("theme"), st.sampled_from(["dark", "light"]), st.just(True)),
    st.tuples(st.just("off"), st.integers(1, 5), st.just(True)),
    st.tuples(st.just("taught"), st.sampled_from(["count/one", "coins/two"]), st.booleans()),
)


def applied(family: Family, op: tuple[str, Any, bool]) -> Family:
    what, which, on = op
    (bean,) = family.children
    match what:
        case "hold":
            held = {*bean.held, which} if on else {*bean.held} - {which}
            return family._replace(children=(replace(bean, held=tuple(sorted(held))),))
        case "theme":
            return family._replace(theme=which)
        case "off":
            return family._replace(off=tuple(sorted({*family.off, (day(2027, 1, which),) * 2})))
    taught = dict(bean.taught) | {which: TODAY}
    if not on:
        del taught[which]
    return family._replace(children=(replace(bean, taught=tuple(taught.items())),))


@quiet
@given(st.lists(st.tuples(st.integers(0, 2), OPS), max_size=12))
def test_windows_in_turn_and_a_hand_between_undo_nothing_of_each_other(
    tmp_path_factory: pytest.TempPathFactory, turns: list[tuple[int, tuple[str, Any, bool]]]
) -> None:
    """Two windows that never read again, and an editor: what each changed, and only that, is in the file."""
    path = written(tmp_path_factory.getbasetemp(), LAYOUTS["with remarks"])
    model = load(path)
    seen = [model, model]
    for number, (who, op) in enumerate(turns):
        if who == 2:
            model = model._replace(extra=(*model.extra, day(2027, 2, 1) + dt.timedelta(number)))
            dates = ", ".join(str(each) for each in model.extra)
            lines = [each for each in path.read_text("utf-8").split("\n") if not each.startswith("extra")]
            lines.insert(lines.index("[school]  # Monday to Thursday") + 1, f"extra = [{dates}]")
            by_hand(path, "\n".join([*lines, f"# by hand {number}"]))
            continue
        wanted = applied(seen[who], op)
        if wanted != seen[who]:
            model = applied(model, op)
        old, seen[who] = seen[who], wanted
        save(path, wanted, old)
        assert alike(load(path)) == alike(model)
    text = path.read_text("utf-8")
    assert all(f"# by hand {number}" in text for number, (who, _) in enumerate(turns) if who == 2)
    assert all(each in remarks(text) for each in ("Our family", "the feast", "how it looks", "the end"))


def test_a_window_takes_up_what_was_written_by_hand_meanwhile(
    tmp_path: Path, clock: Callable[[], dt.datetime]
) -> None:
    desk = desk_at(tmp_path, clock)
    path = tmp_path / "family.toml"
    text = path.read_text("utf-8").replace("[school]", "# ours\n[school]\ndays_off = [2027-03-04]")
    by_hand(path, text.replace('nickname = "Bean"', 'nickname = "Beanie"\nheld = ["coins:dime"]'))
    desk.prefer(theme="light")
    assert desk.unsaved == "" and desk.family == load(path)
    assert desk.family.theme == "light" and desk.family.off == ((day(2027, 3, 4),) * 2,)
    assert desk.child == Child("Beanie", held=("coins:dime",), record="Bean")
    assert desk.year.kind(day(2027, 3, 4)).value == "day off"
    desk.hold("count:to-20", back=True)
    assert load(path).children[0].held == ("coins:dime", "count:to-20") and "# ours" in path.read_text(
        "utf-8"
    )


def test_two_desks_hold_levels_back_and_both_stay_held(
    tmp_path: Path, clock: Callable[[], dt.datetime]
) -> None:
    one, other = (desk_at(tmp_path, clock) for _ in range(2))
    one.hold("coins:dime", back=True)
    other.hold("count:to-20", back=True)
    one.prefer(theme="light")
    assert load(tmp_path / "family.toml").children[0].held == ("coins:dime", "count:to-20")
    other.hold("coins:dime", back=False)
    one.prefer(theme="dark")
    assert load(tmp_path / "family.toml").children[0].held == ("count:to-20",)


def _torn(text: str) -> str:
    return text.replace("[school]", "[school")


@pytest.mark.parametrize("spoil", [_torn, lambda text: text.replace('"Bean"', "7")], ids=["torn", "wrong"])
def test_a_file_that_no_longer_reads_is_kept_and_said_and_the_change_comes_later(
    tmp_path: Path, clock: Callable[[], dt.datetime], spoil: Callable[[str], str]
) -> None:
    desk: Desk = desk_at(tmp_path, clock)
    path = tmp_path / "family.toml"
    good = path.read_text("utf-8")
    by_hand(path, spoil(good))
    desk.hold("coins:dime", back=True)
    assert "is not being saved (family.toml, line " in desk.unsaved and desk.child.held == ("coins:dime",)
    assert path.read_text("utf-8") == spoil(good)
    by_hand(path, good)
    desk.prefer(theme="light")
    assert desk.unsaved == "" and load(path).children[0].held == ("coins:dime",)
    assert load(path).theme == "light"


def test_a_file_that_is_gone_is_not_made_anew(tmp_path: Path, clock: Callable[[], dt.datetime]) -> None:
    desk = desk_at(tmp_path, clock)
    (tmp_path / "family.toml").unlink()
    desk.prefer(theme="light")
    assert "(family.toml: no such file any more)" in desk.unsaved
    assert not (tmp_path / "family.toml").exists()


# -- the version before


def test_what_was_written_by_hand_outlives_quick_saves_in_the_backup(tmp_path: Path) -> None:
    path, backup = tmp_path / "family.toml", tmp_path / "family.toml.bak"
    save(path, FAMILY)
    by_hand(path, path.read_text("utf-8") + "\n# by hand\n")
    written_by_hand = path.read_text("utf-8")
    now = save(path, FAMILY._replace(theme="light"), FAMILY)
    assert backup.read_text("utf-8") == written_by_hand
    for change in ("held", "off", "paused", "covered"):
        now = save(path, CHANGES[change](now), now)
        assert backup.read_text("utf-8") == written_by_hand
    by_hand(path, path.read_text("utf-8") + "# again\n")
    again = path.read_text("utf-8")
    save(path, now._replace(theme="dark"), now)
    assert backup.read_text("utf-8") == again


def test_the_backup_of_another_day_gives_way(tmp_path: Path) -> None:
    path, backup = tmp_path / "family.toml", tmp_path / "family.toml.bak"
    save(path, FAMILY)
    save(path, FAMILY._replace(theme="light"))
    yesterday = path.stat().st_mtime - writing.QUICK - 60
    for file in (path, backup):
        os.utime(file, (yesterday, yesterday))
    text = path.read_text("utf-8")
    save(path, FAMILY._replace(theme="dark"))
    assert backup.read_text("utf-8") == text


def test_a_save_that_another_window_crosses_is_made_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "family.toml"
    save(path, FAMILY)
    real, crossed = writing._temporary, []

    def temporary(target: Path, content: bytes) -> Path:
        if target.name == "family.toml" and not crossed:
            crossed.append(True)
            by_hand(path, path.read_text("utf-8").replace('"Bean"', '"Bean"\nopened = ["coins:dime"]'))
        return real(target, content)

    monkeypatch.setattr(writing, "_temporary", temporary)
    bean = replace(FAMILY.children[0], held=())
    found = save(path, FAMILY._replace(children=(bean,)), FAMILY)
    assert found == load(path) and found.children == (replace(bean, opened=("coins:dime",)),)
    assert sorted(file.name for file in tmp_path.iterdir()) == ["family.toml", "family.toml.bak"]


def test_a_file_that_never_rests_is_left_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "family.toml"
    save(path, FAMILY)
    real = writing._temporary

    def temporary(target: Path, content: bytes) -> Path:
        by_hand(path, path.read_text("utf-8") + "# on and on\n")
        return real(target, content)

    monkeypatch.setattr(writing, "_temporary", temporary)
    with pytest.raises(FileProblem, match="keeps changing"):
        save(path, FAMILY._replace(theme="light"), FAMILY)
    assert load(path).theme == "dark"


# -- what a killed program leaves


def test_old_temporary_files_of_ours_are_swept_and_nothing_else(tmp_path: Path) -> None:
    now = 1_800_000_000.0
    old, new = now - writing.STRAY - 60, now - 60
    stray = [".family.toml-ab_9xyz0", ".family.toml.bak-00000000"]
    others = [
        "family.toml",
        ".family.toml-short",
        ".daily.toml-ab_9xyz0",
        ".family.toml-AB_9XYZ0",
        "x.family.toml-ab_9xyz0",
    ]
    for name in (*stray, *others):
        (tmp_path / name).write_text("")
        os.utime(tmp_path / name, (old, old))
    (tmp_path / ".family.toml-newer000").write_text("")
    os.utime(tmp_path / ".family.toml-newer000", (new, new))
    (tmp_path / ".family.toml-afolder0").mkdir()
    os.utime(tmp_path / ".family.toml-afolder0", (old, old))
    (tmp_path / ".family.toml-linked00").symlink_to(tmp_path / "family.toml")
    writing.sweep(tmp_path / "family.toml", now)
    left = {".family.toml-newer000", ".family.toml-afolder0", ".family.toml-linked00"}
    assert {file.name for file in tmp_path.iterdir()} == {*others, *left}
    writing.sweep(tmp_path / "no such folder" / "family.toml", now)


def test_a_temporary_file_is_named_as_the_sweep_expects(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A kill between writing and renaming, put in by hand; the next start a day later clears it away."""

    def killed(*_args: object) -> None:
        raise SystemExit

    path = tmp_path / "family.toml"
    save(path, FAMILY)
    monkeypatch.setattr(writing, "_move", killed)
    monkeypatch.setattr(Path, "unlink", lambda *_args, **_more: None)
    for theme in ("light", "dark"):
        with pytest.raises(SystemExit):
            save(path, load(path)._replace(theme="light", adult=theme))
    monkeypatch.undo()
    assert len(list(tmp_path.iterdir())) > 2
    writing.sweep(path, path.stat().st_mtime + writing.STRAY + 60)
    assert [file.name for file in tmp_path.iterdir()] == ["family.toml"]
