"""Practice marks in the journal: kept at once, apart from mornings, merged, copied out and in, forgotten."""

import datetime as dt
import sqlite3
from contextlib import closing
from pathlib import Path
from random import Random

import pytest

from tests.journal.journals import DAY, Hand, begun, clock
from tests.journal.test_journal_salvage import pages, spoil
from warmup.journal import copies, forgetting, merging, practice, schema
from warmup.journal.journal import Journal
from warmup.journal.practice import PracticeRow
from warmup.model import Mark

ITEM = "make-ten/seven-three"


def round_of(journal: Journal, marks: list[Mark | None], child: str = "Bean") -> list[PracticeRow]:
    """A round with these marks, from the first prompt on."""
    started, _ = journal.new_round(child, DAY)
    row = PracticeRow(child, f"{DAY}", started, 0, ITEM, "a", None, 0, "Jo", "")
    rows = [row._replace(position=at, mark=mark) for at, mark in enumerate(marks)]
    return [journal.practice(row) for row in rows]


def marks_of(journal: Journal, child: str = "Bean") -> list[Mark | None]:
    return [row.mark for row in journal.practiced(child)]


def test_a_mark_is_on_disk_at_once_and_the_next_round_begins_later(hand: Hand) -> None:
    journal = hand()
    for at, mark in enumerate((Mark.FLUENT, Mark.HESITATED)):
        row = round_of(journal, [mark])[0]
        kept = hand(read_only=True).practiced("Bean")
        assert kept[at] == row and row.at, "another program sees it before anything else happens"
    first, second = (row.started for row in journal.practiced("Bean"))
    assert first < second, "though the clock stands still"
    assert journal.new_round("Bean", DAY)[1] == 3 and journal.new_round("Pip", DAY)[1] == 1
    again = journal.practice(row._replace(mark=None))
    assert again.at > row.at and marks_of(hand()) == [Mark.FLUENT, None], "taken back, it stays as a row"


def test_no_morning_is_counted_of_it(hand: Hand) -> None:
    journal = begun(hand(), marks=2)
    before = journal.history("Bean"), journal.dates_of("Bean"), journal.mornings(), journal.past("Bean", DAY)
    past = journal.past_of("Bean", DAY + dt.timedelta(1))
    round_of(journal, [Mark.NOT_YET] * 5)
    round_of(journal, [Mark.NOT_YET] * 5, child="Pip")
    assert before == (
        journal.history("Bean"), journal.dates_of("Bean"), journal.mornings(), journal.past("Bean", DAY)
    )  # fmt: skip
    assert journal.dates_of("Pip") == set() and journal.past_of("Bean", DAY + dt.timedelta(1)) == past


def test_a_journal_of_version_3_gets_the_table(hand: Hand, tmp_path: Path) -> None:
    journal = begun(hand(), marks=2)
    journal.shut()
    with closing(sqlite3.connect(journal.path)) as db:
        db.executescript("DROP TABLE practice; PRAGMA user_version = 3")
    before, history = journal.path.read_bytes(), hand(read_only=True).history("Bean")
    assert len(history) == 3 and hand(read_only=True).practiced("Bean") == []
    assert Journal.examine(tmp_path) == [] and journal.path.read_bytes() == before
    again = hand()
    assert not again.notice and schema.version_written(again.path) == 4 and again.history("Bean") == history
    round_of(again, [Mark.FLUENT])
    assert marks_of(hand()) == [Mark.FLUENT] and Journal.examine(tmp_path) == []


def test_it_outlives_a_disk_that_goes_away(hand: Hand, tmp_path: Path) -> None:
    journal = hand()
    (row,) = round_of(journal, [Mark.FLUENT])
    journal.path.rename(tmp_path / "away")
    journal.practice(row._replace(position=1, mark=Mark.NOT_YET))
    assert not journal.saving and marks_of(journal) == [Mark.FLUENT, Mark.NOT_YET]
    (tmp_path / "away").rename(journal.path)
    journal.practice(row._replace(position=2, mark=Mark.HESITATED))
    assert journal.saving and marks_of(hand()) == [Mark.FLUENT, Mark.NOT_YET, Mark.HESITATED]


# -- merged


def drawn(chance: Random) -> sqlite3.Connection:
    """A journal with rows of few rounds, moments and words, so that many meet those of another, and tie."""
    journal = schema.in_memory()
    for _ in range(chance.randrange(9)):
        started, at = (f"2026-11-25T07:00:00.00000{chance.randrange(2)}+00:00" for _ in range(2))
        mark = chance.choice([None, *Mark])
        who = chance.choice(["Bean", "Pip"]), f"2026-11-2{chance.randrange(4, 6)}", started
        what = chance.randrange(2), chance.choice(["a/b", ITEM]), chance.choice("ab")
        practice.put(
            journal, PracticeRow(*who, *what, mark, chance.randrange(2), chance.choice(["", "Jo"]), at)
        )
    return journal


def rows(journal: sqlite3.Connection) -> list[tuple[object, ...]]:
    return journal.execute("SELECT * FROM practice").fetchall()


def test_merged_either_way_and_thrice_it_is_the_same() -> None:
    for seed in range(60):
        with (
            closing(drawn(Random(seed))) as one,
            closing(drawn(Random(-1 - seed))) as other,
            closing(schema.copy_of(one)) as first,
            closing(schema.copy_of(other)) as second,
        ):
            merging.merge_into(first, other)
            merging.merge_into(second, one)
            assert rows(first) == rows(second), seed
            latest = dict[object, str]()
            for row in (*rows(one), *rows(other)):
                latest[row[:4]] = max(latest.get(row[:4], ""), str(row[-1]))
            assert {row[:4]: row[-1] for row in rows(first)} == latest
            for again in (second, other, one):
                merging.merge_into(first, again)
            assert rows(first) == rows(second)


def test_two_laptops_practice_apart_and_neither_loses_a_round(hand: Hand, tmp_path: Path) -> None:
    mine, yours = hand(), hand(tmp_path / "yours", clock(dt.datetime(2026, 11, 25, 9)))
    round_of(mine, [Mark.FLUENT] * 2)
    round_of(yours, [Mark.NOT_YET] * 3)
    assert mine.merge(yours.path) == () and yours.merge(mine.path) == ()
    assert marks_of(mine) == marks_of(yours) == [Mark.FLUENT] * 2 + [Mark.NOT_YET] * 3


# -- damage, copies, forgetting


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ("date = '2026-02-30'", "a date no calendar has"),
        ("child = x'80ff'", "a child's name that is no text"),
        ("started = 'soon'", "a practice round that begins at no time"),
        ("position = -1", "a position no prompt can have"),
        ("item = x'00ff'", "a practice prompt whose item is no text"),
        ("wording = x'00'", "something else where text should be"),
        ("cue = 100", "a number that can't be"),
        ("adult = x'00'", "something else where text should be"),
        ("at = 'soon'", "a time that is none"),
    ],
)
def test_an_odd_value_is_told_by_the_check_and_stops_nothing(
    hand: Hand, tmp_path: Path, change: str, said: str
) -> None:
    journal = hand()
    round_of(journal, [Mark.FLUENT, Mark.NOT_YET])
    journal.shut()
    with closing(sqlite3.connect(journal.path)) as db, db:
        db.execute(f"UPDATE practice SET {change} WHERE position = 1")
    assert any(said in each for each in Journal.examine(tmp_path))
    assert marks_of(hand())[0] is Mark.FLUENT
    other = hand(tmp_path / "other")
    assert any(said in each.what for each in other.merge(journal.path))
    assert Journal.examine(tmp_path / "other") == [] and marks_of(other)[0] is Mark.FLUENT


def test_an_item_nobody_knows_is_told_by_the_check(hand: Hand, tmp_path: Path) -> None:
    round_of(hand(), [Mark.FLUENT])
    assert Journal.examine(tmp_path, {ITEM}) == []
    assert "an item this version does not know" in Journal.examine(tmp_path, {"a/b"})[0]


@pytest.mark.slow
@pytest.mark.parametrize("kind", ["leaf", "internal"])
def test_of_a_damaged_journal_all_but_the_page_is_kept(hand: Hand, kind: str) -> None:
    journal = begun(hand(), marks=2)
    at = f"{DAY}T08:00:00.000000+00:00"
    row = PracticeRow("Bean", f"{DAY}", at, 0, ITEM, "a", Mark.NOT_YET, 0, "Jo", at)
    rows = [
        row._replace(started=f"{DAY}T08:00:{number // 5:02}.000000+00:00", position=number % 5)
        for number in range(250)
    ]
    journal.shut()
    with closing(sqlite3.connect(journal.path)) as db, db:
        for row in rows:
            practice.put(db, row)
    numbers = pages(journal.path, "practice", kind)
    spoil(journal.path, numbers[1:2] if kind == "leaf" else numbers)
    again = hand()
    assert "damaged" in again.notice and len(again.history("Bean")) == 3
    kept = again.practiced("Bean")
    assert 250 - 4096 // 90 <= len(kept) < 250 + (kind == "internal") and {*kept} <= {*rows}
    assert Journal.examine(again.folder) == []


def test_no_byte_of_a_forgotten_child_stays(hand: Hand) -> None:
    journal = hand()
    round_of(journal, [Mark.FLUENT] * 5, child="Quillon")
    round_of(journal, [Mark.FLUENT])
    journal.shut()
    assert b"Quillon" in journal.path.read_bytes()
    assert forgetting.forget_in(journal.path, "Quillon")
    assert b"Quillon" not in journal.path.read_bytes()
    assert hand().practiced("Quillon") == [] and marks_of(hand()) == [Mark.FLUENT]


def test_a_copy_has_it_and_is_not_taken_for_whole_without(hand: Hand, tmp_path: Path) -> None:
    journal = hand()
    round_of(journal, [Mark.FLUENT, None])
    copies.keep_copy(journal.path, tmp_path / "copy.db")
    with closing(sqlite3.connect(tmp_path / "copy.db")) as copy:
        assert copies.counts(copy) == (0, 0, 0, 0, 0, 2)
        copy.execute("DELETE FROM practice WHERE position = 0")
        assert copies.counts(copy)[-1] == 1


def test_what_a_lock_hides_this_program_still_knows(hand: Hand) -> None:
    journal = hand()
    (row,) = round_of(journal, [Mark.FLUENT])
    assert journal._store._disk is not None
    journal._store._disk.execute("PRAGMA busy_timeout = 0")
    with closing(sqlite3.connect(journal.path, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        journal.practice(row._replace(position=1, mark=Mark.NOT_YET))
        assert not journal.saving and marks_of(journal) == [Mark.FLUENT, Mark.NOT_YET]
        other.execute("ROLLBACK")
    journal.practice(row._replace(position=2, mark=Mark.HESITATED))
    assert journal.saving and marks_of(hand()) == [Mark.FLUENT, Mark.NOT_YET, Mark.HESITATED]
