"""Two journals made one, two programs at once, and a kill at any time: no mark is lost."""

import datetime as dt
import random
import sqlite3
import subprocess
import sys
import time
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.benchmarks.merge_ties import differing
from tests.journal.journals import DAY, ROWS, Hand, aside, begun, clock, foreign, mark, marks_of, step
from warmup.journal.journal import Journal, JournalProblem, MarkRow
from warmup.journal.merging import merged
from warmup.journal.rows import BESIDE, About, Whole
from warmup.model import Mark


def test_two_laptops_lose_nothing(hand: Hand, tmp_path: Path) -> None:
    one = begun(hand(tmp_path / "one"), marks=1)
    two = hand(tmp_path / "two", clock(dt.datetime(2026, 11, 25, 10)))
    two.merge(one.path)
    step(one, "Bean", DAY, 1, 2, shown=2, at=1, mark=mark(Mark.HESITATED))
    step(two, "Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.NOT_YET, "2026-11-25T10:00:00"))
    two.start("Pip", DAY, "daily", "{}", ROWS)
    for _ in range(2):
        one.merge(two.path)
        two.merge(one.path)
        for journal in (one, two):
            assert marks_of(journal) == {0: Mark.NOT_YET, 1: Mark.HESITATED}
            assert len(journal.sessions_of("Pip", DAY)) == 1
            assert journal.sessions_of("Bean", DAY)[0].furthest == 2


def test_sessions_begun_apart_are_never_mixed(hand: Hand, tmp_path: Path) -> None:
    one, two = hand(tmp_path / "one"), hand(tmp_path / "two", clock(dt.datetime(2026, 11, 25, 10)))
    begun(one, marks=2)
    two.start("Bean", DAY, "short", "{}", ROWS[::-1])
    step(two, "Bean", DAY, 1, 1, shown=1, at=0, mark=mark(Mark.NOT_YET))
    for _ in range(2):
        one.merge(two.path)
        assert [row.shape for row in one.sessions_of("Bean", DAY)] == ["daily", "short"]
        assert marks_of(one, 1) == {0: Mark.FLUENT, 1: Mark.FLUENT} and marks_of(one, 2) == {0: Mark.NOT_YET}


@pytest.mark.parametrize("content", [b"", b"no journal at all" * 50, foreign()])
def test_what_is_no_journal_is_not_merged(hand: Hand, tmp_path: Path, content: bytes) -> None:
    (tmp_path / "other.db").write_bytes(content)
    journal = begun(hand(tmp_path / "one"), marks=1)
    for path in (tmp_path / "other.db", tmp_path / "none.db", tmp_path):
        with pytest.raises(JournalProblem):
            journal.merge(path)
    assert journal.saving and marks_of(journal) == {0: Mark.FLUENT}


moments = st.integers(0, 5).map(lambda n: f"2026-11-25T08:00:0{n}.000000+00:00")
kinds = st.sampled_from([None, Mark.FLUENT, Mark.NOT_YET])


@st.composite
def a_whole(rng: Any) -> Whole:
    items = rng(st.permutations(["a/a", "b/b", "c/c", "d/d"]))[: rng(st.integers(1, 4))]
    prompts = {at: (item, "w") for at, item in enumerate(items)}
    marks = rng(st.dictionaries(st.sampled_from(list(prompts)), st.builds(mark, kinds, moments)))
    last = max([row.at for row in marks.values()], default="2026-11-25T08:00:00.000000+00:00")
    about = About("s", max(last, rng(moments)), "daily", "{}", 0, rng(st.integers(0, 3)), 0, "")
    return Whole(about, prompts, marks)


@pytest.mark.slow
@settings(database=None, derandomize=True, deadline=None, max_examples=200)
@given(a_whole(), a_whole())
def test_a_merge_keeps_the_latest_mark_of_every_item_once(one: Whole, other: Whole) -> None:
    def standing(whole: Whole) -> dict[str, MarkRow]:
        return {whole.prompts[at][0]: row for at, row in whole.marks.items()}

    both = merged(one, other)
    assert merged(other, one) == both, "whichever is taken into which"
    assert merged(both, other) == both and merged(both, one) == both, "merging again changes nothing"
    items = [item for item, _ in both.prompts.values()]
    assert len(items) == len(set(items))
    last = max(one.about.touched, other.about.touched)
    newer = [w for w in (one, other) if w.about.touched == last]
    own = {at: p for at, p in both.prompts.items() if at < BESIDE}
    assert own in [w.prompts for w in newer]
    for item, row in (standing(one) | standing(other)).items():
        latest = max(standing(w)[item].at for w in (one, other) if item in standing(w))
        if item in standing(both):
            assert standing(both)[item].at == latest
        else:
            assert row.mark is None or item in dict(own.values()), "only what was taken back may go"


@pytest.mark.slow
@pytest.mark.parametrize("first", (0, 200))
def test_a_merge_of_ties_gives_the_same_rows_in_both_orders_and_thrice(first: int) -> None:
    """Ties, corrections, notes, marks and actions taken back: 400 of the pairs of ``merge_ties``."""
    assert {seed: found for seed in range(first, first + 200) if (found := differing(seed))} == {}


def test_a_session_from_elsewhere_takes_the_number_after_all_others(hand: Hand, tmp_path: Path) -> None:
    one, two = hand(tmp_path / "one"), hand(tmp_path / "two", clock(dt.datetime(2026, 11, 25, 10)))
    for number in range(3):
        one.start("Bean", DAY, "daily", f"[{number}]", ROWS)
    with closing(sqlite3.connect(one.path, isolation_level=None)) as db:
        for table in ("sittings", "prompts"):
            db.execute(f"DELETE FROM {table} WHERE sitting = 2")
    begun(two, marks=1)
    one.merge(two.path)
    assert [(row.session, row.routine) for row in one.sessions_of("Bean", DAY)] == [
        (1, "[0]"), (3, "[2]"), (4, "{}")
    ]  # fmt: skip
    assert marks_of(one, 4) == {0: Mark.FLUENT}, "as many as there are would be the number of another"


def test_both_laptops_tell_one_story_whatever_their_numbers(hand: Hand, tmp_path: Path) -> None:
    early, late = hand(tmp_path / "early"), hand(tmp_path / "late", clock(dt.datetime(2026, 11, 25, 10)))
    early.start("Bean", DAY, "daily", "{}", ROWS)
    late.start("Bean", DAY, "short", "[]", ROWS[::-1])
    for journal in (early, late):
        step(journal, "Bean", DAY, 1, 1, shown=3, at=0, mark=mark(Mark.HESITATED))
    early.merge(late.path)
    late.merge(early.path)
    assert [row.session for row in late.sessions_of("Bean", DAY)] == [2, 1]
    assert early.history("Bean") == late.history("Bean") and len(early.history("Bean")) == 8


WORKER = """
import datetime as dt, sys
from contextlib import closing
from pathlib import Path
from tests.journal.journals import step
from warmup.journal.journal import Journal, MarkRow
from warmup.model import Mark
folder, child, first, count = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3]), int(sys.argv[4])
journal = Journal.open(folder, dt.datetime.now)
day = dt.date(2026, 11, 25)
if first < 0:
    first = 0
    journal.start(child, day, "daily", "x" * 9000, [(f"count-on/{n}", "a") for n in range(500)])
print("ready", flush=True)
sys.stdin.readline()
for at in range(first, first + count):
    row = MarkRow(Mark.HESITATED, 0, "", False, "")
    step(journal, child, day, 1, at + 1, shown=at, at=at, mark=row)
    print(at if journal.saving else "not saved", flush=True)
"""


def worker(folder: Path, child: str, first: int, count: int) -> subprocess.Popen[str]:
    arguments = [sys.executable, "-c", WORKER, str(folder), child, str(first), str(count)]
    process = subprocess.Popen(
        arguments, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, cwd=Path(__file__).parents[2]
    )
    assert process.stdout is not None and process.stdout.readline() == "ready\n"
    return process


@pytest.mark.slow
def test_two_programs_that_mark_at_once_lose_nothing(hand: Hand, tmp_path: Path) -> None:
    hand().start("Bean", DAY, "daily", "{}", [(f"count-on/{n}", "a") for n in range(500)])
    both = [worker(tmp_path, "Bean", 0, 60), worker(tmp_path, "Bean", 100, 60)]
    for process in both:
        assert process.stdin is not None
        process.stdin.write("go\n")
        process.stdin.flush()
    said = [process.communicate(timeout=60)[0].split() for process in both]
    assert said == [[str(n) for n in range(60)], [str(n) for n in range(100, 160)]], "all of it was saved"
    journal = hand()
    assert (
        sorted(marks_of(journal)) == [*range(60), *range(100, 160)] and Journal.examine(journal.folder) == []
    )


@pytest.mark.slow
def test_a_kill_at_any_time_leaves_every_acknowledged_mark(hand: Hand, tmp_path: Path) -> None:
    chance = random.Random(7)
    for kill in range(15):
        child = f"Bean {kill}"
        process = worker(tmp_path, child, -1, 500)
        assert process.stdin is not None and process.stdout is not None
        process.stdin.write("go\n")
        process.stdin.flush()
        acknowledged = [process.stdout.readline() for _ in range(chance.randrange(1, 12))]
        time.sleep(chance.random() * 0.004)
        process.kill()
        acknowledged += process.stdout.read().splitlines(keepends=True)
        process.wait()
        process.stdin.close()
        process.stdout.close()
        whole = [int(line) for line in acknowledged if line.endswith("\n")]
        journal = hand()
        assert not journal.notice and Journal.examine(journal.folder) == []
        marks = journal.marks_of(child, DAY, 1)
        assert set(whole) <= set(marks) <= {*whole, len(whole)}, f"kill {kill}: {whole} of {sorted(marks)}"
        journal.shut()
    assert not aside(tmp_path)
