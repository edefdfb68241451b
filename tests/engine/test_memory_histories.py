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

from warmup.engine.curriculum import Curriculum, Reviews
from warmup.engine.memory import LONGEST, SHORTEST, Knowledge, fold
from warmup.model import Asked, ItemId, Mark, item_id
from warmup.randomness import SeededRandom
from warmup.schoolyear import SchoolYear

ROOT = Path(__file__).parents[2]
FIRST = dt.date(2026, 8, 31)
ITEM = ItemId("knots/one")
F, H, N, S = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED
WEEKS = Reviews(4, (5, 10), frozenset({ITEM}))
"""Four mornings a week, and weeks 5 and 10 are reviews; one item wants things on the table."""


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
    unlocks: dict[ItemId, int]
    guesses: dict[ItemId, float]

    def fold(self, lines: Sequence[Asked], before: Knowledge | None = None) -> Knowledge:
        """Fold some of the lines."""
        return fold(Curriculum((), self.unlocks, self.guesses, YEAR, WEEKS), lines, before)


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
    st.fixed_dictionaries({name: st.integers(0, 40) for name in names}),
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
        {name: history.unlocks[name] for name in order},
        {name: history.guesses[name] for name in order},
    )
    known, again = history.fold(history.lines), other.fold(history.lines)
    assert again == known
    mixed = other.fold(other.lines)
    assert mixed.records == known.records and mixed.days == known.days
    turned = Knowledge(dict([*known.records.items()][::-1]), known.days, dict([*known.checks.items()][::-1]))
    assert history.fold(history.lines, turned).records == history.fold(history.lines, known).records


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
@given(histories)
def test_checks_by_code_of_its_own(history: History) -> None:
    """A table of first marks by skill and morning, read at the end rather than as it goes."""
    firsts: dict[str, dict[int, Asked]] = {}
    for line in history.lines:
        if line.mark not in (None, S):
            firsts.setdefault(line.item.split("/")[0], {}).setdefault(index_of(line.date), line)
    checks = history.fold(history.lines).checks
    for skill in ("knots", "ropes"):
        mornings = firsts.get(skill, {})
        weeks = [index // 4 + 1 for index in mornings if (index // 4 + 1) in WEEKS.weeks]
        if not weeks:
            assert skill not in checks
            continue
        inside = [index for index in mornings if index // 4 + 1 == weeks[-1]]
        later = [index for index in mornings if index // 4 + 1 > weeks[-1]]
        went = checks[skill]
        assert (went.week, went.last, went.item) == (weeks[-1], inside[-1], mornings[inside[-1]].item)
        assert went.marks == tuple(mornings[at].mark is F and not mornings[at].cue for at in inside)
        assert len(went.marks) <= 4 and went.hands is (went.item == ITEM)
        assert (went.since, went.last_since) == (len(later), later[-1] if later else -1)


def told() -> str:
    """A seeded history of 600 lines, folded and written out."""
    rng = SeededRandom("memory")
    rows = [
        Asked(day(n // 6), rng.pick(names), rng.pick([F, F, F, H, N, S]), rng.below(2)) for n in range(600)
    ]
    unlocks, guesses = dict.fromkeys(names, 2), dict.fromkeys(names, 0.33)
    return repr(History(rows, unlocks, guesses).fold(rows))


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
