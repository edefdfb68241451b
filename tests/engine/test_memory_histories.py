"""Memory on random histories: in pieces, in other orders, in another process, within its bounds."""

import datetime as dt
import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.engine.made import chance, made
from warmup.engine.curriculum import Curriculum
from warmup.engine.memory import LONGEST, SHORTEST, Knowledge, fold
from warmup.model import Asked, ItemId, Mark, item_id
from warmup.randomness import SeededRandom
from warmup.schoolyear import SchoolYear

ROOT = Path(__file__).parents[2]
FIRST = dt.date(2026, 8, 31)
F, H, N, S = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED


def day(index: int) -> dt.date:
    """The date of a morning: one every day, so that an index is a number of days."""
    return FIRST + dt.timedelta(index)


def index_of(date: dt.date) -> int:
    """The index of such a date."""
    return (date - FIRST).days


YEAR = SchoolYear(tuple(range(7)), tuple(map(day, range(100))))


class History(NamedTuple):
    """Lines in order of time, and what ``fold`` is told beside them."""

    lines: list[Asked]
    weeks: dict[ItemId, int]
    guesses: dict[ItemId, float]

    def fold(self, lines: Sequence[Asked], before: Knowledge | None = None) -> Knowledge:
        """Fold some of the lines."""
        items = (made(name, week=week, guess=self.guesses[name]) for name, week in self.weeks.items())
        return fold(Curriculum({item.id: item for item in items}, YEAR), lines, before)


names = [item_id(skill, name) for skill in ("knots", "ropes") for name in ("one", "two")]
lines = st.builds(
    Asked,
    st.integers(0, 90).map(day),
    st.sampled_from(names),
    st.sampled_from([*Mark, Mark.FLUENT, Mark.FLUENT, None]),
    st.sampled_from([0, 0, 0, 1, 3]),
    st.booleans(),
    st.booleans(),
    st.sampled_from(["a", "b", "c"]),
)
histories = st.builds(
    History,
    st.lists(lines, max_size=40).map(lambda rows: sorted(rows, key=lambda row: row.date)),
    st.fixed_dictionaries({name: st.integers(1, 6) for name in names}),
    st.fixed_dictionaries({name: st.sampled_from([0.0, 0.33, 0.5]) for name in names}),
)


@pytest.mark.slow
@given(histories, st.integers(0, 40), st.integers(0, 40))
def test_in_pieces_is_the_same_as_in_one_go(history: History, one: int, other: int) -> None:
    """Wherever it is cut, in the middle of a morning too."""
    first, second = sorted((one, other))
    known = history.fold(history.lines[:first])
    kept = repr(known)
    more = history.fold(history.lines[first:second], known)
    assert history.fold(history.lines[second:], more) == history.fold(history.lines)
    assert repr(known) == kept, "what was known before is left as it was"


@pytest.mark.slow
@given(histories, st.permutations(names))
def test_the_order_of_items_does_not_matter(history: History, order: list[ItemId]) -> None:
    """Neither in what is told beside the lines, nor in what was known, nor between the lines of a day."""
    other = History(
        sorted(history.lines, key=lambda row: (row.date, order.index(row.item))),
        {name: history.weeks[name] for name in order},
        {name: history.guesses[name] for name in order},
    )
    known, again = history.fold(history.lines), other.fold(history.lines)
    assert again == known
    mixed = other.fold(other.lines)
    assert mixed.items == known.items
    assert [sorted(each.asked, key=repr) for each in mixed.days] == [
        sorted(each.asked, key=repr) for each in known.days
    ]
    turned = Knowledge(dict([*known.items.items()][::-1]), dict([*known.levels.items()][::-1]), known.days)
    assert history.fold(history.lines, turned) == history.fold(history.lines, known)


@pytest.mark.slow
@given(histories)
def test_each_item_learns_from_its_own_lines_alone(history: History) -> None:
    known = history.fold(history.lines)
    for name in names:
        own = [line for line in history.lines if line.item == name]
        assert history.fold(own).of(name) == known.of(name)


@pytest.mark.slow
@given(histories)
def test_the_gap_keeps_its_bounds_and_goes_the_way_of_the_mark(history: History) -> None:
    known = Knowledge()
    for line in history.lines:
        before, known = known.of(line.item), history.fold([line], known)
        record = known.of(line.item)
        assert SHORTEST == 1 <= record.interval <= 72 == LONGEST
        assert record.shown == before.shown + 1 and record.shown_on == line.date
        if line.mark in (None, S) or line.mark is H or (line.mark is F and line.cue):
            assert record.interval == before.interval
        elif line.mark is F or line.rough:
            assert record.interval >= before.interval
        else:
            assert record.interval < before.interval or record.interval == SHORTEST == before.interval


@pytest.mark.slow
@given(histories, st.integers(0, 99))
def test_the_chances_of_both_layers_by_code_of_their_own(history: History, index: int) -> None:
    """Of plain marks; the level's is that of all its items' marks."""
    plain = [
        line._replace(cue=0, rough=False, from_memory=False)
        for line in history.lines
        if line.mark not in (None, S)
    ]
    known = history.fold(plain)
    for name in names:
        opened = (history.weeks[name] - 1) * 7
        mine = [
            (index_of(row.date), row.mark, history.guesses[name])
            for row in plain
            if row.item == name and row.mark
        ]
        assert known.of(name).chance(index, opened) == pytest.approx(chance(mine, opened, index))
    for level, record in known.levels.items():
        rows = [row for row in plain if row.item.split("/")[0] == level.split(":")[0]]
        assert record.marks == len(rows) and record.mark is rows[-1].mark


def told() -> str:
    """A seeded history of 600 lines, folded and written out."""
    rng = SeededRandom("memory")
    rows = [
        Asked(day(n // 6), rng.pick(names), rng.pick([F, F, F, H, N, S]), rng.below(2)) for n in range(600)
    ]
    weeks, guesses = dict.fromkeys(names, 1), dict.fromkeys(names, 0.33)
    return repr(History(rows, weeks, guesses).fold(rows))


@pytest.mark.slow
def test_another_process_that_hashes_otherwise_folds_the_same() -> None:
    seed = "1" if os.environ.get("PYTHONHASHSEED") == "2" else "2"
    code = "from tests.engine.test_memory_histories import told; print(told())"
    answer = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        cwd=ROOT,
        env=os.environ | {"PYTHONHASHSEED": seed},
        check=True,
    )
    assert answer.stdout.strip() == told()
