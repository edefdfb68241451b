"""What is read of a damaged journal: every row that can be, though its neighbors can't."""

import datetime as dt
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from tests.journal.journals import DAY, ROWS, Hand, begun, mark, open_session
from warmup.journal import fragments, salvage, schema
from warmup.journal.journal import Action, Journal
from warmup.model import Mark

SIZE = 4096
DAYS = [DAY + dt.timedelta(n) for n in range(60)]


def months(journal: Journal) -> Path:
    """Sixty mornings of four marks, each with a long routine and an action."""
    for day in DAYS:
        action = Action("others")
        journal.start("Bean", day, "daily", "x" * 9000, ROWS, [mark(Mark.NOT_YET)] * 4, action=action)
    journal.shut()
    return journal.path


def pages(path: Path, table: str, kind: str) -> list[int]:
    """The numbers of the pages of one kind ("leaf", "internal", "overflow") that a table or index has."""
    with closing(sqlite3.connect(path)) as db:
        root = db.execute("SELECT rootpage FROM sqlite_master WHERE name = ?", (table,)).fetchone()[0]
    raw, found, waiting = path.read_bytes(), list[int](), [root]
    while waiting:
        number = waiting.pop()
        page = raw[(number - 1) * SIZE : number * SIZE]
        inner = page[0] in (2, 5)
        if inner == (kind == "internal"):
            found.append(number)
        cells = int.from_bytes(page[3:5], "big") if inner else 0
        starts = [int.from_bytes(page[12 + 2 * n : 14 + 2 * n], "big") for n in range(cells)]
        waiting += [int.from_bytes(page[at : at + 4], "big") for at in starts]
        waiting += [int.from_bytes(page[8:12], "big")] if inner else []
    return sorted(found)


def spoil(path: Path, numbers: list[int]) -> None:
    raw = bytearray(path.read_bytes())
    for number in numbers:
        raw[(number - 1) * SIZE : number * SIZE] = b"\xa5" * SIZE
    path.write_bytes(raw)


def standing(journal: Journal) -> dict[dt.date, list[Mark | None]]:
    return {day: [r.mark for r in journal.marks_of("Bean", day, 1).values()] for day in DAYS}


@pytest.mark.slow
def test_one_damaged_page_of_marks_takes_no_other_mark_with_it(hand: Hand) -> None:
    path = months(hand())
    leaves = pages(path, "marks", "leaf")
    assert len(leaves) >= 4
    spoil(path, leaves[1:2])
    journal = hand()
    kept = [len(marks) for marks in standing(journal).values()]
    lost = SIZE // 60
    assert 240 - lost < sum(kept) < 240 and kept.count(4) >= 60 - lost // 4
    assert "mornings: 60" in journal.notice and Journal.examine(journal.folder) == []
    assert len(journal.dates_of("Bean")) == 60, "the mornings themselves stay"


@pytest.mark.slow
def test_marks_stay_where_nothing_leads_to_their_page(hand: Hand) -> None:
    path = months(hand())
    spoil(path, pages(path, "marks", "internal"))
    kept = [len(marks) for marks in standing(hand()).values()]
    assert sum(kept) >= 230, "only those on the spoiled page itself are gone"


@pytest.mark.slow
def test_marks_stay_where_their_sessions_are_gone(hand: Hand) -> None:
    path = months(hand())
    spoil(path, pages(path, "sittings", "leaf") + pages(path, "sittings", "internal"))
    journal = hand()
    assert standing(journal) == dict.fromkeys(DAYS, [Mark.NOT_YET] * 4)
    assert [(line.date, line.item) for line in journal.history("Bean")] == [
        (day, item) for day in DAYS for item, _ in ROWS
    ]
    assert open_session(journal, "Bean", DAY) is None and journal.sessions_of("Bean", DAY)[0].routine == ""


@pytest.mark.slow
def test_a_routine_that_cannot_be_read_is_empty_and_its_marks_stay(hand: Hand) -> None:
    path = months(hand())
    raw = bytearray(path.read_bytes())
    # A page that a long text goes on to begins with the number of the next: one there is none of.
    texts = [at for at in range(0, len(raw), SIZE) if raw[at + 4 : at + SIZE] == b"x" * (SIZE - 4)]
    for at in texts:
        raw[at : at + 4] = b"\x7f\xff\xff\xff"
    path.write_bytes(raw)
    assert len(texts) >= 60
    journal = hand()
    assert standing(journal) == dict.fromkeys(DAYS, [Mark.NOT_YET] * 4)
    assert {journal.sessions_of("Bean", day)[0].routine for day in DAYS} == {""}
    assert len(journal.history("Bean")) == 240


@pytest.mark.slow
def test_the_list_of_tables_may_be_gone(hand: Hand) -> None:
    path = months(hand())
    raw = path.read_bytes()
    path.write_bytes(b"\0" * SIZE + raw[SIZE:])
    assert standing(hand()) == dict.fromkeys(DAYS, [Mark.NOT_YET] * 4)


@pytest.mark.slow
def test_actions_are_read_row_by_row(hand: Hand) -> None:
    path = months(hand())
    leaves = pages(path, "actions", "leaf")
    assert len(leaves) >= 2
    spoil(path, leaves[1:2])
    journal = hand()
    kept = [day for day in DAYS if journal.actions_of("Bean", day, 1)]
    assert 60 - SIZE // 100 < len(kept) < 60 and DAYS[0] in kept


@pytest.mark.slow
def test_what_was_deleted_does_not_come_back(hand: Hand) -> None:
    path = months(hand())
    with closing(sqlite3.connect(path, isolation_level=None)) as db:
        db.execute("DELETE FROM marks WHERE date > ?", (DAYS[5].isoformat(),))
    spoil(path, pages(path, "marks", "internal"))
    marks = standing(hand())
    assert all(not marks[day] for day in DAYS[6:])


@pytest.mark.parametrize("raw", [b"", b"\0" * 100, b"\x0a" * SIZE * 3, bytes(range(256)) * 64])
def test_pages_of_anything_else_hold_no_rows(raw: bytes) -> None:
    assert list(fragments.rows(raw)) == [] or all(isinstance(row, tuple) for row in fragments.rows(raw))


@pytest.mark.slow
def test_tables_without_a_version_are_one_sentence_and_salvaged(hand: Hand, tmp_path: Path) -> None:
    path = months(hand())
    with closing(sqlite3.connect(path, isolation_level=None)) as db:
        db.execute("PRAGMA user_version = 0")
    assert "no version number" in Journal.examine(tmp_path)[0]
    assert standing(hand(read_only=True)) == dict.fromkeys(DAYS, [Mark.NOT_YET] * 4)
    journal = hand()
    assert journal.notice.count(". ") == 1 and "It is kept as" in journal.notice and journal.saving
    assert standing(journal) == dict.fromkeys(DAYS, [Mark.NOT_YET] * 4)


def test_a_prompt_whose_end_can_t_be_read_keeps_its_item(hand: Hand) -> None:
    journal = begun(hand(), marks=3)
    path = journal.path
    journal.shut()
    raw = bytearray(path.read_bytes())
    # The record's header ends with how long its last text is (https://www.sqlite.org/fileformat2.html, 2.1).
    at = raw.index(b"Bean2026-11-25" + ROWS[0][0].encode())
    raw[at - 1] = 0x7F
    path.write_bytes(raw)
    again = hand()
    assert "damaged" in again.notice
    assert {line.item: line.mark for line in again.history("Bean")} == {
        item: Mark.FLUENT if at < 3 else None for at, (item, _) in enumerate(ROWS)
    }


def test_of_a_date_with_a_flipped_digit_the_years_between_are_not_asked_for(hand: Hand) -> None:
    """They took six seconds, at each command that reads."""
    begun(hand()).shut()
    far = ("Bean", (DAY - dt.timedelta(4000)).isoformat(), 1)
    with schema.reading(hand().path) as source:
        assert len(salvage._keys(source, [far])) == 6, "three sessions of either date"
        near = ("Bean", (DAY - dt.timedelta(100)).isoformat(), 1)
        assert len(salvage._keys(source, [near])) == 303
