"""Several windows and an editor on one family.toml: none undoes what another did."""

import datetime as dt
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.config.families import quiet, written
from tests.config.layouts import LAYOUTS, TODAY, alike, by_hand, remarks
from tests.household import context_at
from warmup.config.family import Child, Family, load, save
from warmup.model import LevelId
from warmup.session.context import Context

day = dt.date


LEVELS = ("coins:worth", "count:to-20", "make-ten:all")
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


@pytest.mark.slow
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
    context = context_at(tmp_path, clock)
    path = tmp_path / "family.toml"
    text = path.read_text("utf-8").replace("[school]", "# ours\n[school]\ndays_off = [2027-03-04]")
    by_hand(path, text.replace('nickname = "Bean"', 'nickname = "Beanie"\nheld = ["coins:worth"]'))
    context.editor.prefer(theme="light")
    assert context.editor.unsaved == "" and context.family == load(path)
    assert context.family.theme == "light" and context.family.off == ((day(2027, 3, 4),) * 2,)
    assert context.child == Child("Beanie", held=(LevelId("coins:worth"),), journal_name="Bean", reads=False)
    assert context.year.kind(day(2027, 3, 4)).value == "day off"
    assert context.editor.kept.changed is not None
    before, after = context.editor.kept.changed
    assert after == before._replace(theme="light"), "what was edited by hand is no change of ours"
    context.editor.hold(LevelId("count:to-20"), back=True)
    assert load(path).children[0].held == ("coins:worth", "count:to-20") and "# ours" in path.read_text(
        "utf-8"
    )


def test_two_contexts_hold_levels_back_and_both_stay_held(
    tmp_path: Path, clock: Callable[[], dt.datetime]
) -> None:
    one, other = (context_at(tmp_path, clock) for _ in range(2))
    one.editor.hold(LevelId("coins:worth"), back=True)
    other.editor.hold(LevelId("count:to-20"), back=True)
    one.editor.prefer(theme="light")
    assert load(tmp_path / "family.toml").children[0].held == ("coins:worth", "count:to-20")
    other.editor.hold(LevelId("coins:worth"), back=False)
    one.editor.prefer(theme="dark")
    assert load(tmp_path / "family.toml").children[0].held == ("count:to-20",)


def _torn(text: str) -> str:
    return text.replace("[school]", "[school")


@pytest.mark.parametrize("spoil", [_torn, lambda text: text.replace('"Bean"', "7")], ids=["torn", "wrong"])
def test_a_file_that_no_longer_reads_is_kept_and_said_and_the_change_comes_later(
    tmp_path: Path, clock: Callable[[], dt.datetime], spoil: Callable[[str], str]
) -> None:
    context: Context = context_at(tmp_path, clock)
    path = tmp_path / "family.toml"
    good = path.read_text("utf-8")
    by_hand(path, spoil(good))
    context.editor.hold(LevelId("coins:worth"), back=True)
    assert "is not being saved (family.toml, line " in context.editor.unsaved and context.child.held == (
        "coins:worth",
    )
    assert path.read_text("utf-8") == spoil(good)
    by_hand(path, good)
    context.editor.prefer(theme="light")
    assert context.editor.unsaved == "" and load(path).children[0].held == ("coins:worth",)
    assert load(path).theme == "light"


def test_a_file_that_is_gone_is_not_made_anew(tmp_path: Path, clock: Callable[[], dt.datetime]) -> None:
    context = context_at(tmp_path, clock)
    (tmp_path / "family.toml").unlink()
    context.editor.prefer(theme="light")
    assert "(family.toml: no such file any more)" in context.editor.unsaved
    assert not (tmp_path / "family.toml").exists()
