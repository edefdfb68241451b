"""What is kept of a child's past is what folding it from nothing gives, or it is not used."""

import datetime as dt
import json
import os
import random
import sys
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, StandingClock, context_at, lived
from warmup.config.family import Child
from warmup.engine.memory import Knowledge, fold
from warmup.journal import remembered as files
from warmup.journal.inspection import whole_copy
from warmup.journal.journal import Change, Journal, MarkRow
from warmup.model import LevelId, Mark
from warmup.session import remembered
from warmup.session.context import Context

DAY = dt.timedelta(1)
ITEMS = ("month/this", "count/to-20", "weekday/today", "parts/split-to-5", "measure/longer", "own/gone")
MARKS = tuple(Mark)


@pytest.fixture
def clock() -> StandingClock:
    return StandingClock(dt.datetime.combine(TODAY, dt.time(8)))


def from_nothing(context: Context) -> Knowledge:
    return fold(context.curriculum(), context.history(context.today))


def ended(context: Context) -> None:
    """The program ends: what is known is kept, and the journal shut."""
    assert context.journal is not None
    context.knew_before_today()
    remembered.keep(context)
    assert context.journal.shut()


@pytest.fixture
def past(home: Path, clock: StandingClock) -> Path:
    """Ten mornings, and what was known of them kept at the end of one of today's."""
    context = context_at(home, clock)
    for at, day in enumerate(context.year.mornings[:10]):
        lived(context, day, {item: MARKS[(at + n) % 4] for n, item in enumerate(ITEMS[:5])})
    ended(context)
    ended(context_at(home, clock))
    return home


def test_what_was_kept_is_what_folding_gives(past: Path, clock: StandingClock) -> None:
    context = context_at(past, clock)
    kept = remembered.recall(context)
    assert kept == (from_nothing(context), TODAY) and len(kept[0].days) == 10
    assert context.knew_before_today() == context.knowledge() == kept[0]


def test_the_next_day_adds_its_own_mornings(past: Path, clock: StandingClock) -> None:
    context = context_at(past, clock)
    lived(context, TODAY, {"month/this": Mark.NOT_YET})
    ended(context)
    later = context_at(past, clock, FAMILY, TODAY + DAY)
    kept = remembered.recall(later)
    assert kept is not None and kept[1] == TODAY
    assert later.knew_before_today() == from_nothing(later) != kept[0]


def test_the_name_of_the_child_is_in_no_file_of_it(past: Path) -> None:
    kept = list((past / files.FOLDER).iterdir())
    assert len(kept) == 2 and not any(b"Bean" in path.read_bytes() or "Bean" in path.name for path in kept)
    assert all(path.stat().st_mode & 0o777 == 0o600 for path in kept)


def write_elsewhere(home: Path, clock: StandingClock) -> None:
    """Another program writes to the journal while one is open."""
    other = Journal.open(home, clock)
    other.change("Bean", FAMILY.first_day, 1, Change(marks={0: MarkRow(Mark.NOT_YET, 0, "", False, "")}))
    other.shut()


def by_another_program(home: Path, clock: StandingClock) -> None:
    import sqlite3

    with sqlite3.connect(home / "journal.db") as db:
        db.execute("UPDATE marks SET mark = 'not_yet' WHERE position = 0")
    db.close()


def by_this_one(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock)
    lived(context, FAMILY.first_day + 40 * DAY, {"month/this": Mark.NOT_YET})
    ended(context)


def while_open(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock)
    write_elsewhere(home, clock)
    ended(context)


def pulled_plug(home: Path, clock: StandingClock) -> None:
    """The program is gone without an end, after a correction."""
    context = context_at(home, clock)
    lived(context, FAMILY.first_day + 41 * DAY, {"month/this": Mark.NOT_YET})


def killed_after_a_mark_of_today(home: Path, clock: StandingClock) -> None:
    lived(context_at(home, clock), TODAY, {"month/this": Mark.NOT_YET})


def killed_on_a_clock_set_back(home: Path, clock: StandingClock) -> None:
    """A day that is no past by the clock, and lies before the one that was kept."""
    early = TODAY - 5 * DAY
    lived(context_at(home, clock, FAMILY, early), early, {"month/this": Mark.NOT_YET})


def taken_in(home: Path, clock: StandingClock) -> None:
    """An exported journal with a morning that this one does not have."""
    other = context_at(home / "other", clock)
    lived(other, FAMILY.first_day + 40 * DAY, {"month/this": Mark.NOT_YET})
    assert other.journal is not None
    other.journal.shut()
    journal = Journal.open(home, clock)
    with closing(whole_copy(home / "other" / "journal.db")) as copy:
        journal.take_in(copy, as_it_is=True)
    journal.shut()


def damage(home: Path, clock: StandingClock) -> None:
    (kept,) = (home / files.FOLDER).glob("child-*")
    raw = bytearray(kept.read_bytes())
    raw[len(raw) // 2] ^= 1
    kept.write_bytes(bytes(raw))


def other_values(home: Path, clock: StandingClock) -> None:
    """Whole, and not what this program writes."""
    files.keep(home, "Bean", TODAY, json.dumps([1, 2, 3]))


def nothing(home: Path, clock: StandingClock) -> None:
    for path in (home / files.FOLDER).iterdir():
        path.unlink()


@pytest.mark.parametrize(
    "happens",
    [
        by_another_program,
        by_this_one,
        taken_in,
        while_open,
        pulled_plug,
        killed_after_a_mark_of_today,
        killed_on_a_clock_set_back,
        damage,
        other_values,
        nothing,
    ],
)
def test_what_may_be_stale_is_not_used(
    past: Path, clock: StandingClock, happens: Callable[[Path, StandingClock], None]
) -> None:
    happens(past, clock)
    context = context_at(past, clock)
    kept = remembered.recall(context)
    assert kept is None or kept == (from_nothing(context), TODAY)
    whole = (by_this_one, killed_after_a_mark_of_today)
    assert (kept is None) is (happens not in whole), "the others leave nothing that holds"
    assert context.knew_before_today() == from_nothing(context)


def test_what_was_stale_when_a_run_began_is_not_taken_for_fresh_after_it(
    past: Path, clock: StandingClock
) -> None:
    """The other child of the family sits down after somebody changed the journal; this one the day after."""
    by_another_program(past, clock)
    both = FAMILY._replace(children=(Child("Fern", reads=False), *FAMILY.children))
    ended(context_at(past, clock, both))
    context = context_at(past, clock)
    assert remembered.recall(context) is None and context.knew_before_today() == from_nothing(context)


def test_within_one_run_the_past_is_folded_again_when_it_changes(past: Path, clock: StandingClock) -> None:
    context = context_at(past, clock)
    first = context.knew_before_today()
    assert context.knew_before_today() is first
    lived(context, TODAY, {"month/this": Mark.NOT_YET})
    assert context.knew_before_today() is first, "a mark of today is no past"
    context.forget()
    assert context.knowledge() != first
    write_elsewhere(past, clock)
    assert context.knew_before_today() == from_nothing(context) != first
    lived(context, FAMILY.first_day + 40 * DAY, {"month/this": Mark.NOT_YET})
    assert context.knew_before_today() == from_nothing(context)


def test_another_year_or_plan_folds_anew(past: Path, clock: StandingClock) -> None:
    moved = FAMILY._replace(off=((FAMILY.first_day + DAY, FAMILY.first_day + DAY),))
    held = FAMILY._replace(held_weeks=(1,))
    begun = FAMILY._replace(children=(Child("Bean", reads=False, began=FAMILY.first_day + 60 * DAY),))
    for family in (moved, held, begun):
        assert remembered.recall(context_at(past, clock, family)) is None
    (past / "year.toml").write_text("[skills.month]\nthis = 2\n", "utf-8")
    assert remembered.recall(context_at(past, clock)) is None
    (past / "year.toml").unlink()
    level = FAMILY._replace(children=(Child("Bean", reads=False, held=(LevelId("month:this"),)),))
    assert remembered.recall(context_at(past, clock, level)) is not None, "folding does not go by it"


def test_a_clock_set_back_does_not_take_what_is_of_a_later_day(past: Path, clock: StandingClock) -> None:
    context = context_at(past, clock, FAMILY, TODAY - 30 * DAY)
    assert remembered.recall(context) is None and context.knew_before_today() == from_nothing(context)


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(4))
def test_a_thousand_edits_of_every_kind_leave_it_equal_to_the_fold(
    home: Path, clock: StandingClock, seed: int
) -> None:
    """250 a seed: marks of today and before, ends, restarts, pulled plugs, other programs, days off."""
    rng, today, family = random.Random(seed), FAMILY.first_day + 20 * DAY, FAMILY
    context = context_at(home, clock, family, today)
    used = {"ended": 0, "killed": 0}
    for _ in range(250):
        match rng.randrange(8):
            case 0 | 1:
                lived(context, today, {rng.choice(ITEMS[:5]): rng.choice(MARKS)})
                context.forget()
            case 2:
                day = today - rng.randrange(1, 20) * DAY
                lived(context, day, {rng.choice(ITEMS[:5]): rng.choice(MARKS)})
            case 3 | 4:
                how = rng.choice(("ended", "killed"))
                if how == "ended":
                    ended(context)
                context = context_at(home, clock, family, today)
                used[how] += remembered.recall(context) is not None
            case 5:
                write_elsewhere(home, clock)
            case 6:
                off = FAMILY.first_day + rng.randrange(15) * DAY
                family = family._replace(off=((off, off),))
                context = context_at(home, clock, family, today)
            case _:
                today += rng.choice((DAY, 3 * DAY, -DAY))
                context = context_at(home, clock, family, today)
        assert context.knew_before_today() == from_nothing(context)
        if rng.random() < 0.3:
            context.forget()
            assert context.knowledge() == fold(context.curriculum(), context.history())
    assert used["ended"] > 10 and used["killed"] > 0


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such pipes")
def test_a_pipe_in_its_place_is_not_waited_for(past: Path, clock: StandingClock) -> None:
    for path in (past / files.FOLDER).iterdir():
        path.unlink()
        os.mkfifo(path)
    context = context_at(past, clock)
    assert remembered.recall(context) is None
    assert context.knew_before_today() == from_nothing(context)
    lived(context, context.year.mornings[10], {"month/this": MARKS[0]})
    ended(context)
